//! Temperatures: as they were read, and as a row prints them.
//!
//! A reading keeps its scale and its figure. Where a row prints a figure on that scale, the two figures
//! are compared as they stand: 54.4 °C meets a printed 54.4 °C, and 154.5 °F does not meet a printed
//! 155 °F. Where the row prints the other scale alone, both are brought to degrees Fahrenheit, into
//! which every decimal of degrees Celsius goes exactly (°C × 9/5 + 32, no division): nothing is rounded,
//! so nothing is rounded in favour of the cook. 54.4 °C is 129.92 °F, and does not meet 130 °F.

use crate::words::Quantity;
use rust_decimal::Decimal;
use std::cmp::Ordering;
use std::fmt;
use std::hash::{Hash, Hasher};

/// The scale that a temperature is read or written on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Scale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// A temperature with its scale and its figure as they were given. Two are equal where they are as warm:
/// 45 °C is 113 °F.
#[derive(Debug, Clone, Copy)]
pub struct Temperature {
    scale: Scale,
    degrees: Decimal,
}

impl Temperature {
    /// So many degrees of a scale.
    pub fn new(scale: Scale, degrees: impl Into<Decimal>) -> Temperature {
        let degrees = degrees.into().normalize();
        Temperature { scale, degrees }
    }

    /// From degrees Celsius.
    pub fn celsius(degrees: impl Into<Decimal>) -> Temperature {
        Temperature::new(Scale::Celsius, degrees)
    }

    /// From degrees Fahrenheit.
    pub fn fahrenheit(degrees: impl Into<Decimal>) -> Temperature {
        Temperature::new(Scale::Fahrenheit, degrees)
    }

    /// A reading as the record keeps it, in millionths of its unit; nothing where it is none of a temperature.
    pub fn read(quantity: Quantity, millionths: i64) -> Option<Temperature> {
        let degrees = Decimal::new(millionths, 6).normalize();
        match quantity {
            Quantity::Celsius => Some(Temperature::celsius(degrees)),
            Quantity::Fahrenheit => Some(Temperature::fahrenheit(degrees)),
            _ => None,
        }
    }

    /// The scale that it was given on.
    pub fn scale(self) -> Scale {
        self.scale
    }

    /// The figure that was given.
    pub fn degrees(self) -> Decimal {
        self.degrees
    }

    /// In degrees Fahrenheit, exactly.
    pub fn in_fahrenheit(self) -> Decimal {
        match self.scale {
            Scale::Fahrenheit => self.degrees,
            Scale::Celsius => (self.degrees * Decimal::new(18, 1) + Decimal::from(32)).normalize(),
        }
    }

    /// In degrees Celsius, to a tenth where it does not come out even: for the eye, never for a limit.
    pub fn in_celsius(self) -> Decimal {
        match self.scale {
            Scale::Celsius => self.degrees.round_dp(1).normalize(),
            Scale::Fahrenheit => {
                let degrees = (self.degrees - Decimal::from(32)) / Decimal::new(18, 1);
                degrees.round_dp(1).normalize()
            }
        }
    }

    /// How it stands to a figure that a row prints: on its own scale where the row has it.
    pub fn against(self, printed: &Printed) -> Ordering {
        match printed.on(self.scale) {
            Some(figure) => self.degrees.cmp(&figure),
            None => self.cmp(&printed.first),
        }
    }

    /// Is it as warm as a row prints, or warmer?
    pub fn reaches(self, printed: &Printed) -> bool {
        self.against(printed).is_ge()
    }
}

impl PartialEq for Temperature {
    fn eq(&self, other: &Temperature) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Temperature {}

impl PartialOrd for Temperature {
    fn partial_cmp(&self, other: &Temperature) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Temperature {
    fn cmp(&self, other: &Temperature) -> Ordering {
        self.in_fahrenheit().cmp(&other.in_fahrenheit())
    }
}

impl Hash for Temperature {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.in_fahrenheit().hash(state);
    }
}

impl fmt::Display for Temperature {
    /// `54.4 °C`, `130 °F`: as it was given.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let scale = match self.scale {
            Scale::Celsius => "°C",
            Scale::Fahrenheit => "°F",
        };
        write!(f, "{} {scale}", self.degrees)
    }
}

