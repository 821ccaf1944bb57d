//! A method of curing against trichinae, as data, and the check of a process against it.

use super::length::Length;
use super::process::{Process, StageKind};
use super::rules::TrichinaeRules;
use super::salt;
use super::says::{CureFigure, MethodSays, PartSays};
use crate::grams::Grams;
use crate::heat::Judgement;
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use crate::says::{Arg, Says};
use chrono::{Datelike, NaiveDate, TimeDelta};
use rust_decimal::Decimal;

/// A method.
#[derive(Debug, Clone, PartialEq)]
pub struct TrichinaeMethod {
    /// Its name: `sausage-1`, `coppa`.
    pub name: String,
    /// Where it stands.
    pub row: RowId,
    /// The largest piece of meat in a sausage (mm).
    pub piece_mm: Option<Bound>,
    /// The deepest mass in which it cures (mm).
    pub mass_mm: Option<Bound>,
    /// The ways to salt it; any one of them.
    pub salt: Vec<SaltWay>,
    /// How often it must be overhauled.
    pub overhauls: Option<Bound>,
    /// By casing, the thinnest first; a method without casings has one variant.
    pub variants: Vec<Variant>,
    /// What else its drying follows.
    pub drying: Drying,
    /// The row that says that a part of the method is not on file, if so.
    pub incomplete: Option<RowId>,
}

/// A way to salt: everything that is named must be met.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct SaltWay {
    /// Salt to a hundred of meat.
    pub dry: Option<Bound>,
    /// Salt in the cure mix (%).
    pub mix: Option<Bound>,
    /// Salt in the meat's brine at the end (%).
    pub brine: Option<Bound>,
    /// Strength of the pickle on the salometer.
    pub salometer: Option<Bound>,
    /// Pickle to a hundred of meat.
    pub pickle: Option<Bound>,
}

/// What a method asks of one range of casings.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Variant {
    /// Up to this casing; `None` for any casing.
    pub casing: Option<Length>,
    /// For pepperoni only?
    pub only_pepperoni: bool,
    /// What must be long enough.
    pub needs: Vec<LeastOf>,
    /// What must not be too long.
    pub up_to: Vec<MostOf>,
    /// From the first day of the cure to the end.
    pub whole: Option<(TimeDelta, RowId)>,
}

/// Something that must be long enough.
#[derive(Debug, Clone, PartialEq)]
pub struct LeastOf {
    /// The stage whose time counts.
    pub part: TimedPart,
    /// Stages whose times are added to it.
    pub more: Vec<TimedPart>,
    /// Together so long.
    pub time: TimeDelta,
    /// So long for each pound of the heaviest piece, if that is more.
    pub per_pound: Option<TimeDelta>,
    /// Where it stands.
    pub row: RowId,
}

/// A stage whose time counts between two temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TimedPart {
    /// The stage.
    pub stage: StageKind,
    /// Counts at or above this.
    pub at_least: Option<Temperature>,
    /// Counts at or below this.
    pub at_most: Option<Temperature>,
}

/// Something that must not be too long.
#[derive(Debug, Clone, PartialEq)]
pub struct MostOf {
    /// The stage.
    pub stage: StageKind,
    /// Never above this.
    pub at_most: Option<Temperature>,
    /// In all no longer than this.
    pub time: TimeDelta,
    /// Where it stands.
    pub row: RowId,
}

/// What else a method's drying follows.
#[derive(Debug, Clone, PartialEq)]
pub enum Drying {
    /// Its own times are all.
    AsListed,
    /// The tables for dry sausage.
    SausageTables,
    /// The table for hams.
    HamTable,
    /// The weather of the year, in a room without control.
    Climate(Climate),
}

/// Hams that hang through a summer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Climate {
    /// The cure starts on or after this month and day of the winter.
    pub from: (u32, u32),
    /// And on or before this one.
    pub until: (u32, u32),
    /// Days of drying, at least.
    pub days: i64,
    /// The first and the last whole month that the drying takes in.
    pub months: (u32, u32),
    /// Where it stands.
    pub row: RowId,
}

