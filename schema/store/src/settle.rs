//! Putting the log of a record on SQLite into its file, beside those who write.
//!
//! SQLite lets the deed do that which makes the log too long: behind it everybody waits for two syncs of the disk, and after
//! a copy was made, while the log could only grow, for all that was recorded meanwhile. So somebody who has nothing else
//! to do does it twice a second, while others write. What they write meanwhile is left over, so that the log would never
//! begin anew: where that is little, somebody else puts it away while nobody writes, which takes a blink. They are two, for
//! the first goes behind all others, and nobody may wait for one who does.

use crate::address::Address;
use crate::conn::Conn;
use crate::db::Store;
use crate::error::Result;
use crate::file::RecordFile;
use crate::gate::Gate;
use crate::gradually::gradually;
use diesel::sql_types::Integer;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::{Duration, SystemTime};

/// After so many pages the log is to begin anew. Where nobody settles it, the deed that made it so long sees to that.
pub(crate) const LOG_PAGES: u32 = 8_000;
/// After so many a deed does it also where somebody should: four GiB, more than a copy of a million lots lets it grow to
/// while eight pack as fast as they can.
pub(crate) const LOG_AT_MOST: u32 = 1_048_576;
/// So many pages are on the disk in a blink.
const A_BLINK: i32 = 500;
/// So often what was written meanwhile is caught up with; where that never becomes little, the next time is as good.
const PASSES: usize = 20;

/// How often what went into the file is sent to the disk: its pages lie all over it, and some hundred are there in a blink.
const EVERY: Duration = Duration::from_millis(5);

/// How long the log is, and how much of that lies in the file, in pages.
#[derive(QueryableByName)]
struct Settled {
    #[diesel(sql_type = Integer)]
    log: i32,
    #[diesel(sql_type = Integer)]
    checkpointed: i32,
}

impl Settled {
    fn is_long(&self) -> bool {
        u32::try_from(self.log).is_ok_and(|pages| pages > LOG_PAGES)
    }

    /// Does nobody read what was before most of it?
    fn is_mostly_done(&self) -> bool {
        self.checkpointed > self.log / 2
    }

    /// Did another connection put the log away just then, so that nothing is known?
    fn is_unknown(&self) -> bool {
        self.log < 0 || self.checkpointed < 0
    }

    /// How many pages went into the file since `before`; none that can be counted where the log began anew meanwhile.
    ///
    /// What was written while that was done SQLite does not count: the length of the log is that of when it began. So
    /// only a pass that moved little says that little is left.
    fn moved_since(&self, before: &Settled) -> Option<i32> {
        let moved = self.checkpointed - before.checkpointed;
        (moved >= 0 && !self.is_unknown() && !before.is_unknown()).then_some(moved)
    }
}

/// Puts the log into the file, beside those who write.
pub struct LogSettler {
    address: Address,
    log: PathBuf,
    /// The file as it was opened.
    file: Option<Arc<RecordFile>>,
    conn: Option<Conn>,
    /// The log as it was when it was last put into the file.
    seen: Option<(u64, SystemTime)>,
}

/// Puts what is left of a long log into the file, at the end while nobody writes, so that the log begins anew.
pub struct LogEnder {
    address: Address,
    gate: Option<Arc<Gate>>,
    file: Option<Arc<RecordFile>>,
    conn: Option<Conn>,
}

impl Store {
    /// Two to put the log into the file, which deeds then leave alone; PostgreSQL sees to that by itself.
    ///
    /// # Errors
    /// The record is away.
    pub fn log_settler(&self) -> Result<Option<(LogSettler, LogEnder)>> {
        let Address::Sqlite(path) = self.address() else {
            return Ok(None);
        };
        if let Some(gate) = self.gate() {
            gate.leave_log()?;
        }
        let settler = LogSettler {
            address: self.address().clone(),
            log: PathBuf::from(format!("{}-wal", path.display())),
            file: self.file(),
            conn: None,
            seen: None,
        };
        let ender = LogEnder {
            address: self.address().clone(),
            gate: self.gate(),
            file: self.file(),
            conn: None,
        };
        Ok(Some((settler, ender)))
    }
}

impl LogSettler {
    /// Puts what lies in the log into the file, as far as nobody reads what was before it; was it so long that it is to end?
    ///
    /// # Errors
    /// The record is away; the next time is as good.
    pub fn settle(&mut self) -> Result<bool> {
        let about = std::fs::metadata(&self.log).ok();
        let now = about.and_then(|about| Some((about.len(), about.modified().ok()?)));
        if now.is_none() || now == self.seen {
            return Ok(false);
        }
        // What was taken away, emptied or written over is left as it is: nothing of the log goes into it.
        if let Some(file) = &self.file {
            file.check()?;
        }
        let so_far = by(&mut self.conn, &self.address, self.file.as_deref())?;
        self.seen = now;
        Ok(so_far.is_long() && so_far.is_mostly_done())
    }
}

