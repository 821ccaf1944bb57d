//! What a label says of a lot under the law of a place: its ingredients, its allergens, the animals in
//! it.

use super::{Family, Lists, Relative, food};
use crate::ingredients::{self, Ingredient};
use crate::law::Law;
use crate::rows::{Finding, RowId};
use crate::statement::{Runs, Sale, StatementStyle, WrittenStatement, write};
use crate::words::Allergen;
use std::collections::{BTreeMap, BTreeSet};

/// The statement of a lot, by language.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Stated {
    /// The ingredient list without its title; the name of a thing that is one.
    pub ingredients: BTreeMap<String, String>,
    /// The title of the list, by language.
    pub titles: BTreeMap<String, String>,
    /// The allergen statement with its title; empty where the list shows the allergens, or there are none.
    pub contains: BTreeMap<String, String>,
    /// What may be in it unasked, with its title; empty if nothing.
    pub may_contain: BTreeMap<String, String>,
    /// Animals that the name does not tell: `contains pork`.
    pub species: BTreeMap<String, String>,
    /// The allergens that the place wants named.
    pub allergens: BTreeSet<Allergen>,
    /// The row by which the pack must carry its ingredient list, where it must.
    pub list_due: Option<RowId>,
    /// The first thing in it that has no name in a language, with the name that stands there instead.
    pub unnamed: BTreeMap<String, String>,
    /// Is it a food of one thing, which has no list?
    pub is_single: bool,
    /// What is to be known or mended.
    pub findings: Vec<Finding>,
}

/// The statement of a lot in some languages, the kitchen's own first.
pub fn stated(
    family: &Family,
    of: &Relative,
    lists: &Lists,
    law: &Law,
    languages: &[&str],
) -> Stated {
    let own = languages.first().copied().unwrap_or("en");
    let food = food(family, of, lists, &law.cures, own);
    let statement = write(
        &law.statements,
        &law.rows,
        &food,
        languages,
        StatementStyle::default(),
    );
    let mut stated = Stated::default();
    for (language, written) in statement.languages {
        let WrittenStatement {
            list,
            contains,
            species,
            may_contain,
        } = written;
        let rules = law.statements.list.as_ref();
        let title = rules.map(|list| list.title.in_language(&language));
        // Capitals stand for what the place wants emphasised; what is only bold stays as it is.
        let plain = |runs: &Runs| match law.statements.allergens.emphasised.is_some() {
            true => runs.in_capitals(),
            false => runs.text(),
        };
        let text = plain(&list);
        let bare = title.and_then(|title| strip(&text, title)).unwrap_or(&text);
        stated.is_single = bare.is_empty();
        let told = match bare.is_empty() {
            true => ingredients::list(&food.parts, &language),
            false => bare.trim_end_matches('.').to_owned(),
        };
        stated.ingredients.insert(language.clone(), told);
        stated
            .titles
            .extend(title.map(|title| (language.clone(), title.to_owned())));
        if !contains.is_empty() {
            stated.contains.insert(language.clone(), plain(&contains));
        }
        if !may_contain.is_empty() {
            stated
                .may_contain
                .insert(language.clone(), plain(&may_contain));
        }
        stated
            .species
            .extend(species.map(|species| (language, species)));
    }
    for language in languages {
        let unnamed = unnamed(&food.parts, language);
        stated
            .unnamed
            .extend(unnamed.map(|name| ((*language).to_owned(), name)));
    }
    stated.allergens = statement.allergens;
    let due = law.statements.due(Sale::PackedHere);
    stated.list_due = due
        .filter(|due| due.asks_list_of(&food))
        .map(|due| due.row.clone());
    stated.findings = statement.findings;
    stated
}

/// The first of the parts, at any depth, that has no name in a language. What a pack declares is told of by the
/// statement itself.
fn unnamed(parts: &[Ingredient], language: &str) -> Option<String> {
    parts.iter().find_map(|part| {
        let lacks = !part.as_declared && !part.names.contains_key(language);
        let own = lacks.then(|| part.name(language));
        own.or_else(|| unnamed(&part.parts, language))
    })
}

/// The text after a title, which may be emphasised and so stand in capitals.
fn strip<'a>(text: &'a str, title: &str) -> Option<&'a str> {
    let front = text.get(..title.len())?;
    (front.to_lowercase() == title.to_lowercase()).then(|| text[title.len()..].trim())
}
