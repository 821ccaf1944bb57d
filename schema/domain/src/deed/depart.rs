//! A pack leaves: sold, served, discarded, shipped, or returned to its supplier.

use super::change::taken;
use super::draw::{Choice, settle};
use super::says::DepartSays;
use crate::lot::Lot;
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::stop::{Act, Passed, ask};
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

/// What leaves, or why it may not. What went to people although something stood in its way goes on
/// record as it happened, and stays flagged.
///
/// # Errors
/// Nothing or not enough left, a voided lot, a time before it was made, a stop that stands, or a pack
/// that a customer brought back and that is never for sale again.
pub fn plan(
    kind: DepartureKind,
    lot: &Lot,
    choice: &Choice,
    moment: &Moment,
    zone: Tz,
    as_it_happened: bool,
) -> Result<Plan> {
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let draws = settle(lot, choice, "")?;
    for draw in &draws {
        if kind == DepartureKind::Sell && draw.pack.now.taken_back {
            let pack = lot.shown(draw.pack.number);
            let detail = DepartSays::TakenBack { pack };
            return Err(Refusal::new(RefusalKind::Clash, "pack", detail));
        }
    }
    let to_people = matches!(
        kind,
        DepartureKind::Sell | DepartureKind::Serve | DepartureKind::Ship
    );
    let leaves = Act::Leave {
        labelled: kind != DepartureKind::Serve,
    };
    let passed = match to_people {
        true => ask(&draws, leaves, moment, as_it_happened, |_| "lot".into())?,
        false => Passed::default(),
    };
    let mut plan = Plan {
        warnings: passed.warnings,
        reasons: passed.reasons,
        ..Plan::default()
    };
    for draw in &draws {
        plan.changes.push(taken(draw, account(kind), moment)?);
    }
    Ok(plan)
}
