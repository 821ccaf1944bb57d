//! Work that an authority may want to approve first: what is missing on file.

use super::facts::Facts;
use super::trichinae;
use crate::error::Result;
use domain::condition::{ConditionSays, Stable};
use domain::dates::Because;
use domain::deed::output::Output;
use domain::duties::approvals::{Approval, Work, check_approvals};
use domain::lot::Lot;
use domain::product::Product;
use domain::says::Says;
use domain::words::{StableBy, StepKind};

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

/// The number of an approval for a purpose that names one product: `ready:duck-confit`.
pub fn of_product(facts: &Facts<'_, '_>, purpose: &str, product: &Product) -> Option<String> {
    let purpose = format!("{purpose}:{}", product.code);
    let number = facts.kitchen.approval(&purpose, facts.moment.day);
    number.map(str::to_owned)
}

/// Looks up by which approvals what a step makes is ready or stable, and what beside the first shows that no
/// trichinae are in it.
///
/// # Errors
/// The database is away.
pub fn of_outputs(facts: &mut Facts<'_, '_>, lots: &[Lot], outputs: &mut [Output]) -> Result<()> {
    for output in outputs {
        output.approved_ready = of_product(facts, "ready", &output.product);
        output.approved_stable = stable(facts, &output.product);
        if output.approved_ready.is_some() {
            output.freed = trichinae::freed(facts, lots)?;
        }
    }
    Ok(())
}

/// An approval by which a product needs no time and temperature control: `stable:soy-glaze`.
pub fn stable(facts: &Facts<'_, '_>, product: &Product) -> Option<Stable> {
    let number = of_product(facts, "stable", product)?;
    let says = ConditionSays::Approved { number };
    Some(Stable {
        by: StableBy::Approved,
        because: Because::house(says, ConditionSays::ApprovalRule),
    })
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
