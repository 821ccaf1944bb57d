//! The words of plain foods that tell an allergen: butter tells milk, tahini tells sesame. What a pack's own list
//! names so is in it, whatever the pack says besides. A word that may as well mean something else tells nothing.

use super::StatementRules;
use super::folded::{fold, items, whole_words};
use crate::product::Product;
use crate::rows::RowId;
use crate::words::{Allergen, ProductKind};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// Words by language tag.
pub type WordsByLanguage = BTreeMap<String, Vec<String>>;

/// The words of plain foods, alike in every place.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FoodWords {
    /// The row that says what foods are made of.
    pub row: Option<RowId>,
    /// The foods, by what they are of.
    pub foods: Vec<FoodOf>,
    /// Words that deny the word after them: `without`.
    pub denied_before: WordsByLanguage,
    /// Words that deny the word before them: `free`.
    pub denied_after: WordsByLanguage,
    /// Words from which on a text says what may be in it unasked: `may contain`.
    pub perhaps: WordsByLanguage,
}

/// The foods that are of one allergen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoodOf {
    /// The allergen.
    pub allergen: Allergen,
    /// Words that tell it wherever they stand.
    pub words: WordsByLanguage,
    /// Words that tell it where they are an ingredient by themselves: `flour`.
    pub alone: WordsByLanguage,
    /// Phrases in which such a word means something else: `peanut butter`.
    pub but_not: WordsByLanguage,
    /// Words that stand beside one for a food that is made without it: `vegan`.
    pub made_without: WordsByLanguage,
}

/// What the words of a list tell.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Named {
    /// What is in it.
    pub inside: BTreeSet<Allergen>,
    /// What may be in it unasked, by the text's own words.
    pub perhaps: BTreeSet<Allergen>,
}

/// The words that speak of a whole group, each with the first of its group in the order of the vocabulary.
const GROUPS: [(Allergen, Allergen); 4] = [
    (Allergen::Almond, Allergen::TreeNut),
    (Allergen::Anchovy, Allergen::Fish),
    (Allergen::Crab, Allergen::Crustacean),
    (Allergen::Clam, Allergen::Mollusc),
];

/// The allergens of a place that the words of a list name. The word of a group counts where the text names none of
/// the group.
pub fn named_in(rules: &StatementRules, text: &str, language: &str) -> Named {
    let words = &rules.allergens.food_words;
    let text = fold(text);
    let unasked = words.unasked(&text, language);
    let mut named = Named::default();
    let known = |food: &&FoodOf| rules.allergens.name(food.allergen).is_some();
    for food in words.foods.iter().filter(known) {
        for at in food.found(words, rules, &text, language) {
            match unasked.iter().any(|part| part.contains(&at.start)) {
                true => named.perhaps.insert(food.allergen),
                false => named.inside.insert(food.allergen),
            };
        }
    }
    named.perhaps = &named.perhaps - &named.inside;
    for (first, group) in GROUPS {
        for all in [&mut named.inside, &mut named.perhaps] {
            if all.range(first..group).next().is_some() {
                all.remove(&group);
            }
        }
    }
    named
}

/// What a text names by the words of other languages than that which it is said to be in: a supplier's list is often
/// typed as it stands on the box.
pub fn named_elsewhere(rules: &StatementRules, text: &str, language: &str) -> BTreeSet<Allergen> {
    let foods = rules.allergens.food_words.foods.iter();
    let known: BTreeSet<&str> = foods
        .flat_map(|food| food.words.keys().chain(food.alone.keys()))
        .map(String::as_str)
        .collect();
    let others = known.into_iter().filter(|other| *other != tongue(language));
    let named = others.flat_map(|other| named_in(rules, text, other).inside);
    let here = named_in(rules, text, language);
    let known =
        |allergen: &Allergen| here.inside.contains(allergen) || here.perhaps.contains(allergen);
    named.filter(|allergen| !known(allergen)).collect()
}

