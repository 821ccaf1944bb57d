//! One step up, one step down: must the next holder be written down?

use crate::measure::Percent;
use crate::refusal::Result;
use crate::rows::{Bound, RowId};

/// The rule, by its parts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OneUpReach {
    /// Sales for immediate eating, in percent of all: more puts a mixed shop outside.
    pub immediate: Bound,
    /// Full-time staff up to which a shop is outside.
    pub staff: Bound,
    /// No next step for consumers.
    pub consumers: RowId,
    /// Food under meat inspection only.
    pub inspected: RowId,
    /// What is written down of a business.
    pub forward: RowId,
}

/// One sale.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SaleRecord {
    /// Is the house a restaurant and nothing else?
    pub restaurant: bool,
    /// Sales for immediate eating, of all.
    pub immediate: Percent,
    /// Full-time staff.
    pub staff: u32,
    /// To a consumer?
    pub to_consumer: bool,
    /// Under meat or poultry inspection only?
    pub inspected: bool,
}

impl OneUpReach {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        vec![&mut self.staff]
    }
}

/// Must the next holder be written down, and by which row (`us-O1` to `us-O5`)? Access to what is
/// written is owed in any case.
///
/// # Errors
/// A percentage that cannot be.
pub fn next_step(reach: &OneUpReach, sale: &SaleRecord) -> Result<(bool, RowId)> {
    let immediate = super::percent("immediate", sale.immediate)?;
    let (needed, row) = if sale.restaurant || !reach.immediate.allows(immediate) {
        (false, &reach.immediate.row)
    } else if sale.inspected {
        (false, &reach.inspected)
    } else if sale.to_consumer {
        (false, &reach.consumers)
    } else if reach.staff.allows(sale.staff.into()) {
        (false, &reach.staff.row)
    } else {
        (true, &reach.forward)
    };
    Ok((needed, row.clone()))
}
