//! What is said of deeds where they are taken in.

use chrono::{NaiveDate, NaiveDateTime};
use domain::code::LotCode;
use domain::cure::Method;
use domain::grams::Grams;
use domain::measure::{Percent, Temperature};
use domain::messages;
use domain::rows::RowId;
use domain::says::{Arg, Says, Texts};
use domain::stability::LimitSays;
use domain::words::{DeedKind, PrintState, Side, Species};
use rust_decimal::Decimal;

messages! {
    /// What is said of any deed.
    DeedSays in "deed" {
        OfSomebody "of-somebody" { kind: DeedKind, by: String, at: NaiveDateTime },
        IdUsed "id-used" { id: String, kind: DeedKind },
        Unknown "unknown" { id: String },
        NoId "no-id" { id: String },
        MinceLimit "mince-limit" { findings: Vec<Says> },
        OnePacking "one-packing",
        TwoPacks "two-packs" { one: u32, other: u32 },
        PackOrPacks "pack-or-packs",
        PacksWhole "packs-whole",
        NoFoodPlace "no-food-place" { place: String },
        WeighOrMissing "weigh-or-missing",
        NotFromCure "not-from-cure" { lot: LotCode },
        WhyBack "why-back",
        WhichBack "which-back" { lot: LotCode, packs: u32 },
        WhyVoid "why-void",
        WhatHappened "what-happened",
        WhyDisposed "why-disposed",
        WhyAdopted "why-adopted",
        WhatWasRead "what-was-read",
        WhereRead "where-read",
        NoSuchRow "no-such-row" { row: RowId, place: String },
        RowConfirmed "row-confirmed" { row: RowId },
        WhichMissing "which-missing",
        WhatPutRight "what-put-right",
        PutsNothingRight "puts-nothing-right" { kind: DeedKind, lot: LotCode },
        PutRightByOther "put-right-by-other" { document: String, lot: LotCode },
        WhyHeld "why-held",
        NothingHeld "nothing-held",
        TooMany "too-many" { most: u32 },
        TakeOff "take-off" { lots: String },
        LabelsCancelled "labels-cancelled" { labels: u32 },
        NotFrozen "not-frozen" { place: String },
    }
}

messages! {
    /// What is said of a step's kind.
    StepKindSays in "step-kind" {
        Receipts "receipts",
        Moves "moves",
        Departures "departures" { kind: String },
        TakeBacks "take-backs",
        Readings "readings",
        Counts "counts",
        CleanDowns "clean-downs",
        Voids "voids",
        Corrections "corrections",
        NoStep "no-step" { kind: String, steps: String },
    }
}

messages! {
    /// What is said of a correction where it is taken in.
    CorrectDeedSays in "correct-deed" {
        HowKnown "how-known",
        Which "which",
        OnlyReceipts "only-receipts" { kind: DeedKind },
        Voided "voided",
        WasBought "was-bought",
        OfAnimal "of-animal",
        SideTaken "side-taken" { side: Side, lot: LotCode },
        Corrected "corrected" { by: String, kind: DeedKind, facts: Vec<Says>, why: String },
        Undone "undone" { by: String, kind: DeedKind, why: String },
        ReadingVoided "reading-voided" { by: String, why: String },
        DeedUndone "deed-undone" { by: String, kind: DeedKind, why: String },
        Told "told" { by: String, kind: DeedKind },
        ToldRule "told-rule",
        RowConfirmed "row-confirmed" { by: String, row: RowId },
        LeftPast "left-past" { pack: String, kind: DeedKind, grams: Grams, at: NaiveDateTime, date: NaiveDate },
        LeftNotReady "left-not-ready" { pack: String, kind: DeedKind, grams: Grams, at: NaiveDateTime },
        LeftWithAllergens "left-with-allergens" { pack: String, kind: DeedKind, grams: Grams, at: NaiveDateTime, allergens: Arg },
        OtherLots "other-lots" { lots: String, species: Species },
        OtherLotsAsTold "other-lots-as-told" { lots: String },
        LeftSince "left-since" { lot: LotCode, kind: DeedKind, grams: Grams, at: NaiveDateTime },
        Rule "rule",
        CodesStay "codes-stay",
        NotOf "not-of" { kind: DeedKind },
        AsKnown "as-known",
        EndStays "end-stays" { ended: NaiveDateTime },
        Tried "tried",
    }
}

messages! {
    /// A fact that a correction names.
    FactSays in "fact" {
        Animal "animal",
        Bought "bought",
        Declared "declared",
        Strength "strength",
        Readings "readings",
        Log "log",
        Standard "standard",
        Stuffed "stuffed",
        Price "price",
    }
}

