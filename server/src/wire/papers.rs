//! What a device asks about papers.

use super::asked::Id;
use super::{By, Instant, Line, Note, Word};
use domain::words::PaperKind;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};

/// A paper comes: what it holds is the body, and this is said of it in the address.
#[derive(Debug, Serialize, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct PaperAsked {
    /// Made by the device
    #[param(value_type = String)]
    pub id: Id,
    /// The deed that it belongs to, by its id
    #[param(value_type = String)]
    pub of: Id,
    /// What it is: delivery-note, certificate, photo, print-out, other
    #[param(value_type = String)]
    pub kind: Word<PaperKind>,
    /// What it is called
    #[param(value_type = Option<String>)]
    pub name: Option<Line>,
    /// When; now if left out
    #[param(value_type = Option<String>)]
    pub at: Option<Instant>,
    /// Who; whoever signed in if left out
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    #[param(value_type = Option<String>)]
    pub by: By,
    /// A word about it
    #[param(value_type = Option<String>)]
    pub note: Option<Note>,
}

/// The content of papers is thrown away that nobody has to keep any more.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
#[schema(example = json!({
    "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c41",
    "by": "Oda Marsh",
    "papers": ["019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c40"],
    "why": "older than any rule asks"
}))]
pub struct ThinningAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The papers, by their ids.
    pub papers: Vec<Id>,
    /// Why.
    pub why: Note,
}
