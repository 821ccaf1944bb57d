//! The cure room: every piece on hand.

use super::Reading;
use crate::caller::Caller;
use crate::error::Result;
use crate::wire::answers::piece::piece_read;
use crate::wire::cure_room::CureRoomRead;
use domain::family::room;
use domain::lot::LotId;
use domain::moment::day_of;
use store::family::{Extent, Start};
use store::{Conn, list_lots};

/// The most pieces.
const MOST: i64 = 2_000;

/// The lots on hand that are pieces: whose product is released.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn hanging(app: &Caller<'_>, conn: &mut Conn) -> Result<Vec<i32>> {
    let standing = app.standing(conn)?;
    let released = standing.lists.products.values();
    let products: Vec<&str> = released
        .filter(|product| product.release.is_some())
        .map(|product| product.code.as_str())
        .collect();
    Ok(list_lots::on_hand_of(conn, &products, MOST)?)
}

/// Every piece on hand.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn) -> Result<CureRoomRead> {
    let standing = app.standing(conn)?;
    let today = day_of(app.now(), standing.kitchen.zone);
    let lots = hanging(app, conn)?;
    let start = Start::Keys(&lots);
    let reading = Reading::told_by(app.app(), conn, standing.clone(), start, Extent::ANCESTORS)?;
    let rules = &app.law.trade.cure_room;
    let pieces = room(
        &reading.family,
        lots.iter().copied().map(LotId),
        standing.kitchen.zone,
        today,
        rules,
    );
    let speech = app.speech(&standing.kitchen);
    let read = |piece| piece_read(piece, &reading.family, &app.law.trade_rows, today, &speech);
    Ok(CureRoomRead {
        pieces: pieces.iter().filter_map(read).collect(),
    })
}
