//! Holding hot and cold, receiving.

use super::rules::{Degrees, HeatRules};
use super::sane::plausible_store;
use super::says::HoldSays;
use super::words::Holding;
use crate::measure::Temperature;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity, Rows};

/// A temperature at which something is held.
#[derive(Debug, Clone, PartialEq)]
pub struct Hold {
    /// What is held.
    pub what: Holding,
    /// How warm or cold it must be.
    pub degrees: Degrees,
}

/// Is it held as it must be? Nothing comes back when it is.
///
/// # Errors
/// A temperature that cannot be.
pub fn held(
    what: Holding,
    at: Temperature,
    rules: &HeatRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    plausible_store("temperature", at)?;
    let mut of_this = rules
        .holding
        .iter()
        .filter(|hold| hold.what == what)
        .peekable();
    if of_this.peek().is_none() {
        let says = HoldSays::NoTemperature { what };
        return Ok(vec![Finding::new(Gravity::Warn, says, [])]);
    }
    Ok(of_this
        .filter(|hold| !hold.degrees.allows(at))
        .map(|hold| {
            let limit = hold.degrees.says();
            let says = HoldSays::Outside { at, limit };
            Finding::against(rows, hold.degrees.row(), says)
        })
        .collect())
}
