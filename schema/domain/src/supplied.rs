//! What a bought lot is made of: fixed when it is received, by what its pack says and, where that says
//! nothing, by the product list as it stood, which counts as the supplier's declaration. A list that changes
//! later changes no lot.

use crate::code::LotCode;
use crate::dates::{Because, Rule};
use crate::grams::Grams;
use crate::messages;
use crate::plan::Reason;
use crate::product::Product;
use crate::rows::RowId;
use crate::says::Arg;
use crate::words::{Allergen, Topic};
use chrono::NaiveDate;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::{self, Display, Formatter};
use std::sync::Arc;

/// The deepest that recipes of bought goods are written out.
pub const DEEPEST: u32 = 8;

messages! {
    /// By what it is known what a bought lot is made of.
    SuppliedSays in "supplied" {
        ByList "by-list" { lot: LotCode, day: NaiveDate },
        IngredientsByPack "ingredients-by-pack" { lot: LotCode },
        AllergensByPack "allergens-by-pack" { lot: LotCode },
        ByWords "by-words" { lot: LotCode, allergens: Arg },
        MayContain "may-contain" { lot: LotCode, allergens: Arg },
        ByName "by-name" { lot: LotCode, allergens: Arg },
        Named "named" { allergens: Arg },
        NamedOnList "named-on-list" { allergens: Arg },
        NamedElsewhere "named-elsewhere" { allergens: Arg },
        Recipe "recipe" { allergens: Arg },
        Rule "rule",
    }
}

/// What a bought lot is made of, as it was told when it was received.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Supplied {
    /// The list's recipe as it stood.
    pub recipe: Vec<SuppliedPart>,
    /// Its ingredients as the pack has them, by language: they count, and the recipe does not.
    pub ingredients: BTreeMap<String, String>,
    /// Did the pack tell its allergens?
    pub allergens_by_pack: bool,
}

/// A part of a recipe as it stood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SuppliedPart {
    /// The version of the product in the list.
    pub version: i32,
    /// Its weight in the recipe.
    pub grams: Grams,
    /// Its own recipe.
    pub parts: Vec<SuppliedPart>,
}

impl SuppliedPart {
    /// The versions of products in some parts, to any depth.
    pub fn versions(parts: &[SuppliedPart]) -> Vec<i32> {
        let below = |part: &SuppliedPart| {
            let mut all = SuppliedPart::versions(&part.parts);
            all.push(part.version);
            all
        };
        parts.iter().flat_map(below).collect()
    }
}

/// The allergens of products: those that a recipe brings.
pub fn allergens_of<'a>(products: impl Iterator<Item = &'a Arc<Product>>) -> BTreeSet<Allergen> {
    products
        .flat_map(|product| product.allergens.iter().copied())
        .collect()
}

/// What a pack says of what is in it, with what the list says.
#[derive(Debug, Clone, Default)]
pub struct Contents {
    /// The recipe of the list, and the ingredients of the pack.
    pub supplied: Supplied,
    /// The allergens that the recipe brings.
    pub of_recipe: BTreeSet<Allergen>,
    /// The allergens that its own name on the list tells, and its entry there does not.
    pub of_name: BTreeSet<Allergen>,
    /// The rows by which it does.
    pub of_name_by: Vec<RowId>,
    /// The allergens that the words of the pack's ingredients name.
    pub named: BTreeSet<Allergen>,
    /// The rows by which they do.
    pub named_by: Vec<RowId>,
    /// Those that they name only in another language than they are said to be in. Somebody has to look.
    pub elsewhere: BTreeSet<Allergen>,
    /// The allergens that the pack tells, if it tells them.
    pub told: Option<BTreeSet<Allergen>>,
    /// What may be in it unasked, by the pack.
    pub may_contain: BTreeSet<Allergen>,
}

impl Contents {
    /// Every allergen that is to be told of it. What its label lists as an ingredient is told too, whatever
    /// else is said: a list that names one and a statement that does not would be wrong.
    pub fn allergens(&self, product: &Product) -> BTreeSet<Allergen> {
        let mut all = match &self.told {
            Some(told) => told.clone(),
            None => &product.allergens | &self.of_name,
        };
        // Of a pack that tells neither, the list counts whole.
        if self.told.is_none() || self.supplied.ingredients.is_empty() {
            all.extend(&self.of_recipe);
        }
        all.extend(&self.named);
        all
    }

    /// Has nobody told what is in it: not its pack, not a recipe of the list, not its entry there? A list that says
    /// nothing is no word that nothing is in what is plainly made of several things.
    pub fn is_untold(&self, product: &Product) -> bool {
        let by_pack = self.told.is_some() || !self.supplied.ingredients.is_empty();
        let by_list = !self.supplied.recipe.is_empty() || !product.allergens.is_empty();
        product.is_made_of_several() && !by_pack && !by_list
    }

