//! What is said of heat and cold.

use super::words::{Food, Holding, PiercedBy};
use crate::code::LotCode;
use crate::measure::{Printed, Temperature};
use crate::messages;
use crate::rows::RowId;
use crate::says::{Arg, Texts};
use crate::stability::LimitSays;
use chrono::{NaiveDateTime, TimeDelta};
use rust_decimal::Decimal;

messages! {
    /// What is said of temperatures, times and logs that cannot be.
    HeatSays in "heat" {
        CoreTooHot "core-too-hot" { at: Temperature, most: Temperature },
        CoreTooCold "core-too-cold" { at: Temperature, least: Temperature },
        StoreTooHot "store-too-hot" { at: Temperature, most: Temperature },
        StoreTooCold "store-too-cold" { at: Temperature, least: Temperature },
        EndsFirst "ends-first" { time: TimeDelta },
        NoReading "no-reading",
        TwoReadings "two-readings" { at: NaiveDateTime, one: Temperature, other: Temperature },
        ReadAfter "read-after" { read: NaiveDateTime, ended: NaiveDateTime },
        ReadBefore "read-before" { read: NaiveDateTime, began: NaiveDateTime },
        ReadLongBefore "read-long-before" { read: NaiveDateTime, ended: NaiveDateTime },
        ReadBeforeItCame "read-before-it-came" {
            lot: LotCode, read: NaiveDateTime, came: NaiveDateTime,
        },
        HeldBeforeItCame "held-before-it-came" {
            lot: LotCode, held: TimeDelta, most: TimeDelta, came: NaiveDateTime,
        },
        HeldBeforeItBegan "held-before-it-began" {
            held: TimeDelta, most: TimeDelta, began: NaiveDateTime,
        },
    }
}

messages! {
    /// What is said of a cook.
    CookSays in "cook" {
        Silence "silence" { from: NaiveDateTime, until: NaiveDateTime, length: TimeDelta },
        WentOut "went-out" { core: Temperature, at: NaiveDateTime },
        NoTable "no-table" { food: Food },
        NoLethality "no-lethality" { log: Decimal, food: Food },
        NoRow "no-row" { row: RowId },
        HeldShort "held-short" {
            core: Temperature, held: TimeDelta, at_least: Printed, hold: TimeDelta,
            missing: TimeDelta,
        },
        Gaps "gaps" { held: TimeDelta, at_least: Printed },
        HoldShort "hold-short" {
            at_least: Printed, held: TimeDelta, hold: TimeDelta, missing: TimeDelta,
        },
        Reached "reached" { at_least: Printed },
        Enough "enough" { at_least: Printed, hold: TimeDelta, held: TimeDelta },
        TooCool "too-cool" { core: Temperature, at_least: Printed, hold: TimeDelta },
        TooCoolAtOnce "too-cool-at-once" { core: Temperature, at_least: Printed },
        NotHeld "not-held" { at_least: Printed, hold: TimeDelta },
        NoneMet "none-met" { at_least: Printed, hold: TimeDelta },
        NoneMetAtOnce "none-met-at-once" { at_least: Printed },
        ByAnother "by-another" { row: RowId },
        NotDecided "not-decided" { row: RowId },
        OtherFood "other-food" { row: RowId, made_for: Food, food: Food },
        NotMadeFor "not-made-for" { row: RowId },
        Boiled "boiled" { boiled: TimeDelta, least: TimeDelta },
        BoiledShort "boiled-short" { boiled: TimeDelta, least: TimeDelta },
        BoiledPiece "boiled-piece" { food: Food },
        BoiledWhole "boiled-whole" { piece: Texts },
        Pierced "pierced" { product: Texts, lot: LotCode, by: PiercedBy, class: Food },
        Stuffed "stuffed" { product: Texts, lot: LotCode, class: Food },
        SaidStuffed "said-stuffed" { class: Food },
        Filled "filled" { product: Texts, lot: LotCode, class: Food },
        NotStuffed "not-stuffed" { product: Texts, lot: LotCode },
        BeforeItCame "before-it-came" { lot: LotCode, came: NaiveDateTime },
        TypedLater "typed-later" { lot: LotCode, came: NaiveDateTime },
        UnknownAnimal "unknown-animal" { product: Texts, lot: LotCode },
        StoodWarm "stood-warm" { hot: Printed, warm: TimeDelta, within: TimeDelta },
        CameUpSlowly "came-up-slowly" {
            from: Printed, to: Printed, took: TimeDelta, within: TimeDelta,
        },
    }
}

messages! {
    /// A stage of a cooling, within a sentence.
    StageSays in "cool-stage" {
        Between "between" { from: Printed, to: Printed },
        FromStart "from-start" { to: Printed },
    }
}

messages! {
    /// What is said of a cooling.
    CoolSays in "cool" {
        NoPlan "no-plan" { plan: String, known: Arg },
        NotAfterCooking "not-after-cooking" { plan: String },
        NitriteCannotBe "nitrite-cannot-be" { ppm: Decimal },
        NoStages "no-stages",
        NotApproved "not-approved",
        NoNitrite "no-nitrite" { least: Decimal },
        LittleNitrite "little-nitrite" { least: Decimal, ppm: Decimal },
        NeverAbove "never-above" { to: Printed },
        Enough "enough" { stage: StageSays, most: TimeDelta, within: TimeDelta },
        TooLong "too-long" { stage: StageSays, least: TimeDelta, within: TimeDelta },
        Unsure "unsure" {
            stage: StageSays, least: TimeDelta, most: TimeDelta, within: TimeDelta,
        },
        UnsureAtMost "unsure-at-most" { stage: StageSays, most: TimeDelta, within: TimeDelta },
        StillWarm "still-warm" {
            gone: TimeDelta, from: Printed, core: Temperature, within: TimeDelta, stage: StageSays,
        },
        WarmSinceStart "warm-since-start" {
            gone: TimeDelta, core: Temperature, within: TimeDelta, stage: StageSays,
        },
        StillCooling "still-cooling" {
            core: Temperature, at: NaiveDateTime, to: Printed, by: NaiveDateTime,
        },
        WarmAfterFirst "warm-after-first" {
            core: Temperature, after: TimeDelta, within: TimeDelta, stage: StageSays,
        },
        BeginsLate "begins-late" { core: Temperature, stage: StageSays },
        NoneMet "none-met",
    }
}

messages! {
    /// What is said of holding and thawing.
    HoldSays in "holding" {
        NoTemperature "no-temperature" { what: Holding },
        Outside "outside" { at: Temperature, limit: LimitSays },
        Nowhere "nowhere" { at: Temperature, limit: LimitSays },
    }
}
