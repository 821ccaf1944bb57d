//! How cold food has to be as it comes in at the door.

use super::holding::held;
use super::rules::HeatRules;
use super::words::Holding;
use crate::measure::Temperature;
use crate::product::Product;
use crate::refusal::Result;
use crate::rows::{Finding, Rows};
use crate::words::{ProductKind, State};

/// The class of a product at the door; nothing for what needs no cold.
pub fn class_at_door(product: &Product, state: State) -> Option<Holding> {
    match state {
        State::Frozen => return Some(Holding::ReceivingFrozen),
        State::Ambient | State::Hot => return None,
        State::Chilled => {}
    }
    let is_bird = product.species.is_some_and(|species| species.is_bird());
    Some(match product.kind {
        ProductKind::Offal if product.raw => Holding::ReceivingOffal,
        ProductKind::Mixed if product.raw => Holding::ReceivingPreparation,
        _ if product.raw && is_bird => Holding::ReceivingPoultry,
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
    let has = |what: &Holding| rules.holding.iter().any(|hold| hold.what == *what);
    let asked: Vec<Holding> = match (has(&class), class) {
        (true, Holding::Receiving) => vec![class, Holding::Cold],
        (true, _) => vec![class],
        (false, Holding::ReceivingFrozen) => Vec::new(),
        (false, _) => vec![Holding::Receiving, Holding::Cold],
    };
    let mut findings = Vec::new();
    for what in asked.iter().filter(|what| has(what)) {
        findings.extend(held(*what, read, rules, rows)?);
    }
    Ok(findings)
}
