//! A method of curing against trichinae, as data, and the check of a process against it.

use super::length::Length;
use super::process::{Process, StageKind};
use super::rules::Rules;
use super::salt;
use crate::grams::Grams;
use crate::heat::{Judgement, shown};
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
use chrono::{Datelike, NaiveDate, TimeDelta};
use rust_decimal::Decimal;

/// A method.
#[derive(Debug, Clone, PartialEq)]
pub struct Method {
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
    /// Up to this casing; any where there is none.
    pub casing: Option<Length>,
    /// For pepperoni only?
    pub only_pepperoni: bool,
    /// What must be long enough.
    pub needs: Vec<Need>,
    /// What must not be too long.
    pub up_to: Vec<UpTo>,
    /// From the first day of the cure to the end.
    pub whole: Option<(TimeDelta, RowId)>,
}

/// Something that must be long enough.
#[derive(Debug, Clone, PartialEq)]
pub struct Need {
    /// The stages whose times are added.
    pub parts: Vec<Part>,
    /// Together so long.
    pub time: TimeDelta,
    /// So long for each pound of the heaviest piece, if that is more.
    pub per_pound: Option<TimeDelta>,
    /// Where it stands.
    pub row: RowId,
}

/// A stage whose time counts between two temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// The stage.
    pub stage: StageKind,
    /// Counts at or above this.
    pub at_least: Option<Temperature>,
    /// Counts at or below this.
    pub at_most: Option<Temperature>,
}

/// Something that must not be too long.
#[derive(Debug, Clone, PartialEq)]
pub struct UpTo {
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
    pub(super) fn judge(&self, rules: &Rules, rows: &Rows) -> Result<Judgement> {
        self.plausible()?;
        let Some(method) = rules.methods.iter().find(|each| each.name == self.method) else {
            let known: Vec<&str> = rules.methods.iter().map(|each| &*each.name).collect();
            let detail = match known.is_empty() {
                true => format!(
                    "This place has no methods of curing here, so not {:?}. Freeze the meat or \
                     show a test.",
                    self.method
                ),
                false => format!(
                    "This place has no method {:?}. Known here: {}.",
                    self.method,
                    known.join(", ")
                ),
            };
            return Err(Refusal::cannot_be("method", detail));
        };
        let says = format!("Checked against the method {} for trichinae.", method.name);
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
            let says = "A part of this method is not on file here, so it cannot be passed. Read the \
                        official text; a person decides.";
            judged = judged.but(Finding::new(Gravity::Warn, says, [row.clone()]));
        }
        Ok(judged)
    }

    fn size_lacks(&self, method: &Method) -> Result<Vec<(RowId, String)>> {
        let mm = |length: Option<Length>, field: &str, what: &str| {
            length.map(Length::in_millimetres).ok_or_else(|| {
                Refusal::cannot_be(field, format!("Give {what}: the method goes by it."))
            })
        };
        let mut lacks = Vec::new();
        if let Some(bound) = &method.piece_mm {
            let piece = mm(
                self.piece,
                "piece",
                "the size of the largest pieces of meat",
            )?;
            lacks.extend(salt::lack("largest piece, mm", bound, Some(piece)));
        }
        if let Some(bound) = &method.mass_mm {
            let mass = mm(self.mass, "mass", "the depth of the mass in which it cured")?;
            lacks.extend(salt::lack(
                "depth of the curing mass, mm",
                bound,
                Some(mass),
            ));
        }
        if let Some(bound) = &method.overhauls {
            let times = Some(Decimal::from(self.overhauls));
            lacks.extend(salt::lack("overhauls", bound, times));
        }
        Ok(lacks)
    }

    /// Any variant that takes the casing will do; of several that are not met, the nearest is said.
    fn by_casing(&self, method: &Method, rules: &Rules, rows: &Rows) -> Result<Judgement> {
        let needs_casing = method.variants.iter().any(|each| each.casing.is_some())
            || method.drying == Drying::SausageTables;
        if needs_casing && self.casing.is_none() {
            let detail = "Give the casing's diameter when stuffed: the days go by it.";
            return Err(Refusal::cannot_be("casing", detail));
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
            let says = "The casing is wider than the method's widest. Use another method.";
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
        };
        let mut judged = nothing;
        for need in &variant.needs {
            let has: TimeDelta = need
                .parts
                .iter()
                .map(|part| self.time_at(part.stage, part.at_least, part.at_most))
                .sum();
            let wanted = need.wanted(self.heaviest)?;
            if has < wanted {
                let says = format!(
                    "{}: {} are needed and {} count, so {} more.",
                    need.said(),
                    shown(wanted),
                    shown(has),
                    shown(wanted - has)
                );
                judged = judged.and(Judgement::short(
                    Some(wanted - has),
                    Finding::against(rows, &need.row, says),
                ));
            }
        }
        for up_to in &variant.up_to {
            let has = self.time_at(up_to.stage, None, None);
            let good = self.time_at(up_to.stage, None, up_to.at_most);
            if has > up_to.time || good < has {
                let warm = up_to
                    .at_most
                    .map_or_else(String::new, |at_most| format!(" and never above {at_most}"));
                let says = format!(
                    "{}: {} at most{warm}; it took {}.",
                    up_to.stage.as_str(),
                    shown(up_to.time),
                    shown(has)
                );
                judged = judged.and(Judgement::short(
                    None,
                    Finding::against(rows, &up_to.row, says),
                ));
            }
        }
        if let Some((wanted, row)) = &variant.whole {
            let has = self.whole.ok_or_else(|| {
                Refusal::cannot_be(
                    "whole",
                    "Give the time since the cure began: the method asks for it.",
                )
            })?;
            if has < *wanted {
                let says = format!(
                    "From the start of the cure: {} are needed, {} have passed, so {} more.",
                    shown(*wanted),
                    shown(has),
                    shown(*wanted - has)
                );
                judged = judged.and(Judgement::short(
                    Some(*wanted - has),
                    Finding::against(rows, row, says),
                ));
            }
        }
        Ok(judged)
    }

    fn by_climate(&self, climate: &Climate, rows: &Rows) -> Result<Judgement> {
        let (Some(cured_on), Some((first, last))) = (self.cured_on, self.dried) else {
            let detail = "Give the first day of the cure and the first and last day of drying.";
            return Err(Refusal::cannot_be("dried", detail));
        };
        let mut lacks = Vec::new();
        let day = (cured_on.month(), cured_on.day());
        if day < climate.from && day > climate.until {
            lacks.push(format!(
                "the cure began on {cured_on}, outside the winter that the method allows"
            ));
        }
        let days = (last - first).num_days() + 1;
        if days < climate.days {
            lacks.push(format!("it dried {days} days and needs {}", climate.days));
        }
        let (from, to) = climate.months;
        let summer = |year: i32| {
            let begins = NaiveDate::from_ymd_opt(year, from, 1);
            let ends = NaiveDate::from_ymd_opt(year, to + 1, 1).and_then(|day| day.pred_opt());
            begins.is_some_and(|begins| first <= begins) && ends.is_some_and(|ends| ends <= last)
        };
        if !(first.year()..=last.year()).any(summer) {
            lacks.push("it did not hang through the whole of the summer months".to_owned());
        }
        if lacks.is_empty() {
            let says = "The drying took in the summer that the method asks for.";
            return Ok(Judgement::enough(Finding::note(
                says,
                [climate.row.clone()],
            )));
        }
        let missing = (days < climate.days).then(|| TimeDelta::days(climate.days - days));
        let says = format!("Drying without control of the room: {}.", lacks.join("; "));
        Ok(Judgement::short(
            missing,
            Finding::against(rows, &climate.row, says),
        ))
    }
}

