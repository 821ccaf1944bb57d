//! The net weight as a place has it, and what a pack costs.

use super::phrases::{LabelWords, Phrases};
use super::writer::{Said, Writer};
use domain::grams::Grams;
use labels::Field;
use rust_decimal::Decimal;

/// A pound in kilograms, exactly.
const POUND_KG: Decimal = Decimal::from_parts(45_359_237, 0, 0, false, 8);

/// Was a pack weighed by itself? Where all packs of its lot weigh the same to the milligram, they were filled to a
/// weight. Told by the lot's own weight, for not every pack of it is loaded.
pub fn is_weighed(writer: &Writer<'_>, number: u32) -> bool {
    let (own, packs) = (writer.pack(number).made, writer.lot.pack_count);
    let whole = i128::from(writer.view.of.made().milligrams());
    packs < 2 || i128::from(own.milligrams()) * i128::from(packs) != whole
}

/// What a pack weighs: with the law's words and in ounces or pounds where the place has a rule for them, else in
/// grams and kilograms.
pub fn told(writer: &Writer<'_>, number: u32) -> String {
    let statements = &writer.law().statements;
    let grams = writer.grams(number);
    if let Some(rules) = &statements.metric_net {
        return writer.first.weight(rules.told(grams));
    }
    // Pounds that were typed are grams to the thousandth: beside pounds and ounces whole grams will do, common practice, no
    // source. Rounded down: never more than is in it.
    let second = match grams >= Grams::whole(100) {
        true => Grams::whole(grams.milligrams() / 1_000),
        false => grams,
    };
    // From a kilogram on the second form would need a second line, and no row asks for it (`additions-C1`).
    let heavy = grams >= Grams::whole(1_000);
    match &statements.net {
        Some(rules) if heavy => rules.text_of(grams, is_weighed(writer, number)),
        Some(rules) => format!(
            "{} ({})",
            rules.text_of(grams, is_weighed(writer, number)),
            writer.first.weight(second)
        ),
        None => writer.weight(number),
    }
}

/// What a pack that was weighed by itself costs, and what a unit of its weight costs; nothing where the list has no
/// price.
pub fn price(writer: &Writer<'_>, said: &mut Said, number: u32) {
    let sale = &writer.product.sale;
    let Some(per_kg) = sale
        .price_minor_per_kg
        .filter(|_| is_weighed(writer, number))
    else {
        return;
    };
    let Some(all) = sale.price_minor(writer.grams(number)) else {
        return;
    };
    let first = &writer.first;
    let currency = &writer.kitchen.entry.currency.0;
    let (unit, per_unit) = match writer.law().statements.net {
        Some(_) => ("lb", Decimal::new(per_kg, 2) * POUND_KG),
        None => ("kg", Decimal::new(per_kg, 2)),
    };
    let price = amount(first, currency, per_unit);
    let unit = unit.to_owned();
    said.say(
        Field::UnitPrice,
        first.say(LabelWords::UnitPrice { price, unit }),
    );
    said.say(Field::Price, amount(first, currency, Decimal::new(all, 2)));
}

/// An amount with the sign of its currency, where a language puts it; the currency's three letters where it has no
/// sign of its own.
fn amount(phrases: &Phrases, currency: &str, amount: Decimal) -> String {
    let figures = phrases.decimals(amount, 2);
    let sign = match currency {
        "USD" | "CAD" => "$",
        "EUR" => "€",
        "GBP" => "£",
        other => return format!("{figures}\u{a0}{other}"),
    };
    match phrases.language {
        "fr" => format!("{figures}\u{a0}{sign}"),
        _ => format!("{sign}{figures}"),
    }
}
