//! The lists as they stand, kept from one request to the next as long as nobody has changed them.

use super::List;
use super::kitchen::Kitchen;
use crate::addresses;
use crate::app::{App, damaged};
use crate::error::Result;
use crate::wire::limits::LimitsEntry;
use crate::wire::lists::RecipeEntry;
use domain::family::{Listed, Lists};
use domain::heat::Bounds;
use domain::lot::PlaceId;
use domain::product::Part;
use domain::rows::RowId;
use domain::words::PlaceKind;
use serde::Deserialize;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::Arc;
use store::Conn;
use store::entries::{self, Stamp};

/// The lists and the kitchen.
#[derive(Debug, Clone)]
pub struct Standing {
    /// How the record's lists stood when they were read.
    pub stamp: Stamp,
    /// The kitchen.
    pub kitchen: Arc<Kitchen>,
    /// What things are called, and of what they are made.
    pub lists: Lists,
    /// The key of each product's version, by the product's code.
    pub versions: HashMap<String, i32>,
    /// The rows of the law that somebody confirmed for this kitchen.
    pub confirmed: BTreeSet<RowId>,
}

/// The list in which the record keeps which rows are confirmed: one entry a row.
pub const CONFIRMED: &str = "row-confirmations";

/// What an entry of it says of a row that is confirmed.
pub const IS_CONFIRMED: &str = "confirmed";

#[derive(Deserialize)]
struct Named {
    name: String,
    country: Option<String>,
    #[serde(default)]
    born_there: Option<bool>,
    /// Of a place: what it is for.
    kind: Option<String>,
    /// Of a place: how cold or warm it has to be.
    limits: Option<LimitsEntry>,
    address: Option<String>,
    /// Of a supplier: the establishment number.
    phone: Option<String>,
    number: Option<String>,
}

impl Standing {
    /// Reads all lists in one statement.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn read(app: &App, conn: &mut Conn, stamp: Stamp) -> Result<Standing> {
        let mut standing = Standing {
            stamp,
            kitchen: Arc::new(Kitchen::unset()),
            lists: Lists::default(),
            versions: HashMap::new(),
            confirmed: BTreeSet::new(),
        };
        for (list, row) in entries::current(conn)? {
            let lists = &mut standing.lists;
            match List::parse(&list) {
                Some(List::Products) => {
                    let product = app.product_of(row.version_id, &row.body)?;
                    standing.versions.insert(row.code.clone(), row.version_id);
                    lists.products.insert(row.code, product);
                }
                Some(List::Recipes) => {
                    lists.recipes.insert(row.code, parts(&row.body)?);
                }
                Some(List::Places) => {
                    lists.place_codes.insert(PlaceId(row.id), row.code.clone());
                    add(&mut lists.places, row.code, &row.body)?;
                }
                Some(List::Farms) => add(&mut lists.farms, row.code, &row.body)?,
                Some(List::Abattoirs) => add(&mut lists.abattoirs, row.code, &row.body)?,
                Some(List::Suppliers) => add(&mut lists.suppliers, row.code, &row.body)?,
                _ if list == "kitchen" => {
                    standing.kitchen = app.kitchen_of(row.version_id, &row.body)?;
                }
                _ if list == addresses::LIST => app.hear(&row.code),
                _ if list == CONFIRMED && row.body == IS_CONFIRMED => {
                    standing.confirmed.insert(RowId::new(row.code));
                }
                _ => {}
            }
        }
        Ok(standing)
    }
}

fn parts(body: &str) -> Result<Vec<Part>> {
    let recipe: RecipeEntry = serde_json::from_str(body).map_err(|error| damaged(&error))?;
    let part = |part: &crate::wire::lists::PartEntry| Part {
        product: part.product.0.clone(),
        grams: part.grams.0,
    };
    Ok(recipe.parts.iter().map(part).collect())
}

/// Adds an entry to a list of those that have a name.
///
/// # Errors
/// It is damaged.
pub(super) fn add(list: &mut BTreeMap<String, Listed>, code: String, body: &str) -> Result<()> {
    let named: Named = serde_json::from_str(body).map_err(|error| damaged(&error))?;
    let is = |kind: PlaceKind| named.kind.as_deref() == Some(kind.as_str());
    let listed = Listed {
        is_counter: is(PlaceKind::Counter),
        is_contact: is(PlaceKind::Contact),
        keeps_food: is(PlaceKind::Storage) || is(PlaceKind::Counter),
        bounds: named.limits.map_or(Bounds::default(), |of| of.bounds()),
        has_limits: named.limits.is_some(),
        limits: named.limits.map_or(Vec::new(), |limits| limits.says()),
        address: named.address.filter(|address| !address.trim().is_empty()),
        phone: named.phone,
        number: named.number,
        name: named.name,
        country: named.country,
        born_there: named.born_there.unwrap_or(false),
    };
    list.insert(code, listed);
    Ok(())
}
