//! What is said of shelf stability.

use super::limit::LimitSays;
use super::readings::Measure;
use crate::messages;
use crate::says::{Arg, Says};
use rust_decimal::Decimal;

messages! {
    /// What is said of stability.
    StabilitySays in "stability" {
        NoTable "no-table",
        NotMeasured "not-measured",
        Ph "ph",
        WaterActivity "water-activity",
        Measured "measured" { ph: Arg, activity: Arg },
        Stable "stable" { measured: Says },
        Measure "measure" { measured: Says, lacks: Arg },
        Assess "assess" { measured: Says },
        NoneOf "none-of" { ways: Arg },
    }
}

messages! {
    /// What is said of a way, of which any one will do.
    WaySays in "stability-way" {
        Way "of" { all: Arg },
        Limit "limit" { measure: Measure, limit: LimitSays },
        Has "has" { way: Says },
        HasUnread "has-unread" { way: Says },
        NoBarriers "no-barriers",
        NoBarrier "no-barrier" { ways: Arg },
    }
}

messages! {
    /// What is said of moisture to protein.
    MoistureSays in "moisture" {
        RatioCannotBe "ratio-cannot-be" { ratio: Decimal },
        NoName "no-name" { name: String, known: Arg },
        TooMoist "too-moist" { ratio: Decimal, name: String, most: Decimal },
        PhHigh "ph-high" { ph: Decimal, name: String, most: Decimal },
        PhMissing "ph-missing" { name: String, most: Decimal },
        NoProof "no-proof",
    }
}

messages! {
    /// What is said of readings that no meter shows.
    ReadingSays in "reading" {
        Ph "ph" { ph: Decimal },
        ActivityPercent "activity-percent" { activity: Decimal, meant: Decimal },
        ActivityHigh "activity-high" { activity: Decimal },
        ActivityLow "activity-low" { activity: Decimal },
        Salt "salt" { salt: Decimal },
    }
}

/// A figure, or that there is none.
pub(super) fn measured(figure: Option<Decimal>) -> Arg {
    figure.map_or_else(|| Arg::from(StabilitySays::NotMeasured), Arg::from)
}
