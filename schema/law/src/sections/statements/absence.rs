//! How the words are written by which a name says that something is not in the food.

use super::*;

/// Words by language.
type Words = BTreeMap<String, Vec<String>>;

/// How a name says so.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct AbsenceEntry {
    /// The row by which a food has its true name.
    row: String,
    /// Before what is not in it: `without`.
    before: Words,
    /// Behind it: `free`.
    after: Words,
    /// Phrases that begin so and mean something else: `free range`.
    not_after: Words,
    /// Between the things that one such word speaks of.
    between: Words,
    /// Foods named by an animal that are no meat: `goat cheese`.
    not_meat: Words,
    /// Other words for allergens: `dairy`.
    groups: Vec<GroupEntry>,
    /// Words that say by themselves that things are not in it: `vegan`.
    whole: Vec<GroupEntry>,
}

/// Words, and what they speak of.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GroupEntry {
    /// The words.
    words: Words,
    /// The allergens.
    #[serde(default)]
    allergens: Vec<String>,
    /// The animals; `all` for any.
    #[serde(default)]
    species: Vec<String>,
}

impl AbsenceEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<law::AbsenceRules, Bad> {
        Ok(law::AbsenceRules {
            row: Some(known(rows, &self.row)?),
            before: self.before,
            after: self.after,
            not_after: self.not_after,
            between: self.between,
            not_meat: self.not_meat,
            groups: each(self.groups, GroupEntry::group)?,
            whole: each(self.whole, GroupEntry::group)?,
        })
    }
}

impl GroupEntry {
    fn group(self) -> Result<law::AbsenceGroup, Bad> {
        let allergens = each(self.allergens, |text| word(&text, Allergen::parse))?;
        Ok(law::AbsenceGroup {
            words: self.words,
            allergens: allergens.into_iter().collect(),
            species: match self.species.iter().any(|text| text == "all") {
                true => Species::ALL.to_vec(),
                false => each(self.species, |text| word(&text, Species::parse))?,
            },
        })
    }
}
