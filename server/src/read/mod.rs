//! Reading the record: no deed is done here.

pub mod animals;
pub mod ask;
pub mod brief;
pub mod cooling;
pub mod copies;
pub mod cost;
pub mod cure_plan;
pub mod cure_room;
pub mod deed;
pub mod drills;
pub mod entries;
pub mod events;
pub mod find;
pub mod guest;
pub mod incidents;
pub mod keeping;
pub mod law;
pub mod logs;
pub mod lot;
pub mod names;
pub mod papers;
pub mod picture;
pub mod place;
pub mod prints;
pub mod says;
pub mod scan;
pub mod scope;
pub mod seek;
pub mod starters;
pub mod stops;
pub mod today;
pub mod trace;
pub mod why;
pub mod wrong_labels;
pub mod yields;

use crate::app::App;
use crate::error::Result;
use crate::lists::kitchen::Kitchen;
use crate::lists::standing::Standing;
use crate::named::named;
use chrono::{DateTime, Utc};
use domain::code::LotCode;
use domain::family::{Family, LotView, view};
use domain::law::Law;
use domain::lot::{Lot, LotId};
use domain::refusal::Refusal;
use std::sync::Arc;
use store::Conn;
use store::family::{Extent, WalkStart};
use store::lots::{LotRow, Since};
use store::packs::{self, PackChoice, PackRow};

/// A family of the record, with what its views need: the kitchen, its lists, the law of its place.
pub struct LoadedFamily<'a> {
    /// The family.
    pub family: Family,
    /// The kitchen and its lists.
    pub standing: Arc<Standing>,
    /// The law of the kitchen's place.
    pub law: &'a Law,
    /// When it was read.
    pub now: DateTime<Utc>,
}

impl<'a> LoadedFamily<'a> {
    /// Loads the family of some lots.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn load(
        app: &'a App,
        conn: &mut Conn,
        lots: &[i32],
        extent: Extent<'_>,
    ) -> Result<LoadedFamily<'a>> {
        let standing = app.standing(conn)?;
        LoadedFamily::load_with(app, conn, standing, WalkStart::Keys(lots), extent)
    }

    /// Loads the family of the lot that a path names, in any spelling of its code.
    ///
    /// # Errors
    /// 422 for what is no code, 404 for one never given out.
    pub fn of_code(
        app: &'a App,
        conn: &mut Conn,
        text: &str,
        extent: Extent<'_>,
    ) -> Result<(LoadedFamily<'a>, LotId)> {
        let standing = app.standing(conn)?;
        let named = named(text, "code", &app.ours())?;
        let reading =
            LoadedFamily::load_with(app, conn, standing, WalkStart::Code(&named.code), extent)?;
        let lot = reading.family.starts.first().copied();
        let lot = lot.ok_or_else(|| Refusal::never_issued("code", &named.code))?;
        Ok((reading, lot))
    }

    /// Loads a family, with lists that were read already.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn load_with(
        app: &'a App,
        conn: &mut Conn,
        standing: Arc<Standing>,
        start: WalkStart<'_>,
        extent: Extent<'_>,
    ) -> Result<LoadedFamily<'a>> {
        Ok(LoadedFamily {
            family: store::family::load(conn, start, extent, app)?,
            law: app
                .laws(&standing.confirmed)
                .of(standing.kitchen.entry.profile.0),
            standing,
            now: app.now(),
        })
    }

    /// The code of a lot of it.
    pub fn code(&self, lot: LotId) -> String {
        let of = self.family.get(lot);
        of.map(|of| of.lot.code.to_string()).unwrap_or_default()
    }

    /// The kitchen.
    pub fn kitchen(&self) -> &Kitchen {
        &self.standing.kitchen
    }

    /// What is shown of one of its lots, in the languages of the kitchen's labels.
    pub fn view(&self, lot: LotId) -> Option<LotView<'_>> {
        self.view_in(lot, &self.kitchen().languages())
    }

    /// The same in some languages.
    pub fn view_in(&self, lot: LotId, languages: &[&str]) -> Option<LotView<'_>> {
        view(
            &self.family,
            lot,
            &self.standing.lists,
            self.law,
            languages,
            self.now,
            self.kitchen().zone,
        )
    }

    /// The same of a lot that is surely there.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn lot_view(&self, lot: LotId) -> Result<LotView<'_>> {
        let missing = || store::Error::bad_row("lots", lot.0, "is not there");
        Ok(self.view(lot).ok_or_else(missing)?)
    }
}

/// The lot that a path names, in any spelling of its code.
///
/// # Errors
/// 422 for what is no code, 404 for one never given out.
pub fn lot_named(app: &App, conn: &mut Conn, text: &str) -> Result<LotRow> {
    app.standing(conn)?;
    let named = named(text, "code", &app.ours())?;
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

/// What is loaded of a lot's packs: of a lot of one pack, that pack is always loaded, empty or not.
pub fn whole(row: &LotRow, wanted: &PackChoice) -> PackChoice {
    match wanted {
        PackChoice::OnHand if row.pack_count == 1 => PackChoice::All,
        wanted => wanted.clone(),
    }
}

/// The domain's lot of a row, with the packs that are wanted.
///
/// # Errors
/// The database is away, or the row is damaged.
pub fn lot_of(app: &App, conn: &mut Conn, row: LotRow, wanted: &PackChoice) -> Result<Lot> {
    let rows = packs::of_lot(conn, row.id, &whole(&row, wanted))?;
    lot_with(app, conn, row, &rows)
}

/// The domain's lot of a row, with packs that were loaded already.
///
/// # Errors
/// The database is away, or the row is damaged.
pub fn lot_with(app: &App, conn: &mut Conn, row: LotRow, rows: &[PackRow]) -> Result<Lot> {
    let product = app.product(conn, row.version_id)?;
    let packs = rows
        .iter()
        .map(PackRow::pack)
        .collect::<store::Result<_>>()?;
    let released = product.is_hung() && store::record::is_released(conn, row.id)?;
    let mut since = Since {
        released,
        ..Since::default()
    };
    if row.stopped {
        let stops = store::stops::of_lots(conn, &[row.id])?;
        since.stops = stops.into_values().flatten().collect();
        since.condition = store::conditions::of_lots(conn, &[row.id])?.remove(&row.id);
        let labels = store::wrong_labels::of_each(conn, &[row.id])?;
        since.wrong_labels = labels.into_values().flatten().collect();
    }
    Ok(row.into_lot(product, packs, since)?)
}