impl Process {
    pub(super) fn judge(&self, rules: &TrichinaeRules, rows: &Rows) -> Result<Judgement> {
        self.plausible()?;
        let Some(method) = rules.methods.iter().find(|each| each.name == self.method) else {
            let known = rules.methods.iter().map(|each| Arg::from(&*each.name));
            let known: Vec<Arg> = known.collect();
            let method = self.method.clone();
            let detail = match known.is_empty() {
                true => MethodSays::NoMethods { method },
                false => MethodSays::NoMethod {
                    method,
                    known: Arg::All(known),
                },
            };
            return Err(Refusal::cannot_be("method", detail));
        };
        let says = MethodSays::Checked {
            method: method.name.clone(),
        };
        let gravity = match rows.is_confirmed(&method.row) {
            true => Gravity::Note,
            false => Gravity::Warn,
        };
        let mut judged = Judgement::enough(Finding::new(gravity, says, [method.row.clone()]));
        for lack in self.size_lacks(method)? {
            judged = judged.and(Judgement::short(
                None,
                Finding::against(rows, &lack.0, lack.1),
            ));
        }
        if let Some(lack) = salt::judge(method, &self.salting, rows)? {
            judged = judged.and(lack);
        }
        judged = judged.and(self.by_casing(method, rules, rows)?);
        if let Some(row) = &method.incomplete {
            let says = MethodSays::Incomplete;
            judged = judged.but(Finding::new(Gravity::Warn, says, [row.clone()]));
        }
        Ok(judged)
    }

    fn size_lacks(&self, method: &TrichinaeMethod) -> Result<Vec<(RowId, MethodSays)>> {
        let mm = |length: Option<Length>, field: &str, give: MethodSays| {
            let length = length.map(Length::in_millimetres);
            length.ok_or_else(|| Refusal::cannot_be(field, give))
        };
        let mut lacks = Vec::new();
        if let Some(bound) = &method.piece_mm {
            let piece = mm(self.piece, "piece", MethodSays::GivePiece)?;
            lacks.extend(salt::lack(CureFigure::Piece, bound, Some(piece)));
        }
        if let Some(bound) = &method.mass_mm {
            let mass = mm(self.mass, "mass", MethodSays::GiveMass)?;
            lacks.extend(salt::lack(CureFigure::Mass, bound, Some(mass)));
        }
        if let Some(bound) = &method.overhauls {
            let times = Some(Decimal::from(self.overhauls));
            lacks.extend(salt::lack(CureFigure::Overhauls, bound, times));
        }
        Ok(lacks)
    }

    /// Any variant that takes the casing will do; of several that are not met, the nearest is said.
    fn by_casing(
        &self,
        method: &TrichinaeMethod,
        rules: &TrichinaeRules,
        rows: &Rows,
    ) -> Result<Judgement> {
        let needs_casing = method.variants.iter().any(|each| each.casing.is_some())
            || method.drying == Drying::SausageTables;
        if needs_casing && self.casing.is_none() {
            return Err(Refusal::cannot_be("casing", MethodSays::GiveCasing));
        }
        let fits = |variant: &&Variant| {
            (self.is_pepperoni || !variant.only_pepperoni)
                && variant
                    .casing
                    .is_none_or(|up_to| self.casing.is_some_and(|casing| casing <= up_to))
        };
        let mut nearest: Option<Judgement> = None;
        for variant in method.variants.iter().filter(fits) {
            let judged = self.by_variant(variant, rows)?;
            let key = |judged: &Judgement| (judged.answer, judged.missing);
            if nearest.as_ref().is_none_or(|best| key(&judged) < key(best)) {
                nearest = Some(judged);
            }
        }
        let Some(judged) = nearest else {
            let says = MethodSays::CasingTooWide;
            return Ok(Judgement::short(
                None,
                Finding::against(rows, &method.row, says),
            ));
        };
        Ok(match &method.drying {
            Drying::AsListed => judged,
            Drying::SausageTables => judged.and(super::drying::judge(self, rules, rows)?),
            Drying::HamTable => judged.and(super::ham::judge(self, rules, rows)),
            Drying::Climate(climate) => judged.and(self.by_climate(climate, rows)?),
        })
    }

