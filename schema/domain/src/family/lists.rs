//! The kitchen's lists as they stand: what things are called, and of what the bought ones are made.

use crate::heat::Bounds;
use crate::lot::PlaceId;
use crate::product::{Part, Product};
use crate::says::Says;
use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

/// An entry that has a name.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Listed {
    /// Its name.
    pub name: String,
    /// Its country, where it has one.
    pub country: Option<String>,
    /// Of a farm: are its animals born in that country?
    pub born_there: bool,
    /// Of a place: is it a counter, from which things are sold?
    pub is_counter: bool,
    /// Of a place: is it a bench or machine, which is cleaned down?
    pub is_contact: bool,
    /// Of a place: is food kept there, to be found again another day?
    pub keeps_food: bool,
    /// Of a place: how warm and how cold it may be.
    pub bounds: Bounds,
    /// Of a place: does it have to be so cold or warm?
    pub has_limits: bool,
    /// Of a place: how cold or warm.
    pub limits: Vec<Says>,
    /// Of whoever supplies: the address.
    pub address: Option<String>,
    /// And the telephone.
    pub phone: Option<String>,
    /// Of a supplier: the establishment number.
    pub number: Option<String>,
}

/// The lists as they stand now.
#[derive(Debug, Clone, Default)]
pub struct Lists {
    /// Products by code.
    pub products: HashMap<String, Arc<Product>>,
    /// Recipes by the code of what they make.
    pub recipes: HashMap<String, Vec<Part>>,
    /// Places by code.
    pub places: BTreeMap<String, Listed>,
    /// The code of each place, by its key.
    pub place_codes: HashMap<PlaceId, String>,
    /// Farms by code.
    pub farms: BTreeMap<String, Listed>,
    /// Abattoirs by number.
    pub abattoirs: BTreeMap<String, Listed>,
    /// Suppliers by code.
    pub suppliers: BTreeMap<String, Listed>,
}

impl Lists {
    /// The key of a place, by its code.
    pub fn place_key(&self, code: &str) -> Option<PlaceId> {
        let mut places = self.place_codes.iter();
        places.find(|(_, of)| *of == code).map(|(key, _)| *key)
    }

    /// The code of a place.
    pub fn place_code(&self, place: PlaceId) -> &str {
        self.place_codes.get(&place).map_or("", String::as_str)
    }

    /// The name of a place by its key; nothing where it is not on the list.
    pub fn place_name(&self, place: PlaceId) -> &str {
        name(&self.places, self.place_code(place))
    }

    /// The name of a place; its code where the list has it no more.
    pub fn place<'a>(&'a self, code: &'a str) -> &'a str {
        name(&self.places, code)
    }

    /// The name of a farm; its code where the list has it no more.
    pub fn farm<'a>(&'a self, code: &'a str) -> &'a str {
        name(&self.farms, code)
    }

    /// The name of an abattoir; its number where the list has it no more.
    pub fn abattoir<'a>(&'a self, number: &'a str) -> &'a str {
        name(&self.abattoirs, number)
    }

    /// The name of a supplier; its code where the list has it no more.
    pub fn supplier<'a>(&'a self, code: &'a str) -> &'a str {
        name(&self.suppliers, code)
    }

    /// The name of a product in a language; its code where the list has it no more.
    pub fn product<'a>(&'a self, code: &'a str, language: &str) -> &'a str {
        let product = self.products.get(code);
        product.map_or(code, |product| product.name(language))
    }
}

fn name<'a>(list: &'a BTreeMap<String, Listed>, code: &'a str) -> &'a str {
    list.get(code).map_or(code, |entry| &entry.name)
}
