//! How ingredient lists, allergens, date words and letter heights are written in their file.

mod absence;
mod allergens;
mod dates;
mod list;
mod required;

use crate::Bad;
use crate::entry::{BoundEntry, Number, TextEntry, known};
use crate::file::Subject;
use domain::ingredients::Nature;
use domain::rows::{RowId, Rows, Sense};
use domain::statement as law;
use domain::words::{Allergen, Species};
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

use absence::AbsenceEntry;
use allergens::{AllergensEntry, ContainsEntry, SpeciesEntry};
use dates::DatesEntry;
use list::ListEntry;
use required::RequiredEntry;

/// Text by language tag.
type Texts = BTreeMap<String, String>;

/// What a label says of a food.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StatementsEntry {
    /// The ingredient list.
    list: ListEntry,
    /// Allergens.
    allergens: AllergensEntry,
    /// The allergen statement.
    contains: ContainsEntry,
    /// Animals.
    species: SpeciesEntry,
    /// Words of a name that say that something is not in it.
    absence: AbsenceEntry,
    /// Added water that the name speaks of.
    water: Option<UpToEntry>,
    /// What has to be written, by the way of selling.
    due: Vec<DueEntry>,
    /// Dates.
    dates: DatesEntry,
    /// Fixed words.
    #[serde(default)]
    notices: Vec<NoticeEntry>,
    /// The fresh meat whose label tells where the animals lived and died.
    origin: Option<OriginEntry>,
    /// The languages of a label.
    languages: Option<LanguagesEntry>,
    /// Heights of letters, the smallest panels first.
    #[serde(default)]
    heights: Vec<HeightEntry>,
    /// How the net weight is printed.
    net_weight: Option<NetEntry>,
    /// How the net weight is printed in grams and kilograms.
    metric_net: Option<MetricNetEntry>,
    /// The row by which the share of a solution in raw meat is told.
    solution: Option<String>,
    /// What a customer's pack tells, item by item.
    #[serde(default)]
    required: Vec<RequiredEntry>,
    /// The words of a name, in any language, that speak of meat that is sold hot or cold: `roast`, `rôti`.
    #[serde(default)]
    roasted: Vec<String>,
    /// What is in minced meat: `{}` for the fat and `{}` for the collagen, in percent.
    composition: Option<WordingEntry>,
}

/// Words with their row.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WordingEntry {
    /// The row that they stand in.
    row: String,
    /// The languages in which the law fixes the very words, as far as they were read.
    #[serde(default)]
    mandated: Vec<String>,
    /// The words by language tag.
    wording: Texts,
}

/// A highest number of which it matters whether it still passes itself.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct UpToEntry {
    /// The row that it stands in.
    row: String,
    /// The number or less.
    at_most: Option<Number>,
    /// Less than the number.
    under: Option<Number>,
}

/// What has to be written in one way of selling.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DueEntry {
    /// The way of selling: `packed-elsewhere`, `packed-here`, `wrapped-to-order`, `served`.
    sale: String,
    /// Is the ingredient list a duty?
    ingredients: bool,
    /// How allergens are declared.
    allergens: TellingEntry,
    /// What it is, for a screen.
    says: TextEntry,
    /// May the label say no more than that: neither weight nor date nor business?
    #[serde(default)]
    short_label: bool,
    /// The row.
    row: String,
}

/// How allergens are declared.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum TellingEntry {
    /// On the pack.
    OnPack,
    /// In writing.
    InWriting,
    /// In writing, or on asking.
    OnAsking,
    /// Only if something is shown.
    OnlyIfShown,
}

/// A notice.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NoticeEntry {
    /// What it is for: `keep-refrigerated`, `thawed`, `reared-in` and others.
    kind: String,
    /// The words.
    words: WordingEntry,
}

/// The fresh meat whose label tells where the animals lived and died.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct OriginEntry {
    /// The row.
    row: String,
    /// The animals.
    species: Vec<String>,
}

/// The languages of a label.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LanguagesEntry {
    /// The row.
    row: String,
    /// Their tags.
    wanted: Vec<String>,
}

/// A step of a table of heights.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HeightEntry {
    /// What the letters say: `label`, `ingredient-list`, `net-quantity` and others.
    what: String,
    /// The unit of length and, squared, of the panel.
    unit: UnitEntry,
    /// Up to this panel area; left out for all larger.
    panel: Option<UpToEntry>,
    /// The height of a small letter, in mm or inches.
    height: BoundEntry,
    /// From line to line, in the same unit.
    leading: Option<BoundEntry>,
}

/// A unit.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
enum UnitEntry {
    /// Millimetres, square centimetres.
    #[serde(rename = "mm")]
    Millimetres,
    /// Inches, square inches.
    #[serde(rename = "in")]
    Inches,
}

/// How the net weight is printed.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NetEntry {
    /// A pack that was weighed by itself.
    by_weight: ByWeightEntry,
    /// The words before it.
    title: WordingEntry,
    /// Other words that will do.
    #[serde(default)]
    other_titles: Vec<String>,
    /// The row that lets one unit be enough.
    one_unit: String,
}

/// The weight of a pack that was weighed by itself, in pounds.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ByWeightEntry {
    /// The row.
    row: String,
    /// Decimals of a pound.
    decimals: u32,
}

/// How the net weight is printed in grams and kilograms.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MetricNetEntry {
    /// The row by which it is in kilograms from a thousand grams on.
    kilograms: String,
    /// How many figures it has.
    figures: BoundEntry,
}

