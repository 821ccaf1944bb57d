//! A temperature as it is asked: of two fields, one.

use super::says::MeasureSays;
use crate::error::{Error, Result};
use crate::wire::Number;
use crate::wire::cures::decimal;
use chrono::{DateTime, Utc};
use domain::measure::{Scale, Temperature};
use domain::words::Quantity;
use store::measurements::Measurement;
use store::probes::CorePoint;

/// What the air and the food of a kitchen can have, in degrees Celsius: plain sense, no law's.
pub const KITCHEN: (i64, i64) = (-90, 350);
/// The same of a brine in which a salometer floats.
pub const BRINE: (i64, i64) = (-25, 110);

/// The same of a probe in ice or in boiling water.
pub const BATH: (i64, i64) = (-40, 150);

/// A temperature of two fields of which one is given. `field` is what stands before their names.
///
/// # Errors
/// 422 where both are given, or one that no instrument in a kitchen shows.
pub fn temperature(
    celsius: Option<Number>,
    fahrenheit: Option<Number>,
    between: (i64, i64),
    field: &str,
) -> Result<Option<Temperature>> {
    let (scale, number) = match (celsius, fahrenheit) {
        (Some(_), Some(_)) => {
            let says = MeasureSays::OneScale;
            return Err(Error::cannot_be(format!("{field}fahrenheit"), says));
        }
        (Some(number), None) => (Scale::Celsius, number),
        (None, Some(number)) => (Scale::Fahrenheit, number),
        (None, None) => return Ok(None),
    };
    let read = Temperature::new(scale, decimal(number));
    let (least, most) = (
        Temperature::celsius(between.0),
        Temperature::celsius(between.1),
    );
    if read < least || read > most {
        let says = MeasureSays::BetweenDegrees { least, most };
        return Err(Error::cannot_be(format!("{field}{}", field_of(read)), says));
    }
    Ok(Some(read))
}

/// The name of the field that a temperature was given in.
pub fn field_of(read: Temperature) -> &'static str {
    match read.scale() {
        Scale::Celsius => "celsius",
        Scale::Fahrenheit => "fahrenheit",
    }
}

/// A timed reading as the record keeps it.
pub fn point(at: DateTime<Utc>, read: Temperature) -> CorePoint {
    CorePoint {
        at,
        read: kept(read, Quantity::Celsius, Quantity::Fahrenheit),
        probe: None,
    }
}

/// A temperature as the record keeps it: its own figure, on its own scale.
pub fn kept(read: Temperature, celsius: Quantity, fahrenheit: Quantity) -> Measurement {
    let quantity = match read.scale() {
        Scale::Celsius => celsius,
        Scale::Fahrenheit => fahrenheit,
    };
    Measurement {
        quantity,
        millionths: crate::wire::cures::number(read.degrees()).0,
    }
}
