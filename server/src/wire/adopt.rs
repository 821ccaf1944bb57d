//! What a device asks about a pot without a label.

use super::asked::{DeclaresAsked, Id};
use super::{By, Code, Instant, Line, Note, Weight};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A pot without a label is taken in.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(example = json!({
    "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c3d",
    "at": "2026-06-26T10:50:00-04:00",
    "by": "Jory Abend",
    "place": "cooler-1",
    "product": "rillettes",
    "grams": 840,
    "is": "CHK-26171-A01-K/8",
    "why": "stood behind the stock pots, its label washed off"
}))]
pub struct AdoptionAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Where it is put.
    pub place: Code,
    /// What people take it for.
    pub product: Code,
    /// What it weighs.
    pub grams: Weight,
    /// The pack that it is, `CODE/N`: one that was counted as missing. Left out, it is a new lot of which
    /// nobody knows the history.
    pub is: Option<Line>,
    /// What somebody knows to be in it: all its allergens, its ingredients, what may be in it unasked. Until its
    /// allergens are told, here or by a correction, no customer gets any of it.
    pub declares: Option<DeclaresAsked>,
    /// How it was found, and how people know what it is.
    pub why: Note,
}
