//! What meat that goes into a cure has been through before: was it ground, was it cured.

use super::facts::Facts;
use crate::error::Result;
use domain::cure::Brought;
use domain::family::{Family, brought};
use domain::grams::Grams;
use domain::lot::{Lot, LotId};
use domain::measure::Percent;
use domain::product::CuredAs;
use domain::words::{DeedKind, Quantity};
use rust_decimal::Decimal;
use std::collections::HashMap;
use store::family::{Extent, WalkStart};

/// What the meat of a step has been through.
pub struct Before {
    /// Was any of it ground?
    pub is_ground: bool,
    /// How it was cured last, if it was.
    pub cured: Option<CuredAs>,
    brings: HashMap<LotId, Brought>,
}

impl Before {
    /// Looks at the lots of a step, and at all that went into them.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(facts: &mut Facts<'_, '_>, lots: &[Lot]) -> Result<Before> {
        let meat = lots.iter().filter(|lot| !lot.species.is_empty());
        let mut meat: Vec<i32> = meat.map(|lot| lot.id.0).collect();
        meat.sort_unstable();
        meat.dedup();
        let start = WalkStart::Keys(&meat);
        let family = store::family::load(facts.tx.conn, start, Extent::ANCESTORS, facts.app)?;
        let is_ground = family
            .lots
            .values()
            .any(|of| of.has_species() && of.made_by.kind == DeedKind::Grind);
        let lines = meat
            .iter()
            .flat_map(|lot| family.youngest_first(LotId(*lot)));
        let cured = { lines }.find_map(|of| of.lot.product.cured.cure);
        let last = |lot: LotId, quantity: Quantity| last(facts, &family, lot, quantity);
        let brings = meat
            .iter()
            .map(|lot| (LotId(*lot), brought(&family, LotId(*lot), last)));
        Ok(Before {
            is_ground,
            cured,
            brings: brings.collect(),
        })
    }

    /// What it all brings, by the weight of the meat.
    ///
    /// # Errors
    /// Whatever speaks against a choice.
    pub fn brings(&self, lots: &[Lot], grams: impl Fn(usize) -> Result<Grams>) -> Result<Brought> {
        let mut whole = Decimal::ZERO;
        let (mut nitrite, mut nitrate, mut salt) = (whole, whole, whole);
        for (nth, lot) in lots.iter().enumerate() {
            let Some(of) = self.brings.get(&lot.id) else {
                continue;
            };
            let weight = Decimal::from(grams(nth)?.milligrams());
            whole += weight;
            nitrite += weight * of.nitrite_ppm;
            nitrate += weight * of.nitrate_ppm;
            salt += weight * of.salt.number();
        }
        let share = |of: Decimal| of.checked_div(whole).unwrap_or_default();
        Ok(Brought {
            nitrite_ppm: share(nitrite),
            nitrate_ppm: share(nitrate),
            salt: Percent::new(share(salt)),
        })
    }
}

/// The last reading of a lot: of one that is judged again, as it is known by then.
fn last(facts: &Facts<'_, '_>, family: &Family, lot: LotId, quantity: Quantity) -> Option<i64> {
    let past = facts.past.as_ref();
    let Some(known) = past.and_then(|past| past.readings.get(&lot.0)) else {
        return family.get(lot)?.last_reading(quantity);
    };
    let until = past.map(|past| past.until).unwrap_or_default();
    let now = (facts.moment.at.naive_utc(), until);
    let mut known = known.iter().rev();
    let found = known.find(|(recorded, at, of, _)| *of == quantity && (*at, *recorded) <= now);
    found.map(|(.., millionths)| *millionths)
}
