//! A curing as it was done: salt, pieces, and the runs of time at each stage.

use super::length::Length;
use super::says::ProcessSays;
use crate::grams::Grams;
use crate::heat::{plausible_store, plausible_time};
use crate::measure::{Percent, Temperature};
use crate::refusal::{Refusal, Result};
use crate::words::words;
use chrono::{NaiveDate, TimeDelta};
use rust_decimal::Decimal;

words! {
    /// The stages that a curing passes through.
    StageKind {
        /// In the cure, before stuffing or hanging.
        Cure = "cure",
        /// In contact with the salt.
        Contact = "contact",
        /// At rest while the salt evens out.
        Equalise = "equalise",
        /// Soaked.
        Soak = "soak",
        /// Rinsed.
        Rinse = "rinse",
        /// Stuffed and held warm: the fermentation.
        Hold = "hold",
        /// Smoked, or heated in the smokehouse.
        Smoke = "smoke",
        /// In the drying room.
        Dry = "dry",
    }
}

/// A time at one stage, between two temperatures.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StageRun {
    /// Which stage.
    pub stage: StageKind,
    /// The lowest that the room (in heat: the meat) was.
    pub lowest: Temperature,
    /// The highest that it was, where that was read.
    pub highest: Option<Temperature>,
    /// For how long.
    pub held: TimeDelta,
}

/// How it was salted.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Salting {
    /// Salt to a hundred of meat (dry sausage: of the unstuffed meat; method 6: of the wet mix).
    pub dry: Option<Percent>,
    /// Salt in the cure mix.
    pub mix: Option<Percent>,
    /// Salt in the meat's brine at the end.
    pub brine: Option<Percent>,
    /// A pickle.
    pub pickle: Option<Pickle>,
}

/// A pickle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pickle {
    /// Its strength on the salometer, 0 to 100.
    pub salometer: Decimal,
    /// Parts of it to a hundred of meat.
    pub per_hundred: Decimal,
}

/// A curing as it was done.
#[derive(Debug, Clone, PartialEq)]
pub struct Process {
    /// The method's name in the rules.
    pub method: String,
    /// The size of the largest pieces of meat in a sausage.
    pub piece: Option<Length>,
    /// The depth of the mass in which it cured.
    pub mass: Option<Length>,
    /// The casing's diameter when stuffed.
    pub casing: Option<Length>,
    /// Is it pepperoni? It may have shorter times in a thin casing.
    pub is_pepperoni: bool,
    /// How it was salted.
    pub salting: Salting,
    /// How often it was overhauled.
    pub overhauls: u32,
    /// The heaviest piece of the lot: days by the pound go by it.
    pub heaviest: Option<Grams>,
    /// Every time at a stage.
    pub runs: Vec<StageRun>,
    /// From the first day of the cure until now.
    pub whole: Option<TimeDelta>,
    /// The first day of the cure, for hams that go through the year's weather.
    pub cured_on: Option<NaiveDate>,
    /// The first and last day of drying, for the same.
    pub dried: Option<(NaiveDate, NaiveDate)>,
}

impl Process {
    /// A process of that method of which nothing else is known yet.
    pub fn of(method: impl Into<String>) -> Process {
        Process {
            method: method.into(),
            piece: None,
            mass: None,
            casing: None,
            is_pepperoni: false,
            salting: Salting::default(),
            overhauls: 0,
            heaviest: None,
            runs: Vec::new(),
            whole: None,
            cured_on: None,
            dried: None,
        }
    }

    /// How long it was at a stage at or above one temperature, and never above another.
    pub(super) fn time_at(
        &self,
        stage: StageKind,
        at_least: Option<Temperature>,
        at_most: Option<Temperature>,
    ) -> TimeDelta {
        self.runs
            .iter()
            .filter(|run| run.stage == stage)
            .filter(|run| at_least.is_none_or(|at_least| run.lowest >= at_least))
            .filter(|run| {
                at_most.is_none_or(|at_most| run.highest.is_some_and(|highest| highest <= at_most))
            })
            .map(|run| run.held)
            .sum()
    }

    pub(super) fn plausible(&self) -> Result<()> {
        for (nth, run) in self.runs.iter().enumerate() {
            plausible_store(&format!("runs[{nth}].lowest"), run.lowest)?;
            plausible_time(&format!("runs[{nth}].held"), run.held)?;
            if let Some(highest) = run.highest {
                plausible_store(&format!("runs[{nth}].highest"), highest)?;
                if highest < run.lowest {
                    let lowest = run.lowest;
                    let detail = ProcessSays::HighestBelowLowest { highest, lowest };
                    return Err(Refusal::cannot_be(format!("runs[{nth}].highest"), detail));
                }
            }
        }
        self.whole
            .map_or(Ok(()), |whole| plausible_time("whole", whole))?;
        for (field, length) in [
            ("piece", self.piece),
            ("mass", self.mass),
            ("casing", self.casing),
        ] {
            if length.is_some_and(|length| length.in_millimetres() <= Decimal::ZERO) {
                return Err(Refusal::cannot_be(field, ProcessSays::NoThickness));
            }
        }
        if self
            .heaviest
            .is_some_and(|heaviest| heaviest.is_none_left())
        {
            return Err(Refusal::cannot_be("heaviest", ProcessSays::NoWeight));
        }
        if let Some((first, last)) = self.dried.filter(|(first, last)| last < first) {
            let detail = ProcessSays::EndsFirst { last, first };
            return Err(Refusal::cannot_be("dried", detail));
        }
        super::salt::plausible(&self.salting)
    }
}
