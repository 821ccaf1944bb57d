//! After a source was corrected: the origin of everything made from it is worked out again.

use crate::db::Tx;
use crate::error::{Error, Result};
use crate::lots::{self, lock_keys, write_origin};
use crate::tables::{lots as lots_table, pack_events};
use crate::trace;
use diesel::prelude::*;
use domain::genealogy::origins_again;
use domain::lot::LotId;
use domain::origin::Origin;
use domain::words::Account;
use std::collections::{BTreeMap, HashMap};

/// Sets the origin of a received lot, and works out again that of all its descendants.
pub fn set(tx: &mut Tx<'_>, lot: i32, origin: Origin) -> Result<()> {
    let family = trace::forward(tx.conn, &[lot])?.lots;
    let keys: Vec<i32> = family.iter().map(|lot| lot.id).collect();
    lock_keys(tx, &keys)?;
    let mut made_of: BTreeMap<LotId, Vec<LotId>> = BTreeMap::new();
    for descendant in family.iter().filter(|descendant| descendant.id != lot) {
        let parts: Vec<i32> = pack_events::table
            .filter(pack_events::deed_id.eq(descendant.deed_id))
            .filter(pack_events::account.eq(Account::Used.as_str()))
            .select(pack_events::lot_id)
            .load(tx.conn)?;
        made_of.insert(LotId(descendant.id), parts.into_iter().map(LotId).collect());
    }
    let outside: Vec<i32> = made_of
        .values()
        .flatten()
        .map(|part| part.0)
        .filter(|part| !keys.contains(part))
        .collect();
    let mut known = HashMap::from([(LotId(lot), origin)]);
    for row in lots::by_keys(tx.conn, &outside)? {
        known.insert(LotId(row.id), row.origin()?);
    }
    let origins = origins_again(&known, &made_of);
    for key in keys {
        let origin = origins
            .get(&LotId(key))
            .copied()
            .ok_or_else(|| Error::bad_row("lots", key, "stands on a cycle"))?;
        let (word, animal) = write_origin(origin);
        diesel::update(lots_table::table.find(key))
            .set((
                lots_table::origin.eq(word),
                lots_table::animal_id.eq(animal),
            ))
            .execute(tx.conn)?;
    }
    Ok(())
}
