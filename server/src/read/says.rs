//! What is said of questions that cannot be answered.

use domain::messages;
use domain::says::Arg;

messages! {
    /// Why a question cannot be answered.
    QuerySays in "query" {
        SmallWords "small-words",
        Months "months",
        CarcassWords "carcass-words",
        Unprintable "unprintable",
        NotAfter "not-after" { after: String },
        NotState "not-state" { state: String, known: Arg },
        NotLimit "not-limit" { limit: String, most: i64 },
        LimitRange "limit-range" { most: i64 },
        NoLaw "no-law" { place: String, known: Arg },
        NoAnimal "no-animal" { id: String },
        DoseOrTarget "dose-or-target",
        AskWhat "ask-what" { known: Arg },
        NotTopic "not-topic" { topic: String, known: Arg },
        NoPlace "no-place" { place: String },
        NoLog "no-log" { log: String, known: Arg },
        WindowEndsFirst "window-ends-first",
        LogTooLong "log-too-long" { most: usize },
    }
}

/// Words as they are spelt in a question: the same in every language.
pub fn spelt(words: impl IntoIterator<Item = &'static str>) -> Arg {
    Arg::Text(words.into_iter().collect::<Vec<_>>().join(", "))
}
