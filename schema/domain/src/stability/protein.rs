//! Moisture to protein: what a name on a label asks for. It is no proof of safety (`us-S4`).

use super::rules::Rules;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Gravity, RowId, Rows};
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
    rules: &Rules,
    rows: &Rows,
) -> Result<Vec<Finding>> {
    if ratio <= Decimal::ZERO || ratio > Decimal::from(20) {
        let detail = format!("{ratio} parts of moisture to one of protein cannot be.");
        return Err(Refusal::cannot_be("ratio", detail));
    }
    super::Readings {
        ph,
        ..super::Readings::default()
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
        let detail = format!(
            "This place has no moisture to protein for {name:?}. Known here: {}.",
            known.join(", ")
        );
        return Err(Refusal::cannot_be("name", detail));
    }
    let mut findings = Vec::new();
    for rule in of_name {
        if !rule.at_most.allows(ratio) {
            let says = format!(
                "{ratio} parts of moisture to one of protein; {name} has {} at most.",
                rule.at_most.value
            );
            findings.push(Finding::against(rows, &rule.at_most.row, says));
        }
        if let Some(most) = &rule.ph
            && !ph.is_some_and(|ph| most.allows(ph))
        {
            let has = ph.map_or_else(|| "not measured".to_owned(), |ph| ph.to_string());
            let says = format!("pH {has}; {name} has {} at most.", most.value);
            findings.push(Finding::against(rows, &most.row, says));
        }
        if findings.is_empty()
            && let Some(row) = &rule.no_proof
        {
            let says = "Dry enough for the name. It is no proof of safety; water activity is.";
            findings.push(Finding::new(Gravity::Note, says, [row.clone()]));
        }
    }
    Ok(findings)
}
