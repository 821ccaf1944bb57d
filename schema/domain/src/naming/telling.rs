//! A name that tells an allergen, against the allergens that are told of the food: `milk powder` for which nobody
//! ticked milk.

use super::{NameFacts, NamingSays};
use crate::law::Law;
use crate::rows::{Finding, Gravity};
use crate::says::Arg;
use crate::statement::untold_by;

/// What the names tell, and the lists or the record do not. A name may be a fancy one, so it is only said.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Option<Finding> {
    let rules = &law.statements;
    let named = untold_by(rules, facts.product, &facts.allergens);
    let all: Vec<Arg> = named.inside.iter().copied().map(Arg::from).collect();
    let says = NamingSays::TellsAllergen {
        what: Arg::All(all),
    };
    let rows = named.rows(rules);
    (!named.inside.is_empty()).then(|| Finding::new(Gravity::Warn, says, rows))
}
