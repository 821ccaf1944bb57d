//! How a lot was cured, and how strong a curing salt is.

use super::why::links;
use super::{Family, Relative};
use crate::cure::Strength;
use crate::dates::Because;
use crate::lot::LotId;
use crate::measure::Percent;
use crate::product::Product;
use crate::words::{Quantity, Topic};
use rust_decimal::Decimal;

/// The strength that was read off the bag of a lot of curing salt, else that of the list.
pub fn strength(salt: &Relative) -> Strength {
    strength_read(&salt.lot.product, |quantity| salt.last_reading(quantity))
}

/// The same by the last readings of a lot, in millionths of their units.
pub fn strength_read(product: &Product, last: impl Fn(Quantity) -> Option<i64>) -> Strength {
    let mut strength = product.curing_salt().unwrap_or(Strength::unknown());
    let percent = |quantity: Quantity| {
        let read = last(quantity);
        read.map(|millionths| Percent::new(Decimal::new(millionths, 6)))
    };
    let (nitrite, nitrate) = (
        percent(Quantity::NitritePercent),
        percent(Quantity::NitratePercent),
    );
    if nitrite.is_some() || nitrate.is_some() {
        (strength.nitrite, strength.nitrate) = (nitrite, nitrate);
    }
    strength
}

/// How a lot was cured: by its own deed, or that of the nearest lot that it came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Cured {
    /// The lot that was cured.
    pub lot: LotId,
    /// Nitrite that went in, as sodium nitrite, in millionths of a part per million.
    pub nitrite_ppm: i64,
    /// Nitrate that went in, as sodium nitrate, in millionths of a part per million.
    pub nitrate_ppm: i64,
    /// Salt, in millionths of a per cent.
    pub salt_percent: i64,
    /// Why.
    pub because: Vec<Because>,
}

/// How a lot was cured, if it was.
pub fn cured(family: &Family, lot: LotId) -> Option<Cured> {
    let line = family.youngest_first(lot);
    let of = line
        .into_iter()
        .find(|of| of.last_reading(Quantity::NitritePpm).is_some())?;
    let last = |quantity| of.last_reading(quantity).unwrap_or(0);
    Some(Cured {
        lot: of.lot.id,
        nitrite_ppm: last(Quantity::NitritePpm),
        nitrate_ppm: last(Quantity::NitratePpm),
        salt_percent: last(Quantity::SaltPercent),
        because: links(of, Topic::Cure),
    })
}
