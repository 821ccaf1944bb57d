//! The ingredient lists of what was made of a lot whose pack is told otherwise: they change with it.

use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::read::LoadedFamily;
use domain::lot::LotId;
use std::collections::{BTreeMap, HashMap};
use store::family::{Extent, WalkStart};

/// Ingredients by language.
pub type Texts = BTreeMap<String, String>;

/// How many lots are looked at together: their families are held in memory at once.
const AT_ONCE: usize = 1_000;

/// The ingredients of some lots as their labels would list them now, by lot.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lots(facts: &mut Facts<'_, '_>, lots: &[i32]) -> Result<HashMap<i32, Texts>> {
    let mut found = HashMap::with_capacity(lots.len());
    for some in lots.chunks(AT_ONCE) {
        let (standing, start) = (facts.standing.clone(), WalkStart::Keys(some));
        let conn = &mut *facts.tx.conn;
        let reading = LoadedFamily::load_with(facts.app, conn, standing, start, Extent::ANCESTORS)?;
        for lot in some {
            let view = reading.view(LotId(*lot));
            found.extend(view.map(|view| (*lot, view.stated.ingredients)));
        }
    }
    Ok(found)
}
