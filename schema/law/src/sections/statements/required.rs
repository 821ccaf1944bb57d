//! How the items that a customer's pack tells are written in their file.

use super::word;
use crate::Bad;
use crate::entry::known;
use domain::gate::{LabelItem, PackTrait, Required};
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeSet;

/// An item that a customer's pack tells.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct RequiredEntry {
    /// The item: `name`, `net`, `date`, `storage`, `safe-handling` and others.
    item: String,
    /// Of packs that have all of these, `raw`, `chilled`, `weighed` and others; of all packs if left out.
    #[serde(default)]
    when: Vec<String>,
    /// In each of the languages that the place wants?
    #[serde(default)]
    each_language: bool,
    /// The row.
    row: String,
}

impl RequiredEntry {
    /// The domain's.
    pub fn required(self, rows: &Rows) -> Result<Required, Bad> {
        let when = self.when.iter();
        Ok(Required {
            item: word(&self.item, LabelItem::parse)?,
            when: when
                .map(|text| word(text, PackTrait::parse))
                .collect::<Result<BTreeSet<_>, Bad>>()?,
            each_language: self.each_language,
            row: known(rows, &self.row)?,
        })
    }
}
