//! What a usable kilogram costs: the butcher's test, joint cost, and cost carried on by a step.

mod butchers_test;
mod carry;
mod joint;
mod money;

pub use butchers_test::{ByProduct, Outcome, Tested, butchers_test};
pub use carry::{Carried, carry};
pub use joint::{By, Part, Share, joint_cost};
pub use money::Money;

use crate::grams::Grams;
use rust_decimal::Decimal;

/// A weight in kilograms, as prices are for a kilogram.
fn kilograms(grams: Grams) -> Decimal {
    Decimal::from_i128_with_scale(i128::from(grams.milligrams()), 6)
}
