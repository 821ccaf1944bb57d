//! Where a lot comes from, as it is answered.

use super::shown_id;
use crate::wire::Day;
use domain::code::LotCode;
use domain::family::{self, BoughtSource, Origins};
use serde::Serialize;
use utoipa::ToSchema;

/// Where a lot comes from.
#[derive(Debug, Serialize, ToSchema)]
pub struct OriginsRead {
    /// The lot.
    pub lot: String,
    /// Its source animals.
    pub animals: Vec<AnimalShare>,
    /// Its bought-in lots.
    pub bought: Vec<BoughtRead>,
    /// Is bought-in meat in it, that the shares leave out?
    pub share_excludes_bought_meat: bool,
}

/// A source animal with its share.
#[derive(Debug, Serialize, ToSchema)]
pub struct AnimalShare {
    /// The animal's id.
    pub id: String,
    /// The farm's code.
    pub farm: String,
    /// Its species.
    pub species: String,
    /// The day it was killed.
    pub killed_on: Day,
    /// The abattoir's establishment number.
    pub abattoir: Option<String>,
    /// The abattoir's carcass number.
    pub carcass: Option<String>,
    /// Ear tag or tattoo.
    pub tag: Option<String>,
    /// Which side, if it is one.
    pub side: Option<String>,
    /// Its share of the animals' weight; information only, any share is in scope.
    pub share: f64,
    /// One shortest path, from the lot as received.
    pub via: Vec<String>,
}

/// A bought-in lot in a lot's origins.
#[derive(Debug, Serialize, ToSchema)]
pub struct BoughtRead {
    /// Our code of it.
    pub lot: String,
    /// Its product.
    pub product: String,
    /// The supplier's code.
    pub supplier: Option<String>,
    /// The supplier's lot.
    pub supplier_lot: Option<String>,
    /// One shortest path, from the lot as received.
    pub via: Vec<String>,
}

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
