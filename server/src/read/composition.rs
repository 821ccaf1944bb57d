//! What a lot is made of, for its ingredient list: from the lots actually used, and from the recipes
//! of what was bought ready.

use crate::app::{App, damaged};
use crate::error::Result;
use crate::lists::List;
use crate::wire::lists::RecipeEntry;
use domain::grams::Grams;
use domain::ingredients::{self, Ingredient};
use domain::product::Product;
use domain::words::{Addition, ProductKind};
use std::collections::BTreeMap;
use store::lots::LotRow;
use store::{Conn, entries};

/// How far down parts of parts are told.
const DEEPEST: u32 = 8;

/// The ingredient list of a lot in each of the kitchen's languages.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn lists(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    languages: &[String],
) -> Result<BTreeMap<String, String>> {
    let product = app.product(conn, row.version_id)?;
    let mut parts = parts_of(app, conn, row, &product, DEEPEST)?;
    if parts.is_empty() {
        parts.push(Ingredient {
            names: product.names.clone(),
            grams: Grams::from_milligrams(row.made_mg),
            parts: Vec::new(),
        });
    }
    Ok(languages
        .iter()
        .map(|language| (language.clone(), ingredients::list(&parts, language)))
        .collect())
}

/// A thing that is cut or weighed off stays one thing; what is cured, cooked or mixed has parts.
fn is_single(kind: ProductKind) -> bool {
    use ProductKind::*;
    matches!(kind, Carcass | Cut | Trim | Fat | Bone | Offal | Waste)
}

fn parts_of(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    product: &Product,
    depth: u32,
) -> Result<Vec<Ingredient>> {
    if is_single(product.kind) || depth == 0 {
        return Ok(Vec::new());
    }
    let used = store::trace::inputs(conn, row.deed_id)?;
    if used.is_empty() {
        return recipe_parts(
            app,
            conn,
            &product.code,
            Grams::from_milligrams(row.made_mg),
            depth,
        );
    }
    let mut parts = Vec::with_capacity(used.len());
    for (input, mg) in &used {
        let of = app.product(conn, input.version_id)?;
        let below = parts_of(app, conn, input, &of, depth - 1)?;
        if used.len() == 1 && !below.is_empty() {
            return Ok(below); // sliced, portioned, packed: the same thing as before
        }
        parts.push(Ingredient {
            names: of.names.clone(),
            grams: Grams::from_milligrams(*mg),
            parts: below,
        });
    }
    for (what, mg) in store::deeds::additions(conn, row.deed_id)? {
        if what != Addition::ScaleDifference.as_str() {
            parts.push(Ingredient::water(Grams::from_milligrams(mg)));
        }
    }
    Ok(parts)
}

fn recipe_parts(
    app: &App,
    conn: &mut Conn,
    code: &str,
    grams: Grams,
    depth: u32,
) -> Result<Vec<Ingredient>> {
    let Some(row) = entries::get(conn, List::Recipes.as_str(), code)?.filter(|_| depth > 0) else {
        return Ok(Vec::new());
    };
    let recipe: RecipeEntry = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
    let batch: Grams = recipe.parts.iter().map(|part| part.grams.0).sum();
    let mut parts = Vec::with_capacity(recipe.parts.len());
    for part in &recipe.parts {
        let Some(entry) = entries::get(conn, List::Products.as_str(), &part.product.0)? else {
            continue;
        };
        let product = app.product_of(entry.version_id, &entry.body)?;
        let share = i128::from(grams.milligrams()) * i128::from(part.grams.0.milligrams());
        let share = share / i128::from(batch.milligrams().max(1));
        let share = Grams::from_milligrams(i64::try_from(share).unwrap_or(i64::MAX));
        let below = recipe_parts(app, conn, &part.product.0, share, depth - 1)?;
        parts.push(Ingredient {
            names: product.names.clone(),
            grams: share,
            parts: below,
        });
    }
    Ok(parts)
}
