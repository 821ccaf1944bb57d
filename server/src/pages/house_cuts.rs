//! What a house calls the cuts of an animal: its own products, by the piece that they are.

use crate::read::LoadedFamily;
use crate::read::names::Names;
use crate::read::seek::fold;
use domain::family::Lists;
use domain::lot::Lot;
use domain::product::{Part, Product};
use domain::words::{ProductKind, Species};
use domain::yields::CuttingStyle;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Something to choose.
#[derive(Clone)]
pub struct Choice {
    /// Its code.
    pub code: String,
    /// Its name.
    pub name: String,
    /// Is it chosen before anybody chooses?
    pub chosen: bool,
}

/// The house's products that come off one kind of animal.
pub struct HouseCuts {
    /// By the piece that they are, else by none.
    by_piece: BTreeMap<Option<String>, Vec<Choice>>,
}

impl HouseCuts {
    /// Those of the lists as they stand.
    pub fn of(reading: &LoadedFamily<'_>, names: &Names, species: Option<Species>) -> HouseCuts {
        let mut by_piece: BTreeMap<Option<String>, Vec<Choice>> = BTreeMap::new();
        let products = reading.standing.lists.products.values();
        let of_it = |product: &&Arc<Product>| {
            product.species == species && product.raw && comes_off(product.kind)
        };
        for product in products.filter(of_it) {
            let choices = by_piece.entry(product.cut.clone()).or_default();
            choices.push(Choice {
                name: names.product(&product.code),
                code: product.code.clone(),
                chosen: false,
            });
        }
        for choices in by_piece.values_mut() {
            choices.sort_by_cached_key(|one| fold(&one.name));
        }
        HouseCuts { by_piece }
    }

    /// Those that are a piece of a style, by name.
    pub fn of_piece(&self, piece: &str) -> Vec<Choice> {
        self.listed(Some(piece))
    }

    /// What comes off the animal beside the pieces of the style: liver, bones of a piece, another style's cuts.
    pub fn others(&self, style: Option<&CuttingStyle>) -> Vec<Choice> {
        let is_piece = |key: &str| {
            let mut pieces = style.iter().flat_map(|style| &style.pieces);
            pieces.any(|piece| piece.key == key)
        };
        let others = self
            .by_piece
            .keys()
            .filter(|key| key.as_deref().is_none_or(|key| !is_piece(key)));
        let mut others: Vec<Choice> = others.flat_map(|key| self.listed(key.as_deref())).collect();
        others.sort_by_cached_key(|one| fold(&one.name));
        others
    }

    fn listed(&self, piece: Option<&str>) -> Vec<Choice> {
        let choices = self.by_piece.get(&piece.map(str::to_owned));
        choices.cloned().unwrap_or_default()
    }
}

/// The codes of what the lists make of this product and nothing else, and which is of its kind: cutting it is enough.
pub fn made_of_alone(lists: &Lists, lot: &Lot) -> Vec<String> {
    let own = &lot.product;
    let alone = |parts: &[Part]| matches!(parts, [part] if part.product == own.code);
    let alike = |code: &str| {
        let product = lists.products.get(code);
        product.is_some_and(|of| of.kind == own.kind && of.raw == own.raw)
    };
    let recipes = lists.recipes.iter();
    let made = recipes.filter(|(code, parts)| alone(parts) && **code != own.code && alike(code));
    let mut made: Vec<String> = made.map(|(code, _)| code.clone()).collect();
    made.sort();
    made
}

/// Does that sort of product come off a carcass?
fn comes_off(kind: ProductKind) -> bool {
    use ProductKind::*;
    matches!(kind, Cut | Trim | Fat | Bone | Offal | Waste)
}