    /// What the pack says that it did not tell as an allergen.
    pub fn warnings(&self) -> Vec<SuppliedSays> {
        let Some(told) = &self.told else {
            let on_list = (!self.of_name.is_empty()).then(|| SuppliedSays::NamedOnList {
                allergens: Arg::All(self.of_name.iter().copied().map(Arg::from).collect()),
            });
            return on_list.into_iter().collect();
        };
        let untold = |of: &BTreeSet<Allergen>| {
            let all: Vec<Arg> = of.difference(told).copied().map(Arg::from).collect();
            (!all.is_empty()).then_some(Arg::All(all))
        };
        let named = untold(&self.named).map(|allergens| SuppliedSays::Named { allergens });
        let by_recipe = self.supplied.ingredients.is_empty();
        let recipe = by_recipe.then(|| untold(&self.of_recipe)).flatten();
        let recipe = recipe.map(|allergens| SuppliedSays::Recipe { allergens });
        let elsewhere = &self.elsewhere - &self.named;
        let elsewhere =
            untold(&elsewhere).map(|allergens| SuppliedSays::NamedElsewhere { allergens });
        named.into_iter().chain(elsewhere).chain(recipe).collect()
    }

    /// By what it is known, to be kept with the lot.
    pub fn reasons(&self, lot: &LotCode, day: NaiveDate) -> Vec<Reason> {
        let mut says = Vec::new();
        let lot = || lot.clone();
        let by_pack = !self.supplied.ingredients.is_empty();
        if !by_pack || self.told.is_none() {
            says.push(SuppliedSays::ByList { lot: lot(), day });
        }
        if by_pack {
            says.push(SuppliedSays::IngredientsByPack { lot: lot() });
        }
        if self.told.is_some() {
            says.push(SuppliedSays::AllergensByPack { lot: lot() });
        }
        if !self.may_contain.is_empty() {
            let all = self.may_contain.iter().copied().map(Arg::from).collect();
            let allergens = Arg::All(all);
            says.push(SuppliedSays::MayContain {
                lot: lot(),
                allergens,
            });
        }
        let because = says.into_iter().map(|says| Because {
            says: says.into(),
            rule: Rule::Practice(SuppliedSays::Rule.into()),
        });
        let words = (!self.named.is_empty()).then(|| Because {
            says: SuppliedSays::ByWords {
                lot: lot(),
                allergens: Arg::All(self.named.iter().copied().map(Arg::from).collect()),
            }
            .into(),
            rule: Rule::Rows(self.named_by.clone()),
        });
        let name = (self.told.is_none() && !self.of_name.is_empty()).then(|| Because {
            says: SuppliedSays::ByName {
                lot: lot(),
                allergens: Arg::All(self.of_name.iter().copied().map(Arg::from).collect()),
            }
            .into(),
            rule: Rule::Rows(self.of_name_by.clone()),
        });
        Reason::all(Topic::Contents, because.chain(words).chain(name))
    }
}

impl Display for Supplied {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        let by = match self.allergens_by_pack {
            true => "pack",
            false => "list",
        };
        write!(f, "{by} {}", Parts(&self.recipe))?;
        for (language, text) in &self.ingredients {
            write!(f, "\n{language} {text}")?;
        }
        Ok(())
    }
}

struct Parts<'a>(&'a [SuppliedPart]);

impl Display for Parts<'_> {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        for part in self.0 {
            let mg = part.grams.milligrams();
            write!(f, "{}:{mg}({})", part.version, Parts(&part.parts))?;
        }
        Ok(())
    }
}

impl Supplied {
    /// Reads what was kept.
    pub fn parse(text: &str) -> Option<Supplied> {
        let mut lines = text.lines();
        let (by, recipe) = lines.next()?.split_once(' ')?;
        let mut rest = recipe;
        let recipe = parts(&mut rest)?;
        let ingredients = lines.map(|line| {
            let (language, text) = line.split_once(' ')?;
            Some((language.to_owned(), text.to_owned()))
        });
        let ingredients = ingredients.collect::<Option<_>>()?;
        (rest.is_empty() && matches!(by, "pack" | "list")).then(|| Supplied {
            recipe,
            ingredients,
            allergens_by_pack: by == "pack",
        })
    }
}

