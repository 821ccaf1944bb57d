//! One connection to either engine, opened by the address's scheme and never by trial.

use crate::address::Address;
use crate::error::{Error, Result};
use diesel::connection::SimpleConnection;
use diesel::r2d2::ManageConnection;
use diesel::{Connection, PgConnection, SqliteConnection};
use std::path::Path;

/// A connection to SQLite or PostgreSQL.
#[derive(diesel::MultiConnection)]
pub enum Conn {
    /// PostgreSQL, for a group of kitchens.
    Pg(PgConnection),
    /// SQLite, embedded.
    Sqlite(SqliteConnection),
}

impl Conn {
    /// Opens a connection. For SQLite the file must be there, or `address` says to make it.
    pub(crate) fn open(address: &Address) -> Result<Conn> {
        match address {
            Address::Sqlite(path) => {
                let path = path
                    .to_str()
                    .ok_or_else(|| Error::Address("the path is not UTF-8".into()))?;
                let mut conn = SqliteConnection::establish(path)
                    .map_err(|error| Error::Away(format!("{path} cannot be opened: {error}")))?;
                // FULL: what was answered survives power loss. The journal mode lasts in the file.
                conn.batch_execute(
                    "PRAGMA busy_timeout = 10000; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;
                     PRAGMA foreign_keys = ON; PRAGMA cache_size = -2000; PRAGMA temp_store = MEMORY;",
                )?;
                Ok(Conn::Sqlite(conn))
            }
            Address::Postgres(url) => {
                let mut conn = PgConnection::establish(&within_reach(url))
                    .map_err(|error| Error::Away(format!("PostgreSQL does not answer: {error}")))?;
                conn.batch_execute(
                    // No statement of ours takes so long: whoever asked has gone away by then. Nor is any so heavy that it pays to
                    // compile it first. Long answers are kept packed, and a hold waits for that: the faster way, where the
                    // server has it.
                    "SET synchronous_commit TO on; SET TIME ZONE 'UTC'; SET jit TO off; SET lock_timeout TO '20s';
                     SET statement_timeout TO '120s'; SET idle_in_transaction_session_timeout TO '60s';
                     SELECT set_config(name, 'lz4', false) FROM pg_settings
                     WHERE name = 'default_toast_compression' AND 'lz4' = ANY(enumvals)",
                )?;
                Ok(Conn::Pg(conn))
            }
        }
    }
}

impl Conn {
    /// Opens a file that nothing is to be changed in: a copy, perhaps on a disk that takes no writes.
    pub(crate) fn to_read(path: &Path) -> Result<Conn> {
        let away =
            |error: String| Error::Away(format!("{} cannot be read: {error}", path.display()));
        let shown = path.to_str();
        let shown = shown.ok_or_else(|| Error::Address("the path is not UTF-8".into()))?;
        let shown = shown
            .replace('%', "%25")
            .replace('?', "%3f")
            .replace('#', "%23");
        // Where no log can be put beside it, the file is read as it lies, unless a log is there that it lacks.
        let log = std::fs::metadata(format!("{}-wal", path.display()));
        let is_whole = log.map_or(true, |log| log.len() == 0);
        let mut last = String::new();
        for more in ["", "&immutable=1"] {
            if !more.is_empty() && !is_whole {
                break;
            }
            let opened = SqliteConnection::establish(&format!("file:{shown}?mode=ro{more}"));
            let asked = opened.map_err(|error| error.to_string()).and_then(|mut conn| {
                let ask = "PRAGMA busy_timeout = 10000; PRAGMA temp_store = MEMORY; SELECT 1 FROM sqlite_master";
                let asked = conn.batch_execute(ask).map_err(|error| error.to_string());
                asked.map(|()| conn)
            });
            match asked {
                Ok(conn) => return Ok(Conn::Sqlite(conn)),
                Err(error) => last = error,
            }
        }
        Err(away(last))
    }
}

/// The address with a limit to how long anybody waits for the first answer, unless it has its own.
fn within_reach(url: &str) -> String {
    let set = |name: &str| url.contains(&format!("{name}="));
    let mut url = url.to_owned();
    for (name, value) in [("connect_timeout", "2"), ("tcp_user_timeout", "10000")] {
        if !set(name) {
            let joint = if url.contains('?') { '&' } else { '?' };
            url = format!("{url}{joint}{name}={value}");
        }
    }
    url
}

/// Makes connections for the pool. Diesel's own manager would try each engine in turn.
#[derive(Debug)]
pub(crate) struct Manager {
    /// Where the record is.
    pub(crate) address: Address,
    /// Is nothing to be changed?
    pub(crate) to_read: bool,
}

impl ManageConnection for Manager {
    type Connection = Conn;
    type Error = Error;

    fn connect(&self) -> Result<Conn> {
        if let Address::Sqlite(path) = &self.address {
            if !path.exists() {
                // Opening it would make an empty one, and hide that the record is gone.
                return Err(Error::Gone(format!("{} is not there", path.display())));
            }
            if self.to_read {
                return Conn::to_read(path);
            }
        }
        Conn::open(&self.address)
    }

    fn is_valid(&self, conn: &mut Conn) -> Result<()> {
        Ok(conn.batch_execute("SELECT 1")?)
    }

    fn has_broken(&self, conn: &mut Conn) -> bool {
        use diesel::r2d2::R2D2Connection;
        match conn {
            Conn::Pg(conn) => conn.is_broken(),
            Conn::Sqlite(conn) => conn.is_broken(),
        }
    }
}
