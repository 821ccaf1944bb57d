//! A reading with grams sets a one-pack lot's weight; the difference is drying.

use super::change::change;
use super::draw::{Choice, Draw, settle, weight};
use super::says::WeighSays;
use crate::grams::Grams;
use crate::limits::WEIGHING_GAIN_THOUSANDTHS;
use crate::lot::{Event, Lot, What};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, Result};
use crate::words::Account;
use chrono_tz::Tz;

/// What the weighing changes, or why it cannot be right.
///
/// # Errors
/// A lot of several packs, nothing left, or more than the weight before and 1 %.
pub fn plan(lot: &Lot, grams: Grams, moment: &Moment, zone: Tz) -> Result<Plan> {
    weight(grams, "grams")?;
    moment.not_before(lot.made_at, &lot.code, zone)?;
    if lot.pack_count != 1 {
        let detail = WeighSays::SeveralPacks {
            lot: lot.code.clone(),
            packs: lot.pack_count,
        };
        return Err(Refusal::cannot_be("grams", detail));
    }
    let draws = settle(
        lot,
        &Choice::One {
            pack: Some(1),
            grams: None,
        },
        "",
    )?;
    let pack = draws[0].pack;
    let before = pack.now.left;
    if grams > before + before.thousandths(WEIGHING_GAIN_THOUSANDTHS) {
        let lot = lot.code.clone();
        let detail = WeighSays::Heavier { lot, before, grams };
        return Err(Refusal::cannot_be("grams", detail));
    }
    let lost = before - grams;
    let event = Event::new(What::Took(Account::Lost, lost), moment);
    let now = pack
        .after(&event, lot.later)
        .expect("the weight is above zero");
    let draw = Draw {
        lot,
        pack,
        grams: lost,
    };
    Ok(Plan {
        changes: vec![change(&draw, Account::Lost, lost, now)],
        ..Plan::default()
    })
}
