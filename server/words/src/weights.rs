//! Weights, as one reader weighs.

use crate::figures::{MINUS, NO_BREAK};
use crate::{Mass, Speech};
use domain::grams::Grams;
use rust_decimal::{Decimal, RoundingStrategy};

/// Grams in an avoirdupois ounce, exactly (28.349 523 125; NIST Handbook 44, appendix C).
const OUNCE_MG: Decimal = Decimal::from_parts(2_579_719_349, 6, 0, false, 6);

/// Milligrams in a pound, exactly (453.592 37 g; the same handbook).
const POUND_MG: Decimal = Decimal::from_parts(45_359_237, 0, 0, false, 2);

/// A weight as a person says it. Nothing is rounded in metric units; ounces go to a tenth, pounds to a hundredth, as far
/// as a bench scale shows them: what stands on a screen is what is typed off the scale.
pub fn grams(speech: &Speech, grams: Grams) -> String {
    let milligrams = Decimal::from(grams.milligrams());
    match speech.mass {
        Mass::Metric if grams.milligrams().abs() < 1_000_000 => small(speech, milligrams),
        // Curing salt and spice lie on the small scale, and a tenth of an ounce is too coarse for them.
        Mass::Pounds if !milligrams.is_zero() && milligrams.abs() < OUNCE_MG => {
            small(speech, milligrams)
        }
        Mass::Metric => {
            let kilograms = milligrams / Decimal::from(1_000_000);
            format!("{}{NO_BREAK}kg", speech.number(kilograms))
        }
        Mass::Pounds => pounds(speech, milligrams),
    }
}

/// A weight in pounds and ounces to a tenth; what lies on the small scale in grams.
pub fn pounds_and_ounces(speech: &Speech, grams: Grams) -> String {
    let milligrams = Decimal::from(grams.milligrams());
    match !milligrams.is_zero() && milligrams.abs() < OUNCE_MG {
        true => small(speech, milligrams),
        false => with_ounces(speech, milligrams),
    }
}

fn small(speech: &Speech, milligrams: Decimal) -> String {
    let grams = milligrams / Decimal::ONE_THOUSAND;
    format!("{}{NO_BREAK}g", speech.number(grams))
}

/// So many ounces, to a tenth.
fn ounces(milligrams: Decimal) -> Decimal {
    let ounces = milligrams.abs() / OUNCE_MG;
    ounces.round_dp_with_strategy(1, RoundingStrategy::MidpointAwayFromZero)
}

fn sign(of: Decimal) -> &'static str {
    match of.is_sign_negative() {
        true => MINUS,
        false => "",
    }
}

/// Ounces in a pound.
const SIXTEEN: Decimal = Decimal::from_parts(16, 0, 0, false, 0);

fn pounds(speech: &Speech, milligrams: Decimal) -> String {
    let (sign, ounces) = (sign(milligrams), ounces(milligrams));
    if ounces < SIXTEEN {
        return format!("{sign}{}{NO_BREAK}oz", speech.number(ounces));
    }
    let pounds = milligrams.abs() / POUND_MG;
    let pounds = pounds.round_dp_with_strategy(2, RoundingStrategy::MidpointAwayFromZero);
    format!("{sign}{}{NO_BREAK}lb", speech.number(pounds))
}

fn with_ounces(speech: &Speech, milligrams: Decimal) -> String {
    let (sign, ounces) = (sign(milligrams), ounces(milligrams));
    let pounds = (ounces / SIXTEEN).trunc();
    let rest = ounces - pounds * SIXTEEN;
    let rest_told = format!("{}{NO_BREAK}oz", speech.number(rest));
    if pounds.is_zero() {
        return format!("{sign}{rest_told}");
    }
    let pounds = format!("{sign}{}{NO_BREAK}lb", speech.number(pounds));
    match rest.is_zero() {
        true => pounds,
        false => format!("{pounds}{NO_BREAK}{rest_told}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Language;

    fn reader(mass: Mass) -> Speech {
        Speech {
            mass,
            ..Speech::in_language(Language::English)
        }
    }

    #[test]
    fn weights_read_as_a_person_says_them() {
        let check = |mass, milligrams, expected: &str| {
            let told = reader(mass).grams(Grams::from_milligrams(milligrams));
            assert_eq!(told.replace(NO_BREAK, " "), expected);
        };
        check(Mass::Metric, 250_000, "250 g");
        check(Mass::Metric, 20_200, "20.2 g");
        check(Mass::Metric, 1_000_000, "1 kg");
        check(Mass::Metric, 1_125_000, "1.125 kg");
        check(Mass::Metric, 999_999, "999.999 g");
        check(Mass::Metric, -1_500_000, "\u{2212}1.5 kg");
        check(Mass::Metric, 0, "0 g");
        check(Mass::Pounds, 250_000, "8.8 oz");
        check(Mass::Pounds, 453_592, "1 lb");
        check(Mass::Pounds, 1_125_000, "2.48 lb");
        check(Mass::Pounds, 43_771_664, "96.5 lb");
        check(Mass::Pounds, -1_125_000, "\u{2212}2.48 lb");
        check(Mass::Pounds, 0, "0 oz");
        check(Mass::Pounds, 13_010, "13.01 g");
        check(Mass::Pounds, 28_350, "1 oz");
        // 15.96 oz is a pound to the tenth, never "16 oz".
        check(Mass::Pounds, 452_500, "1 lb");
    }

    #[test]
    fn a_printed_tag_has_pounds_and_ounces() {
        let check = |milligrams, expected: &str| {
            let reader = reader(Mass::Pounds);
            let told = reader.pounds_and_ounces(Grams::from_milligrams(milligrams));
            assert_eq!(told.replace(NO_BREAK, " "), expected);
        };
        check(250_000, "8.8 oz");
        check(453_592, "1 lb");
        check(1_125_000, "2 lb 7.7 oz");
        check(0, "0 oz");
        check(13_010, "13.01 g");
        check(452_500, "1 lb");
    }

    #[test]
    fn an_ounce_is_28_349523125_grams() {
        assert_eq!(OUNCE_MG.to_string(), "28349.523125");
        assert_eq!(OUNCE_MG * SIXTEEN, POUND_MG);
    }
}
