//! What is said of what needs a hand.

use crate::grams::Grams;
use crate::measure::Temperature;
use crate::messages;
use crate::says::{Arg, Texts};
use crate::stability::LimitSays;
use chrono::{NaiveDate, NaiveDateTime};

messages! {
    /// What needs a hand, and what is known of it.
    TodaySays in "today" {
        Piece "piece" { tag: String, name: Texts },
        Release "release",
        Printer "printer" { name: String },
        Unsure "unsure" { name: String, labels: usize },
        LabelsWait "labels-wait" { labels: usize },
        WrongLabel "wrong-label" { name: Texts, packs: usize },
        Stopped "stopped" { name: Texts, packs: usize },
        Cools "cools" { name: Texts, to: Arg, by: NaiveDateTime },
        CoolRead "cool-read" { core: Temperature, at: NaiveDateTime },
        CoolUnread "cool-unread",
        Failed "failed" { place: String, lots: usize, packs: usize },
        FailedNames "failed-names" { weight: Grams, names: Arg },
        FailedNamesMore "failed-names-more" { weight: Grams, names: Arg, more: usize },
        FailedDo "failed-do",
        Past "past" { name: Texts, packs: usize, day: NaiveDate },
        LastDay "last-day" { name: Texts, packs: usize },
        Lies "lies" { weight: Grams, places: String },
        MayRaw "may-raw",
        MayRawHere "may-raw-here",
        MayReady "may-ready",
        MayReadyHere "may-ready-here",
        Beyond "beyond" { place: String, read: Temperature, limit: LimitSays },
        BeyondThere "beyond-there" { packs: usize, weight: Grams, names: Arg },
        BeyondThereMore "beyond-there-more" { packs: usize, weight: Grams, names: Arg, more: usize },
        BeyondAt "beyond-at" { at: NaiveDateTime },
        BeyondDo "beyond-do",
        Missing "missing" { name: Texts, packs: usize },
        MissingSince "missing-since" { shown: String, weight: Grams, day: NaiveDate },
        MissingDo "missing-do",
        NotRead "not-read" { place: String },
        ReadOn "read-on" { day: NaiveDate },
        NeverRead "never-read",
        Crossed "crossed" { place: String },
        CrossedDo "crossed-do",
        CleanDown "clean-down" { place: String },
        RawThere "raw-there",
        ReadyThere "ready-there",
        Drill "drill",
        Recall "recall" { number: String },
        RecallHolds "recall-holds" { packs: usize, weight: Grams },
        RecallEnd "recall-end",
        LastDrill "last-drill" { day: NaiveDate },
        NoDrill "no-drill",
        Thaw "thaw",
        FrozenThere "frozen-there" { packs: usize, weight: Grams, place: String },
        ThawCold "thaw-cold",
        CopyLate "copy-late",
        CopyFailed "copy-failed",
        LastCopy "last-copy" { day: NaiveDate },
        NoCopy "no-copy",
        CopyUntried "copy-untried",
        CopyNoGood "copy-no-good",
        LastTried "last-tried" { day: NaiveDate },
        NeverTried "never-tried",
        Moved "moved",
        MovedDo "moved-do",
    }
}

messages! {
    /// What to do about it: the words on the button.
    DoSays in "today-do" {
        Look "look" { what: String },
        Weigh "weigh" { what: String },
        Sign "sign" { what: String },
        Turn "turn" { what: String },
        Rinse "rinse" { what: String },
        Equalise "equalise" { what: String },
        Hang "hang" { what: String },
        Choose "choose",
        See "see",
        SayWhatCame "say-what-came",
        PrintAnew "print-anew" { packs: usize },
        Discard "discard" { packs: usize },
        Freeze "freeze" { packs: usize },
        Read "read",
        ReadAgain "read-again",
        CountAgain "count-again",
        ReadCore "read-core",
        Sort "sort",
        Cleaned "cleaned",
        BeginDrill "begin-drill",
        CountRecall "count-recall",
        CloseRecall "close-recall",
    }
}

messages! {
    /// When something wants its hand.
    WhenSays in "today-when" {
        Now "now",
        Today "today",
        Closing "closing",
    }
}
