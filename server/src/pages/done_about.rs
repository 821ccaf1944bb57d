//! What a deed that made nothing was about: the thing by its name and its code, so that nobody undoes another's.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use domain::lot::PlaceId;
use domain::lot::numbers::in_runs;
use store::deeds::DeedRow;
use store::{Conn, lots, measurements, packs};

/// The most packs whose numbers are told.
const MOST_PACKS: usize = 8;

/// The packs of the lot, the lots, or the place; nothing where it was about none.
pub fn told(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    deed: &DeedRow,
) -> Result<Option<String>> {
    let touched = packs::of_deed(conn, deed.id)?;
    let mut keys: Vec<i32> = touched.iter().map(|(lot, ..)| *lot).collect();
    if keys.is_empty() {
        keys = measurements::lots_of(conn, deed.id)?;
    }
    keys.sort_unstable();
    keys.dedup();
    let Some(row) = lots::by_keys(conn, &keys)?.into_iter().next() else {
        return place(app, conn, deed);
    };
    let name = app.product(conn, row.version_id)?;
    let name = name.name(words.lang()).to_owned();
    if keys.len() > 1 {
        let lots = keys.len();
        return Ok(Some(words.say(PageSays::Things { lots, name })));
    }
    let mut numbers: Vec<u32> = touched.iter().map(|(_, pack, _)| *pack).collect();
    numbers.sort_unstable();
    numbers.dedup();
    let code = row.code()?.shown();
    let is_told = row.pack_count > 1 && (1..=MOST_PACKS).contains(&numbers.len());
    let shown = match is_told {
        true => format!("{code}/{}", in_runs(&numbers)),
        false => code,
    };
    Ok(Some(match &row.note {
        Some(tag) => format!("{tag}, {name}, {shown}"),
        None => format!("{name}, {shown}"),
    }))
}

/// The place, by its name.
fn place(app: &Caller<'_>, conn: &mut Conn, deed: &DeedRow) -> Result<Option<String>> {
    let Some(key) = deed.place_id else {
        return Ok(None);
    };
    let standing = app.standing(conn)?;
    let lists = &standing.lists;
    Ok(Some(lists.place(lists.place_code(PlaceId(key))).to_owned()))
}
