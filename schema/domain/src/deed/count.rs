//! A count sets packs to what was found; the difference is unexplained, never loss, never sold.

use super::change::change;
use super::draw::{Draw, not_voided, numbered, weight};
use super::says::CountSays;
use crate::condition::ConditionSays;
use crate::dates::{Because, Rule};
use crate::grams::Grams;
use crate::limits::WEIGHING_GAIN_THOUSANDTHS;
use crate::lot::{Event, Lot, Pack, What};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, Result};
use crate::stop::Cause;
use crate::words::{Account, Being, Topic};
use chrono_tz::Tz;

/// What was found of one pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CountedPack {
    /// The pack's number.
    pub pack: u32,
    /// What it weighs, or nothing where it is missing.
    pub grams: Option<Grams>,
}

/// What the count changes. More in a pack than it ever held goes on record as it happened: it is a surplus, and
/// the pack goes nowhere until a person says what it is.
///
/// # Errors
/// No pack counted, one counted twice, a pack that never was, or more in it than it ever held where the count
/// is not told as it happened.
pub fn plan(
    lot: &Lot,
    found: &[CountedPack],
    moment: &Moment,
    zone: Tz,
    as_it_happened: bool,
) -> Result<Plan> {
    not_voided(lot, "lot")?;
    moment.not_before(lot.made_at, &lot.code, zone)?;
    if found.is_empty() {
        return Err(Refusal::cannot_be("packs", CountSays::Nothing));
    }
    let numbers: Vec<u32> = found.iter().map(|found| found.pack).collect();
    if let Some(nth) = super::draw::repeated(&numbers) {
        let detail = CountSays::Twice { pack: numbers[nth] };
        return Err(Refusal::cannot_be(format!("packs[{nth}].pack"), detail));
    }
    let mut plan = Plan::default();
    for (nth, found) in found.iter().enumerate() {
        let pack = numbered(lot, found.pack, &format!("packs[{nth}].pack"))?;
        let field = format!("packs[{nth}].grams");
        if let Some(grams) = found.grams {
            weight(grams, &field)?;
            if is_too_heavy(pack, grams) {
                let practice = |says| Because {
                    says,
                    rule: Rule::Practice(ConditionSays::ProofRule.into()),
                };
                if !as_it_happened {
                    let says = CountSays::TooMuch {
                        pack: lot.shown(pack.number),
                        made: pack.made,
                        grams,
                    };
                    return Err(Refusal::limit(field, &practice(says.into())));
                }
                let says = CountSays::Heavier {
                    pack: lot.shown(pack.number),
                    made: pack.made,
                    grams,
                };
                let because = practice(says.into());
                plan.warnings.push(because.says.clone());
                let cause = Cause::failed(Topic::History, because, moment.at);
                plan.stops.push((lot.id, Some(pack.id), cause.into()));
            }
        }
        let gap = pack.now.left - found.grams.unwrap_or(Grams::ZERO);
        let (event, account) = match gap {
            Grams::ZERO => (What::Noted, Account::Noted),
            gap => (What::Took(Account::Unexplained, gap), Account::Unexplained),
        };
        tell_gone(&mut plan, lot, pack, *found, moment);
        let event = Event::new(event, moment);
        let now = pack
            .after(&event, lot.later)
            .expect("what was found is not below zero");
        if gap != Grams::ZERO {
            let pack = lot.shown(pack.number);
            plan.warnings
                .push(CountSays::Unexplained { pack, gap }.into());
        }
        plan.changes.push(change(
            &Draw {
                lot,
                pack,
                grams: gap,
            },
            account,
            gap,
            now,
        ));
    }
    Ok(plan)
}

/// Is there more in a pack than it was ever weighed with, beyond what scales differ by? What it held when it was
/// counted last is no news.
pub(super) fn is_too_heavy(pack: &Pack, grams: Grams) -> bool {
    let most = pack.made.max(pack.now.left);
    grams > most + most.thousandths(WEIGHING_GAIN_THOUSANDTHS)
}

/// What is on record as gone is counted again, or as gone once more: one of the two is wrong, and that is
/// told. What had left and is found here was nobody knows where meanwhile, and so was what has to be kept cold and
/// was missing: it goes nowhere until a person says by name what becomes of it.
fn tell_gone(plan: &mut Plan, lot: &Lot, pack: &Pack, found: CountedPack, moment: &Moment) {
    let being = pack.now.being;
    if pack.now.is_on_hand() {
        return;
    }
    let shown = || lot.shown(pack.number);
    let warning = match (found.grams, being) {
        (None, being) => CountSays::GoneAlready {
            pack: shown(),
            being,
        },
        // What keeps by itself may stand anywhere.
        (Some(_), Being::Missing) if !lot.needs_cold() => return,
        (Some(_), Being::Missing) => CountSays::WasMissing { pack: shown() },
        (Some(_), Being::Used) => CountSays::WasUsed { pack: shown() },
        (Some(_), being) => CountSays::WasGone {
            pack: shown(),
            being,
        },
    };
    plan.warnings.push(warning.into());
    let out_of_sight = being.left_the_kitchen() || being == Being::Missing;
    if found.grams.is_none() || !out_of_sight {
        return;
    }
    // Of what was only missing, what is in it is known; how warm it was is not.
    let (topic, says) = match being {
        Being::Missing => (Topic::Cold, CountSays::WasMissing { pack: shown() }),
        being => {
            let pack = shown();
            (Topic::History, CountSays::Found { pack, being })
        }
    };
    let because = Because {
        says: says.into(),
        rule: Rule::Practice(ConditionSays::ProofRule.into()),
    };
    let cause = Cause::failed(topic, because, moment.at);
    plan.stops.push((lot.id, Some(pack.id), cause.into()));
}
