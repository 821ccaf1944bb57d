//! Who is concerned and what was done: people to call, sales, decisions, what became of what was held.

use super::InEach;
use crate::wire::Weight;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Somebody to call.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct PersonFacts {
    /// `farm`, `abattoir`, `supplier` or `customer`.
    pub role: String,
    /// The name.
    pub name: String,
    /// The address.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub address: Option<String>,
    /// The telephone.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub phone: Option<String>,
    /// Which lots, for the eye; of a source, how it names them.
    pub lots: Vec<String>,
    /// How much went there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grams: Option<Weight>,
    /// How many packs went there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub packs: Option<usize>,
    /// When it last went there.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub last: Option<String>,
    /// When they were first told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub told_at: Option<String>,
    /// What they last answered.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub answered: Option<String>,
}

/// Packs sold in one hour.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct SoldFacts {
    /// The kitchen's day.
    pub day: String,
    /// The hour.
    pub hour: u32,
    /// The lot.
    pub lot: String,
    /// What it is.
    pub names: InEach,
    /// Whole packs.
    pub packs: usize,
    /// The numbers of its packs, where it has several.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub numbers: Vec<u32>,
    /// Their weight.
    pub grams: Weight,
    /// Who bought them, where they left a way to be told.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub to: Vec<String>,
}

/// Something decided, told or answered.
#[derive(Debug, Clone, Serialize, Deserialize)]
pub struct ActFacts {
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// What.
    pub kind: String,
    /// Who was told, or answered.
    pub whom: Option<String>,
    /// In their words.
    pub text: String,
}

/// What became of something that was held.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
pub struct DisposalFacts {
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// The lot.
    pub lot: String,
    /// What it is.
    pub names: InEach,
    /// Which packs.
    pub packs: Vec<u32>,
    /// `discarded`, `returned`, `released`, `put-right` or `reworked`.
    pub what: String,
    /// How much left.
    pub grams: Weight,
    /// Where.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// Who saw it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub witness: Option<String>,
    /// On which paper.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub document: Option<String>,
    /// Why.
    pub why: String,
}
