//! Loading what a deed touches, inside its transaction.

use crate::app::App;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::lists::kitchen::Kitchen;
use crate::named::{Named, named};
use crate::read::brief::{brief, briefs};
use crate::read::lot_of;
use crate::wire::Weight;
use crate::wire::answers::{DeedDone, LotBrief};
use crate::wire::lists::RecipeEntry;
use domain::code::LotCode;
use domain::deed::draw::Choice;
use domain::deed::step::Packing;
use domain::law::Law;
use domain::lot::{Lot, PlaceId};
use domain::moment::Moment;
use domain::plan::Plan;
use domain::product::Product;
use domain::refusal::{Refusal, RefusalKind};
use domain::says::Says;
use domain::words::{Allergen, DeedKind};
use std::collections::BTreeSet;
use std::sync::Arc;
use store::lots::{self, LotRow};
use store::packs::Wanted;
use store::{Tx, entries};
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
    /// The deed's key.
    pub deed: i32,
    /// When it happened.
    pub moment: Moment,
    /// Where it happened.
    pub place: Option<PlaceId>,
}

/// The place with that code.
///
/// # Errors
/// 422 where there is none.
pub fn place(tx: &mut Tx<'_>, code: &str, field: &str) -> Result<PlaceId> {
    let row = entries::get(tx.conn, List::Places.as_str(), code)?;
    let row = row.ok_or_else(|| {
        Error::cannot_be(
            field,
            format!("{code:?} is not in the list of places. Add it, or choose another."),
        )
    })?;
    Ok(PlaceId(row.id))
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
            "Give pack_count or pack_grams, not both.",
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
            format!("The lot names pack {one}, the pack field {other}."),
        ));
    }
    let pack = pack.or(named.pack);
    match packs {
        Some(_) if pack.is_some() => Err(Error::cannot_be(
            format!("{field}packs"),
            "Give pack or packs, not both.",
        )),
        Some(_) if grams.is_some() => Err(Error::cannot_be(
            format!("{field}grams"),
            "Packs go whole; grams are for one pack.",
        )),
        Some(packs) => Ok(Choice::Whole(packs.to_vec())),
        None => Ok(Choice::One {
            pack,
            grams: grams.map(|grams| grams.0),
        }),
    }
}

/// The packs that a choice can touch.
pub fn wanted(choice: &Choice) -> Wanted {
    match choice {
        Choice::One {
            pack: Some(number), ..
        } => Wanted::Numbers(vec![i32::try_from(*number).unwrap_or(-1)]),
        Choice::Whole(numbers) => Wanted::Numbers(
            numbers
                .iter()
                .map(|number| i32::try_from(*number).unwrap_or(-1))
                .collect(),
        ),
        Choice::One { pack: None, .. } | Choice::All => Wanted::OnHand,
    }
}