/// The allergens that the names of an entry of the product list tell, and what is `told` of it does not: `milk powder`
/// for which nobody ticked milk. A piece of an animal is called after its shape: its names tell none.
pub fn untold_by(rules: &StatementRules, product: &Product, told: &BTreeSet<Allergen>) -> Named {
    use ProductKind::{Bone, Carcass, Cut, Fat, Offal, Trim, Waste};
    let mut found = Named::default();
    if matches!(
        product.kind,
        Carcass | Cut | Trim | Fat | Bone | Offal | Waste
    ) {
        return found;
    }
    for (language, name) in product.names.iter().chain(product.sold_as.iter()) {
        found.inside.extend(named_in(rules, name, language).inside);
    }
    found.inside = &found.inside - told;
    for (first, group) in GROUPS {
        let one = |of: &BTreeSet<Allergen>| of.range(first..group).next().is_some();
        if one(told) || one(&found.inside) {
            found.inside.remove(&group);
        }
    }
    found
}

impl Named {
    /// The rows that it rests on: what foods are made of, and what the place says of the allergens in it.
    pub fn rows(&self, rules: &StatementRules) -> Vec<RowId> {
        let law = &rules.allergens;
        let places = self
            .inside
            .iter()
            .filter_map(|allergen| law.name(*allergen));
        let mut rows: Vec<RowId> = law.food_words.row.iter().cloned().collect();
        for name in places {
            if !rows.contains(&name.row) {
                rows.push(name.row.clone());
            }
        }
        rows
    }
}

fn tongue(language: &str) -> &str {
    language.split('-').next().unwrap_or(language)
}

/// The words of a language; of one that has none, the English ones.
fn of<'a>(words: &'a WordsByLanguage, language: &str) -> &'a [String] {
    let known = words.get(tongue(language)).or_else(|| words.get("en"));
    known.map_or(&[], Vec::as_slice)
}

impl FoodWords {
    /// The parts of a text that speak of what may be in it unasked: from such words to the end of the sentence.
    fn unasked(&self, text: &str, language: &str) -> Vec<Range<usize>> {
        let begins = of(&self.perhaps, language).iter();
        let begins = begins.flat_map(|words| whole_words(text, words));
        let ends = |from: usize| {
            text[from..]
                .find(['.', ';', ')'])
                .map_or(text.len(), |at| from + at)
        };
        begins.map(|at| at.start..ends(at.end)).collect()
    }

    /// Is a word denied by what stands beside it: `without milk`, `milk-free`, `milk-fed`?
    fn denies(&self, text: &str, at: &Range<usize>, language: &str) -> bool {
        let before = text[..at.start].trim_end_matches(' ');
        let after = text[at.end..].trim_start_matches(' ');
        let denied = |words: &WordsByLanguage, beside: &dyn Fn(&str) -> bool| {
            of(words, language).iter().any(|word| beside(&fold(word)))
        };
        denied(&self.denied_before, &|word| ends_with_word(before, word))
            || denied(&self.denied_after, &|word| starts_with_word(after, word))
    }
}

impl FoodOf {
    /// Where a folded text tells it.
    fn found(
        &self,
        all: &FoodWords,
        rules: &StatementRules,
        text: &str,
        language: &str,
    ) -> Vec<Range<usize>> {
        let exempt = rules.allergens.exempt.as_ref();
        let exempt = exempt.map_or(&[][..], |(_, phrases)| of(phrases, language));
        let other = of(&self.but_not, language).iter().chain(exempt);
        let other: Vec<Range<usize>> = other.flat_map(|phrase| whole_words(text, phrase)).collect();
        let is_meant = |at: &Range<usize>| {
            let inside = |of: &Range<usize>| of.start <= at.start && at.end <= of.end;
            !other.iter().any(inside)
                && !all.denies(text, at, language)
                && !self.is_without(text, at, language)
        };
        let words = of(&self.words, language).iter();
        let anywhere = words.flat_map(|word| whole_words(text, word));
        let alone = items(text, of(&self.alone, language));
        anywhere.chain(alone).filter(is_meant).collect()
    }

    /// Does a word beside it say that the food is made without it?
    fn is_without(&self, text: &str, at: &Range<usize>, language: &str) -> bool {
        let before = text[..at.start].trim_end_matches(' ');
        let after = text[at.end..].trim_start_matches(' ');
        of(&self.made_without, language).iter().any(|word| {
            let word = fold(word);
            ends_with_word(before, &word) || starts_with_word(after, &word)
        })
    }
}

fn ends_with_word(text: &str, word: &str) -> bool {
    let rest = text.strip_suffix(word);
    rest.is_some_and(|rest| !rest.ends_with(char::is_alphanumeric))
}

fn starts_with_word(text: &str, word: &str) -> bool {
    let rest = text.strip_prefix(word);
    rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
}
