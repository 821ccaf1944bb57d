//! A customer brings a pack back: it is on hand again, never for sale, and stopped until a person disposes of it.

use super::change::change;
use super::draw::{Draw, not_voided, numbered, weight};
use super::says::TakeBackSays;
use crate::condition::ConditionSays;
use crate::dates::{Because, Rule};
use crate::grams::Grams;
use crate::lot::{Event, Lot, What};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::stop::Cause;
use crate::words::{Account, Topic};
use chrono_tz::Tz;

/// What comes back, or why it cannot. `away` is what customers still have of that pack: sold or
/// shipped, less what came back before.
///
/// # Errors
/// A pack that never was, or more than customers have of it.
pub fn plan(
    lot: &Lot,
    pack: u32,
    grams: Option<Grams>,
    away: Grams,
    moment: &Moment,
    zone: Tz,
) -> Result<Plan> {
    not_voided(lot, "lot")?;
    let pack = numbered(lot, pack, "pack")?;
    moment.not_before(lot.made_at, &lot.code, zone)?;
    let grams = grams.unwrap_or(away);
    if away <= Grams::ZERO {
        let detail = TakeBackSays::NotSold {
            pack: lot.shown(pack.number),
            being: pack.now.being,
        };
        return Err(Refusal::new(RefusalKind::Clash, "pack", detail));
    }
    weight(grams, "grams")?;
    if grams > away {
        let pack = lot.shown(pack.number);
        let detail = TakeBackSays::TooMuch { pack, away, grams };
        return Err(Refusal::new(RefusalKind::NotEnough, "grams", detail));
    }
    let draw = Draw { lot, pack, grams };
    let event = Event::new(What::TakenBack(grams), moment);
    let now = pack
        .after(&event, lot.later)
        .expect("a gain is never below zero");
    // Nobody knows how it was kept. Common practice, no source: it is thrown away, unless somebody who may says
    // by name that it need not be.
    let because = Because {
        says: TakeBackSays::CameBack {
            pack: lot.shown(pack.number),
        }
        .into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    };
    // Whoever has it in the hand reads at once what to do with it.
    let warnings = vec![because.says.clone()];
    let stop = Cause::failed(Topic::CameBack, because, moment.at);
    Ok(Plan {
        warnings,
        stops: vec![(lot.id, Some(pack.id), stop.into())],
        changes: vec![change(&draw, Account::TakenBack, grams, now)],
        ..Plan::default()
    })
}
