//! Recipes, as the list of them is written.

use super::lists::never_kept;
use super::{Code, Weight};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A recipe.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RecipeEntry {
    /// What it makes.
    pub product: Code,
    /// Its parts by weight.
    pub parts: Vec<PartEntry>,
    /// Told when it is written; not looked at when it is sent back: parts of which nobody told what is in them.
    #[serde(default, skip_serializing_if = "never_kept")]
    #[schema(read_only, value_type = Option<Vec<super::answers::FindingRead>>)]
    pub warnings: Option<serde_json::Value>,
}

/// One part of a recipe.
#[derive(Debug, Clone, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PartEntry {
    /// The product.
    pub product: Code,
    /// Its weight in the batch that the recipe describes.
    pub grams: Weight,
}
