//! `gambrel backup` and `gambrel restore`: copies of the whole record, proven before anybody relies on them.

use crate::check::{self, Proven};
use crate::config::{BackupArgs, RestoreArgs};
use crate::given::why;
use chrono::{DateTime, Utc};
use std::fs;
use std::path::{Path, PathBuf};
use store::{Address, Conn, Store};

/// What the names of copies begin with.
const NAMED: &str = "gambrel-";
/// What they end in.
const ENDING: &str = ".db";
/// What a copy ends in that is not finished and proven.
const UNPROVEN: &str = ".unproven";

/// Makes a copy of the record in a folder, proves it, and puts away those that are too old; what to tell.
///
/// # Errors
/// In words: the record cannot be read, the folder cannot be written, or the copy is not sound. Nothing is put away
/// then.
pub fn backup(args: &BackupArgs, now: DateTime<Utc>) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let store = Store::open(&place.address, false, 2).map_err(|error| error.to_string())?;
    fs::create_dir_all(&args.to)
        .map_err(|error| format!("{} cannot be made: {}", args.to.display(), why(&error)))?;
    let name = format!("{NAMED}{}{ENDING}", now.format("%Y%m%dT%H%M%SZ"));
    let path = args.to.join(name);
    if path.exists() {
        return Err(format!(
            "{} is there already; nothing was overwritten.",
            path.display()
        ));
    }
    let unproven = args
        .to
        .join(format!("{NAMED}{}{UNPROVEN}", now.timestamp()));
    let made = store::copies::write(&store, &unproven).map_err(|error| error.to_string());
    let proven = made.and_then(|()| prove(&unproven));
    let proven = match proven {
        Ok(proven) => proven,
        Err(says) => {
            let _ = fs::remove_file(&unproven);
            return Err(says);
        }
    };
    settled(&unproven, &path)?;
    let gone = put_away(&args.to, args.keep, args.days, now, &path)?;
    let mut told = vec![format!(
        "{} is a copy of {}",
        path.display(),
        proven.counted()
    )];
    told.extend(proven.anchor.map(|anchor| format!("anchor {anchor}")));
    told.push(format!("digest {}", proven.digest));
    told.extend(
        gone.iter()
            .map(|path| format!("{} was put away", path.display())),
    );
    Ok(told.join("\n"))
}

/// On disk, under its name: a copy that a power cut halves is none.
fn settled(unproven: &Path, path: &Path) -> Result<(), String> {
    let file = fs::File::open(unproven).and_then(|file| file.sync_all());
    file.and_then(|()| fs::rename(unproven, path))
        .map_err(|error| format!("{} cannot be written: {}", path.display(), why(&error)))?;
    // Its name, too; not every system has folders that can be opened.
    let _ = path
        .parent()
        .map(|folder| fs::File::open(folder).and_then(|folder| folder.sync_all()));
    Ok(())
}

/// Proves a copy without changing it.
fn prove(path: &Path) -> Result<Proven, String> {
    let address = Address::Sqlite(path.to_owned());
    let store = Store::to_read(&address).map_err(|error| error.to_string())?;
    let store = store.ok_or_else(|| {
        format!("{} was made by an earlier version. `gambrel check` brings it up to this one; keep the original, and restore then.", path.display())
    })?;
    let proven = check::proven(&store).map_err(|error| error.to_string())?;
    match proven.findings.first() {
        None => Ok(proven),
        Some(first) => Err(format!(
            "the copy is not sound: {}: {}, and {} findings more. `gambrel check` lists them.",
            first.about,
            first.says,
            proven.findings.len() - 1
        )),
    }
}

/// Puts away copies beyond the number that is kept, and those that are older than some days; never the newest.
fn put_away(
    folder: &Path,
    keep: Option<usize>,
    days: Option<u32>,
    now: DateTime<Utc>,
    newest: &Path,
) -> Result<Vec<PathBuf>, String> {
    let cannot = |error: std::io::Error| format!("{}: {}", folder.display(), why(&error));
    let mut copies: Vec<(String, PathBuf)> = Vec::new();
    for entry in fs::read_dir(folder).map_err(cannot)? {
        let path = entry.map_err(cannot)?.path();
        let name = path.file_name().and_then(|name| name.to_str());
        let stamp = name
            .and_then(|name| name.strip_prefix(NAMED))
            .and_then(|name| name.strip_suffix(ENDING))
            .filter(|stamp| stamp.len() == 16 && stamp.ends_with('Z'));
        if let Some(stamp) = stamp {
            copies.push((stamp.to_owned(), path.clone()));
        }
    }
    copies.sort_unstable();
    copies.reverse();
    let oldest = days.map(|days| {
        let then = now - chrono::TimeDelta::days(i64::from(days));
        then.format("%Y%m%dT%H%M%SZ").to_string()
    });
    let too_old = |nth: usize, stamp: &str| {
        keep.is_some_and(|keep| nth >= keep.max(1))
            || oldest.as_deref().is_some_and(|oldest| stamp < oldest)
    };
    let mut gone = Vec::new();
    for (nth, (stamp, path)) in copies.iter().enumerate() {
        if path != newest && too_old(nth, stamp) {
            fs::remove_file(path).map_err(cannot)?;
            gone.push(path.clone());
        }
    }
    Ok(gone)
}

