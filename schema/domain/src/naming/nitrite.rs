//! A name that says that no nitrite was used, or that is for what has none, against all that is in the food: what
//! the kitchen put in, and what the packs of its bought parts declare.

use super::{NameFacts, NamingSays};
use crate::cure::{ClaimFacts, Class, uncured};
use crate::duties::names::{says, words_of};
use crate::law::Law;
use crate::product::Uncured;
use crate::refusal::Result;
use crate::rows::{Finding, Gravity};
use crate::says::Arg;

/// What says in a name that no nitrite was used. Common practice, no source.
const NOT_USED: [&str; 22] = [
    "uncured",
    "no added nitrite",
    "no added nitrites",
    "no added nitrate",
    "no added nitrates",
    "no nitrite added",
    "no nitrites added",
    "no nitrate added",
    "no nitrates added",
    "no nitrate or nitrite",
    "no nitrates or nitrites",
    "no nitrite or nitrate",
    "no nitrites or nitrates",
    "sans ajout de nitrite",
    "sans ajout de nitrites",
    "sans nitrite ajouté",
    "sans nitrites ajoutés",
    "sans nitrate ajouté",
    "sans nitrates ajoutés",
    "non salé au nitrite",
    "non nitrité",
    "non nitritée",
];

/// What says that there is none in it, from whatever source. Common practice, no source.
const NONE_IN_IT: [&str; 20] = [
    "nitrite free",
    "nitrites free",
    "nitrate free",
    "nitrates free",
    "free from nitrite",
    "free from nitrites",
    "free of nitrite",
    "free of nitrites",
    "no nitrite",
    "no nitrites",
    "no nitrate",
    "no nitrates",
    "without nitrite",
    "without nitrites",
    "without nitrate",
    "without nitrates",
    "sans nitrite",
    "sans nitrites",
    "sans nitrate",
    "zéro nitrite",
];

/// The nitrite that the words of what went in tell.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct NamedNitrite {
    /// The first that is nitrite or nitrate itself, or a salt that cures.
    pub added: Option<String>,
    /// The first that brings it by nature: celery powder.
    pub natural: Option<String>,
}

impl NamedNitrite {
    /// Is there any in it?
    pub fn is_any(&self) -> bool {
        self.added.is_some() || self.natural.is_some()
    }
}

/// The nitrite that is told by the names of what went in, and by the lists on the packs of what was bought.
pub fn named(facts: &NameFacts<'_>, law: &Law) -> NamedNitrite {
    let words = &law.words;
    let mut found = NamedNitrite::default();
    for (language, text) in &facts.texts {
        if found.added.is_none() {
            found.added = words.nitrite.first_in(text, language);
        }
        if found.natural.is_none() {
            found.natural = words.natural_nitrite.first_in(text, language);
        }
    }
    found
}

/// What the names claim: the words that say so, and whether they say that there is none in it at all.
fn claimed(facts: &NameFacts<'_>) -> Option<(&'static str, bool)> {
    let names = facts.product.label_names().values();
    let said = names.filter_map(|name| {
        let words = words_of(name);
        let of = |all: &'static [&'static str]| all.iter().find(|claim| says(&words, claim));
        // `No nitrite added` is no word on what is in it.
        let not_used = of(&NOT_USED).map(|claim| (*claim, false));
        not_used.or_else(|| of(&NONE_IN_IT).map(|claim| (*claim, true)))
    });
    said.max_by_key(|(_, is_none)| *is_none)
}

/// What stands against a claim that no nitrite was used, or that none is in it.
///
/// # Errors
/// A figure that cannot be.
pub fn check(facts: &NameFacts<'_>, law: &Law) -> Result<Vec<Finding>> {
    let (told, said) = (&facts.product.cured.uncured, claimed(facts));
    let named = named(facts, law);
    if told.is_none() && said.is_none() {
        return Ok(unsaid(facts, &named, law)?.into_iter().collect());
    }
    let asked = asked(facts, told.as_ref(), &named);
    let natural = asked.natural.clone();
    let mut found = uncured(&asked, law)?.findings;
    found.retain(Finding::refuses);
    if let (Some(bought), true) = (named.added, facts.nitrite != Some(true)) {
        // Which of them it is, the finding of the claim does not tell.
        for finding in &mut found {
            finding.says = NamingSays::NitriteDeclared {
                what: bought.clone(),
            }
            .into();
            // Where the place has no words of its own for the claim, what is not so deceives.
            if finding.rows.is_empty() {
                finding.rows.extend(law.statements.absence.row.clone());
            }
        }
    }
    if let (Some((words, true)), Some(source), true) = (said, natural, found.is_empty()) {
        let says = NamingSays::NitriteByNature {
            words: words.to_owned(),
            source,
        };
        let row = law.statements.absence.row.as_ref();
        found.extend(row.map(|row| Finding::against(&law.rows, row, says)));
    }
    // The word alone calls for the words beside it, which stand only where the list says how it is made.
    if let (None, Some((words, _)), true) = (told, said, found.is_empty())
        && let Some(due) = law.cures.claim.words.first()
    {
        let says = NamingSays::NoNitriteClaim {
            words: words.to_owned(),
        };
        found.push(Finding::new(Gravity::Warn, says, [due.row.clone()]));
    }
    Ok(found)
}

