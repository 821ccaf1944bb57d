//! The lease of the record: noticing that a file or a database is another than the one that was worked in last.
//!
//! A copied file has the identity of its original and a lease on the original's place. Opened beside the original it is
//! refused; opened where the original cannot be seen it is taken for moved: every running number is moved on, as after a
//! restore, and people are told. A restart, a crash, a new name or a new container leave the file what it is.

use crate::world;
use chrono::{DateTime, NaiveDateTime, Utc};
use std::path::Path;
use store::record_lease::{self, LeaseRow, MADE, MOVED};
use store::{Address, Store, Tx};

/// A lease that is to be taken, and the identity that a record gets which has none.
pub struct Taken {
    row: LeaseRow,
    identity: [u8; 16],
}

impl Taken {
    /// One on a file or database.
    ///
    /// # Errors
    /// The machine has no source of chance.
    pub fn new(
        why: &str,
        medium: String,
        place: String,
        now: DateTime<Utc>,
    ) -> Result<Taken, String> {
        let mark: [u8; 16] = world::chance()?;
        let at: NaiveDateTime = now.naive_utc();
        Ok(Taken {
            row: LeaseRow {
                id: 0,
                mark: mark.to_vec(),
                at,
                medium,
                place,
                why: why.to_owned(),
            },
            identity: world::chance()?,
        })
    }

    /// Takes it.
    ///
    /// # Errors
    /// The database is away or full.
    pub fn write(&self, tx: &mut Tx<'_>) -> store::Result<()> {
        if record_lease::identity(tx.conn)?.is_none() {
            record_lease::identify(tx, &self.identity, self.row.at)?;
        }
        record_lease::take(tx, &self.row)
    }
}

/// What was found when the record was opened to be worked in.
#[derive(Debug, PartialEq, Eq)]
pub enum Found {
    /// It is where it was.
    Here,
    /// It is in another file or database than before: its numbers were moved on.
    Moved,
}

/// Looks whether the record is where it was last worked in, and takes the lease where it is not.
///
/// # Errors
/// In words: it is a copy, and its original is there as well. Nothing was changed.
pub fn begin(store: &Store, now: DateTime<Utc>, moved: bool) -> Result<Found, String> {
    let says = |error: store::Error| error.to_string();
    let (medium, place) = (
        record_lease::medium(store).map_err(says)?,
        record_lease::place(store),
    );
    let known = store.read(|conn| {
        Ok::<_, store::Error>((record_lease::identity(conn)?, record_lease::last(conn)?))
    });
    let (identity, lease) = known.map_err(says)?;
    let (why, found) = match (&identity, &lease) {
        (_, Some(lease)) if lease.medium == medium => {
            if lease.place != place {
                let renamed = store.write(|tx| record_lease::renamed(tx, lease.id, &place));
                renamed.map_err(says)?;
            }
            return Ok(Found::Here);
        }
        (None, None) => (MADE, Found::Here),
        // An identity and no lease: it was carried here from elsewhere.
        _ => (MOVED, Found::Moved),
    };
    if let (Some(identity), Some(lease), false) = (&identity, &lease, moved)
        && lives(Path::new(&lease.place), &lease.medium, identity)
    {
        return Err(format!(
            "{place} is a copy of {}, which is still there: with both, codes would be given out twice. Nothing was changed.\nTo work on in the original, open that. To make a record of a copy, use `gambrel restore`. If this one is the record from now on, move the original away, or say so with --moved.",
            lease.place
        ));
    }
    let taken = Taken::new(why, medium, place, now)?;
    let done = store.write(|tx| {
        taken.write(tx)?;
        match found {
            Found::Moved => store::copies::jump_ahead(tx).map(|_| ()),
            Found::Here => Ok(()),
        }
    });
    done.map_err(says)?;
    Ok(found)
}

/// Is the original still where its lease says? Only a file that is the very one and the same record.
fn lives(path: &Path, medium: &str, identity: &[u8]) -> bool {
    if !path.is_file() || record_lease::medium_of(path) != medium {
        return false;
    }
    let store = Store::to_read(&Address::Sqlite(path.to_owned()), 1);
    let its = store.map(|store| store.and_then(|store| store.look(record_lease::identity).ok()));
    // One that cannot be looked into is the very file nevertheless.
    its.map_or(true, |its| its.flatten().is_none_or(|its| its == identity))
}
