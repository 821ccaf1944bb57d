//! What the forms of the bench say of a figure, a day or a name, and the sentences of their deeds.

use chrono::{NaiveDate, NaiveDateTime};
use domain::grams::Grams;
use domain::messages;
use domain::says::Arg;
use rust_decimal::Decimal;

messages! {
    /// What the forms of the bench say.
    BenchSays in "page-bench" {
        DidMade "did-made" { deed: String, packs: usize, name: String, lot: String, by: String, at: String },
        DidMadeLots "did-made-lots" { deed: String, lots: usize, by: String, at: String },
        LabelsNone "labels-none",
        LabelsAsPdf "labels-as-pdf" { labels: usize },
        LabelsOut "labels-out" { labels: usize },
        LabelsOpen "labels-open" { labels: usize, printer: String },
        LabelsPrinting "labels-printing" { labels: usize, printer: String },
        LabelsDoubt "labels-doubt" { labels: usize },
        DidSeveral "did-several" { says: String, deeds: usize },
        RoomHead "room-head" { alarms: usize, due: usize },
        RoomQuiet "room-quiet" { pieces: usize },
        RoomLies "room-lies" { lots: usize },
        OfTag "of-tag" { tag: String, name: String },
        Lost "lost" { percent: Arg },
        Last "last" { weight: Grams, day: NaiveDate },
        Expected "expected" { weight: Grams },
        Target "target" { percent: Arg },
        Days "days" { days: u32 },
        Day "day" { day: u32 },
        ReadyFor "ready-for" { nth: u32, day: NaiveDate },
        TurnOn "turn-on" { day: NaiveDate },
        OutOn "out-on" { day: NaiveDate },
        IsOut "is-out",
        SignedBy "signed-by" { by: String },
        Left "left" { weight: Grams, until: String },
        Boiled "boiled" { minutes: Decimal },
        HeatStep "heat-step" { at: Arg, minutes: Arg },
        HeatReached "heat-reached" { at: Arg },
        CoolBetween "cool-between" { from: Arg, to: Arg, hours: Arg },
        CoolBy "cool-by" { to: Arg, by: NaiveDateTime },
        CoolMet "cool-met" { to: Arg },
        CoolFromStart "cool-from-start" { to: Arg, hours: Arg },
        Row "row" { row: String },
    }
}

messages! {
    /// The deeds of the bench as sentences, before they are done.
    WorkSays in "page-sentence" {
        Weigh "weigh" { name: String, lot: String },
        WeighAlone "weigh-alone" { name: String, lot: String },
        Release "release" { name: String, lot: String, by: String },
        Turn "turn" { name: String, lot: String },
        Rinse "rinse" { name: String, lot: String },
        Equalise "equalise" { name: String, lot: String },
        Hang "hang" { name: String, lot: String },
        ReceiveAnimal "receive-animal",
        ReceiveBought "receive-bought",
        Cool "cool" { name: String, lot: String },
        Core "core" { lot: String },
        Cook "cook" { name: String },
        Smoke "smoke" { name: String },
        Render "render" { name: String },
        Grind "grind" { name: String },
        Mix "mix" { name: String },
        Cure "cure" { name: String },
    }
}
