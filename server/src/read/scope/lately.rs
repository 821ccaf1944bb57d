//! The scope that was listed last, for who holds it next: everybody waits for a hold, and to find the scope anew is a
//! third of it. It counts only while the chain ends where it ended then: nothing was recorded since.

use super::{Found, find};
use crate::app::App;
use crate::error::Result;
use crate::wire::asked::canonical;
use crate::wire::scope::ScopeAsked;
use std::sync::{Arc, Mutex, PoisonError};
use store::Conn;
use store::chain::{self, Anchor};

/// Of larger ones nothing is kept: they would lie in memory for what is a small part of their hold.
const MOST_LOTS: usize = 10_000;

/// What was listed last.
#[derive(Default)]
pub struct Lately(Mutex<Option<Listed>>);

struct Listed {
    question: String,
    at: Anchor,
    found: Arc<Found>,
}

impl Lately {
    fn keep(&self, listed: Listed) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = Some(listed);
    }

    /// What was found for a question, if the chain ended there.
    fn found(&self, question: &str, at: &Anchor) -> Option<Arc<Found>> {
        let listed = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let listed = listed.as_ref();
        let same = listed.filter(|listed| listed.question == question && listed.at == *at)?;
        Some(same.found.clone())
    }
}

/// Asks the record, in a snapshot, and keeps what was found for a hold of it.
///
/// # Errors
/// As [`find`].
pub fn listed(app: &App, conn: &mut Conn, asked: &ScopeAsked, field: &str) -> Result<Arc<Found>> {
    let found = Arc::new(find(app, conn, asked, field, None)?);
    if found.scope.lots.len() <= MOST_LOTS
        && let Some(at) = chain::anchor(conn)?
    {
        app.listed.keep(Listed {
            question: canonical(asked),
            at,
            found: found.clone(),
        });
    }
    Ok(found)
}

/// What was listed, where nothing was recorded since; else asks the record. For a transaction in which nobody else
/// writes, and which has written nothing yet that a scope tells of: the chain ends with what is committed.
///
/// # Errors
/// As [`find`].
pub fn as_listed(
    app: &App,
    conn: &mut Conn,
    asked: &ScopeAsked,
    field: &str,
) -> Result<Arc<Found>> {
    let at = chain::anchor(conn)?;
    if let Some(found) = at.and_then(|at| app.listed.found(&canonical(asked), &at))
        && found.standing.stamp == app.standing(conn)?.stamp
    {
        return Ok(found);
    }
    Ok(Arc::new(find(app, conn, asked, field, None)?))
}
