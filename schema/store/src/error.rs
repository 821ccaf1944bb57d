//! What can go wrong with the database, as far as a caller must tell it apart.

use diesel::result::{DatabaseErrorKind, Error as Diesel};

/// An error of the store.
#[derive(Debug, thiserror::Error)]
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
fn by_message(message: &str, text: String) -> Error {
    let has = |part: &str| message.contains(part);
    if has("deadlock detected") || has("database is locked") || has("could not serialize") {
        Error::Conflict(text)
    } else if has("disk is full")
        || has("No space left")
        || has("could not extend file")
        || has("disk I/O error")
    {
        Error::Full(text)
    } else if has("terminating connection")
        || has("server closed the connection")
        || has("connection to server")
        || has("shutting down")
        || has("starting up")
        || has("unable to open database")
        || has("too many clients")
        || has("read-only")
        || has("readonly")
    {
        Error::Away(text)
    } else {
        Error::Broken(text)
    }
}
