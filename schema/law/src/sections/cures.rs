//! The file of curing salts: limits, strengths, brine, names and claims.

use super::cures_claim::ClaimEntry;
use super::cures_limit::LimitEntry;
use crate::Bad;
use crate::entry::{BoundEntry, Number, TextEntry, known};
use crate::file::Subject;
use domain::cure::{
    Alternative, AtomicMasses, CureRules, KnownStrength, Method, NameOf, Part, Plausible,
    Salometer, SalometerScale, ScaleClass, ScaleRule,
};
use domain::measure::Percent;
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The rules of a place for curing salts.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CuresEntry {
    /// The atomic masses that conversions between salts and ions are worked out from.
    masses: MassesEntry,
    /// How much of a rind-on belly takes no cure, in per cent of its weight.
    skin: Option<BoundEntry>,
    /// The row by which the limits are in force now, where that is a question of its own.
    in_force: Option<String>,
    /// The row of the formula that each method is counted by, by the method's word.
    #[serde(default)]
    formulas: BTreeMap<String, String>,
    /// Every single limit, in ppm.
    limits: Vec<LimitEntry>,
    /// Sets of figures for pumped bacon, one of which must be met whole.
    #[serde(default)]
    pumped_bacon: Vec<AlternativeEntry>,
    /// The row that says nitrite alone is not for a ham that ages for months.
    long_aged: Option<String>,
    /// The strengths that are on sale.
    strengths: Vec<StrengthEntry>,
    /// Below what a percent looks like a fraction.
    fraction_below: FractionEntry,
    /// What a salometer's degrees mean.
    salometers: Vec<SalometerEntry>,
    /// The most salt that a brine can hold, in per cent of the brine.
    saturated: BoundEntry,
    /// How fine a scale must be.
    weighing: WeighingEntry,
    /// How the parts of a cure are named on a label.
    names: Vec<NameEntry>,
    /// When a product may say that it is not cured with nitrite.
    #[serde(default)]
    claim: ClaimEntry,
}

/// Atomic masses.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MassesEntry {
    /// The row that they stand in.
    row: String,
    /// Na.
    sodium: Number,
    /// K.
    potassium: Number,
    /// N.
    nitrogen: Number,
    /// O.
    oxygen: Number,
}

/// A set of figures for pumped bacon.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct AlternativeEntry {
    /// Its row.
    row: String,
    /// The nitrite: one figure, or from and to.
    nitrite: Vec<LimitEntry>,
    /// The accelerator.
    ascorbate: LimitEntry,
    /// Sugar, in per cent of the meat.
    sugar: Option<BoundEntry>,
    /// Does it need a lactic starter?
    #[serde(default)]
    starter: bool,
}

/// A strength that is on sale.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct StrengthEntry {
    /// Where it stands.
    row: String,
    /// What the trade calls it.
    name: TextEntry,
    /// Nitrite, in per cent by weight.
    nitrite: Number,
    /// Nitrate, in per cent by weight.
    nitrate: Option<Number>,
    /// Is it a weak one that looks like the strong one?
    #[serde(default)]
    weak: bool,
}

/// Below what a percent looks like a fraction typed for it, each in per cent.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct FractionEntry {
    /// The row behind it.
    row: String,
    /// The strength of a curing salt.
    strength: Number,
    /// Salt or sugar of the meat.
    salt: Number,
    /// Curing salt of the meat.
    curing_salt: Number,
    /// Pump or pick-up of the meat.
    taken: Number,
}

/// What the degrees of one salometer mean.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SalometerEntry {
    /// Where it stands.
    row: String,
    /// `60F`, `38F`, `25-percent`.
    scale: String,
    /// Per cent of salt in the brine for one degree, where that is known.
    percent_per_degree: Option<Number>,
}

/// How fine a scale must be.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WeighingEntry {
    /// Below how many grams of meat a fine scale is needed.
    small_meat: BoundEntry,
    /// How fine it must be then, in grams.
    small_division: BoundEntry,
    /// The smallest sensible load, class by class; the first line that fits counts.
    divisions: Vec<DivisionsEntry>,
}

/// The smallest sensible load of one class of balance.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DivisionsEntry {
    /// `I`, `II`, `III`, `IIII`.
    class: String,
    /// The coarsest division, in grams, that the line is for.
    division_at_most: Option<Number>,
    /// The load in divisions.
    load: BoundEntry,
}

/// How a part of a cure is named.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NameEntry {
    /// Where it stands.
    row: String,
    /// Which part: `salt`, `sodium-nitrite`.
    part: String,
    /// In English.
    en: String,
    /// In French.
    fr: String,
    /// The number of the additive.
    number: Option<String>,
    /// The class of additive, in English and French.
    class: Option<(String, String)>,
}

