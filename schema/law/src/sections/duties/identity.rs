//! Standards of foods of many parts, as the file has them.

use crate::Bad;
use crate::entry::{BoundEntry, known};
use domain::duties::identity::{Identity, MeatOf};
use domain::rows::Rows;
use domain::words::Species;
use schemars::JsonSchema;
use serde::Deserialize;

/// The standard of one name.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct IdentityEntry {
    /// Where it stands.
    row: String,
    /// The words or phrases that call it up, in lower case.
    words: Vec<String>,
    /// Phrases with which it is another food.
    #[serde(default)]
    unless: Vec<String>,
    /// Of raw food only, or of food that is not raw only; of both where it is left out.
    raw: Option<bool>,
    /// Of food with such meat only, `pig`, `bird-or-rabbit`, `other`; of all where it is left out.
    #[serde(default)]
    of: Vec<String>,
    /// Fat, in percent of the food.
    fat: Option<BoundEntry>,
    /// Added water, in percent of all that goes in.
    water: Option<BoundEntry>,
    /// Added water, in percent of the finished food.
    water_left: Option<BoundEntry>,
    /// Fat and added water together, in percent of the finished food.
    together: Option<BoundEntry>,
    /// Meat, in percent of all that goes in.
    meat: Option<BoundEntry>,
    /// The finished weight, in percent of that of the fresh meat.
    weight: Option<BoundEntry>,
    /// An organ that a part of it must be.
    organ: Option<OrganEntry>,
    /// What must be in it, as words begin: of each line at least one.
    #[serde(default)]
    needs: Vec<Vec<String>>,
    /// What is not in it, as the words of its name begin.
    #[serde(default)]
    without: Vec<String>,
    /// Is there no fat as such in it?
    #[serde(default)]
    no_fat_as_such: bool,
    /// Of the meat of these animals alone, unless the name tells the other too.
    #[serde(default)]
    only: Vec<String>,
    /// Does the name tell the animal where its meat is of one alone?
    #[serde(default)]
    single: bool,
    /// Does the name say that all of the animal is in it, as it grew?
    #[serde(default)]
    whole_animal: bool,
    /// The word that the name has besides where nitrite went in.
    with_nitrite: Option<String>,
}

/// An organ, and how much of it there is.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct OrganEntry {
    /// As the words of its name begin, in lower case.
    word: String,
    /// In percent of all that goes in.
    part: BoundEntry,
}

impl IdentityEntry {
    pub fn identity(self, rows: &Rows) -> Result<Identity, Bad> {
        let maybe = |bound: Option<BoundEntry>| bound.map(|it| it.bound(rows)).transpose();
        let organ = |entry: OrganEntry| Ok::<_, Bad>((entry.word, entry.part.bound(rows)?));
        Ok(Identity {
            of: super::each(self.of, |of| word!(MeatOf, &of))?,
            organ: self.organ.map(organ).transpose()?,
            row: known(rows, &self.row)?,
            words: self.words,
            unless: self.unless,
            raw: self.raw,
            fat: maybe(self.fat)?,
            water: maybe(self.water)?,
            water_left: maybe(self.water_left)?,
            together: maybe(self.together)?,
            meat: maybe(self.meat)?,
            weight: maybe(self.weight)?,
            needs: self.needs,
            without: self.without,
            no_fat_as_such: self.no_fat_as_such,
            only: super::each(self.only, |of| word!(Species, &of))?,
            single: self.single,
            whole_animal: self.whole_animal,
            with_nitrite: self.with_nitrite,
        })
    }
}
