//! Cost through a step: it stays while the grams shrink, and what is added brings its own.

use super::says::PriceSays;
use super::{Money, kilograms};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

/// What a step made, with the cost that came along.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Carried {
    /// The cost of what went in and of what was added.
    pub cost: Money,
    /// What is left of it.
    pub grams: Grams,
    /// For one kilogram.
    pub per_kg: Decimal,
}

/// The cost of what a step made. Where it made several things, share the cost out with
/// [`joint_cost`](super::joint_cost).
///
/// # Errors
/// A cost below nothing, or nothing came out.
pub fn carry(inputs: &[Money], added: &[Money], output: Grams) -> Result<Carried> {
    if inputs.iter().chain(added).any(|cost| *cost < Money::ZERO) {
        return Err(Refusal::cannot_be("cost", PriceSays::BelowNothing));
    }
    if output.is_none_left() {
        return Err(Refusal::cannot_be("output", PriceSays::NoOutput));
    }
    let cost: Money = inputs.iter().chain(added).copied().sum();
    Ok(Carried {
        cost,
        grams: output,
        per_kg: cost.amount() / kilograms(output),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(inputs: &[i64], added: &[i64], grams: i64, per_kg: &str) {
        let money =
            |all: &[i64]| -> Vec<Money> { all.iter().copied().map(Money::hundredths).collect() };
        let carried = carry(&money(inputs), &money(added), Grams::whole(grams)).unwrap();
        assert_eq!(carried.per_kg.round_dp(2).to_string(), per_kg);
    }

    #[test]
    fn cost_stays_while_the_meat_dries() {
        check(&[1000], &[], 1000, "10");
        check(&[1000], &[], 500, "20");
        check(&[1000, 500], &[300], 1000, "18");
        assert!(carry(&[Money::hundredths(1)], &[], Grams::ZERO).is_err());
        assert!(carry(&[Money::hundredths(-1)], &[], Grams::whole(1)).is_err());
    }
}
