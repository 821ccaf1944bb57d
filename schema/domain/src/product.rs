//! What a lot is: the entry of the kitchen's product list as it stood when the lot was made.

use crate::condition::natural;
use crate::cure::{Class, Method, Strength};
use crate::cure_room::ReleaseRule;
use crate::dates::KeepingRule;
use crate::grams::Grams;
use crate::gs1::Gtin;
use crate::heat::Food;
use crate::ingredients::Nature;
use crate::naming::StandardTold;
use crate::says::Texts;
use crate::words::{Allergen, CurePart, Natural, ProductKind, Species, State};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// One product: what it is, and what it does in each role that it has.
///
/// The roles stand side by side and are no enum, because one product has several: a boiled ham is cured,
/// cooked and sold; back fat is a piece of the carcass and the fat of a recipe; lard is rendered by a
/// process and has a place in an ingredient list. Only where two roles shut each other out is there an
/// enum ([`InCure`], [`YieldOf`]). A role that a product does not have is its `Default`.
#[derive(Debug, Clone, PartialEq)]
pub struct Product {
    /// The kitchen's word for it: `pork-belly`.
    pub code: String,
    /// Its name by language tag: `en`, `fr`.
    pub names: Arc<BTreeMap<String, String>>,
    /// Its names as a customer reads them, by language tag, where the house has others of its own; empty
    /// where it has none.
    pub sold_as: Arc<BTreeMap<String, String>>,
    /// What sort of thing it is.
    pub kind: ProductKind,
    /// Of which animal, if of one.
    pub species: Option<Species>,
    /// Must it be cooked before it is eaten?
    pub raw: bool,
    /// Allergens that it has of itself.
    pub allergens: BTreeSet<Allergen>,
    /// How its packs are kept when they are made.
    pub storage: State,
    /// How long it keeps.
    pub keeping: Keeping,
    /// What a piece of it is called where carcasses are cut: `ham`.
    pub cut: Option<String>,
    /// What its yield is held against, where it is held against anything.
    pub yields: Option<YieldOf>,
    /// As something cured.
    pub cured: Cured,
    /// How its cook is judged, for what is cooked here.
    pub cooked_as: Option<Food>,
    /// As a part of something else.
    pub part: AsPart,
    /// As something sold.
    pub sale: Sale,
    /// What is told of it for its name and standard.
    pub standard: StandardTold,
    /// How a customer cooks it, by language tag.
    pub cooking: BTreeMap<String, String>,
}

/// How long a product keeps.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Keeping {
    /// Its own simplest rule, if it has one.
    pub usual: Option<KeepingRule>,
    /// The rule that takes its place where readings show that it needs no time and temperature control.
    pub if_stable: Option<KeepingRule>,
    /// Does it need time and temperature control? Where nobody says so: if it is kept cold.
    pub controlled: Option<bool>,
    /// What it is that keeps by nature: salt, vinegar, rendered fat …
    pub stable_as: Option<Natural>,
}

impl Keeping {
    /// The rule that counts, by whether readings show that it needs no time and temperature control.
    pub fn rule(&self, is_stable: bool) -> Option<KeepingRule> {
        match is_stable {
            true => self.if_stable.or(self.usual),
            false => self.usual,
        }
    }
}

/// What a yield is held against, by its key: the cutting of a carcass or the process of a cook.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum YieldOf {
    /// The way that a carcass of it is cut: `pig-side`.
    CutStyle(String),
    /// The process that it comes out of: `pulled-pork-bone-in`.
    Process(String),
}

/// A product in the cure and in the cure room.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Cured {
    /// How it is cured, for what is.
    pub cure: Option<CuredAs>,
    /// How it hangs until it is released, for what does.
    pub hung: Option<Hung>,
    /// How it lies in its cure, for what is smoked or cooked afterwards.
    pub lies: Option<Lies>,
    /// That it is sold as uncured, for what is usually cured with nitrite.
    pub uncured: Option<Uncured>,
}

/// A product that hangs in the cure room until it is released.
#[derive(Debug, Clone, PartialEq)]
pub struct Hung {
    /// What must be met before a piece of it is released.
    pub release: ReleaseRule,
    /// The key of the curve that it dries along, where the trade has one.
    pub curve: Option<String>,
    /// The key of the way it is salted, for its calendar.
    pub salting: Option<String>,
}

