//! Copies of the whole record: made while it is worked in, proven before anybody relies on them, put under lock where the
//! kitchen has a key, tried now and then, and made a record again.

mod drill;
pub mod gently;
pub mod keep;
mod key;
mod lock;
mod make;
mod name;
mod place;
mod prove;
mod restore;
pub mod says;
mod seal;
pub mod timetable;

pub use drill::run as drill;
pub use key::{Key, make as make_key};
pub use make::backup;
pub use restore::restore;

use crate::world::Stopwatch;
use chrono::{DateTime, Utc};
use store::Store;
use store::copied::{self, CopyRow};

/// Why there is no copy, or why one was tried in vain.
#[derive(Debug)]
pub struct Trouble {
    /// In a word, for programs; [`says::of`] says it to people.
    pub sort: &'static str,
    /// In a sentence of the machine's, with the path.
    pub says: String,
}

/// The folder of copies cannot be read or written, or has none.
const FOLDER: &str = "folder";
/// The record cannot be read.
const RECORD: &str = "record";
/// What was copied is not sound.
const UNSOUND: &str = "unsound";
/// The key is missing or another's.
const KEY: &str = "key";
/// A copy and the record have gone different ways.
const APART: &str = "apart";

impl Trouble {
    fn new(sort: &'static str, says: impl ToString) -> Trouble {
        let says = says.to_string();
        Trouble { sort, says }
    }
}

/// What somebody did with a copy, and how that went.
struct Done {
    what: &'static str,
    at: DateTime<Utc>,
    since: Stopwatch,
}

impl Done {
    fn begin(what: &'static str, at: DateTime<Utc>) -> Done {
        let since = Stopwatch::start();
        Done { what, at, since }
    }

    /// Keeps what came of it beside the record; a record that takes nothing just now is no reason to fail.
    fn keep(&self, store: &Store, mut row: CopyRow) {
        self.what.clone_into(&mut row.what);
        row.at = self.at.naive_utc();
        row.took_ms = i64::try_from(self.since.elapsed().as_millis()).unwrap_or(i64::MAX);
        if let Err(error) = store.write(|tx| copied::keep(tx, &row)) {
            tracing::warn!("what came of a copy is not kept: {error}");
        }
    }
}
