//! The allergens of a place, its "contains" words and its animals, as the file has them.

use super::*;

/// The allergens of a place.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct AllergensEntry {
    /// The names, in the order in which they are printed.
    pub(super) names: Vec<AllergenEntry>,
    /// Sulphites up to this much are not declared, in mg/kg of the finished food.
    pub(super) sulphites_undeclared: Option<UpToEntry>,
    /// The row that wants them emphasised in the list.
    pub(super) emphasised: Option<String>,
    /// What is of an allergen and does not count as one.
    pub(super) exempt: Option<ExemptEntry>,
}

/// What does not count as an allergen though it is of one.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ExemptEntry {
    /// The row.
    pub(super) row: String,
    /// Its names, by language.
    pub(super) phrases: BTreeMap<String, Vec<String>>,
}

/// An allergen.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct AllergenEntry {
    /// Its word.
    pub(super) allergen: String,
    /// The row.
    pub(super) row: String,
    /// Its name.
    pub(super) name: Texts,
    /// Words in an ingredient's name that say it as well.
    #[serde(default)]
    pub(super) also: BTreeMap<String, Vec<String>>,
    /// Phrases in which they mean something else.
    #[serde(default)]
    pub(super) but_not: BTreeMap<String, Vec<String>>,
    /// For a collective word: the row that wants the name instead.
    pub(super) collective: Option<String>,
}

/// The allergen statement.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct ContainsEntry {
    /// The title.
    pub(super) title: WordingEntry,
    /// Other titles that the law allows.
    #[serde(default)]
    pub(super) other_titles: Vec<String>,
    /// Is the title bold?
    #[serde(default)]
    pub(super) bold_title: bool,
    /// Does every entry begin with a capital?
    #[serde(default)]
    pub(super) capital: bool,
    /// The row that wants it whole.
    pub(super) complete: String,
    /// The row that says how entries are written.
    pub(super) entries: String,
    /// Is it printed beside a list?
    #[serde(default)]
    pub(super) beside_list: bool,
    /// The title of what may be in it unasked.
    pub(super) may_contain: Option<WordingEntry>,
}

/// Animals.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct SpeciesEntry {
    /// The row that wants the animal's name.
    pub(super) row: Option<String>,
    /// The row that wants a fat by its animal.
    pub(super) fat_row: Option<String>,
    /// The row by which a name has to tell one of `always`.
    pub(super) in_name: Option<String>,
    /// Animals that are told wherever the name does not: also the one that the food is of.
    #[serde(default)]
    pub(super) always: Vec<String>,
    /// `contains {}`.
    pub(super) note: Texts,
    /// The names.
    pub(super) names: Vec<SpeciesNameEntry>,
}

/// An animal.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct SpeciesNameEntry {
    /// Its word.
    pub(super) species: String,
    /// Its meat.
    pub(super) meat: Texts,
    /// Its fat.
    pub(super) fat: Texts,
    /// Words in a name that tell it.
    pub(super) told_by: BTreeMap<String, Vec<String>>,
}

impl AllergensEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<law::AllergenRules, Bad> {
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
            exempt: maybe(self.exempt, |entry| {
                Ok((known(rows, &entry.row)?, entry.phrases))
            })?,
            // Alike in every place: put in when all files are read.
            food_words: law::FoodWords::default(),
        })
    }
}

impl ContainsEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<law::ContainsRules, Bad> {
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
    pub(super) fn rules(self, rows: &Rows) -> Result<law::SpeciesRules, Bad> {
        Ok(law::SpeciesRules {
            row: maybe_known(rows, self.row)?,
            fat_row: maybe_known(rows, self.fat_row)?,
            in_name: maybe_known(rows, self.in_name)?,
            always: each(self.always, |text| word(&text, Species::parse))?,
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