impl LogEnder {
    /// Puts into the file what was written meanwhile, and the rest while nobody writes. Whoever goes behind others may
    /// never catch up with them.
    ///
    /// # Errors
    /// The record is away; the next time is as good.
    pub fn end(&mut self) -> Result<()> {
        let Some(gate) = self.gate.clone() else {
            return Ok(());
        };
        let mut before = self.pass()?;
        for _ in 0..PASSES {
            let now = self.pass()?;
            match now.moved_since(&before) {
                Some(moved) if moved <= A_BLINK => {
                    return gate.between_deeds(|| self.pass().map(drop));
                }
                Some(_) => before = now,
                None => return Ok(()),
            }
        }
        Ok(())
    }

    fn pass(&mut self) -> Result<Settled> {
        by(&mut self.conn, &self.address, self.file.as_deref())
    }
}

/// The same by a connection that is kept as long as all is well. SQLite waits for the disk once, at the end: of a long log
/// that is half a gigabyte, and a deed would wait behind it.
fn by(kept: &mut Option<Conn>, address: &Address, file: Option<&RecordFile>) -> Result<Settled> {
    let mut conn = match kept.take() {
        Some(conn) => conn,
        None => Conn::open(address)?,
    };
    let send = || file.map_or(Ok(()), RecordFile::send);
    let so_far = gradually(EVERY, send, || settled(&mut conn))?;
    *kept = Some(conn);
    Ok(so_far)
}

/// Puts into the file what can be, and waits for nobody.
fn settled(conn: &mut Conn) -> Result<Settled> {
    let sql = "PRAGMA wal_checkpoint(PASSIVE)";
    Ok(crate::on_each!(conn, c => sql_query(sql).get_result(c)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use diesel::connection::SimpleConnection;
    use std::path::Path;

    fn record(name: &str) -> (PathBuf, Store) {
        let name = format!("gambrel-log-{name}-{}", std::process::id());
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir_all(&folder).unwrap();
        let path = folder.join("record.db");
        let store = Store::open(&Address::Sqlite(path), true, 2).unwrap();
        (folder, store)
    }

    fn write(store: &Store, sql: &str) {
        let write = |tx: &mut crate::db::Tx<'_>| Ok::<_, crate::Error>(tx.conn.batch_execute(sql)?);
        store.write(write).unwrap();
    }

    fn changed(path: &Path) -> SystemTime {
        std::fs::metadata(path).unwrap().modified().unwrap()
    }

    #[test]
    fn what_lies_in_the_log_goes_into_the_file() {
        let (folder, store) = record("into");
        let path = folder.join("record.db");
        let (mut settler, _) = store.log_settler().unwrap().unwrap();
        write(&store, "UPDATE counters SET next = next + 1 WHERE id = 1");
        let before = changed(&path);
        std::thread::sleep(std::time::Duration::from_millis(20));
        settler.settle().unwrap();
        assert_ne!(changed(&path), before);
        let left = store.look(settled).unwrap();
        assert_eq!(left.log, left.checkpointed);
        drop((store, settler));
        std::fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn only_a_pass_that_moved_little_says_that_little_is_left() {
        let of = |log, checkpointed| Settled { log, checkpointed };
        assert_eq!(of(900, 900).moved_since(&of(300, 300)), Some(600));
        assert_eq!(of(900, 900).moved_since(&of(900, 900)), Some(0));
        assert_eq!(of(40, 40).moved_since(&of(900, 900)), None, "it began anew");
        assert_eq!(of(-1, -1).moved_since(&of(0, 0)), None, "another is at it");
        assert_eq!(of(900, 900).moved_since(&of(-1, -1)), None);
    }

    #[test]
    fn a_long_log_is_left_to_the_settler_and_begins_anew() {
        let (folder, store) = record("anew");
        let (mut settler, mut ender) = store.log_settler().unwrap().unwrap();
        settler.settle().unwrap();
        let before = changed(&folder.join("record.db"));
        std::thread::sleep(std::time::Duration::from_millis(20));
        let pages = LOG_PAGES + 100;
        let bytes = u64::from(pages) * 4_096;
        write(
            &store,
            &format!("CREATE TABLE big AS SELECT zeroblob({bytes}) AS of_it"),
        );
        assert_eq!(
            changed(&folder.join("record.db")),
            before,
            "no deed puts it away"
        );
        assert!(settler.settle().unwrap(), "it is time");
        ender.end().unwrap();
        write(&store, "UPDATE counters SET next = next + 1 WHERE id = 1");
        let left = store.look(settled).unwrap();
        assert!(left.log < 100, "{} pages of log", left.log);
        drop((store, settler, ender));
        std::fs::remove_dir_all(folder).unwrap();
    }
}
