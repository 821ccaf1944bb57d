//! Loading what a deed touches, inside its transaction.

use super::says::DeedSays;
use super::{again, place_late};
use crate::app::App;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::lists::kitchen::Kitchen;
use crate::lists::standing::Standing;
use crate::named::{Named, named};
use crate::read::brief::{brief_of, briefs};
use crate::read::{lot_with, whole};
use crate::who::Who;
use crate::wire::Weight;
use crate::wire::answers::{DeedDone, LotBrief, StopRead, stop_read};
use chrono::NaiveDateTime;
use domain::code::LotCode;
use domain::deed::draw::Choice;
use domain::deed::packing::Packing;
use domain::family::Lists;
use domain::grams::Grams;
use domain::law::Law;
use domain::lot::{Lot, LotId, PlaceId};
use domain::moment::{Moment, day_of};
use domain::plan::Plan;
use domain::product::Product;
use domain::refusal::{Refusal, RefusalKind};
use domain::says::Says;
use domain::words::{Allergen, DeedKind, Quantity};
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;
use store::Tx;
use store::again::Recorded;
use store::lots::{self, LotRow};
use store::packs::{self, PackChoice, PackRow};
use words::Speech;

/// A deed in its transaction: what it may look at and write with.
pub struct Facts<'a, 'tx> {
    /// The transaction.
    pub tx: &'a mut Tx<'tx>,
    /// The service.
    pub app: &'a App,
    /// How the one who does it is spoken to.
    pub speech: Speech,
    /// The kitchen.
    pub kitchen: Arc<Kitchen>,
    /// Its lists, as they stand.
    pub standing: Arc<Standing>,
    /// The deed's key.
    pub deed: i32,
    /// Who asks for it.
    pub who: Who,
    /// Who did it.
    pub by: String,
    /// When it happened.
    pub moment: Moment,
    /// Where it happened.
    pub place: Option<PlaceId>,
    /// May it move, freeze or thaw what it is about? What only takes out of packs does not.
    pub moves: bool,
    /// What was known when a deed was done that is judged again; none for a deed that is done now.
    pub past: Option<Past>,
}

/// What was known when a deed was done that is judged again.
#[derive(Default)]
pub struct Past {
    /// The readings of lots, each with where its deed stands in the order of recording; the oldest first.
    pub readings: HashMap<i32, Vec<(Recorded, NaiveDateTime, Quantity, i64)>>,
    /// Where the deed stands that is judged.
    pub until: Recorded,
    /// The steps of the scales that were looked up.
    pub scales: HashMap<String, Option<Grams>>,
}

/// The place with that code.
///
/// # Errors
/// 422 where there is none.
pub fn place(lists: &Lists, code: &str, field: &str) -> Result<PlaceId> {
    let lacks = || Error::cannot_be(field, List::Places.lacks_or_another(code));
    lists.place_key(code).ok_or_else(lacks)
}

/// How a caller wants a lot packed.
///
/// # Errors
/// 422 where both ways are given.
pub fn packing(count: Option<u32>, grams: Option<&[Weight]>, field: &str) -> Result<Packing> {
    match (count, grams) {
        (None, None) => Ok(Packing::One),
        (Some(count), None) => Ok(Packing::Count(count)),
        (None, Some(grams)) => Ok(Packing::Weighed(
            grams.iter().map(|weight| weight.0).collect(),
        )),
        (Some(_), Some(_)) => Err(Error::cannot_be(
            format!("{field}pack_count"),
            DeedSays::OnePacking,
        )),
    }
}

/// What a caller wants of a lot.
///
/// # Errors
/// 422 where the fields contradict each other.
pub fn choice(
    named: &Named,
    pack: Option<u32>,
    packs: Option<&[u32]>,
    grams: Option<Weight>,
    field: &str,
) -> Result<Choice> {
    if let (Some(one), Some(other)) = (named.pack, pack)
        && one != other
    {
        return Err(Error::cannot_be(
            format!("{field}pack"),
            DeedSays::TwoPacks { one, other },
        ));
    }
    let pack = pack.or(named.pack);
    not_too_many(packs.map_or(0, <[u32]>::len), &format!("{field}packs"))?;
    match packs {
        Some(_) if pack.is_some() => Err(Error::cannot_be(
            format!("{field}packs"),
            DeedSays::PackOrPacks,
        )),
        Some(_) if grams.is_some() => Err(Error::cannot_be(
            format!("{field}grams"),
            DeedSays::PacksWhole,
        )),
        Some(packs) => Ok(Choice::Whole(packs.to_vec())),
        None => Ok(Choice::One {
            pack,
            grams: grams.map(|grams| grams.0),
        }),
    }
}

