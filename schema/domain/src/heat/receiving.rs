//! How cold food has to be as it comes in at the door.

use super::holding::held;
use super::rules::HeatRules;
use super::says::HoldSays;
use super::words::Holding;
use crate::condition::Condition;
use crate::measure::Temperature;
use crate::product::Product;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, Rows};
use crate::words::{ProductKind, Species, State};

/// The class of a product at the door; nothing for what needs no cold. What is raw, mixed and of an
/// animal is mince, unless it is known to have other things in it: then it is a preparation.
pub fn class_at_door(product: &Product, state: State, is_seasoned: bool) -> Option<Holding> {
    match state {
        State::Frozen => return Some(Holding::ReceivingFrozen),
        State::Ambient | State::Hot => return None,
        State::Chilled => {}
    }
    // Rabbit is held as poultry is (`confirmed-X-EU-48`: one section of the law for both).
    let small = |species: Species| species.is_bird() || species == Species::Rabbit;
    let is_small = product.species.is_some_and(small);
    Some(match product.kind {
        ProductKind::Offal if product.raw => Holding::ReceivingOffal,
        ProductKind::Mixed if product.raw && product.species.is_some() && !is_seasoned => {
            Holding::ReceivingMince
        }
        ProductKind::Mixed if product.raw => Holding::ReceivingPreparation,
        _ if product.raw && is_small => Holding::ReceivingPoultry,
        _ if product.raw && product.species.is_some() => Holding::ReceivingMeat,
        _ if product.is_controlled() => Holding::Receiving,
        _ => return None,
    })
}

/// Is it cold enough to come in? The class's own limit counts where the place has one; else what all
/// food that needs control is received and kept at.
///
/// # Errors
/// A temperature that cannot be.
pub fn at_door(
    class: Holding,
    read: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    asked_of(&[class], read, rules, rows)
}

/// The same of what should come in frozen: what is warmer than its like may come in chilled is not frozen, and is
/// asked that as well.
///
/// # Errors
/// A temperature that cannot be.
pub fn frozen_at_door(
    chilled: Option<Holding>,
    read: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    let mut classes = vec![Holding::ReceivingFrozen];
    classes.extend(chilled);
    asked_of(&classes, read, rules, rows)
}

fn asked_of(
    classes: &[Holding],
    read: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    let has = |what: &Holding| rules.holding.iter().any(|hold| hold.what == *what);
    let of_class = |class: &Holding| match (has(class), *class) {
        (true, Holding::Receiving) => vec![*class, Holding::Cold],
        (true, _) => vec![*class],
        (false, Holding::ReceivingFrozen) => Vec::new(),
        (false, _) => vec![Holding::Receiving, Holding::Cold],
    };
    let asked: Vec<Holding> = classes.iter().flat_map(of_class).collect();
    let mut findings = Vec::new();
    for what in asked.iter().filter(|what| has(what)) {
        for finding in held(*what, read, rules, rows)? {
            said_once(&mut findings, finding);
        }
    }
    let own = rules
        .holding
        .iter()
        .filter(|hold| asked.contains(&hold.what));
    let mut own = own.map(|hold| hold.degrees.row());
    if classes.contains(&Holding::Receiving) && !own.any(|row| rows.is_confirmed(row)) {
        findings.extend(warm_everywhere(read, rules));
    }
    Ok(findings)
}

/// Warmer than any place that is on file lets ready food be: that is no question of whose figure holds here,
/// where the place has none that was read.
fn warm_everywhere(read: Temperature, rules: &HeatRules) -> Option<Finding> {
    let elsewhere = &rules.cold_elsewhere;
    let warmest = elsewhere.iter().max_by_key(|cold| cold.temperature())?;
    if elsewhere.iter().any(|cold| cold.allows(read)) {
        return None;
    }
    let says = HoldSays::Nowhere {
        at: read,
        limit: warmest.says(),
    };
    Some(Finding::new(Gravity::Refuse, says, [warmest.row().clone()]))
}

/// Two rows with one figure are one sentence with both rows, as grave as the graver.
fn said_once(findings: &mut Vec<Finding>, finding: Finding) {
    let same = |of: &&mut Finding| of.says == finding.says;
    match findings.iter_mut().find(same) {
        Some(known) => {
            known.gravity = known.gravity.max(finding.gravity);
            known.rows.extend(finding.rows);
        }
        None => findings.push(finding),
    }
}

/// How a lot is held, as it is now: what the place's own figure for it is about. What hangs in its cure,
/// is frozen or needs no cold has none.
pub fn class_kept(
    product: &Product,
    condition: Condition,
    state: State,
    is_seasoned: bool,
) -> Option<Holding> {
    if product.is_hung() || condition.stable.is_some() {
        return None;
    }
    match state {
        State::Hot => Some(Holding::Hot),
        State::Chilled if condition.is_ready() => {
            product.is_controlled().then_some(Holding::Receiving)
        }
        State::Chilled => class_at_door(product, state, is_seasoned),
        State::Frozen | State::Ambient => None,
    }
}

/// What the place says of the temperature at which food is held; nothing where it has no figure.
///
/// # Errors
/// A temperature that cannot be.
pub fn kept(
    class: Holding,
    read: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    match class {
        Holding::Hot if !rules.holding.iter().any(|hold| hold.what == class) => Ok(Vec::new()),
        Holding::Hot => held(class, read, rules, rows),
        _ => at_door(class, read, rules, rows),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rabbit_is_held_as_poultry_is() {
        let class = |species, kind| {
            let product = Product {
                kind,
                species: Some(species),
                raw: true,
                ..Product::unnamed()
            };
            class_at_door(&product, State::Chilled, false)
        };
        for (species, kind, expected) in [
            (
                Species::Rabbit,
                ProductKind::Carcass,
                Holding::ReceivingPoultry,
            ),
            (
                Species::Chicken,
                ProductKind::Cut,
                Holding::ReceivingPoultry,
            ),
            (Species::Pig, ProductKind::Cut, Holding::ReceivingMeat),
            (Species::Rabbit, ProductKind::Offal, Holding::ReceivingOffal),
        ] {
            assert_eq!(class(species, kind), Some(expected), "{species:?}");
        }
    }
}
