//! How ingredient lists, allergens, date words and letter heights are written in their file.

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
    /// The row by which the share of a solution in raw meat is told.
    solution: Option<String>,
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

/// The ingredient list.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ListEntry {
    /// The row that wants the order.
    order: String,
    /// The title.
    title: WordingEntry,
    /// Is the title bold?
    #[serde(default)]
    bold_title: bool,
    /// The row of compounds.
    compounds: String,
    /// May compounds be dissolved into the list?
    #[serde(default)]
    may_merge: bool,
    /// Words before small things at the end.
    tail: Option<TailEntry>,
    /// What may stand last in any order.
    last: Option<LastEntry>,
    /// The row that lets casings be left out.
    no_casings: Option<String>,
    /// The row that lets water be left out that is taken out again.
    no_removed_water: Option<String>,
    /// The row that wants a cure's parts by name.
    cure_parts: Option<String>,
    /// The row that wants the share of what the name speaks of.
    shares: Option<String>,
    /// What is not a spice.
    not_spice: Option<NotSpiceEntry>,
    /// Additives by key.
    #[serde(default)]
    additives: BTreeMap<String, AdditiveEntry>,
}

/// Words before small things at the end.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TailEntry {
    /// What the words may name, in percent.
    percents: Vec<Number>,
    /// The highest of them.
    limit: BoundEntry,
    /// The words, `{}` for the number.
    words: WordingEntry,
}

/// What may stand last.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LastEntry {
    /// The row.
    row: String,
    /// What may: `spice`, `flavouring`, `additive`.
    natures: Vec<String>,
    /// Spices and herbs together, in percent of the whole.
    spices: BoundEntry,
}

/// What is not a spice.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NotSpiceEntry {
    /// The row.
    row: String,
    /// The words.
    words: Vec<String>,
}

/// An additive.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct AdditiveEntry {
    /// The row.
    row: String,
    /// Its class.
    #[serde(default)]
    class: Texts,
    /// Its name.
    name: Texts,
    /// Its number.
    number: Option<String>,
}

/// The allergens of a place.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct AllergensEntry {
    /// The names, in the order in which they are printed.
    names: Vec<AllergenEntry>,
    /// Sulphites up to this much are not declared, in mg/kg of the finished food.
    sulphites_undeclared: Option<UpToEntry>,
    /// The row that wants them emphasised in the list.
    emphasised: Option<String>,
}

/// An allergen.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct AllergenEntry {
    /// Its word.
    allergen: String,
    /// The row.
    row: String,
    /// Its name.
    name: Texts,
    /// Words in an ingredient's name that say it as well.
    #[serde(default)]
    also: BTreeMap<String, Vec<String>>,
    /// Phrases in which they mean something else.
    #[serde(default)]
    but_not: BTreeMap<String, Vec<String>>,
    /// For a collective word: the row that wants the name instead.
    collective: Option<String>,
}

/// The allergen statement.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ContainsEntry {
    /// The title.
    title: WordingEntry,
    /// Other titles that the law allows.
    #[serde(default)]
    other_titles: Vec<String>,
    /// Is the title bold?
    #[serde(default)]
    bold_title: bool,
    /// Does every entry begin with a capital?
    #[serde(default)]
    capital: bool,
    /// The row that wants it whole.
    complete: String,
    /// The row that says how entries are written.
    entries: String,
    /// Is it printed beside a list?
    #[serde(default)]
    beside_list: bool,
    /// The title of what may be in it unasked.
    may_contain: Option<WordingEntry>,
}

/// Animals.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SpeciesEntry {
    /// The row that wants the animal's name.
    row: Option<String>,
    /// The row that wants a fat by its animal.
    fat_row: Option<String>,
    /// `contains {}`.
    note: Texts,
    /// The names.
    names: Vec<SpeciesNameEntry>,
}

/// An animal.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SpeciesNameEntry {
    /// Its word.
    species: String,
    /// Its meat.
    meat: Texts,
    /// Its fat.
    fat: Texts,
    /// Words in a name that tell it.
    told_by: BTreeMap<String, Vec<String>>,
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

