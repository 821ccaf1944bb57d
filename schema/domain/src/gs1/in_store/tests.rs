//! Layouts as countries have them, and what they refuse.

use super::*;
use proptest::prelude::*;

fn layout(text: &str) -> Layout {
    text.parse()
        .unwrap_or_else(|why: NotALayout| panic!("{text}: {why:?}"))
}

/// The national layouts of `standards` 1.4.
const NATIONAL: &[&str] = &[
    "20PPPPPCVVVV price 2",
    "28PPPPCVVVVV weight 3",
    "22PPPPCVVVVV price 2",
    "26PPPPVVVVVV weight 3",
    "23PPPPPPVVVV weight 3",
];

#[test]
fn vectors() {
    // standards 1.4.
    let price = layout("20PPPPPCVVVV price 2");
    assert_eq!(
        price.encode(42, Value::PriceMinor(1299)).as_deref(),
        Ok("2000042212995")
    );
    let weight = layout("28PPPPCVVVVV weight 3");
    assert_eq!(
        weight.encode(4711, Value::Grams(1250)).as_deref(),
        Ok("2847117012506")
    );
    let read = weight.decode("2847117012506").unwrap();
    assert_eq!((read.item, read.value), (4711, Value::Grams(1250)));
    assert_eq!(weight.decode("2847118012505"), Err(Refusal::Verifier));
    assert_eq!(weight.decode("2847117012505"), Err(Refusal::Misread));
    assert_eq!(weight.decode("2000042212995"), Err(Refusal::Foreign));
    assert_eq!(weight.decode("095212345432"), Err(Refusal::Misread));
}

#[test]
fn what_does_not_fit_is_refused() {
    let price = layout("20PPPPPCVVVV price 2");
    let weight = layout("28PPPPCVVVVV weight 3");
    for (layout, item, value, why) in [
        (
            &price,
            42,
            Value::PriceMinor(10_000),
            Value::PriceMinor(10_000).too_much(),
        ),
        (&price, 42, Value::PriceMinor(0), Refusal::Nothing),
        (&price, 42, Value::Grams(500), Refusal::OtherMeasure),
        (
            &price,
            100_000,
            Value::PriceMinor(1),
            Refusal::Item {
                item: "100000".into(),
                digits: 5,
            },
        ),
        (
            &weight,
            4711,
            Value::Grams(100_000),
            Value::Grams(100_000).too_much(),
        ),
        (
            &layout("29PPPPCVVVVV weight 2"),
            4711,
            Value::Grams(1_255),
            Value::Grams(1_255).too_fine(),
        ),
    ] {
        assert_eq!(layout.encode(item, value), Err(why));
    }
    let coarse = layout("29PPPPCVVVVV weight 2");
    let digits = coarse.encode(4711, Value::Grams(1_250)).unwrap();
    assert_eq!(&digits[7..12], "00125");
    assert_eq!(coarse.decode(&digits).unwrap().value, Value::Grams(1_250));
}

#[test]
fn layouts_that_are_none() {
    for (text, why) in [
        ("", NotALayout::Form),
        ("20PPPPPCVVVV", NotALayout::Form),
        ("20PPPPPCVVV price 2", NotALayout::Form),
        ("20PPPPPCVVVVV price 2", NotALayout::Form),
        ("2PPPPPPCVVVV price 2", NotALayout::Form),
        ("20PPPP1CVVVV price 2", NotALayout::Form),
        ("20CPPPPCVVVV price 2", NotALayout::Form),
        ("20PPPPPPPPPP price 2", NotALayout::Form),
        ("20PPPPPCVVVV length 2", NotALayout::Form),
        ("20PPPPPCVVVV price two", NotALayout::Form),
        ("20PPPPPÇVVVV price 2", NotALayout::Form),
        (
            "95PPPPPCVVVV price 2",
            NotALayout::Prefix {
                prefix: "95".into(),
            },
        ),
        (
            "03PPPPPCVVVV price 2",
            NotALayout::Prefix {
                prefix: "03".into(),
            },
        ),
        (
            "300PPPPCVVVV price 2",
            NotALayout::Prefix {
                prefix: "300".into(),
            },
        ),
        ("26PPPCVVVVVV weight 3", NotALayout::Verifier),
        ("20PPPPPCVVVV price 3", NotALayout::Decimals),
        ("20PPPPPPPPPV price 2", NotALayout::Decimals),
    ] {
        assert_eq!(text.parse::<Layout>(), Err(why), "{text}");
    }
    for text in ["02PPPPPCVVVV price 2", "04PPPPPVVVVV price 2"] {
        layout(text);
    }
}

proptest! {
    #[test]
    fn what_is_encoded_is_read_back(
        nth in 0..NATIONAL.len(), item in 0u64..10_000, amount in 1u64..10_000, slip in 0..13usize, by in 1..10u32,
    ) {
        let layout = layout(NATIONAL[nth]);
        let value = match layout.measure {
            InStoreMeasure::Price => Value::PriceMinor(amount),
            InStoreMeasure::Weight => Value::Grams(amount),
        };
        let digits = layout.encode(item, value).unwrap();
        prop_assert_eq!(digits.len(), 13);
        prop_assert_eq!(layout.decode(&digits), Ok(Read { item, value }));
        prop_assert!(crate::gs1::Gtin::parse(&digits).is_err());
        // One digit misread is always noticed.
        let misread: String = digits
            .chars()
            .enumerate()
            .map(|(at, digit)| match digit.to_digit(10) {
                Some(value) if at == slip => char::from_digit((value + by) % 10, 10).unwrap(),
                _ => digit,
            })
            .collect();
        prop_assert_eq!(layout.decode(&misread), Err(Refusal::Misread));
    }
}
