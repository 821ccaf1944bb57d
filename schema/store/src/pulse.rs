//! Is the record still there, whole and willing? Asked again and again on a connection of its own, so
//! that a database which hangs makes nobody else wait.

use crate::address::Address;
use crate::conn::Conn;
use crate::error::{Error, Result};
use chrono::NaiveDateTime;
use diesel::connection::SimpleConnection;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Nullable, Text, Timestamp};
use std::path::Path;

/// Looks after a record.
pub struct Watch {
    address: Address,
    conn: Option<Conn>,
    /// The file as it was when the watch began.
    file: Option<FileId>,
    /// The most deeds that were ever seen: a record only grows.
    deeds: i64,
    /// When the last deed was recorded.
    last: Option<NaiveDateTime>,
    /// What time the database thinks it is, where it has a clock of its own.
    now: Option<NaiveDateTime>,
}

/// Which file it is, whatever its name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct FileId(u64, u64);

impl FileId {
    /// The file at a path, if there is one.
    #[cfg(unix)]
    pub(crate) fn at(path: &Path) -> Option<FileId> {
        use std::os::unix::fs::MetadataExt;
        let about = std::fs::metadata(path).ok()?;
        Some(FileId(about.dev(), about.ino()))
    }

    /// Elsewhere a file that is open cannot be taken away.
    #[cfg(not(unix))]
    pub(crate) fn at(path: &Path) -> Option<FileId> {
        path.exists().then_some(FileId(0, 0))
    }
}

#[derive(QueryableByName)]
struct Beat {
    #[diesel(sql_type = BigInt)]
    deeds: i64,
    #[diesel(sql_type = Nullable<Timestamp>)]
    last: Option<NaiveDateTime>,
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
    /// Begins to look after the record at an address.
    pub fn over(address: &Address) -> Watch {
        let file = match address {
            Address::Sqlite(path) => FileId::at(path),
            Address::Postgres(_) => None,
        };
        Watch {
            address: address.clone(),
            conn: None,
            file,
            deeds: 0,
            last: None,
            now: None,
        }
    }

    /// When the last deed was recorded, as of the last look.
    pub fn last_recorded_at(&self) -> Option<NaiveDateTime> {
        self.last
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
        if let Address::Sqlite(path) = &self.address {
            same_file(path, self.file)?;
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
        let sql = "SELECT CAST(COALESCE(MAX(id), 0) AS BIGINT) AS deeds,
                       (SELECT MAX(recorded_at) FROM deeds) AS last FROM deeds";
        let beat: Beat = crate::on_each!(&mut *conn, c => sql_query(sql).get_result(c)?);
        if beat.deeds < self.deeds {
            return Err(Error::Emptied(format!(
                "deed {} was on record, the last one now is {}",
                self.deeds, beat.deeds
            )));
        }
        self.deeds = beat.deeds;
        self.last = beat.last;
        if let Conn::Pg(conn) = conn {
            let sql = "SELECT clock_timestamp() AT TIME ZONE 'UTC' AS now";
            let clock: DatabaseClock = sql_query(sql).get_result(conn)?;
            self.now = Some(clock.now);
        }
        takes_deeds(conn)
    }
}

/// Refuses a file that is not the one that was opened, or was emptied since: what is written to it would be lost.
pub(crate) fn same_file(path: &Path, opened: Option<FileId>) -> Result<()> {
    match (opened, FileId::at(path)) {
        // Cut to nothing under us; what the log beside it still holds hides that for a while.
        (Some(opened), Some(now)) if opened == now => match is_empty(path) {
            true => Err(Error::Emptied(format!("{} is empty", path.display()))),
            false => Ok(()),
        },
        (Some(_), None) => Err(Error::Gone(format!("{} is not there", path.display()))),
        (Some(_), Some(_)) => Err(Error::Gone(format!("{} is another file", path.display()))),
        (None, _) => Ok(()),
    }
}

fn is_empty(path: &Path) -> bool {
    std::fs::metadata(path).is_ok_and(|about| about.len() == 0)
}

/// Would a deed be taken? Nothing is written.
fn takes_deeds(conn: &mut Conn) -> Result<()> {
    match conn {
        Conn::Sqlite(conn) => {
            // A writer in the way is a good sign; so it is asked without waiting.
            conn.batch_execute("PRAGMA busy_timeout = 0")?;
            match conn
                .batch_execute("BEGIN IMMEDIATE; ROLLBACK")
                .map_err(Error::from)
            {
                Ok(()) | Err(Error::Conflict(_)) => Ok(()),
                Err(error) => Err(error),
            }
        }
        Conn::Pg(conn) => {
            let sql = "SELECT current_setting('transaction_read_only') AS transaction_read_only";
            let setting: Setting = sql_query(sql).get_result(conn)?;
            match setting.transaction_read_only.as_str() {
                "off" => Ok(()),
                _ => Err(Error::ReadOnly("PostgreSQL takes no writes".into())),
            }
        }
    }
}
