//! The last day of a pack: the product's own keeping rule, the law of the place, the earliest date of
//! what went into it, and what has happened to the pack since. Nobody types a date.
//!
//! [`Making`] dates a lot when it is made; [`Later`] holds what can still change a pack's date.

mod because;
mod keep;
mod later;
mod limit;
mod making;
mod mince;
mod rules;
mod says;
mod vacuum;

pub use because::{Because, Rule};
pub use keep::{Count, KeepingRule};
pub use later::{Later, date_when_thawed};
pub use limit::{DayLimit, LimitedFood};
pub use making::{Dated, MakersDate, Making, PartDate};
pub use mince::{MinceRules, MincedMeat, is_minced, minced_in_time, refrozen};
pub use rules::{Cold, Marked, Resets, ShelfLifeRules, Supplier, Vacuum};
pub use says::{DateSays, EventSays, FirstDaySays, MinceDateSays};

use chrono::NaiveDate;

/// The earlier of two dates, where there are any.
pub fn earliest(one: Option<NaiveDate>, other: Option<NaiveDate>) -> Option<NaiveDate> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (any, None) | (None, any) => any,
    }
}