/// Refuses a list that is longer than any lot has packs: a database takes only so many at once.
///
/// # Errors
/// 422.
pub fn not_too_many(count: usize, field: &str) -> Result<()> {
    let most = domain::limits::MOST_PACKS;
    match count > most as usize {
        true => Err(Error::cannot_be(field, DeedSays::TooMany { most })),
        false => Ok(()),
    }
}

/// The packs that a choice can touch.
pub fn wanted(choice: &Choice) -> PackChoice {
    match choice {
        Choice::One {
            pack: Some(number), ..
        } => PackChoice::Numbers(vec![i32::try_from(*number).unwrap_or(-1)]),
        Choice::Whole(numbers) => PackChoice::Numbers(
            numbers
                .iter()
                .map(|number| i32::try_from(*number).unwrap_or(-1))
                .collect(),
        ),
        Choice::One { pack: None, .. } | Choice::All => PackChoice::OnHand,
    }
}

impl<'a> Facts<'a, '_> {
    /// The law that the kitchen works under.
    pub fn law(&self) -> &'a Law {
        let laws = self.app.laws(&self.standing.confirmed);
        laws.of(self.kitchen.entry.profile.0)
    }

    /// The readings of a lot that are known: when, what, how much.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn readings(&mut self, lot: LotId) -> Result<Vec<(NaiveDateTime, Quantity, i64)>> {
        let Some(past) = &self.past else {
            return Ok(store::measurements::of_lot(self.tx.conn, lot.0)?);
        };
        let known = past.readings.get(&lot.0).into_iter().flatten();
        let now = (self.moment.at.naive_utc(), past.until);
        let known = known.filter(|(recorded, at, ..)| (*at, *recorded) <= now);
        Ok(known.map(|(_, at, of, much)| (*at, *of, *much)).collect())
    }

    /// Reads the name of a lot in a field.
    ///
    /// # Errors
    /// 422.
    pub fn named(&self, text: &str, field: &str) -> Result<Named> {
        named(text, field, &self.app.ours())
    }

    /// Locks the lots of these names, and loads each with the packs that are wanted of it.
    ///
    /// # Errors
    /// 404 for a code never given out.
    pub fn lots(&mut self, wanted: &[(LotCode, PackChoice, String)]) -> Result<Vec<Lot>> {
        let named: usize = wanted.iter().map(|(_, packs, _)| packs.named()).sum();
        if let Some((_, _, field)) = wanted.first() {
            not_too_many(named.max(wanted.len()), field)?;
        }
        let codes: Vec<&str> = wanted.iter().map(|(code, _, _)| code.as_str()).collect();
        let rows = lots::lock(self.tx, &codes)?;
        let mut each = Vec::with_capacity(wanted.len());
        for (code, wanted, field) in wanted {
            let row = rows.iter().find(|row| row.code == code.as_str());
            let row = row.ok_or_else(|| Refusal::never_issued(field, code))?;
            each.push((row, whole(row, wanted)));
        }
        let asked: Vec<(i32, PackChoice)> = each
            .iter()
            .map(|(row, wanted)| (row.id, wanted.clone()))
            .collect();
        let packs = packs::of_each(self.tx.conn, &asked)?;
        let mut loaded = Vec::with_capacity(each.len());
        for (row, wanted) in each {
            let of: Vec<PackRow> = packs
                .iter()
                .filter(|pack| pack.lot_id == row.id && wanted.takes(pack))
                .cloned()
                .collect();
            loaded.push(lot_with(self.app, self.tx.conn, row.clone(), &of)?);
        }
        let (at, keys) = (self.moment.at.naive_utc(), rows.iter().map(|row| row.id));
        let keys: Vec<i32> = keys.collect();
        // What was moved, frozen or thawed later than this stands after it, in whatever order they are told.
        if self.moment.day < day_of(self.moment.recorded_at, self.kitchen.zone)
            || store::voids::were_moved_since(self.tx.conn, at, &keys, self.moves)?
        {
            store::voids::recall_past(self.tx.conn, &rows, &mut loaded)?;
        }
        Ok(loaded)
    }

    /// Locks and loads one lot.
    ///
    /// # Errors
    /// 404 for a code never given out.
    pub fn lot(&mut self, code: &LotCode, wanted: PackChoice) -> Result<Lot> {
        let mut lots = self.lots(&[(code.clone(), wanted, "lot".into())])?;
        Ok(lots.remove(0))
    }

    /// A product of the list, with its place in it.
    ///
    /// # Errors
    /// 422 where there is none.
    pub fn product(&self, code: &str, field: &str) -> Result<(Arc<Product>, i32)> {
        let product = self.standing.lists.products.get(code);
        let found = product.zip(self.standing.versions.get(code));
        let lacks = || Error::cannot_be(field, List::Products.lacks_or_another(code));
        let (product, version) = found.ok_or_else(lacks)?;
        Ok((product.clone(), *version))
    }

    /// The allergens that a product's recipe brings, through any nesting.
    pub fn recipe_allergens(&self, product: &str) -> BTreeSet<Allergen> {
        let lists = &self.standing.lists;
        let mut allergens = BTreeSet::new();
        let mut seen = BTreeSet::new();
        let mut open = vec![product];
        while let Some(code) = open.pop() {
            for part in lists.recipes.get(code).into_iter().flatten() {
                if let Some(product) = lists.products.get(&part.product)
                    && seen.insert(part.product.as_str())
                {
                    allergens.extend(&product.allergens);
                    open.push(&part.product);
                }
            }
        }
        allergens
    }

    /// Writes a plan down, and returns what was made, or else what was touched. What was made of that since the
    /// deed happened is judged again.
    ///
    /// # Errors
    /// The database is away or full.
    pub fn record(&mut self, id: String, kind: DeedKind, plan: &Plan) -> Result<DeedDone> {
        let made = store::record::plan(self.tx, self.deed, &self.moment, plan)?;
        let brings = !made.is_empty();
        let labels = brings.then(|| format!("/api/steps/{id}/labels.pdf"));
        let (rows, mut lots) = match made.is_empty() {
            true => {
                let mut keys: Vec<i32> = plan.changes.iter().map(|change| change.lot.0).collect();
                keys.dedup();
                let rows = lots::by_keys(self.tx.conn, &keys)?;
                let lots = self.briefs(&rows)?;
                (rows, lots)
            }
            false => {
                let lots = self.newborn(&made)?;
                (made, lots)
            }
        };
        for (lot, row) in lots.iter_mut().zip(&rows) {
            lot.stops = self.placed(plan, row);
        }
        let mut done = DeedDone {
            id,
            kind: kind.as_str().to_owned(),
            late: false,
            loss_grams: plan.balance.as_ref().map(|balance| Weight(balance.loss)),
            lost_grams: None,
            unexplained_grams: None,
            lots,
            labels,
            warnings: Vec::new(),
            warning_keys: Vec::new(),
            changes: Vec::new(),
            tried: false,
            said: plan.warnings.clone(),
        };
        again::told(self, kind, plan, &mut done)?;
        let born = if brings { rows.as_slice() } else { &[] };
        place_late::judge(self, kind, plan, born, &mut done)?;
        Ok(done)
    }

    /// The stops that a plan places on a lot, each sentence once.
    fn placed(&self, plan: &Plan, row: &LotRow) -> Vec<StopRead> {
        let births = plan.births.iter();
        let of_birth = births.filter(|birth| birth.code.as_str() == row.code);
        let of_birth = of_birth.flat_map(|birth| &birth.stops);
        let touched = plan.stops.iter().filter(|(lot, ..)| lot.0 == row.id);
        let touched = touched.map(|(_, _, stop)| stop);
        let mut read: Vec<StopRead> = Vec::new();
        for stop in of_birth.chain(touched) {
            let stop = stop_read(&stop.cause.told(), self.kitchen.zone, &self.speech);
            if !read.iter().any(|known| known.says == stop.says) {
                read.push(stop);
            }
        }
        read
    }

    /// Lots just made, in short: everything is known without reading.
    fn newborn(&mut self, rows: &[LotRow]) -> Result<Vec<LotBrief>> {
        let mut briefs = Vec::with_capacity(rows.len());
        for row in rows {
            let place = PlaceId(row.born_place_id);
            let code = self.standing.lists.place_code(place).to_owned();
            let product = self.app.product(self.tx.conn, row.version_id)?;
            let brief = brief_of(row, &product, row.born_use_by, vec![code])?;
            briefs.push(LotBrief::of(&brief, self.kitchen.zone));
        }
        Ok(briefs)
    }

    /// Lots in short, as a deed answers them.
    pub fn briefs(&mut self, rows: &[LotRow]) -> Result<Vec<LotBrief>> {
        let briefs = briefs(self.app, self.tx.conn, rows)?;
        let zone = self.kitchen.zone;
        Ok(briefs.iter().map(|of| LotBrief::of(of, zone)).collect())
    }
}

/// 409: a lot that is of no use here.
pub fn clash(field: &str, detail: impl Into<Says>) -> Error {
    Refusal::new(RefusalKind::Clash, field, detail).into()
}
