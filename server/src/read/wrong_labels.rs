//! Packs whose last label says what is no longer true.

use super::LoadedFamily;
use crate::caller::Caller;
use crate::error::Result;
use chrono::{DateTime, Utc};
use domain::claims::Untrue;
use domain::lot::{Lot, LotId, Pack};
use domain::words::Being;
use serde::Deserialize;
use std::sync::Arc;
use store::Conn;
use store::family::Extent;
use utoipa::IntoParams;

/// Which of them are wanted. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct WrongLabelsQuery {
    /// true: packs that were sold or shipped with it, for a recall; else those on hand
    pub sold: Option<bool>,
}

/// A pack with such a label.
pub struct WrongPack {
    /// Its lot.
    pub lot: Lot,
    /// The pack.
    pub pack: Pack,
    /// The code of the place where it is, or was last.
    pub place: String,
    /// The number of the print that is wrong.
    pub print: i32,
    /// From when on.
    pub since: DateTime<Utc>,
    /// What it says, and what is true.
    pub untrue: Vec<Untrue>,
}

/// Those on hand, or those that went to people with their label.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn list(app: &Caller<'_>, conn: &mut Conn, gone: bool) -> Result<Vec<WrongPack>> {
    let mut marked = store::wrong_labels::all(conn)?;
    marked.retain(|(_, pack, _)| match Being::parse(&pack.being) {
        Some(Being::OnHand | Being::Open) => !gone,
        Some(Being::Sold | Being::Shipped) => gone,
        _ => false,
    });
    let mut keys: Vec<i32> = marked.iter().map(|(row, _, _)| row.lot_id).collect();
    keys.dedup();
    let reading = LoadedFamily::load(app.app(), conn, &keys, Extent::ALONE)?;
    let mut found = Vec::with_capacity(marked.len());
    for (row, pack, print) in marked {
        let Some(of) = reading.family.get(LotId(row.lot_id)) else {
            continue;
        };
        let pack = pack.pack()?;
        found.push(WrongPack {
            place: reading.standing.lists.place_code(pack.now.place).to_owned(),
            lot: Lot {
                product: Arc::clone(&of.lot.product),
                packs: Vec::new(),
                ..of.lot.clone()
            },
            pack,
            print: print.id,
            since: row.since.and_utc(),
            untrue: row.untrue()?,
        });
    }
    Ok(found)
}
