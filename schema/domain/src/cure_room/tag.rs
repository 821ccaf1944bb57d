//! Whose tag is it? A weight that does not fit one piece may fit another.

use super::says::RoomSays;
use super::{CureRoomRules, Piece, PieceStage, PieceWeighing, loss};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::says::Says;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// A piece that a weight fits better.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Likely {
    /// Its tag.
    pub tag: String,
    /// What it was expected to weigh that day.
    pub expected: Grams,
    /// For a tired cook.
    pub says: Says,
}

/// The piece whose expected weight fits better than that of the piece whose tag was read: of the
/// same product, out of the salt and not released, and within the usual points of its own curve.
/// None where the weight fits the tag, or fits nobody.
pub fn likely_tag(
    piece: &Piece,
    weighing: PieceWeighing,
    others: &[Piece],
    rules: &CureRoomRules,
) -> Option<Likely> {
    let off = |piece: &Piece| -> Option<Decimal> {
        let expected = piece.expected_loss(weighing.day)?;
        Some((loss(piece.green, weighing.grams).number() - expected.number()).abs())
    };
    let band = rules.band.as_ref()?;
    let own = off(piece)?;
    if band.allows(own) {
        return None;
    }
    let (_, other) = others
        .iter()
        .filter(|other| other.tag != piece.tag && other.product == piece.product)
        .filter(|other| !matches!(other.stage, PieceStage::InSalt | PieceStage::Released))
        .filter_map(|other| Some((off(other)?, other)))
        .filter(|(off, _)| band.allows(*off) && *off < own)
        .min_by_key(|(off, _)| *off)?;
    let expected = weight_after(other.green, other.expected_loss(weighing.day)?);
    let says = RoomSays::FitsBetter {
        grams: weighing.grams,
        tag: other.tag.clone(),
        expected,
    };
    Some(Likely {
        tag: other.tag.clone(),
        expected,
        says: says.into(),
    })
}

/// To the nearest gram: no more is known.
fn weight_after(green: Grams, lost: Percent) -> Grams {
    let left = Decimal::from(green.milligrams()) * (Decimal::ONE - lost.fraction());
    let grams = (left / Decimal::ONE_THOUSAND).round();
    Grams::whole(grams.to_i64().unwrap_or(0))
}
