//! What a log's file and page say besides the entries.

use chrono::{NaiveDate, NaiveDateTime};
use domain::messages;
use domain::says::Arg;

messages! {
    /// What stands round the entries of a log.
    LogWords in "logbook" {
        Missing "missing" { field: Arg, row: String },
        Deed "deed",
        Scale "scale",
        MissingColumn "missing-column",
        Remark "remark",
        InGrams "in-grams" { heading: String },
        InMinutes "in-minutes" { heading: String },
        PageOf "page-of" { page: Arg, of: Arg },
        Nothing "nothing",
        Days "days" { first: NaiveDate, last: NaiveDate },
        Between "between" { from: NaiveDateTime, until: NaiveDateTime },
        OnlyPlace "only-place" { place: String },
        OnlyBy "only-by" { by: String },
        OnlyLot "only-lot" { lot: String },
        Counted "counted" { entries: usize, holes: usize },
        AskedBy "asked-by" { by: String },
        Anchor "anchor" { line: String },
        Voided "voided" { by: String, at: NaiveDateTime, why: String },
        Corrected "corrected" { by: String, at: NaiveDateTime },
        Entered "entered" { at: NaiveDateTime },
        Due "due" { record: Arg, on: Arg, row: String },
        NotDue "not-due",
        KeptSpan "kept-span" { span: Arg, row: String },
        KeptFood "kept-food" { row: String },
        KeptLonger "kept-longer" { span: Arg, row: String },
        SpanHours "span-hours" { number: u32 },
        SpanDays "span-days" { number: u32 },
        SpanMonths "span-months" { number: u32 },
        SpanYears "span-years" { number: u32 },
    }
}
