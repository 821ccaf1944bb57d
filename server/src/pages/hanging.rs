//! What hangs and can be broken down, for whoever comes to the bench.

use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use crate::read::brief::briefs;
use crate::read::names::Names;
use domain::words::ProductKind;
use store::{Conn, list_lots};

/// The most of them that are shown.
const MOST: i64 = 12;

/// Each: where it is broken down, what it is, how much of it there is and where.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn lots(
    app: &Caller<'_>,
    conn: &mut Conn,
    names: &Names,
) -> Result<Vec<(String, String, String)>> {
    let words = Words::of(names);
    let standing = app.standing(conn)?;
    let products = standing.lists.products.values();
    let carcasses = products.filter(|of| of.kind == ProductKind::Carcass);
    let codes: Vec<&str> = carcasses.map(|of| of.code.as_str()).collect();
    let rows = list_lots::latest_of(conn, &codes, MOST)?;
    let told = briefs(app.app(), conn, &rows)?.into_iter().map(|lot| {
        let place = names.placed(&lot.places);
        let more = [
            Some(lot.code.shown()),
            Some(words.grams(lot.on_hand)),
            place,
        ];
        let more: Vec<String> = more.into_iter().flatten().collect();
        (
            format!("/lots/{}/break-down", lot.code),
            names.product(&lot.product),
            more.join(", "),
        )
    });
    Ok(told.collect())
}
