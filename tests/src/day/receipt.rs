//! What comes in, and where from.

use super::{Draft, Told};
use crate::call::chrono_day;
use serde_json::{Value, json};

/// Something comes in.
#[derive(Clone)]
pub struct Receipt(pub(super) Draft);

impl Told for Receipt {
    fn draft(&mut self) -> &mut Draft {
        &mut self.0
    }
}

impl Receipt {
    /// To that place.
    pub fn to(self, place: &str) -> Receipt {
        self.with("place", place)
    }

    /// Of an animal.
    pub fn from(self, animal: Animal) -> Receipt {
        self.with("animal", animal.0)
    }

    /// Of a supplier, or one of its lots: see [`bought`].
    pub fn bought(self, bought: Value) -> Receipt {
        self.with("bought", bought)
    }

    /// With the barcode of its carton.
    pub fn barcode(self, barcode: &str) -> Receipt {
        self.with("barcode", barcode)
    }
}

/// A supplier's lot.
pub fn bought(supplier: &str, lot: &str) -> Value {
    json!({ "supplier": supplier, "supplier_lot": lot })
}

/// An animal that came in.
#[derive(Clone)]
pub struct Animal(Value);

/// A pig of that farm, killed yesterday at Harle Gate.
pub fn farm(code: &str) -> Animal {
    Animal(
        json!({ "farm": code, "species": "pig", "killed_on": chrono_day(-1), "abattoir": "DEMO-17" }),
    )
}

impl Animal {
    /// The day of its death: `2026-06-08`.
    pub fn killed(mut self, day: impl Into<String>) -> Animal {
        self.0["killed_on"] = json!(day.into());
        self
    }

    /// The carcass number.
    pub fn carcass(mut self, number: &str) -> Animal {
        self.0["carcass"] = json!(number);
        self
    }

    /// The ear tag.
    pub fn tag(mut self, number: &str) -> Animal {
        self.0["tag"] = json!(number);
        self
    }

    /// `left` or `right`.
    pub fn side(mut self, side: &str) -> Animal {
        self.0["side"] = json!(side);
        self
    }
}
