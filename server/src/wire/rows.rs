//! What a device asks about rows of the law.

use super::asked::Id;
use super::{By, Instant, Line, Note};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A named person has read a row of the law and confirms it for this kitchen.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(example = json!({
    "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c3e",
    "by": "Oda Marsh",
    "row": "canada-eu-uk-4.2",
    "text": "200 ppm of sodium nitrite in preserved meat, side bacon apart",
    "read_in": "List of Permitted Preservatives, item P.6, read on 2026-06-20"
}))]
pub struct RowConfirmationAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The row's name, as `GET /api/rows?unconfirmed` has it.
    pub row: Line,
    /// What the text says, as it was read.
    pub text: Note,
    /// Where it was read, and when.
    pub read_in: Note,
}
