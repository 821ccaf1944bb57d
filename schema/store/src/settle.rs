//! Putting the log of a record on SQLite into its file, beside those who write.
//!
//! SQLite lets the deed do that which makes the log too long: behind it everybody waits for two syncs of the disk, and after
//! a copy was made, while the log could only grow, for all that was recorded meanwhile. So somebody who has nothing else
//! to do does it twice a second, in small pieces; nobody waits for that.

use crate::address::Address;
use crate::conn::Conn;
use crate::db::Store;
use crate::error::Result;
use crate::file::RecordFile;
use diesel::connection::SimpleConnection;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::SystemTime;

/// After so many pages of log a deed does it after all: nobody else does.
pub(crate) const LOG_PAGES: u32 = 8_000;

/// Puts the log into the file.
pub struct LogSettler {
    address: Address,
    log: PathBuf,
    /// The file as it was opened.
    file: Option<Arc<RecordFile>>,
    conn: Option<Conn>,
    /// The log as it was when it was last put into the file.
    seen: Option<(u64, SystemTime)>,
}

impl Store {
    /// Somebody to put the log into the file; PostgreSQL sees to that by itself.
    pub fn log_settler(&self) -> Option<LogSettler> {
        let Address::Sqlite(path) = self.address() else {
            return None;
        };
        Some(LogSettler {
            address: self.address().clone(),
            log: PathBuf::from(format!("{}-wal", path.display())),
            file: self.file(),
            conn: None,
            seen: None,
        })
    }
}

impl LogSettler {
    /// Puts what lies in the log into the file, as far as nobody reads what was before it.
    ///
    /// # Errors
    /// The record is away; the next time is as good.
    pub fn settle(&mut self) -> Result<()> {
        let about = std::fs::metadata(&self.log).ok();
        let now = about.and_then(|about| Some((about.len(), about.modified().ok()?)));
        if now.is_none() || now == self.seen {
            return Ok(());
        }
        // What was taken away, emptied or written over is left as it is: nothing of the log goes into it.
        if let Some(file) = &self.file {
            file.check()?;
        }
        let conn = match &mut self.conn {
            Some(conn) => conn,
            empty => empty.insert(Conn::open(&self.address)?),
        };
        match conn.batch_execute("PRAGMA wal_checkpoint(PASSIVE)") {
            Ok(()) => {
                self.seen = now;
                Ok(())
            }
            Err(error) => {
                self.conn = None;
                Err(error.into())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use diesel::RunQueryDsl;
    use diesel::sql_query;
    use diesel::sql_types::Integer;

    #[derive(diesel::QueryableByName)]
    struct Pragma {
        #[diesel(sql_type = Integer)]
        log: i32,
        #[diesel(sql_type = Integer)]
        checkpointed: i32,
    }

    #[test]
    fn what_lies_in_the_log_goes_into_the_file() {
        let folder = std::env::temp_dir().join(format!("gambrel-log-{}", std::process::id()));
        std::fs::create_dir_all(&folder).unwrap();
        let path = folder.join("record.db");
        let store = Store::open(&Address::Sqlite(path.clone()), true, 2).unwrap();
        let mut settler = store.log_settler().unwrap();
        let write = |tx: &mut crate::db::Tx<'_>| {
            let sql = "UPDATE counters SET next = next + 1 WHERE id = 1";
            Ok::<_, crate::Error>(tx.conn.batch_execute(sql)?)
        };
        store.write(write).unwrap();
        let before = std::fs::metadata(&path).unwrap().modified().unwrap();
        std::thread::sleep(std::time::Duration::from_millis(20));
        settler.settle().unwrap();
        assert_ne!(
            std::fs::metadata(&path).unwrap().modified().unwrap(),
            before
        );
        let left = store.look(|conn| match conn {
            Conn::Sqlite(conn) => Ok::<_, crate::Error>(
                sql_query("PRAGMA wal_checkpoint(PASSIVE)").get_result::<Pragma>(conn)?,
            ),
            Conn::Pg(_) => unreachable!("it is a file"),
        });
        let left = left.unwrap();
        assert_eq!(left.log, left.checkpointed);
        drop((store, settler));
        std::fs::remove_dir_all(folder).unwrap();
    }
}
