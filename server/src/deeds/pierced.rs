//! What of the meat in a cook was ground, pumped or stuffed, by the record of what it came from and by what goes in
//! with it.

use super::again::effective;
use super::facts::Facts;
use crate::error::Result;
use crate::read::LoadedFamily;
use domain::code::LotCode;
use domain::cure::Method;
use domain::family::{self, Family, Relative, Together};
use domain::grams::Grams;
use domain::heat::{Pierced, PiercedBy};
use domain::lot::{DeedId, Lot, LotId};
use domain::says::Texts;
use domain::words::DeedKind;
use std::collections::{BTreeMap, BTreeSet};
use store::family::Extent;

/// What was found of the meat in a cook.
#[derive(Default)]
pub(super) struct Found {
    /// What was ground, pumped or stuffed, if anything was.
    pub(super) pierced: Option<Pierced>,
    /// What went in with it of which the cook says that it fills nothing.
    pub(super) around: Option<(LotCode, Texts)>,
}

/// Looks at all that the lots came from, and at what goes in together; `said` is what the cook says of it.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn of(
    facts: &mut Facts<'_, '_>,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    said: Option<bool>,
) -> Result<Found> {
    let meat: Vec<&Lot> = lots.iter().filter(|lot| !lot.species.is_empty()).collect();
    let Some(first) = meat.first() else {
        return Ok(Found::default());
    };
    if said == Some(true) {
        return Ok(Found {
            pierced: Some(pierced_by(PiercedBy::SaidStuffed, first)),
            around: None,
        });
    }
    let keys: Vec<i32> = meat.iter().map(|lot| lot.id.0).collect();
    let standing = facts.standing.clone();
    let start = store::family::WalkStart::Keys(&keys);
    let conn = &mut *facts.tx.conn;
    let loaded = LoadedFamily::load_with(facts.app, conn, standing, start, Extent::ANCESTORS)?;
    let family = &loaded.family;
    let told = Told::of(conn, family)?;
    let is_pumped = |of: &Relative| told.pumped.contains(&of.lot.made_by);
    let says_stuffed = |of: &Relative| told.stuffed.get(&of.lot.made_by).copied();
    let before = keys.iter().filter_map(|key| {
        let lot = LotId(*key);
        family::pierced(family, lot, is_pumped, says_stuffed)
    });
    let is_ground = |lot: &Lot| {
        let of = family.get(lot.id);
        of.is_some_and(|of| of.made_by.kind == DeedKind::Grind)
    };
    let mut together = Vec::with_capacity(lots.len());
    for (nth, lot) in lots.iter().enumerate() {
        together.push(Together {
            lot,
            is_ground: is_ground(lot),
            grams: grams(nth)?,
        });
    }
    let filling = family::filling(&together);
    let filled = filling.filter(|_| said.is_none());
    let filled = filled.map(|lot| pierced_by(PiercedBy::Filled, lot));
    Ok(Found {
        pierced: before.chain(filled).min_by_key(|found| found.by),
        around: filling
            .filter(|_| said.is_some())
            .map(|lot| (lot.code.clone(), lot.product.named())),
    })
}

fn pierced_by(by: PiercedBy, lot: &Lot) -> Pierced {
    let (lot, product) = (lot.code.clone(), lot.product.named());
    Pierced { by, lot, product }
}

/// What the deeds before said of their meat: that it was pumped, whatever its product says; whether it is stuffed.
#[derive(Default)]
struct Told {
    pumped: BTreeSet<DeedId>,
    stuffed: BTreeMap<DeedId, bool>,
}

impl Told {
    fn of(conn: &mut store::Conn, family: &Family) -> Result<Told> {
        use DeedKind::{Cook, Cure, Mix, Smoke};
        let made = family.lots.values();
        let made = made.filter(|of| matches!(of.made_by.kind, Cure | Mix | Cook | Smoke));
        let deeds: BTreeSet<i32> = made.map(|of| of.lot.made_by.0).collect();
        let deeds: Vec<i32> = deeds.into_iter().collect();
        let mut told = Told::default();
        if deeds.is_empty() {
            return Ok(told);
        }
        let corrections = store::corrections::of_deeds(conn, &deeds)?;
        for deed in store::deeds::by_keys(conn, &deeds)? {
            let asked = effective(&deed, &corrections)?;
            let cure = asked.get("cure");
            let method = cure.and_then(|cure| cure.get("method")?.as_str());
            if method == Some(Method::Pumped.as_str()) {
                told.pumped.insert(DeedId(deed.id));
            }
            if let Some(stuffed) = asked.get("stuffed").and_then(serde_json::Value::as_bool) {
                told.stuffed.insert(DeedId(deed.id), stuffed);
            }
        }
        Ok(told)
    }
}