/// A word of a vocabulary, or what is wrong with it.
pub(super) fn word<T>(text: &str, found: Option<T>) -> Result<T, Bad> {
    found.ok_or_else(|| Bad::new(format!("{text:?} is not a word that is known here")))
}

impl AlternativeEntry {
    fn alternative(&self, rows: &Rows) -> Result<Alternative, Bad> {
        let nitrite = self.nitrite.iter();
        Ok(Alternative {
            row: known(rows, &self.row)?,
            nitrite: nitrite
                .map(|limit| limit.limit(rows))
                .collect::<Result<_, _>>()?,
            ascorbate: self.ascorbate.limit(rows)?,
            sugar: self
                .sugar
                .as_ref()
                .map(|sugar| sugar.bound(rows))
                .transpose()?,
            starter: self.starter,
        })
    }
}

impl WeighingEntry {
    fn weighing(&self, rows: &Rows) -> Result<ScaleRule, Bad> {
        let lines = self.divisions.iter();
        Ok(ScaleRule {
            small_meat: Some(self.small_meat.bound(rows)?),
            small_division: Some(self.small_division.bound(rows)?),
            divisions: lines
                .map(|line| {
                    Ok((
                        word(&line.class, ScaleClass::parse(&line.class))?,
                        line.division_at_most.map(|Number(grams)| grams),
                        line.load.bound(rows)?,
                    ))
                })
                .collect::<Result<_, Bad>>()?,
        })
    }
}

impl Subject for CuresEntry {
    type Rules = CureRules;

    fn rules(self, rows: &Rows) -> Result<CureRules, Bad> {
        known(rows, &self.fraction_below.row)?;
        let strength = |entry: StrengthEntry| -> Result<KnownStrength, Bad> {
            Ok(KnownStrength {
                row: known(rows, &entry.row)?,
                name: entry.name.into(),
                nitrite: entry.nitrite.percent(),
                nitrate: entry.nitrate.map_or(Percent::default(), Number::percent),
                weak: entry.weak,
            })
        };
        let salometer = |entry: SalometerEntry| -> Result<SalometerScale, Bad> {
            Ok(SalometerScale {
                row: known(rows, &entry.row)?,
                scale: word(&entry.scale, Salometer::parse(&entry.scale))?,
                percent_per_degree: entry.percent_per_degree.map(|Number(each)| each),
            })
        };
        let name = |entry: NameEntry| -> Result<NameOf, Bad> {
            Ok(NameOf {
                row: known(rows, &entry.row)?,
                part: word(&entry.part, Part::parse(&entry.part))?,
                en: entry.en,
                fr: entry.fr,
                number: entry.number,
                class: entry.class,
            })
        };
        Ok(CureRules {
            masses: AtomicMasses {
                row: known(rows, &self.masses.row)?,
                sodium: self.masses.sodium.0,
                potassium: self.masses.potassium.0,
                nitrogen: self.masses.nitrogen.0,
                oxygen: self.masses.oxygen.0,
            },
            skin: self.skin.map(|skin| skin.bound(rows)).transpose()?,
            in_force: self.in_force.map(|row| known(rows, &row)).transpose()?,
            formulas: self
                .formulas
                .iter()
                .map(|(method, row)| Ok((word(method, Method::parse(method))?, known(rows, row)?)))
                .collect::<Result<_, Bad>>()?,
            limits: self
                .limits
                .iter()
                .map(|limit| limit.limit(rows))
                .collect::<Result<_, _>>()?,
            pumped_bacon: self
                .pumped_bacon
                .iter()
                .map(|set| set.alternative(rows))
                .collect::<Result<_, _>>()?,
            long_aged: self.long_aged.map(|row| known(rows, &row)).transpose()?,
            strengths: self
                .strengths
                .into_iter()
                .map(strength)
                .collect::<Result<_, _>>()?,
            plausible: Plausible {
                strength: self.fraction_below.strength.percent(),
                salt: self.fraction_below.salt.percent(),
                curing_salt: self.fraction_below.curing_salt.percent(),
                taken: self.fraction_below.taken.percent(),
            },
            salometers: self
                .salometers
                .into_iter()
                .map(salometer)
                .collect::<Result<_, _>>()?,
            saturated: Some(self.saturated.bound(rows)?),
            weighing: self.weighing.weighing(rows)?,
            names: self.names.into_iter().map(name).collect::<Result<_, _>>()?,
            claim: self.claim.rules(rows)?,
        })
    }
}
