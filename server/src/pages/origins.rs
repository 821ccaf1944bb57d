//! "Where it came from" as tables: source animals, and what was bought in.

use super::says::PageSays;
use super::spoken::{Words, shown, told};
use crate::read::names::Names;
use crate::wire::answers::OriginsRead;

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
    fn to(code: String) -> Link {
        Link {
            shown: shown(&code),
            code,
        }
    }
}

impl Origins {
    /// The tables of what was found.
    pub fn of(found: OriginsRead, names: &Names) -> Origins {
        let words = Words::of(names);
        let animals = found.animals.into_iter().map(|animal| Animal {
            what: words.say(PageSays::From {
                what: words.headed("Species", &animal.species),
                farm: names.farm(&animal.farm),
            }),
            killed: words.say(PageSays::Killed {
                day: animal.killed_on.0,
            }),
            carcass: match (animal.carcass, animal.side) {
                (Some(carcass), Some(side)) => {
                    format!("{carcass}, {}", words.word("Side", &side))
                }
                (Some(carcass), None) => carcass,
                (None, Some(side)) => words.word("Side", &side),
                (None, None) => told(animal.tag.as_deref()),
            },
            share: words.share(animal.share),
            via: animal.via.into_iter().map(Link::to).collect(),
            id: animal.id,
        });
        let bought = found.bought.into_iter().map(|bought| Bought {
            name: names.product(&bought.product),
            supplier: told(bought.supplier.as_deref()),
            supplier_lot: told(bought.supplier_lot.as_deref()),
            lot: Link::to(bought.lot),
        });
        Origins {
            animals: animals.collect(),
            bought: bought.collect(),
            excludes_bought: found.share_excludes_bought_meat,
        }
    }
}
