//! Standards of meat products, as the file has them.

use super::each;
use crate::Bad;
use crate::entry::{BoundEntry, Number, known};
use domain::duties::{cured_pork, dry_cured, meat_protein, mince, sale};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// Cured pork that has a standard.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CuredPorkEntry {
    /// Least protein by group, in percent of the fat-free part.
    pff: Vec<PffEntry>,
    /// The words that follow from it.
    wording: WordingEntry,
    /// Most fat in ham patties, in percent.
    patty_fat: BoundEntry,
    /// Most shank meat over what is normal in chopped ham, in percent.
    shank_over_normal: BoundEntry,
    /// Finished weight of a dry-cured piece, in percent of fresh.
    dry_yield: BoundEntry,
    /// Its salt with nitrite or nitrate, in percent.
    salt: BoundEntry,
    /// Its brine without, in percent.
    brine: BoundEntry,
    /// Or its water activity without.
    water_activity: BoundEntry,
    /// Times of the standard that are not enforced.
    times: Vec<TimeEntry>,
    /// Core while a "country" piece dries or smokes, in degrees Fahrenheit; not enforced.
    country_core: BoundEntry,
    /// Weight of bacon, in percent of the fresh belly.
    bacon_yield: BoundEntry,
}

/// Least protein of a group.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PffEntry {
    /// The group: `cooked-ham` …
    kind: String,
    /// For the bare name.
    plain: BoundEntry,
    /// With natural juices.
    natural_juices: Option<BoundEntry>,
    /// With water added.
    water_added: Option<BoundEntry>,
}

/// Mandated words beside the name.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WordingEntry {
    /// Where they stand.
    row: String,
    /// Mandated: after the name.
    mandated_natural_juices: String,
    /// Mandated: after the name.
    mandated_water_added: String,
    /// Mandated: after the name, with `{}` for the percentage.
    mandated_and_water: String,
}

/// A time of the standard.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TimeEntry {
    /// For which name: `country`, `dry-cured`.
    claim: String,
    /// Of the whole process, or of curing and equalising?
    whole: bool,
    /// Days for a ham.
    ham: BoundEntry,
    /// Days for a shoulder.
    shoulder: BoundEntry,
}

impl CuredPorkEntry {
    pub fn standards(self, rows: &Rows) -> Result<cured_pork::Standards, Bad> {
        let least = |entry: PffEntry| {
            let maybe = |bound: Option<BoundEntry>| bound.map(|it| it.bound(rows)).transpose();
            Ok(cured_pork::LeastProtein {
                kind: word!(cured_pork::PffKind, &entry.kind)?,
                plain: entry.plain.bound(rows)?,
                natural_juices: maybe(entry.natural_juices)?,
                water_added: maybe(entry.water_added)?,
            })
        };
        let time = |entry: TimeEntry| {
            Ok(cured_pork::Time {
                claim: word!(dry_cured::Claim, &entry.claim)?,
                whole: entry.whole,
                ham: entry.ham.bound(rows)?,
                shoulder: entry.shoulder.bound(rows)?,
            })
        };
        Ok(cured_pork::Standards {
            pff: each(self.pff, least)?,
            wording: cured_pork::PffWording {
                row: known(rows, &self.wording.row)?,
                natural_juices: self.wording.mandated_natural_juices,
                water_added: self.wording.mandated_water_added,
                and_water: self.wording.mandated_and_water,
            },
            patty_fat: self.patty_fat.bound(rows)?,
            shank_over_normal: self.shank_over_normal.bound(rows)?,
            dry_yield: self.dry_yield.bound(rows)?,
            salt: self.salt.bound(rows)?,
            brine: self.brine.bound(rows)?,
            water_activity: self.water_activity.bound(rows)?,
            times: each(self.times, time)?,
            country_core: self.country_core.bound(rows)?,
            bacon_yield: self.bacon_yield.bound(rows)?,
        })
    }
}

/// Meat protein in solid cuts with water or additives.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MeatProteinEntry {
    /// Cooked, in percent.
    cooked: BoundEntry,
    /// Raw, in percent.
    raw: BoundEntry,
    /// Products that it does not reach, in lower case.
    not_for: Vec<String>,
    /// A solid cut: so much of the weight in pieces of the weight below, in percent.
    solid_part: BoundEntry,
    /// Grams that a piece weighs at least.
    solid_piece: BoundEntry,
    /// Where the solid cut stands.
    solid_row: String,
}

impl MeatProteinEntry {
    pub fn least(self, rows: &Rows) -> Result<meat_protein::LeastMeatProtein, Bad> {
        Ok(meat_protein::LeastMeatProtein {
            cooked: self.cooked.bound(rows)?,
            raw: self.raw.bound(rows)?,
            not_for: self.not_for,
            solid_part: self.solid_part.bound(rows)?,
            solid_piece: self.solid_piece.bound(rows)?,
            solid_row: known(rows, &self.solid_row)?,
        })
    }
}

/// What mince may be.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct MinceEntry {
    /// By sort: `lean`, `beef`, `with-pork`, `other`.
    kinds: Vec<LimitEntry>,
    /// The row by which a figure met exactly passes.
    edge: String,
    /// Salt in percent: this much is out already.
    salt_under: BoundEntry,
    /// The row by which thawed mince is not frozen again.
    not_refrozen: String,
    /// Meat as an ingredient: `mammal`, `pig`, `bird-or-rabbit`.
    meat: Vec<LimitEntry>,
    /// Collagen is so many times hydroxyproline.
    collagen_factor: Number,
}

/// The most fat, and the most collagen in meat protein, both in percent.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LimitEntry {
    /// Of what.
    kind: String,
    /// Fat.
    fat: BoundEntry,
    /// Collagen in meat protein.
    collagen: BoundEntry,
}

impl LimitEntry {
    fn limit<Kind: Copy>(
        self,
        rows: &Rows,
        all: &[Kind],
        spelt: &[&str],
    ) -> Result<mince::MinceLimit<Kind>, Bad> {
        Ok(mince::MinceLimit {
            kind: super::word_of(&self.kind, all, spelt)?,
            fat: self.fat.bound(rows)?,
            collagen: self.collagen.bound(rows)?,
        })
    }
}

impl MinceEntry {
    pub fn limits(self, rows: &Rows) -> Result<mince::Limits, Bad> {
        use mince::{MeatKind, MinceKind};
        Ok(mince::Limits {
            kinds: each(self.kinds, |it| {
                it.limit(rows, MinceKind::ALL, MinceKind::SPELT)
            })?,
            edge: known(rows, &self.edge)?,
            salt_under: self.salt_under.bound(rows)?,
            not_refrozen: known(rows, &self.not_refrozen)?,
            meat: each(self.meat, |it| {
                it.limit(rows, MeatKind::ALL, MeatKind::SPELT)
            })?,
            collagen_factor: self.collagen_factor.0,
        })
    }
}

/// The most of one animal that is still a retail sale.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct SaleEntry {
    /// The animal: `cattle`, `calf`, `sheep`, `pig`, `goat`.
    head: String,
    /// In pounds avoirdupois.
    pounds: BoundEntry,
}

impl SaleEntry {
    pub fn most(self, rows: &Rows) -> Result<sale::Most, Bad> {
        Ok(sale::Most {
            head: word!(sale::Head, &self.head)?,
            pounds: self.pounds.bound(rows)?,
        })
    }
}
