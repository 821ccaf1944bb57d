//! Moisture to protein: what a name on a label asks for. It is no proof of safety (`us-S4`).

use super::rules::StabilityRules;
use super::says::MoistureSays;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::says::Arg;
use rust_decimal::Decimal;

/// What one name asks for, in one text.
#[derive(Debug, Clone, PartialEq)]
pub struct MoistureRule {
    /// The name: `jerky`.
    pub name: String,
    /// Moisture to one part of protein, at most.
    pub at_most: Bound,
    /// pH, at most, where it is asked for too.
    pub ph: Option<Bound>,
    /// The row that says that it is no proof of safety.
    pub no_proof: Option<RowId>,
}

/// Is it dry enough for its name? Where texts disagree, each is checked.
///
/// # Errors
/// A ratio or pH that cannot be; a name that no text of this place has.
pub fn moisture_to_protein(
    name: &str,
    ratio: Decimal,
    ph: Option<Decimal>,
    rules: &StabilityRules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    if ratio <= Decimal::ZERO || ratio > Decimal::from(20) {
        let detail = MoistureSays::RatioCannotBe { ratio };
        return Err(Refusal::cannot_be("ratio", detail));
    }
    super::StabilityReadings {
        ph,
        ..super::StabilityReadings::default()
    }
    .plausible()?;
    let of_name: Vec<&MoistureRule> = rules
        .moisture
        .iter()
        .filter(|rule| rule.name == name)
        .collect();
    if of_name.is_empty() {
        let mut known: Vec<&str> = rules.moisture.iter().map(|rule| &*rule.name).collect();
        known.dedup();
        let detail = MoistureSays::NoName {
            name: name.to_owned(),
            known: Arg::All(known.into_iter().map(Arg::from).collect()),
        };
        return Err(Refusal::cannot_be("name", detail));
    }
    let mut findings = Vec::new();
    for rule in of_name {
        let name = rule.name.clone();
        if !rule.at_most.allows(ratio) {
            let most = rule.at_most.value;
            let name = name.clone();
            let says = MoistureSays::TooMoist { ratio, name, most };
            findings.push(Finding::against(rows, &rule.at_most.row, says));
        }
        if let Some(limit) = &rule.ph
            && !ph.is_some_and(|ph| limit.allows(ph))
        {
            let most = limit.value;
            let says = match ph {
                Some(ph) => MoistureSays::PhHigh { ph, name, most },
                None => MoistureSays::PhMissing { name, most },
            };
            findings.push(Finding::against(rows, &limit.row, says));
        }
        if findings.is_empty()
            && let Some(row) = &rule.no_proof
        {
            findings.push(Finding::note(MoistureSays::NoProof, [row.clone()]));
        }
    }
    Ok(findings)
}
