//! Is the record still there, whole and willing? Asked again and again on a connection of its own, so
//! that a database which hangs makes nobody else wait.

use crate::address::Address;
use crate::clock::Recorded;
use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::file::RecordFile;
use crate::gate::Gate;
use chrono::NaiveDateTime;
use diesel::connection::SimpleConnection;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Nullable, Text, Timestamp};
use std::sync::{Arc, Mutex, PoisonError};

/// At every which look it is proven that something can be written: a row that is written as it was. It costs a
/// page and a sync, so not at each.
const PROVE_EVERY: u32 = 10;
/// After how many looks on end another program that writes is in the way.
const LOOKS_LOCKED: u32 = 3;
/// What is written to prove it.
const PROOF: &str = "UPDATE counters SET next = next WHERE id = 1";

/// Looks after a record.
pub struct Watch {
    address: Address,
    conn: Option<Conn>,
    gate: Option<Arc<Gate>>,
    /// Why nothing could be written last, shared with those who write.
    failed: Arc<Mutex<Option<Error>>>,
    /// How many looks ago it was last proven that something can be written.
    proven: u32,
    /// How many looks on end somebody else was writing, and how often ours had written before.
    in_the_way: (u32, u64),
    /// The most deeds that were ever seen: a record only grows.
    deeds: i64,
    /// When deeds were recorded last.
    recorded: Recorded,
    /// What time the database thinks it is, where it has a clock of its own.
    now: Option<NaiveDateTime>,
    /// The file as it was opened: closed after the connection to it.
    file: Option<Arc<RecordFile>>,
}

#[derive(QueryableByName)]
struct Beat {
    #[diesel(sql_type = BigInt)]
    deeds: i64,
    #[diesel(sql_type = Nullable<Timestamp>)]
    latest: Option<NaiveDateTime>,
    #[diesel(sql_type = Nullable<Timestamp>)]
    newest: Option<NaiveDateTime>,
}

#[derive(QueryableByName)]
struct DatabaseClock {
    #[diesel(sql_type = Timestamp)]
    now: NaiveDateTime,
}

#[derive(QueryableByName)]
struct Setting {
    #[diesel(sql_type = Text)]
    transaction_read_only: String,
}

impl Watch {
    /// Somebody to look after a record; `failed` is why nothing could be written last.
    pub(crate) fn new(
        address: &Address,
        file: Option<Arc<RecordFile>>,
        gate: Option<Arc<Gate>>,
        failed: Arc<Mutex<Option<Error>>>,
    ) -> Watch {
        Watch {
            address: address.clone(),
            conn: None,
            gate,
            failed,
            proven: PROVE_EVERY,
            in_the_way: (0, 0),
            deeds: 0,
            recorded: Recorded::default(),
            now: None,
            file,
        }
    }

    /// When deeds were recorded last, as of the last look.
    pub fn recorded(&self) -> Recorded {
        self.recorded
    }

    /// What time the database thought it was at the last look, where it has a clock of its own.
    pub fn database_now(&self) -> Option<NaiveDateTime> {
        self.now
    }

    /// When anything was last written into the file, by the machine's clock then.
    pub fn file_written_at(&self) -> Option<std::time::SystemTime> {
        let Address::Sqlite(path) = &self.address else {
            return None;
        };
        let log = path.with_file_name(format!("{}-wal", path.file_name()?.to_string_lossy()));
        let times = [path.as_path(), log.as_path()].into_iter();
        let times = times.filter_map(|path| std::fs::metadata(path).ok()?.modified().ok());
        times.max()
    }

    /// One look.
    ///
    /// # Errors
    /// The record is away, gone, emptied, damaged or takes nothing.
    pub fn look(&mut self) -> Result<()> {
        let seen = self.look_once();
        if seen.is_err() {
            // A connection that has failed is no witness: the next look is on a new one.
            self.conn = None;
        }
        seen
    }

