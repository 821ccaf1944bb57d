//! What a label claims of what is in the pack, and what of it is no longer true.
//!
//! A print keeps its claims as they were on the day (`prints.claims_id`, `use_by`, `net_mg`), each as a
//! fact and none as a sentence: another wording, language or law makes no label wrong. They are held
//! against the same facts as they are now. A code that carries an old kill date is no claim: codes stay,
//! whatever is corrected about a source.

mod origin;
mod says;
#[cfg(test)]
mod tests;
mod text;

pub use origin::OriginClaim;
pub use says::ClaimSays;

use crate::grams::Grams;
use crate::lot::PackId;
use crate::says::{Arg, Says};
use crate::words::{Allergen, LabelFact, Species};
use chrono::{DateTime, NaiveDate, Utc};
use std::collections::BTreeSet;

/// What one label says of its lot. What it does not say at all is `None`.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Claims {
    /// What hangs beside the pack's own label and claims nothing: a hold tag.
    pub beside: bool,
    /// Does it have a place for the last day?
    pub dated: bool,
    /// The product's name.
    pub name: Option<String>,
    /// The allergens.
    pub allergens: Option<BTreeSet<Allergen>>,
    /// What may be in it unasked.
    pub may_contain: Option<BTreeSet<Allergen>>,
    /// The ingredients in their order, each before its own parts.
    pub made_of: Option<Vec<MadeOf>>,
    /// The animals in it.
    pub species: Option<BTreeSet<Species>>,
    /// Where they come from.
    pub origin: Option<OriginClaim>,
}

/// A line of an ingredient list.
#[derive(Debug, Clone)]
pub struct MadeOf {
    /// 0 for an ingredient, 1 for a part of one …
    pub depth: u32,
    /// The product's code, or that of an additive.
    pub code: String,
    /// Its name when the label was made: for people; only depth and code are compared.
    pub name: String,
}

impl PartialEq for MadeOf {
    fn eq(&self, other: &MadeOf) -> bool {
        (self.depth, &self.code) == (other.depth, &other.code)
    }
}

impl Eq for MadeOf {}

impl Claims {
    /// What a label of the kitchen's own says of it: what is in a tub is told by name and allergens.
    pub fn of_kitchen(&self) -> Claims {
        Claims {
            may_contain: None,
            made_of: None,
            species: None,
            origin: None,
            ..self.clone()
        }
    }

    /// The same without where its animals come from, as a label has it that does not tell that.
    pub fn without_origin(&self) -> Claims {
        Claims {
            origin: None,
            ..self.clone()
        }
    }

    /// What the tag of a piece in its cure says: it has no date yet.
    pub fn of_tag(&self) -> Claims {
        Claims {
            dated: false,
            ..self.of_kitchen()
        }
    }

    /// What a tag beside the label says: nothing of all this.
    pub fn beside() -> Claims {
        Claims {
            beside: true,
            ..Claims::default()
        }
    }
}

/// A label as it came out, or perhaps did.
#[derive(Debug, Clone)]
pub struct PrintedLabel {
    /// The last day on it.
    pub use_by: Option<NaiveDate>,
    /// The net weight on it, where it tells a customer one.
    pub net: Option<Grams>,
    /// The rest.
    pub claims: Claims,
}

/// What is true of the pack now.
#[derive(Debug, Clone, Copy)]
pub struct TrueNow<'a> {
    /// Its last day.
    pub use_by: Option<NaiveDate>,
    /// What is left in it, while it is on hand: of what is gone, no weight is asked.
    pub left: Option<Grams>,
    /// The rest, where it is known.
    pub claims: Option<&'a Claims>,
}

/// One thing that a label says and that is not so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Untrue {
    /// What it is about.
    pub about: LabelFact,
    /// What the label says.
    pub printed: Says,
    /// What is true.
    pub now: Says,
}

impl Untrue {
    fn new(about: LabelFact, printed: impl Into<Says>, now: impl Into<Says>) -> Untrue {
        Untrue {
            about,
            printed: printed.into(),
            now: now.into(),
        }
    }

