//! "Uncured" and what goes with it, for what is usually cured with nitrite and here is not.

use super::writer::{Said, Writer};
use crate::error::{Error, Result};
use domain::cure::{Beside, ClaimFacts, uncured};
use domain::lot::LotId;
use domain::rows::Finding;
use labels::Field;
use rust_decimal::Decimal;
use store::lots::LotRow;
use store::{Conn, lots, trace};

/// Adds the words that are due beside the name; nothing for a product that makes no such claim.
///
/// # Errors
/// 409 where the claim may not be made: nitrite went in, or it is not like the cured one.
pub fn of_lot(writer: &Writer<'_>, conn: &mut Conn, row: &LotRow, said: &mut Said) -> Result<()> {
    let Some(claimed) = &writer.product.uncured else {
        return Ok(());
    };
    let reading = |quantity: &str| {
        let found = writer.lot.readings.iter().rev();
        let mut found = found.filter(|reading| reading.quantity == quantity);
        found
            .next()
            .map(|reading| Decimal::new(reading.value.0, 6).normalize())
    };
    let facts = ClaimFacts {
        normally_cured: true,
        resembles: claimed.resembles,
        nitrite_used: nitrite_used(writer, conn, row)?,
        natural: claimed.natural.clone(),
        salt_and_water: None,
        fo: None,
        ph: reading("ph"),
        aw: reading("water-activity"),
    };
    let law = writer.law();
    let claim = uncured(&facts, law)?;
    if facts.nitrite_used || claim.findings.iter().any(Finding::refuses) {
        let why = claim
            .findings
            .iter()
            .find(|finding| finding.refuses())
            .map_or_else(
                || "curing salt went in".to_owned(),
                |finding| finding.says.to_string(),
            );
        let detail = format!("{} cannot be labelled as uncured: {why}.", writer.lot.shown);
        return Err(Error::label_refused("It is not uncured", detail));
    }
    for words in claim.words {
        match (words.beside, words.unless.is_empty()) {
            (Beside::BeforeName, _) => {
                let name = said.0.get(&Field::Name).cloned().unwrap_or_default();
                said.say(Field::Name, format!("{} {name}", words.mandated));
            }
            (Beside::NextToName, true) => said.say(Field::NoNitrite, words.mandated),
            (Beside::NextToName, false) => said.say(Field::NotPreserved, words.mandated),
        }
    }
    Ok(())
}

/// Did a curing salt go into it, or into what it came from?
fn nitrite_used(writer: &Writer<'_>, conn: &mut Conn, row: &LotRow) -> Result<bool> {
    let ancestry = trace::back(conn, row.id)?;
    let keys: Vec<i32> = ancestry
        .descendants_first(LotId(row.id))
        .iter()
        .map(|lot| lot.0)
        .collect();
    for lot in lots::by_keys(conn, &keys)? {
        if writer
            .app
            .product(conn, lot.version_id)?
            .curing_salt
            .is_some()
        {
            return Ok(true);
        }
    }
    Ok(false)
}
