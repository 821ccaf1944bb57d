//! A lot that a step makes, as it is asked.

use super::packing::Packing;
use crate::condition::{HeatProof, Stable};
use crate::grams::Grams;
use crate::lot::PlaceId;
use crate::product::Product;
use crate::words::{Allergen, Packaging, State};
use std::collections::BTreeSet;
use std::sync::Arc;

/// One lot that a step makes.
#[derive(Debug, Clone)]
pub struct Output {
    /// Its product.
    pub product: Arc<Product>,
    /// The product's place in the lists.
    pub product_key: i32,
    /// Allergens that its recipe brings, beyond those of the inputs.
    pub recipe_allergens: BTreeSet<Allergen>,
    /// Its weight.
    pub grams: Grams,
    /// How it is packed.
    pub packing: Packing,
    /// Where it goes, if not where the step is.
    pub place: Option<PlaceId>,
    /// How it is kept, if not as its product is.
    pub state: Option<State>,
    /// How it is packed, where air was taken out.
    pub packaging: Option<Packaging>,
    /// The proof that the step's times and temperatures give of it, if they do.
    pub heat: Option<HeatProof>,
    /// The number of an approval that says it is ready, if one holds on that day.
    pub approved_ready: Option<String>,
    /// The approval that says it is stable, if one holds on that day.
    pub approved_stable: Option<Stable>,
    /// A word about it.
    pub note: Option<String>,
}
