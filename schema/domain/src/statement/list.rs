//! The ingredient list as a place wants it: heaviest first by what went in, small things last,
//! compounds in brackets, additives by class, allergens emphasised.

use super::matching::find;
use super::share::Whole;
use super::{Runs, ShareRules, StatementRules, StatementStyle, Wording};
use crate::grams::Grams;
use crate::ingredients::{Ingredient, Nature};
use crate::measure::Percent;
use crate::rows::{Bound, RowId};
use crate::says::said;
use crate::words::Allergen;
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// How a place writes the list.
#[derive(Debug, Clone, PartialEq)]
pub struct ListRules {
    /// The row that wants the order.
    pub order: RowId,
    /// The title by language: `Ingredients:`.
    pub title: Wording,
    /// Is the title bold?
    pub bold_title: bool,
    /// The row of compounds in brackets.
    pub compounds: RowId,
    /// May compounds be dissolved into the list instead?
    pub may_merge: bool,
    /// The small things at the end, if the place has a form of words for them.
    pub tail: Option<TailRules>,
    /// What may stand last in any order, if the place has such things.
    pub last: Option<LastRules>,
    /// The row that lets casings be left out, if one does.
    pub no_casings: Option<RowId>,
    /// The row that lets water be left out that is taken out again, if one does.
    pub no_removed_water: Option<RowId>,
    /// The row that wants a cure's parts by name.
    pub cure_parts: Option<RowId>,
    /// The share of what the name speaks of, where the place wants it.
    pub shares: Option<ShareRules>,
    /// What is not a spice, and the row that says so.
    pub not_spice: Option<(RowId, Vec<String>)>,
    /// Additives by key.
    pub additives: BTreeMap<String, AdditiveName>,
}

/// `Contains 2 percent or less of`.
#[derive(Debug, Clone, PartialEq)]
pub struct TailRules {
    /// The percentages that the form of words may name.
    pub percents: Vec<Decimal>,
    /// The highest of them, which a house may lower.
    pub at_most: Bound,
    /// The words by language, `{}` for the number.
    pub words: Wording,
}

/// What may stand last.
#[derive(Debug, Clone, PartialEq)]
pub struct LastRules {
    /// The row.
    pub row: RowId,
    /// What may.
    pub natures: Vec<Nature>,
    /// Spices and herbs only up to this percentage of the whole, together.
    pub spices_at_most: Bound,
}

/// How an additive is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AdditiveName {
    /// Where it comes from.
    pub row: RowId,
    /// Its class by language: `preservative`.
    pub class: BTreeMap<String, String>,
    /// Its name by language.
    pub name: BTreeMap<String, String>,
    /// Its number: `E250`.
    pub number: Option<String>,
}

/// The list in a language, title and all; a food of one thing has none. The finished weight is told where
/// moisture was lost.
pub fn ingredients(
    rules: &StatementRules,
    (parts, finished): (&[Ingredient], Option<Grams>),
    declared: &BTreeSet<Allergen>,
    language: &str,
    style: StatementStyle,
) -> Runs {
    let Some(law) = &rules.list else {
        return Runs::default();
    };
    let mut runs = Runs::default();
    runs.push(law.title.in_language(language), law.bold_title);
    runs.push(" ", false);
    let kept: Vec<&Ingredient> = parts.iter().filter(|part| !law.omits(part)).collect();
    let whole: Grams = kept.iter().map(|part| part.grams).sum();
    let writer = ListWriter {
        rules,
        law,
        declared,
        language,
        shares_of: Whole::of(&kept, whole, finished),
    };
    let (front, back) = match style.small_last {
        true => law.parted(kept, whole),
        false => (kept, Vec::new()),
    };
    writer.write_all(&front, &mut runs);
    if !back.is_empty() {
        let tail = law.tail.as_ref().and_then(|tail| {
            let percent = tail.tightest(&back, whole)?;
            let words = tail.words.in_language(language);
            let percent = percent.normalize().to_string();
            // French has a decimal comma.
            let percent = match language {
                "fr" => percent.replace('.', ","),
                _ => percent,
            };
            Some(words.replace("{}", &percent))
        });
        runs.push(if front.is_empty() { "" } else { ", " }, false);
        runs.push(&tail.map(|words| words + " ").unwrap_or_default(), false);
        writer.write_all(&back, &mut runs);
    }
    runs
}

impl ListRules {
    /// May it be left out here?
    pub fn omits(&self, part: &Ingredient) -> bool {
        match part.nature {
            Nature::Casing => self.no_casings.is_some(),
            Nature::RemovedWater => self.no_removed_water.is_some(),
            _ => false,
        }
    }

