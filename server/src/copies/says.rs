//! What is said of copies: why there is none, and how often they are made.

use super::{APART, FOLDER, KEY, UNSOUND};
use domain::messages;
use rust_decimal::Decimal;

messages! {
    /// What is said of copies.
    CopySays in "copies" {
        Folder "folder",
        Record "record",
        Unsound "unsound",
        Key "key",
        Apart "apart",
        EveryDays "every-days" { days: i64 },
        EveryHours "every-hours" { hours: i64 },
        EveryMinutes "every-minutes" { minutes: i64 },
        Keeps "keeps" { days: usize, weeks: usize, months: usize },
        Length "length" { megabytes: Decimal },
        Took "took" { seconds: Decimal },
    }
}

/// A sort of trouble in a sentence.
pub fn of(sort: &str) -> CopySays {
    match sort {
        FOLDER => CopySays::Folder,
        UNSOUND => CopySays::Unsound,
        KEY => CopySays::Key,
        APART => CopySays::Apart,
        _ => CopySays::Record,
    }
}

/// How often, in the largest whole unit.
pub fn every(length: chrono::TimeDelta) -> CopySays {
    match length.num_minutes() {
        minutes if minutes % 1_440 == 0 => CopySays::EveryDays {
            days: minutes / 1_440,
        },
        minutes if minutes % 60 == 0 => CopySays::EveryHours {
            hours: minutes / 60,
        },
        minutes => CopySays::EveryMinutes { minutes },
    }
}
