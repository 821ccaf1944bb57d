//! The limits of a place, as they are written in its entry.

use super::Number;
use super::cures::decimal;
use domain::heat::Bounds;
use domain::measure::{Printed, Temperature};
use domain::says::Says;
use domain::stability::LimitSays;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// How cold or warm a place has to be: at the figure is still well.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LimitsEntry {
    /// Not warmer than this, in degrees Celsius.
    pub below_celsius: Option<Number>,
    /// Or in degrees Fahrenheit.
    pub below_fahrenheit: Option<Number>,
    /// Not colder than this, in degrees Celsius.
    pub above_celsius: Option<Number>,
    /// Or in degrees Fahrenheit.
    pub above_fahrenheit: Option<Number>,
}

impl LimitsEntry {
    /// The warmest and the coldest that it may be.
    pub fn bounds(&self) -> Bounds {
        let printed =
            |celsius: Option<Number>, fahrenheit: Option<Number>| match (celsius, fahrenheit) {
                (Some(celsius), Some(fahrenheit)) => {
                    Some(Printed::both(decimal(celsius), decimal(fahrenheit)))
                }
                (Some(celsius), None) => Some(Temperature::celsius(decimal(celsius)).into()),
                (None, Some(fahrenheit)) => {
                    Some(Temperature::fahrenheit(decimal(fahrenheit)).into())
                }
                (None, None) => None,
            };
        Bounds {
            most: printed(self.below_celsius, self.below_fahrenheit),
            least: printed(self.above_celsius, self.above_fahrenheit),
        }
    }

    /// The limits, in words.
    pub fn says(&self) -> Vec<Says> {
        let Bounds { most, least } = self.bounds();
        let most = most.map(|most| LimitSays::AtMost { value: most.into() }.into());
        let least = least.map(|least| {
            LimitSays::AtLeast {
                value: least.into(),
            }
            .into()
        });
        most.into_iter().chain(least).collect()
    }

    /// The limit that a reading breaks, if it does.
    pub fn broken(&self, read: Temperature) -> Option<LimitSays> {
        self.bounds().broken(read).map(|broken| broken.limit)
    }
}
