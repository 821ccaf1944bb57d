//! What is said of printers and of labels on their way.

use crate::label_facts::says::PurposeSays;
use chrono::{NaiveDate, NaiveDateTime};
use domain::code::LotCode;
use domain::messages;
use domain::says::{Arg, Says};
use rust_decimal::Decimal;

messages! {
    /// What is said of a printer.
    PrinterSays in "printer" {
        Jammed "jammed" { printer: String },
        OutOfLabels "out-of-labels" { printer: String },
        Open "open" { printer: String },
        OutOfRibbon "out-of-ribbon" { printer: String },
        NoRoom "no-room" { printer: String },
        MemoryFull "memory-full" { printer: String },
        Paused "paused" { printer: String },
        Off "off" { printer: String },
        StoppedMute "stopped-mute" { printer: String },
        Stopped "stopped" { printer: String, reasons: String },
        WornPart "worn-part" { printer: String },
        WrongHeat "wrong-heat" { printer: String },
        Busy "busy" { printer: String },
        Locked "locked" { printer: String },
        TakesNone "takes-none" { printer: String },
        NoAnswer "no-answer" { printer: String },
        BadAnswer "bad-answer" { printer: String },
        Answers "answers" { printer: String, words: String },
        Stumbles "stumbles" { printer: String },
        NoPin "no-pin" { printer: String, seen: String },
        Stranger "stranger" { printer: String, seen: String, pinned: String },
        NoFormat "no-format" { formats: String },
        TestSent "test-sent",
        TestUnanswered "test-unanswered" { printer: String },
        TestNoPaper "test-no-paper" { printer: String, held: Arg, sizes: Arg },
        OtherSize "other-size" { label: Says, sizes: Arg },
    }
}

messages! {
    /// What a kitchen needs paper for, and what a printer has of it.
    PaperSays in "paper-for" {
        Needs "needs" { purpose: PurposeSays, sizes: Arg },
        Test "test" { sizes: Arg },
        Has "has" { purpose: PurposeSays, sizes: Arg },
        HasNone "has-none" { purpose: PurposeSays, sizes: Arg },
        Unknown "unknown" { purpose: PurposeSays, sizes: Arg },
        Lacks "lacks" { needs: Arg },
    }
}

messages! {
    /// How a printer is, in a word or two.
    PrinterStateSays in "printer-state" {
        Ready "ready",
        ReadyForSome "ready-for-some",
        Printing "printing",
        Stopped "stopped",
        DoesNotSay "does-not-say",
        DoesNotAnswer "does-not-answer",
    }
}

messages! {
    /// Sizes of labels, in millimetres.
    SizeSays in "size" {
        Is "is" { across: Arg, along: Arg },
        Span "span" { least: Decimal, most: Decimal },
    }
}

messages! {
    /// What is said of a printer's address.
    AddressSays in "printer-address" {
        None "none" { address: String },
        NotEncrypted "not-encrypted" { address: String },
        NotIpp "not-ipp" { address: String },
        NoHost "no-host" { address: String },
        Secret "secret" { address: String },
        NoPort "no-port" { address: String },
    }
}

messages! {
    /// What is said of a label on its way, or printed before.
    PrintSays in "print" {
        LotVoided "lot-voided" { lot: LotCode },
        NotDrawn "not-drawn" { cause: String },
        BrokenOffEmpty "broken-off-empty" { printer: String },
        BrokenOffEmptyWith "broken-off-empty-with" { printer: String, words: String },
        BrokenOff "broken-off" { printer: String },
        BrokenOffWith "broken-off-with" { printer: String, words: String },
        Vanished "vanished" { printer: String },
        DrawnOtherwise "drawn-otherwise" { print: String },
        Before "before" { lot: LotCode, prints: Arg },
        BeforeBy "before-by" { packs: Says, at: NaiveDateTime, by: String },
        Pack "pack" { pack: u32 },
        Packs "packs" { packs: Arg },
        Run "run" { first: u32, last: u32 },
        NoPlaceForMark "no-place-for-mark" { label: String },
        NoReprint "no-reprint" { label: String, cause: String },
        DateStands "date-stands" { pack: u32, date: NaiveDate },
        DateStandsThough "date-stands-though" { pack: u32, date: NaiveDate, now: NaiveDate },
    }
}
