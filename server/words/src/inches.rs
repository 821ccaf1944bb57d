//! Sizes of labels for who weighs in pounds: inches first, and the millimetres that stand on the roll's box beside them.

use crate::{Mass, Speech, catalogue};
use domain::says::{Arg, Says};
use fluent_bundle::FluentArgs;
use rust_decimal::{Decimal, RoundingStrategy};

/// Millimetres in an inch, exactly.
const INCH_MM: Decimal = Decimal::from_parts(254, 0, 0, false, 1);

/// How far paper may be off the quarter of an inch by which it is called, in millimetres; common practice, no source.
const CLOSE_MM: Decimal = Decimal::from_parts(5, 0, 0, false, 1);

/// A message in which sizes stand, as who reads inches is told it; nothing where it tells none.
pub fn said(speech: &Speech, says: &Says) -> Option<String> {
    let key = match says.key() {
        "size-is" => return size(speech, says.arg("across")?, says.arg("along")?),
        "label-size-is" => return size(speech, says.arg("width")?, says.arg("height")?),
        "paper-for-test" => "inches-paper-for-test",
        "paper-for-needs" => "inches-paper-for-needs",
        "paper-for-has" => "inches-paper-for-has",
        "paper-for-has-none" => "inches-paper-for-has-none",
        "paper-for-unknown" => "inches-paper-for-unknown",
        "printer-other-size" => "inches-printer-other-size",
        "printer-test-no-paper" => "inches-printer-test-no-paper",
        _ => return None,
    };
    catalogue::message(speech.language, key, &speech.args(says))
}

/// `4 x 3 in (102 x 76 mm)`.
fn size(speech: &Speech, across: &Arg, along: &Arg) -> Option<String> {
    let metric = Speech {
        mass: Mass::Metric,
        ..*speech
    };
    let told = |across, along| {
        let size = Says::new("size-is", vec![("across", across), ("along", along)]);
        metric.say(&size)
    };
    let mut args = FluentArgs::with_capacity(2);
    args.set("inches", told(in_inches(across), in_inches(along)));
    args.set("millimetres", told(across.clone(), along.clone()));
    catalogue::message(speech.language, "inches-size", &args)
}

/// A length, or a span of lengths, in inches.
fn in_inches(length: &Arg) -> Arg {
    match length {
        Arg::Number(millimetres) => Arg::Number(inches(*millimetres)),
        Arg::Said(span) => {
            let ends = span.args();
            let ends = ends.map(|(name, end)| (name.to_owned(), in_inches(end)));
            Arg::from(Says::kept(span.key().to_owned(), ends.collect()))
        }
        other => other.clone(),
    }
}

/// The quarter of an inch by which paper is called, else a tenth.
fn inches(millimetres: Decimal) -> Decimal {
    let away = RoundingStrategy::MidpointAwayFromZero;
    let whole = millimetres / INCH_MM;
    let four = Decimal::from(4);
    let called = (whole * four).round_dp_with_strategy(0, away) / four;
    match (called * INCH_MM - millimetres).abs() <= CLOSE_MM {
        true => called,
        false => whole.round_dp_with_strategy(1, away),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Language;

    fn told(says: &Says, language: Language, mass: Mass) -> String {
        let speech = Speech {
            mass,
            ..Speech::in_language(language)
        };
        speech.say(says).replace('\u{a0}', " ")
    }

    #[test]
    fn paper_is_called_in_inches_where_somebody_weighs_in_pounds() {
        let number = |millimetres: i64| Arg::Number(Decimal::from(millimetres));
        let of = |across, along| Says::new("size-is", vec![("across", across), ("along", along)]);
        let check = |across: i64, along: i64, expected: &str| {
            let says = of(number(across), number(along));
            assert_eq!(told(&says, Language::English, Mass::Pounds), expected);
        };
        check(102, 76, "4 x 3 in (102 x 76 mm)");
        check(51, 51, "2 x 2 in (51 x 51 mm)");
        check(76, 57, "3 x 2.25 in (76 x 57 mm)");
        check(40, 110, "1.6 x 4.3 in (40 x 110 mm)");
        let says = of(number(102), number(76));
        assert_eq!(told(&says, Language::English, Mass::Metric), "102 x 76");
        let french = told(&says, Language::French, Mass::Pounds);
        assert_eq!(french, "4 × 3 po (102 × 76 mm)");
        let ends = vec![("least", number(50)), ("most", number(259))];
        let says = of(number(62), Arg::from(Says::new("size-span", ends)));
        let roll = told(&says, Language::English, Mass::Pounds);
        assert_eq!(roll, "2.4 x 2 to 10.2 in (62 x 50 to 259 mm)");
        let sizes = vec![("width", number(62)), ("height", number(100))];
        let says = Says::new("label-size-is", sizes);
        let label = told(&says, Language::English, Mass::Pounds);
        assert_eq!(label, "2.4 x 3.9 in (62 x 100 mm)");
    }
}
