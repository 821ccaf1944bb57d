//! "Where it came from" as tables: source animals, and what was bought in.

use super::says::PageSays;
use super::spoken::{Words, told};
use crate::ids::shown_id;
use crate::read::names::Names;
use domain::code::LotCode;
use domain::family::{self, AnimalShare, BoughtSource};

/// The tables.
pub struct Origins {
    /// Source animals, the largest share first.
    pub animals: Vec<Animal>,
    /// Bought-in lots.
    pub bought: Vec<Bought>,
    /// Do the shares leave bought-in meat out?
    pub excludes_bought: bool,
}

/// A source animal.
pub struct Animal {
    /// Its id.
    pub id: String,
    /// Its species and farm.
    pub what: String,
    /// When it was killed.
    pub killed: String,
    /// Carcass number and side.
    pub carcass: String,
    /// Its share.
    pub share: String,
    /// One path from it.
    pub via: Vec<Link>,
}

/// A bought-in lot.
pub struct Bought {
    /// The lot.
    pub lot: Link,
    /// What it is.
    pub name: String,
    /// Whose.
    pub supplier: String,
    /// The supplier's lot.
    pub supplier_lot: String,
}

/// A lot to go to.
pub struct Link {
    /// Its code.
    pub code: String,
    /// For the eye.
    pub shown: String,
}

impl Link {
    fn to(code: &LotCode) -> Link {
        Link {
            code: code.to_string(),
            shown: code.shown(),
        }
    }
}

impl Origins {
    /// The tables of what was found.
    pub fn of(found: &family::Origins, names: &Names) -> Origins {
        let animals = found.animals.iter().map(|of| animal(of, names));
        let bought = found.bought.iter().map(|of| bought(of, names));
        Origins {
            animals: animals.collect(),
            bought: bought.collect(),
            excludes_bought: found.excludes_bought_meat,
        }
    }
}

fn animal(of: &AnimalShare, names: &Names) -> Animal {
    let (words, animal) = (Words::of(names), &of.animal);
    let side = of.side.map(|side| words.say(side.says()));
    Animal {
        id: shown_id(&animal.uid),
        what: words.say(PageSays::From {
            what: words.headed(animal.species.says()),
            farm: names.farm(&animal.farm),
        }),
        killed: words.say(PageSays::Killed {
            day: animal.killed_on,
        }),
        carcass: match (&animal.carcass, side) {
            (Some(carcass), Some(side)) => format!("{carcass}, {side}"),
            (Some(carcass), None) => carcass.clone(),
            (None, Some(side)) => side,
            (None, None) => told(animal.tag.as_deref()),
        },
        share: words.share(of.share),
        via: of.via.iter().map(Link::to).collect(),
    }
}

fn bought(of: &BoughtSource, names: &Names) -> Bought {
    Bought {
        lot: Link::to(&of.lot),
        name: names.product(&of.product),
        supplier: told(of.supplier.as_deref()),
        supplier_lot: told(of.supplier_lot.as_deref()),
    }
}
