//! One line of a yield: how much it is, what is usual, and what to make of it.

use super::Band;
use crate::grams::Grams;
use crate::rows::{Finding, Gravity, RowId};
use crate::says::Says;
use rust_decimal::Decimal;

/// What to make of a yield.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Within what is usual.
    Usual,
    /// Less than is usual.
    Low,
    /// More than is usual.
    High,
    /// Nobody has said what is usual.
    NoBand,
    /// The style has such a piece, but none was weighed.
    NotWeighed,
}

/// One line of a yield.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct YieldShown {
    /// The piece or process.
    pub key: String,
    /// As a cook calls it.
    pub name: Says,
    /// What was weighed.
    pub grams: Grams,
    /// Percent of the whole; for stock, litres for each kilogram of bones.
    pub amount: Decimal,
    /// The template's number, where there is one.
    pub expected: Option<Decimal>,
    /// What is usual.
    pub band: Option<Band>,
    /// What to make of it.
    pub verdict: Verdict,
    /// For a tired cook.
    pub says: Says,
    /// The row of the template or of the published number.
    pub row: RowId,
}

impl YieldShown {
    /// A warning, where the line is not as usual. A yield never stops anybody.
    pub fn finding(&self) -> Option<Finding> {
        let band = self.band.iter().map(|band| band.row.clone());
        match self.verdict {
            Verdict::Usual | Verdict::NoBand => None,
            _ => Some(Finding::new(
                Gravity::Warn,
                self.says.clone(),
                band.chain([self.row.clone()]),
            )),
        }
    }
}

impl Verdict {
    /// An amount against what is usual.
    pub fn of(amount: Decimal, band: Option<&Band>) -> Verdict {
        match band {
            None => Verdict::NoBand,
            Some(band) if amount < band.low => Verdict::Low,
            Some(band) if amount > band.high => Verdict::High,
            Some(_) => Verdict::Usual,
        }
    }
}
