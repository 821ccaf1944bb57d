//! Loading a family: some lots and everything that went into them, in a handful of statements however
//! many lots there are.

mod numbers;
mod relatives;
mod walk;

use crate::conn::Conn;
use crate::error::Result;
use crate::lots::LotRow;
use crate::lots::Since;
use crate::packs::{self, PackRow};
use crate::{conditions, history, reasons, stops, wrong_labels};
use domain::family::{Did, Family, Relative, Went};
use domain::grams::Grams;
use domain::lot::{DeedId, LotId};
use domain::plan::Reason;
use domain::product::Product;
use domain::supplied::SuppliedPart;
use domain::words::{DeedKind, State};
use std::collections::HashMap;
use std::sync::Arc;
pub use walk::WalkStart;

/// How far back a family goes.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum Ancestors {
    /// Not at all.
    #[default]
    None,
    /// So many steps.
    Steps(u32),
    /// To the last source.
    All,
}

/// What is to be known of a family.
#[derive(Debug, Clone, Copy, Default)]
pub struct Extent<'a> {
    /// What went into the lots, too.
    pub ancestors: Ancestors,
    /// What was made of the lots in one step, too.
    pub children: bool,
    /// Everything that was made of the lots, too; their ancestors then as well.
    pub descendants: bool,
    /// What else each step made that made one of them, too.
    pub siblings: bool,
    /// The history of those of which anything dried off, too.
    pub dried: bool,
    /// Why each lot is as it is.
    pub reasons: bool,
    /// Of the lots only the packs of these numbers; all of them if none are named.
    pub packs: Option<&'a [u32]>,
}

impl Extent<'_> {
    /// The lots alone.
    pub const ALONE: Extent<'static> = Extent {
        ancestors: Ancestors::None,
        children: false,
        descendants: false,
        siblings: false,
        dried: false,
        reasons: false,
        packs: None,
    };
    /// The lots and their ancestors.
    pub const ANCESTORS: Extent<'static> = Extent {
        ancestors: Ancestors::All,
        ..Extent::ALONE
    };
    /// The lots and their ancestors, with the reasons.
    pub const REASONED: Extent<'static> = Extent {
        reasons: true,
        ..Extent::ANCESTORS
    };
}

/// The products that versions of the list describe: what is known stays known, the rest is loaded in
/// one statement.
pub trait Products {
    /// The product of a version, where it was met before.
    fn known(&self, version: i32) -> Option<Arc<Product>>;
    /// Reads a product that was not.
    ///
    /// # Errors
    /// The entry is damaged.
    fn read(&self, version: i32, body: &str) -> Result<Arc<Product>>;
}

