//! What the lists call things, for the eye: products, places and farms by their codes.

use crate::app::{App, damaged};
use crate::error::Result;
use crate::lists::List;
use serde::Deserialize;
use std::collections::{BTreeMap, HashMap};
use store::{Conn, entries};

/// The names in use now, in the kitchen's first language.
pub struct Names {
    products: HashMap<String, String>,
    /// By code, so that a choice of places is in order.
    pub places: BTreeMap<String, String>,
    places_by_key: HashMap<i32, String>,
    /// By code.
    pub farms: BTreeMap<String, String>,
}

#[derive(Deserialize)]
struct Named {
    name: String,
}

impl Names {
    /// All of them.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn load(app: &App, conn: &mut Conn) -> Result<Names> {
        let language = app.kitchen(conn)?.language().to_owned();
        let mut names = Names {
            products: HashMap::new(),
            places: BTreeMap::new(),
            places_by_key: HashMap::new(),
            farms: BTreeMap::new(),
        };
        for row in entries::all(conn, List::Products.as_str())? {
            let product = app.product_of(row.version_id, &row.body)?;
            let name = product.name(&language).to_owned();
            names.products.insert(row.code, name);
        }
        for row in entries::all(conn, List::Places.as_str())? {
            let name = name_of(&row.body)?;
            names.places_by_key.insert(row.id, name.clone());
            names.places.insert(row.code, name);
        }
        for row in entries::all(conn, List::Farms.as_str())? {
            let name = name_of(&row.body)?;
            names.farms.insert(row.code, name);
        }
        Ok(names)
    }

    /// The name of a product; its code where the list has it no more.
    pub fn product(&self, code: &str) -> String {
        let name = self.products.get(code);
        name.cloned().unwrap_or_else(|| code.to_owned())
    }

    /// The name of a place.
    pub fn place(&self, code: &str) -> String {
        let name = self.places.get(code);
        name.cloned().unwrap_or_else(|| code.to_owned())
    }

    /// The name of a place, by its key.
    pub fn place_of_key(&self, key: i32) -> String {
        let name = self.places_by_key.get(&key);
        name.cloned().unwrap_or_else(|| "–".to_owned())
    }

    /// The name of a farm.
    pub fn farm(&self, code: &str) -> String {
        let name = self.farms.get(code);
        name.cloned().unwrap_or_else(|| code.to_owned())
    }
}

fn name_of(body: &str) -> Result<String> {
    let entry: Named = serde_json::from_str(body).map_err(|error| damaged(&error))?;
    Ok(entry.name)
}
