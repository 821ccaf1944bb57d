//! Lots in short: for lists, and for what a deed answers.

use crate::app::App;
use crate::error::Result;
use domain::grams::Grams;
use domain::lot::brief::{self, earliest};
use domain::lot::{Brief, Pack};
use domain::product::Product;
use std::collections::HashMap;
use store::Conn;
use store::lots::LotRow;
use store::packs;

/// A lot in short: the earliest date and the places of what is left of it are given by the caller that knows them.
///
/// # Errors
/// The row is damaged.
pub fn brief_of(
    row: &LotRow,
    product: &Product,
    use_by: Option<chrono::NaiveDate>,
    places: Vec<String>,
) -> Result<Brief> {
    Ok(Brief {
        code: row.code()?,
        product: product.code.clone(),
        made: Grams::from_milligrams(row.made_mg),
        on_hand: Grams::from_milligrams(row.on_hand_mg),
        use_by,
        pack_count: row.pack_count.unsigned_abs(),
        places,
        made_at: row.made_at.and_utc(),
        note: row.note.clone(),
    })
}

/// Lots in short, their packs read for date and place: two statements for all of them.
///
/// # Errors
/// The database is away, or a row is damaged.
pub fn briefs(app: &App, conn: &mut Conn, rows: &[LotRow]) -> Result<Vec<Brief>> {
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let mut left: HashMap<i32, Vec<Pack>> = HashMap::new();
    for row in packs::left_of_lots(conn, &keys)? {
        left.entry(row.lot_id).or_default().push(row.pack()?);
    }
    let mut standing = app.standing_seen(conn)?;
    let mut places = left.values().flat_map(|packs| brief::places(packs));
    if places.any(|place| standing.lists.place_code(place).is_empty()) {
        standing = app.standing(conn)?;
    }
    rows.iter()
        .map(|row| {
            let packs = left.get(&row.id).map_or(&[][..], Vec::as_slice);
            let places = brief::places(packs).into_iter();
            let places = places.map(|place| standing.lists.place_code(place).to_owned());
            let product = app.product(conn, row.version_id)?;
            brief_of(row, &product, earliest(packs), places.collect())
        })
        .collect()
}
