//! `gambrel drill`: the newest copy is made a record in a place of its own, proven, held against the record that is
//! worked in, and thrown away. A copy that nobody has ever restored is a hope.

use super::key::Key;
use super::prove::{opened, prove};
use super::{APART, Done, FOLDER, RECORD, Trouble, UNSOUND, gently, make, name, restore};
use crate::check::{self, Proven};
use crate::config::DrillArgs;
use chrono::{DateTime, Utc};
use std::path::{Path, PathBuf};
use store::chain::Anchor;
use store::copied::{CopyRow, DRILL};
use store::{Address, Conn, Store};

/// Tries the newest copy; what to tell.
///
/// # Errors
/// In words: there is none, it cannot be opened, it is not sound, or the record does not go on from it.
pub fn run(args: &DrillArgs, now: DateTime<Utc>) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let copies = args.copies()?;
    let key = copies.key.as_deref().map(Key::read).transpose()?;
    let folder = copies
        .folder
        .ok_or("which folder are the copies in? Name it with --copies, as for `gambrel serve`")?;
    let store = Store::open(&place.address, false, 2).map_err(|error| error.to_string())?;
    let done = Done::begin(DRILL, now);
    let tried = newest(&folder).and_then(|copy| {
        let tried = gently::behind_others(|| tried(&store, &copy, key.as_ref(), now));
        tried.map_err(|trouble| (trouble, copy))
    });
    let took = done.since.elapsed().as_secs_f64();
    let row = match &tried {
        Ok(tried) => CopyRow {
            name: tried.copy.display().to_string(),
            bytes: make::length(&tried.copy),
            deeds: i64::try_from(tried.proven.counts.0).unwrap_or(i64::MAX),
            anchor: tried.proven.anchor.as_ref().map(ToString::to_string),
            ..CopyRow::default()
        },
        Err((trouble, copy)) => CopyRow {
            name: copy.display().to_string(),
            trouble: Some(trouble.sort.to_owned()),
            says: Some(trouble.says.clone()),
            ..CopyRow::default()
        },
    };
    done.keep(&store, row);
    let tried = tried.map_err(|(trouble, _)| trouble.says)?;
    let its = tried.proven.anchor.as_ref();
    let (at, end) = (its.map_or(0, |anchor| anchor.number), tried.end);
    Ok(format!(
        "{} was restored in {took:.1} s: {}. Its chain is whole, and the record goes on from its link {at} to {end}.\nWhat was restored was thrown away again.",
        tried.copy.display(),
        tried.proven.counted()
    ))
}

/// A copy that was tried and is good.
struct Tried {
    copy: PathBuf,
    proven: Proven,
    /// The last link of the record that is worked in.
    end: i32,
}

fn newest(folder: &Path) -> Result<PathBuf, (Trouble, PathBuf)> {
    let none = |says: String| (Trouble::new(FOLDER, says), folder.to_owned());
    let copies = name::in_folder(folder).map_err(none)?;
    let first = copies.into_iter().next();
    let first = first.ok_or_else(|| none(format!("there is no copy in {}", folder.display())))?;
    Ok(first.path)
}

fn tried(
    store: &Store,
    copy: &Path,
    key: Option<&Key>,
    now: DateTime<Utc>,
) -> Result<Tried, Trouble> {
    let open = opened(copy, key, store.address())?;
    let before = prove(&open.path, gently::halves_at_once())?;
    let room = name::workroom(store.address()).map_err(|says| Trouble::new(FOLDER, says))?;
    let path = room.path().join("tried.db");
    let unsound = |says: String| Trouble::new(UNSOUND, says);
    restore::to_file(&open.path, open.sealed(), &path, now).map_err(unsound)?;
    let restored = Store::open(&Address::Sqlite(path), false, gently::halves_at_once());
    let restored = restored.map_err(|error| unsound(error.to_string()))?;
    let proven = check::proven(&restored).map_err(|error| unsound(error.to_string()))?;
    if let Some(first) = proven.findings.first() {
        return Err(unsound(format!("{}: {}", first.about, first.says)));
    }
    if proven.anchor != before.anchor {
        return Err(unsound("what was restored is not what was copied".into()));
    }
    let its = restored.look(store::record_lease::identity);
    let its = its.map_err(|error| unsound(error.to_string()))?;
    let end = store
        .read(|conn| goes_on(conn, its.as_deref(), proven.anchor.as_ref()))
        .map_err(|error| Trouble::new(RECORD, error))?;
    let end = end.ok_or_else(|| {
        Trouble::new(APART, format!("{} and the record have gone different ways: another record under the same name put it there, or one of them was altered. `gambrel check` with the anchors on paper says which.", copy.display()))
    })?;
    Ok(Tried {
        copy: copy.to_owned(),
        proven,
        end,
    })
}

/// Where the record's chain ends now, if it goes on from the end of a copy of the same record.
fn goes_on(
    conn: &mut Conn,
    identity: Option<&[u8]>,
    anchor: Option<&Anchor>,
) -> store::Result<Option<i32>> {
    let ours = store::record_lease::identity(conn)?;
    let is_other = identity
        .zip(ours.as_deref())
        .is_some_and(|(its, ours)| its != ours);
    let goes = match anchor {
        Some(anchor) => store::chain::goes_through(conn, anchor)?,
        None => true,
    };
    let end = store::chain::anchor(conn)?.map_or(0, |end| end.number);
    Ok((goes && !is_other).then_some(end))
}
