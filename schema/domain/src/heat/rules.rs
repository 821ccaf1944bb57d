//! The place's rules of heat and cold, as data.

use super::cooling::CoolingPlan;
use super::holding::Hold;
use super::probe::ProbeRules;
use super::table::HeatTable;
use super::words::Food;
use crate::measure::{Percent, Printed, Scale, Temperature};
use crate::rows::{Bound, RowId};
use crate::stability::{LimitSays, StabilityLimit};
use crate::words::{Profile, Species};
use chrono::TimeDelta;
use rust_decimal::Decimal;

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct HeatRules {
    /// The edition of the code that is taken where the kitchen names none, and where that is said.
    pub code_year: Option<(u16, RowId)>,
    /// The way to cool what was cooked, by its name among `cooling`.
    pub after_cooking: Option<String>,
    /// The kitchen's cooking tables, by class of food and year of the code.
    pub cooking: Vec<Cooking>,
    /// Tables by how far they cut down Salmonella, those of other places among them.
    pub lethality: Vec<Lethality>,
    /// A pot that boiled.
    pub boiling: Option<Boiling>,
    /// How food is judged that stood in a place which did not stay cold.
    pub failure: Option<FailureRules>,
    /// How probes are checked.
    pub probes: Option<ProbeRules>,
    /// How fast meat should come up to heat; advice.
    pub come_up: Option<ComeUp>,
    /// How close the readings of a log must stand.
    pub log: Option<LogRules>,
    /// Ways to cool.
    pub cooling: Vec<CoolingPlan>,
    /// Holding hot and cold, thawing, receiving.
    pub holding: Vec<Hold>,
    /// How cold the other places want ready food, by rows that somebody has read: what is warmer than all of
    /// them allow is warm everywhere.
    pub cold_elsewhere: Vec<Degrees>,
}

impl HeatRules {
    /// The way to cool that the place takes for what was cooked; else its own first.
    pub fn usual_cooling(&self) -> Option<&CoolingPlan> {
        let usual = |plan: &&CoolingPlan| self.after_cooking.as_ref() == Some(&plan.name);
        let own = || self.cooling.iter().filter(|plan| plan.place.is_none());
        own().find(usual).or_else(|| own().next())
    }

    /// How long what was cooked takes at the most until it is cold: by the plan that the place takes after cooking, else
    /// by any that needs no approval.
    pub fn cooled_within(&self) -> TimeDelta {
        let named = |plan: &&CoolingPlan| self.after_cooking.as_ref() == Some(&plan.name);
        let plans: Vec<&CoolingPlan> = match self.cooling.iter().find(named) {
            Some(plan) => vec![plan],
            None => { self.cooling.iter() }
                .filter(|plan| plan.needs_approval.is_none())
                .collect(),
        };
        let stages = plans.iter().flat_map(|plan| &plan.stages);
        let longest = stages.map(|stage| stage.within_minutes.value).max();
        longest.map_or(TimeDelta::zero(), minutes)
    }

    /// Every single number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds = Vec::new();
        if let Some(come_up) = &mut self.come_up {
            bounds.push(&mut come_up.within_hours);
        }
        if let Some(log) = &mut self.log {
            bounds.extend([&mut log.join_minutes, &mut log.silence_minutes]);
        }
        bounds.extend(self.boiling.as_mut().map(|boiling| &mut boiling.minutes));
        if let Some(failure) = &mut self.failure {
            bounds.push(&mut failure.cold.limit.bound);
            bounds.push(&mut failure.hours.bound);
            bounds.extend(failure.raw_hours.as_mut().map(|hours| &mut hours.bound));
        }
        if let Some(probes) = &mut self.probes {
            let within = [&mut probes.within_celsius, &mut probes.within_fahrenheit];
            bounds.extend(within);
            bounds.push(&mut probes.every_days);
        }
        for plan in &mut self.cooling {
            bounds.extend(&mut plan.nitrite_ppm);
            bounds.extend(
                plan.stages
                    .iter_mut()
                    .map(|stage| &mut stage.within_minutes),
            );
        }
        bounds.extend(
            self.holding
                .iter_mut()
                .map(|hold| &mut hold.degrees.limit.bound),
        );
        bounds
    }
}

