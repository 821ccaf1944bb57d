//! What a lot is made of, for its ingredient list: from the lots actually used, and from the recipes
//! of what was bought ready.

use crate::app::{App, damaged};
use crate::error::Result;
use crate::lists::List;
use crate::wire::lists::RecipeEntry;
use domain::genealogy::Ancestry;
use domain::grams::Grams;
use domain::ingredients::{self, Ingredient};
use domain::lot::{DeedId, LotId};
use domain::words::{Addition, ProductKind};
use std::collections::{BTreeMap, HashMap};
use store::lots::LotRow;
use store::{Conn, deeds, entries, lots, trace};

/// How far down the recipes of bought goods are told.
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
    let mut parts = if is_single(product.kind) {
        Vec::new()
    } else {
        parts_of(app, conn, row)?
    };
    if parts.is_empty() {
        parts.push(Ingredient {
            product: product.code.clone(),
            names: product.names.clone().into(),
            grams: Grams::from_milligrams(row.made_mg),
            ..Ingredient::default()
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

/// The parts of a lot, told from its sources on: each lot after everything that went into it, so
/// that a pot topped up for years costs its length once.
fn parts_of(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Vec<Ingredient>> {
    let ancestry = trace::back(conn, row.id)?;
    let mut order = ancestry.descendants_first(LotId(row.id));
    order.reverse();
    let keys: Vec<i32> = order.iter().map(|lot| lot.0).collect();
    let rows: HashMap<i32, LotRow> = lots::by_keys(conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let waters = waters(conn, &ancestry)?;
    let mut parts: HashMap<LotId, Vec<Ingredient>> = HashMap::with_capacity(order.len());
    for lot in order {
        let row = &rows[&lot.0];
        let product = app.product(conn, row.version_id)?;
        let uses = ancestry.uses_of(lot);
        let told = if is_single(product.kind) {
            Vec::new()
        } else if uses.is_empty() {
            recipe_parts(
                app,
                conn,
                &product.code,
                Grams::from_milligrams(row.made_mg),
                DEEPEST,
            )?
        } else {
            let mut inputs = Vec::with_capacity(uses.len());
            for used in uses {
                let of = app.product(conn, rows[&used.lot.0].version_id)?;
                inputs.push(Ingredient {
                    product: of.code.clone(),
                    names: of.names.clone().into(),
                    grams: Grams::from_milligrams(used.milligrams),
                    parts: parts.get(&used.lot).cloned().unwrap_or_default(),
                    ..Ingredient::default()
                });
            }
            let water = ancestry.made_by.get(&lot).and_then(|step| waters.get(step));
            inputs.extend(water.map(|grams| Ingredient::water(*grams)));
            ingredients::of_step(&product.code, inputs)
        };
        parts.insert(lot, told);
    }
    Ok(parts.remove(&LotId(row.id)).unwrap_or_default())
}

/// The water, ice and steam of each step.
fn waters(conn: &mut Conn, ancestry: &Ancestry) -> Result<HashMap<DeedId, Grams>> {
    let steps: Vec<i32> = ancestry.uses.keys().map(|step| step.0).collect();
    let mut waters: HashMap<DeedId, Grams> = HashMap::new();
    for (step, what, mg) in deeds::additions(conn, &steps)? {
        if what != Addition::ScaleDifference.as_str() {
            *waters.entry(DeedId(step)).or_default() += Grams::from_milligrams(mg);
        }
    }
    Ok(waters)
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
        let share = Grams::from_milligrams((share / i128::from(batch.milligrams().max(1))) as i64);
        let below = recipe_parts(app, conn, &part.product.0, share, depth - 1)?;
        parts.push(Ingredient {
            product: product.code.clone(),
            names: product.names.clone().into(),
            grams: share,
            parts: below,
            ..Ingredient::default()
        });
    }
    Ok(ingredients::of_step(code, parts))
}
