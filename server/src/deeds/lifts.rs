//! What takes a stop away needs the right that lifts stops, also where it does so on the way: a void, or a deed that
//! is entered late.

use super::facts::Facts;
use crate::error::Result;
use crate::read;
use domain::lot::PackId;
use domain::moment::day_of;
use domain::right::Right;
use domain::stop::{self, Stop};
use domain::words::StopKind;
use store::lots::LotRow;
use store::packs::PackChoice;

/// The stops that stand now on the packs on hand of some lots.
pub struct Standing(Vec<(PackId, Vec<Stop>)>);

impl Standing {
    /// The stops as they stand now.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(facts: &mut Facts<'_, '_>, lots: &[i32]) -> Result<Standing> {
        let rows = store::lots::by_keys(facts.tx.conn, lots)?;
        let now = facts.moment.recorded_at;
        let today = day_of(now, facts.kitchen.zone);
        let mut each = Vec::new();
        for row in rows.into_iter().filter(|row| !row.voided) {
            let lot = with_packs(facts, row)?;
            for pack in lot.on_hand() {
                each.push((pack.id, stop::on(&lot, Some(pack), now, today)));
            }
        }
        Ok(Standing(each))
    }

    /// Is any of it past its day?
    pub fn has_past_day(&self) -> bool {
        let mut stops = self.0.iter().flat_map(|(_, stops)| stops);
        stops.any(|stop| stop.kind == StopKind::PastDay)
    }

    /// Asks for the right to lift where something of it stands no longer.
    ///
    /// # Errors
    /// 403.
    pub fn lifted(&self, facts: &mut Facts<'_, '_>, lots: &[i32]) -> Result<()> {
        if facts.who.may(Right::Lift) {
            return Ok(());
        }
        let now = Standing::of(facts, lots)?;
        let after = |pack: PackId| now.0.iter().find(|(of, _)| *of == pack);
        let is_lifted = self.0.iter().any(|(pack, before)| {
            after(*pack).is_some_and(|(_, after)| stop::lifts(before, after))
        });
        match is_lifted {
            true => facts.who.need(Right::Lift),
            false => Ok(()),
        }
    }
}

fn with_packs(facts: &mut Facts<'_, '_>, row: LotRow) -> Result<domain::lot::Lot> {
    let packs = store::packs::of_each(facts.tx.conn, &[(row.id, PackChoice::OnHand)])?;
    read::lot_with(facts.app, facts.tx.conn, row, &packs)
}