/// How a product lies in a cure that it does not hang after.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Lies {
    /// The key of the way it is salted: how long it lies, how often it is turned.
    pub salting: Option<String>,
    /// The house's own days in the cure, where they are not those of the way.
    pub days: Option<u32>,
}

/// A product that goes into others.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct AsPart {
    /// What it is in an ingredient list, where its kind does not tell.
    pub nature: Option<Nature>,
    /// What it is in a cure, if it goes into one.
    pub in_cure: Option<InCure>,
}

/// What a product is in a cure.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum InCure {
    /// A curing salt of this strength; each lot has its own strength, which wins.
    CuringSalt(Strength),
    /// What else a cure is made of: salt, sugar …
    Other(CurePart),
}

/// A product over the counter, and what it is worth.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sale {
    /// Does the counter sell it?
    pub offered: bool,
    /// Counter price, in hundredths of the currency per kilogram.
    pub price_minor_per_kg: Option<i64>,
    /// What a kilogram is worth where it is parted from the rest, if that is not its price.
    pub value_minor_per_kg: Option<i64>,
    /// Its GTIN, if GS1 has given the kitchen numbers.
    pub gtin: Option<Gtin>,
    /// Its number at the shop's own till.
    pub till_number: Option<u64>,
    /// The face of its pack in square centimetres: the law's heights of letters go by it.
    pub face_cm2: Option<u32>,
    /// Does its panel on safe handling stand on a second label, where the product says so or says no?
    pub panel_apart: Option<bool>,
}

impl Sale {
    /// What a kilogram is worth where it is parted from the rest, in hundredths of the currency.
    pub fn worth_minor_per_kg(&self) -> Option<i64> {
        self.value_minor_per_kg.or(self.price_minor_per_kg)
    }

    /// The counter's price of a pack, in hundredths of the currency, rounded half up.
    pub fn price_minor(&self, grams: Grams) -> Option<i64> {
        let per_kg = i128::from(self.price_minor_per_kg?);
        let price = (per_kg * i128::from(grams.milligrams()) + 500_000) / 1_000_000;
        i64::try_from(price).ok()
    }
}

impl Allergen {
    /// Is it a fish, a crustacean or a mollusc?
    pub const fn is_of_the_water(self) -> bool {
        use Allergen::*;
        matches!(
            self,
            Anchovy
                | Bass
                | Cod
                | Flounder
                | Haddock
                | Hake
                | Herring
                | Mackerel
                | Pollock
                | Salmon
                | Sardine
                | Sole
                | Trout
                | Tuna
                | Fish
                | Crab
                | Crayfish
                | Lobster
                | Prawn
                | Shrimp
                | Crustacean
                | Clam
                | Mussel
                | Octopus
                | Oyster
                | Scallop
                | Snail
                | Squid
                | Mollusc
        )
    }

    /// Is it food of an animal: of the water, egg or milk?
    pub const fn is_of_an_animal(self) -> bool {
        self.is_of_the_water() || matches!(self, Allergen::Egg | Allergen::Milk)
    }

    /// Is it a cereal with gluten?
    const fn is_cereal(self) -> bool {
        use Allergen::*;
        matches!(self, Wheat | Spelt | Rye | Barley | Oats | Triticale)
    }

    /// Is it often there beside another without a second food: cereals among each other, sulphites in what they
    /// keep?
    const fn comes_with_others(self) -> bool {
        self.is_cereal() || matches!(self, Allergen::Sulphites)
    }
}

impl Product {
    /// Is it surely made of several things? A mix is, but for meat that is only ground; so is what brings the
    /// allergens of several sources. A curing salt tells its parts by its strength.
    pub fn is_compound(&self) -> bool {
        let ground = self.raw && self.species.is_some() && self.allergens.is_empty();
        let mix = self.kind == ProductKind::Mixed && !ground;
        let sources = self.allergens.iter().filter(|of| !of.comes_with_others());
        let cereal = self.allergens.iter().any(|of| of.is_cereal());
        (mix || sources.count() + usize::from(cereal) > 1) && self.part.in_cure.is_none()
    }

