//! Food for which a place limits only what is left at the end, with more in it than may be left: nothing but a test
//! tells whether it keeps to that.

use super::check::is_upper;
use super::says::LimitSays;
use super::{Cure, CureRules, Here, Ingoing, Stage};
use crate::rows::{Finding, Rows};

/// The confirmed limits on what is left that are below what went in, where the place has none on what goes in.
pub fn untested(cure: &Cure, ingoing: &Ingoing, rules: &CureRules, rows: &Rows) -> Vec<Finding> {
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let limits = |stage: Stage, nitrite: bool| {
        let all = rules.limits.iter();
        all.filter(move |limit| {
            limit.stage == stage
                && is_upper(limit, nitrite)
                && limit.is_for(cure.method, &here, cure.day, rows)
        })
    };
    let mut found = Vec::new();
    for nitrite in [true, false] {
        if limits(Stage::Ingoing, nitrite).next().is_some() {
            continue;
        }
        for limit in limits(Stage::Residual, nitrite) {
            let row = rows.get(&limit.bound.row);
            let is_confirmed = row.is_some_and(|row| row.is_confirmed());
            if is_confirmed && !limit.allows(limit.measure(ingoing, &rules.masses)) {
                let says = LimitSays::FinishedMost {
                    most: limit.bound.value,
                    what: limit.said(),
                };
                found.push(Finding::note(says, [limit.bound.row.clone()]));
            }
        }
    }
    found
}
