//! Small words and figures as the pages show them.

use crate::wire::{Number, Weight};
use chrono::{DateTime, NaiveDate};
use domain::code::LotCode;
use domain::grams::Grams;
use domain::product::Product;
use domain::words::ProductKind;

/// What stands where there is nothing to say.
pub const NONE: &str = "–";

/// A code with hyphens, for the eye.
pub fn shown(code: &str) -> String {
    LotCode::read(code).map_or_else(|_| code.to_owned(), |code| code.shown())
}

/// A weight, or a dash for none.
pub fn or_dash(weight: &Weight) -> String {
    if weight.0 == Grams::ZERO {
        NONE.into()
    } else {
        weight.0.to_string()
    }
}

/// A text, or a dash for none.
pub fn told(text: Option<&str>) -> String {
    text.unwrap_or(NONE).to_owned()
}

/// A share in per cent.
pub fn percent(share: f64) -> String {
    if share > 0.0 && share < 0.001 {
        "under 0.1 %".into()
    } else {
        format!("{:.1} %", share * 100.0)
    }
}

/// A day with its weekday, the month in letters: `Fri 26 Jun 2026`.
pub fn day(date: NaiveDate) -> String {
    date.format("%a %-d %b %Y").to_string()
}

/// A time to the minute, as the kitchen's clock shows it: `Fri 26 Jun 2026, 10:40`.
pub fn minute(time: &str) -> String {
    DateTime::parse_from_rfc3339(time).map_or_else(
        |_| time.to_owned(),
        |time| time.format("%a %-d %b %Y, %H:%M").to_string(),
    )
}

/// Where a last day stands to today, in words; nothing where there is time yet.
pub fn standing(last_day: NaiveDate, today: NaiveDate) -> Option<&'static str> {
    match last_day.cmp(&today) {
        std::cmp::Ordering::Less => Some("Past: take it off"),
        std::cmp::Ordering::Equal => Some("Today is the last day"),
        std::cmp::Ordering::Greater => None,
    }
}

/// A word of the record without its hyphens.
pub fn plain(word: &str) -> String {
    word.replace('-', " ")
}

/// The same with a capital, at the head of a line.
pub fn headed(word: &str) -> String {
    let plain = plain(word);
    let mut letters = plain.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// Allergens in full: `Contains: milk, egg`.
pub fn allergens(words: &[String]) -> String {
    if words.is_empty() {
        return "No allergens on record".into();
    }
    let words: Vec<String> = words.iter().map(|word| plain(word)).collect();
    format!("Contains: {}", words.join(", "))
}

/// Raw or ready, in the same cases as on the label.
pub fn raw_or_ready(product: &Product) -> &'static str {
    use ProductKind::*;
    match (product.raw, product.kind) {
        (true, _) => "Raw: cook it",
        (false, Cooked | Rendered | Stock | Cured | Mixed) => "Ready to eat",
        (false, _) => "Not raw",
    }
}

/// A measured number without needless zeros.
pub fn number(number: Number) -> String {
    let sign = if number.0 < 0 { "-" } else { "" };
    let millionths = number.0.unsigned_abs();
    let part = format!("{:06}", millionths % 1_000_000);
    let part = part.trim_end_matches('0');
    let point = if part.is_empty() { "" } else { "." };
    format!("{sign}{}{point}{part}", millionths / 1_000_000)
}

/// `1 pack`, `3 packs`.
pub fn count(many: usize, one: &str, more: &str) -> String {
    let word = if many == 1 { one } else { more };
    format!("{many} {word}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_read_at_a_glance() {
        assert_eq!(number(Number(3_400_000)), "3.4");
        assert_eq!(number(Number(-500_000)), "-0.5");
        assert_eq!(number(Number(12_000_000)), "12");
        assert_eq!(percent(0.0004), "under 0.1 %");
        let said = minute("2026-06-26T10:40:03.8-04:00");
        assert_eq!(said, "Fri 26 Jun 2026, 10:40");
        assert_eq!(headed("taken-back"), "Taken back");
    }
}
