//! Joint cost: one animal was paid for, many cuts are sold.

use super::says::PriceSays;
use super::{Money, is_a_price, kilograms};
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// One of the cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct JointPart {
    /// Its weight.
    pub grams: Grams,
    /// What a kilogram of it sells for, where it is parted.
    pub price_per_kg: Decimal,
}

/// How the cost is shared out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum By {
    /// By what each cut sells for: every cut then earns the same margin. The usual way.
    SalesValue,
    /// By weight: the feet then seem to lose money, and whoever drops them makes the bacon lose.
    Weight,
}

/// A cut's share of the cost.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutShare {
    /// Its share. The shares sum to the whole.
    pub cost: Money,
    /// What it sells for.
    pub value: Decimal,
    /// Its cost for one kilogram, before the share was rounded.
    pub per_kg: Decimal,
    /// What is left of the sale.
    pub profit: Decimal,
}

/// Shares out what was paid over the cuts. The odd hundredths go to the largest remainders, the
/// earlier cut first, so that the shares sum to the whole exactly.
///
/// # Errors
/// No cost, no cut, a cut without weight, a price below nothing, or cuts that sell for nothing.
pub fn joint_cost(cost: Money, parts: &[JointPart], by: By) -> Result<Vec<CutShare>> {
    if cost <= Money::ZERO {
        return Err(Refusal::cannot_be("cost", PriceSays::NoCost));
    }
    for (nth, part) in parts.iter().enumerate() {
        if part.grams.is_none_left() {
            return Err(Refusal::cannot_be(
                format!("parts[{nth}].grams"),
                PriceSays::NoWeight,
            ));
        }
        is_a_price(part.price_per_kg, &format!("parts[{nth}].price_per_kg"))?;
    }
    let value = |part: &JointPart| kilograms(part.grams) * part.price_per_kg;
    let keys: Vec<Decimal> = parts
        .iter()
        .map(|part| match by {
            By::SalesValue => value(part),
            By::Weight => kilograms(part.grams),
        })
        .collect();
    let all: Decimal = keys.iter().sum();
    if all.is_zero() {
        return Err(Refusal::cannot_be("parts", PriceSays::NothingSells));
    }
    let costs = shared_out(cost, &keys, all)?;
    Ok(parts
        .iter()
        .zip(&keys)
        .zip(costs)
        .map(|((part, key), share)| CutShare {
            cost: share,
            value: value(part),
            per_kg: cost.amount() * key / all / kilograms(part.grams),
            profit: value(part) - share.amount(),
        })
        .collect())
}

/// By largest remainder; no key is below nothing, and `all`, their sum, is above it.
fn shared_out(whole: Money, keys: &[Decimal], all: Decimal) -> Result<Vec<Money>> {
    let share = |key: &Decimal| Decimal::from(whole.in_hundredths()).checked_mul(*key);
    let exact: Option<Vec<Decimal>> = keys.iter().map(|key| Some(share(key)? / all)).collect();
    let exact = exact
        .ok_or_else(|| Refusal::cannot_be("cost", PriceSays::TooMuchToShare { cost: whole }))?;
    let mut shares: Vec<i64> = exact
        .iter()
        .map(|share| share.floor().to_i64().unwrap_or(0))
        .collect();
    let odd = whole.in_hundredths() - shares.iter().sum::<i64>();
    let mut order: Vec<usize> = (0..keys.len()).collect();
    order.sort_by_key(|&nth| (std::cmp::Reverse(exact[nth].fract()), nth));
    for nth in order.into_iter().take(odd.try_into().unwrap_or(0)) {
        shares[nth] += 1;
    }
    Ok(shares.into_iter().map(Money::hundredths).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn check(cost: i64, parts: &[(i64, i64)], by: By, expected: &[i64]) {
        let parts: Vec<JointPart> = parts
            .iter()
            .map(|(grams, price)| JointPart {
                grams: Grams::whole(*grams),
                price_per_kg: Decimal::new(*price, 2),
            })
            .collect();
        let shares = joint_cost(Money::hundredths(cost), &parts, by).unwrap();
        let costs: Vec<i64> = shares.iter().map(|s| s.cost.in_hundredths()).collect();
        assert_eq!(costs, expected);
    }

    #[test]
    fn odd_hundredths_go_to_the_largest_remainder_then_to_the_first() {
        check(
            100,
            &[(1000, 1), (1000, 1), (1000, 1)],
            By::SalesValue,
            &[34, 33, 33],
        );
        check(100, &[(1000, 0), (1000, 5)], By::SalesValue, &[0, 100]);
        check(100, &[(1000, 0), (3000, 5)], By::Weight, &[25, 75]);
        check(2, &[(1, 1), (2, 1), (3, 1)], By::Weight, &[0, 1, 1]);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let part = |grams, price: i64| JointPart {
            grams: Grams::whole(grams),
            price_per_kg: price.into(),
        };
        let field = |cost, parts: &[JointPart]| {
            joint_cost(Money::hundredths(cost), parts, By::SalesValue)
                .unwrap_err()
                .field
                .unwrap()
        };
        assert_eq!(field(0, &[part(1, 1)]), "cost");
        assert_eq!(field(1, &[]), "parts");
        assert_eq!(field(1, &[part(1, 0)]), "parts");
        assert_eq!(field(1, &[part(1, 1), part(0, 1)]), "parts[1].grams");
        assert_eq!(field(1, &[part(1, -1)]), "parts[0].price_per_kg");
        assert_eq!(field(1, &[part(1, i64::MAX)]), "parts[0].price_per_kg");
        let much = part(i64::MAX / 1000, 1_000_000);
        assert_eq!(field(i64::MAX, &[much]), "cost");
    }

    proptest! {
        #[test]
        fn the_shares_sum_to_the_whole(
            cost in 1i64..1_000_000_000,
            parts in prop::collection::vec((1i64..500_000_000, 1i64..100_000), 1..40),
            by_weight: bool,
        ) {
            let parts: Vec<JointPart> = parts.iter().map(|(milligrams, price)| JointPart {
                grams: Grams::from_milligrams(*milligrams), price_per_kg: Decimal::new(*price, 3),
            }).collect();
            let by = if by_weight { By::Weight } else { By::SalesValue };
            let shares = joint_cost(Money::hundredths(cost), &parts, by).unwrap();
            prop_assert_eq!(shares.iter().map(|share| share.cost).sum::<Money>(), Money::hundredths(cost));
            prop_assert!(shares.iter().all(|share| share.cost >= Money::ZERO));
        }
    }
}
