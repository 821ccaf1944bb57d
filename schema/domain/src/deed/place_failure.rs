//! A place did not stay cold: the freezer failed in the night. One act over the place; each lot that stood
//! in it is judged by what sort of food it is.

use super::hold::note;
use super::says::PartSays;
use crate::dates::{Because, Rule};
use crate::heat::{Degrees, FailureRules, HeatRules, hours};
use crate::lot::{Lot, Pack, PackId};
use crate::measure::Temperature;
use crate::messages;
use crate::plan::Plan;
use crate::rows::{Finding, Gravity, Rows};
use crate::says::{Arg, Says};
use crate::stability::StabilityLimit;
use crate::stop::{Cause, StopSays};
use crate::words::{State, Topic};
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use rust_decimal::Decimal;
use std::collections::HashMap;

messages! {
    /// What is said of food in a place that did not stay cold.
    FailureSays in "failure" {
        NothingThere "nothing-there" { place: String },
        Stable "stable" { lot: Arg },
        StayedCold "stayed-cold" { lot: Arg },
        AllStayedCold "all-stayed-cold" { lots: usize },
        InTime "in-time" { lot: Arg, warm: TimeDelta, within: TimeDelta },
        InTimeAgain "in-time-again" { lot: Arg, warm: TimeDelta, before: TimeDelta, within: TimeDelta },
        Broke "broke" { place: String, warm: TimeDelta, within: TimeDelta },
        BrokeInAll "broke-in-all" { place: String, warm: TimeDelta, before: TimeDelta, within: TimeDelta },
        Thawed "thawed" { place: String, warm: TimeDelta },
        Stopped "stopped" { foods: Arg },
        StoppedMore "stopped-more" { foods: Arg, more: usize },
        FoundWarm "found-warm" { lot: Arg, warm: TimeDelta, within: TimeDelta },
        LookIfThawed "look-if-thawed" { lot: Arg },
        LookWhatThawed "look-what-thawed" { lots: usize },
        LeftBefore "left-before" { lot: Arg, place: String },
        LeftBeforeAsk "left-before-ask" { lot: Arg, place: String },
        NoRule "no-rule",
        StillOpen "still-open" { place: String, at: NaiveDateTime },
    }
}

/// What is known of the failure.
#[derive(Debug, Clone)]
pub struct PlaceFailure {
    /// The place's name.
    pub place: String,
    /// When it was last known to be cold.
    pub from: DateTime<Utc>,
    /// Until when it was not, or not known to be.
    pub until: DateTime<Utc>,
    /// Readings in between, the earliest first.
    pub readings: Vec<(DateTime<Utc>, Temperature)>,
}

/// A time in which food was, or may have been, too warm: from when until when.
pub type Spell = (DateTime<Utc>, DateTime<Utc>);

/// The warm times that packs lived through besides the failure that is judged, in whatever place, also as part of
/// what they were cut from.
pub type Spells = HashMap<PackId, Vec<Spell>>;

/// How long spells are in all; what two of them have in common counts once.
fn in_all(spells: impl IntoIterator<Item = Spell>) -> TimeDelta {
    let mut spells: Vec<Spell> = spells.into_iter().collect();
    spells.sort_unstable();
    let mut total = TimeDelta::zero();
    let mut reached = None;
    for (from, until) in spells {
        let from = reached.map_or(from, |reached| from.max(reached));
        total += (until - from).max(TimeDelta::zero());
        reached = reached.max(Some(until));
    }
    total
}

impl PlaceFailure {
    /// When it was, or may have been, too warm. Without readings it was so all the time; where the last of them was cold
    /// as all were, since then: that it was not cold is what somebody tells.
    pub fn warm_spell(&self, cold: &Degrees) -> Option<Spell> {
        let unread = self.readings.last().map(|(at, _)| (*at, self.until));
        let unread = unread.filter(|(last, until)| last < until);
        let unread = unread.and_then(|unread| self.within(unread));
        self.spell(|read| !cold.allows(read)).or(unread)
    }

    /// The same of frozen food: ice melts at 0 °C. Without readings nobody knows.
    fn thawing_spell(&self) -> Option<Spell> {
        let melts = |read: Temperature| read.in_celsius() > Decimal::ZERO;
        (!self.readings.is_empty()).then(|| self.spell(melts))?
    }

    fn spell(&self, is_warm: impl Fn(Temperature) -> bool) -> Option<Spell> {
        if self.readings.is_empty() {
            return Some((self.from, self.until));
        }
        let warm = |(_, read): &(DateTime<Utc>, Temperature)| is_warm(*read);
        let first = self.readings.iter().position(warm)?;
        let last = self.readings.iter().rposition(warm).unwrap_or(first);
        let before = self.readings[..first].last();
        let after = self.readings.get(last + 1);
        let from = before.map_or(self.from, |(at, _)| *at);
        self.within((from, after.map_or(self.until, |(at, _)| *at)))
    }

