//! What a lot cost: what was paid for the animal, split at the cutting table, carried on through every
//! step. Cooking and drying make a kilogram dearer, never the whole.

use crate::app::App;
use crate::error::Result;
use crate::wire::cures::number;
use crate::wire::money::CostRead;
use domain::cost::{By, Money, Part, joint_cost};
use domain::genealogy::Ancestry;
use domain::grams::Grams;
use domain::lot::LotId;
use domain::words::ProductKind;
use rust_decimal::Decimal;
use std::collections::HashMap;
use store::lots::{self, LotRow};
use store::{Conn, measurements, trace};

/// The cost of every lot looked at so far, in hundredths; none where a price is missing.
type Costs = HashMap<LotId, Option<Decimal>>;

/// The cost of a lot, split both ways.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &App, conn: &mut Conn, row: &LotRow) -> Result<CostRead> {
    let ancestry = trace::back(conn, row.id)?;
    let mut how = Vec::new();
    let by_value = cost(app, conn, row, &ancestry, By::SalesValue, &mut how)?;
    let by_weight = cost(app, conn, row, &ancestry, By::Weight, &mut Vec::new())?;
    let kilograms = Decimal::new(row.made_mg, 6);
    let per_kg = |cost: Option<Decimal>| cost.map(|cost| number((cost / kilograms).round_dp(2)));
    Ok(CostRead {
        lot: row.code.clone(),
        cost_minor: by_value.map(|cost| number(cost.round_dp(2))),
        per_kg_minor: per_kg(by_value),
        per_kg_by_weight_minor: per_kg(by_weight),
        how,
    })
}

/// Each lot after everything that went into it.
fn cost(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    ancestry: &Ancestry,
    by: By,
    how: &mut Vec<String>,
) -> Result<Option<Decimal>> {
    let mut order = ancestry.descendants_first(LotId(row.id));
    order.reverse();
    let keys: Vec<i32> = order.iter().map(|lot| lot.0).collect();
    let rows: HashMap<i32, LotRow> = lots::by_keys(conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let mut costs = Costs::new();
    for lot in order {
        let of = &rows[&lot.0];
        let uses = ancestry.uses_of(lot);
        let cost = match uses.is_empty() {
            true => paid(app, conn, of, how)?,
            false => {
                let mut sum = Some(Decimal::ZERO);
                for used in uses {
                    let part =
                        Decimal::from(used.milligrams) / Decimal::from(rows[&used.lot.0].made_mg);
                    let cost = costs.get(&used.lot).copied().flatten();
                    sum = sum.zip(cost).map(|(sum, cost)| sum + cost * part);
                }
                match sum {
                    Some(sum) => share(app, conn, of, sum, by, how)?,
                    None => None,
                }
            }
        };
        costs.insert(lot, cost);
    }
    Ok(costs.remove(&LotId(row.id)).flatten())
}

/// What was paid for a lot that was bought; something that costs next to nothing to have here is free.
fn paid(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    how: &mut Vec<String>,
) -> Result<Option<Decimal>> {
    let read = measurements::of_lot(conn, row.id)?;
    let price = read.iter().rev().find(|(_, of, _)| of == "price-minor");
    let name = app.product(conn, row.version_id)?.name("en").to_owned();
    let shown = row.code()?.shown();
    match price {
        Some((_, _, millionths)) => {
            let price = Decimal::new(*millionths, 6);
            let amount = (price / Decimal::ONE_HUNDRED).round_dp(2);
            how.push(format!(
                "{name} {shown}: {amount} was paid for {}.",
                Grams::from_milligrams(row.made_mg)
            ));
            Ok(Some(price))
        }
        None if row.species.is_empty() => {
            how.push(format!(
                "{name} {shown}: no price on record, counted as nothing."
            ));
            Ok(Some(Decimal::ZERO))
        }
        None => {
            how.push(format!("{name} {shown}: no price on record. Enter what was paid (price_minor) with its receipt."));
            Ok(None)
        }
    }
}

/// The share of one lot in what its step cost: all of it, or its part of a joint cost.
fn share(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    cost: Decimal,
    by: By,
    how: &mut Vec<String>,
) -> Result<Option<Decimal>> {
    let made = lots::of_deed(conn, row.deed_id)?;
    let [_, _, ..] = made.as_slice() else {
        return Ok(Some(cost));
    };
    let mut parts = Vec::with_capacity(made.len());
    let mut nth = None;
    for lot in &made {
        let product = app.product(conn, lot.version_id)?;
        // What is thrown away bears no cost, whatever it weighs.
        if product.kind == ProductKind::Waste {
            continue;
        }
        if lot.id == row.id {
            nth = Some(parts.len());
        }
        let price = product.value_minor_per_kg.or(product.price_minor_per_kg);
        parts.push(Part {
            grams: Grams::from_milligrams(lot.made_mg),
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
    let shares = joint_cost(money, &parts, by)?;
    let share = &shares[nth];
    how.push(format!(
        "{}: {} of {} that its step cost, by {}.",
        row.code()?.shown(),
        share.cost.amount(),
        money.amount(),
        match by {
            By::SalesValue => "what each piece sells for",
            By::Weight => "weight",
        }
    ));
    Ok(Some(Decimal::from(share.cost.in_hundredths())))
}
