//! What is said of the kitchen's lists and of the kitchen itself.

use chrono::NaiveDate;
use domain::messages;
use domain::says::{Arg, Says};

messages! {
    /// The lists by name.
    ListNames in "list-name" {
        Farms "farms",
        Abattoirs "abattoirs",
        Suppliers "suppliers",
        Places "places",
        Products "products",
        Recipes "recipes",
        Printers "printers",
        Probes "probes",
    }
}

messages! {
    /// What is said of an entry of a list.
    ListSays in "entry" {
        NotThere "not-there" { code: String, list: Says },
        AddOrChoose "add-or-choose" { code: String, list: Says },
        AddFirst "add-first" { code: String, list: Says },
        Otherwise "otherwise" { code: String, list: Says },
        PathSays "path-says" { path: String, entry: String },
        ChangedMeanwhile "changed-meanwhile" { version: i32 },
        WhichVersion "which-version",
        PacksAsBefore "packs-as-before" { packs: usize },
        NoVersion "no-version" { text: String },
        NoHouseCode "no-house-code" { code: String },
        NoFarmCode "no-farm-code" { code: String },
        CodeOfFarm "code-of-farm" { code: String, farm: String },
        CodeOfKitchen "code-of-kitchen" { code: String },
        NoName "no-name",
        KeepDays "keep-days" { days: u32, most: u32 },
        CureDays "cure-days" { days: u32, most: u32 },
        NotOfThatSort "not-of-that-sort" { says: Says },
        NoCookingDegrees "no-cooking-degrees",
        NoLanguage "no-language" { tag: String },
        RecipeParts "recipe-parts" { most: usize },
        RecipeInItself "recipe-in-itself" { part: String, product: String },
        RecipeTooDeep "recipe-too-deep" { most: u32 },
    }
}

messages! {
    /// What is said of a table of entries.
    ImportSays in "import" {
        New "new",
        Changed "changed",
        Same "same",
        Wrong "wrong",
        SendTable "send-table",
        TooLarge "too-large" { most: usize },
        NoText "no-text" { line: usize },
        Unseen "unseen" { line: usize },
        NoTable "no-table" { line: usize },
        TooMany "too-many" { most: usize },
        Nothing "nothing",
        NoColumn "no-column" { number: usize, column: String, columns: Arg },
        ColumnTwice "column-twice" { column: String },
        NoHead "no-head" { column: String },
        Cells "cells" { cells: usize, columns: usize },
        Twice "twice" { code: String },
        NoYes "no-yes" { cell: String },
        NoFigure "no-figure" { cell: String },
        LineWrong "line-wrong" { line: usize, column: String, says: Says, wrong: usize },
    }
}

messages! {
    /// What is said of the kitchen's own entry.
    KitchenSays in "kitchen" {
        NoTimeZone "no-time-zone" { zone: String },
        DayGoesBack "day-goes-back" { zone: String, today: NaiveDate, there: NaiveDate },
        Languages "languages" { most: usize },
        NotWritten "not-written" { tag: String, ours: String },
        NoCurrency "no-currency" { currency: String },
        NoCountry "no-country" { country: String },
        CountryOfNumber "country-of-number",
        NoAddress "no-address" { url: String },
        Gs1Prefix "gs1-prefix",
        Drills "drills" { most: u32 },
    }
}
