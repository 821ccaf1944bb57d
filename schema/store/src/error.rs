//! What can go wrong with the database, as far as a caller must tell it apart.

use diesel::result::{DatabaseErrorKind, Error as Diesel};

/// An error of the store.
#[derive(Debug, Clone, thiserror::Error)]
pub enum Error {
    /// The address is wrong, or nothing answers there.
    #[error("{0}")]
    Address(String),
    /// The database cannot be reached now.
    #[error("the database cannot be reached: {0}")]
    Away(String),
    /// The disk or the database is full.
    #[error("the database is full: {0}")]
    Full(String),
    /// The disk has failed under the database, or may not be written.
    #[error("the disk fails: {0}")]
    Disk(String),
    /// The database may only be read.
    #[error("the database takes no writes: {0}")]
    ReadOnly(String),
    /// The file was taken away, or another one put in its place.
    #[error("the database is gone: {0}")]
    Gone(String),
    /// What was on record is on record no more.
    #[error("the database was emptied: {0}")]
    Emptied(String),
    /// The file was written over or cut, or a page of it is none.
    #[error("the database is damaged: {0}")]
    Damaged(String),
    /// Another program has the database to itself.
    #[error("the database is locked: {0}")]
    Locked(String),
    /// Another transaction was in the way; the same again will do.
    #[error("another deed was in the way: {0}")]
    Conflict(String),
    /// The database was written by a newer version of this program.
    #[error("{0}")]
    Newer(String),
    /// A row that this program cannot have written, or a query that is wrong: our fault or damage.
    #[error("the record is damaged or misread: {0}")]
    Broken(String),
}

/// A result of the store.
pub type Result<T> = std::result::Result<T, Error>;

impl Error {
    /// Is it the disk or the database that takes no writes, whatever is written?
    pub fn takes_no_writes(&self) -> bool {
        matches!(
            self,
            Error::Full(_)
                | Error::Disk(_)
                | Error::ReadOnly(_)
                | Error::Gone(_)
                | Error::Damaged(_)
                | Error::Locked(_)
        )
    }

    /// A row that does not parse: names the table and the key.
    pub fn bad_row(table: &str, key: i32, what: &str) -> Error {
        Error::Broken(format!("{table} {key}: {what}"))
    }
}

impl From<Diesel> for Error {
    fn from(error: Diesel) -> Error {
        let text = error.to_string();
        match &error {
            Diesel::DatabaseError(DatabaseErrorKind::SerializationFailure, _) => {
                Error::Conflict(text)
            }
            Diesel::DatabaseError(DatabaseErrorKind::UniqueViolation, _) => Error::Conflict(text),
            Diesel::DatabaseError(DatabaseErrorKind::ClosedConnection, _) => Error::Away(text),
            Diesel::BrokenTransactionManager => Error::Away(text),
            Diesel::DatabaseError(_, about) => by_message(about.message(), text),
            _ => Error::Broken(text),
        }
    }
}

/// Neither driver has a kind for these.
pub(crate) fn by_message(message: &str, text: String) -> Error {
    let has = |part: &str| message.contains(part);
    if has("deadlock detected") || has("database is locked") || has("could not serialize") {
        Error::Conflict(text)
    } else if has("disk is full")
        || has("No space left")
        || has("could not extend file")
        || has("database or disk is full")
    {
        Error::Full(text)
    } else if has("disk I/O error") || has("could not write") || has("could not read") {
        Error::Disk(text)
    } else if has("read-only") || has("readonly") {
        Error::ReadOnly(text)
    } else if has("malformed") || has("file is not a database") {
        Error::Damaged(text)
    } else if has("no such table") || has("does not exist") {
        Error::Emptied(text)
    } else if has("terminating connection")
        || has("server closed the connection")
        || has("connection to server")
        || has("shutting down")
        || has("starting up")
        || has("unable to open database")
        || has("too many clients")
        || has("remaining connection slots")
        || has("canceling statement due to")
    {
        Error::Away(text)
    } else {
        Error::Broken(text)
    }
}