/// Reads parts up to the bracket that closes them, or to the end.
fn parts(rest: &mut &str) -> Option<Vec<SuppliedPart>> {
    let mut all = Vec::new();
    while !rest.is_empty() && !rest.starts_with(')') {
        let (version, after) = rest.split_once(':')?;
        let (mg, after) = after.split_once('(')?;
        *rest = after;
        let below = parts(rest)?;
        *rest = rest.strip_prefix(')')?;
        all.push(SuppliedPart {
            version: version.parse().ok()?,
            grams: Grams::from_milligrams(mg.parse().ok()?),
            parts: below,
        });
    }
    Some(all)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::{ProductKind, Species};
    use proptest::prelude::*;

    fn part(version: i32, mg: i64, parts: Vec<SuppliedPart>) -> SuppliedPart {
        let grams = Grams::from_milligrams(mg);
        SuppliedPart {
            version,
            grams,
            parts,
        }
    }

    proptest! {
        #[test]
        fn what_is_kept_reads_back(all in prop::collection::vec((1i32..500, 0i64..9_000_000), 0..6), by_pack: bool,
            text in "[a-zé(),:% ]{1,40}x") {
            let nested = all.iter().map(|(version, mg)| {
                part(*version, *mg, vec![part(version + 1, mg / 2, vec![part(version + 2, 1, vec![])])])
            });
            let supplied = Supplied {
                recipe: nested.collect(),
                ingredients: [("en".to_owned(), text)].into(),
                allergens_by_pack: by_pack,
            };
            prop_assert_eq!(Supplied::parse(&supplied.to_string()), Some(supplied));
        }
    }

    #[test]
    fn what_is_not_kept_so_does_not_read() {
        assert_eq!(Supplied::parse("list "), Some(Supplied::default()));
        for text in [
            "",
            "list",
            "other ",
            "list 1:2",
            "list 1:2(3",
            "list 1:2()x",
            "list )",
        ] {
            assert_eq!(Supplied::parse(text), None, "{text}");
        }
    }

    #[test]
    fn a_bought_mixture_of_which_nobody_told_anything_is_untold() {
        use ProductKind::{Cooked, Cured, Cut, Ingredient, Mixed};
        let check = |kind: ProductKind, change: fn(&mut Product, &mut Contents), expected: bool| {
            let mut product = Product {
                kind,
                species: Some(Species::Pig),
                raw: true,
                ..Product::unnamed()
            };
            let mut contents = Contents::default();
            change(&mut product, &mut contents);
            assert_eq!(
                contents.is_untold(&product),
                expected,
                "{kind} {contents:?}"
            );
        };
        let nothing: fn(&mut Product, &mut Contents) = |_, _| {};
        for kind in [Mixed, Cured, Cooked] {
            check(kind, nothing, true);
            check(kind, |_, of| of.told = Some([].into()), false);
            check(
                kind,
                |_, of| of.supplied.recipe = vec![part(1, 1, vec![])],
                false,
            );
            check(kind, |of, _| of.allergens = [Allergen::Wheat].into(), false);
            let by_words: fn(&mut Product, &mut Contents) = |_, of| {
                of.supplied.ingredients = [("en".to_owned(), "pork".to_owned())].into();
            };
            check(kind, by_words, false);
            // What may be in it besides tells nothing of what is.
            check(kind, |_, of| of.may_contain = [Allergen::Egg].into(), true);
        }
        for kind in [Cut, Ingredient] {
            check(kind, nothing, false);
        }
    }

    #[test]
    fn no_allergen_that_the_label_would_list_goes_untold() {
        use Allergen::{Egg, Milk, Mustard};
        let product = Product {
            allergens: [Egg].into(),
            ..Product::unnamed()
        };
        let check =
            |told: Option<&[Allergen]>, text: &str, expected: &[Allergen], warned: usize| {
                let ingredients = (!text.is_empty()).then(|| ("en".to_owned(), text.to_owned()));
                let contents = Contents {
                    supplied: Supplied {
                        ingredients: ingredients.into_iter().collect(),
                        ..Supplied::default()
                    },
                    of_recipe: [Milk].into(),
                    named: if text.is_empty() {
                        [].into()
                    } else {
                        [Mustard].into()
                    },
                    told: told.map(|told| told.iter().copied().collect()),
                    ..Contents::default()
                };
                let expected: BTreeSet<Allergen> = expected.iter().copied().collect();
                assert_eq!(contents.allergens(&product), expected, "{told:?} {text}");
                assert_eq!(contents.warnings().len(), warned, "{told:?} {text}");
            };
        check(None, "", &[Egg, Milk], 0);
        let named = Contents {
            of_name: [Mustard].into(),
            ..Contents::default()
        };
        assert_eq!(named.allergens(&product), [Egg, Mustard].into());
        assert_eq!(named.warnings().len(), 1);
        let told = Contents {
            told: Some([].into()),
            ..named
        };
        assert_eq!(told.allergens(&product), [].into(), "its pack knows better");
        check(None, "mustard seed", &[Egg, Milk, Mustard], 0);
        check(Some(&[]), "", &[Milk], 1);
        check(Some(&[Milk]), "", &[Milk], 0);
        check(Some(&[Egg]), "mustard seed", &[Egg, Mustard], 1);
        check(Some(&[Mustard]), "mustard seed", &[Mustard], 0);
    }
}