    fn look_once(&mut self) -> Result<()> {
        if let Some(file) = &self.file {
            file.check()?;
            let path = file.path();
            if std::fs::metadata(path).is_ok_and(|about| about.permissions().readonly()) {
                return Err(Error::ReadOnly(format!(
                    "{} may only be read",
                    path.display()
                )));
            }
        }
        let conn = match &mut self.conn {
            Some(conn) => conn,
            empty => empty.insert(Conn::open(&self.address)?),
        };
        if let (Conn::Sqlite(conn), true) = (&mut *conn, self.proven >= PROVE_EVERY) {
            // What it remembers of the file may not be there any more.
            conn.batch_execute("PRAGMA shrink_memory")?;
        }
        let sql = "SELECT CAST(COALESCE(MAX(id), 0) AS BIGINT) AS deeds,
                       (SELECT MAX(recorded_at) FROM deeds) AS latest,
                       (SELECT recorded_at FROM deeds ORDER BY id DESC LIMIT 1) AS newest FROM deeds";
        let beat: Beat = crate::on_each!(&mut *conn, c => sql_query(sql).get_result(c)?);
        if beat.deeds < self.deeds {
            return Err(Error::Emptied(format!(
                "deed {} was on record, the last one now is {}",
                self.deeds, beat.deeds
            )));
        }
        self.deeds = beat.deeds;
        let newest = i32::try_from(beat.deeds).ok();
        self.recorded = Recorded::of(beat.latest, newest, beat.newest);
        if let Conn::Pg(conn) = conn {
            let sql = "SELECT clock_timestamp() AT TIME ZONE 'UTC' AS now";
            let clock: DatabaseClock = sql_query(sql).get_result(conn)?;
            self.now = Some(clock.now);
        }
        let known = self.failed();
        let proof = known.is_some() || self.proven >= PROVE_EVERY;
        let conn = self.conn.as_mut();
        let tried = conn.map_or(Ok(Tried::Well), |conn| takes_deeds(conn, proof));
        match tried {
            Ok(Tried::InTheWay) => self.somebody_writes(known),
            Ok(Tried::Well) => {
                self.proven = if proof { 0 } else { self.proven + 1 };
                self.in_the_way = (0, 0);
                if proof {
                    self.keep(None);
                }
                Ok(())
            }
            Err(error) => {
                if error.takes_no_writes() {
                    self.keep(Some(error.clone()));
                }
                Err(error)
            }
        }
    }

    /// Somebody writes: one of ours, or another program that will have done soon, or will not.
    fn somebody_writes(&mut self, known: Option<Error>) -> Result<()> {
        let seen = self.gate.as_ref().map(|gate| gate.seen());
        let (writing, written) = seen.unwrap_or_default();
        let (looks, before) = self.in_the_way;
        self.in_the_way = match writing || written != before {
            true => (0, written),
            false => (looks + 1, written),
        };
        match known {
            Some(error) => Err(error),
            None if self.in_the_way.0 > LOOKS_LOCKED => {
                Err(Error::Locked("another program writes on and on".into()))
            }
            None => Ok(()),
        }
    }

    fn failed(&self) -> Option<Error> {
        let failed = self.failed.lock();
        failed.unwrap_or_else(PoisonError::into_inner).clone()
    }

    fn keep(&self, error: Option<Error>) {
        *self.failed.lock().unwrap_or_else(PoisonError::into_inner) = error;
    }
}

/// What a try to write came to.
enum Tried {
    /// It would be taken, or was.
    Well,
    /// Somebody else was writing.
    InTheWay,
}

/// Would a deed be taken? `proof`: something is written, and is as it was.
fn takes_deeds(conn: &mut Conn, proof: bool) -> Result<Tried> {
    match conn {
        Conn::Sqlite(conn) => {
            // A writer in the way is most often a good sign; so it is asked without waiting.
            conn.batch_execute("PRAGMA busy_timeout = 0")?;
            if let Err(error) = conn.batch_execute("BEGIN IMMEDIATE").map_err(Error::from) {
                return match error {
                    Error::Conflict(_) => Ok(Tried::InTheWay),
                    error => Err(error),
                };
            }
            let written = match proof {
                true => conn.batch_execute(PROOF),
                false => Ok(()),
            };
            let end = if proof && written.is_ok() {
                "COMMIT"
            } else {
                "ROLLBACK"
            };
            let ended = conn.batch_execute(end);
            written.and(ended)?;
        }
        Conn::Pg(conn) => {
            let sql = "SELECT current_setting('transaction_read_only') AS transaction_read_only";
            let setting: Setting = sql_query(sql).get_result(conn)?;
            if setting.transaction_read_only != "off" {
                return Err(Error::ReadOnly("PostgreSQL takes no writes".into()));
            }
            if proof {
                conn.batch_execute(PROOF)?;
            }
        }
    }
    Ok(Tried::Well)
}
