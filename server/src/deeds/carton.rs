//! A carton's own barcode: what it says of a bought-in lot.

use super::facts::Facts;
use super::says::ReceiveDeedSays;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::wire::asked::BoughtAsked;
use crate::wire::{Code, Line};
use chrono::NaiveDate;
use domain::deed::receive::Bought;
use domain::grams::Grams;
use domain::gs1;
use domain::product::Product;
use std::sync::Arc;
use store::entries;

/// What a carton's barcode holds.
#[derive(Default)]
pub struct Carton {
    bought: Bought,
    grams: Option<Grams>,
}

impl Carton {
    /// Reads it; without one, nothing is known.
    ///
    /// # Errors
    /// 422 where it is no GS1 string.
    pub fn read(barcode: Option<&Line>, today: NaiveDate) -> Result<Carton> {
        let Some(barcode) = barcode else {
            return Ok(Carton::default());
        };
        let elements = gs1::read(&barcode.0).map_err(|says| Error::cannot_be("barcode", says))?;
        Ok(Carton {
            grams: elements.net_milligrams().map(Grams::from_milligrams),
            bought: Bought {
                supplier: None,
                supplier_lot: elements.lot().map(str::to_owned),
                packed_on: elements.packed_on(today),
                use_by: elements.use_by(today),
                gtin: elements.gtin().map(str::to_owned),
            },
        })
    }

    /// The product and the key of its version: as the caller gave it, else the one that has the carton's number.
    ///
    /// # Errors
    /// 422 where nobody says, or the number is on no product or on several.
    pub fn product(
        &self,
        facts: &mut Facts<'_, '_>,
        told: Option<&Code>,
    ) -> Result<(Arc<Product>, i32)> {
        let refused = |says: ReceiveDeedSays| Err(Error::cannot_be("product", says));
        if let Some(code) = told {
            return facts.product(&code.0, "product");
        }
        let Some(gtin) = &self.bought.gtin else {
            return refused(ReceiveDeedSays::WhatIsIt);
        };
        let mut listed = Vec::new();
        for row in entries::all(facts.tx.conn, List::Products.as_str())? {
            let product = facts.app.product_of(row.version_id, &row.body)?;
            if let Some(gtin) = product.sale.gtin.clone() {
                listed.push(((product, row.version_id), gtin));
            }
        }
        match gs1::product_of(gtin, listed) {
            Ok(found) => Ok(found),
            Err(none) if none.is_empty() => {
                refused(ReceiveDeedSays::GtinUnknown { gtin: gtin.clone() })
            }
            Err(several) => {
                let products: Vec<&str> =
                    several.iter().map(|(one, _)| one.code.as_str()).collect();
                let products = products.join(", ");
                refused(ReceiveDeedSays::GtinOfSeveral {
                    gtin: gtin.clone(),
                    products,
                })
            }
        }
    }

    /// What the lot weighs: as the caller gave it, else as the carton says.
    ///
    /// # Errors
    /// 422 where neither says it.
    pub fn grams(&self, told: Option<Grams>) -> Result<Grams> {
        let grams = told.or(self.grams);
        grams.ok_or_else(|| Error::cannot_be("grams", ReceiveDeedSays::NoWeight))
    }

    /// What the caller gave, completed by what the carton says; the two must not contradict.
    ///
    /// # Errors
    /// 422 naming the field where they do.
    pub fn bought(&self, told: Option<&BoughtAsked>) -> Result<Bought> {
        let Some(told) = told else {
            return Ok(self.bought.clone());
        };
        fn agree<T: PartialEq + Clone>(
            told: Option<T>,
            carton: &Option<T>,
            field: &str,
        ) -> Result<Option<T>> {
            match (&told, carton) {
                (Some(told), Some(carton)) if told != carton => {
                    Err(Error::cannot_be(field, ReceiveDeedSays::CartonDiffers))
                }
                _ => Ok(told.or_else(|| carton.clone())),
            }
        }
        let lot = told.supplier_lot.as_ref().map(|lot| lot.0.clone());
        Ok(Bought {
            supplier: told.supplier.as_ref().map(|supplier| supplier.0.clone()),
            supplier_lot: agree(lot, &self.bought.supplier_lot, "bought.supplier_lot")?,
            packed_on: agree(
                told.packed_on.map(|day| day.0),
                &self.bought.packed_on,
                "bought.packed_on",
            )?,
            use_by: agree(
                told.use_by.flatten().map(|day| day.0),
                &self.bought.use_by,
                "bought.use_by",
            )?,
            gtin: self.bought.gtin.clone(),
        })
    }
}
