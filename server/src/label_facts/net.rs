//! The net weight as a place has it.

use super::writer::Writer;

/// What a pack weighs, as packs are weighed one by one: with the law's words and in pounds where the
/// place has a rule for them, else in grams and kilograms.
pub fn told(writer: &Writer<'_>, number: u32) -> String {
    let statements = &writer.law().statements;
    if let Some(rules) = &statements.metric_net {
        return writer.first.weight(rules.told(writer.grams(number)));
    }
    let weight = writer.weight(number);
    match &statements.net {
        Some(rules) => format!("{} ({weight})", rules.text_of(writer.grams(number))),
        None => weight,
    }
}
