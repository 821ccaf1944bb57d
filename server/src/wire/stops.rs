//! What a device asks about stops: dispositions, holds, and letting holds go.

use super::asked::Id;
use super::cures::TrichinaeAsked;
use super::{By, Code, DisposalWord, Instant, Line, Note, Weight};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A person disposes of what is stopped.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct DispositionAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// The lot.
    pub lot: Line,
    /// Which packs; all of the lot if left out.
    pub packs: Option<Vec<u32>>,
    /// How: `discarded` and `returned` leave with a witness, `released` lets it go by right, `put-right`
    /// names in `document` the deed that did it.
    pub what: DisposalWord,
    /// How much of one pack, where it is discarded or returned; all that is left if left out.
    pub grams: Option<Weight>,
    /// Where it was done.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<Code>,
    /// Why.
    pub why: Note,
    /// Who saw it leave.
    pub witness: Option<Line>,
    /// The paper, or the deed, that it rests on.
    pub document: Option<Line>,
    /// The incident that it is a part of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub incident: Option<Id>,
    /// What speaks for pork, boar or horse that is let go to be eaten without cooking.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub trichinae: Option<TrichinaeAsked>,
}

/// Lots are held, or let go.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HoldAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Which lots.
    pub lots: Vec<HeldAsked>,
    /// Why.
    pub why: Note,
    /// The incident that it is for. A release with it lets go what that incident holds; without it, what was held
    /// on its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub incident: Option<Id>,
}

/// A lot, or some of its packs.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HeldAsked {
    /// The lot.
    pub lot: Line,
    /// Which packs; all of the lot if left out, also those that come back.
    pub packs: Option<Vec<u32>>,
}
