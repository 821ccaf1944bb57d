//! The highest limit that anybody has confirmed anywhere: above it nothing passes in a place that has no
//! confirmed limit of its own.

use super::says::LimitSays;
use super::{
    AtomicMasses, Basis, Class, Counts, CureLevel, CureLimit, Here, Ingoing, Method, Stage,
};
use crate::law::Laws;
use crate::rows::{Finding, Gravity, RowId, Sense};
use crate::words::Profile;
use chrono::NaiveDate;
use rust_decimal::Decimal;

/// The highest confirmed limit for a method and product.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ceiling {
    /// The level, as the sodium salt, ingoing.
    pub level: CureLevel,
    /// How far above it still counts as on it (ppm): the figure's own rounding.
    pub tolerance: Decimal,
    /// The place that has it.
    pub place: Profile,
    /// The row there.
    pub row: RowId,
}

/// The highest confirmed ingoing limit of any place for that method and product; of that method
/// alone where no place names the product. `basis` says nitrite or nitrate.
pub fn ceiling(
    laws: &Laws,
    basis: Basis,
    method: Method,
    class: Class,
    day: NaiveDate,
) -> Option<Ceiling> {
    highest(laws, basis, (method, Some(class)), day)
        .or_else(|| highest(laws, basis, (method, None), day))
}

/// Of all products where no class is said.
fn highest(
    laws: &Laws,
    basis: Basis,
    (method, class): (Method, Option<Class>),
    day: NaiveDate,
) -> Option<Ceiling> {
    let sodium = sodium(basis);
    let mut best: Option<Ceiling> = None;
    for (place, law) in &laws.places {
        let here = class.map(|class| Here::of(&law.cures, method, class, day, &law.rows));
        let is_for = |limit: &CureLimit| match &here {
            Some(here) => limit.is_for(method, here, day, &law.rows),
            None => limit.methods.is_empty() || limit.methods.contains(&method),
        };
        let sets = law.cures.pumped_bacon.iter().flat_map(|set| &set.nitrite);
        for limit in law.cures.limits.iter().chain(sets) {
            let Counts::Salt(counted) = limit.counts else {
                continue;
            };
            let row = law.rows.get(&limit.bound.row);
            if counted.is_nitrite() != basis.is_nitrite()
                || limit.stage != Stage::Ingoing
                || limit.bound.sense == Sense::AtLeast
                || limit.doubt
                || !row.is_some_and(|row| row.is_confirmed() && row.holds_on(day))
                || !is_for(limit)
            {
                continue;
            }
            let factor = law.cures.masses.factor(counted, sodium);
            let ppm = limit.bound.value * factor;
            if best.as_ref().is_none_or(|best| ppm > best.level.ppm) {
                best = Some(Ceiling {
                    level: CureLevel::ingoing(ppm, sodium),
                    tolerance: limit.tolerance * factor,
                    place: *place,
                    row: limit.bound.row.clone(),
                });
            }
        }
    }
    best
}

const fn sodium(basis: Basis) -> Basis {
    match basis.is_nitrite() {
        true => Basis::SodiumNitrite,
        false => Basis::SodiumNitrate,
    }
}

/// What goes in, against the ceiling: it guards where a place has no confirmed limit of its own, which
/// `stands` says of nitrite or nitrate.
pub(super) fn check(
    ingoing: &Ingoing,
    masses: &AtomicMasses,
    laws: &Laws,
    (method, class, day): (Method, Class, NaiveDate),
    stands: impl Fn(bool) -> bool,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for basis in [Basis::SodiumNitrite, Basis::SodiumNitrate] {
        if stands(basis.is_nitrite()) {
            continue;
        }
        let level = ingoing.level(basis, masses);
        let Some(most) = ceiling(laws, basis, method, class, day) else {
            continue;
        };
        if level.ppm > most.level.ppm + most.tolerance {
            let says = LimitSays::AnyPlace {
                ppm: level.ppm.round_dp(2),
                basis,
                most: most.level.ppm.round_dp(2),
                class,
                method,
            };
            findings.push(Finding::new(Gravity::Refuse, says, [most.row]));
        }
    }
    findings
}