    /// Parts the list into what stands by weight and what stands last.
    fn parted<'a>(
        &self,
        parts: Vec<&'a Ingredient>,
        whole: Grams,
    ) -> (Vec<&'a Ingredient>, Vec<&'a Ingredient>) {
        if let Some(tail) = &self.tail {
            let limit = tail.at_most.value;
            let small = |part: &&Ingredient| share(part.grams, whole).number() <= limit;
            let (back, front): (Vec<_>, Vec<_>) = parts.iter().copied().partition(small);
            // One small thing needs no words of its own; neither does a list of nothing else.
            return match back.len() >= 2 && !front.is_empty() {
                true => (front, back),
                false => (parts, Vec::new()),
            };
        }
        let Some(last) = &self.last else {
            return (parts, Vec::new());
        };
        let is_spice = |part: &&&Ingredient| part.nature == Nature::Spice;
        let spices: Grams = parts.iter().filter(is_spice).map(|part| part.grams).sum();
        let few = share(spices, whole).number() <= last.spices_at_most.value;
        parts.into_iter().partition(|part| {
            let named = last.natures.contains(&part.nature);
            !named || (part.nature == Nature::Spice && !few)
        })
    }
}

impl TailRules {
    /// The lowest of the percentages that no part of the tail is above.
    fn tightest(&self, back: &[&Ingredient], whole: Grams) -> Option<Decimal> {
        let most = back.iter().map(|part| part.grams).max()?;
        let most = share(most, whole).number();
        let fitting = self.percents.iter().filter(|percent| most <= **percent);
        fitting.min().copied()
    }
}

/// So many in a hundred of a weight.
pub fn share(part: Grams, whole: Grams) -> Percent {
    Percent::of(part.milligrams().into(), whole.milligrams().into())
}

struct ListWriter<'a> {
    rules: &'a StatementRules,
    law: &'a ListRules,
    declared: &'a BTreeSet<Allergen>,
    language: &'a str,
    shares_of: Whole,
}

impl ListWriter<'_> {
    fn write_all(&self, parts: &[&Ingredient], runs: &mut Runs) {
        for (nth, part) in parts.iter().enumerate() {
            runs.push(if nth > 0 { ", " } else { "" }, false);
            self.write(part, runs);
        }
    }

    fn write(&self, part: &Ingredient, runs: &mut Runs) {
        let name = self.name(part);
        let own: BTreeSet<Allergen> = match self.rules.allergens.emphasised {
            Some(_) => &part.all_allergens() & self.declared,
            None => BTreeSet::new(),
        };
        let tongue = part.language(self.language);
        let mut left = self.emphasise(&name, tongue, &own, runs);
        if let Some(fat) = self.rules.species.fat_of(part, &name, self.language) {
            runs.push(&format!(" ({fat})"), false);
        }
        if let Some(share) = self.law.share_of(part, self.shares_of, self.language) {
            runs.push(&format!(" {share}"), false);
        }
        let parts: Vec<&Ingredient> = part
            .parts
            .iter()
            .filter(|part| !self.law.omits(part))
            .collect();
        for below in &parts {
            for allergen in below.all_allergens() {
                left.remove(&allergen);
            }
        }
        let named = self.names(&left);
        if parts.is_empty() && named.is_empty() {
            return;
        }
        if part.as_declared {
            // The pack's own list is the whole of it: what it does not name belongs to none of its words.
            for name in named {
                runs.push(", ", false);
                runs.push(name, true);
            }
            return;
        }
        runs.push(" (", false);
        self.write_all(&parts, runs);
        for (nth, name) in named.iter().enumerate() {
            let first = nth == 0 && parts.is_empty();
            runs.push(if first { "" } else { ", " }, false);
            runs.push(name, true);
        }
        runs.push(")", false);
    }

    /// An additive by its class and number where the place has them, all else by its name.
    fn name(&self, part: &Ingredient) -> String {
        let known = part.additive.as_ref();
        let Some(additive) = known.and_then(|key| self.law.additives.get(key)) else {
            return part.name(self.language);
        };
        let class = said(&additive.class, self.language);
        let name = said(&additive.name, self.language);
        let number = additive.number.as_ref();
        let number = number.map(|number| format!(" ({number})"));
        match class {
            "" => name.to_owned(),
            class => {
                // French parts the colon off with a no-break space.
                let between = match self.language {
                    "fr" => "\u{a0}: ",
                    _ => ": ",
                };
                format!("{class}{between}{name}{}", number.unwrap_or_default())
            }
        }
    }

    fn names(&self, allergens: &BTreeSet<Allergen>) -> Vec<&str> {
        super::allergens::printed(self.rules, allergens, self.language)
    }

    /// Writes a name with the words that name an allergen emphasised; an allergen that no word names is left over.
    fn emphasise(
        &self,
        name: &str,
        language: &str,
        own: &BTreeSet<Allergen>,
        runs: &mut Runs,
    ) -> BTreeSet<Allergen> {
        let mut left = own.clone();
        let mut strong = vec![false; name.len()];
        for allergen in own {
            let Some(law) = self.rules.allergens.name(*allergen) else {
                continue;
            };
            for at in find(name, &law.words(language), law.but_not(language)) {
                left.remove(allergen);
                strong[at].fill(true);
            }
        }
        for (at, letter) in name.char_indices() {
            runs.push(letter.encode_utf8(&mut [0; 4]), strong[at]);
        }
        left
    }
}