messages! {
    /// What is said of a receipt where it is taken in.
    ReceiveDeedSays in "receive-deed" {
        TooWarm "too-warm" { findings: Vec<Says> },
        TooWarmMince "too-warm-mince" { findings: Vec<Says> },
        NoCuringSalt "no-curing-salt" { product: String },
        HowStrong "how-strong",
        StrengthUnread "strength-unread",
        StrengthFromList "strength-from-list",
        TwoStrengths "two-strengths",
        OneSource "one-source",
        WhichSource "which-source",
        PackedLater "packed-later" { packed: NaiveDate, received: NaiveDate },
        OtherSpecies "other-species" { known: Species, told: Species },
        NoWeight "no-weight",
        CartonDiffers "carton-differs",
        WhatIsIt "what-is-it",
        GtinUnknown "gtin-unknown" { gtin: String },
        GtinOfSeveral "gtin-of-several" { gtin: String, products: String },
    }
}

messages! {
    /// What is said of readings.
    MeasureSays in "measure" {
        Between "between" { least: i64, most: i64 },
        BetweenDegrees "between-degrees" { least: Temperature, most: Temperature },
        OneScale "one-scale",
        BetweenParts "between-parts" { least: i64, most: i64 },
        Brine "brine" { salt: Percent },
        OfWhat "of-what",
        Empty "empty",
        PlaceNotWeighed "place-not-weighed",
        NothingLeft "nothing-left" { lot: LotCode },
        HeldWrong "held-wrong" { product: Texts, lot: LotCode, findings: Vec<Says> },
        NotCured "not-cured",
    }
}

messages! {
    /// What is said of a place and how cold it is.
    PlaceSays in "place" {
        Beyond "beyond" { place: String, at: Temperature, limit: LimitSays },
        StoodThere "stood-there" { place: String, lots: Arg },
        NoReading "no-reading",
        ReadOutside "read-outside",
        EndsFirst "ends-first",
    }
}

messages! {
    /// What is said of labels that are asked of a printer.
    PrintDeedSays in "print-deed" {
        LotOrStep "lot-or-step",
        PacksOfLot "packs-of-lot",
        WhyAgain "why-again",
        NoLots "no-lots",
        TooMany "too-many" { labels: usize, most: usize },
        Dots "dots" { printer: String, dots: Arg },
        PackNamed "pack-named",
        NameWaiting "name-waiting",
        NameSeen "name-seen",
        Unknown "unknown" { print: String },
        WaitsNoMore "waits-no-more" { print: i32, state: PrintState },
        NamedTwice "named-twice",
        PrintedAlready "printed-already" { print: i32 },
        NotSettled "not-settled" { print: i32, state: PrintState },
        LotVoided "lot-voided" { pack: String },
        AnotherLabel "another-label" { pack: String, print: i32 },
        CancelledBy "cancelled-by" { by: String },
        UndoneBy "undone-by" { by: String },
        SeenOut "seen-out" { by: String },
        SeenMissing "seen-missing" { by: String },
        HandedOut "handed-out" { by: String },
        NoDocument "no-document" { id: String },
    }
}

messages! {
    /// What is said of a step that cures.
    CureDeedSays in "cure-deed" {
        Caution "caution",
        Refused "refused" { findings: Vec<Says> },
        SoldLater "sold-later" { day: NaiveDate, findings: Vec<Says> },
        NotSaidHow "not-said-how" { product: Texts },
        UnsaidHow "unsaid-how" { product: Texts },
        StrengthUnknown "strength-unknown" { lot: LotCode },
        NoNitrite "no-nitrite" { product: Texts },
        NoSalt "no-salt" { product: Texts },
        SaltAlone "salt-alone" { salt: Grams, meat: Grams, percent: Percent },
        Mixed "mixed" { nitrite: Percent, nitrate: Percent, salt: Percent },
        Brought "brought" { nitrite: Decimal, nitrate: Decimal },
        Rule "rule",
        GoingIn "going-in" { salt: Grams, meat: Grams, method: Method, nitrite: Decimal, percent: Percent },
        BothGoingIn "both-going-in" {
            salt: Grams,
            meat: Grams,
            method: Method,
            nitrite: Decimal,
            nitrate: Decimal,
            percent: Percent,
        },
    }
}

messages! {
    /// What is said of a step that heats.
    HeatDeedSays in "heat-deed" {
        Short "short" { findings: Vec<Says> },
        Untold "untold" { findings: Vec<Says> },
        Warm "warm" { findings: Vec<Says> },
        NoCore "no-core",
        NoReading "no-reading",
        NoCooling "no-cooling",
        CoolingBegun "cooling-begun",
        NotChosen "not-chosen",
    }
}

messages! {
    /// What is said of pork that is eaten uncooked.
    TrichinaeDeedSays in "trichinae-deed" {
        Short "short" { findings: Vec<Says> },
        NothingSpeaks "nothing-speaks" { lot: LotCode, species: Arg },
        TestedOnly "tested-only" { lot: LotCode, source: Says },
        NoDegrees "no-degrees",
        Untested "untested" { lot: LotCode, species: Species, source: Says },
        UntestedUnread "untested-unread" { lot: LotCode, species: Species, source: Says },
        RecordRule "record-rule",
    }
}

messages! {
    /// What is said of food that readings show to keep by itself.
    StableSays in "stable" {
        Of "of" { lot: LotCode, says: Says },
        AtDoor "at-door" { says: Says },
    }
}
