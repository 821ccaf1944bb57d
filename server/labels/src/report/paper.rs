//! The sheets that a report is printed on.

use crate::length::Length;

/// A sheet of paper, lying.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 297 by 210 mm.
    A4,
    /// 11 by 8.5 inches.
    Letter,
}

impl Paper {
    pub(super) fn size(self) -> (Length, Length) {
        match self {
            Paper::A4 => (Length::mm(297.0), Length::mm(210.0)),
            Paper::Letter => (Length::mm(279.4), Length::mm(215.9)),
        }
    }
}
