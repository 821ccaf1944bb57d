//! The kitchen's lists on the wire. They are kept as they are written, version by version.

use super::cures::{CuredAsEntry, CuringSalt, FoodWord, NatureWord, ReleaseEntry};
pub use super::kitchen::{Approval, KitchenEntry};
use super::limits::LimitsEntry;
pub use super::recipes::{PartEntry, RecipeEntry};
use super::standard::StandardEntry;
use super::{
    AllergenWord, Amount, Certificate, Code, CurePartWord, KeepFromWord, Line, NaturalWord, Note,
    PlaceKindWord, ProductKindWord, SpeciesWord, StateWord, Weight, Word,
};
use domain::cure::Strength;
use domain::dates::KeepingRule;
use domain::gs1::Gtin;
use domain::ingredients::Nature;
use domain::product::{AsPart, Cured, InCure, Keeping, Product, Sale, Uncured, YieldOf};
use domain::words;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// What is told when it is read is not kept: it would be wrong tomorrow.
pub(super) fn never_kept<T>(_: &Option<T>) -> bool {
    true
}

/// A farm.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FarmEntry {
    /// Its code: 2 or 3 capital letters without I, L, O, U.
    pub code: Line,
    /// Its name.
    pub name: Line,
    /// Its address.
    pub address: Option<Note>,
    /// The telephone on which somebody answers when it matters.
    pub phone: Option<Line>,
    /// Its country.
    pub country: Option<Line>,
    /// Are its animals born in that country, too? No paper of it, no.
    pub born_there: Option<bool>,
    /// Its premises identification.
    pub premises_id: Option<Line>,
    /// The number of its certificate as a negligible risk for trichinae, if it has one.
    pub trichinae_certificate: Option<Line>,
}

/// An abattoir.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AbattoirEntry {
    /// Its establishment number.
    pub number: Line,
    /// Its name.
    pub name: Line,
    /// Its country.
    pub country: Option<Line>,
    /// The telephone on which somebody answers when it matters.
    pub phone: Option<Line>,
}

/// A supplier.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SupplierEntry {
    /// Its code.
    pub code: Line,
    /// Its name.
    pub name: Line,
    /// Its address.
    pub address: Option<Note>,
    /// The telephone on which somebody answers when it matters.
    pub phone: Option<Line>,
    /// Its establishment number.
    pub number: Option<Line>,
}

/// A place.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PlaceEntry {
    /// Its code.
    pub code: Code,
    /// Its name.
    pub name: Line,
    /// What it is for.
    pub kind: PlaceKindWord,
    /// The step of the scale there: 0.1 or 1.
    pub scale_grams: Option<Weight>,
    /// How cold or warm it has to be.
    pub limits: Option<LimitsEntry>,
}

/// A label printer that speaks IPP.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PrinterEntry {
    /// Its code.
    pub code: Code,
    /// What people call it.
    pub name: Line,
    /// Where it is: `ipp://host:port/ipp/print`, or `ipps://…` for an encrypted line.
    pub address: Line,
    /// The SHA-256 fingerprint of the certificate that a printer behind `ipps://` is known by. Nothing is
    /// sent to any other; `GET /api/printers/{code}/state` tells which one it shows.
    pub certificate: Option<Certificate>,
    /// The labels that it is the usual printer for: of these it prints the one that suits a pack, if
    /// none is asked for.
    pub templates: Option<Vec<Line>>,
}

/// A probe, by the name that stands on it.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProbeEntry {
    /// Its code.
    pub code: Code,
    /// What people call it.
    pub name: Line,
}