/// Loads the family of some lots, or of the lot of a code; it is empty where no lot has that code.
/// Packs and history are loaded of these lots, not of their relatives; of descendants, the packs that
/// something is left in.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn load(
    conn: &mut Conn,
    start: WalkStart<'_>,
    extent: Extent<'_>,
    products: &dyn Products,
) -> Result<Family> {
    let mut family = Family::default();
    let mut keys: Vec<i32> = match start {
        WalkStart::Keys([]) => return Ok(family),
        WalkStart::Keys(keys) => keys.to_vec(),
        WalkStart::Code(_) => Vec::new(),
    };
    let reached = match (extent.descendants, extent.ancestors, start) {
        (true, ..) => Some(walk::both_ways(conn, start)?),
        (_, Ancestors::All, _) => Some(walk::back(conn, start)?),
        (_, Ancestors::Steps(steps), WalkStart::Keys(of)) => {
            Some(walk::steps_back(conn, of, steps)?)
        }
        (_, Ancestors::Steps(_), WalkStart::Code(_)) | (_, Ancestors::None, _) => None,
    };
    let mut children = match (extent.children, start) {
        (true, WalkStart::Keys(of)) if !extent.descendants => walk::children(conn, of)?,
        _ => Vec::new(),
    };
    let mut descendants: Vec<i32> = Vec::new();
    if let Some(reached) = reached {
        family.ancestry = reached.ancestry;
        family.onward = reached.onward;
        descendants.extend(reached.made.iter().map(|(_, lot)| *lot));
        children.extend(reached.made);
        keys.extend(reached.lots);
    }
    keys.extend(children.iter().map(|(_, lot)| *lot));
    keys.sort_unstable();
    keys.dedup();
    let mut rows = relatives::of_family(conn, start, &keys)?;
    let of: Vec<i32> = match start {
        WalkStart::Keys(of) => of.to_vec(),
        WalkStart::Code(code) => {
            let named = rows.iter().filter(|row| row.lot.code == code.as_str());
            named.map(|row| row.lot.id).collect()
        }
    };
    family.starts = of.iter().copied().map(LotId).collect();
    family.descendants = descendants.iter().copied().map(LotId).collect();
    if of.is_empty() {
        return Ok(family);
    }
    keys.extend(&of);
    if extent.siblings {
        let steps: Vec<i32> = family.ancestry.uses.keys().map(|step| step.0).collect();
        let known: Vec<i32> = rows.iter().map(|row| row.lot.id).collect();
        let siblings = relatives::made_by(conn, &steps)?;
        rows.extend(
            siblings
                .into_iter()
                .filter(|row| !known.contains(&row.lot.id)),
        );
        rows.sort_by_key(|row| row.lot.id);
        for row in &rows {
            let step = DeedId(row.lot.deed_id);
            if family.ancestry.uses.contains_key(&step) {
                family.made.entry(step).or_default().push(LotId(row.lot.id));
            }
        }
    }
    for (step, lot) in children {
        let made = family.made.entry(DeedId(step)).or_default();
        if !made.contains(&LotId(lot)) {
            made.push(LotId(lot));
        }
    }
    let mut versions: Vec<i32> = rows.iter().map(|row| row.lot.version_id).collect();
    for row in &rows {
        let supplied = row.lot.supplied()?;
        let recipe = supplied
            .iter()
            .flat_map(|of| SuppliedPart::versions(&of.recipe));
        versions.extend(recipe);
    }
    let products = products_of(conn, versions.into_iter(), products)?;
    family.listed = products.clone();
    let packs = packs::of_family(conn, &of, extent.packs, &descendants)?;
    let mut packs = grouped(packs, |pack| pack.lot_id);
    let mut with_history = of.clone();
    if extent.dried {
        let dried = rows.iter().filter(|row| row.lot.lost_mg > 0);
        with_history.extend(dried.map(|row| row.lot.id));
    }
    let mut histories: HashMap<i32, Vec<Did>> = history::of_lots(conn, &with_history)?;
    let steps: Vec<i32> = family.ancestry.uses.keys().map(|step| step.0).collect();
    let stopped = rows.iter().filter(|row| row.lot.stopped);
    let stopped: Vec<i32> = stopped.map(|row| row.lot.id).collect();
    let mut stops = stops::of_lots(conn, &stopped)?;
    let mut conditions = conditions::of_lots(conn, &stopped)?;
    let mut wrong_labels = wrong_labels::of_each(conn, &stopped)?;
    let mut numbers = numbers::of(conn, &keys, &steps)?;
    let mut reasons = match extent.reasons {
        true => grouped(reasons::of_lots(conn, &keys)?, |reason| reason.lot_id),
        false => HashMap::new(),
    };
    for row in rows {
        let id = row.lot.id;
        let product = products[&row.lot.version_id].clone();
        let history = histories.remove(&id).unwrap_or_default();
        // A release is a deed that is noted with the lot's packs.
        let released = history
            .iter()
            .any(|did| did.kind == DeedKind::Release && !did.voided);
        let packs = packs.remove(&id).unwrap_or_default();
        let packs = packs.iter().map(PackRow::pack).collect::<Result<_>>()?;
        let kept = reasons.remove(&id).unwrap_or_default();
        let kept = kept.iter().map(|reason| {
            Ok(Reason {
                topic: reason.topic()?,
                because: reason.because()?,
            })
        });
        let source = row.source()?;
        let made_by = row.made_by()?;
        let relative = Relative {
            note: row.lot.note.clone(),
            went: went(&row.lot, numbers.surplus.remove(&id).unwrap_or_default()),
            made_by,
            born_state: State::parse(&row.lot.born_state).unwrap_or(State::Chilled),
            born_use_by: row.lot.born_use_by,
            source,
            readings: numbers.readings.remove(&id).unwrap_or_default(),
            reasons: kept.collect::<Result<_>>()?,
            history,
            lot: row.lot.into_lot(
                product,
                packs,
                Since {
                    stops: stops.remove(&id).unwrap_or_default(),
                    condition: conditions.remove(&id),
                    wrong_labels: wrong_labels.remove(&id).unwrap_or_default(),
                    released,
                },
            )?,
        };
        family.lots.insert(LotId(id), relative);
    }
    family.water = numbers.water;
    family.lost = numbers.lost;
    family.cores = numbers.cores;
    Ok(family)
}

fn products_of(
    conn: &mut Conn,
    versions: impl Iterator<Item = i32>,
    products: &dyn Products,
) -> Result<HashMap<i32, Arc<Product>>> {
    let mut found = HashMap::new();
    let mut unknown = Vec::new();
    for version in versions {
        if found.contains_key(&version) || unknown.contains(&version) {
            continue;
        }
        match products.known(version) {
            Some(product) => {
                found.insert(version, product);
            }
            None => unknown.push(version),
        }
    }
    if !unknown.is_empty() {
        for (version, body) in crate::entries::versions(conn, &unknown)? {
            found.insert(version, products.read(version, &body)?);
        }
    }
    Ok(found)
}

fn went(row: &LotRow, surplus: Grams) -> Went {
    let grams = Grams::from_milligrams;
    Went {
        made: grams(row.made_mg),
        taken_back: grams(row.taken_back_mg),
        used: grams(row.used_mg),
        sold: grams(row.sold_mg),
        sold_packs: i64::from(row.sold_packs),
        served: grams(row.served_mg),
        discarded: grams(row.discarded_mg),
        shipped: grams(row.shipped_mg),
        returned: grams(row.returned_mg),
        lost: grams(row.lost_mg),
        on_hand: grams(row.on_hand_mg),
        unexplained: grams(row.unexplained_mg),
        missing: grams(row.unexplained_mg) + surplus,
        surplus,
    }
}

fn grouped<T>(all: Vec<T>, by: impl Fn(&T) -> i32) -> HashMap<i32, Vec<T>> {
    let mut grouped: HashMap<i32, Vec<T>> = HashMap::new();
    for one in all {
        grouped.entry(by(&one)).or_default().push(one);
    }
    grouped
}
