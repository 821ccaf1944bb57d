//! What is in a bought lot: by its pack, and by the product list as it stands when it comes in.

use super::facts::Facts;
use crate::error::{Error, Result};
use crate::lists::checks::language_tag;
use crate::wire::asked::DeclaresAsked;
use domain::product::Product;
use domain::rows::RowId;
use domain::statement::{Named, named_elsewhere, named_in, untold_by};
use domain::supplied::{Contents, DEEPEST, Supplied, SuppliedPart, allergens_of};
use domain::words::Allergen;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A recipe of the list, and the allergens that it brings; what the product's own name there tells besides.
#[derive(Default)]
pub struct ListRecipe {
    parts: Vec<SuppliedPart>,
    allergens: BTreeSet<Allergen>,
    named: BTreeSet<Allergen>,
    named_by: Vec<RowId>,
}

impl ListRecipe {
    /// That of a product as the list stands.
    pub fn as_listed(facts: &Facts<'_, '_>, product: &str) -> ListRecipe {
        let parts = parts(facts, product, &mut Vec::new());
        let products = &facts.standing.lists.products;
        let versions = SuppliedPart::versions(&parts);
        let of = products.iter().filter(|(code, _)| {
            let version = facts.standing.versions.get(*code);
            version.is_some_and(|version| versions.contains(version))
        });
        let of: Vec<&Arc<Product>> = of.map(|(_, product)| product).collect();
        let own = products.get(product).map(|product| &**product);
        ListRecipe::of(facts, own, parts, &of)
    }

    /// An entry's name tells what is in it, too, whatever was ticked beside it.
    fn of(
        facts: &Facts<'_, '_>,
        own: Option<&Product>,
        parts: Vec<SuppliedPart>,
        products: &[&Arc<Product>],
    ) -> ListRecipe {
        let rules = &facts.law().statements;
        let mut allergens = allergens_of(products.iter().copied());
        for product in products {
            allergens.extend(untold_by(rules, product, &product.allergens).inside);
        }
        let named = own.map_or_else(Named::default, |own| untold_by(rules, own, &own.allergens));
        ListRecipe {
            parts,
            allergens,
            named_by: named.rows(rules),
            named: named.inside,
        }
    }

    /// That which was kept with a lot.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn as_kept(
        facts: &mut Facts<'_, '_>,
        own: &Product,
        supplied: Option<&Supplied>,
    ) -> Result<ListRecipe> {
        let parts = supplied.map_or(Vec::new(), |of| of.recipe.clone());
        let mut products: Vec<Arc<Product>> = Vec::new();
        for version in SuppliedPart::versions(&parts) {
            products.push(facts.app.product(facts.tx.conn, version)?);
        }
        let products: Vec<&Arc<Product>> = products.iter().collect();
        Ok(ListRecipe::of(facts, Some(own), parts, &products))
    }
}

/// The parts of a recipe; what is made of itself is not written out again.
fn parts(facts: &Facts<'_, '_>, product: &str, path: &mut Vec<String>) -> Vec<SuppliedPart> {
    let standing = &facts.standing;
    let recipe = standing.lists.recipes.get(product);
    let recipe = recipe.filter(|_| path.len() < DEEPEST as usize);
    path.push(product.to_owned());
    let mut all = Vec::new();
    for part in recipe.into_iter().flatten() {
        let Some(version) = standing.versions.get(&part.product) else {
            continue;
        };
        all.push(SuppliedPart {
            version: *version,
            grams: part.grams,
            parts: match path.contains(&part.product) {
                true => Vec::new(),
                false => parts(facts, &part.product, path),
            },
        });
    }
    path.pop();
    all
}

/// What is in a bought lot.
pub fn contents(
    facts: &Facts<'_, '_>,
    declares: Option<&DeclaresAsked>,
    list: ListRecipe,
) -> Contents {
    let words = |all: &Option<Vec<crate::wire::AllergenWord>>| {
        let all = all.as_ref()?;
        Some(all.iter().map(|word| word.0).collect::<BTreeSet<_>>())
    };
    let told = declares.and_then(|of| words(&of.allergens));
    let may_contain = declares.and_then(|of| words(&of.may_contain));
    let texts = declares.and_then(|of| of.ingredients.as_ref());
    let texts = texts.into_iter().flatten().map(|(language, text)| {
        let text: Vec<&str> = text.0.split_whitespace().collect();
        (language.0.clone(), text.join(" "))
    });
    let ingredients: BTreeMap<String, String> =
        texts.filter(|(_, text)| !text.is_empty()).collect();
    let rules = &facts.law().statements;
    let (mut named, mut elsewhere) = (Named::default(), BTreeSet::new());
    for (language, text) in &ingredients {
        let of = named_in(rules, text, language);
        named.inside.extend(of.inside);
        named.perhaps.extend(of.perhaps);
        elsewhere.extend(named_elsewhere(rules, text, language));
    }
    let mut may_contain = may_contain.unwrap_or_default();
    may_contain.extend(&named.perhaps);
    Contents {
        named_by: named.rows(rules),
        named: named.inside,
        elsewhere,
        supplied: Supplied {
            recipe: list.parts,
            ingredients,
            allergens_by_pack: told.is_some(),
        },
        of_recipe: list.allergens,
        of_name: list.named,
        of_name_by: list.named_by,
        told,
        may_contain,
    }
}

/// Refuses ingredients in no language, or with no words.
///
/// # Errors
/// 422 naming the field.
pub fn can_be(declares: Option<&DeclaresAsked>) -> Result<()> {
    const FIELD: &str = "bought.declares.ingredients";
    let texts = declares.and_then(|of| of.ingredients.as_ref());
    for (language, text) in texts.into_iter().flatten() {
        language_tag(&language.0, FIELD)?;
        if text.0.is_empty() {
            return Err(Error::cannot_be(FIELD, crate::wire::says::ValueSays::Empty));
        }
    }
    Ok(())
}