/// Makes a record of a copy where there is none, proves both, and moves every running number on; what to tell.
///
/// # Errors
/// In words: the copy is not sound, or a record is there already. Nothing is kept then.
pub fn restore(args: &RestoreArgs) -> Result<String, String> {
    let place = args.database.resolve(true)?;
    let copy = prove(&args.from)?;
    let times = match &place.address {
        Address::Sqlite(path) => restore_file(&args.from, path)?,
        Address::Postgres(_) => restore_server(&args.from, &place.address)?,
    };
    let store = Store::open(&place.address, false, 1).map_err(|error| error.to_string())?;
    let now = check::proven(&store).map_err(|error| error.to_string())?;
    if now.anchor != copy.anchor || !now.findings.is_empty() {
        return Err("what was restored is not what was copied: do not work with it".into());
    }
    Ok(format!(
        "restored {}\nEvery running number was moved on (restored {times} times): no code that was printed since the copy is given out again.",
        now.counted()
    ))
}

/// A file is made whole under another name, and gets its own when its numbers are moved on.
fn restore_file(from: &Path, path: &Path) -> Result<u32, String> {
    if path.exists() {
        return Err(format!(
            "{} is there already; nothing was overwritten. Move it away, or name another with --database.",
            path.display()
        ));
    }
    let beside = PathBuf::from(format!("{}{UNPROVEN}", path.display()));
    let cannot = |error: std::io::Error| format!("{}: {}", beside.display(), why(&error));
    fs::copy(from, &beside).map_err(cannot)?;
    let mut rights = fs::metadata(&beside).map_err(cannot)?.permissions();
    #[allow(
        clippy::permissions_set_readonly_false,
        reason = "a copy may be kept read-only; its record is worked in"
    )]
    rights.set_readonly(false);
    fs::set_permissions(&beside, rights).map_err(cannot)?;
    let moved = (|| {
        let store = Store::open(&Address::Sqlite(beside.clone()), false, 1)?;
        let times = store.write(store::copies::jump_ahead)?;
        drop(store);
        store::copies::as_one_file(&beside)?;
        Ok::<u32, store::Error>(times)
    })();
    let done = moved.map_err(|error| error.to_string());
    let done = done.and_then(|times| settled(&beside, path).map(|()| times));
    if done.is_err() {
        let _ = fs::remove_file(&beside);
    }
    done
}

/// On a server everything is carried over in one transaction.
fn restore_server(from: &Path, to: &Address) -> Result<u32, String> {
    let copy = Store::to_read(&Address::Sqlite(from.to_owned()));
    let copy = copy
        .map_err(|error| error.to_string())?
        .ok_or("the copy is of an earlier version")?;
    let store = Store::open(to, false, 1).map_err(|error| error.to_string())?;
    let done = copy.read(|from: &mut Conn| {
        store.write(|tx| {
            store::carry::make_room(tx.conn)?;
            store::carry::over(from, tx.conn)?;
            store::copies::jump_ahead(tx)
        })
    });
    done.map_err(|error: store::Error| error.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_copies_that_are_too_many_or_too_old_are_put_away() {
        let folder = std::env::temp_dir().join(format!("gambrel-copies-{}", std::process::id()));
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&folder).unwrap();
        let named = |stamp: &str| folder.join(format!("{NAMED}{stamp}{ENDING}"));
        let stamps = [
            "20260601T100000Z",
            "20260620T100000Z",
            "20260625T100000Z",
            "20260626T100000Z",
        ];
        let fill = || {
            for stamp in stamps {
                fs::write(named(stamp), "").unwrap();
            }
            fs::write(folder.join("gambrel-notes.db"), "").unwrap();
            fs::write(folder.join("other.db"), "").unwrap();
        };
        let now: DateTime<Utc> = "2026-06-26T10:00:00Z".parse().unwrap();
        for (keep, days, gone) in [
            (None, None, 0),
            (Some(3), None, 1),
            (Some(0), None, 3),
            (None, Some(5), 2),
            (None, Some(0), 3),
            (Some(1), Some(90), 3),
        ] {
            fill();
            let put = put_away(&folder, keep, days, now, &named(stamps[3])).unwrap();
            assert_eq!(put.len(), gone, "{keep:?} {days:?}");
            assert!(named(stamps[3]).exists() && folder.join("gambrel-notes.db").exists());
            assert!(put.iter().all(|path| !path.exists()));
        }
        fs::remove_dir_all(folder).unwrap();
    }
}