/// What is usually cured with nitrite, and made without, says so (`us-U1`): of bacon that is known; of a ham that
/// ages in salt alone it is not (`us-U8`).
fn unsaid(facts: &NameFacts<'_>, named: &NamedNitrite, law: &Law) -> Result<Option<Finding>> {
    let product = facts.product;
    let Some(cure) = product.cured.cure else {
        return Ok(None);
    };
    let without = match facts.nitrite {
        Some(went_in) => !went_in,
        None => cure.nitrite == Some(false),
    };
    let is_bacon = cure.class.kind(cure.method) == Class::Bacon;
    if !without || !is_bacon || named.added.is_some() {
        return Ok(None);
    }
    let told = &product.standard;
    let asked = ClaimFacts {
        salt_and_water: told
            .salt
            .zip(told.water)
            .map(|(salt, water)| (salt.number(), water.number())),
        ..asked(facts, None, named)
    };
    let due = uncured(&asked, law)?.words;
    let words = due.iter().map(|due| Arg::from(due.mandated.clone()));
    let says = NamingSays::SayUncured {
        words: Arg::All(words.collect()),
    };
    let named = product.label_names().values();
    let named = { named }.any(|name| words_of(name).iter().any(|word| word == "bacon"));
    let finding = due
        .first()
        .map(|due| Finding::against(&law.rows, &due.row, says));
    // Salt pork is usually made without: where the name does not say bacon, it may be that.
    Ok(finding.map(|finding| match named {
        true => finding,
        false => finding.warned(),
    }))
}

/// What is known of it, for a claim that nothing was used.
fn asked(facts: &NameFacts<'_>, told: Option<&Uncured>, named: &NamedNitrite) -> ClaimFacts {
    let natural = told.and_then(|told| told.natural.clone());
    ClaimFacts {
        normally_cured: true,
        resembles: told.is_none_or(|told| told.resembles),
        nitrite_used: facts.nitrite == Some(true) || named.added.is_some(),
        natural: natural.or_else(|| named.natural.clone()),
        aw: facts.water_activity,
        ..ClaimFacts::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ask::{AskRules, NamedBy};
    use crate::family::Lists;
    use crate::product::Product;
    use crate::rows::RowId;
    use crate::words::{ProductKind, Species};
    use std::collections::BTreeMap;
    use std::sync::Arc;

    fn law() -> Law {
        let words = |en: &[&str], but_not: &[&str]| NamedBy {
            row: None,
            words: BTreeMap::from([("en".to_owned(), en.iter().map(|of| (*of).into()).collect())]),
            but_not: BTreeMap::from([(
                "en".to_owned(),
                but_not.iter().map(|of| (*of).into()).collect(),
            )]),
        };
        let mut law = Law {
            words: AskRules {
                nitrite: words(&["sodium nitrite", "e 250"], &[]),
                natural_nitrite: words(&["celery powder"], &[]),
                ..AskRules::default()
            },
            ..Law::default()
        };
        law.statements.absence.row = Some(RowId::new("us-L2"));
        law
    }

    #[track_caller]
    fn check_name(name: &str, declared: &str, expected: &[&str]) {
        let product = Product {
            names: Arc::new(BTreeMap::from([("en".into(), name.into())])),
            kind: ProductKind::Mixed,
            species: Some(Species::Pig),
            ..Product::unnamed()
        };
        let mut facts = NameFacts::listed(&product, &Lists::default());
        facts.texts = [("en".to_owned(), declared.to_owned())].into();
        let found = check(&facts, &law()).unwrap();
        let found: Vec<&str> = found.iter().map(|of| of.says.key()).collect();
        assert_eq!(found, expected, "{name}: {declared}");
    }

    #[test]
    fn a_claim_is_read_against_all_that_the_packs_declare() {
        let declared = ["naming-nitrite-declared"];
        for name in [
            "Uncured pork mix",
            "Pork mix, no nitrite added",
            "Nitrite-free pork mix",
            "Pork mix without nitrites",
        ] {
            check_name(name, "pork, salt, sodium nitrite", &declared);
            check_name(name, "Pork, salt, E 250", &declared);
            check_name(name, "pork, salt", &[]);
        }
        check_name("Pork mix", "pork, salt, sodium nitrite", &[]);
        // Celery powder brings it: none may have been added, but there is some in it.
        let by_nature = ["naming-nitrite-by-nature"];
        check_name("Nitrite-free bacon", "celery powder", &by_nature);
        check_name("No nitrite bacon", "celery powder", &by_nature);
        check_name("Uncured bacon", "celery powder", &[]);
        check_name("Bacon, no nitrite added", "celery powder", &[]);
    }
}
