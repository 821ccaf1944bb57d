//! Windows of contact: what is done at a bench or a machine between two clean-downs.
//!
//! Two doings touch unless a clean-down parts them: the end of the earlier <= the clean-down < the beginning of
//! the later. So a doing stands in each window from that of its beginning to that of its end.

use super::world::Doing;
use crate::lot::PlaceId;
use chrono::{DateTime, Utc};
use std::collections::HashMap;
use std::ops::RangeInclusive;

/// The time at a place after its nth clean-down; the first is before any.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Window {
    /// The place.
    pub place: PlaceId,
    /// How many clean-downs came before.
    pub nth: usize,
}

/// The clean-downs of the places that spread.
pub type CleanDowns = HashMap<PlaceId, Vec<DateTime<Utc>>>;

impl Window {
    /// From when on (left out = the beginning), until when (left out = no clean-down yet).
    pub fn bounds(self, cleaned: &CleanDowns) -> (Option<DateTime<Utc>>, Option<DateTime<Utc>>) {
        let of = cleaned.get(&self.place).map_or(&[][..], Vec::as_slice);
        let from = self.nth.checked_sub(1).and_then(|before| of.get(before));
        (from.copied(), of.get(self.nth).copied())
    }
}

/// The windows of a place in which a doing stands; none where the place does not spread.
pub fn windows_of(
    doing: &Doing,
    place: PlaceId,
    cleaned: &CleanDowns,
) -> Option<RangeInclusive<usize>> {
    let of = cleaned.get(&place)?;
    let before = |moment: DateTime<Utc>| of.partition_point(|clean_down| *clean_down < moment);
    Some(before(doing.began())..=before(doing.at))
}

/// Does a doing stand in what is left of a window after it was cut? The end of the cut is out.
pub(super) fn is_in_cut(
    doing: &Doing,
    window: Window,
    cleaned: &CleanDowns,
    cut: (Option<DateTime<Utc>>, Option<DateTime<Utc>>),
) -> bool {
    let (from, until) = window.bounds(cleaned);
    let first = cut.0.map_or(doing.began(), |cut| cut.max(doing.began()));
    let last = until.map_or(doing.at, |until| until.min(doing.at));
    let after_cleaning = from.is_none_or(|from| from < last);
    let before_end = cut.1.is_none_or(|end| first < end);
    let opens_in_time = cut.1.zip(from).is_none_or(|(end, from)| from < end);
    first <= last && after_cleaning && before_end && opens_in_time
}