/// A temperature as a row prints it: on one scale, or with its own figure on each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Printed {
    first: Temperature,
    also: Option<Decimal>,
}

impl Printed {
    /// A figure on each scale, as a row that prints both has them.
    pub fn both(celsius: impl Into<Decimal>, fahrenheit: impl Into<Decimal>) -> Printed {
        Printed {
            first: Temperature::fahrenheit(fahrenheit),
            also: Some(celsius.into().normalize()),
        }
    }

    /// Of figures as they are written, one on each scale or on one of them.
    pub fn read(celsius: Option<&str>, fahrenheit: Option<&str>) -> Option<Printed> {
        let number = |text: &str| text.parse::<Decimal>().ok();
        Some(match (celsius, fahrenheit) {
            (Some(celsius), Some(fahrenheit)) => {
                Printed::both(number(celsius)?, number(fahrenheit)?)
            }
            (Some(celsius), None) => Temperature::celsius(number(celsius)?).into(),
            (None, Some(fahrenheit)) => Temperature::fahrenheit(number(fahrenheit)?).into(),
            (None, None) => return None,
        })
    }

    /// The figure on a scale, if the row prints one.
    pub fn on(&self, scale: Scale) -> Option<Decimal> {
        match self.first.scale == scale {
            true => Some(self.first.degrees),
            false => self.also,
        }
    }

    /// The figure that the others are measured by.
    pub fn temperature(&self) -> Temperature {
        self.first
    }
}

impl From<Temperature> for Printed {
    fn from(first: Temperature) -> Printed {
        Printed { first, also: None }
    }
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.also {
            Some(celsius) => write!(f, "{celsius} °C ({})", self.first),
            None => self.first.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tenths(count: i64) -> Decimal {
        Decimal::new(count, 1)
    }

    #[test]
    fn both_scales_come_out_even() {
        assert_eq!(Temperature::celsius(45), Temperature::fahrenheit(113));
        assert!(Temperature::celsius(5) == Temperature::fahrenheit(41));
        assert_eq!(Temperature::fahrenheit(130).to_string(), "130 °F");
        assert_eq!(Temperature::fahrenheit(130).in_celsius(), tenths(544));
    }

    #[test]
    fn a_reading_meets_a_row_in_its_own_unit() {
        let check = |reading: Temperature, printed: Printed, met: bool| {
            assert_eq!(reading.reaches(&printed), met, "{reading} at {printed}");
        };
        let (c, f) = (
            |of| Temperature::celsius(tenths(of)),
            |of| Temperature::fahrenheit(tenths(of)),
        );
        // canada-eu-uk-6.12 prints 54.4 °C alone, us-1.8 prints 130 °F alone.
        check(c(544), c(544).into(), true);
        check(f(1299), c(544).into(), false);
        check(f(1300), c(544).into(), true);
        check(c(544), f(1300).into(), false);
        check(c(545), f(1300).into(), true);
        // A row that prints both is met in either, as printed: 68 °C is less than 155 °F.
        let both = Printed::both(68, 155);
        check(c(680), both, true);
        check(c(679), both, false);
        check(f(1550), both, true);
        check(f(1545), both, false);
        check(f(1549), both, false);
    }

    #[test]
    fn as_warm_is_equal_whatever_the_scale() {
        let all = [
            Temperature::celsius(tenths(-185)),
            Temperature::fahrenheit(tenths(-13)),
        ];
        assert_eq!(all[0], all[1]);
        assert!(Temperature::celsius(0) > all[0] && all[1] < Temperature::fahrenheit(0));
    }
}