/// A product.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ProductEntry {
    /// Its code.
    pub code: Code,
    /// Its names by language.
    pub names: BTreeMap<Line, Line>,
    /// Its names for customers by language, where the house calls it otherwise: on labels and in ingredient lists.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub customer_names: BTreeMap<Line, Line>,
    /// How a customer cooks it, by language: on the pack.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub cooking: BTreeMap<Line, Line>,
    /// What sort of thing it is.
    pub kind: ProductKindWord,
    /// Of which animal, if of one.
    pub species: Option<SpeciesWord>,
    /// Must it be cooked before it is eaten? If left out: yes.
    #[serde(default = "is_raw")]
    pub raw: bool,
    /// Allergens that it has of itself.
    #[serde(default)]
    pub allergens: Vec<AllergenWord>,
    /// How it is kept.
    #[serde(default = "chilled")]
    pub storage: StateWord,
    /// How long it keeps.
    pub keep: Option<KeepEntry>,
    /// How long it keeps instead, where readings show that it needs no time and temperature control.
    pub keep_if_stable: Option<KeepEntry>,
    /// Does it need time and temperature control to be safe? If left out: where it is kept cold,
    /// unless it is a bought ingredient that `stable_as` names or that goes into a cure.
    pub controlled: Option<bool>,
    /// What it is that keeps by nature, without time and temperature control: `salt`, `vinegar`,
    /// `rendered-fat` … Anything else needs readings or an approval.
    pub stable_as: Option<NaturalWord>,
    /// What must be met before a cured piece of it is released.
    pub release: Option<ReleaseEntry>,
    /// How it is cured, for what is.
    pub cure: Option<CuredAsEntry>,
    /// The key of the way that a carcass of it is cut: `pig-side`, `lamb-primal`, `beef-hindquarter`, `duck-parts`. Its pieces
    /// and what each usually weighs are then shown at the bench and held against the scale.
    pub cut_style: Option<Code>,
    /// Which piece of such a carcass it is: `ham`, `legs`, `chuck`, `breasts`.
    pub cut: Option<Code>,
    /// The key of the process whose yield it is held against: `pulled-pork-bone-in`, `bacon-hot-smoked`, `lard`, `stock`.
    pub process: Option<Code>,
    /// What a kilogram sells for where it is parted from the rest, in hundredths; its price if left out.
    pub value_minor_per_kg: Option<Amount>,
    /// What it is in an ingredient list: `fat`, `spice`, `casing` … If left out: by its kind.
    pub nature: Option<NatureWord>,
    /// How its cook is judged, for what is cooked here: `roast`, `ground`, `poultry` …
    pub cooked_as: Option<FoodWord>,
    /// What it is in a cure, if it goes into one.
    pub in_cure: Option<CurePartWord>,
    /// How strong it is, if it is a curing salt. Each lot's own strength wins.
    pub curing_salt: Option<CuringSalt>,
    /// That it is sold as uncured, for what is usually cured with nitrite.
    pub uncured: Option<UncuredEntry>,
    /// Counter price in hundredths of the currency per kilogram.
    pub price_minor_per_kg: Option<Amount>,
    /// Its GTIN, under the kitchen's own GS1 prefix.
    pub gtin: Option<Line>,
    /// Its number at the shop's own till; the kitchen's `till_layout` says how it is written.
    pub till_number: Option<u64>,
    /// The face of its pack, on which the label stands, in square centimetres: the law's heights of letters go by it, by
    /// the label's own size if left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face_cm2: Option<u32>,
    /// Does its panel on safe handling stand on a second label of the pack? As the kitchen has it, if left out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub panel_apart: Option<bool>,
    /// Does the counter sell it? If left out: where it has a price.
    pub for_sale: Option<bool>,
    /// What its name and its standard hang on, where nothing else shows it.
    pub standard: Option<StandardEntry>,
    /// Told when it is written; not looked at when it is sent back: what stands against its name.
    #[serde(default, skip_serializing_if = "never_kept")]
    #[schema(read_only, value_type = Option<Vec<super::answers::FindingRead>>)]
    pub warnings: Option<serde_json::Value>,
}

fn plain(texts: &BTreeMap<Line, Line>) -> BTreeMap<String, String> {
    let texts = texts.iter();
    texts
        .map(|(language, text)| (language.0.clone(), text.0.clone()))
        .collect()
}

fn made() -> KeepFromWord {
    Word(words::KeepFrom::Made)
}

fn is_day_one() -> bool {
    true
}

fn is_raw() -> bool {
    true
}

fn chilled() -> StateWord {
    Word(words::State::Chilled)
}

/// What is said of a product that is sold as uncured.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct UncuredEntry {
    /// Does it look, taste and cut like the cured one?
    pub resembles: bool,
    /// A natural ingredient that brings nitrite, such as celery powder.
    pub natural: Option<Line>,
}

impl UncuredEntry {
    /// The domain's claim.
    fn uncured(&self) -> Uncured {
        Uncured {
            resembles: self.resembles,
            natural: self.natural.as_ref().map(|name| name.0.clone()),
        }
    }
}

