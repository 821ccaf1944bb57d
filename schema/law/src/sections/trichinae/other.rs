//! What may be shown instead of a treatment against trichinae.

use crate::Bad;
use crate::entry::known;
use domain::rows::Rows;
use domain::trichinae::{OtherWay, Way};
use schemars::JsonSchema;
use serde::Deserialize;

/// Something that may be shown instead of a treatment.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct OtherWayEntry {
    /// The row that it stands in.
    row: String,
    /// What.
    way: WayEntry,
}

/// The ways that are no treatment.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(rename = "TrichinaeWay")]
enum WayEntry {
    /// The carcass was tested, and nothing was found.
    CarcassTested,
    /// The pig is from a herd certified as a negligible risk.
    NegligibleRiskHerd,
    /// A piglet that was never weaned.
    Unweaned,
}

impl OtherWayEntry {
    pub(super) fn other_way(&self, rows: &Rows) -> Result<OtherWay, Bad> {
        Ok(OtherWay {
            way: match self.way {
                WayEntry::CarcassTested => Way::CarcassTested,
                WayEntry::NegligibleRiskHerd => Way::NegligibleRiskHerd,
                WayEntry::Unweaned => Way::Unweaned,
            },
            row: known(rows, &self.row)?,
        })
    }
}
