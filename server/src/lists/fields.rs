//! The fields of the lists' entries: what a form asks for and what a column of a table may be called. A
//! field's name is the place of its value in the entry: `keep.days`. What is not among them (a recipe)
//! is told by a form of its own, and a form or a table leaves it as it is.

use super::List;
use domain::cure::{Alkali, Class, Method};
use domain::duties::mince::MinceKind;
use domain::heat::Food;
use domain::ingredients::Nature;
use domain::says::Says;
use domain::words::{
    Allergen, CurePart, KeepFrom, Natural, PlaceKind, ProductKind, Species, State,
};

/// A word that a field may have: as it is written, and for a reader.
pub type Choice = (&'static str, Says);

/// What may stand in a field.
#[derive(Debug, Clone, Copy)]
pub enum Sort {
    /// One line.
    Line,
    /// Several lines.
    Text,
    /// Yes or no.
    Yes,
    /// A whole figure.
    Whole,
    /// A figure.
    Figure,
    /// An amount of money, kept in hundredths.
    Money,
    /// One of some words.
    One(fn() -> Vec<Choice>),
    /// Several of some words.
    Many(fn() -> Vec<Choice>),
    /// Several lines of text, each one line: templates of a printer.
    Lines,
}

/// A field.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Where its value is in the entry.
    pub name: &'static str,
    /// What may stand there.
    pub sort: Sort,
    /// Must something stand there?
    pub needed: bool,
}

impl Field {
    /// What a column of a table is called that has it: money is written there as people write it.
    pub const fn column(&self) -> &'static str {
        match self.sort {
            Sort::Money if self.name.len() == "price_minor_per_kg".len() => {
                match self.name.as_bytes()[0] {
                    b'p' => "price_per_kg",
                    _ => "value_per_kg",
                }
            }
            _ => self.name,
        }
    }
}

const fn field(name: &'static str, sort: Sort) -> Field {
    Field {
        name,
        sort,
        needed: false,
    }
}

const fn needed(name: &'static str, sort: Sort) -> Field {
    Field {
        name,
        sort,
        needed: true,
    }
}

macro_rules! said {
    ($words:ident) => {
        || {
            let all = $words::ALL.iter();
            all.map(|word| (word.as_str(), word.says())).collect()
        }
    };
}

use Sort::{Figure, Line, Lines, Many, Money, One, Text, Whole, Yes};

const FARM: &[Field] = &[
    needed("code", Line),
    needed("name", Line),
    field("address", Text),
    field("phone", Line),
    field("country", Line),
    field("born_there", Yes),
    field("premises_id", Line),
    field("trichinae_certificate", Line),
];
const ABATTOIR: &[Field] = &[
    needed("number", Line),
    needed("name", Line),
    field("phone", Line),
    field("country", Line),
];
const SUPPLIER: &[Field] = &[
    needed("code", Line),
    needed("name", Line),
    field("address", Text),
    field("phone", Line),
    field("number", Line),
];
const PLACE: &[Field] = &[
    needed("code", Line),
    needed("name", Line),
    needed("kind", One(said!(PlaceKind))),
    field("scale_grams", Figure),
    field("limits.below_celsius", Figure),
    field("limits.below_fahrenheit", Figure),
    field("limits.above_celsius", Figure),
    field("limits.above_fahrenheit", Figure),
];
const PRINTER: &[Field] = &[
    needed("code", Line),
    needed("name", Line),
    needed("address", Line),
    field("certificate", Line),
    field("templates", Lines),
];
const PROBE: &[Field] = &[needed("code", Line), needed("name", Line)];

/// The fields of a product, in the order in which somebody is asked for them.
const PRODUCT: &[Field] = &[
    needed("code", Line),
    field("names.en", Line),
    field("names.fr", Line),
    field("customer_names.en", Line),
    field("customer_names.fr", Line),
    needed("kind", One(said!(ProductKind))),
    field("species", One(said!(Species))),
    field("raw", Yes),
    field("allergens", Many(said!(Allergen))),
    field("storage", One(said!(State))),
    field("keep.days", Whole),
    field("keep.from", One(said!(KeepFrom))),
    field("keep.day_one_counts", Yes),
    field("keep.freeze_day_counts", Yes),
    field("keep_if_stable.days", Whole),
    field("keep_if_stable.from", One(said!(KeepFrom))),
    field("keep_if_stable.day_one_counts", Yes),
    field("keep_if_stable.freeze_day_counts", Yes),
    field("controlled", Yes),
    field("stable_as", One(said!(Natural))),
    field("for_sale", Yes),
    field("price_minor_per_kg", Money),
    field("gtin", Line),
    field("till_number", Whole),
    field("face_cm2", Whole),
    field("panel_apart", Yes),
    field("cooking.en", Text),
    field("cooking.fr", Text),
    field("cut_style", Line),
    field("cut", Line),
    field("process", Line),
    field("value_minor_per_kg", Money),
    field("cooked_as", One(said!(Food))),
    field("nature", One(said!(Nature))),
    field("cure.class", One(said!(Class))),
    field("cure.method", One(said!(Method))),
    field("cure.heated", Yes),
    field("cure.nitrite", Yes),
    field("cure.salting", Line),
    field("cure.days", Whole),
    field("uncured.resembles", Yes),
    field("uncured.natural", Line),
    field("in_cure", One(said!(CurePart))),
    field("curing_salt.nitrite_percent", Figure),
    field("curing_salt.nitrite_of", One(said!(Alkali))),
    field("curing_salt.nitrate_percent", Figure),
    field("curing_salt.nitrate_of", One(said!(Alkali))),
    field("curing_salt.salt_percent", Figure),
    field("release.loss_percent", Figure),
    field("release.tolerance_points", Figure),
    field("release.days", Whole),
    field("release.water_activity", Figure),
    field("release.curve", Line),
    field("release.salting", Line),
    field("release.signature", Yes),
    field("standard.place", Line),
    field("standard.made_there", Yes),
    field("standard.mince", One(said!(MinceKind))),
    field("standard.steak", Yes),
    field("standard.tenderised", Yes),
    field("standard.cooking.method.en", Line),
    field("standard.cooking.method.fr", Line),
    field("standard.cooking.celsius", Figure),
    field("standard.cooking.fahrenheit", Figure),
    field("standard.cooking.hold_minutes", Figure),
    field("standard.loaf", Yes),
    field("standard.shank_bones_out", Yes),
    field("standard.bones_remain", Yes),
    field("standard.packed_in", Line),
    field("standard.protein_percent", Figure),
    field("standard.fat_percent", Figure),
    field("standard.collagen_percent", Figure),
    field("standard.shank_over_percent", Figure),
    field("standard.added_percent", Figure),
    field("standard.salt_percent", Figure),
    field("standard.water_percent", Figure),
];

/// The fields of a list; of recipes none: they are rows of parts.
pub const fn of(list: List) -> &'static [Field] {
    match list {
        List::Farms => FARM,
        List::Abattoirs => ABATTOIR,
        List::Suppliers => SUPPLIER,
        List::Places => PLACE,
        List::Printers => PRINTER,
        List::Probes => PROBE,
        List::Products => PRODUCT,
        List::Recipes => &[],
    }
}

/// Without this field, whatever else stands in its part of the entry is nothing: a keeping rule without days.
pub const HEADS: [&str; 4] = [
    "keep.days",
    "keep_if_stable.days",
    "cure.class",
    "uncured.resembles",
];
