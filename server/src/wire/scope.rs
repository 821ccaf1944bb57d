//! The question that a recall begins with: what is affected?

use super::{InstantOrDay, Line, Note, SpreadsWord};
use crate::wire::{Code, Day};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What is affected? Nothing is recorded.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScopeAsked {
    /// Where it begins: what any of these names.
    pub start: Vec<StartAsked>,
    /// How far: to what is made of it, or also to what shared a bench or a machine until it was cleaned.
    pub spreads: SpreadsWord,
    /// From when on contact counts (in).
    pub contact_from: Option<InstantOrDay>,
    /// Until when it counts (out).
    pub contact_until: Option<InstantOrDay>,
    /// Lots that a person leaves out, each with the reason.
    pub without: Option<Vec<WithoutAsked>>,
}

/// Where a scope begins: a lot; an animal, by its id or by facts that must all match; a supplier's lot; a product,
/// a place or a person's work with `from` (in) and `until` (out).
#[derive(Debug, Clone, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StartAsked {
    /// A lot, in any spelling of its code.
    pub lot: Option<Line>,
    /// The id of an animal.
    pub animal: Option<Line>,
    /// The farm's code.
    pub farm: Option<Line>,
    /// The day of the kill.
    pub killed_on: Option<Day>,
    /// Killed on this day or later.
    pub killed_from: Option<Day>,
    /// Killed before this day.
    pub killed_until: Option<Day>,
    /// The carcass number, however spelt.
    pub carcass: Option<Line>,
    /// The ear tag or tattoo, however spelt.
    pub tag: Option<Line>,
    /// The supplier's code.
    pub supplier: Option<Line>,
    /// The supplier's lot, however spelt.
    pub supplier_lot: Option<Line>,
    /// A product's code.
    pub product: Option<Code>,
    /// A place's code.
    pub place: Option<Code>,
    /// A person.
    pub by: Option<Line>,
    /// From when on (in).
    pub from: Option<InstantOrDay>,
    /// Until when (out).
    pub until: Option<InstantOrDay>,
}

/// A lot that a person leaves out.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WithoutAsked {
    /// The lot.
    pub lot: Line,
    /// Why.
    pub why: Note,
}