    /// In a sentence.
    pub fn says(&self) -> Says {
        ClaimSays::Differs {
            about: self.about.says(),
            printed: self.printed.clone(),
            now: self.now.clone(),
        }
        .into()
    }
}

/// A pack whose last label is no longer true, as it is marked with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WrongLabel {
    /// The pack.
    pub pack: PackId,
    /// From when on.
    pub since: DateTime<Utc>,
    /// What is not so.
    pub untrue: Vec<Untrue>,
}

/// What a label says that is not so, in the order of what may hurt somebody.
pub fn untrue(label: &PrintedLabel, now: TrueNow<'_>) -> Vec<Untrue> {
    let said = &label.claims;
    if said.beside {
        return Vec::new();
    }
    let mut found = Vec::new();
    if let Some(now) = now.claims {
        rest(said, now, &mut found);
    }
    if said.dated {
        found.extend(day(label.use_by, now.use_by));
    }
    if let (Some(net), Some(left)) = (label.net, now.left)
        // More in it than it says deceives nobody.
        && net > left
    {
        let weight = |grams| ClaimSays::Weight { grams };
        found.push(Untrue::new(LabelFact::Weight, weight(net), weight(left)));
    }
    found.sort_by_key(|untrue| untrue.about);
    found
}

/// A day that is earlier than the true one endangers nobody, and neither does a day on what is frozen,
/// whose clock stands still, or on what keeps without one: only a later day is wrong, and none at all
/// where there is one.
fn day(printed: Option<NaiveDate>, now: Option<NaiveDate>) -> Option<Untrue> {
    let now = now?;
    let says = match printed {
        Some(printed) if printed <= now => return None,
        Some(date) => ClaimSays::Day { date },
        None => ClaimSays::NoDay,
    };
    let now = ClaimSays::Day { date: now };
    Some(Untrue::new(LabelFact::Date, says, now))
}

fn rest(said: &Claims, now: &Claims, found: &mut Vec<Untrue>) {
    if let (Some(said), Some(now)) = (&said.allergens, &now.allergens)
        && said != now
    {
        let told = |of: &BTreeSet<Allergen>| words(of.iter().map(|word| Arg::from(*word)));
        found.push(Untrue::new(LabelFact::Allergen, told(said), told(now)));
    }
    if let (Some(said), Some(now)) = (&said.may_contain, &now.may_contain)
        && said != now
    {
        let told = |of: &BTreeSet<Allergen>| {
            let all: Vec<Arg> = of.iter().map(|word| Arg::from(*word)).collect();
            match all.is_empty() {
                true => ClaimSays::NothingMay,
                false => ClaimSays::MayBe {
                    names: Arg::All(all),
                },
            }
        };
        found.push(Untrue::new(LabelFact::Allergen, told(said), told(now)));
    }
    if let (Some(said), Some(now)) = (&said.species, &now.species)
        && said != now
    {
        let told = |of: &BTreeSet<Species>| words(of.iter().map(|word| Arg::from(*word)));
        found.push(Untrue::new(LabelFact::Species, told(said), told(now)));
    }
    if let (Some(said), Some(now)) = (&said.made_of, &now.made_of)
        && said != now
    {
        let told = |of: &[MadeOf]| words(of.iter().map(|line| Arg::from(line.name.clone())));
        found.push(Untrue::new(LabelFact::Ingredient, told(said), told(now)));
    }
    if let (Some(said), Some(now)) = (&said.origin, &now.origin)
        && let Some((said, now)) = said.untrue(now)
    {
        found.push(Untrue::new(LabelFact::Origin, said, now));
    }
    if let (Some(said), Some(now)) = (&said.name, &now.name)
        && said != now
    {
        let told = |name: &String| ClaimSays::Name { name: name.clone() };
        found.push(Untrue::new(LabelFact::Name, told(said), told(now)));
    }
}

fn words(all: impl Iterator<Item = Arg>) -> ClaimSays {
    let all: Vec<Arg> = all.collect();
    match all.is_empty() {
        true => ClaimSays::Nothing,
        false => ClaimSays::These {
            names: Arg::All(all),
        },
    }
}
