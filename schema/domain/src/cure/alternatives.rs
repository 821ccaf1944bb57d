//! Pumped bacon, where the law gives whole sets of figures to choose from (`us-N11`, `us-N12`).

use super::CureLimit;
use crate::rows::{Bound, RowId};

/// One set: nitrite, accelerator, and what else must be in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alternative {
    /// Its row.
    pub row: RowId,
    /// The nitrite: one exact figure, or from and to.
    pub nitrite: Vec<CureLimit>,
    /// The accelerator.
    pub ascorbate: CureLimit,
    /// Sugar, in per cent of the meat.
    pub sugar: Option<Bound>,
    /// Does it need a lactic starter?
    pub starter: bool,
}
