//! A label and what became of it, as it is shown.

use crate::code::LotCode;
use crate::messages;
use crate::says::Says;
use crate::words::PrintState;
use chrono::{DateTime, NaiveDate, Utc};

messages! {
    /// What is said of a label that no printer of ours has.
    PrintLeft in "print-left" {
        AsPdf "as-pdf",
    }
}

/// A label and what became of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PrintView {
    /// Its number.
    pub number: i32,
    /// The lot.
    pub lot: LotCode,
    /// The pack.
    pub pack: u32,
    /// How many packs the lot had at first.
    pub pack_count: u32,
    /// The printer's code.
    pub printer: String,
    /// Did it leave as a document, to no printer of the list?
    pub is_document: bool,
    /// Which label.
    pub template: String,
    /// The date that it shows.
    pub use_by: Option<NaiveDate>,
    /// 0 for the first print of its pack, from 1 on for reprints.
    pub reprint: u32,
    /// How far it has come.
    pub state: PrintState,
    /// What is wrong, and what to do.
    pub trouble: Option<Says>,
    /// When it was asked for.
    pub asked_at: DateTime<Utc>,
    /// Who asked.
    pub by: String,
    /// The id of the deed that asked for it.
    pub deed: Vec<u8>,
    /// The print that did not come out and that this one stands in for.
    pub instead_of: Option<i32>,
}

impl PrintView {
    /// How far it has come. Of a document nobody tells that it came out: it left.
    pub fn says(&self) -> Says {
        match (self.is_document, self.state) {
            (true, PrintState::Printed) => PrintLeft::AsPdf.into(),
            (_, state) => state.says(),
        }
    }

    /// The lot's code as people read it, and the pack where the lot has several.
    pub fn shown(&self) -> String {
        match self.pack_count {
            1 => self.lot.shown(),
            _ => format!("{} / {}", self.lot.shown(), self.pack),
        }
    }
}

/// What is wrong with a label: its own trouble; what is wrong at the printer is wrong for all that it
/// has still to print.
pub fn trouble(
    state: PrintState,
    own: Option<Says>,
    at_printer: impl FnOnce() -> Option<Says>,
) -> Option<Says> {
    own.or_else(|| at_printer().filter(|_| state.is_open()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_jam_is_no_trouble_of_what_is_printed() {
        let jam = || Some(Says::as_written("jammed"));
        let told = |state, own| trouble(state, own, jam);
        assert_eq!(told(PrintState::Waiting, None), jam());
        assert_eq!(told(PrintState::Printed, None), None);
        let own = Some(Says::as_written("no such size"));
        assert_eq!(told(PrintState::Waiting, own.clone()), own);
    }
}