/// A product's own keeping rule.
#[derive(Debug, Clone, Copy, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepEntry {
    /// How many days, at most 3 650.
    pub days: u32,
    /// Counted from which event. If left out: from its making.
    #[serde(default = "made")]
    pub from: KeepFromWord,
    /// Is the day of the event day 1? If left out: yes, the stricter reading.
    #[serde(default = "is_day_one")]
    pub day_one_counts: bool,
    /// Is the day of freezing one of the days used? If left out: yes, the stricter reading.
    pub freeze_day_counts: Option<bool>,
}

impl KeepEntry {
    /// The domain's rule.
    fn keep(self) -> KeepingRule {
        KeepingRule {
            days: self.days,
            from: self.from.0,
            day_one_counts: self.day_one_counts,
            freeze_day_counts: self.freeze_day_counts.unwrap_or(true),
        }
    }
}

impl ProductEntry {
    /// The domain's product.
    pub fn product(&self) -> Product {
        Product {
            code: self.code.0.clone(),
            names: plain(&self.names).into(),
            sold_as: self.sold_as().into(),
            cooking: plain(&self.cooking),
            kind: self.kind.0,
            species: self.species.map(|species| species.0),
            raw: self.raw,
            allergens: self.allergens.iter().map(|allergen| allergen.0).collect(),
            storage: self.storage.0,
            keeping: Keeping {
                usual: self.keep.map(KeepEntry::keep),
                if_stable: self.keep_if_stable.map(KeepEntry::keep),
                controlled: self.controlled,
                stable_as: self.stable_as.map(|word| word.0),
            },
            cut: self.cut.as_ref().map(|key| key.0.clone()),
            yields: self.yields(),
            cured: Cured {
                cure: self.cure.as_ref().map(CuredAsEntry::cured_as),
                hung: self.release.as_ref().map(ReleaseEntry::hung),
                lies: self.cure.as_ref().and_then(CuredAsEntry::lies),
                uncured: self.uncured.as_ref().map(UncuredEntry::uncured),
            },
            cooked_as: self.cooked_as.map(|food| food.0),
            part: AsPart {
                nature: self.nature.map(|nature| nature.0),
                in_cure: self.in_cure(),
            },
            sale: self.sale(),
            standard: self
                .standard
                .as_ref()
                .map(StandardEntry::told)
                .unwrap_or_default(),
        }
    }

    /// The names that a customer reads, with the house's own where there is none; empty where there is none at all.
    fn sold_as(&self) -> BTreeMap<String, String> {
        if self.customer_names.is_empty() {
            return BTreeMap::new();
        }
        let mut names = plain(&self.names);
        names.extend(plain(&self.customer_names));
        names
    }

    /// A carcass is held against its cuts, whatever process is named besides.
    fn yields(&self) -> Option<YieldOf> {
        let style = self.cut_style.as_ref();
        let process = self.process.as_ref();
        style
            .map(|key| YieldOf::CutStyle(key.0.clone()))
            .or_else(|| process.map(|key| YieldOf::Process(key.0.clone())))
    }

    /// A curing salt is one, whatever else it is said to be in a cure. What is only called a mix that cures, or
    /// said to keep as curing salt does, is one too: nobody knows how strong.
    fn in_cure(&self) -> Option<InCure> {
        let salt = self.curing_salt.as_ref().map(CuringSalt::strength);
        let keeps = self.stable_as.map(|word| word.0) == Some(words::Natural::CuringSalt);
        let called = keeps || self.nature.map(|nature| nature.0) == Some(Nature::Cure);
        salt.map(InCure::CuringSalt)
            .or_else(|| self.in_cure.map(|part| InCure::Other(part.0)))
            .or_else(|| called.then(|| InCure::CuringSalt(Strength::unknown())))
    }

    fn sale(&self) -> Sale {
        let gtin = self.gtin.as_ref();
        Sale {
            offered: self.for_sale.unwrap_or(self.price_minor_per_kg.is_some()),
            price_minor_per_kg: self.price_minor_per_kg.map(|price| price.0),
            value_minor_per_kg: self.value_minor_per_kg.map(|value| value.0),
            gtin: gtin.and_then(|gtin| Gtin::parse(&gtin.0).ok()),
            till_number: self.till_number,
            face_cm2: self.face_cm2,
            panel_apart: self.panel_apart,
        }
    }
}
