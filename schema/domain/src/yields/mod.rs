//! What comes off an animal and out of a pot, against what is usual.
//!
//! A yield belongs to an animal and a style of cutting together: a ham is a quarter of the carcass
//! with its skin, fat and bone, and a sixth of it when trimmed for sale (`trade-1.2`).

mod band;
mod cut_out;
mod knife;
mod line;
mod says;
mod step;

pub use band::Band;
pub use cut_out::{CutOut, CuttingStyle, PieceRule, cut_out};
pub use knife::{Drawing, Knife, KnifeCut, UsualCut};
pub use line::{Verdict, YieldShown};
pub use says::{CutOutSays, StepYieldSays};
pub use step::{Cooked, StepRule, YieldMeasure, of_step};

use crate::rows::Bound;

/// What is usual, as data.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct YieldRules {
    /// Styles of cutting.
    pub styles: Vec<CuttingStyle>,
    /// Cooking, smoking, rendering, stock.
    pub steps: Vec<StepRule>,
    /// How far a table's parts may sum beside its printed total, in percent of that total.
    pub sum_within: Option<Bound>,
    /// How far a column of percents may sum beside a hundred, in points.
    pub percents_within: Option<Bound>,
    /// How far a printed percent may lie beside the worked out one, in points.
    pub percent_within: Option<Bound>,
}

impl YieldRules {
    /// Every single number that a house may tighten. Bands are pairs: a house gives its own style.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        [
            &mut self.sum_within,
            &mut self.percents_within,
            &mut self.percent_within,
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
