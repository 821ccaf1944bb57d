//! Beside whom a transaction writes, on a server that takes many writers at once.

/// Beside whom somebody writes. SQLite has one writer, and needs no lock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// Beside everybody.
    Any,
    /// Beside all but those who are alone: from before anything is read, so that it sees what they wrote.
    Shared,
    /// One hold as a whole: beside nobody who shares. On PostgreSQL that is one lock and not a lock a lot.
    Alone,
}

impl Turn {
    /// How a transaction of PostgreSQL begins, in one round trip.
    pub(crate) fn begin(self) -> &'static str {
        match self {
            Turn::Any => "BEGIN ISOLATION LEVEL READ COMMITTED",
            Turn::Shared => {
                "BEGIN ISOLATION LEVEL READ COMMITTED; SELECT pg_advisory_xact_lock_shared(7023, 0)"
            }
            Turn::Alone => {
                "BEGIN ISOLATION LEVEL READ COMMITTED; SELECT pg_advisory_xact_lock(7023, 0)"
            }
        }
    }
}
