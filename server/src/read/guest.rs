//! What a guest reads who has a pack in their hands and nothing to do with the kitchen.

use crate::app::App;
use crate::error::Result;
use crate::label_facts;
use crate::pulse;
use crate::read::LoadedFamily;
use domain::code::LotCode;
use domain::family::{Origins, origins};
use domain::guest::{Notice, is_for_guests, notice};
use domain::incident::Hazard;
use domain::lot::{Lot, Pack};
use domain::moment::day_of;
use domain::scanned::{self, Scanned};
use domain::words::Species;
use labels::Field;
use std::collections::BTreeMap;
use store::family::{Extent, WalkStart};
use store::{Conn, incidents};

/// What a guest is told of a pack.
#[derive(Debug)]
pub struct Told {
    /// Its code, for the eye: it stands on the label as well.
    pub shown: String,
    /// Its name.
    pub name: String,
    /// What comes first.
    pub notice: Option<Notice>,
    /// What its label says, where that may be repeated.
    pub texts: BTreeMap<Field, String>,
    /// Was a pack named, whose own day this is?
    pub of_pack: bool,
    /// The animals that it comes from: what, of which farm.
    pub animals: Vec<(Species, String)>,
}

/// What is told of the code in an address of ours; nothing of what is no code, was never given out or is not for
/// guests, all alike.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn told(app: &App, conn: &mut Conn, path: &str, language: &str) -> Result<Option<Told>> {
    let standing = app.standing(conn)?;
    let address = app.address(&standing.kitchen);
    let Scanned::Lot { code, pack } = scanned::read(&format!("{address}{path}"), &[&address])
    else {
        return Ok(None);
    };
    of_code(app, conn, &code, pack, language)
}

fn of_code(
    app: &App,
    conn: &mut Conn,
    code: &LotCode,
    number: Option<u32>,
    language: &str,
) -> Result<Option<Told>> {
    let standing = app.standing(conn)?;
    let start = WalkStart::Code(code);
    let reading = LoadedFamily::load_with(app, conn, standing, start, Extent::ANCESTORS)?;
    let id = reading.family.starts.first().copied();
    let Some(of) = id.and_then(|id| reading.family.get(id)) else {
        return Ok(None);
    };
    let lot = &of.lot;
    // The code of a lot of one pack is that pack's.
    let number = number.or((lot.pack_count == 1).then_some(1));
    let pack = number.and_then(|number| lot.pack(number));
    if !is_for_guests(lot) || number.is_some() && pack.is_none() {
        return Ok(None);
    }
    let recalled = recalled(conn, lot, pack)?;
    let today = day_of(reading.now, reading.kitchen().zone);
    let mut notice = notice(lot, pack, recalled, reading.now, today);
    if notice.is_none() && pulse::clock_doubt().is_some() {
        notice = Some(Notice::AskFirst);
    }
    let mut texts = BTreeMap::new();
    if notice.is_none_or(Notice::leaves_the_label) {
        let first = pack.or_else(|| lot.packs.first()).map(|pack| pack.number);
        let told =
            first.map(|first| label_facts::guest::texts(app, &reading, lot.id, first, language));
        match told {
            Some(Ok(told)) => texts = told,
            // A label that may not be printed is not repeated either.
            Some(Err(_)) | None => notice = Some(Notice::AskFirst),
        }
    }
    let animals = match texts.is_empty() {
        true => Vec::new(),
        false => animals(&origins(&reading.family, lot.id), &reading),
    };
    Ok(Some(Told {
        shown: pack.map_or_else(|| lot.code.shown(), |pack| lot.shown(pack.number)),
        name: lot.product.name(language).to_owned(),
        notice,
        texts,
        of_pack: pack.is_some(),
        animals,
    }))
}

/// For what a recall is that guests are to know of and that holds this pack, if there is one.
fn recalled(conn: &mut Conn, lot: &Lot, pack: Option<&Pack>) -> Result<Option<Hazard>> {
    let of = pack.map(|pack| pack.id);
    let placed = lot
        .stops
        .iter()
        .filter(|placed| placed.ended.is_none() && placed.is_on(of));
    let holding: Vec<i32> = placed
        .filter_map(|placed| Some(placed.incident?.0))
        .collect();
    if holding.is_empty() {
        return Ok(None);
    }
    for incident in incidents::open_holding(conn)? {
        if !holding.contains(&incident.id) {
            continue;
        }
        let acts = incidents::acts(conn, incident.id)?;
        let mut acts = acts.iter().rev().map(|(act, _)| act.kind.as_str());
        let shown = acts.find(|kind| [incidents::SHOWN, incidents::HIDDEN].contains(kind));
        if shown == Some(incidents::SHOWN) {
            return Ok(Some(incident.hazard()?));
        }
    }
    Ok(None)
}

/// The animals by farm, each once, the largest share first.
fn animals(origins: &Origins, reading: &LoadedFamily<'_>) -> Vec<(Species, String)> {
    let mut found: Vec<(Species, String)> = Vec::new();
    for share in &origins.animals {
        let farm = reading.standing.lists.farm(&share.animal.farm).to_owned();
        let animal = (share.animal.species, farm);
        if !found.contains(&animal) {
            found.push(animal);
        }
    }
    found
}
