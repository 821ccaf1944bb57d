//! Opening the record, reading it, and the one `write` that owns transactions.

use crate::address::Address;
use crate::chain::line::Written;
use crate::chain::{self, Sealing};
use crate::conn::{Conn, Manager};
use crate::error::{Error, Result};
use crate::file::RecordFile;
use crate::gate::{Gate, Writing};
use crate::ids::Ids;
use crate::pulse::Watch;
use crate::turn::Turn;
use crate::{migrate, series, tls};
use diesel::connection::SimpleConnection;
use diesel::r2d2::{Pool, PooledConnection};
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

/// How often a deed is tried again when another was in its way.
const TRIES: usize = 8;

/// The open record.
pub struct Store {
    address: Address,
    pool: Pool<Manager>,
    /// SQLite takes one writer at a time; waiting in the process is fair, waiting in the file is not.
    gate: Option<Arc<Gate>>,
    /// Why nothing could be written last, until something is.
    failed: Arc<Mutex<Option<Error>>>,
    ids: Ids,
    restored: u32,
    /// The file as it was opened: closed after every connection to it.
    file: Option<Arc<RecordFile>>,
}

/// A deed's transaction.
pub struct Tx<'a> {
    /// The connection inside its transaction.
    pub conn: &'a mut Conn,
    pub(crate) ids: &'a Ids,
    /// How often the record was restored from a copy.
    pub(crate) restored: u32,
    /// What it has written so far, for the chain.
    pub(crate) sealing: Sealing,
    /// Is it only tried, so that nothing of it is kept?
    pub(crate) is_trial: bool,
}

impl Tx<'_> {
    /// From here on it is only tried, to tell what it would change: its author ends it with an error. What nothing
    /// reads before that (links, what lots were before, the chain) is not even written.
    pub fn only_try(&mut self) {
        self.is_trial = true;
    }

    /// Takes a row that this deed wrote into the chain.
    pub(crate) fn seal(&mut self, deed: i32, row: &impl Written) {
        self.seal_all(deed, std::slice::from_ref(row));
    }

    /// Takes rows that this deed wrote into the chain.
    pub(crate) fn seal_all(&mut self, deed: i32, rows: &[impl Written]) {
        if self.is_trial {
            return;
        }
        for row in rows {
            self.sealing.add(Some(deed), row);
        }
    }

    /// Takes a row into the chain that is no deed's.
    pub(crate) fn seal_alone(&mut self, row: &impl Written) {
        self.sealing.add(None, row);
    }
}

/// What `write` needs to know of a caller's error.
pub trait MayRetry {
    /// Was another transaction in the way?
    fn is_conflict(&self) -> bool;
    /// The error of the database, if it is one.
    fn of_store(&self) -> Option<&Error>;
}

impl MayRetry for Error {
    fn is_conflict(&self) -> bool {
        matches!(self, Error::Conflict(_))
    }

    fn of_store(&self) -> Option<&Error> {
        Some(self)
    }
}

impl Store {
    /// Opens the record at `address` and brings it up to this version. `create` allows a SQLite file
    /// to be made where there is none.
    ///
    /// # Errors
    /// Nothing there, nobody answers, not a database, or one written by a newer version: untouched.
    pub fn open(address: &Address, create: bool, connections: u32) -> Result<Store> {
        if let Address::Sqlite(path) = address {
            refuse_what_is_no_record(path, create)?;
        }
        if let Address::Postgres(url) = address {
            tls::refuse_without(url, std::env::var("PGSSLMODE").ok().as_deref())?;
        }
        let mut first = Conn::open(address)?;
        migrate::run(&mut first)?;
        chain::seal_what_is_due(&mut first)?;
        let restored = series::restored(&mut first)?;
        let file = match address {
            Address::Sqlite(path) => Some(Arc::new(RecordFile::at(path))),
            Address::Postgres(_) => None,
        };
        let gate = match address {
            Address::Sqlite(_) => Some(Arc::new(Gate::new(first)?)),
            Address::Postgres(_) => None,
        };
        Ok(Store {
            address: address.clone(),
            pool: pool(address, false, connections)?,
            gate,
            failed: Arc::default(),
            ids: Ids::default(),
            restored,
            file,
        })
    }

