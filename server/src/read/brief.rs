//! Lots in short: for lists, and for what a deed answers.

use crate::app::App;
use crate::error::Result;
use crate::wire::Weight;
use crate::wire::answers::{LotBrief, instant};
use domain::lot::PlaceId;
use domain::product::Product;
use std::collections::HashMap;
use store::Conn;
use store::lots::LotRow;
use store::packs::{self, PackRow};

/// A lot in short.
///
/// # Errors
/// The row is damaged.
pub fn brief(
    row: &LotRow,
    product: &Product,
    use_by: Option<chrono::NaiveDate>,
    place: Option<String>,
    zone: chrono_tz::Tz,
) -> Result<LotBrief> {
    let grams = |mg| Weight(domain::grams::Grams::from_milligrams(mg));
    Ok(LotBrief {
        shown: row.code()?.shown(),
        code: row.code.clone(),
        product: product.code.clone(),
        grams: grams(row.made_mg),
        on_hand_grams: grams(row.on_hand_mg),
        use_by: use_by.map(crate::wire::Day),
        pack_count: row.pack_count.unsigned_abs(),
        place,
        made_at: instant(row.made_at, zone),
        note: row.note.clone(),
    })
}

/// Lots in short, their packs read for date and place: two statements for all of them.
///
/// # Errors
/// The database is away, or a row is damaged.
pub fn briefs(
    app: &App,
    conn: &mut Conn,
    rows: &[LotRow],
    zone: chrono_tz::Tz,
) -> Result<Vec<LotBrief>> {
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let mut left: HashMap<i32, Vec<PackRow>> = HashMap::new();
    for pack in packs::left_of_lots(conn, &keys)? {
        left.entry(pack.lot_id).or_default().push(pack);
    }
    let fullest = |packs: &[PackRow]| {
        let fullest = packs.iter().max_by_key(|pack| (pack.left_mg, -pack.number));
        fullest.map(|pack| PlaceId(pack.place_id))
    };
    let mut standing = app.standing_seen(conn)?;
    let unknown = |place: &PlaceId| standing.lists.place_code(*place).is_empty();
    if left
        .values()
        .filter_map(|packs| fullest(packs))
        .any(|place| unknown(&place))
    {
        standing = app.standing(conn)?;
    }
    let none = Vec::new();
    rows.iter()
        .map(|row| {
            let packs = left.get(&row.id).unwrap_or(&none);
            let use_by = packs.iter().filter_map(|pack| pack.use_by).min();
            let place = fullest(packs).map(|place| standing.lists.place_code(place).to_owned());
            let product = app.product(conn, row.version_id)?;
            brief(row, &product, use_by, place, zone)
        })
        .collect()
}
