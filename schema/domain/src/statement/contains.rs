//! The allergen statement: `Contains: Wheat, Milk`, written and checked.

use super::allergens::printed;
use super::says::StatementSays;
use super::{Runs, StatementRules, Wording};
use crate::rows::{Finding, RowId, Rows};
use crate::words::Allergen;
use std::collections::BTreeSet;

/// How a place writes the statement.
#[derive(Debug, Clone, PartialEq)]
pub struct ContainsRules {
    /// The title by language: `Contains:`.
    pub title: Wording,
    /// Other titles that the law allows, beside the one that is printed.
    pub other_titles: Vec<String>,
    /// Is the title bold?
    pub bold_title: bool,
    /// Does every entry begin with a capital?
    pub capital: bool,
    /// The row that wants the statement whole, once there is one.
    pub complete: RowId,
    /// The row that says how the entries are written.
    pub entries: RowId,
    /// Is it printed beside an ingredient list, or only where there is no list?
    pub beside_list: bool,
    /// The title of what may be in it unasked, by language, if there is one.
    pub may_contain: Option<Wording>,
}

/// The statement in a language; nothing to declare is no statement.
pub fn contains(rules: &StatementRules, allergens: &BTreeSet<Allergen>, language: &str) -> Runs {
    let mut runs = Runs::default();
    if let Some(law) = &rules.contains {
        write(rules, law, &law.title, allergens, language, &mut runs);
    }
    runs
}

/// What may be in it unasked, beyond what is declared.
pub fn may_contain(rules: &StatementRules, allergens: &BTreeSet<Allergen>, language: &str) -> Runs {
    let mut runs = Runs::default();
    if let Some(law) = &rules.contains
        && let Some(title) = &law.may_contain
    {
        write(rules, law, title, allergens, language, &mut runs);
    }
    runs
}

fn write(
    rules: &StatementRules,
    law: &ContainsRules,
    title: &Wording,
    allergens: &BTreeSet<Allergen>,
    language: &str,
    runs: &mut Runs,
) {
    let names = printed(rules, allergens, language);
    if names.is_empty() {
        return;
    }
    let strong = rules.allergens.emphasised.is_some();
    runs.push(title.in_language(language), law.bold_title);
    runs.push(" ", false);
    for (nth, name) in names.iter().enumerate() {
        runs.push(if nth > 0 { ", " } else { "" }, false);
        match law.capital {
            true => runs.push(&capital(name), strong),
            false => runs.push(name, strong),
        }
    }
}

/// Checks a statement as it is printed, or is about to be: the title, every entry, and their capitals.
pub fn check_contains(
    rules: &StatementRules,
    rows: &Rows,
    allergens: &BTreeSet<Allergen>,
    statement: &str,
    language: &str,
) -> Vec<Finding> {
    let Some(law) = &rules.contains else {
        return Vec::new();
    };
    let mut findings = Vec::new();
    let statement = statement.trim();
    let title = law.title.in_language(language);
    let titles = std::iter::once(title).chain(law.other_titles.iter().map(String::as_str));
    let rest = titles
        .filter_map(|title| statement.strip_prefix(title))
        .min_by_key(|rest| rest.len());
    if rest.is_none() {
        let says = StatementSays::Title {
            title: title.to_owned(),
        };
        findings.push(Finding::against(rows, &law.title.row, says));
    }
    // Under another title what follows its colon is still read.
    let after_colon = || statement.split_once(':').map(|(_, rest)| rest);
    let entries: Vec<&str> = rest
        .or_else(after_colon)
        .unwrap_or(statement)
        .trim_start_matches(':')
        .split([',', '•', ';'])
        .map(|entry| entry.trim().trim_end_matches('.'))
        .filter(|entry| !entry.is_empty())
        .collect();
    let said: BTreeSet<String> = entries.iter().map(|entry| entry.to_lowercase()).collect();
    let mut missing: Vec<&str> = Vec::new();
    for name in &rules.allergens.names {
        let says_it = |word: &String| said.contains(&word.to_lowercase());
        if allergens.contains(&name.allergen) && !name.words(language).iter().any(says_it) {
            missing.push(crate::says::said(&name.name, language));
        }
    }
    if !missing.is_empty() {
        let says = StatementSays::Lacks {
            names: missing.join(", "),
        };
        findings.push(Finding::against(rows, &law.complete, says));
    }
    let bad: Vec<&str> = entries
        .iter()
        .filter(|entry| law.capital && !starts_with_capital(entry))
        .filter(|entry| !is_own_name(rules, entry, language))
        .copied()
        .collect();
    if !bad.is_empty() {
        let says = StatementSays::Capitals {
            entries: bad.join(", "),
        };
        findings.push(Finding::against(rows, &law.entries, says));
    }
    findings
}

/// A name that has capitals of its own, as Brazil in a nut's.
fn is_own_name(rules: &StatementRules, entry: &str, language: &str) -> bool {
    let names = rules.allergens.names.iter();
    let mut words = names.flat_map(|name| name.words(language));
    words.any(|word| capital(&word) == entry)
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

fn starts_with_capital(entry: &str) -> bool {
    let mut letters = entry.chars();
    letters.next().is_some_and(char::is_uppercase) && letters.all(|letter| !letter.is_uppercase())
}
