//! Shelf stability: does a food need time and temperature control to be safe?
//!
//! By the tables of pH and water activity, by a list of which any one will do, by the barriers that a
//! vacuum pack needs.

mod grid;
mod limit;
mod need;
mod protein;
mod readings;
mod rules;
mod says;
mod way;

pub use grid::{StabilityCell, StabilityGrid};
pub use limit::{LimitSays, StabilityLimit};
pub use need::{Stability, Stable, needs_control};
pub use protein::{MoistureRule, moisture_to_protein};
pub use readings::{Fact, Measure, StabilityReadings, Treated};
pub use rules::StabilityRules;
pub use says::{MoistureSays, ReadingSays, StabilitySays, WaySays};
pub use way::{Way, barriers};
