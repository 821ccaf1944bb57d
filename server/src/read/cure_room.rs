//! The cure room: every piece on hand.

use super::LoadedFamily;
use crate::app::App;
use crate::error::Result;
use domain::family::{Lists, LyingView, PieceView, lying, room};
use domain::lot::LotId;
use domain::moment::day_of;
use domain::product::Product;
use store::family::{Extent, WalkStart};
use store::{Conn, list_lots};

/// The most pieces.
const MOST: i64 = 2_000;

/// The lots on hand that are pieces: whose product is released.
///
/// # Errors
/// The database is away.
pub fn hanging(conn: &mut Conn, lists: &Lists) -> Result<Vec<i32>> {
    on_hand(conn, lists, Product::is_hung)
}

/// The lots on hand that may want a hand in the cure room: whose product is released, or lies in its cure by a
/// calendar.
///
/// # Errors
/// The database is away.
pub fn at_work(conn: &mut Conn, lists: &Lists) -> Result<Vec<i32>> {
    on_hand(conn, lists, |product| {
        product.is_hung() || product.cured.lies.is_some()
    })
}

fn on_hand(conn: &mut Conn, lists: &Lists, is_one: impl Fn(&Product) -> bool) -> Result<Vec<i32>> {
    let listed = lists.products.values();
    let products: Vec<&str> = listed
        .filter(|product| is_one(product))
        .map(|product| product.code.as_str())
        .collect();
    Ok(list_lots::on_hand_of(conn, &products, MOST)?)
}

/// The products that lie in a cure or hang.
fn cured(lists: &Lists) -> Vec<&str> {
    let all = lists.products.values();
    let lies = |product: &Product| product.raw && product.cured.cure.is_some();
    all.filter(|product| product.is_hung() || lies(product))
        .map(|product| product.code.as_str())
        .collect()
}

/// The pieces on hand, and the family that they are worked out from.
pub struct Room<'a> {
    /// The family.
    pub reading: LoadedFamily<'a>,
    /// The pieces, the longest in salt first.
    pub pieces: Vec<PieceView>,
    /// What lies in its cure and is not hung afterwards: it is smoked or cooked.
    pub lies: Vec<LotId>,
    /// Those of them that have a calendar.
    pub lying: Vec<LyingView>,
}

/// Every piece on hand.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read<'a>(app: &'a App, conn: &mut Conn) -> Result<Room<'a>> {
    let standing = app.standing(conn)?;
    let today = day_of(app.now(), standing.kitchen.zone);
    let lots = list_lots::on_hand_of(conn, &cured(&standing.lists), MOST)?;
    let start = WalkStart::Keys(&lots);
    let reading = LoadedFamily::load_with(app, conn, standing.clone(), start, Extent::ANCESTORS)?;
    let rules = &app.law.trade.cure_room;
    let pieces = room(
        &reading.family,
        lots.iter().copied().map(LotId),
        standing.kitchen.zone,
        today,
        rules,
    );
    let lying = lying(
        &reading.family,
        lots.iter().copied().map(LotId),
        standing.kitchen.zone,
        today,
        rules,
    );
    let hangs = |lot: &LotId| pieces.iter().any(|piece| piece.lot == *lot);
    let lies = |lot: &LotId| {
        reading
            .family
            .get(*lot)
            .is_some_and(|of| of.lot.product.raw)
    };
    let lies = lots.iter().copied().map(LotId).filter(lies);
    let lies = lies.filter(|lot| !hangs(lot)).collect();
    Ok(Room {
        reading,
        pieces,
        lies,
        lying,
    })
}
