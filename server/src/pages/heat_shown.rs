//! What the law of the place asks of a cook and of a cooling, as it stands beside the form: the numbers in words, and
//! for the curve the edges that must be reached.

use super::bench_says::BenchSays;
use super::spoken::Words;
use crate::read::LoadedFamily;
use chrono::{DateTime, Offset, TimeDelta, Utc};
use chrono_tz::Tz;
use domain::heat::{CoolingPlan, Food, HeatTable};
use domain::law::Law;
use domain::measure::{Printed, Scale};
use domain::product::Product;
use domain::says::Says;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde_json::{Value, json};
use words::Heat;

/// The most steps of a table that are told.
const MOST_STEPS: usize = 5;

/// What is asked, and where it stands.
#[derive(Default)]
pub struct Rule {
    /// In words, a line each.
    pub lines: Vec<String>,
    /// The row.
    pub row: String,
    /// For the curve: from where to where within how many minutes.
    pub edges: String,
}

/// The kitchen's day and hour, and how far it is from the world's: what the hours of readings are told by.
pub struct Clock {
    /// `2026-06-26`.
    pub day: String,
    /// `10:40`.
    pub clock: String,
    /// `-04:00`.
    pub offset: String,
}

impl Clock {
    /// At a moment.
    pub fn of(now: DateTime<Utc>, zone: Tz) -> Clock {
        let local = now.with_timezone(&zone);
        let minutes = local.offset().fix().local_minus_utc() / 60;
        let sign = if minutes < 0 { '-' } else { '+' };
        Clock {
            day: local.format("%Y-%m-%d").to_string(),
            clock: local.format("%H:%M").to_string(),
            offset: format!("{sign}{:02}:{:02}", minutes.abs() / 60, minutes.abs() % 60),
        }
    }
}

/// The edition of the code under which the kitchen cooks.
pub fn code_year(reading: &LoadedFamily<'_>) -> u16 {
    let of_place = reading.law.heat.code_year.as_ref().map(|(year, _)| *year);
    reading
        .kitchen()
        .entry
        .code_year
        .or(of_place)
        .unwrap_or_default()
}

/// The minutes that a pot has to boil, as a field takes them and in words; nothing where the place has no such rule,
/// or where it proves nothing of such food.
pub fn boiled(words: &Words, law: &Law, product: &Product) -> Option<(String, String)> {
    let rule = law.heat.boiling.as_ref()?;
    if product
        .cooked_as
        .is_some_and(|food| rule.not_for.contains(&food))
    {
        return None;
    }
    let minutes = rule.minutes.value;
    let says = words.say(BenchSays::Boiled { minutes });
    Some((minutes.normalize().to_string(), says))
}

/// The table by which a cook of that product is judged.
pub fn of_cook(words: &Words, law: &Law, product: &Product, code_year: u16) -> Rule {
    let Some(food) = product.cooked_as else {
        return Rule::default();
    };
    let mut tables = law.heat.cooking.iter();
    let Some(cooking) = tables.find(|cooking| cooking.holds(food, code_year)) else {
        return Rule::default();
    };
    let table = &cooking.table;
    let reached = |step: &domain::heat::HoldStep| step.hold <= TimeDelta::zero();
    let lowest = table.steps().iter().find(|step| reached(step));
    let lowest = lowest.or_else(|| table.steps().last());
    let edges = lowest.map(|step| json!({ "to": degrees(words, &step.at_least) }));
    Rule {
        lines: steps(words, table),
        row: words.say(BenchSays::Row {
            row: table.row().as_str().to_owned(),
        }),
        edges: Value::from_iter(edges).to_string(),
    }
}

/// Does it matter to a cook of that product whether the meat is stuffed? What claims to be whole would need less.
pub fn asks_stuffed(product: &Product) -> bool {
    matches!(product.cooked_as, Some(Food::Intact | Food::Roast))
}

fn steps(words: &Words, table: &HeatTable) -> Vec<String> {
    let steps = table.steps();
    // Of a long table the hottest steps are told: those are the ones that a kitchen cooks by.
    let told = steps.len().saturating_sub(MOST_STEPS);
    let line = |step: &domain::heat::HoldStep| {
        let at = step.at_least.into();
        words.say(match step.hold <= TimeDelta::zero() {
            true => BenchSays::HeatReached { at },
            false => BenchSays::HeatStep {
                at,
                minutes: step.hold.into(),
            },
        })
    };
    steps[told..].iter().rev().map(line).collect()
}

/// The way to cool that the place takes for what was cooked; else its first.
pub fn of_cooling(words: &Words, law: &Law) -> Rule {
    let Some(plan) = law.heat.usual_cooling() else {
        return Rule::default();
    };
    Rule {
        lines: stages(words, plan),
        row: words.say(BenchSays::Row {
            row: plan.row.as_str().to_owned(),
        }),
        edges: edges(words, plan).to_string(),
    }
}

fn stages(words: &Words, plan: &CoolingPlan) -> Vec<String> {
    let stage = |stage: &domain::heat::CoolingStage| {
        let minutes = stage.within_minutes.value.trunc().to_i64().unwrap_or(0);
        let (to, hours) = (stage.to.into(), TimeDelta::minutes(minutes).into());
        Says::from(match stage.from {
            Some(from) => BenchSays::CoolBetween {
                from: from.into(),
                to,
                hours,
            },
            None => BenchSays::CoolFromStart { to, hours },
        })
    };
    plan.stages.iter().map(|of| words.say(stage(of))).collect()
}

fn edges(words: &Words, plan: &CoolingPlan) -> Value {
    let stages = plan.stages.iter().map(|stage| {
        json!({
            "from": stage.from.map(|from| degrees(words, &from)),
            "to": degrees(words, &stage.to),
            "minutes": figure(stage.within_minutes.value),
        })
    });
    stages.collect()
}

/// A temperature on the reader's scale, as a script takes it.
fn degrees(words: &Words, printed: &Printed) -> Value {
    let scale = match words.0.heat {
        Heat::Celsius => Scale::Celsius,
        Heat::Fahrenheit => Scale::Fahrenheit,
    };
    let of = printed.temperature();
    let told = printed.on(scale).unwrap_or_else(|| match scale {
        Scale::Celsius => of.in_celsius(),
        Scale::Fahrenheit => of.in_fahrenheit(),
    });
    figure(told.round_dp(1))
}

fn figure(of: Decimal) -> Value {
    let number = of.normalize().to_string().parse::<serde_json::Number>();
    number.map_or(Value::Null, Value::Number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hour_stands_with_its_distance_from_the_worlds() {
        let now = "2026-06-26T14:40:03Z".parse().unwrap();
        let clock = Clock::of(now, Tz::America__New_York);
        let told = (
            clock.day.as_str(),
            clock.clock.as_str(),
            clock.offset.as_str(),
        );
        assert_eq!(told, ("2026-06-26", "10:40", "-04:00"));
        assert_eq!(Clock::of(now, Tz::Asia__Kolkata).offset, "+05:30");
    }
}