/// Dates.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DatesEntry {
    /// The words of each kind of date.
    words: Vec<DateWordsEntry>,
    /// The row of the form.
    form_row: String,
    /// The form by precision (`day`, `day-and-month`, `month`, `year`) and language:
    /// `{d}`, `{d2}`, `{month}`, `{y2}`, `{y4}`.
    forms: BTreeMap<PrecisionEntry, Texts>,
    /// The twelve months by language.
    months: BTreeMap<String, Vec<String>>,
    /// The least that must be shown, the shortest life first.
    #[serde(default)]
    least: Vec<LeastEntry>,
    /// The kind of mark.
    marks: Option<MarksEntry>,
    /// Which dates are due.
    #[serde(default)]
    due: Vec<DatesDueEntry>,
    /// From this many days on no date is due.
    undated_from: Option<BoundEntry>,
    /// Words that a customer's label of meat may not have.
    #[serde(default)]
    forbidden: Vec<ForbiddenEntry>,
}

/// How much of a date is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum PrecisionEntry {
    /// Day, month, year.
    Day,
    /// Day and month.
    DayAndMonth,
    /// Month and year.
    Month,
    /// Year.
    Year,
}

/// The words of one kind of date.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DateWordsEntry {
    /// The kind: `use-by`, `best-before`, `discard-by`, `packed-on`, `frozen-on`, `prepared-on`.
    kind: String,
    /// The words.
    words: WordingEntry,
    /// The words where no day is shown.
    end: Option<WordingEntry>,
    /// May a customer's label have them?
    for_customers: bool,
}

/// The least of a date.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LeastEntry {
    /// For food that keeps up to so many months; left out for all longer.
    up_to_months: Option<u32>,
    /// How much is enough.
    precision: PrecisionEntry,
    /// The row.
    row: String,
}

/// The kind of mark.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MarksEntry {
    /// Of food that is soon a danger.
    perishable: String,
    /// The row of that.
    perishable_row: String,
    /// Of other food.
    keeping: String,
    /// The row of that.
    keeping_row: String,
}

/// Which dates a pack needs.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DatesDueEntry {
    /// Packed where it is sold?
    packed_here: bool,
    /// The kinds.
    kinds: Vec<String>,
    /// Kinds that will do instead.
    #[serde(default)]
    instead: Vec<String>,
    /// The row of that.
    instead_row: Option<String>,
    /// Words on storage?
    #[serde(default)]
    storage: bool,
    /// The row.
    row: String,
}

/// Words that a label may not have.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ForbiddenEntry {
    /// The words.
    words: Vec<String>,
    /// What to write instead.
    instead: String,
    /// The row.
    row: String,
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

impl Subject for StatementsEntry {
    type Rules = law::StatementRules;

