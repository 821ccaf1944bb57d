//! How far the disposal of what a recall found has come.

use super::facts::IncidentFacts;
use super::says::ReportSays;
use domain::grams::Grams;

impl IncidentFacts {
    /// What was disposed of, as long as something is left: the last of it is then still to come.
    pub fn disposed_so_far(&self) -> Option<ReportSays> {
        let sums = &self.sums;
        (sums.left_grams.0 > Grams::ZERO).then(|| ReportSays::DisposedSoFar {
            weight: sums.destroyed_grams.0 + sums.returned_grams.0,
        })
    }
}
