//! What a lot is made of, for its ingredient list: from the lots actually used, and from the recipes
//! of what was bought ready.

use crate::app::{App, damaged};
use crate::error::Result;
use crate::lists::List;
use crate::wire::lists::RecipeEntry;
use domain::cure;
use domain::genealogy::Ancestry;
use domain::grams::Grams;
use domain::ingredients::{self, Ingredient, Nature};
use domain::lot::{DeedId, LotId};
use domain::measure::Percent;
use domain::product::Product;
use domain::statement::{self, Food};
use domain::words::{Addition, ProductKind};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use std::collections::HashMap;
use store::lots::LotRow;
use store::{Conn, deeds, entries, lots, trace};

/// How far down the recipes of bought goods are told.
const DEEPEST: u32 = 8;

/// The food that a lot is, as far as its statement goes.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn food(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Food> {
    let product = app.product(conn, row.version_id)?;
    let mut parts = if is_single(product.kind) {
        Vec::new()
    } else {
        parts_of(app, conn, row)?
    };
    if parts.is_empty() {
        let grams = Grams::from_milligrams(row.made_mg);
        let within = match product.curing_salt.is_some() {
            true => parts_of_curing_salt(app, conn, Some(row.id), &product, grams)?,
            false => Vec::new(),
        };
        parts.push(ingredient(&product, grams, within));
    }
    let language = app.kitchen(conn)?.language().to_owned();
    Ok(Food {
        name: product.name(&language).to_owned(),
        parts,
        allergens: row.allergens()?,
        species: product.species,
        other_species: row.species()?,
        ..Food::default()
    })
}

/// What is new in a lot against the last one of the same product, in words for the bench; nothing
/// where it is the first of its kind.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn changes_since_last(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Vec<String>> {
    use ProductKind::*;
    let product = app.product(conn, row.version_id)?;
    if !matches!(product.kind, Cooked | Cured | Mixed | Rendered | Stock) {
        return Ok(Vec::new());
    }
    let Some(before) = lots::last_before(conn, row)? else {
        return Ok(Vec::new());
    };
    let (had, has) = (near(app, conn, &before)?, near(app, conn, row)?);
    Ok(statement::changes(&had, &has).map_or(Vec::new(), |change| change.words()))
}

/// What went into a lot and into that, no further: a change deeper down was told of when it was made,
/// and an allergen shows through the union that every lot bears.
fn near(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Food> {
    let product = app.product(conn, row.version_id)?;
    Ok(Food {
        name: product.name("en").to_owned(),
        parts: inputs_of(app, conn, row, 2)?,
        allergens: row.allergens()?,
        ..Food::default()
    })
}

fn inputs_of(app: &App, conn: &mut Conn, row: &LotRow, depth: u32) -> Result<Vec<Ingredient>> {
    let product = app.product(conn, row.version_id)?;
    if depth == 0 || is_single(product.kind) {
        return Ok(Vec::new());
    }
    let used = store::record::used_by(conn, row.deed_id)?;
    if used.is_empty() {
        return recipe_parts(
            app,
            conn,
            &product.code,
            Grams::from_milligrams(row.made_mg),
            depth,
        );
    }
    let keys: Vec<i32> = used.iter().map(|(lot, _)| *lot).collect();
    let rows: HashMap<i32, LotRow> = lots::by_keys(conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let mut inputs = Vec::with_capacity(used.len());
    for (lot, mg) in used {
        let of = &rows[&lot];
        let product = app.product(conn, of.version_id)?;
        let parts = inputs_of(app, conn, of, depth - 1)?;
        inputs.push(Ingredient {
            allergens: of.allergens()?,
            lots: vec![of.code()?.shown()],
            ..ingredient(&product, Grams::from_milligrams(mg), parts)
        });
    }
    Ok(ingredients::of_step(&product.code, inputs))
}

/// One thing that went in, as the list of products knows it.
fn ingredient(product: &Product, grams: Grams, parts: Vec<Ingredient>) -> Ingredient {
    Ingredient {
        product: product.code.clone(),
        names: product.names.clone(),
        grams,
        parts,
        nature: product.nature.unwrap_or(match product.kind {
            ProductKind::Fat => Nature::Fat,
            _ if product.curing_salt.is_some() => Nature::Cure,
            _ => Nature::Food,
        }),
        allergens: product.allergens.clone(),
        species: product.species,
        ..Ingredient::default()
    }
}

/// The parts of a curing salt by name, from the strength of that very lot: every part of a cure is
/// listed (`us-I6`).
fn parts_of_curing_salt(
    app: &App,
    conn: &mut Conn,
    lot: Option<i32>,
    product: &Product,
    grams: Grams,
) -> Result<Vec<Ingredient>> {
    let place = app.kitchen(conn)?.entry.profile.0;
    let rules = &app.law.laws.of(place).cures;
    let strength = match lot {
        Some(lot) => crate::deeds::cure::strength(conn, lot, product)?,
        None => product.curing_salt.unwrap_or(cure::Strength::unknown()),
    };
    let Ok(makeup) = strength.makeup(rules, "curing_salt") else {
        return Ok(Vec::new());
    };
    let mut parts = vec![(cure::Part::Salt, makeup.salt)];
    for (basis, sodium, potassium) in [
        (
            cure::Basis::SodiumNitrite,
            cure::Part::SodiumNitrite,
            cure::Part::PotassiumNitrite,
        ),
        (
            cure::Basis::SodiumNitrate,
            cure::Part::SodiumNitrate,
            cure::Part::PotassiumNitrate,
        ),
    ] {
        let (share, own) = makeup.share(basis);
        parts.push((if own == basis { sodium } else { potassium }, share));
    }
    let of = |(part, share): (cure::Part, Percent)| {
        let name = rules.names.iter().find(|name| name.part == part)?;
        let names =
            [("en", &name.en), ("fr", &name.fr)].map(|(tag, name)| (tag.to_owned(), name.clone()));
        let milligrams = Decimal::from(grams.milligrams()) * share.fraction();
        let grams = Grams::from_milligrams(milligrams.trunc().to_i64().unwrap_or_default());
        (grams > Grams::ZERO).then(|| Ingredient {
            product: part.as_str().to_owned(),
            names: std::collections::BTreeMap::from(names).into(),
            grams,
            nature: if part == cure::Part::Salt {
                Nature::Food
            } else {
                Nature::Additive
            },
            additive: Some(part.as_str().to_owned()),
            ..Ingredient::default()
        })
    };
    Ok(parts.into_iter().filter_map(of).collect())
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
                let grams = Grams::from_milligrams(used.milligrams);
                let within = match of.curing_salt.is_some() {
                    true => parts_of_curing_salt(app, conn, Some(used.lot.0), &of, grams)?,
                    false => parts.get(&used.lot).cloned().unwrap_or_default(),
                };
                inputs.push(ingredient(&of, grams, within));
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
        let below = match product.curing_salt.is_some() {
            true => parts_of_curing_salt(app, conn, None, &product, share)?,
            false => recipe_parts(app, conn, &part.product.0, share, depth - 1)?,
        };
        parts.push(ingredient(&product, share, below));
    }
    Ok(ingredients::of_step(code, parts))
}
