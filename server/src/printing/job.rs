//! A job as the printer describes it.

use super::values::{first_number, texts};
use domain::print::JobState;
use ipp::prelude::IppAttributeGroup;

/// A job at the printer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrinterJob {
    /// The printer's number of it.
    pub id: i32,
    /// Its name, if the printer says so.
    pub name: Option<String>,
    /// `job-state` as it is numbered: 3 to 9.
    pub state: i32,
    /// How many labels came out, if the printer says so.
    pub out: Option<u32>,
    /// How many documents it holds, if the printer says so.
    pub documents: Option<i32>,
    /// When it was made, in seconds of the printer's up-time.
    pub created: Option<i32>,
    /// What the printer says about it.
    pub message: Option<String>,
}

impl PrinterJob {
    /// What to ask for.
    pub const ASKED: [&'static str; 9] = [
        "job-id",
        "job-name",
        "job-state",
        "job-state-reasons",
        "job-state-message",
        "job-impressions-completed",
        "job-media-sheets-completed",
        "number-of-documents",
        "time-at-creation",
    ];

    /// Reads the printer's answer; nothing where it names no job or no state.
    pub fn read(group: &IppAttributeGroup) -> Option<PrinterJob> {
        let out = ["job-impressions-completed", "job-media-sheets-completed"]
            .iter()
            .filter_map(|name| first_number(group, name))
            .max();
        let text = |name: &str| texts(group, name).into_iter().find(|text| !text.is_empty());
        Some(PrinterJob {
            id: first_number(group, "job-id")?,
            state: first_number(group, "job-state")?,
            name: text("job-name"),
            out: out.map(|out| u32::try_from(out).unwrap_or(0)),
            documents: first_number(group, "number-of-documents"),
            created: first_number(group, "time-at-creation"),
            message: text("job-state-message"),
        })
    }

    /// What that means for its label.
    pub fn stands(&self) -> JobState {
        match self.state {
            9 => JobState::Completed,
            7 | 8 => JobState::BrokenOff { out: self.out },
            _ => JobState::UnderWay,
        }
    }

    /// Does it surely hold its document? Being printed or stopped in the middle, it does.
    pub fn is_filled(&self) -> bool {
        matches!(self.state, 5 | 6) || self.documents.is_some_and(|documents| documents > 0)
    }

    /// Is it the one of that name? A printer that was started anew gives its numbers out again.
    pub fn is(&self, token: Option<&str>) -> bool {
        self.name.as_deref().is_none_or(|name| Some(name) == token)
    }
}
