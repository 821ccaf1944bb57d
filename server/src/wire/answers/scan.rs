//! What the counter gets to see, as the API answers it.

use crate::wire::Day;
use domain::counter::{Known, ScanView};
use serde::Serialize;
use utoipa::ToSchema;
use words::Speech;

/// What the counter gets to see.
#[derive(Debug, Serialize, ToSchema)]
pub struct ScanRead {
    /// One word.
    pub verdict: String,
    /// In a sentence.
    pub says: String,
    /// The key of what it says: it is the same in every language.
    pub key: String,
    /// Everything that led to it.
    pub reasons: Vec<String>,
    /// The key of each reason.
    pub reason_keys: Vec<String>,
    /// The lot's code.
    pub lot: Option<String>,
    /// The pack's number.
    pub pack: Option<u32>,
    /// The product's code.
    pub product: Option<String>,
    /// The product's name in the kitchen's first language.
    pub name: Option<String>,
    /// Its last day.
    pub use_by: Option<Day>,
    /// Allergens in full.
    pub allergens: Vec<String>,
    /// Are those all? False of what nobody knows the history of: never read `allergens` alone.
    pub allergens_known: bool,
    /// What may be in it unasked, beyond those.
    pub may_contain: Vec<String>,
    /// Must it be cooked before it is eaten?
    pub raw: Option<bool>,
    /// Its price, in hundredths of the currency.
    pub price_minor: Option<i64>,
}

/// What the counter gets to see, in a reader's language.
pub fn scan_read(view: &ScanView, speech: &Speech) -> ScanRead {
    let (answer, known) = (&view.answer, view.known.as_ref());
    let lot = known.map(|known| &known.lot);
    ScanRead {
        verdict: answer.verdict.as_str().to_owned(),
        says: speech.say(&answer.says),
        key: answer.says.key().to_owned(),
        reasons: answer.reasons.iter().map(|says| speech.say(says)).collect(),
        reason_keys: answer
            .reasons
            .iter()
            .map(|says| says.key().to_owned())
            .collect(),
        lot: lot.map(|lot| lot.code.to_string()),
        pack: known.and_then(|known| known.pack),
        product: lot.map(|lot| lot.product.code.clone()),
        name: lot.map(|lot| lot.product.name(speech.language.tag()).to_owned()),
        use_by: known.and_then(Known::use_by).map(Day),
        allergens: lot.map_or(Vec::new(), |lot| {
            lot.allergens.iter().map(ToString::to_string).collect()
        }),
        allergens_known: known.is_some_and(|of| match of.pack {
            Some(number) => of.lot.knows_allergens_of(Some(number)),
            None => of.lot.knows_allergens(),
        }),
        may_contain: lot.map_or(Vec::new(), |lot| {
            lot.perhaps().iter().map(ToString::to_string).collect()
        }),
        raw: lot.map(|lot| lot.product.raw),
        price_minor: known.and_then(Known::price_minor),
    }
}
