//! Back to every source, forward to all that came of it.

use crate::app::App;
use crate::deeds::perform::shown_id;
use crate::error::{Error, Result};
use crate::wire::answers::{
    AnimalShare, BoughtRead, DescendantRead, DescendantsRead, OriginsRead, Whereabouts,
};
use crate::wire::{Day, Weight};
use domain::grams::Grams;
use domain::lot::{DeedId, LotId};
use std::collections::{BTreeMap, HashMap};
use store::lots::LotRow;
use store::trace::{self, Descendant};
use store::{Conn, animals, deeds, lots, sources};
use uuid::Uuid;

/// Where a lot comes from.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn origins(app: &App, conn: &mut Conn, row: &LotRow) -> Result<OriginsRead> {
    let roots = trace::back(conn, row.id)?.roots(LotId(row.id));
    let mut keys: Vec<i32> = roots
        .iter()
        .flat_map(|root| root.via.iter().map(|lot| lot.0))
        .collect();
    keys.extend(roots.iter().map(|root| root.lot.0));
    keys.sort_unstable();
    keys.dedup();
    let rows: HashMap<i32, LotRow> = lots::by_keys(conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let root_keys: Vec<i32> = roots.iter().map(|root| root.lot.0).collect();
    let known: HashMap<i32, sources::SourceRow> = sources::current(conn, &root_keys)?
        .into_iter()
        .map(|source| (source.lot_id, source))
        .collect();
    let mut by_animal: BTreeMap<i32, AnimalShare> = BTreeMap::new();
    let mut read = OriginsRead {
        lot: row.code.clone(),
        animals: vec![],
        bought: vec![],
        share_excludes_bought_meat: false,
    };
    for root in &roots {
        let via: Vec<String> = root
            .via
            .iter()
            .map(|lot| rows[&lot.0].code.clone())
            .collect();
        let Some(source) = known.get(&root.lot.0) else {
            continue;
        };
        let Some(animal) = source.animal_id else {
            let lot = &rows[&root.lot.0];
            read.share_excludes_bought_meat |= lot.origin == "bought";
            read.bought.push(BoughtRead {
                lot: lot.code.clone(),
                product: app.product(conn, lot.version_id)?.code.clone(),
                supplier: source.supplier.clone(),
                supplier_lot: source.supplier_lot.clone(),
                via,
            });
            continue;
        };
        match by_animal.get_mut(&animal) {
            Some(known) => {
                known.share += root.share;
                if known.side != source.side {
                    known.side = None; // both sides of it went in
                }
                if via.len() < known.via.len() {
                    known.via = via;
                }
            }
            None => {
                by_animal.insert(animal, share(conn, animal, source, root.share, via)?);
            }
        }
    }
    read.animals = by_animal.into_values().collect();
    read.animals
        .sort_by(|one, other| other.share.total_cmp(&one.share));
    Ok(read)
}

fn share(
    conn: &mut Conn,
    animal: i32,
    source: &sources::SourceRow,
    share: f64,
    via: Vec<String>,
) -> Result<AnimalShare> {
    let row = animals::by_key(conn, animal)?;
    let uid = deeds::by_keys(conn, &[row.deed_id])?
        .pop()
        .map(|deed| deed.uid)
        .unwrap_or_default();
    Ok(AnimalShare {
        id: shown_id(&uid),
        farm: row.farm,
        species: row.species,
        killed_on: Day(row.killed_on),
        abattoir: row.abattoir,
        carcass: row.carcass,
        tag: row.tag,
        side: source.side.clone(),
        share,
        via,
    })
}

/// All that came of a lot, without the lot itself.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(conn: &mut Conn, row: &LotRow) -> Result<DescendantsRead> {
    let forward = trace::forward(conn, &[row.id])?;
    let has_animal = row.origin()?.has_animal();
    Ok(told(
        &forward,
        |lot| lot.id != row.id,
        |lot| {
            has_animal.then(|| {
                forward
                    .step_shares
                    .get(&DeedId(lot.deed_id))
                    .copied()
                    .unwrap_or(0.0)
            })
        },
    ))
}

/// All that came of an animal, with the lots received of it.
///
/// # Errors
/// 404 where there is no such animal.
pub fn of_animal(conn: &mut Conn, id: &str) -> Result<DescendantsRead> {
    let unknown = || Error::not_found(format!("No animal on record has the id {id:?}."));
    let uid = Uuid::parse_str(id).map_err(|_| unknown())?;
    let animal = animals::by_uid(conn, uid.as_bytes())?.ok_or_else(unknown)?;
    let mut starts = Vec::new();
    for (_, code) in animals::sides(conn, animal.id)? {
        starts.extend(lots::by_code(conn, &code)?.map(|row| row.id));
    }
    if starts.is_empty() {
        return Ok(DescendantsRead {
            lots: Vec::new(),
            totals: Whereabouts::default(),
        });
    }
    let forward = trace::forward(conn, &starts)?;
    Ok(told(
        &forward,
        |_| true,
        |lot| match starts.contains(&lot.id) {
            true => Some(1.0),
            false => Some(
                forward
                    .step_shares
                    .get(&DeedId(lot.deed_id))
                    .copied()
                    .unwrap_or(0.0),
            ),
        },
    ))
}

fn told(
    forward: &trace::Forward,
    keep: impl Fn(&Descendant) -> bool,
    share: impl Fn(&Descendant) -> Option<f64>,
) -> DescendantsRead {
    let grams = |mg| Weight(Grams::from_milligrams(mg));
    let mut totals = Whereabouts::default();
    let mut lots = Vec::with_capacity(forward.lots.len());
    for lot in forward.lots.iter().filter(|lot| keep(lot)) {
        let read = DescendantRead {
            code: lot.code.clone(),
            product: lot.product.clone(),
            made_grams: grams(lot.made_mg),
            taken_back_grams: grams(lot.taken_back_mg),
            used_grams: grams(lot.used_mg),
            sold_grams: grams(lot.sold_mg),
            sold_packs: i64::from(lot.sold_packs),
            served_grams: grams(lot.served_mg),
            discarded_grams: grams(lot.discarded_mg),
            shipped_grams: grams(lot.shipped_mg),
            returned_grams: grams(lot.returned_mg),
            lost_grams: grams(lot.lost_mg),
            on_hand_grams: grams(lot.on_hand_mg),
            unexplained_grams: grams(lot.unexplained_mg),
            place: lot.place.clone(),
            share: share(lot),
            note: lot.note.clone(),
        };
        totals.add(&read);
        lots.push(read);
    }
    DescendantsRead { lots, totals }
}

impl Whereabouts {
    fn add(&mut self, lot: &DescendantRead) {
        self.made_grams.0 += lot.made_grams.0;
        self.taken_back_grams.0 += lot.taken_back_grams.0;
        self.used_grams.0 += lot.used_grams.0;
        self.sold_grams.0 += lot.sold_grams.0;
        self.sold_packs += lot.sold_packs;
        self.served_grams.0 += lot.served_grams.0;
        self.discarded_grams.0 += lot.discarded_grams.0;
        self.shipped_grams.0 += lot.shipped_grams.0;
        self.returned_grams.0 += lot.returned_grams.0;
        self.lost_grams.0 += lot.lost_grams.0;
        self.on_hand_grams.0 += lot.on_hand_grams.0;
        self.unexplained_grams.0 += lot.unexplained_grams.0;
    }
}
