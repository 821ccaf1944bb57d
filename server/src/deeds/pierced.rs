//! What of the meat in a cook was ground or pumped before, by the record of what it came from.

use super::again::fields;
use super::facts::Facts;
use crate::error::Result;
use crate::read::LoadedFamily;
use domain::cure::Method;
use domain::family::{self, Relative};
use domain::heat::Pierced;
use domain::lot::{DeedId, Lot};
use domain::words::DeedKind;
use std::collections::BTreeSet;
use store::deeds::DeedRow;
use store::family::Extent;

/// What was, if anything was: asked of all that the lots came from.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of(facts: &mut Facts<'_, '_>, lots: &[Lot]) -> Result<Option<Pierced>> {
    let meat = lots.iter().filter(|lot| !lot.species.is_empty());
    let keys: Vec<i32> = meat.map(|lot| lot.id.0).collect();
    if keys.is_empty() {
        return Ok(None);
    }
    let standing = facts.standing.clone();
    let start = store::family::WalkStart::Keys(&keys);
    let conn = &mut *facts.tx.conn;
    let loaded = LoadedFamily::load_with(facts.app, conn, standing, start, Extent::ANCESTORS)?;
    let family = &loaded.family;
    let cured = family.lots.values();
    let cured = cured.filter(|of| of.made_by.kind == DeedKind::Cure);
    let cures: Vec<i32> = cured.map(|of| of.lot.made_by.0).collect();
    let mut pumped: BTreeSet<DeedId> = BTreeSet::new();
    if !cures.is_empty() {
        for deed in store::deeds::by_keys(conn, &cures)? {
            if asked_pumped(&deed)? {
                pumped.insert(DeedId(deed.id));
            }
        }
    }
    let is_pumped = |of: &Relative| pumped.contains(&of.lot.made_by);
    let found = keys.iter();
    let found = found.filter_map(|key| {
        let lot = domain::lot::LotId(*key);
        family::pierced(family, lot, is_pumped)
    });
    Ok(found.min_by_key(|found| found.by))
}

/// Did its deed say that it was pumped? What a step says of its cure wins over its product.
fn asked_pumped(deed: &DeedRow) -> Result<bool> {
    let asked = fields(&deed.request)?;
    let cure = asked.get("cure");
    let method = cure.and_then(|cure| cure.get("method")?.as_str());
    Ok(method == Some(Method::Pumped.as_str()))
}