/// A cooking table and whom it is for.
#[derive(Debug, Clone, PartialEq)]
pub struct Cooking {
    /// Which class of food.
    pub food: Food,
    /// The first year of the code that has it, if it is new.
    pub from_year: Option<u16>,
    /// The last year of the code that has it, if it was replaced.
    pub until_year: Option<u16>,
    /// The table.
    pub table: HeatTable,
}

impl Cooking {
    /// Does it hold for that food under the code of that year?
    pub fn holds(&self, food: Food, code_year: u16) -> bool {
        self.food == food
            && self.from_year.is_none_or(|from| from <= code_year)
            && self.until_year.is_none_or(|until| code_year <= until)
    }
}

/// A table by how far it cuts down Salmonella, and what it is for.
#[derive(Debug, Clone, PartialEq)]
pub struct Lethality {
    /// How many tenfold cuts: 6.5; `None` where the table does not say.
    pub log: Option<Decimal>,
    /// Foods that it is not for.
    pub not_for: Vec<Food>,
    /// The bird that it was made for, chicken or turkey; `None` for a table of meat.
    pub bird: Option<Species>,
    /// For meat that is no fatter than this; `None` for any, and for what nobody has measured.
    pub fat_at_most: Option<Percent>,
    /// Is it, a table of meat, the one for meat with poultry in it?
    pub with_poultry: bool,
    /// Is it taken only where a cook names it?
    pub only_if_chosen: bool,
    /// The place whose rule it is, where that is another one: it may show that food was cooked, and
    /// stops nobody here.
    pub place: Option<Profile>,
    /// The table.
    pub table: HeatTable,
}

/// How food is judged that stood in a place which did not stay cold.
#[derive(Debug, Clone, PartialEq)]
pub struct FailureRules {
    /// How cold it has to be.
    pub cold: Degrees,
    /// For how many hours it may be warmer, once.
    pub hours: StabilityLimit,
    /// The same of raw food, where that is counted by another row.
    pub raw_hours: Option<StabilityLimit>,
    /// The row by which what is still raw need not be kept cold here, if the place has one.
    pub leaves_raw_out: Option<RowId>,
}

/// A pot that boiled: one tap, no probe.
#[derive(Debug, Clone, PartialEq)]
pub struct Boiling {
    /// In minutes, at least.
    pub minutes: Bound,
    /// Classes of food whose middle a boiling pot tells nothing about.
    pub not_for: Vec<Food>,
}

/// Coming up to heat: from one temperature to another within so many hours.
#[derive(Debug, Clone, PartialEq)]
pub struct ComeUp {
    /// Out of the cold.
    pub from: Printed,
    /// Into the heat.
    pub to: Printed,
    /// In hours, at most.
    pub within_hours: Bound,
}

/// How close the readings of a log must stand.
#[derive(Debug, Clone, PartialEq)]
pub struct LogRules {
    /// Two readings this many minutes apart or less count as one hold.
    pub join_minutes: Bound,
    /// A longer silence than this many minutes is for a person to decide.
    pub silence_minutes: Bound,
}

/// A limit of temperature, its number on the scale of its source.
#[derive(Debug, Clone, PartialEq)]
pub struct Degrees {
    /// The scale of the number; a house tightens it on the same scale.
    pub scale: Scale,
    /// The number, and which side is allowed.
    pub limit: StabilityLimit,
}

impl Degrees {
    /// The number as a temperature.
    pub fn temperature(&self) -> Temperature {
        Temperature::new(self.scale, self.limit.bound.value)
    }

    /// Is that temperature allowed?
    pub fn allows(&self, temperature: Temperature) -> bool {
        let edge = self.temperature().in_fahrenheit();
        self.limit.at(edge).allows(temperature.in_fahrenheit())
    }

    /// Where it stands.
    pub fn row(&self) -> &RowId {
        &self.limit.bound.row
    }

    /// As it is said: `at most 5 °C`.
    pub fn says(&self) -> LimitSays {
        self.limit.says_of(self.temperature())
    }
}

/// So many hours of a bound as a length of time; a part of a second counts for nothing.
pub fn hours(hours: Decimal) -> TimeDelta {
    seconds(hours * Decimal::from(3_600))
}

/// So many minutes of a bound as a length of time.
pub(crate) fn minutes(minutes: Decimal) -> TimeDelta {
    seconds(minutes * Decimal::from(60))
}

fn seconds(seconds: Decimal) -> TimeDelta {
    use rust_decimal::prelude::ToPrimitive;
    TimeDelta::seconds(seconds.trunc().to_i64().unwrap_or(0))
}
