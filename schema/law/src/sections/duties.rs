//! To be written.

use crate::Bad;
use crate::file::Subject;
use domain::law::Rows;
use schemars::JsonSchema;
use serde::Deserialize;

/// To be written.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DutiesEntry {}

impl Subject for DutiesEntry {
    type Rules = domain::duties::Rules;

    fn rules(self, _rows: &Rows) -> Result<Self::Rules, Bad> {
        Ok(Self::Rules::default())
    }
}