    fn by_variant(&self, variant: &Variant, rows: &Rows) -> Result<Judgement> {
        let nothing = Judgement {
            answer: crate::heat::Answer::Enough,
            missing: None,
            findings: Vec::new(),
            untold: false,
        };
        let mut judged = nothing;
        for need in &variant.needs {
            let parts = std::iter::once(&need.part).chain(&need.more);
            let has: TimeDelta = parts
                .map(|part| self.time_at(part.stage, part.at_least, part.at_most))
                .sum();
            let wanted = need.wanted(self.heaviest)?;
            if has < wanted {
                let missing = wanted - has;
                let says = MethodSays::Need {
                    need: need.says(),
                    wanted,
                    has,
                    missing,
                };
                judged = judged.and(Judgement::short(
                    Some(missing),
                    Finding::against(rows, &need.row, says),
                ));
            }
        }
        for up_to in &variant.up_to {
            let has = self.time_at(up_to.stage, None, None);
            let good = self.time_at(up_to.stage, None, up_to.at_most);
            if has > up_to.time || good < has {
                let (stage, most, took) = (up_to.stage, up_to.time, has);
                let says = match up_to.at_most {
                    Some(at_most) => MethodSays::UpToCool {
                        stage,
                        most,
                        at_most,
                        took,
                    },
                    None => MethodSays::UpTo { stage, most, took },
                };
                judged = judged.and(Judgement::short(
                    None,
                    Finding::against(rows, &up_to.row, says),
                ));
            }
        }
        if let Some((wanted, row)) = &variant.whole {
            let has = self
                .whole
                .ok_or_else(|| Refusal::cannot_be("whole", MethodSays::GiveWhole))?;
            let (wanted, missing) = (*wanted, *wanted - has);
            if missing > TimeDelta::zero() {
                let says = MethodSays::WholeShort {
                    wanted,
                    has,
                    missing,
                };
                judged = judged.and(Judgement::short(
                    Some(missing),
                    Finding::against(rows, row, says),
                ));
            }
        }
        Ok(judged)
    }

    fn by_climate(&self, climate: &Climate, rows: &Rows) -> Result<Judgement> {
        let (Some(cured_on), Some((first, last))) = (self.cured_on, self.dried) else {
            return Err(Refusal::cannot_be("dried", MethodSays::GiveDays));
        };
        let mut lacks: Vec<Says> = Vec::new();
        let day = (cured_on.month(), cured_on.day());
        if day < climate.from && day > climate.until {
            lacks.push(MethodSays::OutsideWinter { cured_on }.into());
        }
        let days = (last - first).num_days() + 1;
        if days < climate.days {
            let needed = climate.days;
            lacks.push(MethodSays::DriedShort { days, needed }.into());
        }
        let (from, to) = climate.months;
        let summer = |year: i32| {
            let begins = NaiveDate::from_ymd_opt(year, from, 1);
            let ends = NaiveDate::from_ymd_opt(year, to + 1, 1).and_then(|day| day.pred_opt());
            begins.is_some_and(|begins| first <= begins) && ends.is_some_and(|ends| ends <= last)
        };
        if !(first.year()..=last.year()).any(summer) {
            lacks.push(MethodSays::NoSummer.into());
        }
        if lacks.is_empty() {
            let says = MethodSays::ClimateMet;
            let row = climate.row.clone();
            return Ok(Judgement::enough(Finding::note(says, [row])));
        }
        let missing = (days < climate.days).then(|| TimeDelta::days(climate.days - days));
        let lacks = Arg::Series(lacks);
        let says = MethodSays::ClimateShort { lacks };
        Ok(Judgement::short(
            missing,
            Finding::against(rows, &climate.row, says),
        ))
    }
}

impl LeastOf {
    /// How long it must be for the heaviest piece, a begun second counted as one.
    fn wanted(&self, heaviest: Option<Grams>) -> Result<TimeDelta> {
        let Some(per_pound) = self.per_pound else {
            return Ok(self.time);
        };
        let heaviest =
            heaviest.ok_or_else(|| Refusal::cannot_be("heaviest", MethodSays::GiveHeaviest))?;
        const MILLIGRAMS_A_POUND: i128 = 45_359_237;
        let product = i128::from(per_pound.num_seconds()) * i128::from(heaviest.milligrams()) * 100;
        let seconds = (product + MILLIGRAMS_A_POUND - 1) / MILLIGRAMS_A_POUND;
        let by_weight = i64::try_from(seconds)
            .ok()
            .and_then(TimeDelta::try_seconds)
            .ok_or_else(|| Refusal::cannot_be("heaviest", MethodSays::TooHeavy))?;
        Ok(self.time.max(by_weight))
    }

    fn says(&self) -> PartSays {
        let with = |part: PartSays, other: PartSays| PartSays::With {
            part: part.into(),
            other: other.into(),
        };
        self.more
            .iter()
            .map(TimedPart::says)
            .fold(self.part.says(), with)
    }
}

impl TimedPart {
    fn says(&self) -> PartSays {
        let stage = self.stage;
        match (self.at_least, self.at_most) {
            (None, None) => PartSays::Any { stage },
            (Some(at_least), None) => PartSays::AtLeast { stage, at_least },
            (None, Some(at_most)) => PartSays::AtMost { stage, at_most },
            (Some(at_least), Some(at_most)) => PartSays::Between {
                stage,
                at_least,
                at_most,
            },
        }
    }
}
