//! The butcher's test: what the usable part costs once the by-products have paid their share.

use super::says::PriceSays;
use super::{Money, is_a_price, kilograms};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

/// What came off besides the usable part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ByProduct {
    /// Its weight; nothing where the sheet gives only its value.
    pub grams: Grams,
    /// What it is worth.
    pub value: Money,
}

impl ByProduct {
    /// A weight at a price for a kilogram.
    ///
    /// # Errors
    /// A price below nothing, or one that cannot be.
    pub fn at(grams: Grams, per_kg: Decimal) -> Result<ByProduct> {
        is_a_price(per_kg, "price_per_kg")?;
        let value = Money::rounded(kilograms(grams) * per_kg)?;
        Ok(ByProduct { grams, value })
    }
}

/// A piece, bought whole and trimmed.
#[derive(Debug, Clone, Copy)]
pub struct Tested<'a> {
    /// What was bought.
    pub bought: Grams,
    /// What it cost.
    pub cost: Money,
    /// What came off.
    pub by_products: &'a [ByProduct],
    /// What is usable.
    pub usable: Grams,
    /// What of it can be sold after cooking, where it was cooked.
    pub cooked: Option<Grams>,
}

/// What a test shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TestOutcome {
    /// What the by-products are worth.
    pub by_products: Money,
    /// What the usable part has to carry: the cost less the by-products.
    pub net_cost: Money,
    /// For one usable kilogram.
    pub per_kg: Decimal,
    /// How many times the bought price that is.
    pub factor: Decimal,
    /// For one cooked kilogram, the by-products counted as worth nothing: the careful way.
    pub cooked_per_kg: Option<Decimal>,
    /// How many times the bought price that is.
    pub cooked_factor: Option<Decimal>,
    /// For one cooked kilogram, the by-products paid off.
    pub cooked_net_per_kg: Option<Decimal>,
    /// What was bought, less by-products and usable: trim loss, or what nobody weighed.
    pub lost: Grams,
}

/// The butcher's test.
///
/// # Errors
/// A weight or cost is missing or below nothing, by-products are worth more than the whole, or the
/// parts weigh more than the whole.
pub fn butchers_test(test: &Tested<'_>) -> Result<TestOutcome> {
    let missing = |field: &str, grams: Grams, says: PriceSays| match grams.is_none_left() {
        true => Err(Refusal::cannot_be(field, says)),
        false => Ok(()),
    };
    missing("bought", test.bought, PriceSays::NoBought)?;
    missing("usable", test.usable, PriceSays::NoUsable)?;
    if let Some(cooked) = test.cooked {
        missing("cooked", cooked, PriceSays::NoCooked)?;
    }
    if test.cost <= Money::ZERO {
        return Err(Refusal::cannot_be("cost", PriceSays::NoCost));
    }
    if let Some(nth) = test
        .by_products
        .iter()
        .position(|part| part.grams < Grams::ZERO || part.value < Money::ZERO)
    {
        return Err(Refusal::cannot_be(
            format!("by_products[{nth}]"),
            PriceSays::ByProductBelowNothing,
        ));
    }
    let parts: Grams = test.by_products.iter().map(|part| part.grams).sum();
    let lost = test.bought - parts - test.usable;
    if lost < Grams::ZERO {
        let says = PriceSays::PartsHeavier { grams: -lost };
        return Err(Refusal::cannot_be("usable", says));
    }
    let by_products: Money = test.by_products.iter().map(|part| part.value).sum();
    let net_cost = test.cost - by_products;
    if net_cost < Money::ZERO {
        let says = PriceSays::ByProductsDear {
            worth: by_products,
            cost: test.cost,
        };
        return Err(Refusal::cannot_be("by_products", says));
    }
    let bought_per_kg = test.cost.amount() / kilograms(test.bought);
    let per_kg = net_cost.amount() / kilograms(test.usable);
    let cooked_per_kg = test
        .cooked
        .map(|cooked| test.cost.amount() / kilograms(cooked));
    Ok(TestOutcome {
        by_products,
        net_cost,
        per_kg,
        factor: per_kg / bought_per_kg,
        cooked_per_kg,
        cooked_factor: cooked_per_kg.map(|per_kg| per_kg / bought_per_kg),
        cooked_net_per_kg: test
            .cooked
            .map(|cooked| net_cost.amount() / kilograms(cooked)),
        lost,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(bought: i64, cost: i64, part: (i64, i64), usable: i64, field: &str) {
        let test = Tested {
            bought: Grams::whole(bought),
            cost: Money::hundredths(cost),
            by_products: &[ByProduct {
                grams: Grams::whole(part.0),
                value: Money::hundredths(part.1),
            }],
            usable: Grams::whole(usable),
            cooked: None,
        };
        assert_eq!(butchers_test(&test).unwrap_err().field.unwrap(), field);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        check(0, 100, (1, 1), 1, "bought");
        check(10, 0, (1, 1), 1, "cost");
        check(10, 100, (1, 1), 0, "usable");
        check(10, 100, (5, 1), 6, "usable");
        check(10, 100, (1, 101), 5, "by_products");
        check(10, 100, (1, -1), 5, "by_products[0]");
    }
}
