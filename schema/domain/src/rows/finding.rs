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

/// What is said, without the rows behind it: where somebody only sees that there is something, and the thing itself says
/// why.
pub fn without_sources(says: &Says) -> Says {
    match (says.key(), says.arg("says")) {
        ("finding-with-sources", Some(Arg::Said(finding))) => without_sources(finding),
        (key, _) => Says::kept(
            key.to_owned(),
            says.args()
                .map(|(name, arg)| (name.to_owned(), arg_without_sources(arg)))
                .collect(),
        ),
    }
}

fn arg_without_sources(arg: &Arg) -> Arg {
    let all = |args: &[Arg]| args.iter().map(arg_without_sources).collect();
    let told = |says: &[Says]| says.iter().map(without_sources).collect();
    match arg {
        Arg::Said(says) => Arg::from(without_sources(says)),
        Arg::Sentences(says) => Arg::Sentences(told(says)),
        Arg::Series(says) => Arg::Series(told(says)),
        Arg::All(args) => Arg::All(all(args)),
        Arg::Any(args) => Arg::Any(all(args)),
        other => other.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_said_stays_when_its_rows_go() {
        let found = |says: &str| -> Says {
            FindingSays::WithSources {
                says: Says::as_written(says),
                sources: Arg::from("us-T1"),
            }
            .into()
        };
        let both = Says::new(
            "stop-broke-for-good",
            vec![(
                "findings",
                Arg::Sentences(vec![found("Too warm."), found("Too long.")]),
            )],
        );
        let plain = Says::new(
            "stop-broke-for-good",
            vec![(
                "findings",
                Arg::Sentences(vec![
                    Says::as_written("Too warm."),
                    Says::as_written("Too long."),
                ]),
            )],
        );
        assert_eq!(without_sources(&both), plain);
        assert_eq!(without_sources(&plain), plain);
    }
}
