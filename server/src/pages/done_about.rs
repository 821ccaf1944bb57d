//! What a deed that made nothing was about: the thing by its name and its code, or whom it told what, so that nobody
//! undoes another's.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use domain::lot::PlaceId;
use domain::lot::numbers::in_runs;
use domain::words::DeedKind;
use store::deeds::DeedRow;
use store::{Conn, corrections, incidents, lots, measurements, packs, stops};

/// The most packs whose numbers are told.
const MOST_PACKS: usize = 8;

/// The packs of the lot, the lots, or the place; nothing where it was about none.
pub fn told(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    deed: &DeedRow,
) -> Result<Option<String>> {
    if deed.kind()? == DeedKind::IncidentNote {
        let noted = incidents::act(conn, deed.id)?;
        return Ok(noted.map(|act| match act.whom {
            Some(whom) => words.colon(whom, act.text.trim_end_matches('.')),
            None => act.text.trim_end_matches('.').to_owned(),
        }));
    }
    let touched = touched(conn, deed)?;
    let mut keys: Vec<i32> = touched.iter().map(|(lot, _)| *lot).collect();
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
    let mut numbers: Vec<u32> = touched.iter().filter_map(|(_, pack)| *pack).collect();
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

/// The lots that it did something with, and the packs of them where it named some: those that it moved or read; what a
/// correction set right; what was stopped or let go.
fn touched(conn: &mut Conn, deed: &DeedRow) -> Result<Vec<(i32, Option<u32>)>> {
    let corrected = match deed.kind()? {
        DeedKind::Correct => corrections::corrected_by(conn, deed.id)?,
        _ => None,
    };
    let of = corrected.unwrap_or(deed.id);
    let whole = |lot: i32| (lot, None);
    let made = match corrected {
        Some(receipt) => lots::of_deed(conn, receipt)?,
        None => Vec::new(),
    };
    if !made.is_empty() {
        return Ok(made.into_iter().map(|lot| whole(lot.id)).collect());
    }
    let moved = packs::of_deed(conn, of)?;
    if !moved.is_empty() {
        let packs = moved.into_iter();
        return Ok(packs.map(|(lot, pack, _)| (lot, Some(pack))).collect());
    }
    let read = measurements::lots_of(conn, of)?;
    Ok(match read.is_empty() {
        true => stops::about::of_deed(conn, deed.id)?,
        false => read.into_iter().map(whole).collect(),
    })
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
