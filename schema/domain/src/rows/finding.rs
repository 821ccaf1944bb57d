//! What a check found: a refusal, a warning, or a word to know.

use super::{RowId, Rows};
use crate::messages;
use crate::says::{Arg, Says};

messages! {
    /// What is said of any finding.
    FindingSays in "finding" {
        WithSources "with-sources" { says: Says, sources: Arg },
    }
}

/// How grave a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Gravity {
    /// Good to know.
    Note,
    /// Look before you go on.
    Warn,
    /// It is not done.
    Refuse,
}

/// What a check found, with the rows behind it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// How grave it is.
    pub gravity: Gravity,
    /// For a tired cook: the numbers, and what would do.
    pub says: Says,
    /// The rows behind it.
    pub rows: Vec<RowId>,
}

impl Finding {
    /// What breaks a row: refused where the row is confirmed, warned of where it is not.
    pub fn against(rows: &Rows, row: &RowId, says: impl Into<Says>) -> Finding {
        let gravity = match rows.is_confirmed(row) {
            true => Gravity::Refuse,
            false => Gravity::Warn,
        };
        Finding::new(gravity, says, [row.clone()])
    }

    /// A finding.
    pub fn new(
        gravity: Gravity,
        says: impl Into<Says>,
        rows: impl IntoIterator<Item = RowId>,
    ) -> Finding {
        Finding {
            gravity,
            says: says.into(),
            rows: rows.into_iter().collect(),
        }
    }

    /// A word to know.
    pub fn note(says: impl Into<Says>, rows: impl IntoIterator<Item = RowId>) -> Finding {
        Finding::new(Gravity::Note, says, rows)
    }

    /// What it says, with where its rows come from.
    pub fn with_sources(&self, rows: &Rows) -> Says {
        FindingSays::WithSources {
            says: self.says.clone(),
            sources: rows.sources(&self.rows),
        }
        .into()
    }

    /// The same as a warning at most: what is only perhaps so stops nobody.
    pub fn warned(mut self) -> Finding {
        self.gravity = self.gravity.min(Gravity::Warn);
        self
    }

    /// Does it stop the deed?
    pub fn refuses(&self) -> bool {
        self.gravity == Gravity::Refuse
    }
}
