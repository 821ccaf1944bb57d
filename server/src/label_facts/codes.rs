//! What the codes of a pack hold.

use super::writer::Writer;
use domain::gs1::in_store::{Layout, Refusal, Value};
use domain::gs1::{Contents, Gtin, LastDay};
use domain::rows::{Finding, Gravity};
use domain::statement::DateKind;
use labels::Facts;

/// The codes of a pack, without any text yet. GS1's own forms stand only on a customer's pack of a
/// product that has a GTIN: nothing is invented. What cannot be said in them is left to our own.
pub fn of_pack(writer: &Writer<'_>, number: u32, for_a_customer: bool) -> Facts {
    let code = &writer.lot.code;
    let address = writer.app.address(writer.kitchen);
    let mut facts = Facts {
        qr: format!("{address}/L/{code}/{number}"),
        linear: format!("{code}/{number}"),
        ..Facts::default()
    };
    if !for_a_customer {
        return facts;
    }
    if let Some(gtin) = &writer.product.sale.gtin {
        let contents = contents(writer, gtin, number);
        if let Ok(messages) = contents.messages() {
            facts.gs1 = messages.iter().map(|message| message.bracketed()).collect();
        }
        if let Ok(link) = contents.link() {
            facts.qr = link.short_uri(&address);
        }
    }
    facts.ean13 = till(writer, number);
    facts
}

/// The address of the lot, whichever pack.
pub fn address_of_lot(writer: &Writer<'_>) -> String {
    let address = writer.app.address(writer.kitchen);
    format!("{address}/L/{}", writer.lot.code)
}

fn contents(writer: &Writer<'_>, gtin: &Gtin, number: u32) -> Contents {
    let day = writer.pack(number).now.use_by;
    let grams = writer.grams(number).milligrams() / 1_000;
    Contents {
        gtin: gtin.clone(),
        lot: writer.lot.code.to_string(),
        pack: Some(number),
        net_grams: u32::try_from(grams).ok().filter(|_| gtin.is_by_weight()),
        last_day: day.map(|day| match writer.law().statements.dates.last_day() {
            Some(DateKind::BestBefore) => LastDay::BestBefore(day),
            _ => LastDay::UseBy(day),
        }),
    }
}

/// The digits for the shop's own till; none where the kitchen has no such numbers, or where the price
/// or the weight does not go into them.
fn till(writer: &Writer<'_>, number: u32) -> Option<String> {
    encoded(writer, number)?.ok()
}

/// Why a pack has no digits for the till, though the kitchen has numbers for it: what goes beyond their places.
pub fn beyond_the_till(writer: &Writer<'_>, number: u32) -> Option<Finding> {
    let why = encoded(writer, number)?.err()?;
    Some(Finding::new(Gravity::Warn, why, []))
}

fn encoded(writer: &Writer<'_>, number: u32) -> Option<Result<String, Refusal>> {
    let layout: Layout = writer.kitchen.entry.till_layout.as_ref()?.0.parse().ok()?;
    let item = writer.product.sale.till_number?;
    let grams = writer.grams(number);
    let value = match layout.wants_price() {
        true => Value::PriceMinor(u64::try_from(writer.product.sale.price_minor(grams)?).ok()?),
        false => Value::Grams(u64::try_from(grams.milligrams() / 1_000).ok()?),
    };
    Some(layout.encode(item, value))
}
