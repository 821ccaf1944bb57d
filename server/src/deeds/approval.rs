//! Work that an authority may want to approve first: what is missing on file.

use super::facts::Facts;
use domain::duties::approvals::{Approval, Work, check_approvals};
use domain::says::Says;
use domain::words::StepKind;

/// What is missing for a step, in words.
pub fn missing(facts: &Facts<'_, '_>, kind: StepKind) -> Vec<Says> {
    let work = match kind {
        StepKind::Cure => [Work::Cure],
        _ => return Vec::new(),
    };
    let law = facts.law();
    let on_file: Vec<Approval> = facts
        .kitchen
        .entry
        .approvals
        .iter()
        .filter_map(|approval| {
            Some(Approval {
                number: approval.number.0.clone(),
                work: work_of(&approval.purpose.0)?,
                until: approval.until.map(|until| until.0),
            })
        })
        .collect();
    let found = check_approvals(&law.duties, &law.rows, &work, &on_file, facts.moment.day);
    found.into_iter().map(|finding| finding.says).collect()
}

/// The kitchen writes `curing`, the rules know `cure`.
fn work_of(purpose: &str) -> Option<Work> {
    match purpose.to_lowercase().as_str() {
        "curing" => Some(Work::Cure),
        "smoking" => Some(Work::SmokeToKeep),
        "vacuum" => Some(Work::ReducedOxygen),
        other => Work::parse(other),
    }
}
