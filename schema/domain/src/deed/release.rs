//! A cured piece is released: from now on things are made of it, and sold.

use super::draw::{Choice, not_voided, settle};
use super::step::change;
use crate::cure_room::Release;
use crate::cure_room::ReleaseSays;
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::Lot;
use crate::moment::Moment;
use crate::plan::{Plan, Reason};
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::words::{Account, Topic};
use chrono_tz::Tz;

/// What the release adds to the record.
///
/// # Errors
/// It needs no release or has one, nothing is left, or a number of its rule is not met: then all of
/// them are told.
pub fn plan(lot: &Lot, release: &Release, by: &str, moment: &Moment, zone: Tz) -> Result<Plan> {
    not_voided(lot, "lot")?;
    moment.not_before(lot.made_at, &lot.code.shown(), zone)?;
    if lot.product.release.is_none() {
        let detail = format!(
            "{} needs no release: its product has no rule for one.",
            lot.code.shown()
        );
        return Err(Refusal::cannot_be("lot", detail));
    }
    if lot.released {
        let detail = format!("{} is released already.", lot.code.shown());
        return Err(Refusal::new(RefusalKind::Clash, "lot", detail));
    }
    if !release.is_allowed() {
        let detail = ReleaseSays::NotReady {
            lot: lot.code.clone(),
            unmet: release
                .unmet
                .iter()
                .map(|unmet| unmet.says.clone())
                .collect(),
        };
        return Err(Refusal::new(RefusalKind::NotReleased, "lot", detail));
    }
    let draws = settle(lot, &Choice::All, "")?;
    let changes = draws
        .iter()
        .map(|draw| change(draw, Account::Noted, Grams::ZERO, draw.pack.now));
    let lost = release
        .loss
        .map(|loss| format!(", {loss} of the green weight lost"));
    let says = format!(
        "Released on {} by {by}: {} days from the first salt{}.",
        moment.day,
        release.days,
        lost.unwrap_or_default()
    );
    let because = Because::house(says, "release rule");
    Ok(Plan {
        changes: changes.collect(),
        reasons: vec![(
            lot.id,
            Reason {
                topic: Topic::Release,
                because,
            },
        )],
        ..Plan::default()
    })
}
