//! A cured piece is released: from now on things are made of it, and sold.

use super::change::change;
use super::draw::{Choice, not_voided, settle};
use super::says::ReleaseDeedSays;
use crate::cure_room::Release;
use crate::cure_room::ReleaseSays;
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::Lot;
use crate::measure::Percent;
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
    moment.not_before(lot.made_at, &lot.code, zone)?;
    if !lot.product.is_hung() {
        let lot = lot.code.clone();
        let detail = ReleaseDeedSays::NoRule { lot };
        return Err(Refusal::cannot_be("lot", detail));
    }
    if lot.released {
        let lot = lot.code.clone();
        let detail = ReleaseDeedSays::Already { lot };
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
        return Err(Refusal::new(RefusalKind::NotReady, "lot", detail));
    }
    let draws = settle(lot, &Choice::All, "")?;
    let changes = draws
        .iter()
        .map(|draw| change(draw, Account::Noted, Grams::ZERO, draw.pack.now));
    let (day, by, days) = (moment.day, by.to_owned(), release.days);
    let says = match release.loss {
        None => ReleaseDeedSays::Released { day, by, days },
        Some(loss) => {
            let loss = Percent::new(loss.number().round_dp(2));
            ReleaseDeedSays::ReleasedLighter {
                day,
                by,
                days,
                loss,
            }
        }
    };
    let because = Because::house(says, ReleaseDeedSays::Rule);
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
