//! "Uncured" and what goes with it, for what is usually cured with nitrite and here is not.

use super::says::{LabelSays, LabelTitle};
use super::writer::{Said, Writer};
use crate::error::{Error, Result};
use domain::cure::{Beside, ClaimFacts, uncured};
use domain::naming::{NameFacts, named_nitrite};
use domain::rows::Finding;
use domain::words::Quantity;
use labels::Field;
use rust_decimal::Decimal;

/// Adds the words that are due beside the name; nothing for a product that makes no such claim.
///
/// # Errors
/// 409 where the claim may not be made: nitrite went in, or it is not like the cured one.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) -> Result<()> {
    let Some(claimed) = &writer.product.cured.uncured else {
        return Ok(());
    };
    let reading = |quantity: Quantity| {
        let millionths = writer.view.of.last_reading(quantity)?;
        Some(Decimal::new(millionths, 6).normalize())
    };
    let facts = ClaimFacts {
        normally_cured: true,
        resembles: claimed.resembles,
        nitrite_used: nitrite_used(writer),
        natural: claimed.natural.clone().or_else(|| named(writer)),
        salt_and_water: None,
        fo: None,
        ph: reading(Quantity::Ph),
        aw: reading(Quantity::WaterActivity),
    };
    let law = writer.law();
    let claim = uncured(&facts, law)?;
    if facts.nitrite_used || claim.findings.iter().any(Finding::refuses) {
        let why = claim
            .findings
            .iter()
            .find(|finding| finding.refuses())
            .map_or_else(
                || LabelSays::CuringSalt.into(),
                |finding| finding.says.clone(),
            );
        let lot = writer.lot.code.clone();
        let detail = LabelSays::NotUncured { lot, why };
        let by = claim.findings.iter().find(|finding| finding.refuses());
        return Err(match by {
            Some(by) => Error::label_against(LabelTitle::NotUncured, detail, by),
            None => Error::label_refused(LabelTitle::NotUncured, detail),
        });
    }
    for words in claim.words {
        match (words.beside, words.unless.is_empty()) {
            (Beside::BeforeName, _) => {
                let name = said.0.get(&Field::Name).cloned().unwrap_or_default();
                if !begins(&name, &words.mandated) {
                    said.say(Field::Name, format!("{} {name}", words.mandated));
                }
            }
            (Beside::NextToName, true) => said.say(Field::NoNitrite, words.mandated),
            (Beside::NextToName, false) => said.say(Field::NotPreserved, words.mandated),
        }
    }
    Ok(())
}

/// Does the name begin with the word already?
fn begins(name: &str, word: &str) -> bool {
    let first = name.split_whitespace().next().unwrap_or_default();
    first.eq_ignore_ascii_case(word)
}

/// What brings nitrite into it by nature, by the lists on the packs of what went in.
fn named(writer: &Writer<'_>) -> Option<String> {
    let family = &writer.reading.family;
    let facts = NameFacts::of_lot(family, writer.view.of, writer.lists());
    named_nitrite(&facts, writer.law()).natural
}

/// Did a curing salt go into it, or into what it came from?
fn nitrite_used(writer: &Writer<'_>) -> bool {
    let line = writer.reading.family.youngest_first(writer.lot.id);
    line.iter().any(|of| of.lot.product.curing_salt().is_some())
}
