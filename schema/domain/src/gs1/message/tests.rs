//! What is written, what is read, what is refused: the cases of the published engines.

use super::*;
use crate::gs1::NotAGtin;
use crate::gs1::strip_symbology;
use proptest::prelude::*;

fn contents(gtin: &str) -> Contents {
    Contents {
        gtin: Gtin::parse(gtin).unwrap(),
        lot: "26P0718-BEL7".into(),
        pack: None,
        net_grams: None,
        last_day: None,
    }
}

fn use_by() -> Option<LastDay> {
    NaiveDate::from_ymd_opt(2026, 7, 27).map(LastDay::UseBy)
}

#[test]
fn the_messages_of_a_meat_kitchen() {
    // standards 1.3: 30, 38 and 48 characters.
    let mut plain = contents("09521234543213");
    let shortest = plain.message().unwrap();
    assert_eq!(shortest.bracketed(), "(01)09521234543213(10)26P0718-BEL7");
    assert_eq!(shortest.raw().len(), 30);
    plain.last_day = use_by();
    let dated = plain.message().unwrap();
    assert_eq!(
        dated.bracketed(),
        "(01)09521234543213(17)260727(10)26P0718-BEL7"
    );
    assert_eq!(dated.raw().len(), 38);
    let mut weighed = contents("99521234543216");
    (weighed.net_grams, weighed.last_day) = (Some(1_250), use_by());
    let weighed = weighed.message().unwrap();
    assert_eq!(
        weighed.bracketed(),
        "(01)99521234543216(3103)001250(17)260727(10)26P0718-BEL7"
    );
    assert_eq!(weighed.raw().len(), 48);
}

#[test]
fn a_separator_only_between_lot_and_pack() {
    let mut numbered = contents("09521234543213");
    numbered.lot = "L26".into();
    (numbered.pack, numbered.last_day) = (Some(12), use_by());
    let message = numbered.message().unwrap();
    assert_eq!(message.raw(), "01095212345432131726072710L26\u{1d}21L26-12");
    numbered.last_day = NaiveDate::from_ymd_opt(2026, 12, 31).map(LastDay::BestBefore);
    assert!(numbered.message().unwrap().raw().contains("15261231"));
}

#[test]
fn the_fullest_first() {
    let mut full = contents("99521234543216");
    (full.pack, full.net_grams, full.last_day) = (Some(3), Some(480), use_by());
    let shown: Vec<String> = full
        .messages()
        .unwrap()
        .iter()
        .map(Message::bracketed)
        .collect();
    // With the pack it would be 52 characters.
    assert_eq!(
        shown,
        [
            "(01)99521234543216(3103)000480(17)260727(10)26P0718-BEL7",
            "(01)99521234543216(3103)000480(10)26P0718-BEL7",
        ]
    );
    full.lot = "X".repeat(21);
    assert_eq!(
        full.messages(),
        Err(NotWritten::Lot {
            lot: "X".repeat(21),
            longest: 20
        })
    );
    // 16 + 10 + 2 + 20 is the limit itself.
    full.lot = "X".repeat(20);
    assert_eq!(full.messages().unwrap().len(), 1);
}

#[test]
fn weight_and_gtin_go_together() {
    let mut weighed = contents("99521234543216");
    assert_eq!(weighed.message(), Err(NotWritten::WeightMissing));
    for grams in [0, 1_000_000] {
        weighed.net_grams = Some(grams);
        assert_eq!(
            weighed.message(),
            Err(NotWritten::WeightRange {
                none: Grams::ZERO,
                most: Grams::whole(1_000_000)
            })
        );
    }
    let mut fixed = contents("09521234543213");
    fixed.net_grams = Some(1);
    assert_eq!(fixed.message(), Err(NotWritten::WeightNotWanted));
    assert_eq!(fixed.link(), Err(NotWritten::WeightNotWanted));
}

#[test]
fn lots_and_years_that_no_scanner_would_read_right() {
    for lot in ["", "A B", "É", "A#", "(21)9", "A\u{1d}B"] {
        let mut contents = contents("09521234543213");
        contents.lot = lot.into();
        assert_eq!(
            contents.message(),
            Err(NotWritten::Lot {
                lot: lot.into(),
                longest: 20
            })
        );
    }
    let mut late = contents("09521234543213");
    late.last_day = NaiveDate::from_ymd_opt(2100, 1, 1).map(LastDay::UseBy);
    assert_eq!(
        late.message(),
        Err(NotWritten::Year {
            year: "2100".into()
        })
    );
}

