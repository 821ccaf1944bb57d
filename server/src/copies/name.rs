//! What copies are called, and which there are in a folder.

use super::seal;
use crate::given::why;
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use std::fs;
use std::path::{Path, PathBuf};

/// What the names of copies begin with.
const NAMED: &str = "gambrel-";
/// What they end in.
const ENDING: &str = ".db";
/// What they end in that are under lock.
const LOCKED: &str = ".db.locked";
/// What a file has in its name that is not finished and proven: it is no copy.
pub const UNPROVEN: &str = ".unproven";
/// How the moment of a copy stands in its name.
const STAMP: &str = "%Y%m%dT%H%M%SZ";

/// A copy, as its name tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// When it was made.
    pub at: DateTime<Utc>,
    /// Where it is.
    pub path: PathBuf,
}

/// The name of a copy that is made now.
pub fn of(now: DateTime<Utc>, locked: bool) -> String {
    let ending = if locked { LOCKED } else { ENDING };
    format!("{NAMED}{}{ending}", now.format(STAMP))
}

/// The name that it has until it is proven.
pub fn unproven(now: DateTime<Utc>) -> String {
    format!(
        "{NAMED}{}-{}{UNPROVEN}",
        now.timestamp(),
        std::process::id()
    )
}

/// When the copy of that name was made; none where it is no name of a copy.
fn read(name: &str) -> Option<DateTime<Utc>> {
    let stamp = name.strip_prefix(NAMED)?;
    let stamp = stamp
        .strip_suffix(LOCKED)
        .or_else(|| stamp.strip_suffix(ENDING))?;
    let at = NaiveDateTime::parse_from_str(stamp, STAMP).ok()?;
    Some(at.and_utc())
}

/// The copies in a folder, the newest first.
///
/// # Errors
/// In words: the folder cannot be read.
pub fn in_folder(folder: &Path) -> Result<Vec<Named>, String> {
    let cannot = |error: std::io::Error| format!("{}: {}", folder.display(), why(&error));
    let mut copies = Vec::new();
    for entry in fs::read_dir(folder).map_err(cannot)? {
        let path = entry.map_err(cannot)?.path();
        let at = path.file_name().and_then(|name| read(name.to_str()?));
        copies.extend(at.map(|at| Named { at, path }));
    }
    copies.sort_unstable_by_key(|copy| std::cmp::Reverse(copy.at));
    Ok(copies)
}

/// Takes away what a copy left that was cut short by a kill or a power cut: unproven, and a day old.
pub fn sweep(folder: &Path, now: DateTime<Utc>) {
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    for entry in entries.flatten() {
        let name = entry.file_name();
        let is_ours = name.to_str().is_some_and(|name| {
            let of = name.strip_suffix(seal::ENDING);
            let has_lost_its_copy = of.is_some_and(|of| !folder.join(of).exists());
            name.starts_with(NAMED) && (name.contains(UNPROVEN) || has_lost_its_copy)
        });
        let written = entry.metadata().and_then(|about| about.modified());
        let is_old = written.is_ok_and(|at| now - DateTime::<Utc>::from(at) > TimeDelta::days(1));
        if is_ours && is_old {
            let path = entry.path();
            let _ = fs::remove_file(&path).or_else(|_| fs::remove_dir_all(&path));
        }
    }
}

/// A folder for work that nobody else may look into and that goes with the value: beside the record where it is a file.
///
/// # Errors
/// In words: it cannot be made.
pub fn workroom(record: &store::Address) -> Result<tempfile::TempDir, String> {
    let beside = match record {
        store::Address::Sqlite(path) => path.parent().filter(|folder| folder.is_dir()),
        store::Address::Postgres(_) => None,
    };
    let folder = beside.map_or_else(std::env::temp_dir, Path::to_owned);
    let ending = format!("{UNPROVEN}-room");
    let mut builder = tempfile::Builder::new();
    let made = builder.prefix(NAMED).suffix(&ending).tempdir_in(&folder);
    made.map_err(|error| format!("{}: {}", folder.display(), why(&error)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_tells_when_and_nothing_else_is_taken_for_a_copy() {
        let now: DateTime<Utc> = "2026-06-26T10:00:07Z".parse().unwrap();
        for locked in [false, true] {
            assert_eq!(read(&of(now, locked)), Some(now));
        }
        for other in [
            "gambrel-notes.db",
            "other.db",
            "gambrel-20260626T100007Z.db-journal",
            "gambrel-20260626T100007Z.unproven",
            "gambrel-20260631T100007Z.db",
            "gambrel-20260626T100007Z.db.sha256",
        ] {
            assert_eq!(read(other), None, "{other}");
        }
        assert_eq!(read(&unproven(now)), None);
    }

    #[test]
    fn what_was_cut_short_is_taken_away_a_day_later() {
        let folder = tempfile::tempdir().unwrap();
        let now: DateTime<Utc> = "2026-06-26T10:00:07Z".parse().unwrap();
        let left = folder.path().join(unproven(now));
        let kept = folder.path().join(of(now, false));
        fs::write(&left, "").unwrap();
        fs::write(&kept, "").unwrap();
        let written = DateTime::<Utc>::from(fs::metadata(&left).unwrap().modified().unwrap());
        sweep(folder.path(), written + TimeDelta::hours(23));
        assert!(left.exists());
        sweep(folder.path(), written + TimeDelta::hours(25));
        assert!(!left.exists() && kept.exists());
    }
}
