//! The traceability rule for listed foods: does it reach this purchase, and what has to be kept.

use super::keeping::Record;
use super::says::ListedSays;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, RowId};
use crate::says::Says;
use crate::words::words;
use chrono::NaiveDate;
use rust_decimal::Decimal;

words! {
    /// Who sold it.
    Seller {
        FarmItself = "farm-itself", FarmPack = "farm-pack", Distributor = "distributor",
        ExemptSupplier = "exempt-supplier", OtherShop = "other-shop",
    }
}

words! {
    /// What becomes of it.
    Use {
        Served = "served", ShippedOn = "shipped-on", KillStepHere = "kill-step-here",
        LeavesList = "leaves-list",
    }
}

/// The rule, by its parts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FsmaReach {
    /// Yearly food sales up to which a restaurant is out, in dollars of the base year.
    pub exempt_sales: Bound,
    /// Not a listed food.
    pub listed: RowId,
    /// Meat and poultry under inspection.
    pub inspected: RowId,
    /// Received after a kill step or such a change.
    pub after_kill_step: RowId,
    /// Bought from the farm itself.
    pub farm_direct: RowId,
    /// Packed on the farm, intact, with its address and telephone.
    pub farm_pack: RowId,
    /// Bought once from another shop.
    pub other_shop: RowId,
    /// What receiving records hold.
    pub receiving: RowId,
    /// What they hold from a supplier who is out of the rule.
    pub receiving_exempt: RowId,
    /// A kill step done here.
    pub kill_step: RowId,
    /// Changed so that it leaves the list.
    pub leaves_list: RowId,
    /// What goes into and comes out of a change.
    pub change: RowId,
    /// None of that for what is not shipped.
    pub not_shipped: RowId,
    /// Nobody enforces it before this day.
    pub enforced_from: (NaiveDate, RowId),
}

impl FsmaReach {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        vec![&mut self.exempt_sales]
    }
}

/// One purchase.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Purchase {
    /// Average of yearly food sold or provided, three years, in dollars of the base year.
    pub average_sales: Decimal,
    /// Is it on the list?
    pub listed: bool,
    /// Is or was it under exclusive federal meat or poultry inspection?
    pub inspected: bool,
    /// Did it have a kill step, or leave the list, before it came?
    pub after_kill_step: bool,
    /// Who sold it.
    pub seller: Seller,
    /// What becomes of it here.
    pub becomes: Use,
}

/// What has to be kept, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToKeep {
    /// The records; none if the rule does not reach it.
    pub records: Vec<Record>,
    /// Also a record that the kill step was done.
    pub kill_step_record: bool,
    /// In a sentence.
    pub says: Says,
    /// The rows behind it.
    pub rows: Vec<RowId>,
}

fn sales(average: Decimal) -> Result<Decimal> {
    match average < Decimal::ZERO {
        true => Err(Refusal::cannot_be("average_sales", ListedSays::NoSales)),
        false => Ok(average),
    }
}

/// What has to be kept of a purchase (`additions-A1` to `A14`).
///
/// # Errors
/// Sales below nothing.
pub fn keep(reach: &FsmaReach, purchase: &Purchase) -> Result<ToKeep> {
    let answer = |records: &[Record], says: ListedSays, rows: &[&RowId]| ToKeep {
        records: records.to_vec(),
        kill_step_record: false,
        says: says.into(),
        rows: rows.iter().map(|&row| row.clone()).collect(),
    };
    let out = |says: ListedSays, row: &RowId| Ok(answer(&[], says, &[row]));
    if reach.exempt_sales.allows(sales(purchase.average_sales)?) {
        return out(ListedSays::SellsLittle, &reach.exempt_sales.row);
    }
    if !purchase.listed {
        return out(ListedSays::NotListed, &reach.listed);
    }
    if purchase.inspected {
        return out(ListedSays::Inspected, &reach.inspected);
    }
    if purchase.after_kill_step {
        return out(ListedSays::AfterKillStep, &reach.after_kill_step);
    }
    match purchase.seller {
        Seller::FarmPack => return out(ListedSays::FarmPack, &reach.farm_pack),
        Seller::FarmItself => {
            let says = ListedSays::FarmItself;
            return Ok(answer(&[Record::FarmDirect], says, &[&reach.farm_direct]));
        }
        Seller::OtherShop => {
            let says = ListedSays::OtherShop;
            return Ok(answer(
                &[Record::OneOffPurchase],
                says,
                &[&reach.other_shop],
            ));
        }
        Seller::Distributor | Seller::ExemptSupplier => {}
    }
    let (receiving, row) = match purchase.seller {
        Seller::ExemptSupplier => (Record::ListedReceivingExempt, &reach.receiving_exempt),
        _ => (Record::ListedReceiving, &reach.receiving),
    };
    Ok(match purchase.becomes {
        Use::Served => answer(&[receiving], ListedSays::Served, &[row, &reach.not_shipped]),
        Use::LeavesList => answer(
            &[receiving],
            ListedSays::LeavesList,
            &[row, &reach.leaves_list],
        ),
        Use::KillStepHere => ToKeep {
            kill_step_record: true,
            ..answer(&[receiving], ListedSays::KillStep, &[row, &reach.kill_step])
        },
        Use::ShippedOn => answer(
            &[
                receiving,
                Record::ListedInputs,
                Record::ListedOutput,
                Record::ListedShipping,
            ],
            ListedSays::ShippedOn,
            &[row, &reach.change],
        ),
    })
}
