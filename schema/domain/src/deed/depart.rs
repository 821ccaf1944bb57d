//! A pack leaves: sold, served, discarded, shipped, or returned to its supplier.

use super::draw::{Choice, settle};
use super::says::DepartSays;
use super::step::taken;
use crate::lot::Lot;
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::words::{Account, DepartureKind};
use chrono_tz::Tz;

/// The account that a departure's grams go to.
pub const fn account(kind: DepartureKind) -> Account {
    match kind {
        DepartureKind::Sell => Account::Sold,
        DepartureKind::Serve => Account::Served,
        DepartureKind::Discard => Account::Discarded,
        DepartureKind::Ship => Account::Shipped,
        DepartureKind::Return => Account::Returned,
    }
}

/// What leaves, or why it may not.
///
/// # Errors
/// Nothing or not enough left, a voided lot, a time before it was made, or a pack that a customer
/// brought back and that is never for sale again.
pub fn plan(
    kind: DepartureKind,
    lot: &Lot,
    choice: &Choice,
    moment: &Moment,
    zone: Tz,
) -> Result<Plan> {
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let draws = settle(lot, choice, "")?;
    let to_people = matches!(
        kind,
        DepartureKind::Sell | DepartureKind::Serve | DepartureKind::Ship
    );
    if to_people && lot.waits_for_release() {
        return Err(lot.not_released("lot"));
    }
    let mut plan = Plan::default();
    for draw in &draws {
        let pack = lot.shown(draw.pack.number);
        if kind == DepartureKind::Sell && draw.pack.now.taken_back {
            let detail = DepartSays::TakenBack { pack };
            return Err(Refusal::new(RefusalKind::Clash, "pack", detail));
        }
        let past = draw.pack.now.use_by.filter(|use_by| *use_by < moment.day);
        if let (Some(date), DepartureKind::Sell | DepartureKind::Serve) = (past, kind) {
            plan.warnings
                .push(DepartSays::PastDate { pack, date }.into());
        }
        plan.changes.push(taken(draw, account(kind), moment.day)?);
    }
    Ok(plan)
}