    /// The failure as a pack lived through it that stood there for no more than a part of it.
    pub fn while_there(&self, stays: &[Spell]) -> Option<PlaceFailure> {
        let came = stays.iter().map(|(came, _)| *came).min()?;
        let went = stays.iter().map(|(_, went)| *went).max()?;
        let mut part = self.clone();
        (part.from, part.until) = (self.from.max(came), self.until.min(went));
        Some(part)
    }

    /// A warm time as far as it lies within the failure: what was read before and after a pack stood there tells of the
    /// place, not of how long.
    fn within(&self, (from, until): Spell) -> Option<Spell> {
        let (from, until) = (from.max(self.from), until.min(self.until));
        (from <= until).then_some((from, until))
    }

    /// What it did to one pack, of which these other warm times are known.
    fn judge(&self, lot: &Lot, pack: &Pack, rules: &FailureRules, others: &[Spell]) -> Judged {
        let limit = limit_for(lot, rules);
        let row = [limit.bound.row.clone()];
        let it = food(lot);
        if !lot.needs_cold() {
            return Judged::noted(Finding::note(FailureSays::Stable { lot: it }, row));
        }
        let within = hours(limit.bound.value);
        let in_time = |warm: TimeDelta| warm < within || warm == within && !limit.open;
        let length = |spell: Option<Spell>| spell.map_or(TimeDelta::zero(), |(from, to)| to - from);
        let place = self.place.clone();
        // Of ice that was read melting, that is what is known.
        let spell = match pack.now.state == State::Frozen && self.thawing_spell().is_some() {
            true => self.spell(|read| !rules.cold.allows(read)),
            false => self.warm_spell(&rules.cold),
        };
        let warm = length(spell);
        if !warm.is_zero() {
            let total = in_all(others.iter().copied().chain(spell));
            let lived = total - warm;
            let (warm, before) = (to_the_minute(warm), to_the_minute(lived));
            let says = match (in_time(total), before.is_zero()) {
                (true, true) => FailureSays::InTime {
                    lot: it.clone(),
                    warm,
                    within,
                },
                (true, false) => FailureSays::InTimeAgain {
                    lot: it.clone(),
                    warm,
                    before,
                    within,
                },
                (false, true) => FailureSays::Broke {
                    place,
                    warm,
                    within,
                },
                (false, false) => FailureSays::BrokeInAll {
                    place,
                    warm,
                    before,
                    within,
                },
            };
            if !in_time(total) {
                // A person tells of it, and a person looks at it: also where no law counts the hours.
                let left = (within - lived).max(TimeDelta::zero());
                return Judged {
                    finding: Finding::new(Gravity::Refuse, says, row),
                    broke: spell.map(|(from, _)| from + left),
                };
            }
            if !self.thaws(pack, in_time) {
                return Judged::noted(Finding::new(Gravity::Warn, says, row));
            }
        }
        if self.thaws(pack, in_time) {
            let thawed = self.thawing_spell();
            let says = FailureSays::Thawed {
                place: self.place.clone(),
                warm: to_the_minute(length(thawed)),
            };
            return Judged {
                finding: Finding::new(Gravity::Refuse, says, row),
                broke: thawed.map(|(from, _)| from),
            };
        }
        Judged::noted(Finding::note(FailureSays::StayedCold { lot: it }, row))
    }

    /// Was a frozen pack above freezing for longer than food may be warm? Then it counts as thawed: a door that
    /// stood open for some minutes thaws nothing.
    fn thaws(&self, pack: &Pack, in_time: impl Fn(TimeDelta) -> bool) -> bool {
        let spell = self.thawing_spell();
        pack.now.state == State::Frozen && spell.is_some_and(|(from, until)| !in_time(until - from))
    }
}

/// What a failure did to a pack, and from when on it is stopped, if it is.
struct Judged {
    finding: Finding,
    broke: Option<DateTime<Utc>>,
}

impl Judged {
    fn noted(finding: Finding) -> Judged {
        Judged {
            finding,
            broke: None,
        }
    }
}

/// A lot as it is told of: what it is, and its code.
pub fn food(lot: &Lot) -> Arg {
    let product = lot.product.named();
    let pack = lot.code.shown();
    PartSays::Of { product, pack }.into()
}

