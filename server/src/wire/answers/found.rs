//! What the one box found, as it is answered.

use crate::ids::shown_id;
use crate::read::seek::{Sought, Thing};
use serde::Serialize;
use utoipa::ToSchema;

/// What may be meant.
#[derive(Debug, Serialize, ToSchema)]
pub struct SoughtRead {
    /// Animals, people, places, farms, products, lots; what was said letter for letter is the first.
    pub things: Vec<ThingRead>,
    /// Is the first one what was said, letter for letter?
    pub exact: bool,
    /// Are there more lots than these?
    pub more: bool,
    /// Is it the label of another kitchen?
    pub elsewhere: bool,
}

/// Something on record.
#[derive(Debug, Serialize, ToSchema)]
pub struct ThingRead {
    /// What it is: `lot`, `pack`, `animal`, `person`, `place`, `farm`, `product`.
    pub is: String,
    /// Its code or id.
    pub code: String,
    /// The pack's number, where it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pack: Option<u32>,
    /// Its name; of an animal its carcass number, else its tag.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Where its page is.
    pub page: String,
}

/// What was found, for a reader.
pub fn sought_read(sought: &Sought) -> SoughtRead {
    SoughtRead {
        things: sought.things.iter().map(thing_read).collect(),
        exact: sought.exact,
        more: sought.more,
        elsewhere: sought.elsewhere,
    }
}

fn thing_read(thing: &Thing) -> ThingRead {
    let mut pack_of = None;
    let (code, name) = match thing {
        Thing::Lot(lot, pack) => {
            pack_of = *pack;
            (lot.code.to_string(), Some(lot.product.clone()))
        }
        Thing::Animal(animal) => {
            let number = animal.carcass.clone().or_else(|| animal.tag.clone());
            (shown_id(&animal.uid), number)
        }
        Thing::Person(code, name)
        | Thing::Place(code, name)
        | Thing::Farm(code, name)
        | Thing::Product(code, name) => (code.clone(), Some(name.clone())),
    };
    ThingRead {
        is: thing.kind().to_owned(),
        code,
        pack: pack_of,
        name,
        page: thing.path(),
    }
}
