//! One file: its rows, and the rules that point at them.

use crate::Bad;
use crate::entry::RowEntry;
use domain::rows::Rows;
use schemars::JsonSchema;
use serde::Deserialize;
use serde::de::DeserializeOwned;

/// A file of one subject.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct File<Entry> {
    /// Where the schema of this file is, for editors.
    #[serde(rename = "$schema", default)]
    #[expect(dead_code, reason = "for editors only")]
    schema: Option<String>,
    /// What the text says, row by row.
    rows: Vec<RowEntry>,
    /// The rules that follow from it.
    rules: Entry,
}

/// How a subject is written in its file.
pub trait Subject: DeserializeOwned + JsonSchema {
    /// What it becomes.
    type Rules;

    /// The domain's rules, every row looked up.
    fn rules(self, rows: &Rows) -> Result<Self::Rules, Bad>;
}

/// Reads a file; its rows come back beside its rules.
pub fn read<S: Subject>(text: &str) -> Result<(Rows, S::Rules), Bad> {
    let file: File<S> = serde_json::from_str(text).map_err(|error| Bad::json(&error))?;
    let mut rows = Rows::default();
    for entry in file.rows {
        if let Some(twice) = rows.insert(entry.row()?) {
            return Err(Bad::new(format!("the row {} stands in it twice", twice.id)));
        }
    }
    let rules = file.rules.rules(&rows)?;
    Ok((rows, rules))
}
