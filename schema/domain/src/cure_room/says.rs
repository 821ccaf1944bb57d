//! What is said in the cure room.

use super::Task;
use super::forecast::Basis;
use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::says::{Arg, Says};
use chrono::NaiveDate;
use rust_decimal::Decimal;

messages! {
    /// What is said of a piece, its calendar and its tag.
    RoomSays in "room" {
        CalendarEnds "calendar-ends",
        TurnedDaily "turned-daily",
        DaysCannotBe "days-cannot-be" { days: u32 },
        FatCannotBe "fat-cannot-be" { fat: Percent },
        FatFraction "fat-fraction" { fat: Percent },
        NeverReached "never-reached" { loss: Percent, most: Percent },
        FitsBetter "fits-better" { grams: Grams, tag: String, expected: Grams },
        Due "due" { tag: String, task: TaskSays, since: NaiveDate },
        TaskSince "task-since" { task: TaskSays, since: NaiveDate },
    }
}

messages! {
    /// What is to be done to a piece, as a cook says it.
    TaskSays in "room-task" {
        Salt "salt",
        Overhaul "overhaul",
        Turn "turn",
        Rinse "rinse",
        Equalise "equalise",
        Hang "hang",
        Weigh "weigh",
        ReadyFrom "ready-from",
        ReadyBy "ready-by",
    }
}

impl From<Task> for TaskSays {
    fn from(task: Task) -> TaskSays {
        match task {
            Task::Salt => TaskSays::Salt,
            Task::Overhaul => TaskSays::Overhaul,
            Task::Turn => TaskSays::Turn,
            Task::Rinse => TaskSays::Rinse,
            Task::Equalise => TaskSays::Equalise,
            Task::Hang => TaskSays::Hang,
            Task::Weigh => TaskSays::Weigh,
            Task::ReadyFrom => TaskSays::ReadyFrom,
            Task::ReadyBy => TaskSays::ReadyBy,
        }
    }
}

messages! {
    /// What is said of a weighing that is not as it should be.
    AlarmSays in "alarm" {
        TooFast "too-fast" { tag: String, lost: Arg, day: NaiveDate, expected: Arg, points: Decimal },
        TooSlow "too-slow" { tag: String, lost: Arg, day: NaiveDate, expected: Arg, points: Decimal },
        CannotWeigh "cannot-weigh" { tag: String, grams: Grams, green: Grams },
        BeforeSalt "before-salt" { tag: String, day: NaiveDate, salted: NaiveDate },
        AboveGreen "above-green" { tag: String, grams: Grams, green: Grams },
        PastWater "past-water" { tag: String, lost: Arg },
        Gained "gained" { tag: String, grams: Grams, before: Grams, day: NaiveDate },
    }
}

messages! {
    /// When a piece is likely to be ready.
    ForecastSays in "forecast" {
        Released "released",
        WeightMet "weight-met" { ready: NaiveDate },
        About "about" { day: NaiveDate, basis: BasisSays },
        Between "between" { earliest: NaiveDate, latest: NaiveDate, basis: BasisSays },
        NotBefore "not-before" { earliest: NaiveDate, basis: BasisSays },
        Unknown "unknown",
    }
}

messages! {
    /// What a forecast rests on, as it ends a sentence.
    BasisSays in "forecast-by" {
        Curve "curve",
        OneWeighing "one-weighing",
        Weighings "weighings",
    }
}

impl From<Basis> for BasisSays {
    fn from(basis: Basis) -> BasisSays {
        match basis {
            Basis::Curve => BasisSays::Curve,
            Basis::OneWeighing => BasisSays::OneWeighing,
            Basis::Weighings => BasisSays::Weighings,
        }
    }
}

messages! {
    /// What is said of the time in salt.
    SaltingSays in "salting" {
        NoGreen "no-green",
        NoThickness "no-thickness",
        TooMany "too-many",
        PoundCannotBe "pound-cannot-be" { rate: Decimal },
        InchCannotBe "inch-cannot-be" { rate: Decimal },
        PoundTooLong "pound-too-long" { rate: Decimal, most: Decimal },
        InchTooLong "inch-too-long" { rate: Decimal, most: Decimal },
        ADayAtLeast "a-day-at-least",
        TooLong "too-long" { days: Decimal, most: Decimal },
    }
}

messages! {
    /// What is said of a drying curve.
    CurveSays in "curve" {
        Begins "begins",
        Rises "rises",
        AllLost "all-lost",
    }
}

messages! {
    /// What is said of a release.
    ReleaseSays in "release" {
        Alarm "alarm" { alarm: Says },
        NotReady "not-ready" { lot: LotCode, unmet: Vec<Says> },
        AsksNothing "asks-nothing",
        LossFraction "loss-fraction" { loss: Percent },
        LossCannotBe "loss-cannot-be" { loss: Percent },
        ToleranceCannotBe "tolerance-cannot-be" { points: Percent, target: Percent },
        WaterActivityCannotBe "water-activity-cannot-be" { limit: Decimal },
        TooYoung "too-young" { days: u32, needed: u32 },
        TooYoungUntil "too-young-until" { days: u32, needed: u32, from: NaiveDate },
        NeverWeighed "never-weighed" { target: Percent },
        TooHeavy "too-heavy" { lost: Percent, target: Percent, now: Grams, green: Grams, ready: Grams },
        TooHeavyStill "too-heavy-still" { lost: Percent, target: Percent, less: Percent, now: Grams, green: Grams, ready: Grams },
        NotRead "not-read" { limit: Decimal },
        MisreadWater "misread-water" { reading: Decimal },
        TooWet "too-wet" { reading: Decimal, limit: Decimal },
        NotSigned "not-signed",
    }
}