    /// Opens a record that nothing is to be changed in, not even brought up to this version: none where that
    /// would be needed first.
    ///
    /// # Errors
    /// Nothing there, nobody answers, not a database, or one written by a newer version.
    pub fn to_read(address: &Address, connections: u32) -> Result<Option<Store>> {
        let Address::Sqlite(path) = address else {
            return Ok(None);
        };
        refuse_what_is_no_record(path, false)?;
        let mut first = Conn::to_read(path)?;
        if migrate::is_older(&mut first)? || chain::is_due(&mut first)? {
            return Ok(None);
        }
        drop(first);
        Ok(Some(Store {
            address: address.clone(),
            pool: pool(address, true, connections)?,
            gate: None,
            failed: Arc::default(),
            ids: Ids::default(),
            restored: 0,
            file: None,
        }))
    }

    /// The one writer of a file.
    pub(crate) fn gate(&self) -> Option<Arc<Gate>> {
        self.gate.clone()
    }

    /// Where the record is.
    pub fn address(&self) -> &Address {
        &self.address
    }

    /// The file of the record as it was opened, if it is one.
    pub(crate) fn file(&self) -> Option<Arc<RecordFile>> {
        self.file.clone()
    }

    /// How many may be read on at once.
    pub(crate) fn connections(&self) -> u32 {
        self.pool.max_size()
    }

    fn connection(&self) -> Result<PooledConnection<Manager>> {
        self.pool
            .get()
            .map_err(|error| Error::Away(error.to_string()))
    }

    /// A connection that answers: one that the database has dropped since is put away.
    fn living(&self, begin: &str) -> Result<PooledConnection<Manager>> {
        let mut tries = 0;
        loop {
            tries += 1;
            let mut conn = self.connection()?;
            match conn.batch_execute(begin).map_err(Error::from) {
                Ok(()) => return Ok(conn),
                // It lives, and what it could not wait for it would wait for in vain again.
                Err(error) if conn.batch_execute("ROLLBACK").is_ok() => return Err(error),
                // As many as the pool may hold, and one that is made anew.
                Err(Error::Away(_)) if tries <= self.pool.max_size() => {}
                Err(error) => return Err(error),
            }
        }
    }

    /// Runs one query; use [`Store::read`] where several must see the same moment.
    ///
    /// # Errors
    /// Whatever `f` says, or the database being away.
    pub fn look<T, E: From<Error>>(
        &self,
        f: impl FnOnce(&mut Conn) -> std::result::Result<T, E>,
    ) -> std::result::Result<T, E> {
        let mut conn = match &self.address {
            Address::Sqlite(_) => self.connection()?,
            Address::Postgres(_) => self.living("SELECT 1")?,
        };
        f(&mut conn)
    }

    /// Reads in a snapshot: every query of `f` sees the same moment.
    ///
    /// # Errors
    /// Whatever `f` says, or the database being away.
    pub fn read<T, E: From<Error>>(
        &self,
        f: impl FnOnce(&mut Conn) -> std::result::Result<T, E>,
    ) -> std::result::Result<T, E> {
        let begin = match &self.address {
            Address::Sqlite(_) => "BEGIN DEFERRED",
            Address::Postgres(_) => "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY",
        };
        in_transaction(&mut *self.living(begin)?, "ROLLBACK", f)
    }

