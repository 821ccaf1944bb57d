//! What is said of food that has a standard: its name, its figures.

use super::mince::MinceKind;
use crate::grams::Grams;
use crate::measure::{Percent, Temperature};
use crate::messages;
use crate::says::Arg;
use rust_decimal::Decimal;

messages! {
    /// What is said of a name.
    NameSays in "name" {
        Quoted "quoted" { text: String },
        MadePlain "made-plain" { by: String, word: String },
        PackedIn "packed-in" { liquid: String, name: String },
        CutOf "cut-of" { word: String, parts: Arg, species: Arg },
        Nitrite "nitrite" { word: String },
        Salted "salted" { word: String },
        CoreUnread "core-unread" { word: String, least: Temperature },
        CoreCool "core-cool" { word: String, least: Temperature, core: Temperature },
        ShankBones "shank-bones" { word: String },
        Bones "bones" { add: Arg },
        MadeThere "made-there" { word: String, add: Arg },
        OnlyTrichinae "only-trichinae" { word: String },
        NotCooked "not-cooked" { word: String },
        MuchFat "much-fat" { part: Percent, fat: String, word: String, most: Decimal },
        SayFat "say-fat" { fat: String },
        SayWhere "say-where",
        NotMadeThere "not-made-there" { place: String, add: Arg },
    }
}

messages! {
    /// What is said of cured pork that has a standard.
    PorkSays in "pork" {
        GiveAdded "give-added",
        NoProtein "no-protein",
        MoreThanWhole "more-than-whole" { protein: Decimal, fat: Decimal },
        Bacon "bacon" { part: Percent, most: Decimal },
        Fat "fat" { percent: Decimal, most: Decimal },
        Shank "shank" { percent: Decimal, most: Decimal },
        NoWeight "no-weight" { weight: Grams },
    }
}

messages! {
    /// What is said of a piece that is cured dry.
    DryCuredSays in "dry-cured" {
        Heavy "heavy" { part: Percent, most: Decimal },
        LittleSalt "little-salt" { salt: Percent, least: Decimal },
        MeasureSalt "measure-salt" { least: Decimal },
        MoreThanWhole "more-than-whole" { salt: Decimal, water: Decimal },
        ActivityCannotBe "activity-cannot-be" { activity: Decimal },
        Unmeasured "unmeasured" { brine: Decimal, activity: Decimal },
        Brine "brine" { brine: Decimal, activity: Decimal, is: Percent },
        Activity "activity" { brine: Decimal, activity: Decimal, is: Decimal },
        Both "both" { brine: Decimal, activity: Decimal, has: Percent, is: Decimal },
        WholeDays "whole-days" { days: u32, least: Decimal },
        CureDays "cure-days" { days: u32, least: Decimal },
        Core "core" { core: Temperature, most: Temperature },
    }
}

messages! {
    /// What is said of mince, and of meat as an ingredient.
    MinceSays in "mince" {
        NoSample "no-sample",
        Fat "fat" { percent: Percent, kind: MinceKind, most: Decimal },
        Collagen "collagen" { percent: Percent, kind: MinceKind, most: Decimal },
        FatEdge "fat-edge" { percent: Percent },
        CollagenEdge "collagen-edge" { percent: Percent },
        Salt "salt" { salt: Percent, under: Decimal },
        Refrozen "refrozen",
        MeatFat "meat-fat" { percent: Percent, most: Decimal },
        MeatTissue "meat-tissue" { percent: Percent, most: Decimal },
        MeatProtein "meat-protein" { protein: Percent, least: Decimal },
    }
}
