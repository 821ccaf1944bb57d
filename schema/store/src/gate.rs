//! The one writer of a record on SQLite, and how long anybody waits for it.
//!
//! In the process those who write wait for each other, each as long as it takes. Another program that holds the
//! file's lock is another matter: nobody knows when it lets go. It is waited for a moment, then all who wait
//! are told so at once.

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::settle::{LOG_AT_MOST, LOG_PAGES};
use diesel::connection::SimpleConnection;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Mutex, MutexGuard, PoisonError};

/// How long another program is waited for, in milliseconds.
pub(crate) const PATIENCE_MS: u32 = 2_000;
/// And how long once it was waited for in vain: those who come meanwhile do not wait all of it anew.
const SHORT_PATIENCE_MS: u32 = 100;

/// The writer, and what is known of those who wait.
pub(crate) struct Gate {
    conn: Mutex<Conn>,
    tally: Tally,
}

/// What the gate has seen.
#[derive(Debug, Default)]
struct Tally {
    /// Does somebody of ours write right now?
    writing: AtomicBool,
    /// How often somebody of ours has written.
    written: AtomicU64,
    /// How often another program was waited for in vain.
    in_vain: AtomicU64,
    /// Was that so the last time?
    is_short: AtomicBool,
}

/// The writer, while somebody writes.
pub(crate) struct Writing<'a> {
    pub(crate) conn: MutexGuard<'a, Conn>,
    tally: &'a Tally,
}

impl Drop for Writing<'_> {
    fn drop(&mut self) {
        self.tally.written.fetch_add(1, Ordering::Relaxed);
        self.tally.writing.store(false, Ordering::Relaxed);
    }
}

impl Gate {
    pub(crate) fn new(mut conn: Conn) -> Result<Gate> {
        conn.batch_execute(&format!(
            "PRAGMA busy_timeout = {PATIENCE_MS}; PRAGMA wal_autocheckpoint = {LOG_PAGES}"
        ))?;
        Ok(Gate {
            conn: Mutex::new(conn),
            tally: Tally::default(),
        })
    }

    /// The writer, when everybody before has done; `check` is asked then. Its transaction has begun.
    ///
    /// # Errors
    /// Whatever `check` says; another program has the file.
    pub(crate) fn pass(&self, check: impl FnOnce() -> Result<()>) -> Result<Writing<'_>> {
        let before = self.tally.in_vain.load(Ordering::Relaxed);
        let mut conn = self.conn.lock().unwrap_or_else(PoisonError::into_inner);
        if self.tally.in_vain.load(Ordering::Relaxed) != before {
            return Err(locked()); // whoever was before us has just waited as long as anybody should
        }
        check()?;
        match conn.batch_execute("BEGIN IMMEDIATE").map_err(Error::from) {
            Ok(()) => self.be_patient(&mut conn, true)?,
            Err(Error::Conflict(_)) => {
                self.tally.in_vain.fetch_add(1, Ordering::Relaxed);
                self.be_patient(&mut conn, false)?;
                return Err(locked());
            }
            Err(error) => return Err(error),
        }
        self.tally.writing.store(true, Ordering::Relaxed);
        Ok(Writing {
            conn,
            tally: &self.tally,
        })
    }

    /// Leaves the log to whoever settles it; should nobody do so after all, a deed does it once the log fills a disk.
    pub(crate) fn leave_log(&self) -> Result<()> {
        let mut conn = self.conn.lock().unwrap_or_else(PoisonError::into_inner);
        let sql = format!("PRAGMA wal_autocheckpoint = {LOG_AT_MOST}");
        Ok(conn.batch_execute(&sql)?)
    }

    /// Does something while nobody writes. Everybody waits for it: it must be done in a blink.
    pub(crate) fn between_deeds<T>(&self, act: impl FnOnce() -> T) -> T {
        let _nobody = self.conn.lock().unwrap_or_else(PoisonError::into_inner);
        act()
    }

    /// Waits long again, or only shortly from now on.
    fn be_patient(&self, conn: &mut Conn, long: bool) -> Result<()> {
        if self.tally.is_short.swap(!long, Ordering::Relaxed) == long {
            let wait = if long { PATIENCE_MS } else { SHORT_PATIENCE_MS };
            conn.batch_execute(&format!("PRAGMA busy_timeout = {wait}"))?;
        }
        Ok(())
    }

    /// Does somebody of ours write, and how often has anybody?
    pub(crate) fn seen(&self) -> (bool, u64) {
        let (writing, written) = (&self.tally.writing, &self.tally.written);
        (
            writing.load(Ordering::Relaxed),
            written.load(Ordering::Relaxed),
        )
    }
}

fn locked() -> Error {
    Error::Locked("another program has been writing for two seconds".into())
}
