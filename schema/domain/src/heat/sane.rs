//! Temperatures and times that cannot be, refused before they are judged.

use super::words::shown;
use crate::measure::Temperature;
use crate::refusal::{Refusal, Result};
use chrono::TimeDelta;

// Not figures of the law: what no oven or freezer gives. Meat of 120 °C is a number in Fahrenheit.
const HOTTEST_CORE: i32 = 120;
const COLDEST_CORE: i32 = -60;
const COLDEST_STORE: i32 = -100;
const HOTTEST_STORE: i32 = 120;

/// The core of a piece of meat, between −60 and 120 °C.
///
/// # Errors
/// Colder or hotter than that.
pub fn plausible_core(field: &str, core: Temperature) -> Result<()> {
    plausible(field, core, COLDEST_CORE, HOTTEST_CORE, "the core of meat")
}

/// A room, a bath, or food in either, between −100 and 120 °C.
///
/// # Errors
/// Colder or hotter than that.
pub fn plausible_store(field: &str, store: Temperature) -> Result<()> {
    plausible(field, store, COLDEST_STORE, HOTTEST_STORE, "a room or bath")
}

fn plausible(field: &str, at: Temperature, coldest: i32, hottest: i32, what: &str) -> Result<()> {
    let (low, high) = (Temperature::celsius(coldest), Temperature::celsius(hottest));
    if at > high {
        let detail = format!(
            "{at} is hotter than {what} gets ({high}). Was it read in Fahrenheit and typed as Celsius? \
             Give the scale with the number."
        );
        return Err(Refusal::cannot_be(field, detail));
    }
    if at < low {
        let detail = format!("{at} is colder than {what} gets ({low}). Check the number.");
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(())
}

/// A length of time, not below nothing.
///
/// # Errors
/// A negative time.
pub fn plausible_time(field: &str, time: TimeDelta) -> Result<()> {
    if time < TimeDelta::zero() {
        let detail = format!(
            "A time of minus {} cannot be; the end is before the start. Check both times.",
            shown(-time)
        );
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(())
}
