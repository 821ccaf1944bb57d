//! Nitrate in meat that is now cooked: some places allow it only in what is never heated (`confirmed X-EU-3`).

use super::says::{AllowedSays, FoodSays, LimitSays};
use super::{Basis, Brought, Class, Counts, Here, Ingoing, Method, Stage, When};
use crate::law::Law;
use crate::rows::{Finding, Sense};
use chrono::NaiveDate;

/// What stands against cooking meat that was cured so, by what it brings.
pub fn check_cooked(
    brought: &Brought,
    (method, class): (Method, Class),
    day: NaiveDate,
    law: &Law,
) -> Vec<Finding> {
    let (rules, rows) = (&law.cures, &law.rows);
    let mut ingoing = Ingoing::default();
    ingoing.add(Basis::SodiumNitrate, brought.nitrate_ppm, &rules.masses);
    if !ingoing.has_nitrate() {
        return Vec::new();
    }
    let here = Here::of(rules, method, class, day, rows);
    let limits = rules.limits.iter().filter(|limit| {
        limit.when == When::Heated
            && limit.stage == Stage::Ingoing
            && limit.bound.sense != Sense::AtLeast
            && matches!(limit.counts, Counts::Salt(basis) if !basis.is_nitrite())
            && limit.is_for(method, &here, day, rows)
    });
    let found = limits.filter_map(|limit| {
        let measured = limit.measure(&ingoing, &rules.masses);
        if limit.allows(measured) {
            return None;
        }
        let food = FoodSays::Heated { class, method };
        let rule = match limit.bound.value.is_zero() {
            true => AllowedSays::None { food },
            false => AllowedSays::Most {
                ppm: limit.bound.value,
                food,
            },
        };
        let says = LimitSays::Broken {
            ppm: measured.round_dp(2),
            what: limit.said(),
            rule,
        };
        Some(Finding::against(rows, &limit.bound.row, says))
    });
    found.collect()
}
