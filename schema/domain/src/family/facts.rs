//! What the record holds about a lot besides the lot itself.

use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::Temperature;
use crate::words::{Account, DeedKind, Quantity, Side, Species, State};
use chrono::{DateTime, NaiveDate, Utc};
use rust_decimal::Decimal;

/// The deed that made a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MadeBy {
    /// Its id, which its device made.
    pub uid: Vec<u8>,
    /// What it was.
    pub kind: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// The kitchen's day.
    pub day: NaiveDate,
    /// Who.
    pub by: String,
}

/// Something that was done with a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Did {
    /// The deed's key.
    pub deed: crate::lot::DeedId,
    /// The deed's id.
    pub uid: Vec<u8>,
    /// What it was.
    pub kind: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// The kitchen's day on which the packs count it.
    pub day: NaiveDate,
    /// Who.
    pub by: String,
    /// Was it voided?
    pub voided: bool,
    /// The pack that it was done with.
    pub pack: u32,
    /// What was in that at first.
    pub pack_made: Grams,
    /// The account that the grams went to or came from.
    pub account: Account,
    /// How much.
    pub grams: Grams,
    /// How the pack is kept since then, if that changed.
    pub state: Option<State>,
}

/// A reading of a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotReading {
    /// When.
    pub at: DateTime<Utc>,
    /// What was measured.
    pub quantity: Quantity,
    /// How much, in millionths of the quantity's unit.
    pub millionths: i64,
}

impl LotReading {
    /// The temperature that was read, if it was one.
    pub fn temperature(&self) -> Option<Temperature> {
        let degrees = Decimal::new(self.millionths, 6);
        match self.quantity {
            Quantity::Celsius => Some(Temperature::celsius(degrees)),
            Quantity::Fahrenheit => Some(Temperature::fahrenheit(degrees)),
            _ => None,
        }
    }
}

/// Where a received lot comes from, as it is known now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownSource {
    /// The animal, if it comes from one.
    pub animal: Option<SourceAnimal>,
    /// Which part of the animal.
    pub side: Option<Side>,
    /// The supplier's code.
    pub supplier: Option<String>,
    /// The supplier's lot.
    pub supplier_lot: Option<String>,
}

/// A source animal, as it is known now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SourceAnimal {
    /// Its key in the record.
    pub key: i32,
    /// Its id: that of the receipt that brought it.
    pub uid: Vec<u8>,
    /// The farm's code.
    pub farm: String,
    /// What it was.
    pub species: Species,
    /// When it was killed.
    pub killed_on: NaiveDate,
    /// The abattoir's number.
    pub abattoir: Option<String>,
    /// The carcass number.
    pub carcass: Option<String>,
    /// The tag.
    pub tag: Option<String>,
    /// How many head it stands for.
    pub head: u32,
}

/// A source animal as it is shown: with the lots that were received of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AnimalView {
    /// The animal.
    pub animal: SourceAnimal,
    /// The lots received of it.
    pub received: Vec<LotCode>,
    /// The lots that were known as received of it, until that was corrected.
    pub once: Vec<KnownOnce>,
}

/// A lot that was known as received of an animal, until that was corrected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownOnce {
    /// The lot.
    pub lot: LotCode,
    /// The id of the animal that it is known to be of now.
    pub now: Vec<u8>,
    /// Who corrected it.
    pub by: String,
    /// When.
    pub at: DateTime<Utc>,
}
