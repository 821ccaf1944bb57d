//! A place as it was read last, where that is not as it has to be there: until it is read well again.

use super::rules::HeatRules;
use crate::measure::{Printed, Temperature};
use crate::stability::LimitSays;

/// How warm and how cold a place may be by its own entry: at the figure is still well.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Bounds {
    /// Not warmer.
    pub most: Option<Printed>,
    /// Not colder.
    pub least: Option<Printed>,
}

impl Bounds {
    /// The limit that a reading breaks, if it does: against the figure on its own scale.
    pub fn broken(&self, read: Temperature) -> Option<Broken> {
        let warm = self.most.filter(|most| read.against(most).is_gt());
        let cold = self.least.filter(|least| read.against(least).is_lt());
        let warm = warm.map(|most| Broken {
            read,
            limit: LimitSays::AtMost { value: most.into() },
            is_warm: true,
            is_own: true,
        });
        warm.or(cold.map(|least| Broken {
            read,
            limit: LimitSays::AtLeast {
                value: least.into(),
            },
            is_warm: false,
            is_own: true,
        }))
    }
}

/// A reading that is beyond a limit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// What was read.
    pub read: Temperature,
    /// What is asked for.
    pub limit: LimitSays,
    /// Is it too warm, and not too cold?
    pub is_warm: bool,
    /// Is it the limit of the place's own entry? Else it is that of what has to be kept cold.
    pub is_own: bool,
}

/// The limit that the last reading of a place breaks: its own; where it has none and food is kept there, that of cold
/// food, by which two such readings stop it.
pub fn beyond(
    bounds: Bounds,
    keeps_food: bool,
    read: Temperature,
    rules: &HeatRules,
) -> Option<Broken> {
    if bounds != Bounds::default() {
        return bounds.broken(read);
    }
    let cold = &rules.failure.as_ref()?.cold;
    (keeps_food && !cold.allows(read)).then(|| Broken {
        read,
        limit: cold.says(),
        is_warm: true,
        is_own: false,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Degrees, FailureRules};
    use crate::measure::Scale;
    use crate::rows::Bound;
    use crate::stability::StabilityLimit;

    fn rules() -> HeatRules {
        let limit = |bound| StabilityLimit { bound, open: false };
        HeatRules {
            failure: Some(FailureRules {
                cold: Degrees {
                    scale: Scale::Fahrenheit,
                    limit: limit(Bound::at_most("a-cold", 41)),
                },
                hours: limit(Bound::at_most("a-hours", 4)),
                raw_hours: None,
                leaves_raw_out: None,
            }),
            ..HeatRules::default()
        }
    }

    /// Too warm (`Some(true)`), too cold (`Some(false)`) or well, by whose limit.
    #[track_caller]
    fn check(bounds: Bounds, keeps_food: bool, fahrenheit: i64, expected: Option<(bool, bool)>) {
        let read = Temperature::fahrenheit(fahrenheit);
        let found = beyond(bounds, keeps_food, read, &rules());
        assert_eq!(found.map(|of| (of.is_warm, of.is_own)), expected);
    }

    #[test]
    fn a_place_without_a_limit_of_its_own_has_that_of_cold_food() {
        let none = Bounds::default();
        check(none, true, 46, Some((true, false)));
        check(none, true, 41, None);
        check(none, false, 46, None);
        let own = Bounds {
            most: Some(Temperature::fahrenheit(50).into()),
            least: Some(Temperature::fahrenheit(36).into()),
        };
        check(own, true, 46, None);
        check(own, true, 51, Some((true, true)));
        check(own, false, 35, Some((false, true)));
        // Without a rule nothing is said of what has no limit.
        let read = Temperature::fahrenheit(80);
        assert_eq!(beyond(none, true, read, &HeatRules::default()), None);
    }
}