/// What is read from a carton, what may be printed by us; both in the words of `standards` 8.
#[test]
fn nineteen_cases() {
    // "read" differs from the table where a carton's string is true though GS1 wants it otherwise.
    for (case, text, reads, prints) in [
        (1, "(01)09506000134352(10)ABC123(17)261231", true, true),
        (
            2,
            "(01)99506000134355(3103)001250(17)261231(10)L26",
            true,
            true,
        ),
        (3, "(01)09506000134353(10)ABC123", false, false),
        // A lot alone still names the lot.
        (4, "(10)ABC123", true, false),
        (5, "(91)L26P0718-04", true, true),
        (6, "(01)99506000134355(3103)01250", false, false),
        (
            7,
            "(01)99506000134355(3103)001250(3102)000125",
            false,
            false,
        ),
        (8, "(01)09506000134352(17)261200", true, true),
        (9, "(01)09506000134352(17)261301", false, false),
        (10, "(01)09506000134352(17)260229", false, false),
        (11, "(01)09506000134352(7003)2607182430", false, false),
        (12, "(01)09506000134352(10)ABC 123", false, false),
        (
            13,
            "(01)09506000134352(10)ABCDEFGHIJKLMNOPQRSTU",
            false,
            false,
        ),
        // Countries are nothing that the kitchen takes from a code.
        (14, "(01)09506000134352(422)056(426)056", true, false),
        (15, "(01)09506000134352(422)999", true, true),
        (16, "(01)09506000134352(37)10", true, false),
        (17, "(29)X", false, false),
        (18, "(18)261231", false, false),
        (19, "(01)09506000134352(7030)056BE1234", true, true),
    ] {
        assert_eq!(read(text).is_ok(), reads, "case {case}: {text}");
        assert_eq!(Message::parse(text).is_ok(), prints, "case {case}: {text}");
    }
}

#[test]
fn what_no_judge_catches() {
    // standards, trap 7: a shop's own number as a GTIN, a weight beside a GTIN without a 9.
    for (text, why) in [
        (
            "(01)02000042212995(10)L26",
            NotWritten::Gtin {
                why: NotAGtin::Restricted,
            },
        ),
        (
            "(01)09506000134352(3103)001250(10)L26",
            NotWritten::WeightNotWanted,
        ),
        ("(01)99506000134355(10)L26", NotWritten::WeightMissing),
        // standards 1.3: 52 characters.
        (
            "(01)99521234543216(3103)001250(17)260727(10)26P0718-01-BEL7K",
            NotWritten::TooLong {
                longest: 48,
                length: 52,
            },
        ),
    ] {
        assert_eq!(Message::parse(text), Err(why), "{text}");
    }
}

proptest! {
    #[test]
    fn what_is_written_is_read_back(
        lot in "[!\"%&'*-?A-Z_a-z]{1,20}",
        pack in prop::option::of(any::<u32>()),
        grams in prop::option::of(1u32..1_000_000),
        day in prop::option::of(0i64..36_500),
        best in any::<bool>(),
    ) {
        let day = day.map(|day| NaiveDate::from_ymd_opt(2000, 1, 1).unwrap() + chrono::Days::new(day as u64));
        let contents = Contents {
            gtin: Gtin::parse(if grams.is_some() { "99521234543216" } else { "09521234543213" }).unwrap(),
            lot: lot.clone(),
            pack,
            net_grams: grams,
            last_day: day.map(if best { LastDay::BestBefore } else { LastDay::UseBy }),
        };
        match contents.message() {
            Ok(message) => {
                prop_assert!(message.raw().len() <= 48);
                let scanned = format!("]C1{}", message.raw());
                prop_assert_eq!(&read(&scanned).unwrap(), message.elements());
                prop_assert_eq!(&Message::parse(&message.bracketed()).unwrap(), &message);
                prop_assert_eq!(strip_symbology(&scanned), message.raw());
                prop_assert_eq!(message.elements().lot(), Some(lot.as_str()));
            }
            Err(why) => prop_assert!(matches!(why, NotWritten::TooLong { length: 49.., .. }), "{why:?}"),
        }
    }
}
