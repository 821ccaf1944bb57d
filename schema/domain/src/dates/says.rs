//! What is said of a date: why it is that one, and what to look at.

use crate::code::LotCode;
use crate::messages;
use crate::says::{Arg, Says, Texts};
use crate::words::{DeedKind, KeepFrom, Packaging};
use chrono::NaiveDate;

messages! {
    /// What is said of a date.
    DateSays in "date" {
        NotBeforeRelease "not-before-release" { product: Texts },
        ReleaseRule "release-rule",
        NoRule "no-rule" { product: Texts },
        NoRuleName "no-rule-name",
        RuleName "rule-name" { days: u32, from: EventSays },
        Keeps "keeps" { product: Texts, days: u32, from: EventSays, day: NaiveDate, first: FirstDaySays, date: NaiveDate },
        KeepsOpened "keeps-opened" { product: Texts, days: u32, first: FirstDaySays },
        KeepsThawed "keeps-thawed" { product: Texts, days: u32, first: FirstDaySays },
        RawByHouse "raw-by-house",
        NoExemption "no-exemption",
        ReadyToEat "ready-to-eat" { day: NaiveDate, days: u32, first: FirstDaySays, date: NaiveDate },
        AtMost "at-most" { day: NaiveDate, days: u32, first: FirstDaySays, date: NaiveDate },
        StartsAnew "starts-anew" { kind: DeedKind, date: NaiveDate, part: Says },
        NotAnew "not-anew" { kind: DeedKind },
        ReadyKeepsItsDay "ready-keeps-its-day" { part: Says, date: NaiveDate },
        HouseChoice "house-choice",
        InItsCure "in-its-cure",
        MadeFrom "made-from" { part: Says, date: NaiveDate },
        EarliestPart "earliest-part" { part: Says, date: NaiveDate },
        PartUndated "part-undated" { part: Says },
        EarliestWins "earliest-wins",
        Supplier "supplier" { date: NaiveDate },
        SupplierFrozen "supplier-frozen" { date: NaiveDate },
        SupplierRule "supplier-rule",
        NoVacuumRule "no-vacuum-rule" { packaging: Packaging },
        NoAir "no-air" { day: NaiveDate, days: u32, date: NaiveDate },
        NoAirCold "no-air-cold" { degrees: Arg },
        NoAirUnapproved "no-air-unapproved" { product: Texts, packaging: Packaging, source: Says },
        NoAirApproved "no-air-approved" { number: String },
        NoAirPlan "no-air-plan" { source: Says },
        NoAirFish "no-air-fish" { product: Texts, packaging: Packaging, source: Says },
    }
}

messages! {
    /// What is said of mince.
    MinceDateSays in "mince-date" {
        TooOld "too-old" { lot: LotCode, product: Says, killed: NaiveDate, days: i64, most: u32 },
        FrozenAgain "frozen-again" { pack: String },
    }
}

messages! {
    /// The event that a keeping rule counts from, as it stands in a sentence.
    EventSays in "date-from" {
        Making "making",
        Receipt "receipt",
        Packing "packing",
        Opening "opening",
        Thaw "thaw",
        Cook "cook",
    }
}

impl From<KeepFrom> for EventSays {
    fn from(from: KeepFrom) -> EventSays {
        match from {
            KeepFrom::Made => EventSays::Making,
            KeepFrom::Received => EventSays::Receipt,
            KeepFrom::Packed => EventSays::Packing,
            KeepFrom::Opened => EventSays::Opening,
            KeepFrom::Thawed => EventSays::Thaw,
            KeepFrom::Cooked => EventSays::Cook,
        }
    }
}

messages! {
    /// Which day is the first of those that are counted.
    FirstDaySays in "date-first" {
        ThatDay "that-day",
        DayAfter "day-after",
        Preparation "preparation",
        AfterPreparation "after-preparation",
    }
}
