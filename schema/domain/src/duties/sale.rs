//! The most that is still a normal retail sale: half a carcass.

use super::says::SaleSays;
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity};
use crate::words::{Species, words};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

words! {
    /// The animals that have a number.
    Head { Cattle = "cattle", Calf = "calf", Sheep = "sheep", Pig = "pig", Goat = "goat", }
}

impl Head {
    /// That of an animal; none for one without a number. A calf is listed as cattle, whose number is the
    /// higher one.
    pub fn of(species: Species) -> Option<Head> {
        match species {
            Species::Cattle => Some(Head::Cattle),
            Species::Sheep => Some(Head::Sheep),
            Species::Pig => Some(Head::Pig),
            Species::Goat => Some(Head::Goat),
            _ => None,
        }
    }
}

/// The most of one animal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Most {
    /// The animal.
    pub head: Head,
    /// In pounds avoirdupois.
    pub pounds: Bound,
}

/// A weight in pounds: one is 453.59237 g exactly.
pub fn pounds(weight: Grams) -> Decimal {
    Decimal::from(weight.milligrams()) / Decimal::from(453_592_370) * Decimal::from(1_000)
}

/// So many pounds, to a whole gram: near enough to come out even in pounds again.
fn whole_grams(pounds: Decimal) -> Grams {
    let grams = pounds * Decimal::from(453_592_370) / Decimal::from(1_000_000);
    Grams::whole(grams.round().to_i64().unwrap_or(i64::MAX / 1_000))
}

/// A warning where one sale is more than half a carcass (`us-E4`): it may no longer be retail.
///
/// # Errors
/// A weight that cannot be.
pub fn check_sale(rules: &super::DutyRules, head: Head, weight: Grams) -> Result<Option<Finding>> {
    if weight.is_none_left() {
        return Err(Refusal::cannot_be("grams", SaleSays::NoWeight { weight }));
    }
    let most = rules.sale.iter().find(|most| most.head == head);
    Ok(most
        .filter(|most| !most.pounds.allows(pounds(weight)))
        .map(|most| {
            let says = SaleSays::MoreThanRetail {
                weight,
                head,
                most: whole_grams(most.pounds.value),
            };
            Finding::new(Gravity::Warn, says, [most.pounds.row.clone()])
        }))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pound_is_exact() {
        assert_eq!(
            pounds(Grams::from_milligrams(453_592_370_000)),
            Decimal::from(1_000_000)
        );
    }
}
