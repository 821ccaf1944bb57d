//! Words in a name that a food must earn: `fresh`, `ham`, `baked` (`us` 4.5).

use super::StatementRules;
use super::matching::find;
use crate::measure::Temperature;
use crate::rows::{Finding, RowId, Rows};
use crate::says::{Says, Texts};
use std::collections::BTreeSet;

/// What is true of a food, as far as its name goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Trait {
    /// Nitrite or nitrate went in.
    Nitrite,
    /// Salted so that it keeps.
    SaltedToKeep,
    /// It is the hind leg of a pig.
    HindLegOfPig,
    /// It was made in the country, or on a farm.
    MadeInCountry,
    /// A loaf rather than a cut.
    Loaf,
    /// Both bones of the shank were taken out whole.
    ShankRemoved,
}

impl Trait {
    /// Every one, with its spelling.
    pub const ALL: [(Trait, &'static str); 6] = [
        (Trait::Nitrite, "nitrite"),
        (Trait::SaltedToKeep, "salted-to-keep"),
        (Trait::HindLegOfPig, "hind-leg-of-pig"),
        (Trait::MadeInCountry, "made-in-country"),
        (Trait::Loaf, "loaf"),
        (Trait::ShankRemoved, "shank-removed"),
    ];

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<Trait> {
        let found = Trait::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(known, _)| *known)
    }
}

/// A word that a food must earn.
#[derive(Debug, Clone, PartialEq)]
pub struct NameWord {
    /// The word and its other forms.
    pub words: Vec<String>,
    /// Phrases in which it is free: `country style`.
    pub but_not: Vec<String>,
    /// Not with any of these.
    pub not_with: Vec<Trait>,
    /// Only with each of these.
    pub only_with: Vec<Trait>,
    /// Only if the inside came to this.
    pub reached: Option<Temperature>,
    /// Only for loaves, or only for what is no loaf; both if nothing is said.
    pub loaf: Option<bool>,
    /// What would do.
    pub says: Texts,
    /// Where it comes from.
    pub row: RowId,
}

/// Words in a name that the food has not earned.
pub fn check_name(
    rules: &StatementRules,
    rows: &Rows,
    name: &str,
    traits: &BTreeSet<Trait>,
    reached: Option<Temperature>,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for word in &rules.names {
        if find(name, &word.words, &word.but_not).is_empty()
            || word
                .loaf
                .is_some_and(|loaf| loaf != traits.contains(&Trait::Loaf))
        {
            continue;
        }
        let barred = word.not_with.iter().any(|bar| traits.contains(bar));
        let lacks = word.only_with.iter().any(|must| !traits.contains(must));
        let cold = word
            .reached
            .is_some_and(|least| reached.is_none_or(|reached| reached < least));
        if barred || lacks || cold {
            let says = Says::named(&word.says);
            findings.push(Finding::against(rows, &word.row, says));
        }
    }
    findings
}
