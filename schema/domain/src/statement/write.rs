//! The whole statement of a food in each language: list, allergens, animals, and what was found.

use super::allergens::{Declared, declared};
use super::says::StatementSays;
use super::{
    Food, Runs, StatementRules, StatementStyle, contains, ingredients, may_contain, species,
};
use crate::ingredients::{Ingredient, Nature, flat};
use crate::rows::{Finding, Rows};
use crate::says::Arg;
use crate::words::Allergen;
use std::collections::{BTreeMap, BTreeSet};

/// The statement in one language.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct WrittenStatement {
    /// The ingredient list with its title; empty for a food of one thing.
    pub list: Runs,
    /// The allergen statement with its title; empty where the list shows the allergens, or there are none.
    pub contains: Runs,
    /// What may be in it unasked; empty if nothing.
    pub may_contain: Runs,
    /// Animals that the name does not tell: `contains pork`.
    pub species: Option<String>,
}

/// The statement of a food.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Statement {
    /// By language.
    pub languages: BTreeMap<String, WrittenStatement>,
    /// The allergens that the place wants named.
    pub allergens: BTreeSet<Allergen>,
    /// What is to be known or mended. One that refuses stops the label.
    pub findings: Vec<Finding>,
}

/// Writes the statement of a food under the law of a place.
///
/// Every language names the same allergens; every allergen that went in and that the place knows is
/// named in the list (where it emphasises) or in the allergen statement.
pub fn write(
    rules: &StatementRules,
    rows: &Rows,
    food: &Food,
    languages: &[&str],
    style: StatementStyle,
) -> Statement {
    let Declared {
        allergens,
        mut findings,
    } = declared(rules, rows, food);
    let may_merge = rules.list.as_ref().is_some_and(|law| law.may_merge);
    let marked = super::share::marked(rules, food);
    let merged = (style.merged && may_merge).then(|| flat(marked.clone()));
    let parts = merged.as_deref().unwrap_or(&marked);
    check_parts(rules, rows, &food.parts, &mut findings);
    check_declared(rules, rows, &food.parts, languages, &mut findings);
    findings.extend(super::water::check(rules, rows, food));
    let single = match parts {
        [] => true,
        [one] => one.parts.is_empty() && !one.as_declared,
        _ => false,
    };
    let in_list = match single || rules.allergens.emphasised.is_none() {
        true => BTreeSet::new(),
        false => shown(rules, parts),
    };
    let homeless: BTreeSet<Allergen> = &allergens - &in_list;
    if !single && rules.allergens.emphasised.is_some() && !homeless.is_empty() {
        let allergens = homeless.iter().copied().map(Arg::from).collect();
        let says = StatementSays::NoBringer {
            allergens: Arg::All(allergens),
        };
        findings.push(Finding::new(
            crate::rows::Gravity::Warn,
            says,
            rules.allergens.emphasised.clone(),
        ));
    }
    let beside = rules.contains.as_ref().is_some_and(|law| law.beside_list);
    let stated = if beside || single {
        &allergens
    } else {
        &homeless
    };
    let may: BTreeSet<Allergen> = &food.may_contain - &allergens;
    let mut written = BTreeMap::new();
    for language in languages {
        let list = match single {
            true => Runs::default(),
            false => ingredients(rules, (parts, food.finished), &allergens, language, style),
        };
        let one = WrittenStatement {
            list,
            contains: contains(rules, stated, language),
            may_contain: may_contain(rules, &may, language),
            species: species::note(rules, food, language),
        };
        written.insert((*language).to_owned(), one);
    }
    Statement {
        languages: written,
        allergens,
        findings,
    }
}

/// The allergens that the list shows: those of what is not left out.
fn shown(rules: &StatementRules, parts: &[Ingredient]) -> BTreeSet<Allergen> {
    let omits = |part: &&Ingredient| rules.list.as_ref().is_some_and(|law| law.omits(part));
    let mut all = BTreeSet::new();
    for part in parts.iter().filter(|part| !omits(part)) {
        all.extend(&part.allergens);
        all.append(&mut shown(rules, &part.parts));
    }
    all
}

/// A list that a pack declares, in a language that it does not have: refused where the place wants that language.
fn check_declared(
    rules: &StatementRules,
    rows: &Rows,
    parts: &[Ingredient],
    languages: &[&str],
    findings: &mut Vec<Finding>,
) {
    for part in parts {
        let lacks = |language: &&&str| !part.names.contains_key(**language);
        for language in languages.iter().filter(lacks).filter(|_| part.as_declared) {
            let says = StatementSays::DeclaredElsewhere {
                language: (*language).to_owned(),
                text: part.name(language),
            };
            let row = rules.languages.as_ref().map(|(row, _)| row);
            let found = match row.filter(|_| rules.wants_language(language)) {
                Some(row) => Finding::against(rows, row, says),
                None => Finding::new(crate::rows::Gravity::Warn, says, None),
            };
            if !findings.contains(&found) {
                findings.push(found);
            }
        }
        check_declared(rules, rows, &part.parts, languages, findings);
    }
}

/// A cure without its parts, and a spice that does not count as one here.
fn check_parts(
    rules: &StatementRules,
    rows: &Rows,
    parts: &[Ingredient],
    findings: &mut Vec<Finding>,
) {
    let Some(law) = &rules.list else {
        return;
    };
    for part in parts {
        if let Some(row) = &law.cure_parts
            && part.nature == Nature::Cure
            && part.parts.is_empty()
        {
            let name = part.named();
            let says = StatementSays::CureUnlisted { name };
            findings.push(Finding::against(rows, row, says));
        }
        if let Some((row, words)) = &law.not_spice
            && part.nature == Nature::Spice
            && part.parts.is_empty()
            && !super::matching::find(&part.name("en"), words, &[]).is_empty()
        {
            let name = part.named();
            let says = StatementSays::NoSpice { name };
            findings.push(Finding::against(rows, row, says));
        }
        check_parts(rules, rows, &part.parts, findings);
    }
}
