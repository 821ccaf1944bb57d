//! `gambrel backup`: a copy of the record in a folder, proven, perhaps under lock; those that are too old are put away.

use super::keep::Keeping;
use super::key::Key;
use super::prove::prove;
use super::{Done, FOLDER, KEY, RECORD, Trouble, UNSOUND, gently, lock, name, place, seal};
use crate::check::Proven;
use crate::config::BackupArgs;
use crate::given::why;
use chrono::{DateTime, Utc};
use std::fs;
use std::path::{Path, PathBuf};
use store::copied::{COPY, CopyRow};
use store::{Address, Store};

/// A copy that was made.
pub struct Made {
    /// The file.
    pub path: PathBuf,
    /// What is proven of it.
    pub proven: Proven,
    /// What was put away for it.
    pub gone: Vec<PathBuf>,
}

/// Makes a copy of the record in a folder, and puts away those that are too old; what to tell.
///
/// # Errors
/// In words: the record cannot be read, the folder cannot be written, or the copy is not sound. Nothing is put away
/// then.
pub fn backup(args: &BackupArgs, now: DateTime<Utc>) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let key = args.key.as_deref().map(Key::read).transpose()?;
    let store = Store::open(&place.address, false, 2).map_err(|error| error.to_string())?;
    let made = make(&store, &args.to, key.as_ref(), &args.keeping, now);
    let made = made.map_err(|trouble| trouble.says)?;
    let proven = made.proven;
    let under = match &key {
        Some(key) => format!(", under lock with the {key:?}"),
        None => String::new(),
    };
    let mut told = vec![format!(
        "{} is a copy of {}{under}",
        made.path.display(),
        proven.counted()
    )];
    told.extend(proven.anchor.map(|anchor| format!("anchor {anchor}")));
    told.push(format!("digest {}", proven.digest));
    let gone = made.gone.iter();
    told.extend(gone.map(|path| format!("{} was put away", path.display())));
    Ok(told.join("\n"))
}

/// Makes a copy and keeps what came of it beside the record.
///
/// # Errors
/// There is no copy. Nothing was put away then.
pub fn make(
    store: &Store,
    folder: &Path,
    key: Option<&Key>,
    keeping: &Keeping,
    now: DateTime<Utc>,
) -> Result<Made, Trouble> {
    let done = Done::begin(COPY, now);
    let path = folder.join(name::of(now, key.is_some()));
    let made = gently::behind_others(|| one(store, folder, &path, key, now));
    let made = made.and_then(|proven| {
        let gone = put_away(folder, keeping, now)?;
        Ok(Made {
            path: path.clone(),
            proven,
            gone,
        })
    });
    let row = CopyRow {
        name: path.display().to_string(),
        ..CopyRow::default()
    };
    let row = match &made {
        Ok(made) => CopyRow {
            bytes: length(&path),
            deeds: i64::try_from(made.proven.counts.0).unwrap_or(i64::MAX),
            anchor: made.proven.anchor.as_ref().map(ToString::to_string),
            ..row
        },
        Err(trouble) => CopyRow {
            trouble: Some(trouble.sort.to_owned()),
            says: Some(trouble.says.clone()),
            ..row
        },
    };
    done.keep(store, row);
    made
}

/// How long a file is.
pub fn length(path: &Path) -> i64 {
    let about = fs::metadata(path);
    about.map_or(0, |about| i64::try_from(about.len()).unwrap_or(i64::MAX))
}

/// One copy under its name: until then nothing has the name of a copy.
fn one(
    store: &Store,
    folder: &Path,
    path: &Path,
    key: Option<&Key>,
    now: DateTime<Utc>,
) -> Result<Proven, Trouble> {
    let in_folder = |says: String| Trouble::new(FOLDER, says);
    fs::create_dir_all(folder).map_err(|error| {
        in_folder(format!(
            "{} cannot be made: {}",
            folder.display(),
            why(&error)
        ))
    })?;
    name::sweep(folder, now);
    if let Address::Sqlite(record) = store.address() {
        let _ = record.parent().map(|beside| name::sweep(beside, now));
    }
    if path.exists() {
        return Err(in_folder(place::is_there(path)));
    }
    let unproven = folder.join(name::unproven(now));
    let made = match key {
        // Sealed before it has its name: the seal is of what was proven.
        None => copied(store, &unproven).and_then(|proven| {
            let sum = seal::sum(&unproven).and_then(|sum| seal::put(path, &sum));
            sum.map(|()| proven).map_err(in_folder)
        }),
        // Nothing of the record lies open in the folder, not even for a while.
        Some(key) => {
            let room = name::workroom(store.address()).map_err(in_folder)?;
            let (plain, back) = (room.path().join("copy.db"), room.path().join("back.db"));
            copied(store, &plain).and_then(|proven| {
                gently::settling(&unproven, || lock::lock(&plain, &unproven, key))
                    .map_err(in_folder)?;
                let back = back.as_path();
                let same = gently::settling(back, || lock::unlock(&unproven, back, key))
                    .and_then(|()| same(&plain, back));
                same.map_err(|says| Trouble::new(KEY, says))?;
                Ok(proven)
            })
        }
    };
    let settled = made.and_then(|proven| {
        place::settled(&unproven, path)
            .map(|()| proven)
            .map_err(in_folder)
    });
    if settled.is_err() {
        let _ = place::cleared(&unproven);
        if !path.exists() {
            let _ = fs::remove_file(seal::of(path));
        }
    }
    settled
}

fn copied(store: &Store, path: &Path) -> Result<Proven, Trouble> {
    let written = gently::settling(path, || store::copies::write(store, path));
    written.map_err(|error| {
        let sort = match &error {
            store::Error::Full(_) | store::Error::Disk(_) => FOLDER,
            store::Error::Damaged(_) | store::Error::Broken(_) => UNSOUND,
            _ => RECORD,
        };
        Trouble::new(sort, error)
    })?;
    prove(path, gently::halves_at_once())
}

/// Refuses two files that are not the same to the last byte.
fn same(one: &Path, other: &Path) -> Result<(), String> {
    use std::io::{BufRead, BufReader};
    let open = |path: &Path| {
        let file = fs::File::open(path);
        let file = file.map_err(|error| format!("{}: {}", path.display(), why(&error)))?;
        Ok::<_, String>(BufReader::with_capacity(1 << 16, file))
    };
    let (mut one, mut other) = (open(one)?, open(other)?);
    loop {
        let read = |error: std::io::Error| why(&error);
        let (here, there) = (
            one.fill_buf().map_err(read)?,
            other.fill_buf().map_err(read)?,
        );
        let length = here.len().min(there.len());
        if here[..length] != there[..length] || (length == 0 && here.len() != there.len()) {
            return Err("what the lock gives back is not what was locked".into());
        }
        if length == 0 {
            return Ok(());
        }
        one.consume(length);
        other.consume(length);
    }
}

/// Puts away copies that are too many or too old; never the newest.
fn put_away(folder: &Path, keeping: &Keeping, now: DateTime<Utc>) -> Result<Vec<PathBuf>, Trouble> {
    let in_folder = |says: String| Trouble::new(FOLDER, says);
    let copies = name::in_folder(folder).map_err(in_folder)?;
    let at: Vec<_> = copies.iter().map(|copy| copy.at).collect();
    let mut gone = Vec::new();
    for nth in keeping.too_old(&at, now) {
        let path = &copies[nth].path;
        fs::remove_file(path)
            .map_err(|error| in_folder(format!("{}: {}", path.display(), why(&error))))?;
        let _ = fs::remove_file(seal::of(path));
        gone.push(path.clone());
    }
    Ok(gone)
}
