//! Where a lot comes from: every source animal with its share, every bought-in lot.

use super::{Family, SourceAnimal};
use crate::code::LotCode;
use crate::lot::LotId;
use crate::origin::Origin;
use crate::words::Side;
use std::collections::BTreeMap;

/// Where a lot comes from.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Origins {
    /// Source animals, the largest share first.
    pub animals: Vec<AnimalShare>,
    /// Bought-in lots.
    pub bought: Vec<BoughtSource>,
    /// Is there bought-in meat, which the shares leave out?
    pub excludes_bought_meat: bool,
    /// Raw meat in it that may carry trichinae and is of no animal on record: bought in, or a pot that nobody knows.
    pub untraced: Vec<LotCode>,
}

/// A source animal and its share.
#[derive(Debug, Clone, PartialEq)]
pub struct AnimalShare {
    /// The animal.
    pub animal: SourceAnimal,
    /// The side that went in, where it was one.
    pub side: Option<Side>,
    /// Its share of the animals' weight.
    pub share: f64,
    /// One shortest path from it.
    pub via: Vec<LotCode>,
}

/// A bought-in lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BoughtSource {
    /// The lot.
    pub lot: LotCode,
    /// Its product's code.
    pub product: String,
    /// The supplier's code.
    pub supplier: Option<String>,
    /// The supplier's lot.
    pub supplier_lot: Option<String>,
    /// One shortest path from it.
    pub via: Vec<LotCode>,
}

/// Where a lot comes from.
pub fn origins(family: &Family, lot: LotId) -> Origins {
    let mut by_animal: BTreeMap<i32, AnimalShare> = BTreeMap::new();
    let mut origins = Origins::default();
    for root in family.ancestry.roots(lot) {
        let via = root.via.iter().filter_map(|lot| family.get(*lot));
        let via: Vec<LotCode> = via.map(|of| of.lot.code.clone()).collect();
        let Some((of, source)) = family
            .get(root.lot)
            .and_then(|of| Some((of, of.source.as_ref()?)))
        else {
            continue;
        };
        let Some(animal) = &source.animal else {
            let carries = of.lot.species.iter().any(|of| of.may_carry_trichinae());
            if carries && !of.lot.condition().is_ready() {
                origins.untraced.push(of.lot.code.clone());
            }
            origins.excludes_bought_meat |= of.lot.origin == Origin::BOUGHT_MEAT;
            origins.bought.push(BoughtSource {
                lot: of.lot.code.clone(),
                product: of.lot.product.code.clone(),
                supplier: source.supplier.clone(),
                supplier_lot: source.supplier_lot.clone(),
                via,
            });
            continue;
        };
        match by_animal.get_mut(&animal.key) {
            Some(known) => {
                known.share += root.share;
                if known.side != source.side {
                    known.side = None; // both sides of it went in
                }
                if via.len() < known.via.len() {
                    known.via = via;
                }
            }
            None => {
                let share = AnimalShare {
                    animal: animal.clone(),
                    side: source.side,
                    share: root.share,
                    via,
                };
                by_animal.insert(animal.key, share);
            }
        }
    }
    origins.animals = by_animal.into_values().collect();
    let by_share = |one: &AnimalShare, other: &AnimalShare| other.share.total_cmp(&one.share);
    origins.animals.sort_by(by_share);
    origins
}
