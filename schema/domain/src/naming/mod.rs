//! What a food may be called: the words of its name and the standard that the name stands for, against
//! what the lists and the record know of it.
//!
//! Asked when a product is listed ([`NameFacts::listed`]) and when a label for a customer is made
//! ([`NameFacts::of_lot`]), by one function ([`check`]). What is wrong whatever nobody knows stands; what
//! is wrong only if what nobody knows is so warns.

mod absence;
mod added;
mod cured;
mod facts;
mod identity;
mod names;
mod nitrite;
mod says;
mod standards;
mod sum;
mod telling;
#[cfg(test)]
mod tests;
mod told;

pub use facts::NameFacts;
pub(crate) use facts::fresh;
pub use nitrite::named as named_nitrite;
pub use says::NamingSays;
pub use standards::{composition, mince_kind};
pub use told::StandardTold;

use crate::law::Law;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity};

/// What stands against a food's name under the law of a place, the gravest first.
///
/// # Errors
/// A figure of its standard that cannot be.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let dry = standards::dry_cured(facts, law)?;
    // Whether the standard is met is not known where anything of it is not.
    let meets = match &dry {
        None => Some(false),
        Some(found) if found.iter().any(Finding::refuses) => Some(false),
        Some(found) if found.is_empty() && facts.weights.is_some() => Some(true),
        Some(_) => None,
    };
    let mut found = names::check_words(facts, meets, law);
    found.extend(dry.into_iter().flatten());
    found.extend(standards::check_standard(facts, law)?);
    found.extend(absence::check(facts, law));
    found.extend(telling::check(facts, law));
    found.extend(cured::check(facts, law));
    found.extend(unlisted(facts, law));
    found.retain(|finding| finding.gravity > Gravity::Note);
    found.sort_by_key(|finding| std::cmp::Reverse(finding.gravity));
    Ok(found)
}

/// What is made of several things of which nobody has told, where the place wants them listed.
pub fn unlisted(facts: &NameFacts<'_>, law: &Law) -> Vec<Finding> {
    let Some(list) = &law.statements.list else {
        return Vec::new();
    };
    let says = |name: &String| NamingSays::Unlisted { name: name.clone() };
    let all = facts.untold(law).map(says);
    all.map(|says| Finding::against(&law.rows, &list.compounds, says))
        .collect()
}
