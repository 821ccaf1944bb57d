//! Beef under a law that asks what its pieces share, and that its label tells where they come from.

use super::origin::is_fresh_meat;
use super::{GateSays, Raised};
use crate::duties::beef::{BeefPiece, Stage, check_beef};
use crate::law::Law;
use crate::naming::NameFacts;
use crate::rows::{Finding, Gravity};
use crate::words::{ProductKind, Species};
use chrono::NaiveDate;

/// What stands against these sources in one lot of fresh beef. What is not known is only warned of.
pub(super) fn check(
    facts: &NameFacts<'_>,
    sources: &[Option<Raised>],
    day: NaiveDate,
    law: &Law,
) -> Vec<Finding> {
    let beef = facts.species.contains(&Species::Cattle) && is_fresh_meat(facts);
    let Some(wording) = law.duties.origin.as_ref().filter(|_| beef) else {
        return Vec::new();
    };
    let stage = match facts.product.kind {
        ProductKind::Mixed => Stage::Mince,
        ProductKind::Trim => Stage::Trimmings,
        // What has a customer's label is a piece that a customer buys, not a part of a carcase.
        _ => Stage::CutMeat,
    };
    let cattle = sources.iter().flatten();
    let cattle: Vec<&Raised> = cattle.filter(|of| of.species == Species::Cattle).collect();
    let pieces: Vec<BeefPiece> = cattle
        .iter()
        .map(|of| BeefPiece {
            born: of.born.as_deref().unwrap_or(""),
            reared: of.reared.as_deref().unwrap_or(""),
            slaughtered: of.slaughtered.as_deref().unwrap_or(""),
            slaughterhouse: of.abattoir.as_deref().unwrap_or(""),
            cutting_plant: "",
            killed: of.killed,
            // A lot is of one deed, and so of one day.
            made_on: day,
        })
        .collect();
    let mut found = check_beef(&law.duties, &law.rows, stage, &pieces);
    found.retain(|finding| finding.gravity > Gravity::Note);
    let unknown = |finding: &Finding| finding.says.key().ends_with("beef-unknown");
    let lacks = found.iter().any(unknown) || cattle.is_empty();
    found.retain(|finding| !unknown(finding));
    if lacks {
        let row = wording.beef_row.clone();
        found.push(Finding::new(Gravity::Warn, GateSays::BeefUnknown, [row]));
    }
    found
}
