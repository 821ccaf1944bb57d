//! Something arrives: a carcass, with the animal it is of, or a bought-in lot.

use super::adopt::contents_unknown;
use super::draw::weight;
use super::packing::Packing;
use super::says::ReceiveSays;
use crate::code::{HouseCode, LotCode};
use crate::condition::{Declared, Stable, natural, received};
use crate::dates::{MakersDate, Making};
use crate::grams::Grams;
use crate::law::Law;
use crate::limits::KILLED_DAYS_AGO;
use crate::lot::{BirthDate, PackNow, PlaceId};
use crate::moment::Moment;
use crate::origin::{AnimalId, Origin};
use crate::plan::{Birth, Plan, Reason};
use crate::product::Product;
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::supplied::Contents;
use crate::words::{DeedKind, Side, Species, State, Topic};
use chrono::{NaiveDate, TimeDelta};
use std::collections::BTreeSet;

/// What is known of a source animal, or of birds and small animals killed together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Animal {
    /// The farm's code.
    pub farm: HouseCode,
    /// Its species.
    pub species: Species,
    /// The day it was killed.
    pub killed_on: NaiveDate,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The carcass number that the abattoir gave.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// How many, where they are one source.
    pub head: u32,
}

impl Animal {
    /// The number that tells it from others of that farm, day and abattoir: the carcass number,
    /// else the tag. With neither it is a new animal each time.
    pub fn number(&self) -> Option<(NumberKind, &str)> {
        let carcass = self
            .carcass
            .as_deref()
            .map(|number| (NumberKind::Carcass, number));
        carcass.or(self.tag.as_deref().map(|tag| (NumberKind::Tag, tag)))
    }

    /// Refuses a kill after the day of the deed or years before it, and a head count of none.
    ///
    /// # Errors
    /// As said.
    pub fn can_be(&self, day: NaiveDate) -> Result<()> {
        if self.killed_on > day {
            let detail = ReceiveSays::KilledLater {
                killed: self.killed_on,
                received: day,
            };
            return Err(Refusal::cannot_be("animal.killed_on", detail));
        }
        if day - self.killed_on > TimeDelta::days(KILLED_DAYS_AGO) {
            let detail = ReceiveSays::KilledLongAgo {
                killed: self.killed_on,
                received: day,
            };
            return Err(Refusal::cannot_be("animal.killed_on", detail));
        }
        if self.head == 0 || self.head > 10_000 {
            let head = self.head;
            return Err(Refusal::cannot_be(
                "animal.head",
                ReceiveSays::Head { head },
            ));
        }
        Ok(())
    }
}

/// Which number tells animals apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NumberKind {
    /// The abattoir's carcass number.
    Carcass,
    /// Ear tag or tattoo.
    Tag,
}

/// What is known of a bought-in lot.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Bought {
    /// The supplier's code in the kitchen's list.
    pub supplier: Option<String>,
    /// The supplier's lot number, as printed. Never mapped or corrected.
    pub supplier_lot: Option<String>,
    /// The day it was packed.
    pub packed_on: Option<NaiveDate>,
    /// The supplier's own last day: the only date that is ever typed.
    pub use_by: Option<NaiveDate>,
    /// The carton's GTIN.
    pub gtin: Option<String>,
}

/// Where a received lot comes from, as far as the record knows.
#[derive(Debug, Clone)]
pub enum Source {
    /// An animal on record.
    Animal {
        /// Its key.
        id: AnimalId,
        /// The animal's species.
        species: Species,
        /// Which part of it this is.
        side: Option<Side>,
        /// The sides received of it before, each with its lot.
        before: Vec<(Option<Side>, LotCode)>,
        /// Can it be told from others?
        numbered: bool,
    },
    /// Bought in.
    Bought {
        /// The supplier's last day.
        use_by: Option<MakersDate>,
        /// What the pack or the supplier's paper says of it.
        declared: Declared,
        /// Days that the pack gives once it is opened.
        once_opened: Option<u32>,
        /// What is in it.
        contents: Box<Contents>,
    },
}

/// What arrives.
#[derive(Debug)]
pub struct Receipt<'a> {
    /// When.
    pub moment: Moment,
    /// Where it is put.
    pub place: PlaceId,
    /// What it is.
    pub product: &'a Product,
    /// The product's place in the lists.
    pub product_key: i32,
    /// What it weighs.
    pub grams: Grams,
    /// How it is packed.
    pub packing: Packing,
    /// How it is kept, if not as its product is.
    pub state: Option<State>,
    /// Where it comes from.
    pub source: Source,
    /// What readings at the door show, if they show that it keeps without control.
    pub stable: Option<Stable>,
    /// The number of an approval that says it is ready, if one holds on that day.
    pub approved_ready: Option<String>,
    /// The law of the place.
    pub law: &'a Law,
    /// A word about it.
    pub note: Option<String>,
}