impl Need {
    /// How long it must be for the heaviest piece, a begun second counted as one.
    fn wanted(&self, heaviest: Option<Grams>) -> Result<TimeDelta> {
        let Some(per_pound) = self.per_pound else {
            return Ok(self.time);
        };
        let heaviest = heaviest.ok_or_else(|| {
            Refusal::cannot_be(
                "heaviest",
                "Give the weight of the heaviest piece of the lot: the days go by it.",
            )
        })?;
        const MILLIGRAMS_A_POUND: i128 = 45_359_237;
        let product = i128::from(per_pound.num_seconds()) * i128::from(heaviest.milligrams()) * 100;
        let seconds = (product + MILLIGRAMS_A_POUND - 1) / MILLIGRAMS_A_POUND;
        let by_weight = i64::try_from(seconds)
            .ok()
            .and_then(TimeDelta::try_seconds)
            .ok_or_else(|| Refusal::cannot_be("heaviest", "No piece weighs so much."))?;
        Ok(self.time.max(by_weight))
    }

    fn said(&self) -> String {
        let parts: Vec<String> = self
            .parts
            .iter()
            .map(|part| {
                let bounds = [
                    part.at_least.map(|at| format!("at or above {at}")),
                    part.at_most.map(|at| format!("at or below {at}")),
                ];
                let bounds: Vec<String> = bounds.into_iter().flatten().collect();
                format!("{} {}", part.stage.as_str(), bounds.join(" and "))
            })
            .collect();
        parts.join(" with ")
    }
}
