//! The place's rules of stability, as data.

use super::grid::StabilityGrid;
use super::protein::MoistureRule;
use super::way::Way;
use crate::rows::Bound;

/// The rules of a place.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct StabilityRules {
    /// For food that was heated and then packed.
    pub heated_and_packed: Option<StabilityGrid>,
    /// For all other food.
    pub otherwise: Option<StabilityGrid>,
    /// Does a reading that lies on an edge of those tables fall into the worse band?
    pub is_strict: bool,
    /// Kinds that are stable, any one of them.
    pub stable: Vec<Way>,
    /// What packing without air needs beside the cold, any one of them.
    pub barriers: Vec<Way>,
    /// Moisture to protein: names on labels, no proof of safety.
    pub moisture: Vec<MoistureRule>,
}

impl StabilityRules {
    /// Every single number that a house may tighten.
    pub fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        let mut bounds: Vec<&mut Bound> = Vec::new();
        for grid in [&mut self.heated_and_packed, &mut self.otherwise]
            .into_iter()
            .flatten()
        {
            bounds.extend(grid.edges_mut().map(|edge| &mut edge.bound));
        }
        for way in self.stable.iter_mut().chain(&mut self.barriers) {
            bounds.extend(way.limits.iter_mut().map(|(_, limit)| &mut limit.bound));
        }
        for rule in &mut self.moisture {
            bounds.push(&mut rule.at_most);
            bounds.extend(&mut rule.ph);
        }
        bounds
    }
}
