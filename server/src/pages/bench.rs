//! What the forms of the bench have in common: choices, units, what a field takes.

use super::spoken::Words;
use crate::read::names::Names;
use domain::family::Lists;
use domain::grams::Grams;
use domain::words::StepKind;
use rust_decimal::Decimal;
use words::{Heat, Mass};

/// What may stand in a field of a weight: a figure, and the unit where the scale sends it; pounds and ounces, too.
pub const WEIGHT: &str = r"\s*([0-9]+\s*lb\s*)?[0-9][0-9\s]*([.,][0-9]+)?\s*(kg|g|lb|oz)?\s*";

/// What may stand in a field of a temperature.
pub const DEGREES: &str = r"\s*[\-−]?[0-9]+([.,][0-9]+)?\s*";

/// One thing to choose.
pub struct Pick {
    /// What is sent.
    pub code: String,
    /// What it is called.
    pub name: String,
    /// Something small below.
    pub more: String,
    /// Is it chosen from the start?
    pub chosen: bool,
}

impl Pick {
    /// A thing by its code and name.
    pub fn of(code: &str, name: String) -> Pick {
        Pick {
            code: code.to_owned(),
            name,
            more: String::new(),
            chosen: false,
        }
    }
}

/// Units and scales of one reader.
pub struct Units {
    /// `kg` or `lb`: how large weights are typed.
    pub large: &'static str,
    /// `g` or `lb`: how portions are typed.
    pub small: &'static str,
    /// `g` or `lb`: how what goes into a pot is typed, but for what lies on the small scale.
    pub pot: &'static str,
    /// The key of what says that another unit may be typed with the figure.
    pub typed: &'static str,
    /// `celsius` or `fahrenheit`: the field of a temperature.
    pub degrees: &'static str,
    /// `°C` or `°F`.
    pub sign: &'static str,
}

impl Units {
    /// Those of a reader.
    pub fn of(words: &Words) -> Units {
        let (degrees, sign) = match words.0.heat {
            Heat::Celsius => ("celsius", "°C"),
            Heat::Fahrenheit => ("fahrenheit", "°F"),
        };
        let (large, small, pot, typed) = match words.0.mass {
            Mass::Metric => ("kg", "g", "g", "page-bench-typed-kg"),
            Mass::Pounds => ("lb", "lb", "lb", "page-bench-typed-lb"),
        };
        Units {
            large,
            small,
            pot,
            typed,
            degrees,
            sign,
        }
    }
}

/// A weight in grams, as a field takes it: `1125`.
pub fn in_grams(grams: Grams) -> String {
    Decimal::new(grams.milligrams(), 3).normalize().to_string()
}

/// A weight in a unit of a field, as it is typed: grams as they are, pounds to the hundredth.
pub fn typed(words: &Words, grams: Grams, unit: &str) -> String {
    match unit {
        "lb" => {
            // A pound is 453.59237 g.
            let pounds = Decimal::from(grams.milligrams()) / Decimal::new(45_359_237, 2);
            words.0.number(pounds.round_dp(2).normalize())
        }
        _ => in_grams(grams),
    }
}

/// The places, one of them chosen.
pub fn places(names: &Names, chosen: Option<&str>) -> Vec<Pick> {
    let all = names.places_by_name().into_iter();
    all.map(|(code, name)| Pick {
        chosen: Some(code) == chosen,
        ..Pick::of(code, name.to_owned())
    })
    .collect()
}

/// Where a step is done: the bench, or the heat; the first place of all where the list names none.
pub fn work_place(lists: &Lists, kind: StepKind, made_before: Option<String>) -> String {
    let contact = || lists.places.iter().find(|(_, place)| place.is_contact);
    let any = || lists.places.iter().next();
    let heats = matches!(kind, StepKind::Cook | StepKind::Smoke | StepKind::Render);
    let usual = made_before.or_else(|| {
        let place = if heats { None } else { contact() };
        place.or_else(any).map(|(code, _)| code.clone())
    });
    usual.unwrap_or_default()
}
