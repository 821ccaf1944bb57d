//! A lot that a step makes, as it is asked.

use super::packing::Packing;
use super::says::StepSays;
use crate::condition::{HeatProof, Stable};
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::PlaceId;
use crate::product::Product;
use crate::says::Says;
use crate::words::{Allergen, Packaging, ProductKind, Species, State, StepKind};
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
    /// What shows that no trichinae are in the raw meat that goes in, where that is asked and shown.
    pub freed: Option<Vec<Because>>,
    /// The approval that says it is stable, if one holds on that day.
    pub approved_stable: Option<Stable>,
    /// A word about it.
    pub note: Option<String>,
}

impl Output {
    /// Meat that may carry trichinae hangs in its cure, and its entry calls it raw: then nobody asks for them, and it
    /// looks ready to eat (`us-6`, `canada-eu-uk-2.21`).
    pub(super) fn dried_as_raw(&self, kind: StepKind, species: &BTreeSet<Species>) -> Option<Says> {
        let product = &self.product;
        let hangs = matches!(kind, StepKind::Hang | StepKind::Smoke);
        let carries = species.iter().any(|of| of.may_carry_trichinae());
        let raw = product.kind == ProductKind::Cured && product.raw && product.cooking.is_empty();
        let product = product.named();
        (hangs && raw && carries).then(|| StepSays::DriedAsRaw { product }.into())
    }
}