impl<'a> Facts<'a, '_> {
    /// The law that the kitchen works under.
    pub fn law(&self) -> &'a Law {
        self.app.law.laws.of(self.kitchen.entry.profile.0)
    }

    /// Reads the name of a lot in a field.
    ///
    /// # Errors
    /// 422.
    pub fn named(&self, text: &str, field: &str) -> Result<Named> {
        named(text, field, &self.app.address(&self.kitchen))
    }

    /// Locks the lots of these names, and loads each with the packs that are wanted of it.
    ///
    /// # Errors
    /// 404 for a code never given out.
    pub fn lots(&mut self, wanted: &[(LotCode, Wanted, String)]) -> Result<Vec<Lot>> {
        let codes: Vec<&str> = wanted.iter().map(|(code, _, _)| code.as_str()).collect();
        let rows = lots::lock(self.tx, &codes)?;
        let mut loaded = Vec::with_capacity(wanted.len());
        for (code, wanted, field) in wanted {
            let row = rows.iter().find(|row| row.code == code.as_str());
            let row = row.ok_or_else(|| Refusal::never_issued(field, code))?;
            loaded.push(lot_of(self.app, self.tx.conn, row.clone(), wanted)?);
        }
        Ok(loaded)
    }

    /// Locks and loads one lot.
    ///
    /// # Errors
    /// 404 for a code never given out.
    pub fn lot(&mut self, code: &LotCode, wanted: Wanted) -> Result<Lot> {
        let mut lots = self.lots(&[(code.clone(), wanted, "lot".into())])?;
        Ok(lots.remove(0))
    }

    /// A product of the list, with its place in it.
    ///
    /// # Errors
    /// 422 where there is none.
    pub fn product(&mut self, code: &str, field: &str) -> Result<(Arc<Product>, i32)> {
        let row = entries::get(self.tx.conn, List::Products.as_str(), code)?;
        let row = row.ok_or_else(|| {
            Error::cannot_be(
                field,
                format!("{code:?} is not in the list of products. Add it, or choose another."),
            )
        })?;
        Ok((
            self.app.product_of(row.version_id, &row.body)?,
            row.version_id,
        ))
    }

    /// The allergens that a product's recipe brings, through any nesting.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn recipe_allergens(&mut self, product: &str) -> Result<BTreeSet<Allergen>> {
        let mut allergens = BTreeSet::new();
        let mut seen = BTreeSet::new();
        let mut open = vec![product.to_owned()];
        while let Some(code) = open.pop() {
            let Some(row) = entries::get(self.tx.conn, List::Recipes.as_str(), &code)? else {
                continue;
            };
            let recipe: RecipeEntry =
                serde_json::from_str(&row.body).map_err(|error| crate::app::damaged(&error))?;
            for part in recipe.parts {
                if seen.insert(part.product.0.clone()) {
                    let (product, _) = self.product(&part.product.0, "product")?;
                    allergens.extend(&product.allergens);
                    open.push(part.product.0);
                }
            }
        }
        Ok(allergens)
    }

    /// Writes a plan down, and tells what was made, or else what was touched.
    ///
    /// # Errors
    /// The database is away or full.
    pub fn record(&mut self, id: String, kind: DeedKind, plan: &Plan) -> Result<DeedDone> {
        let made = store::record::plan(self.tx, self.deed, &self.moment, plan)?;
        let labels = (!made.is_empty()).then(|| format!("/api/steps/{id}/labels.pdf"));
        let lots = match made.is_empty() {
            true => {
                let mut keys: Vec<i32> = plan.changes.iter().map(|change| change.lot.0).collect();
                keys.dedup();
                let rows = lots::by_keys(self.tx.conn, &keys)?;
                self.briefs(rows)?
            }
            false => self.newborn(&made)?,
        };
        Ok(DeedDone {
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
            said: plan.warnings.clone(),
        })
    }

    /// Lots just made, in short: everything is known without reading.
    fn newborn(&mut self, rows: &[LotRow]) -> Result<Vec<LotBrief>> {
        let mut briefs = Vec::with_capacity(rows.len());
        let mut place: Option<(i32, String)> = None;
        for row in rows {
            let known = place.as_ref().filter(|(key, _)| *key == row.born_place_id);
            let code = match known {
                Some((_, code)) => code.clone(),
                None => entries::code(self.tx.conn, row.born_place_id)?,
            };
            place = Some((row.born_place_id, code.clone()));
            let product = self.app.product(self.tx.conn, row.version_id)?;
            briefs.push(brief(
                row,
                &product,
                row.born_use_by,
                Some(code),
                self.kitchen.zone,
            )?);
        }
        Ok(briefs)
    }

    fn briefs(&mut self, rows: Vec<LotRow>) -> Result<Vec<LotBrief>> {
        briefs(self.app, self.tx.conn, &rows, self.kitchen.zone)
    }
}

/// 409: a lot that is of no use here.
pub fn clash(field: &str, detail: impl Into<Says>) -> Error {
    Refusal::new(RefusalKind::Clash, field, detail).into()
}
