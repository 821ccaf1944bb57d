//! Which record an occasion asks for.

use super::keeping::Record;
use crate::rows::RowId;
use crate::words::words;

words! {
    /// What happened.
    Occasion {
        GrindBeef = "grind-beef", SellAtRetail = "sell-at-retail", SellToBusiness = "sell-to-business",
        ServeMeal = "serve-meal", SendPig = "send-pig", MakeMeatProduct = "make-meat-product",
        BuyFood = "buy-food", ReceiveAnimalProduct = "receive-animal-product",
        TreatTrichinae = "treat-trichinae", PackReducedOxygen = "pack-reduced-oxygen",
        Complaint = "complaint", Recall = "recall", RecallDrill = "recall-drill",
    }
}

/// An occasion that asks for a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asks {
    /// Where it stands.
    pub row: RowId,
    /// The occasion.
    pub on: Occasion,
    /// The record.
    pub record: Record,
}

/// The records that the occasion asks for here.
pub fn records(rules: &super::DutyRules, on: Occasion) -> Vec<&Asks> {
    rules
        .step_records
        .iter()
        .filter(|asks| asks.on == on)
        .collect()
}
