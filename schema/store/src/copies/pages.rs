//! A record on SQLite, copied page by page as it is at one moment, by the engine's own means.
//!
//! As long as that takes nothing of the log goes into the file, and all that is recorded meanwhile has to go into it at
//! once afterwards. So it is to be over soon: pages are copied as they lie, ten times as fast as all rows are written anew.

use crate::error::{Error, Result, by_message};
use crate::file::RecordFile;
use rusqlite::backup::{Backup, StepResult};
use rusqlite::{Connection, OpenFlags};
use std::path::Path;
use std::thread;
use std::time::Duration;

/// So many pages at once: a quarter of a megabyte.
const AT_ONCE: i32 = 64;
/// And so long the disk and the processor are left to those who write meanwhile, before the next ones.
const BREATH: Duration = Duration::from_millis(1);
/// How long another program that has the record to itself is waited for.
const PATIENCE: Duration = Duration::from_secs(10);

/// Copies the record at `from`, opened as `file`, into a new file, while others go on writing. What is copied has no log.
///
/// # Errors
/// The file cannot be made or is full; the record is away, or another one in its place.
pub(super) fn copy(from: &Path, file: Option<&RecordFile>, to: &Path) -> Result<()> {
    // Opened by its name: it must be the one that is worked in.
    let is_ours = || file.map_or(Ok(()), RecordFile::check);
    is_ours()?;
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let record = Connection::open_with_flags(from, flags)?;
    record.busy_timeout(PATIENCE)?;
    // From the first read on it sees one moment, whatever is written.
    record.execute_batch("BEGIN")?;
    record.query_row("SELECT COUNT(*) FROM sqlite_master", [], |row| {
        row.get::<_, i64>(0)
    })?;
    is_ours()?;
    let mut copy = Connection::open(to)?;
    // Cut short it is thrown away, and whoever gives it its name waits for the disk.
    copy.execute_batch("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF")?;
    let steps = Backup::new(&record, &mut copy)?;
    loop {
        match steps.step(AT_ONCE)? {
            StepResult::Done => return Ok(()),
            StepResult::More => thread::sleep(BREATH),
            _ => return Err(Error::Locked(format!("{} is in use", from.display()))),
        }
    }
}

impl From<rusqlite::Error> for Error {
    fn from(error: rusqlite::Error) -> Error {
        let text = error.to_string();
        by_message(&text, text.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Address, Store};

    #[test]
    fn what_lies_in_the_place_of_a_record_is_not_copied() {
        let name = format!("gambrel-pages-{}", std::process::id());
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir_all(&folder).unwrap();
        let (path, copy) = (folder.join("record.db"), folder.join("copy.db"));
        let record = || Store::open(&Address::Sqlite(path.clone()), true, 1).unwrap();
        let ours = record();
        crate::copies::write(&ours, &copy).unwrap();
        std::fs::remove_file(&copy).unwrap();
        std::fs::rename(&path, folder.join("away.db")).unwrap();
        let _other = record();
        let refused = crate::copies::write(&ours, &copy).unwrap_err();
        assert!(matches!(refused, Error::Gone(_)), "{refused}");
        assert!(!copy.exists());
        std::fs::remove_dir_all(folder).unwrap();
    }
}