    /// Runs one deed in one transaction. Nothing is kept unless `f` succeeds, and when this returns
    /// the deed is on disk. `f` may run more than once.
    ///
    /// # Errors
    /// Whatever `f` says, or the database being away or full.
    pub fn write<T, E: From<Error> + MayRetry>(
        &self,
        f: impl FnMut(&mut Tx<'_>) -> std::result::Result<T, E>,
    ) -> std::result::Result<T, E> {
        self.write_in(Turn::Any, f)
    }

    /// The same, when its turn has come.
    ///
    /// # Errors
    /// Whatever `f` says, or the database being away or full.
    pub fn write_in<T, E: From<Error> + MayRetry>(
        &self,
        turn: Turn,
        mut f: impl FnMut(&mut Tx<'_>) -> std::result::Result<T, E>,
    ) -> std::result::Result<T, E> {
        let mut tries = 0;
        loop {
            tries += 1;
            match self.write_once(turn, &mut f) {
                Err(error) if error.is_conflict() && tries < TRIES => {}
                done => {
                    self.remember(done.as_ref().map_or_else(MayRetry::of_store, |_| None));
                    return done;
                }
            }
        }
    }

    fn remember(&self, error: Option<&Error>) {
        let failed = error.filter(|error| error.takes_no_writes()).cloned();
        let mut known = self.failed.lock().unwrap_or_else(PoisonError::into_inner);
        if known.is_some() || failed.is_some() {
            *known = failed;
        }
    }

    /// Somebody to look after the record.
    pub fn watch(&self) -> Watch {
        let failed = self.failed.clone();
        Watch::new(&self.address, self.file.clone(), self.gate.clone(), failed)
    }

    fn write_once<T, E: From<Error>>(
        &self,
        turn: Turn,
        f: &mut impl FnMut(&mut Tx<'_>) -> std::result::Result<T, E>,
    ) -> std::result::Result<T, E> {
        let (mut gated, mut pooled): (Writing<'_>, PooledConnection<Manager>);
        let conn: &mut Conn = match &self.gate {
            Some(gate) => {
                // A deed in a file that was taken away or written over would be answered and lost.
                let file = self.file.as_ref();
                gated = gate.pass(|| file.map_or(Ok(()), |file| file.check()))?;
                &mut gated.conn
            }
            None => {
                pooled = self.living(turn.begin())?;
                &mut pooled
            }
        };
        // Called in one place: a deed is long, and each place is a copy of it in the binary.
        let done = in_transaction(conn, "COMMIT", |conn| {
            let mut tx = Tx {
                conn,
                ids: &self.ids,
                restored: self.restored,
                sealing: Sealing::default(),
                is_trial: false,
            };
            let done = f(&mut tx)?;
            if tx.is_trial {
                // Half of it is not there: it must not be kept.
                return Err(Error::Broken("a trial was to be kept".into()).into());
            }
            tx.sealing.finish(tx.conn).map_err(E::from)?;
            Ok(done)
        });
        if done.is_err() && self.gate.is_some() {
            self.ids.forget(); // the block they came from was rolled back
        }
        done
    }
}

fn refuse_what_is_no_record(path: &Path, create: bool) -> Result<()> {
    let shown = path.display();
    if !path.exists() {
        return match create {
            true => Ok(()),
            false => Err(Error::Address(format!(
                "there is no database at {shown}. Check the path, or add --create to make one."
            ))),
        };
    }
    if path.is_dir() {
        return Err(Error::Address(format!(
            "{shown} is a folder, not a database."
        )));
    }
    if !path.is_file() {
        return Err(Error::Address(format!(
            "{shown} is no plain file, so no database."
        )));
    }
    migrate::refuse_what_is_not_ours(path)
}

fn pool(address: &Address, to_read: bool, connections: u32) -> Result<Pool<Manager>> {
    let manager = Manager {
        address: address.clone(),
        to_read,
    };
    Pool::builder()
        .max_size(connections)
        .min_idle(Some(1))
        // Asking each connection first whether it lives would cost every request a round trip: a
        // transaction that cannot begin takes another connection instead.
        .test_on_check_out(false)
        // A scan that finds no database says so within two seconds.
        .connection_timeout(Duration::from_millis(1_500))
        .build(manager)
        .map_err(|error| Error::Away(error.to_string()))
}

/// Ends the transaction also when `f` panics: the gate's connection is used again.
struct Open<'a>(&'a mut Conn, bool);

impl Drop for Open<'_> {
    fn drop(&mut self) {
        if self.1 {
            let _ = self.0.batch_execute("ROLLBACK");
        }
    }
}

/// Runs `f` in the transaction that was begun, and ends it.
fn in_transaction<T, E: From<Error>>(
    conn: &mut Conn,
    end: &str,
    f: impl FnOnce(&mut Conn) -> std::result::Result<T, E>,
) -> std::result::Result<T, E> {
    let mut open = Open(conn, true);
    let done = f(open.0)?;
    open.0.batch_execute(end).map_err(Error::from)?;
    open.1 = false;
    Ok(done)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_wrong_path_is_an_error_and_makes_no_file() {
        let path = std::env::temp_dir().join("gambrel-no-such-folder/kitchen.db");
        assert!(Store::open(&Address::Sqlite(path.clone()), false, 1).is_err());
        assert!(!path.exists());
    }
}
