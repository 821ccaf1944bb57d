//! What is said of papers.

use crate::messages;
use chrono::NaiveDate;

messages! {
    /// What is said of a paper.
    PaperSays in "paper" {
        Empty "empty",
        NotRead "not-read",
        CutOff "cut-off",
        TooLarge "too-large" { most: usize },
        Send "send",
        TooMany "too-many" { most: usize },
        NoPaper "no-paper" { id: String },
        Thinned "thinned",
        WhyThinned "why-thinned",
        NothingToThin "nothing-to-thin",
        ThinnedBefore "thinned-before",
        OfPaper "of-paper",
        NoRule "no-rule",
        KeptUntil "kept-until" { until: NaiveDate },
        NeededOnHand "needed-on-hand" { lot: String, until: NaiveDate },
        NeededThen "needed-then" { lot: String, until: NaiveDate },
        NeededIncident "needed-incident" { incident: String },
        MayGo "may-go" { until: NaiveDate },
        WhichOf "which-of",
        AllIsKept "all-is-kept",
    }
}
