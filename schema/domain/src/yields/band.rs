//! What is usual, from this to that.

use crate::rows::RowId;
use rust_decimal::Decimal;

/// From a low end to a high end, both within it. The unit is that of the line that holds it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Band {
    /// Where it comes from.
    pub row: RowId,
    /// The low end.
    pub low: Decimal,
    /// The high end.
    pub high: Decimal,
}

impl Band {
    /// From `low` to `high`.
    pub fn new(row: &str, low: impl Into<Decimal>, high: impl Into<Decimal>) -> Band {
        Band {
            row: RowId::new(row),
            low: low.into(),
            high: high.into(),
        }
    }
}