impl Subject for StatementsEntry {
    type Rules = law::StatementRules;

    fn rules(self, rows: &Rows) -> Result<Self::Rules, Bad> {
        Ok(law::StatementRules {
            list: Some(self.list.rules(rows)?),
            allergens: self.allergens.rules(rows)?,
            contains: Some(self.contains.rules(rows)?),
            species: self.species.rules(rows)?,
            absence: self.absence.rules(rows)?,
            water: self
                .water
                .map(|entry| {
                    Ok::<_, Bad>(law::WaterRules {
                        row: known(rows, &entry.row)?,
                        unsaid: entry.up_to(rows)?,
                    })
                })
                .transpose()?,
            due: each(self.due, |entry| entry.due(rows))?,
            dates: self.dates.rules(rows)?,
            notices: each(self.notices, |entry| {
                Ok(law::Notice {
                    kind: word(&entry.kind, law::NoticeKind::parse)?,
                    words: entry.words.wording(rows)?,
                })
            })?,
            origin: maybe(self.origin, |entry| {
                Ok(law::OriginRules {
                    row: known(rows, &entry.row)?,
                    species: each(entry.species, |text| word(&text, Species::parse))?,
                })
            })?,
            languages: self
                .languages
                .map(|entry| Ok::<_, Bad>((known(rows, &entry.row)?, entry.wanted)))
                .transpose()?,
            heights: each(self.heights, |entry| entry.step(rows))?,
            net: maybe(self.net_weight, |entry| {
                Ok(law::NetRules {
                    title: entry.title.wording(rows)?,
                    other_titles: entry.other_titles,
                    one_unit: known(rows, &entry.one_unit)?,
                    by_weight: known(rows, &entry.by_weight.row)?,
                    decimals: entry.by_weight.decimals,
                })
            })?,
            metric_net: maybe(self.metric_net, |entry| {
                Ok(law::MetricNet {
                    kilograms: known(rows, &entry.kilograms)?,
                    figures: entry.figures.bound(rows)?,
                })
            })?,
            solution: maybe_known(rows, self.solution)?,
            required: each(self.required, |entry| entry.required(rows))?,
            roasted: self.roasted,
            composition: maybe(self.composition, |entry| entry.wording(rows))?,
        })
    }
}

fn each<T, U>(entries: Vec<T>, one: impl FnMut(T) -> Result<U, Bad>) -> Result<Vec<U>, Bad> {
    entries.into_iter().map(one).collect()
}

fn maybe<T, U>(entry: Option<T>, one: impl FnOnce(T) -> Result<U, Bad>) -> Result<Option<U>, Bad> {
    entry.map(one).transpose()
}

fn word<T>(text: &str, parse: impl Fn(&str) -> Option<T>) -> Result<T, Bad> {
    parse(text).ok_or_else(|| Bad::new(format!("{text:?} is no word of ours here")))
}

fn maybe_known(rows: &Rows, id: Option<String>) -> Result<Option<RowId>, Bad> {
    maybe(id, |id| known(rows, &id))
}

impl WordingEntry {
    fn wording(self, rows: &Rows) -> Result<law::Wording, Bad> {
        if !self.wording.contains_key("en") {
            return Err(Bad::new(format!(
                "{}: words need an English form",
                self.row
            )));
        }
        if let Some(language) = self
            .mandated
            .iter()
            .find(|tag| !self.wording.contains_key(*tag))
        {
            return Err(Bad::new(format!("{}: no words in {language}", self.row)));
        }
        Ok(law::Wording {
            row: known(rows, &self.row)?,
            mandated: self.mandated,
            text: self.wording,
        })
    }
}

impl UpToEntry {
    fn up_to(self, rows: &Rows) -> Result<law::UpTo, Bad> {
        let inclusive = self.at_most.is_some();
        let entry = match (self.at_most, self.under) {
            (Some(value), None) | (None, Some(value)) => BoundEntry {
                row: self.row,
                at_most: Some(value),
                at_least: None,
                exactly: None,
            },
            _ => {
                return Err(Bad::new(format!(
                    "{}: give one of at_most, under",
                    self.row
                )));
            }
        };
        Ok(law::UpTo {
            bound: entry.bound(rows)?,
            inclusive,
        })
    }
}

impl DueEntry {
    fn due(self, rows: &Rows) -> Result<law::SaleDuty, Bad> {
        Ok(law::SaleDuty {
            sale: word(&self.sale, law::Sale::parse)?,
            ingredients: self.ingredients,
            allergens: match self.allergens {
                TellingEntry::OnPack => law::AllergenNotice::OnPack,
                TellingEntry::InWriting => law::AllergenNotice::InWriting,
                TellingEntry::OnAsking => law::AllergenNotice::OnAsking,
                TellingEntry::OnlyIfShown => law::AllergenNotice::OnlyIfShown,
            },
            says: self.says.into(),
            short_label: self.short_label,
            row: known(rows, &self.row)?,
        })
    }
}

impl HeightEntry {
    fn step(self, rows: &Rows) -> Result<law::HeightStep, Bad> {
        Ok(law::HeightStep {
            what: word(&self.what, law::Lettering::parse)?,
            unit: match self.unit {
                UnitEntry::Millimetres => law::HeightUnit::Metric,
                UnitEntry::Inches => law::HeightUnit::Inches,
            },
            panel: maybe(self.panel, |panel| panel.up_to(rows))?,
            height: self.height.bound(rows)?,
            leading: maybe(self.leading, |leading| leading.bound(rows))?,
        })
    }
}
