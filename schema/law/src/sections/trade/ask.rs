//! How the words are written that tell what a guest asks about.

use crate::Bad;
use crate::entry::known;
use domain::ask::{AskRules, NamedBy};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// The words that tell what a guest asks about.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct AskEntry {
    /// Names of foods that are one thing, of which nobody has to say more.
    single: NamedByEntry,
    /// What has alcohol in it.
    alcohol: NamedByEntry,
    /// What may have alcohol in it.
    perhaps_alcohol: NamedByEntry,
    /// What is nitrite or nitrate.
    nitrite: NamedByEntry,
    /// What brings nitrite or nitrate by nature.
    natural_nitrite: NamedByEntry,
    /// What may be of any animal.
    any_animal: NamedByEntry,
}

/// Words, with the phrases in which they mean something else.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct NamedByEntry {
    /// The row.
    row: String,
    /// The words, by language.
    words: BTreeMap<String, Vec<String>>,
    /// The phrases, by language.
    #[serde(default)]
    but_not: BTreeMap<String, Vec<String>>,
}

impl AskEntry {
    pub fn rules(self, rows: &Rows) -> Result<AskRules, Bad> {
        Ok(AskRules {
            single: self.single.named_by(rows)?,
            alcohol: self.alcohol.named_by(rows)?,
            perhaps_alcohol: self.perhaps_alcohol.named_by(rows)?,
            nitrite: self.nitrite.named_by(rows)?,
            natural_nitrite: self.natural_nitrite.named_by(rows)?,
            any_animal: self.any_animal.named_by(rows)?,
        })
    }
}

impl NamedByEntry {
    fn named_by(self, rows: &Rows) -> Result<NamedBy, Bad> {
        Ok(NamedBy {
            row: Some(known(rows, &self.row)?),
            words: self.words,
            but_not: self.but_not,
        })
    }
}