    /// Is it plainly made of several things where it is bought: a mix, something cured or cooked? A curing salt
    /// tells its parts by its strength.
    pub fn is_made_of_several(&self) -> bool {
        use ProductKind::{Cooked, Cured, Mixed};
        let plainly = matches!(self.kind, Mixed | Cured | Cooked) && self.part.in_cure.is_none();
        plainly || self.is_compound()
    }

    /// A product of which nothing is known yet: an ingredient, ready to eat, kept chilled.
    pub fn unnamed() -> Product {
        Product {
            code: String::new(),
            names: Arc::default(),
            sold_as: Arc::default(),
            kind: ProductKind::Ingredient,
            species: None,
            raw: false,
            allergens: BTreeSet::new(),
            storage: State::Chilled,
            keeping: Keeping::default(),
            cut: None,
            yields: None,
            cured: Cured::default(),
            cooked_as: None,
            part: AsPart::default(),
            sale: Sale::default(),
            standard: StandardTold::default(),
            cooking: BTreeMap::new(),
        }
    }

    /// Does it need time and temperature control to be safe? Where nobody says, what is kept cold does: a bought
    /// ingredient too, unless it is of the closed list of what keeps by what it is, or goes into a cure.
    pub fn is_controlled(&self) -> bool {
        let keeps = || natural(self).is_some() || self.part.in_cure.is_some();
        let bought = self.kind == ProductKind::Ingredient;
        let by_storage = || self.storage != State::Ambient && !(bought && keeps());
        self.keeping.controlled.unwrap_or_else(by_storage)
    }

    /// Does its entry claim of food of animals, or of what a kitchen makes of several things, that it keeps
    /// without being kept cold? That is nothing that a list can know.
    pub fn claims_room(&self) -> bool {
        let ambient = self.storage == State::Ambient && self.is_perishable();
        ambient || self.keeping.controlled == Some(false) && self.species.is_some()
    }

    /// Is it of a sort that has to be kept cold, unless something shows otherwise?
    pub fn is_perishable(&self) -> bool {
        self.species.is_some() || self.kind.has_parts() || self.is_controlled()
    }

    /// Does it hang until it is released?
    pub fn is_hung(&self) -> bool {
        self.cured.hung.is_some()
    }

    /// How strong it is on the list, if it is a curing salt.
    pub fn curing_salt(&self) -> Option<Strength> {
        match self.part.in_cure {
            Some(InCure::CuringSalt(strength)) => Some(strength),
            _ => None,
        }
    }

    /// Its name for a sentence, in the languages that it has; else the code.
    pub fn named(&self) -> Texts {
        match self.names.is_empty() {
            true => Texts::from(self.code.as_str()),
            false => Texts::new((*self.names).clone()),
        }
    }

    /// The names that a label has: those for customers, and the house's own in a language that has none.
    pub fn label_names(&self) -> &Arc<BTreeMap<String, String>> {
        match self.sold_as.is_empty() {
            true => &self.names,
            false => &self.sold_as,
        }
    }

    /// The name that a label has in a language, else in English, else any, else the code.
    pub fn label_name(&self, language: &str) -> &str {
        let names = self.label_names();
        let name = names.get(language).or_else(|| names.get("en"));
        name.or_else(|| names.values().next()).unwrap_or(&self.code)
    }

    /// The name in a language, else in English, else any, else the code.
    pub fn name(&self, language: &str) -> &str {
        let name = self.names.get(language).or_else(|| self.names.get("en"));
        name.or_else(|| self.names.values().next())
            .unwrap_or(&self.code)
    }
}

/// What is said of a product that is sold as uncured.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Uncured {
    /// Does it look, taste and cut like the cured one?
    pub resembles: bool,
    /// A natural ingredient that brings nitrite: celery powder and the like.
    pub natural: Option<String>,
}

/// How a product is cured: what the limits divide by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CuredAs {
    /// What is cured.
    pub class: Class,
    /// How, where the step does not say otherwise.
    pub method: Method,
    /// Will it be cooked in this kitchen? Nothing where nobody has said.
    pub heated: Option<bool>,
    /// Is it cured with nitrite or nitrate? Nothing where nobody has said: with salt alone, or with what goes in.
    pub nitrite: Option<bool>,
}

/// One part of a recipe, by weight.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// The product's code.
    pub product: String,
    /// Its weight in the batch that the recipe describes.
    pub grams: Grams,
}
