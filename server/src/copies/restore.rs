//! `gambrel restore`: a record of a copy, where there is none.

use super::key::Key;
use super::name::UNPROVEN;
use super::prove::{SIDE_BY_SIDE, opened, prove};
use super::seal::{self, Sum};
use super::{Trouble, gently, place};
use crate::check;
use crate::config::RestoreArgs;
use crate::lease;
use chrono::{DateTime, Utc};
use std::fs;
use std::path::{Path, PathBuf};
use store::chain::Anchor;
use store::record_lease::RESTORED;
use store::{Address, Conn, Store};

/// Makes a record of a copy where there is none, and moves every running number on; what to tell. A copy that is the
/// same to the last byte as when it was proven is proven; another is proven whole, and so is what comes of it.
///
/// # Errors
/// In words: the copy is not sound or under lock with another key, or a record is there already. Nothing is kept then.
pub fn restore(args: &RestoreArgs, now: DateTime<Utc>) -> Result<String, String> {
    let target = args.database.resolve(true)?;
    if let Address::Sqlite(path) = &target.address {
        refuse_what_is_there(path)?;
    }
    let key = args.key.as_deref().map(Key::read).transpose()?;
    let says = |trouble: Trouble| trouble.says;
    let open = opened(&args.from, key.as_ref(), &target.address).map_err(says)?;
    let sealed = open.sealed();
    // What was proven when it was made, and is the same to the last byte, is proven.
    let is_known = (sealed.is_some() || open.was_locked()) && !args.prove && is_of_now(&open.path)?;
    let proven = match is_known {
        true => None,
        false => Some(prove(&open.path, SIDE_BY_SIDE).map_err(says)?),
    };
    let (times, is_as_it_was) = match &target.address {
        Address::Sqlite(path) => (to_file(&open.path, sealed, path, now)?, is_known),
        // Row by row into another engine: what comes of it is proven anew.
        Address::Postgres(_) => (to_server(&open.path, sealed, &target.address, now)?, false),
    };
    let store = Store::open(&target.address, false, 2).map_err(|error| error.to_string())?;
    if !is_as_it_was {
        let made = check::proven(&store).map_err(|error| error.to_string())?;
        let copied = match &proven {
            Some(proven) => proven.anchor.clone(),
            None => end_of(&open.path)?,
        };
        if made.anchor != copied || !made.findings.is_empty() {
            return Err("what was restored is not what was copied: do not work with it".into());
        }
    }
    // Its lots and packs were counted when it was proven: to count them again takes half as long as to copy them.
    let (deeds, anchor) = store
        .look(|conn| Ok((store::copies::deeds(conn)?, store::chain::anchor(conn)?)))
        .map_err(|error: store::Error| error.to_string())?;
    let anchor = anchor.map_or(String::new(), |anchor| format!("\nanchor {anchor}"));
    Ok(format!(
        "restored {deeds} deeds{anchor}\nEvery running number was moved on (restored {times} times): no code that was printed since the copy is given out again.\nThe record has a new lease, in {}. If the one that was copied is still worked in, put it away: they are one record no more.",
        store::record_lease::place(&store),
    ))
}

/// Was a copy made by this version? An earlier one is refused by whoever proves it.
fn is_of_now(copy: &Path) -> Result<bool, String> {
    let copy = Store::to_read(&Address::Sqlite(copy.to_owned()), 1);
    Ok(copy.map_err(|error| error.to_string())?.is_some())
}

/// The end of the chain of a copy.
fn end_of(copy: &Path) -> Result<Option<Anchor>, String> {
    let says = |error: store::Error| error.to_string();
    let copy = Store::to_read(&Address::Sqlite(copy.to_owned()), 1).map_err(says)?;
    let copy = copy.ok_or(EARLIER)?;
    copy.look(store::chain::anchor).map_err(says)
}

