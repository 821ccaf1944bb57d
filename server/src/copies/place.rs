//! Putting a file in its place: on disk before it has its name, and never over another.

use crate::given::{cannot_write, why};
use rustix::fs::{CWD, RenameFlags, renameat_with};
use rustix::io::Errno;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// Gives a file its name, once all of it is on disk: a power cut that halves it leaves none of that name.
///
/// # Errors
/// In words: something has that name already, or the disk fails.
pub fn settled(unproven: &Path, path: &Path) -> Result<(), String> {
    let file = File::open(unproven).and_then(|file| file.sync_all());
    file.map_err(|error| cannot_write(path, &error))?;
    match renameat_with(CWD, unproven, CWD, path, RenameFlags::NOREPLACE) {
        Ok(()) => {}
        Err(Errno::EXIST) => return Err(is_there(path)),
        // Not every disk can do it at once.
        Err(_) if !path.exists() => {
            fs::rename(unproven, path).map_err(|error| cannot_write(path, &error))?;
        }
        Err(_) => return Err(is_there(path)),
    }
    // Its name, too; not every system has folders that can be opened.
    let _ = path
        .parent()
        .map(|folder| File::open(folder).and_then(|folder| folder.sync_all()));
    Ok(())
}

/// What is said where nothing is overwritten.
pub fn is_there(path: &Path) -> String {
    format!(
        "{} is there already; nothing was overwritten.",
        path.display()
    )
}

/// The files that the database keeps beside one of its own.
pub fn beside(path: &Path) -> [PathBuf; 3] {
    ["-wal", "-shm", "-journal"].map(|ending| PathBuf::from(format!("{}{ending}", path.display())))
}

/// Takes a file away that was not finished, with what lies beside it. What lay beside it would be taken for a part of
/// the next one.
///
/// # Errors
/// In words: it is there and cannot be removed.
pub fn cleared(path: &Path) -> Result<(), String> {
    let all = beside(path).into_iter().chain([path.to_owned()]);
    for path in all.filter(|path| path.exists()) {
        fs::remove_file(&path).map_err(|error| format!("{}: {}", path.display(), why(&error)))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_is_taken_stays_what_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let path = |name: &str| folder.path().join(name);
        fs::write(path("new"), "new").unwrap();
        fs::write(path("old"), "old").unwrap();
        let says = settled(&path("new"), &path("old")).unwrap_err();
        assert!(says.contains("is there already"), "{says}");
        assert_eq!(fs::read_to_string(path("old")).unwrap(), "old");
        settled(&path("new"), &path("fresh")).unwrap();
        assert!(!path("new").exists() && path("fresh").exists());
        fs::write(path("fresh-wal"), "log").unwrap();
        cleared(&path("fresh")).unwrap();
        assert!(!path("fresh").exists() && !path("fresh-wal").exists());
    }
}
