//! Temperatures and times that cannot be, refused before they are judged.

use super::says::HeatSays;
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
    let (least, most) = degrees(COLDEST_CORE, HOTTEST_CORE);
    if core > most {
        let detail = HeatSays::CoreTooHot { at: core, most };
        return Err(Refusal::cannot_be(field, detail));
    }
    if core < least {
        let detail = HeatSays::CoreTooCold { at: core, least };
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(())
}

/// A room, a bath, or food in either, between −100 and 120 °C.
///
/// # Errors
/// Colder or hotter than that.
pub fn plausible_store(field: &str, store: Temperature) -> Result<()> {
    let (least, most) = degrees(COLDEST_STORE, HOTTEST_STORE);
    if store > most {
        let detail = HeatSays::StoreTooHot { at: store, most };
        return Err(Refusal::cannot_be(field, detail));
    }
    if store < least {
        let detail = HeatSays::StoreTooCold { at: store, least };
        return Err(Refusal::cannot_be(field, detail));
    }
    Ok(())
}

fn degrees(coldest: i32, hottest: i32) -> (Temperature, Temperature) {
    (Temperature::celsius(coldest), Temperature::celsius(hottest))
}

/// A length of time, not below nothing.
///
/// # Errors
/// A negative time.
pub fn plausible_time(field: &str, time: TimeDelta) -> Result<()> {
    if time < TimeDelta::zero() {
        return Err(Refusal::cannot_be(
            field,
            HeatSays::EndsFirst { time: -time },
        ));
    }
    Ok(())
}