/// A length to the minute, as a kitchen counts; what is begun counts.
pub(super) fn to_the_minute(length: TimeDelta) -> TimeDelta {
    let whole = TimeDelta::minutes(length.num_minutes());
    match whole < length {
        true => whole + TimeDelta::minutes(1),
        false => whole,
    }
}

/// For how long food like that may be warm, once.
pub(super) fn limit_for<'r>(lot: &Lot, rules: &'r FailureRules) -> &'r StabilityLimit {
    match &rules.raw_hours {
        Some(raw) if !lot.condition().is_ready() => raw,
        _ => &rules.hours,
    }
}

/// What the failure adds to the record: a stop on what broke a row that was read, a word on the rest.
/// Only the packs that are loaded stood there; `others` are the warm times that they had besides.
pub fn plan(
    failure: &PlaceFailure,
    lots: &[Lot],
    others: &Spells,
    rules: &HeatRules,
    rows: &Rows,
) -> Plan {
    plan_of(failure, lots, &Spells::new(), others, rules, rows)
}

/// The same where some packs were `there` for a part of it only, and went elsewhere before its end.
pub fn plan_of(
    failure: &PlaceFailure,
    lots: &[Lot],
    there: &Spells,
    others: &Spells,
    rules: &HeatRules,
    rows: &Rows,
) -> Plan {
    let mut plan = Plan::default();
    if lots.is_empty() {
        let place = failure.place.clone();
        plan.warnings
            .push(FailureSays::NothingThere { place }.into());
        return plan;
    }
    let Some(rules) = &rules.failure else {
        plan.warnings.push(FailureSays::NoRule.into());
        return plan;
    };
    let [mut frozen, mut stayed, mut stopped]: [Vec<Arg>; 3] = Default::default();
    for lot in lots {
        let numbers: Vec<u32> = lot.packs.iter().map(|pack| pack.number).collect();
        note(&mut plan, lot, Some(&numbers));
        let mut said: Vec<Says> = Vec::new();
        for pack in &lot.packs {
            let known = others.get(&pack.id).map_or(&[][..], Vec::as_slice);
            let part = { there.get(&pack.id) }.and_then(|stays| failure.while_there(stays));
            let of = part.as_ref().unwrap_or(failure);
            let Judged { finding, broke } = of.judge(lot, pack, rules, known);
            if let Some(since) = broke {
                let cause = Cause::failed(Topic::Cold, because(&finding, rows), since);
                plan.stops.push((lot.id, Some(pack.id), cause.into()));
                stopped.push(food(lot));
            }
            if pack.now.state == State::Frozen && finding.gravity != Gravity::Note {
                frozen.push(food(lot));
            }
            match finding.says == Says::from(FailureSays::StayedCold { lot: food(lot) }) {
                true => stayed.push(food(lot)),
                false => said.push(finding.says),
            }
        }
        for says in said {
            if !plan.warnings.contains(&says) {
                plan.warnings.push(says);
            }
        }
    }
    // Which, where it is more than one that was judged.
    if lots.len() > 1 {
        plan.warnings.extend(named(stopped));
    }
    // A whole freezer is one thing to look at, not one a lot.
    let one = |lot| FailureSays::LookIfThawed { lot };
    let all = |lots| FailureSays::LookWhatThawed { lots };
    plan.warnings.extend(together(frozen, one, all));
    let one = |lot| FailureSays::StayedCold { lot };
    let all = |lots| FailureSays::AllStayedCold { lots };
    plan.warnings.extend(together(stayed, one, all));
    plan
}

/// The most lots that are told by name.
const MOST_NAMED: usize = 6;

/// What is stopped by it: each lot once.
fn named(mut foods: Vec<Arg>) -> Option<Says> {
    foods.dedup();
    let more = foods.len().saturating_sub(MOST_NAMED);
    foods.truncate(MOST_NAMED);
    let foods = (!foods.is_empty()).then_some(Arg::All(foods))?;
    Some(match more {
        0 => FailureSays::Stopped { foods }.into(),
        more => FailureSays::StoppedMore { foods, more }.into(),
    })
}

/// What is said of one lot, or of several at once.
fn together(
    mut lots: Vec<Arg>,
    one: impl Fn(Arg) -> FailureSays,
    all: impl Fn(usize) -> FailureSays,
) -> Option<Says> {
    lots.dedup();
    match lots.len() {
        0 | 1 => lots.pop().map(|lot| one(lot).into()),
        many => Some(all(many).into()),
    }
}

pub(super) fn because(finding: &Finding, rows: &Rows) -> Because {
    let findings = vec![finding.with_sources(rows)];
    Because {
        says: StopSays::BrokeForGood { findings }.into(),
        rule: Rule::Rows(finding.rows.clone()),
    }
}

#[cfg(test)]
mod tests;