impl Receipt<'_> {
    /// Where everything with a species in it comes from.
    pub fn origin(&self) -> Origin {
        match &self.source {
            Source::Animal { id, .. } => Origin::One(*id),
            Source::Bought { .. } if self.product.species.is_some() => Origin::BOUGHT_MEAT,
            Source::Bought { .. } => Origin::NoSpecies,
        }
    }

    /// What the receipt adds to the record.
    ///
    /// # Errors
    /// A side that was received before, a species that is not the product's, weights that cannot be.
    pub fn plan(&self, code: LotCode) -> Result<Plan> {
        weight(self.grams, "grams")?;
        let packs = self.packing.packs(self.grams, "")?;
        let mut plan = Plan::default();
        match &self.source {
            Source::Animal {
                species: of,
                side,
                before,
                numbered,
                ..
            } => {
                self.species_agree(*of)?;
                side_is_new(*side, before)?;
                if !numbered {
                    plan.warnings.push(ReceiveSays::NewAnimal.into());
                }
            }
            Source::Bought {
                use_by,
                contents,
                declared,
                ..
            } => {
                let says_ready = declared.ready == Some(true) && self.product.raw;
                if says_ready && natural(self.product).is_none() {
                    let product = self.product.named();
                    plan.warnings
                        .push(ReceiveSays::RawOnTheList { product }.into());
                }
                let day = use_by.map(|of| of.day);
                plan.warnings
                    .extend(contents.warnings().into_iter().map(Into::into));
                if self.is_untold(contents) {
                    let product = self.product.named();
                    plan.warnings.push(ReceiveSays::NotTold { product }.into());
                }
                if let Some(date) = day.filter(|date| *date < self.moment.day) {
                    plan.warnings
                        .push(ReceiveSays::SupplierPast { date }.into());
                }
            }
        }
        plan.births.push(self.birth(code, packs)?);
        Ok(plan)
    }

    /// What arrived, judged by what is known of it: the same for a receipt that is taken in, and for one
    /// of which more is known since.
    ///
    /// # Errors
    /// None today: what arrives is never refused for its date.
    pub fn birth(&self, code: LotCode, packs: Vec<Grams>) -> Result<Birth> {
        let mut species: BTreeSet<Species> = self.product.species.into_iter().collect();
        let (mut cap, mut declared, mut once_opened) = (None, None, None);
        let mut allergens = self.product.allergens.clone();
        let (mut may_contain, mut supplied, mut told) = (BTreeSet::new(), None, Vec::new());
        let mut stops = Vec::new();
        match &self.source {
            Source::Animal { species: of, .. } => species.extend([*of]),
            Source::Bought {
                use_by,
                declared: of_pack,
                once_opened: days,
                contents,
            } => {
                (cap, declared, once_opened) = (*use_by, Some(*of_pack), *days);
                allergens = contents.allergens(self.product);
                may_contain = contents.may_contain.clone();
                supplied = Some(contents.supplied.clone());
                told = contents.reasons(&code, self.moment.day);
                let untold = self.is_untold(contents).then_some(self.moment.at);
                stops.extend(untold.map(|at| contents_unknown(at).into()));
            }
        }
        let approved = self.approved_ready.as_deref();
        let stable = self.stable.as_ref();
        let proven = received(self.product, declared, approved, stable);
        let dated = Making {
            product: self.product,
            kind: DeedKind::Receive,
            day: self.moment.day,
            parts: &[],
            supplier: cap,
            once_opened,
            packaging: None,
            is_controlled: proven.condition.stable.is_none(),
            stable: stable.map(|stable| stable.because.clone()),
            is_killed: false,
            approved: None,
            law: self.law,
            ready_keeps_its_day: false,
            as_it_happened: false,
            is_released: false,
            is_unfrozen_fish: false,
        }
        .date()?;
        Ok(Birth {
            code,
            product: self.product_key,
            grams: self.grams,
            origin: self.origin(),
            allergens,
            may_contain,
            supplied,
            species,
            born: PackNow::new(
                self.grams,
                self.place,
                self.state.unwrap_or(self.product.storage),
                BirthDate {
                    use_by: dated.use_by,
                    later: dated.later,
                    was_frozen: false,
                },
                self.moment.day,
            ),
            later: dated.later,
            condition: proven.condition,
            packaging: None,
            reasons: [
                Reason::all(Topic::Condition, proven.because),
                Reason::all(Topic::Date, dated.because),
                told,
            ]
            .concat(),
            stops,
            packs,
            note: self.note.clone(),
        })
    }

    /// Is it bought, made of several things, and nobody has told of which? What its name alone tells is one thing.
    fn is_untold(&self, contents: &Contents) -> bool {
        contents.is_untold(self.product) && !self.law.words.single.is_name_of(self.product)
    }

    fn species_agree(&self, animal: Species) -> Result<()> {
        match self.product.species {
            Some(product) if product != animal => {
                let detail = ReceiveSays::OtherSpecies {
                    product: self.product.code.clone(),
                    species: product,
                    animal,
                };
                Err(Refusal::cannot_be("animal.species", detail))
            }
            _ => Ok(()),
        }
    }
}

/// Refuses a side that is already here: the same one, or any where the whole animal was received.
fn side_is_new(side: Option<Side>, before: &[(Option<Side>, LotCode)]) -> Result<()> {
    let Some(side) = side else { return Ok(()) };
    let clash = before.iter().find_map(|(other, lot)| {
        let same = |other: &Side| *other == side || *other == Side::Whole || side == Side::Whole;
        Some((other.filter(same)?, lot.clone()))
    });
    match clash {
        Some((side, lot)) => {
            let detail = ReceiveSays::SideKnown { side, lot };
            Err(Refusal::new(RefusalKind::Clash, "animal.side", detail))
        }
        None => Ok(()),
    }
}
