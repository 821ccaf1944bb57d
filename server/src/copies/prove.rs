//! Proving a copy, and opening one that is under lock.

use super::key::Key;
use super::seal::{self, Sum};
use super::{KEY, Trouble, UNSOUND, lock, name, place};
use crate::check::{self, Proven};
use std::path::{Path, PathBuf};
use store::{Address, Store};
use tempfile::TempDir;

/// A record is proven in two halves: both at once, where somebody waits for it.
pub const SIDE_BY_SIDE: u32 = 2;

/// Proves a file without changing it, one or both of its halves at once.
pub fn prove(path: &Path, at_once: u32) -> Result<Proven, Trouble> {
    let unsound = |says: String| Trouble::new(UNSOUND, says);
    let address = Address::Sqlite(path.to_owned());
    let store = Store::to_read(&address, at_once).map_err(|error| unsound(error.to_string()))?;
    let store = store.ok_or_else(|| {
        unsound(format!("{} was made by an earlier version. `gambrel check` brings it up to this one; keep the original, and restore then.", path.display()))
    })?;
    let proven = check::proven(&store).map_err(|error| unsound(error.to_string()))?;
    match proven.findings.first() {
        None => Ok(proven),
        Some(first) => Err(unsound(format!(
            "the copy is not sound: {}: {}, and {} findings more. `gambrel check` lists them.",
            first.about,
            first.says,
            proven.findings.len() - 1
        ))),
    }
}

/// A copy that lies open, with the room that it lies in where it was under lock.
pub struct Opened {
    /// The file.
    pub path: PathBuf,
    room: Option<TempDir>,
}

/// Opens a copy, with the key if it is under lock; `record` says beside what there is room.
pub fn opened(path: &Path, key: Option<&Key>, record: &Address) -> Result<Opened, Trouble> {
    if !lock::is_locked(path) {
        return Ok(Opened {
            path: path.to_owned(),
            room: None,
        });
    }
    let key = key.ok_or_else(|| {
        Trouble::new(KEY, format!("{} is under lock: give the file that holds its key with --key. Without the key nobody can open it.", path.display()))
    })?;
    let wrong = |says: String| Trouble::new(KEY, says);
    let room = name::workroom(record).map_err(wrong)?;
    let open = room.path().join("copy.db");
    lock::unlock(path, &open, key).map_err(wrong)?;
    Ok(Opened {
        path: open,
        room: Some(room),
    })
}

impl Opened {
    /// Was it under lock? Then it is what was locked, to the last byte.
    pub fn was_locked(&self) -> bool {
        self.room.is_some()
    }

    /// The seal of one that lay open, if it has one.
    pub fn sealed(&self) -> Option<Sum> {
        match self.was_locked() {
            true => None,
            false => seal::read(&self.path),
        }
    }
}

impl Drop for Opened {
    /// The database leaves nothing beside a copy that it has read; should it, that goes too.
    fn drop(&mut self) {
        if self.room.is_some() {
            let _ = place::cleared(&self.path);
        }
    }
}
