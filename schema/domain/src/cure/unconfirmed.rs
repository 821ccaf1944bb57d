//! Limits that a place has and nobody has confirmed.

use super::{Counts, Cure, CureRules, Here, Ingoing};
use crate::rows::{Row, RowId, Rows, Sense};

/// The rows of the upper limits on nitrite and nitrate for this cure, where the place has none that is
/// confirmed: what is cured under them is not sold until a person confirms them. Nothing where one is
/// confirmed, and where the place has no limit at all: there is nothing to confirm.
pub fn unconfirmed(cure: &Cure, ingoing: &Ingoing, rules: &CureRules, rows: &Rows) -> Vec<RowId> {
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let mut found = Vec::new();
    let salts = [
        (ingoing.has_nitrite(), true),
        (ingoing.has_nitrate(), false),
    ];
    for (_, nitrite) in salts.into_iter().filter(|(is_in, _)| *is_in) {
        let limits = rules.limits.iter().filter(|limit| {
            matches!(limit.counts, Counts::Salt(basis) if basis.is_nitrite() == nitrite)
                && limit.bound.sense != Sense::AtLeast
                && limit.is_for(cure.method, &here, cure.day, rows)
        });
        let of: Vec<&Row> = limits
            .filter_map(|limit| rows.get(&limit.bound.row))
            .collect();
        if of.is_empty() {
            continue;
        }
        if !of.iter().any(|row| row.is_confirmed()) {
            found.extend(of.iter().map(|row| row.id.clone()));
        }
        let in_force = rules.in_force.iter().filter_map(|row| rows.get(row));
        found.extend(
            in_force
                .filter(|row| !row.is_confirmed())
                .map(|row| row.id.clone()),
        );
    }
    found.sort();
    found.dedup();
    found
}
