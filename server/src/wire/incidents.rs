//! What a device asks about incidents: a recall, or a drill of one.

use super::asked::Id;
use super::scope::ScopeAsked;
use super::{By, HazardWord, IncidentNoteWord, Instant, Line, Note};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A recall begins, or a drill of one.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct IncidentAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Who told it: the caller. Left out where nobody noted it in haste; a note of kind `caller` says it later.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub told_by: Option<Line>,
    /// When they told it: the clock of the incident begins here. `at` if left out.
    pub told_at: Option<Instant>,
    /// What it is about.
    pub hazard: HazardWord,
    /// Is it a drill? A drill holds nothing.
    #[serde(default)]
    pub drill: bool,
    /// What is affected.
    pub scope: ScopeAsked,
    /// Hold it at once?
    #[serde(default)]
    pub hold: bool,
    /// Why. Left out where nobody knows yet; a note of kind `reason` says it later.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub why: Option<Note>,
}

/// A recall goes further, or less far.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct IncidentScopeAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// What is affected.
    pub scope: ScopeAsked,
    /// Why.
    pub why: Note,
}

/// Somebody was told, or answered; or something else is noted.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct IncidentNoteAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// What it is. `caller`, `reason` and `hazard` say what was not known yet when the recall was begun.
    pub kind: IncidentNoteWord,
    /// Who was told, or who answered.
    pub whom: Option<Line>,
    /// What; of `caller` who told it, of `hazard` what it is about, as where a recall begins.
    pub text: Note,
}

/// Guests who read the code of a pack in scope are told, or no longer.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct IncidentGuestsAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// Are they told?
    pub show: bool,
    /// A word about it.
    pub note: Option<Note>,
}

/// A recall is over.
#[derive(Debug, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct IncidentCloseAsked {
    /// Made by the device.
    pub id: Id,
    /// When; now if left out.
    pub at: Option<Instant>,
    /// Who.
    #[serde(default, skip_serializing_if = "By::is_left_out")]
    pub by: By,
    /// What came of it.
    pub why: Option<Note>,
}
