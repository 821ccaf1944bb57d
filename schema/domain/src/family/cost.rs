//! What a lot cost: what was paid for the animal, split at the cutting table, carried on through every
//! step. Cooking and drying make a kilogram dearer, never the whole.

use super::{Family, Parted, Relative};
use crate::code::LotCode;
use crate::cost::{By, JointPart, Money, joint_cost};
use crate::grams::Grams;
use crate::lot::LotId;
use crate::messages;
use crate::refusal::Result;
use crate::says::{Arg, Says, Texts};
use crate::words::{ProductKind, Quantity};
use rust_decimal::Decimal;
use std::collections::HashMap;

messages! {
    /// How a cost came about.
    CostSays in "cost-of" {
        Paid "paid" { product: Texts, lot: LotCode, amount: Arg, grams: Grams },
        Nothing "nothing" { product: Texts, lot: LotCode },
        NoPrice "no-price" { product: Texts, lot: LotCode },
        BearsNothing "bears-nothing" { product: Texts, lot: LotCode },
        ShareByValue "share-by-value" { lot: LotCode, share: Arg, of: Arg },
        ShareByWeight "share-by-weight" { lot: LotCode, share: Arg, of: Arg },
    }
}

/// What a lot cost, in hundredths of the currency, and how that came about.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Cost {
    /// Nothing where a price is missing.
    pub minor: Option<Decimal>,
    /// Each price and each share, the oldest first.
    pub how: Vec<Says>,
}

/// The cost of a lot, joint costs split one way or the other. The family has to be loaded with what
/// else each step made, and with the history of what dried.
///
/// # Errors
/// A joint cost that cannot be split.
pub fn cost(family: &Family, lot: LotId, by: By) -> Result<Cost> {
    let mut told = Cost::default();
    let mut costs: HashMap<LotId, Option<Decimal>> = HashMap::new();
    let mut parted: HashMap<LotId, Parted> = HashMap::new();
    let order = family.youngest_first(lot);
    for of in order.into_iter().rev() {
        let uses = family.ancestry.uses_of(of.lot.id);
        let cost = match uses.is_empty() {
            true => paid(of, &mut told.how),
            false => {
                let mut sum = Some(Decimal::ZERO);
                for used in uses {
                    let made = family.get(used.lot).map_or(Grams::ZERO, Relative::made);
                    let parted = parted.entry(used.lot).or_insert_with(|| {
                        family.get(used.lot).map(Parted::of).unwrap_or_default()
                    });
                    let part = parted.taken_by(used.step, used.milligrams, made);
                    let cost = costs.get(&used.lot).copied().flatten();
                    sum = sum.zip(cost).map(|(sum, cost)| sum + cost * part);
                }
                match sum {
                    Some(sum) => share(family, of, sum, by, &mut told.how)?,
                    None => None,
                }
            }
        };
        costs.insert(of.lot.id, cost);
    }
    told.minor = costs.remove(&lot).flatten();
    Ok(told)
}

/// What was paid for a lot that was bought; something that costs next to nothing to have here is free.
fn paid(of: &Relative, how: &mut Vec<Says>) -> Option<Decimal> {
    let product = of.lot.product.named();
    let lot = of.lot.code.clone();
    match of.last_reading(Quantity::PriceMinor) {
        Some(millionths) => {
            let price = Decimal::new(millionths, 6);
            let amount = Arg::Money((price / Decimal::ONE_HUNDRED).round_dp(2));
            let grams = of.made();
            how.push(
                CostSays::Paid {
                    product,
                    lot,
                    amount,
                    grams,
                }
                .into(),
            );
            Some(price)
        }
        None if !of.has_species() => {
            how.push(CostSays::Nothing { product, lot }.into());
            Some(Decimal::ZERO)
        }
        None => {
            how.push(CostSays::NoPrice { product, lot }.into());
            None
        }
    }
}

/// The share of one lot in what its step cost: all of it, or its part of a joint cost.
fn share(
    family: &Family,
    of: &Relative,
    cost: Decimal,
    by: By,
    how: &mut Vec<Says>,
) -> Result<Option<Decimal>> {
    let made = family
        .made
        .get(&of.lot.made_by)
        .map_or(&[][..], Vec::as_slice);
    let [_, _, ..] = made else {
        return Ok(Some(cost));
    };
    let mut parts = Vec::with_capacity(made.len());
    let mut nth = None;
    let mut unpriced = Vec::new();
    for lot in made.iter().filter_map(|lot| family.get(*lot)) {
        let product = &lot.lot.product;
        // What is thrown away takes no share of the cost, whatever it weighs.
        if product.kind == ProductKind::Waste {
            continue;
        }
        if lot.lot.id == of.lot.id {
            nth = Some(parts.len());
        }
        let price = product.sale.worth_minor_per_kg();
        if price.is_none() {
            let (product, lot) = (product.named(), lot.lot.code.clone());
            unpriced.push(CostSays::BearsNothing { product, lot });
        }
        parts.push(JointPart {
            grams: lot.made(),
            price_per_kg: Decimal::new(price.unwrap_or(0), 2),
        });
    }
    let Some(nth) = nth else {
        return Ok(Some(Decimal::ZERO));
    };
    if parts.len() == 1 {
        return Ok(Some(cost));
    }
    let by = match parts.iter().all(|part| part.price_per_kg.is_zero()) {
        true => By::Weight,
        false => by,
    };
    let money = Money::rounded(cost / Decimal::ONE_HUNDRED)?;
    if money == Money::ZERO {
        return Ok(Some(Decimal::ZERO));
    }
    if by == By::SalesValue {
        how.extend(unpriced.into_iter().map(Says::from));
    }
    let shares = joint_cost(money, &parts, by)?;
    let share = &shares[nth];
    let lot = of.lot.code.clone();
    let (part, whole) = (Arg::Money(share.cost.amount()), Arg::Money(money.amount()));
    how.push(match by {
        By::SalesValue => CostSays::ShareByValue {
            lot,
            share: part,
            of: whole,
        }
        .into(),
        By::Weight => CostSays::ShareByWeight {
            lot,
            share: part,
            of: whole,
        }
        .into(),
    });
    Ok(Some(Decimal::from(share.cost.in_hundredths())))
}
