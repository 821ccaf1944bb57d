//! Joint cost: what each cut of an animal has to carry of its price.

mod joint;
mod money;
mod says;

pub use joint::{By, CutShare, JointPart, joint_cost};
pub use money::Money;
pub use says::PriceSays;

use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::says::Arg;
use rust_decimal::Decimal;

/// No kilogram costs more: what does is a typing error.
const MOST_FOR_A_KILOGRAM: i64 = 1_000_000;

/// A weight in kilograms, as prices are for a kilogram.
fn kilograms(grams: Grams) -> Decimal {
    Decimal::from_i128_with_scale(i128::from(grams.milligrams()), 6)
}

fn is_a_price(per_kg: Decimal, field: &str) -> Result<()> {
    match (Decimal::ZERO..=Decimal::from(MOST_FOR_A_KILOGRAM)).contains(&per_kg) {
        true => Ok(()),
        false => Err(Refusal::cannot_be(
            field,
            PriceSays::PriceCannotBe {
                price: Arg::Number(per_kg),
            },
        )),
    }
}
