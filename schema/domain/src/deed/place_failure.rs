//! A place did not stay cold: the freezer failed in the night. One act over the place; each lot that stood
//! in it is judged by what sort of food it is.

use super::hold::note;
use crate::code::LotCode;
use crate::dates::{Because, Rule};
use crate::heat::{Degrees, FailureRules, HeatRules, hours};
use crate::lot::{Lot, Pack, PackId};
use crate::measure::Temperature;
use crate::messages;
use crate::plan::Plan;
use crate::rows::{Finding, Gravity, Rows};
use crate::says::Says;
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
        Stable "stable" { lot: LotCode },
        StayedCold "stayed-cold" { lot: LotCode },
        AllStayedCold "all-stayed-cold" { lots: usize },
        InTime "in-time" { lot: LotCode, warm: TimeDelta, within: TimeDelta },
        InTimeAgain "in-time-again" { lot: LotCode, warm: TimeDelta, before: TimeDelta, within: TimeDelta },
        Broke "broke" { place: String, warm: TimeDelta, within: TimeDelta },
        BrokeInAll "broke-in-all" { place: String, warm: TimeDelta, before: TimeDelta, within: TimeDelta },
        Thawed "thawed" { place: String, warm: TimeDelta },
        FoundWarm "found-warm" { lot: LotCode, warm: TimeDelta, within: TimeDelta },
        LookIfThawed "look-if-thawed" { lot: LotCode },
        LookWhatThawed "look-what-thawed" { lots: usize },
        LeftBefore "left-before" { lot: LotCode, place: String },
        LeftBeforeAsk "left-before-ask" { lot: LotCode, place: String },
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
        let code = lot.code.clone();
        let limit = limit_for(lot, rules);
        let row = [limit.bound.row.clone()];
        if !lot.needs_cold() {
            return Judged::noted(Finding::note(FailureSays::Stable { lot: code }, row));
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
            let before = total - warm;
            let says = match (in_time(total), before.is_zero()) {
                (true, true) => FailureSays::InTime {
                    lot: code.clone(),
                    warm,
                    within,
                },
                (true, false) => FailureSays::InTimeAgain {
                    lot: code.clone(),
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
                let left = (within - before).max(TimeDelta::zero());
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
                warm: length(thawed),
            };
            return Judged {
                finding: Finding::new(Gravity::Refuse, says, row),
                broke: thawed.map(|(from, _)| from),
            };
        }
        Judged::noted(Finding::note(FailureSays::StayedCold { lot: code }, row))
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
    let (mut frozen, mut stayed): (Vec<LotCode>, Vec<LotCode>) = Default::default();
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
            }
            if pack.now.state == State::Frozen && finding.gravity != Gravity::Note {
                frozen.push(lot.code.clone());
            }
            let code = lot.code.clone();
            match finding.says == Says::from(FailureSays::StayedCold { lot: code }) {
                true => stayed.push(lot.code.clone()),
                false => said.push(finding.says),
            }
        }
        for says in said {
            if !plan.warnings.contains(&says) {
                plan.warnings.push(says);
            }
        }
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

/// What is said of one lot, or of several at once.
fn together(
    mut lots: Vec<LotCode>,
    one: impl Fn(LotCode) -> FailureSays,
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
