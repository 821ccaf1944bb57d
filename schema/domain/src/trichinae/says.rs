//! What is said of pork that is eaten uncooked.

use super::length::Length;
use super::process::StageKind;
use super::rules::Way;
use crate::measure::{Percent, Printed, Temperature};
use crate::messages;
use crate::says::{Arg, Says};
use crate::stability::LimitSays;
use crate::words::{Species, words};
use chrono::{NaiveDate, TimeDelta};
use rust_decimal::Decimal;

messages! {
    /// What is said of what speaks for a lot.
    ProofSays in "trichinae-proof" {
        NormallyCooked "normally-cooked",
        NotFreed "not-freed",
        NoPaper "no-paper",
        NotTaken "not-taken" { way: Way },
        OnlyOfPigs "only-of-pigs" { way: Way, species: Species },
        NoneNeeded "none-needed" { way: Way, paper: String },
    }
}

messages! {
    /// What is said of a freezing.
    ColdSays in "trichinae-cold" {
        NoTable "no-table",
        GiveThickness "give-thickness",
        TooWarm "too-warm" { at: Temperature, first: Printed },
        Short "short" {
            at_most: Printed, hold: TimeDelta, held: TimeDelta, missing: TimeDelta,
        },
        Enough "enough" { at_most: Printed, hold: TimeDelta },
        LongerThanDead "longer-than-dead" { held: TimeDelta, dead_for: TimeDelta },
        LongerThanOnRecord "longer-than-on-record" { held: TimeDelta, on_record: TimeDelta },
        NeverFrozen "never-frozen" { held: TimeDelta },
        TooThick "too-thick" { thickest: Length },
        WarmAtStart "warm-at-start" { start: Temperature, limit: LimitSays },
    }
}

messages! {
    /// What is said of a heating.
    HeatedSays in "trichinae-heat" {
        NoTable "no-table",
        TooCool "too-cool" { core: Temperature, first: Printed },
        Enough "enough" { at_least: Printed, hold: TimeDelta },
        HoldsItself "holds-itself" { thicker_than: Length, later: TimeDelta },
        Short "short" {
            at_least: Printed, hold: TimeDelta, held: TimeDelta, missing: TimeDelta,
        },
        NoTime "no-time" { at_least: Printed, hold: TimeDelta },
        CameUpSlowly "came-up-slowly" { took: TimeDelta, within: TimeDelta },
        NeverHeated "never-heated" { core: Temperature },
        HotterThanOnRecord "hotter-than-on-record" { core: Temperature, on_record: Temperature },
    }
}

words! {
    /// The figures of a curing that a method has a number for.
    CureFigure {
        Salt = "salt", MixSalt = "mix-salt", BrineSalt = "brine-salt", Salometer = "salometer",
        Pickle = "pickle", Piece = "piece", Mass = "mass", Overhauls = "overhauls",
    }
}

messages! {
    /// What is said of a curing by a method.
    MethodSays in "trichinae-method" {
        NoMethods "no-methods" { method: String },
        NoMethod "no-method" { method: String, known: Arg },
        Checked "checked" { method: String },
        Incomplete "incomplete",
        GivePiece "give-piece",
        GiveMass "give-mass",
        GiveCasing "give-casing",
        GiveWhole "give-whole",
        GiveHeaviest "give-heaviest",
        GiveDays "give-days",
        TooHeavy "too-heavy",
        CasingTooWide "casing-too-wide",
        Lack "lack" { figure: CureFigure, limit: LimitSays, has: Decimal },
        LackUnknown "lack-unknown" { figure: CureFigure, limit: LimitSays },
        Lacks "lacks" { lacks: Vec<Says> },
        Need "need" { need: PartSays, wanted: TimeDelta, has: TimeDelta, missing: TimeDelta },
        UpTo "up-to" { stage: StageKind, most: TimeDelta, took: TimeDelta },
        UpToCool "up-to-cool" {
            stage: StageKind, most: TimeDelta, at_most: Temperature, took: TimeDelta,
        },
        WholeShort "whole-short" { wanted: TimeDelta, has: TimeDelta, missing: TimeDelta },
        OutsideWinter "outside-winter" { cured_on: NaiveDate },
        DriedShort "dried-short" { days: i64, needed: i64 },
        NoSummer "no-summer",
        ClimateShort "climate-short" { lacks: Arg },
        ClimateMet "climate-met",
        NoMeat "no-meat",
        OnRecord "on-record" { salt: Percent, stages: Vec<Says> },
    }
}

messages! {
    /// A stage as the record has it.
    StageOnRecordSays in "trichinae-stage" {
        Read "read" { stage: StageKind, time: TimeDelta, lowest: Temperature, readings: usize },
        Unread "unread" { stage: StageKind, time: TimeDelta },
    }
}

messages! {
    /// A part of what a method asks for, within a sentence.
    PartSays in "trichinae-part" {
        Any "any" { stage: StageKind },
        AtLeast "at-least" { stage: StageKind, at_least: Temperature },
        AtMost "at-most" { stage: StageKind, at_most: Temperature },
        Between "between" { stage: StageKind, at_least: Temperature, at_most: Temperature },
        With "with" { part: Says, other: Says },
    }
}

messages! {
    /// What is said of drying by the tables.
    DryingSays in "trichinae-drying" {
        NoHamTable "no-ham-table",
        NoSausageTables "no-sausage-tables",
        GiveCasing "give-casing",
        GiveSalt "give-salt",
        OneRun "one-run" { at_least: Temperature, time: TimeDelta },
        RunsEnough "runs-enough" { sum: Decimal, more_than: Decimal },
        RunsShort "runs-short" {
            sum: Decimal, more_than: Decimal, at_least: Temperature, missing: TimeDelta,
        },
        TableEnds "table-ends" { casing: Length, salt: Percent },
        Days "days" {
            base: u32, cut: u32, cut_percent: u32, more: u32, more_percent: u32, days: u32,
            room: Temperature,
        },
        Enough "enough" { days: Says },
        Short "short" { days: Says, missing: TimeDelta },
    }
}

messages! {
    /// What is said of a curing that cannot have been.
    ProcessSays in "trichinae-process" {
        HighestBelowLowest "highest-below-lowest" { highest: Temperature, lowest: Temperature },
        NoThickness "no-thickness",
        NoWeight "no-weight",
        EndsFirst "ends-first" { last: NaiveDate, first: NaiveDate },
        SaltIsDry "salt-is-dry",
        MixTooLight "mix-too-light",
        PartOfOne "part-of-one" { percent: Decimal },
        CannotBe "cannot-be" { percent: Decimal },
        Salometer "salometer" { degrees: Decimal },
        Pickle "pickle" { parts: Decimal },
    }
}

messages! {
    /// A thickness within a sentence.
    LengthSays in "thickness" {
        Of "of" { mm: Decimal, inches: Decimal },
    }
}
