//! Weights and the rest, read and written.

use super::*;

#[test]
fn grams_are_read_as_decimals() {
    let read = |text: &str| {
        serde_json::from_str::<Weight>(text)
            .map(|weight| weight.0.milligrams())
            .ok()
    };
    assert_eq!(read("45000"), Some(45_000_000));
    assert_eq!(read("20.2"), Some(20_200));
    assert_eq!(read("0.100"), Some(100));
    assert_eq!(read("1e3"), Some(1_000_000));
    assert_eq!(read("1.0001"), None);
    assert_eq!(read("123456789012345678901234567890"), None);
    assert_eq!(read("\"5\""), None);
    // 0.1 + 0.2 is what a float would spoil.
    assert_eq!(read("0.3"), Some(300));
}

#[test]
fn grams_are_written_as_they_were_read() {
    for text in ["45000", "20.2", "0.001", "-0.5", "999999999999.999"] {
        let weight: Weight = serde_json::from_str(text).unwrap();
        assert_eq!(serde_json::to_string(&weight).unwrap(), text);
    }
}

#[test]
fn grams_are_written_to_the_milligram_whatever_their_size() {
    let mut mg: i64 = 1;
    for nth in 0..200_000 {
        // Each size of figure in turn, also some that no float holds.
        mg = mg
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let some = (mg >> 1) % 10_i64.pow(1 + nth % 18);
        let weight = Weight(Grams::from_milligrams(some));
        let text = Decimal::new(some, 3).normalize().to_string();
        assert_eq!(serde_json::to_string(&weight).unwrap(), text);
        // As a request is written to be compared, too.
        assert_eq!(serde_json::to_value(weight).unwrap().to_string(), text);
    }
}
