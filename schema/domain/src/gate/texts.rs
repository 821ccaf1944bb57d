//! The texts of a customer's label as they will be printed, read back.

use super::GateSays;
use crate::grams::Grams;
use crate::law::Law;
use crate::rows::{Finding, RowId};
use crate::statement::{check_contains, check_net_weight, check_words};
use crate::words::Allergen;
use std::collections::BTreeSet;

/// The texts of a label.
#[derive(Debug, Clone, Default)]
pub struct LabelTexts<'a> {
    /// Is there meat in it?
    pub meat: bool,
    /// Every text, whatever it says.
    pub all: Vec<&'a str>,
    /// The allergens that it must name.
    pub allergens: BTreeSet<Allergen>,
    /// The allergen statement in each language, where there is one.
    pub contains: Vec<(&'a str, &'a str)>,
    /// The row by which an ingredient list must stand on it, where it must.
    pub list_due: Option<RowId>,
    /// The ingredient list.
    pub list: Option<&'a str>,
    /// The net weight as it is printed, and the weight.
    pub net: Option<(&'a str, Grams)>,
    /// Words that must stand on it, each as it is, with the row: what it was tenderised by.
    pub must_say: Vec<&'a str>,
    /// Words of which one must stand on it, where the place leaves the choice.
    pub one_of: Vec<&'a str>,
    /// What must stand on it in the kitchen's own words: how it is cooked.
    pub instructions: Vec<String>,
}

/// What stands against the texts of a label under the law of a place.
pub fn of_texts(texts: &LabelTexts<'_>, law: &Law) -> Vec<Finding> {
    let rules = &law.statements;
    let mut found: Vec<Finding> = Vec::new();
    if texts.meat {
        for text in &texts.all {
            found.extend(check_words(rules, &law.rows, text));
        }
    }
    for (language, statement) in &texts.contains {
        let asked = &texts.allergens;
        found.extend(check_contains(rules, &law.rows, asked, statement, language));
    }
    if let Some(row) = texts.list_due.as_ref().filter(|_| texts.list.is_none()) {
        found.push(Finding::against(&law.rows, row, GateSays::NoList));
    }
    if let Some((text, grams)) = texts.net {
        found.extend(check_net_weight(rules, &law.rows, text, grams));
    }
    if let Some(wording) = &law.duties.tenderised {
        let all: Vec<String> = texts.all.iter().map(|text| text.to_lowercase()).collect();
        let said = |words: &&str| {
            let words = words.to_lowercase();
            all.iter().any(|text| text.contains(&words))
        };
        if !texts.one_of.is_empty() && !texts.one_of.iter().any(said) {
            let says = GateSays::NoTenderisedName {
                one_of: texts.one_of.join(", "),
            };
            found.push(Finding::against(&law.rows, &wording.row, says));
        }
        let instructions = texts.instructions.iter().map(String::as_str);
        let must = texts.must_say.iter().copied().chain(instructions);
        for words in must.filter(|words| !said(words)) {
            let says = GateSays::NoTenderised {
                words: words.to_owned(),
            };
            found.push(Finding::against(&law.rows, &wording.row, says));
        }
    }
    let mut seen: Vec<Finding> = Vec::new();
    for finding in found {
        if !seen.contains(&finding) {
            seen.push(finding);
        }
    }
    seen
}