/// What is said of a copy that cannot be carried over.
const EARLIER: &str = "the copy was made by an earlier version. `gambrel check` brings it up to this one; keep the original, and restore then.";

/// Refuses a copy whose bytes are not those that were sealed.
fn refuse_other(copy: &Path, sealed: Option<Sum>, found: Sum) -> Result<(), String> {
    match sealed {
        Some(sealed) if sealed != found => Err(format!(
            "{} was changed or cut short since it was proven: it is no copy any more. Take another one.",
            copy.display()
        )),
        _ => Ok(()),
    }
}

/// Neither a record nor what one left behind: the database would take that for its own.
fn refuse_what_is_there(path: &Path) -> Result<(), String> {
    if path.exists() {
        return Err(format!(
            "{} Move it away, or name another with --database.",
            place::is_there(path)
        ));
    }
    match place::beside(path).iter().find(|path| path.exists()) {
        Some(left) => Err(format!(
            "{} is what another record left behind: the one that is restored would take it for its own. Move it to where that record is.",
            left.display()
        )),
        None => Ok(()),
    }
}

/// A file is made whole under another name, and gets its own when its numbers are moved on and its lease is taken.
/// Where the copy has a seal, its bytes are held against that on the way.
pub(super) fn to_file(
    from: &Path,
    sealed: Option<Sum>,
    path: &Path,
    now: DateTime<Utc>,
) -> Result<u32, String> {
    let beside = PathBuf::from(format!("{}{UNPROVEN}", path.display()));
    // What a restore left that was cut short.
    place::cleared(&beside)?;
    let moved = (|| {
        let found = gently::settling(&beside, || seal::copied(from, &beside))?;
        refuse_other(from, sealed, found)?;
        let says = |error: store::Error| error.to_string();
        let store = Store::open(&Address::Sqlite(beside.clone()), false, 1).map_err(says)?;
        // It is the same file under its later name.
        let medium = store::record_lease::medium_of(&beside);
        let taken = lease::Taken::new(RESTORED, medium, shown(path), now)?;
        let done = store.write(|tx| {
            taken.write(tx)?;
            store::copies::jump_ahead(tx)
        });
        let times = done.map_err(says)?;
        drop(store);
        store::copies::as_one_file(&beside).map_err(says)?;
        place::settled(&beside, path)?;
        Ok(times)
    })();
    if moved.is_err() {
        let _ = place::cleared(&beside);
    }
    moved
}

/// A path as it will be known once the file is there.
fn shown(path: &Path) -> String {
    let folder = path
        .parent()
        .and_then(|folder| match folder.as_os_str().is_empty() {
            true => std::env::current_dir().ok(),
            false => fs::canonicalize(folder).ok(),
        });
    let whole = folder
        .zip(path.file_name())
        .map(|(folder, name)| folder.join(name));
    whole
        .unwrap_or_else(|| path.to_owned())
        .display()
        .to_string()
}

/// On a server everything is carried over in one transaction.
fn to_server(
    from: &Path,
    sealed: Option<Sum>,
    to: &Address,
    now: DateTime<Utc>,
) -> Result<u32, String> {
    let says = |error: store::Error| error.to_string();
    if sealed.is_some() {
        refuse_other(from, sealed, seal::sum(from)?)?;
    }
    let copy = Store::to_read(&Address::Sqlite(from.to_owned()), 1).map_err(says)?;
    let copy = copy.ok_or(EARLIER)?;
    let store = Store::open(to, false, 1).map_err(says)?;
    let medium = store::record_lease::medium(&store).map_err(says)?;
    let taken = lease::Taken::new(RESTORED, medium, store::record_lease::place(&store), now)?;
    let done = copy.read(|from: &mut Conn| {
        store.write(|tx| {
            store::carry::make_room(tx.conn)?;
            store::carry::over(from, tx.conn)?;
            taken.write(tx)?;
            store::copies::jump_ahead(tx)
        })
    });
    done.map_err(says)
}
