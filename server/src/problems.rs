//! What is said of a request that is not done: the titles of problems, requests that cannot be read,
//! and a service that cannot answer.

use chrono::NaiveDateTime;
use domain::messages;
use domain::says::{Arg, Says};
use domain::words::DeedKind;
use rust_decimal::Decimal;

messages! {
    /// The sorts of problem.
    TitleSays in "title" {
        CannotBe "cannot-be",
        NeverIssued "never-issued",
        NotEnough "not-enough",
        Voided "voided",
        InTheWay "in-the-way",
        Clash "clash",
        Missing "missing",
        NotReleased "not-released",
        Limit "limit",
        Stopped "stopped",
        Held "held",
        NotFound "not-found",
        IdUsed "id-used",
        NothingToLabel "nothing-to-label",
        PrintedBefore "printed-before",
        SizeNotThere "size-not-there",
        LabelDoesNotHold "label-does-not-hold",
        SheetDoesNotHold "sheet-does-not-hold",
        LabelNotMade "label-not-made",
        LabelNotShown "label-not-shown",
        WhichVersion "which-version",
        ChangedMeanwhile "changed-meanwhile",
        NotJson "not-json",
        TooLarge "too-large",
        CutOff "cut-off",
        Method "method",
        Unreadable "unreadable",
        DatabaseFull "database-full",
        DatabaseDisk "database-disk",
        DatabaseReadOnly "database-read-only",
        DatabaseGone "database-gone",
        DatabaseEmptied "database-emptied",
        DatabaseAway "database-away",
        DatabaseLocked "database-locked",
        Damaged "damaged",
        SignIn "sign-in",
        Right "right",
        Host "host",
        Origin "origin",
        Busy "busy",
        TooSlow "too-slow",
        Clock "clock",
        NoCode "no-code",
        Table "table",
    }
}

messages! {
    /// What is said of a request that cannot be read.
    RequestSays in "request" {
        SendJson "send-json",
        TooLarge "too-large",
        CutOff "cut-off",
        TooSlow "too-slow" { seconds: usize },
        LongAddress "long-address",
        LongHeaders "long-headers",
        NotJson "not-json" { line: usize, column: usize },
        EndsEarly "ends-early",
        NoObject "no-object",
        MissingField "missing-field" { name: String },
        UnknownField "unknown-field" { name: String, known: Arg },
        NoFields "no-fields" { name: String },
        Twice "twice" { name: String },
        NotThat "not-that" { wanted: Says, told: Says },
        Unread "unread-value",
        NoNumber "no-number",
        NoTruth "no-truth",
        Query "query" { says: Says },
        Method "method" { methods: String },
        Unreadable "unreadable",
        Scanned "scanned",
    }
}

messages! {
    /// Kinds of values, as a request has them or should have.
    KindSays in "kind" {
        Text "text",
        Quoted "quoted" { text: String },
        Truth "truth",
        WholeNumber "whole-number",
        CountingNumber "counting-number",
        Number "number",
        Figure "figure" { figure: String },
        Nothing "nothing",
        List "list",
        Object "object",
        Other "other",
    }
}

messages! {
    /// What is said of a service that cannot answer.
    ServiceSays in "service" {
        DatabaseFull "database-full",
        DatabaseDisk "database-disk",
        DatabaseReadOnly "database-read-only",
        DatabaseGone "database-gone",
        DatabaseEmptied "database-emptied",
        DatabaseAway "database-away",
        DatabaseLocked "database-locked",
        Damaged "damaged",
        Busy "busy",
        ClockBeforeBuild "clock-before-build" { now: NaiveDateTime },
        ClockBeforeDeed "clock-before-deed" { now: NaiveDateTime, last: NaiveDateTime },
        ClockLeapt "clock-leapt" { now: NaiveDateTime, minutes: usize },
        ClockSetBack "clock-set-back" { now: NaiveDateTime, minutes: usize },
        ClockFarAhead "clock-far-ahead" { now: NaiveDateTime, last: NaiveDateTime },
        ClockAheadOfDatabase "clock-ahead-of-database" { now: NaiveDateTime, database: NaiveDateTime },
        SetItRight "set-it-right",
        NothingRecorded "nothing-recorded" { why: Says },
    }
}

messages! {
    /// What is said of labels that are asked for as a document.
    LabelsSays in "labels" {
        NamePacks "name-packs",
        NoLots "no-lots" { kind: DeedKind },
        InParts "in-parts" { labels: usize, parts: usize, most: usize },
        NothingHeld "nothing-held",
        NoPart "no-part" { part: usize, parts: usize },
        NoPacks "no-packs" { text: String },
        NoSheet "no-sheet" { sheet: String, sheets: Arg },
        SheetTooSmall "sheet-too-small" { sheet: String, width: Decimal, height: Decimal, across: Decimal, along: Decimal },
        SheetPlaces "sheet-places" { sheet: String, places: usize, skip: usize },
        NotDrawn "not-drawn" { cause: String },
    }
}