    fn rules(self, rows: &Rows) -> Result<Self::Rules, Bad> {
        Ok(law::StatementRules {
            list: Some(self.list.rules(rows)?),
            allergens: self.allergens.rules(rows)?,
            contains: Some(self.contains.rules(rows)?),
            species: self.species.rules(rows)?,
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
            solution: maybe_known(rows, self.solution)?,
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

impl ListEntry {
    fn rules(self, rows: &Rows) -> Result<law::ListRules, Bad> {
        let tail = maybe(self.tail, |tail| {
            let at_most = tail.limit.bound(rows)?;
            if at_most.sense != Sense::AtMost {
                return Err(Bad::new(format!(
                    "{}: the tail has a highest share",
                    at_most.row
                )));
            }
            Ok(law::TailRules {
                percents: tail.percents.iter().map(|percent| percent.0).collect(),
                at_most,
                words: tail.words.wording(rows)?,
            })
        })?;
        let last = maybe(self.last, |last| {
            Ok(law::LastRules {
                row: known(rows, &last.row)?,
                natures: each(last.natures, |text| word(&text, Nature::parse))?,
                spices_at_most: last.spices.bound(rows)?,
            })
        })?;
        let additives = self.additives.into_iter().map(|(key, entry)| {
            let name = law::AdditiveName {
                row: known(rows, &entry.row)?,
                class: entry.class,
                name: entry.name,
                number: entry.number,
            };
            Ok((key, name))
        });
        Ok(law::ListRules {
            order: known(rows, &self.order)?,
            title: self.title.wording(rows)?,
            bold_title: self.bold_title,
            compounds: known(rows, &self.compounds)?,
            may_merge: self.may_merge,
            tail,
            last,
            no_casings: maybe_known(rows, self.no_casings)?,
            no_removed_water: maybe_known(rows, self.no_removed_water)?,
            cure_parts: maybe_known(rows, self.cure_parts)?,
            shares: maybe_known(rows, self.shares)?,
            not_spice: maybe(self.not_spice, |entry| {
                Ok((known(rows, &entry.row)?, entry.words))
            })?,
            additives: additives.collect::<Result<_, Bad>>()?,
        })
    }
}

impl AllergensEntry {
    fn rules(self, rows: &Rows) -> Result<law::AllergenRules, Bad> {
        Ok(law::AllergenRules {
            names: each(self.names, |entry| {
                Ok(law::AllergenName {
                    allergen: word(&entry.allergen, Allergen::parse)?,
                    row: known(rows, &entry.row)?,
                    name: entry.name,
                    also: entry.also,
                    but_not: entry.but_not,
                    collective: maybe_known(rows, entry.collective)?,
                })
            })?,
            sulphites_undeclared: maybe(self.sulphites_undeclared, |entry| entry.up_to(rows))?,
            emphasised: maybe_known(rows, self.emphasised)?,
        })
    }
}

impl ContainsEntry {
    fn rules(self, rows: &Rows) -> Result<law::ContainsRules, Bad> {
        Ok(law::ContainsRules {
            title: self.title.wording(rows)?,
            other_titles: self.other_titles,
            bold_title: self.bold_title,
            capital: self.capital,
            complete: known(rows, &self.complete)?,
            entries: known(rows, &self.entries)?,
            beside_list: self.beside_list,
            may_contain: maybe(self.may_contain, |entry| entry.wording(rows))?,
        })
    }
}

impl SpeciesEntry {
    fn rules(self, rows: &Rows) -> Result<law::SpeciesRules, Bad> {
        Ok(law::SpeciesRules {
            row: maybe_known(rows, self.row)?,
            fat_row: maybe_known(rows, self.fat_row)?,
            note: self.note,
            names: each(self.names, |entry| {
                Ok(law::SpeciesName {
                    species: word(&entry.species, Species::parse)?,
                    meat: entry.meat,
                    fat: entry.fat,
                    told_by: entry.told_by,
                })
            })?,
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

impl PrecisionEntry {
    fn precision(self) -> law::Precision {
        match self {
            PrecisionEntry::Day => law::Precision::Day,
            PrecisionEntry::DayAndMonth => law::Precision::DayAndMonth,
            PrecisionEntry::Month => law::Precision::Month,
            PrecisionEntry::Year => law::Precision::Year,
        }
    }
}

impl DatesEntry {
    fn rules(self, rows: &Rows) -> Result<law::DateRules, Bad> {
        if let Some((language, _)) = self.months.iter().find(|(_, months)| months.len() != 12) {
            return Err(Bad::new(format!("{language}: a year has twelve months")));
        }
        let kind = |text: String| word(&text, law::DateKind::parse);
        let due = each(self.due, |entry| {
            let row = maybe_known(rows, entry.instead_row)?;
            let instead = each(entry.instead, kind)?;
            Ok(law::DatesDue {
                packed_here: entry.packed_here,
                kinds: each(entry.kinds, kind)?,
                instead: row.map(|row| (instead, row)),
                storage: entry.storage,
                row: known(rows, &entry.row)?,
            })
        })?;
        Ok(law::DateRules {
            words: each(self.words, |entry| {
                Ok(law::DateWords {
                    kind: kind(entry.kind)?,
                    words: entry.words.wording(rows)?,
                    end: maybe(entry.end, |end| end.wording(rows))?,
                    for_customers: entry.for_customers,
                })
            })?,
            forms: self
                .forms
                .into_iter()
                .map(|(precision, form)| law::DateForm {
                    precision: precision.precision(),
                    form,
                })
                .collect(),
            form_row: Some(known(rows, &self.form_row)?),
            months: self.months,
            least: each(self.least, |entry| {
                Ok(law::LeastDate {
                    up_to_months: entry.up_to_months,
                    precision: entry.precision.precision(),
                    row: known(rows, &entry.row)?,
                })
            })?,
            marks: maybe(self.marks, |entry| {
                Ok(law::Marks {
                    perishable: kind(entry.perishable)?,
                    perishable_row: known(rows, &entry.perishable_row)?,
                    keeping: kind(entry.keeping)?,
                    keeping_row: known(rows, &entry.keeping_row)?,
                })
            })?,
            due,
            undated_from: maybe(self.undated_from, |bound| bound.bound(rows))?,
            forbidden: each(self.forbidden, |entry| {
                Ok(law::Forbidden {
                    words: entry.words,
                    instead: entry.instead,
                    row: known(rows, &entry.row)?,
                })
            })?,
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
