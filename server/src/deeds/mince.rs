//! Is meat young enough to be minced, and is mince not frozen again?

use super::facts::Facts;
use super::happened::broken;
use super::says::DeedSays;
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::wire::asked::StepAsked;
use domain::dates::{MincedMeat, is_minced, minced_in_time, refrozen};
use domain::family::Family;
use domain::lot::{Lot, Pack};
use domain::plan::Plan;
use domain::product::Product;
use domain::rows::Finding;
use domain::says::Says;
use domain::stop::NewStop;
use domain::words::{Species, State, StepKind, Topic};
use std::collections::BTreeSet;
use std::sync::Arc;
use store::family::{Extent, WalkStart};

/// What is found of mince in a step.
#[derive(Default)]
pub struct MinceCheck {
    stops: Vec<NewStop>,
    warnings: Vec<Says>,
}

/// Looks at the mince that a step makes or freezes; nothing where the place has no rule.
///
/// # Errors
/// 422 `limit` for meat that is too old, or for thawed mince that is frozen again.
pub fn look(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
    products: &[Arc<Product>],
    as_it_happened: bool,
) -> Result<MinceCheck> {
    let mut looked = MinceCheck::default();
    let Some(rules) = &facts.law().dates.mince else {
        return Ok(looked);
    };
    let species = lots.iter().flat_map(|lot| lot.species.iter().copied());
    let species: BTreeSet<Species> = species.collect();
    let makes = |of: &Arc<Product>| is_minced(of, &species);
    // Salt, spices and the like make a preparation of it, of which the law counts no days.
    let meat_alone = lots.iter().all(|lot| !lot.species.is_empty());
    if kind == StepKind::Grind && meat_alone && products.iter().any(makes) {
        let meat = chilled_meat(facts, lots)?;
        let rows = &facts.law().rows;
        let found = minced_in_time(&meat, facts.moment.day, rules, rows);
        let first = found.first().map(|(nth, _)| &meat[*nth].lot);
        let place = first.and_then(|lot| lots.iter().position(|of| of.code == *lot));
        let field = format!("inputs[{}].lot", place.unwrap_or(0));
        let found = found.into_iter().map(|(_, finding)| finding).collect();
        looked.judge(facts, &field, found, as_it_happened)?;
    }
    let of_each = products.iter().zip(&asked.outputs).enumerate();
    for (nth, (product, output)) in of_each {
        let state = output.state.map_or(product.storage, |state| state.0);
        if state == State::Frozen && makes(product) {
            let thawed = lots.iter().find_map(|lot| thawed_mince(lot, lot.on_hand()));
            let found = thawed.map(|pack| refrozen(pack, rules, &facts.law().rows));
            let field = format!("outputs[{nth}].state");
            looked.judge(facts, &field, found.into_iter().collect(), as_it_happened)?;
        }
    }
    Ok(looked)
}

/// Mince that is frozen where it lies: the stop for its packs, where it was thawed before.
///
/// # Errors
/// 422 `limit` where it is not taken as it happened.
pub fn frozen_again<'l>(
    facts: &Facts<'_, '_>,
    lot: &'l Lot,
    packs: impl IntoIterator<Item = &'l Pack>,
    as_it_happened: bool,
) -> Result<MinceCheck> {
    let mut looked = MinceCheck::default();
    let Some(rules) = &facts.law().dates.mince else {
        return Ok(looked);
    };
    if let Some(pack) = thawed_mince(lot, packs) {
        let found = vec![refrozen(pack, rules, &facts.law().rows)];
        looked.judge(facts, "state", found, as_it_happened)?;
    }
    Ok(looked)
}

/// A pack of mince that was frozen once and is not now.
fn thawed_mince<'l>(lot: &Lot, packs: impl IntoIterator<Item = &'l Pack>) -> Option<String> {
    if !is_minced(&lot.product, &lot.species) {
        return None;
    }
    let thawed = |pack: &&Pack| pack.now.state != State::Frozen && pack.now.days_left.is_some();
    let found = packs.into_iter().find(thawed)?;
    Some(lot.shown(found.number))
}

/// What of the meat was never frozen, with the day of its kill, as far as the record knows it.
fn chilled_meat(facts: &mut Facts<'_, '_>, lots: &[Lot]) -> Result<Vec<MincedMeat>> {
    let frozen = |lot: &&Lot| {
        let mut packs = lot.on_hand();
        packs.any(|pack| pack.now.state == State::Frozen || pack.now.days_left.is_some())
    };
    let chilled: Vec<&Lot> = lots.iter().filter(|lot| !frozen(lot)).collect();
    let keys: Vec<i32> = chilled.iter().map(|lot| lot.id.0).collect();
    if keys.is_empty() {
        return Ok(Vec::new());
    }
    let (standing, start) = (facts.standing.clone(), WalkStart::Keys(&keys));
    let conn = &mut *facts.tx.conn;
    let loaded = LoadedFamily::load_with(facts.app, conn, standing, start, Extent::ANCESTORS)?;
    let dated = chilled.into_iter().filter_map(|lot| {
        Some(MincedMeat {
            lot: lot.code.clone(),
            shown: Says::named(&lot.product.named()),
            species: lot.species.clone(),
            killed_on: first_killed(&loaded.family, lot)?,
            without_air: lot.packaging.is_some(),
        })
    });
    Ok(dated.collect())
}

fn first_killed(family: &Family, lot: &Lot) -> Option<chrono::NaiveDate> {
    let line = family.youngest_first(lot.id).into_iter();
    let animals = line.filter_map(|of| of.source.as_ref()?.animal.as_ref());
    animals.map(|animal| animal.killed_on).min()
}

impl MinceCheck {
    fn judge(
        &mut self,
        facts: &Facts<'_, '_>,
        field: &str,
        found: Vec<Finding>,
        as_it_happened: bool,
    ) -> Result<()> {
        if found.iter().any(Finding::refuses) {
            let rows = &facts.law().rows;
            let findings = found.iter().map(|finding| finding.with_sources(rows));
            let says = DeedSays::MinceLimit {
                findings: findings.collect(),
            };
            let stop = broken(facts, field, Topic::Date, says, &found, as_it_happened)?;
            self.stops.push(stop);
        }
        self.warnings.extend(found.into_iter().map(|of| of.says));
        Ok(())
    }

    /// Adds what was found to the plan: to what is made, else to the packs that are changed.
    pub fn add_to(self, plan: &mut Plan) {
        for birth in &mut plan.births {
            birth.stops.extend(self.stops.iter().cloned());
        }
        if plan.births.is_empty() {
            let touched: Vec<_> = plan.changes.iter().map(|of| (of.lot, of.pack)).collect();
            for (lot, pack) in touched {
                let stops = self.stops.iter();
                plan.stops
                    .extend(stops.map(|stop| (lot, Some(pack), stop.clone())));
            }
        }
        plan.warnings.extend(self.warnings);
    }
}
