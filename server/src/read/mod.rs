//! Reading the record: no deed is done here.

pub mod animals;
pub mod brief;
pub mod cost;
pub mod cure_plan;
pub mod cure_room;
pub mod deed;
pub mod due;
pub mod find;
pub mod law;
pub mod lot;
pub mod names;
pub mod prints;
pub mod scan;
pub mod trace;
pub mod why;
pub mod yields;

use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::lists::standing::Standing;
use crate::named::named;
use domain::code::LotCode;
use domain::family::{Family, LotView, view};
use domain::law::Law;
use domain::lot::{Lot, LotId};
use domain::refusal::Refusal;
use std::sync::Arc;
use store::Conn;
use store::family::Extent;
use store::lots::LotRow;
use store::packs::{self, PackRow, Wanted};

/// A family of the record, with what it is told by: the kitchen, its lists, the law of its place.
pub struct Reading<'a> {
    /// The family.
    pub family: Family,
    /// The kitchen and its lists.
    pub standing: Arc<Standing>,
    /// The law of the kitchen's place.
    pub law: &'a Law,
}

impl<'a> Reading<'a> {
    /// Loads the family of some lots.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn load(
        app: &'a App,
        conn: &mut Conn,
        lots: &[i32],
        extent: Extent,
    ) -> Result<Reading<'a>> {
        let standing = app.standing(conn)?;
        Ok(Reading {
            family: store::family::load(conn, lots, extent, app)?,
            law: app.law.laws.of(standing.kitchen.entry.profile.0),
            standing,
        })
    }

    /// The kitchen.
    pub fn kitchen(&self) -> &Kitchen {
        &self.standing.kitchen
    }

    /// A lot of it as it is told, in the languages of the kitchen's labels.
    pub fn view(&self, lot: LotId) -> Option<LotView<'_>> {
        let languages = self.kitchen().languages();
        view(
            &self.family,
            lot,
            &self.standing.lists,
            self.law,
            &languages,
        )
    }
}

/// The lot that a path names, in any spelling of its code.
///
/// # Errors
/// 422 for what is no code, 404 for one never given out.
pub fn lot_named(app: &App, conn: &mut Conn, text: &str) -> Result<LotRow> {
    let kitchen = app.standing(conn)?.kitchen.clone();
    let named = named(text, "code", &app.address(&kitchen))?;
    row(conn, &named.code, "code")
}

/// The lot of a code.
///
/// # Errors
/// 404 for one never given out.
pub fn row(conn: &mut Conn, code: &LotCode, field: &str) -> Result<LotRow> {
    let row = store::lots::by_code(conn, code)?;
    Ok(row.ok_or_else(|| Refusal::never_issued(field, code))?)
}

/// The domain's lot of a row, with the packs that are wanted.
///
/// # Errors
/// The database is away, or the row is damaged.
pub fn lot_of(app: &App, conn: &mut Conn, row: LotRow, wanted: &Wanted) -> Result<Lot> {
    let product = app.product(conn, row.version_id)?;
    // Of a lot of one pack, that pack is always told of, empty or not.
    let wanted = if row.pack_count == 1 && matches!(wanted, Wanted::OnHand) {
        &Wanted::All
    } else {
        wanted
    };
    let rows = packs::of_lot(conn, row.id, wanted)?;
    let packs = rows
        .iter()
        .map(PackRow::pack)
        .collect::<store::Result<_>>()?;
    let released = product.release.is_some() && store::record::is_released(conn, row.id)?;
    Ok(row.into_lot(product, packs, released)?)
}
