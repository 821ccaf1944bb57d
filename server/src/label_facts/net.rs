//! The net weight as a place has it.

use super::writer::Writer;
use domain::statement::NetRules;
use rust_decimal::Decimal;
use rust_decimal::RoundingStrategy;

/// Milligrams in a pound, exactly.
const POUND_MG: Decimal = Decimal::from_parts(453_592_370, 0, 0, false, 3);

/// What a pack weighs: with the law's words and in pounds where the place has a rule for them, else in
/// grams and kilograms.
///
/// Packs are weighed one by one, so pounds and their hundredths (`us` 4.3, random weight), rounded
/// down: never more than is in it.
pub fn told(writer: &Writer<'_>, number: u32) -> String {
    let grams = writer.grams(number);
    let law = writer.law();
    match &law.statements.net {
        Some(NetRules { title, .. }) => {
            let pounds = Decimal::from(grams.milligrams()) / POUND_MG;
            let pounds = pounds.round_dp_with_strategy(2, RoundingStrategy::ToZero);
            let weight = writer.weight(number);
            format!("{} {pounds:.2}\u{a0}lb ({weight})", title.in_language("en"))
        }
        None => writer.weight(number),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pound_is_453_59237_grams() {
        assert_eq!(POUND_MG.to_string(), "453592.370");
    }
}
