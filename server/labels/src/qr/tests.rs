//! The square code: what it holds, how large it is, and that its modules are those of the library.

use super::*;
use proptest::prelude::*;
use proptest::sample::select;
use qrcode::QrCode;

#[test]
fn capitals_wherever_they_mean_the_same() {
    for (payload, held) in [
        (
            "https://trace.cinderhook.example/l/BRC26159A006/12",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC26159A006/12",
        ),
        (
            "https://trace.cinderhook.example/01/09521234543213/10/BRC26159A006",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/01/09521234543213/10/BRC26159A006",
        ),
        (
            "https://trace.cinderhook.example/01/09521234543213/10/A%2FB?17=260727&x=a",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/01/09521234543213/10/A%2FB?17=260727&x=a",
        ),
        (
            "https://example.org/01/09521234543213/10/a1",
            "https://example.org/01/09521234543213/10/a1",
        ),
    ] {
        assert_eq!(spelt(payload).unwrap(), held);
    }
    for (payload, first) in [
        ("https://example.org/l?17=1", '?'),
        ("a_b", '_'),
        ("10 €", '€'),
    ] {
        let refusal = spelt(payload).unwrap_err();
        assert!(
            matches!(refusal, Refusal::CodeCharacter { character, .. } if character == first),
            "{refusal}"
        );
    }
}

#[test]
fn as_small_as_the_table_has_it() {
    // standards 7: characters in the compact mode, by version and level.
    for (characters, level, modules) in [
        (38, EcLevel::M, 25),
        (39, EcLevel::M, 29),
        (61, EcLevel::M, 29),
        (62, EcLevel::M, 33),
        (90, EcLevel::M, 33),
        (60, EcLevel::Q, 33),
        (67, EcLevel::Q, 33),
        (24, EcLevel::H, 29),
        (195, EcLevel::L, 41),
    ] {
        let (width, _) = mask::symbol("A".repeat(characters).as_bytes(), level).unwrap();
        assert_eq!(width, modules, "{characters} at {level:?}");
    }
}

const LEVELS: [EcLevel; 4] = [EcLevel::L, EcLevel::M, EcLevel::Q, EcLevel::H];

fn same(payload: &[u8], level: EcLevel) {
    let whole = QrCode::with_error_correction_level(payload, level).unwrap();
    let (width, modules) = mask::symbol(payload, level).unwrap();
    assert_eq!(width, whole.width());
    assert!(modules == whole.to_colors(), "{level:?} {payload:?}");
}

#[test]
fn the_same_in_every_version() {
    // Up to 41, past the last that fits a word (27).
    for level in LEVELS {
        for length in (1..2_950).step_by(197) {
            let payload: Vec<u8> = (0..length).map(|n| (n * n % 251) as u8).collect();
            if QrCode::with_error_correction_level(&payload, level).is_ok() {
                same(&payload, level);
            } else {
                assert!(mask::symbol(&payload, level).is_err());
            }
        }
    }
}

#[test]
fn format_as_in_the_standard() {
    // The worked example of ISO/IEC 18004, from memory: level M, mask 101.
    assert_eq!(mask::format(EcLevel::M, 0b101), 0b100_0000_1100_1110);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn the_same_for_addresses(
        payload in "HTTPS://[A-Z]{3,20}[.]EXAMPLE/L/[A-Z]{3}[0-9]{5}[A-Z0-9]{4}/[0-9]{1,3}",
        level in select(&LEVELS[..]),
    ) {
        same(payload.as_bytes(), level);
    }

    #[test]
    fn the_same_for_anything(
        payload in prop::collection::vec(any::<u8>(), 1..200), level in select(&LEVELS[..]),
    ) {
        same(&payload, level);
    }
}
