//! What meat that goes into a cure has been through before: was it ground, was it cured.

use super::facts::Facts;
use crate::error::Result;
use domain::cure::Brought;
use domain::family::{Family, brought, green_share};
use domain::grams::Grams;
use domain::lot::{DeedId, Lot, LotId};
use domain::measure::Percent;
use domain::product::CuredAs;
use domain::words::{DeedKind, ProductKind, Quantity};
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
    green: HashMap<LotId, Decimal>,
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
        let brings: HashMap<LotId, Brought> = brings.collect();
        let made = match brings.values().any(Brought::is_any) {
            true => made_of(facts, &family)?,
            false => HashMap::new(),
        };
        let green = meat
            .iter()
            .map(|lot| (LotId(*lot), green_share(&family, LotId(*lot), &made)));
        Ok(Before {
            is_ground,
            cured,
            green: green.collect(),
            brings,
        })
    }

    /// What it all brings, by the green weight of the meat.
    ///
    /// # Errors
    /// Whatever speaks against a choice.
    pub fn brings(&self, lots: &[Lot], grams: impl Fn(usize) -> Result<Grams>) -> Result<Brought> {
        let mut whole = Decimal::ZERO;
        let mut green = whole;
        let (mut nitrite, mut nitrate, mut salt) = (whole, whole, whole);
        for (nth, lot) in lots.iter().enumerate() {
            let Some(of) = self.brings.get(&lot.id) else {
                continue;
            };
            let today = Decimal::from(grams(nth)?.milligrams());
            let weight = today * self.green.get(&lot.id).copied().unwrap_or(Decimal::ONE);
            whole += today;
            green += weight;
            nitrite += weight * of.nitrite_ppm;
            nitrate += weight * of.nitrate_ppm;
            salt += weight * of.salt.number();
        }
        let share = |of: Decimal| of.checked_div(green).unwrap_or_default();
        let taken_up = (whole - green) * Decimal::ONE_HUNDRED;
        Ok(Brought {
            nitrite_ppm: share(nitrite),
            nitrate_ppm: share(nitrate),
            salt: Percent::new(share(salt)),
            taken_up: Percent::new(taken_up.checked_div(whole).unwrap_or_default()),
        })
    }
}

/// All that came out of each step in which meat may have become heavier: what is left over of a pickle is no part of it.
fn made_of(facts: &mut Facts<'_, '_>, family: &Family) -> Result<HashMap<DeedId, i64>> {
    let mut made = HashMap::new();
    for of in family.lots.values().filter(|of| of.has_species()) {
        let step = family.ancestry.made_by.get(&of.lot.id);
        let parts_only = matches!(
            of.made_by.kind,
            DeedKind::Receive
                | DeedKind::Adopt
                | DeedKind::BreakDown
                | DeedKind::Cut
                | DeedKind::Portion
                | DeedKind::Pack
        );
        let Some(step) = step.filter(|step| !parts_only && !made.contains_key(*step)) else {
            continue;
        };
        let mut whole = 0;
        for row in store::lots::of_deed(facts.tx.conn, step.0)? {
            let product = facts.app.product(facts.tx.conn, row.version_id)?;
            if product.kind != ProductKind::Ingredient {
                whole += row.made_mg;
            }
        }
        made.insert(*step, whole);
    }
    Ok(made)
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
