//! Where a lot comes from, as it is answered.

use super::{AnimalShare, BoughtRead, OriginsRead, shown_id};
use crate::wire::Day;
use domain::code::LotCode;
use domain::family::{self, BoughtSource, Origins};

/// The sources of a lot.
pub fn read(code: &str, origins: &Origins) -> OriginsRead {
    OriginsRead {
        lot: code.to_owned(),
        animals: origins.animals.iter().map(animal).collect(),
        bought: origins.bought.iter().map(bought).collect(),
        share_excludes_bought_meat: origins.excludes_bought_meat,
    }
}

fn via(codes: &[LotCode]) -> Vec<String> {
    codes.iter().map(ToString::to_string).collect()
}

fn animal(of: &family::AnimalShare) -> AnimalShare {
    AnimalShare {
        id: shown_id(&of.animal.uid),
        farm: of.animal.farm.clone(),
        species: of.animal.species.as_str().to_owned(),
        killed_on: Day(of.animal.killed_on),
        abattoir: of.animal.abattoir.clone(),
        carcass: of.animal.carcass.clone(),
        tag: of.animal.tag.clone(),
        side: of.side.map(|side| side.as_str().to_owned()),
        share: of.share,
        via: via(&of.via),
    }
}

fn bought(of: &BoughtSource) -> BoughtRead {
    BoughtRead {
        lot: of.lot.to_string(),
        product: of.product.clone(),
        supplier: of.supplier.clone(),
        supplier_lot: of.supplier_lot.clone(),
        via: via(&of.via),
    }
}
