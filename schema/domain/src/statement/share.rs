//! The share of an ingredient that the name of the food speaks of (`canada-eu-uk-9.10`, `confirmed X-EU-29`;
//! of meat whatever the name says, `confirmed X-UK-9`).

use super::matching::find;
use super::{Food, ListRules, StatementRules, Wording};
use crate::grams::Grams;
use crate::ingredients::{Ingredient, Nature};
use crate::rows::RowId;

/// How a place tells shares.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShareRules {
    /// The row that wants the share of what the name speaks of.
    pub row: RowId,
    /// The row that wants the share of meat whatever the name says, if there is one.
    pub meat: Option<RowId>,
    /// Where more went in than the food weighs: `{} g per 100 g`, by language.
    pub per_hundred: Wording,
}

/// Words of a name that speak of no ingredient. Common practice, no source.
const SAYS_NOTHING: [&str; 10] = [
    "with", "fresh", "ground", "dried", "trim", "avec", "frais", "fraîche", "haché", "parures",
];

/// The parts of a food, those marked whose share its place wants told.
pub(super) fn marked(rules: &StatementRules, food: &Food) -> Vec<Ingredient> {
    let mut parts = food.parts.clone();
    let Some(law) = rules.list.as_ref().and_then(|list| list.shares.as_ref()) else {
        return parts;
    };
    for part in parts.iter_mut().filter(|part| may_be_named(part)) {
        let of_meat = part.species.is_some() && part.nature == Nature::Food;
        let named = || {
            let names = food.names.iter();
            let mut told = names.filter(|(language, name)| is_named(rules, part, name, language));
            told.next().is_some()
        };
        part.in_name |= of_meat && law.meat.is_some() || named();
    }
    parts
}

/// Seasoning is named for its flavour, and a list that a pack declares is no name.
fn may_be_named(part: &Ingredient) -> bool {
    matches!(part.nature, Nature::Food | Nature::Fat) && !part.as_declared
}

fn is_named(rules: &StatementRules, part: &Ingredient, name: &str, language: &str) -> bool {
    let of_animal = part.species.filter(|_| part.nature == Nature::Food);
    if of_animal.is_some_and(|of| rules.species.tells(name, of, language)) {
        return true;
    }
    let Some(own) = part.names.get(language) else {
        return false;
    };
    let words = own.split(|letter: char| !letter.is_alphanumeric());
    let words = words
        .map(str::to_lowercase)
        .filter(|word| word.chars().count() > 3 && !SAYS_NOTHING.contains(&word.as_str()))
        .flat_map(|word| {
            let several = format!("{word}s");
            let one = word.strip_suffix('s').unwrap_or(&word).to_owned();
            [several, one, word]
        });
    !find(name, &words.collect::<Vec<_>>(), &[]).is_empty()
}

/// What the shares of a list are shares of.
#[derive(Debug, Clone, Copy)]
pub(super) struct Whole {
    /// All that went in; where moisture was lost, the finished weight.
    weight: Grams,
    /// Is a share told in grams for 100 g of the finished food: where one, or all that are told together, are more than
    /// the whole of it (`confirmed-X-EU-29`)?
    in_grams: bool,
}

impl Whole {
    pub fn of(parts: &[&Ingredient], ingoing: Grams, finished: Option<Grams>) -> Whole {
        let dried = finished.filter(|finished| *finished < ingoing);
        let weight = dried.unwrap_or(ingoing);
        Whole {
            weight,
            in_grams: named(parts.iter().copied()) > weight,
        }
    }
}

/// The weight of the parts whose share is told; of a part that is named, what is in it is no share besides.
fn named<'a>(parts: impl IntoIterator<Item = &'a Ingredient>) -> Grams {
    let mut told = Grams::ZERO;
    for part in parts {
        told += match part.in_name {
            true => part.grams,
            false => named(&part.parts),
        };
    }
    told
}

impl ListRules {
    /// How the share of a part is told.
    pub(super) fn share_of(
        &self,
        part: &Ingredient,
        whole: Whole,
        language: &str,
    ) -> Option<String> {
        let law = self.shares.as_ref().filter(|_| part.in_name)?;
        let percent = super::list::share(part.grams, whole.weight)
            .number()
            .round();
        if whole.in_grams {
            let words = law.per_hundred.in_language(language);
            return Some(words.replace("{}", &percent.to_string()));
        }
        Some(match language {
            "fr" => format!("{percent}\u{a0}%"),
            _ => format!("{percent}%"),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::Species;
    use std::collections::BTreeMap;
    use std::sync::Arc;

    fn names(name: &str) -> Arc<BTreeMap<String, String>> {
        Arc::new([("en".to_owned(), name.to_owned())].into())
    }

    fn check(food: &str, part: &str, nature: Nature, expected: bool) {
        let rules = StatementRules::default();
        let part = Ingredient {
            names: names(part),
            nature,
            ..Ingredient::default()
        };
        let is = may_be_named(&part) && is_named(&rules, &part, food, "en");
        assert_eq!(is, expected, "{food}");
    }

    #[test]
    fn what_the_name_speaks_of() {
        check("Pork and apple sausage", "Apples", Nature::Food, true);
        check("Pork and apple sausage", "Pineapple", Nature::Food, false);
        check("Fennel sausage", "Fennel seed", Nature::Spice, false);
        check(
            "Ground pork with beans",
            "Ground pepper with salt",
            Nature::Food,
            false,
        );
    }

    /// 100 g of meat that dried to 80 g is more than all of it.
    #[test]
    fn what_dried_off_is_no_part_of_the_whole() {
        let law = list();
        let part = Ingredient {
            grams: Grams::whole(100),
            species: Some(Species::Pig),
            in_name: true,
            ..Ingredient::default()
        };
        let told = |finished: i64| {
            let finished = Some(Grams::whole(finished));
            let whole = Whole::of(&[&part], Grams::whole(104), finished);
            law.share_of(&part, whole, "en").unwrap()
        };
        assert_eq!(told(104), "96%");
        assert_eq!(told(110), "96%");
        assert_eq!(told(100), "100%");
        assert_eq!(told(80), "(125 g per 100 g)");
    }

    /// Three parts of a bird, none of them more than all of it, and together more.
    #[test]
    fn shares_that_are_more_than_the_whole_together_are_told_in_grams() {
        let law = list();
        let part = |grams| Ingredient {
            grams: Grams::whole(grams),
            in_name: true,
            ..Ingredient::default()
        };
        let parts = [part(66), part(50), part(27)];
        let parts: Vec<&Ingredient> = parts.iter().collect();
        let ingoing = Grams::whole(150);
        let told = |finished| {
            let whole = Whole::of(&parts, ingoing, Some(Grams::whole(finished)));
            law.share_of(parts[0], whole, "en").unwrap()
        };
        assert_eq!(told(150), "44%");
        assert_eq!(told(100), "(66 g per 100 g)");
    }

    fn list() -> ListRules {
        let row = RowId::new("x-1");
        let words = |text: &str| Wording {
            row: row.clone(),
            mandated: Vec::new(),
            text: [("en".to_owned(), text.to_owned())].into(),
        };
        ListRules {
            order: row.clone(),
            title: words(""),
            bold_title: false,
            compounds: row.clone(),
            may_merge: false,
            tail: None,
            last: None,
            no_casings: None,
            no_removed_water: None,
            cure_parts: None,
            shares: Some(ShareRules {
                row: row.clone(),
                meat: None,
                per_hundred: words("({} g per 100 g)"),
            }),
            not_spice: None,
            additives: BTreeMap::new(),
        }
    }
}
