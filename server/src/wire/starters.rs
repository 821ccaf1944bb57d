//! The starter list on the wire: products, cuts and cures of the trade to pick from. The file that holds it
//! (`server/starters/products.json`) is written with the very fields of a product and a recipe.

use super::Line;
use super::answers::RowRead;
use super::lists::{PartEntry, ProductEntry};
use domain::words::Profile;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::LazyLock;
use utoipa::ToSchema;

/// The file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StarterFile {
    /// Its groups, in their order.
    pub groups: Vec<StarterGroup>,
    /// Its entries.
    pub entries: Vec<StarterEntry>,
}

/// A group of it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StarterGroup {
    /// Its key: `pork`.
    pub key: String,
    /// Its name by language.
    pub name: BTreeMap<String, String>,
}

/// An entry of it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StarterEntry {
    /// The group that it is in.
    pub group: String,
    /// Its French name in Canada, where that is another one; common practice, no source.
    #[serde(default)]
    pub french_in_canada: Option<Line>,
    /// The product.
    pub product: ProductEntry,
    /// What it is made of, where it is.
    #[serde(default)]
    pub recipe: Vec<PartEntry>,
    /// The parts of which it takes more or less in a place, so that it meets the rows of that place.
    #[serde(default)]
    pub recipe_in: BTreeMap<String, Vec<PartEntry>>,
    /// What stands behind what it says.
    #[serde(default)]
    pub facts: Vec<StarterFact>,
}

impl StarterEntry {
    /// The product as it is called under a law.
    pub fn product_in(&self, profile: Profile) -> ProductEntry {
        let mut product = self.product.clone();
        if let (Profile::Ca, Some(name)) = (profile, &self.french_in_canada) {
            product.names.insert(Line("fr".to_owned()), name.clone());
        }
        product
    }

    /// What it is made of under a law.
    pub fn recipe_in(&self, profile: Profile) -> Vec<PartEntry> {
        let of_place = self.recipe_in.get(profile.as_str());
        let own = |part: &PartEntry| {
            let mut otherwise = of_place.into_iter().flatten();
            otherwise
                .find(|other| other.product.0 == part.product.0)
                .cloned()
        };
        let parts = self.recipe.iter();
        parts
            .map(|part| own(part).unwrap_or_else(|| part.clone()))
            .collect()
    }
}

/// What stands behind one thing that an entry says.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StarterFact {
    /// Which: `keep`, `cut`, `yield`, `cure`, `salting`, `release`, `strength`.
    pub about: String,
    /// Its rows, of whichever place. None: common practice, no source.
    pub rows: Vec<String>,
}

/// The list as it was shipped.
///
/// # Panics
/// The file does not parse: a test reads it.
pub fn shipped() -> &'static StarterFile {
    static FILE: LazyLock<StarterFile> = LazyLock::new(|| {
        let text = include_str!("../../starters/products.json");
        serde_json::from_str(text).expect("the starter list parses")
    });
    &FILE
}

/// The starter list.
#[derive(Debug, Serialize, ToSchema)]
pub struct StartersRead {
    /// Its groups.
    pub groups: Vec<StarterGroupRead>,
}

/// A group of the starter list.
#[derive(Debug, Serialize, ToSchema)]
pub struct StarterGroupRead {
    /// Its key.
    pub key: String,
    /// Its name in the caller's language.
    pub name: String,
    /// What is in it.
    pub entries: Vec<StarterRead>,
}

/// Something to pick: its product is sent to `POST /api/products` as it stands, its recipe to `POST /api/recipes`.
#[derive(Debug, Serialize, ToSchema)]
pub struct StarterRead {
    /// The product.
    pub product: ProductEntry,
    /// What it is made of; products of this list.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub recipe: Vec<PartEntry>,
    /// The carcasses of this list that it is cut of: for the page, which ticks them with it.
    #[serde(skip)]
    pub cut_of: Vec<String>,
    /// What stands behind what it says.
    pub facts: Vec<StarterFactRead>,
    /// Is a product of that code listed already?
    pub listed: bool,
}

/// What stands behind one thing that it says.
#[derive(Debug, Serialize, ToSchema)]
pub struct StarterFactRead {
    /// Which: `keep`, `cut`, `yield`, `cure`, `release`, `strength`.
    pub about: String,
    /// Is it common practice, without a source that the kitchen's place has?
    pub common_practice: bool,
    /// The rows of the kitchen's place and of the trade.
    pub rows: Vec<RowRead>,
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::cure::{Assessed, Cure, assess};
    use domain::grams::Grams;
    use domain::law::Laws;
    use domain::product::{InCure, Product};
    use domain::rows::Gravity;
    use domain::statement;
    use domain::words::{CurePart, Natural, ProductKind};
    use std::collections::BTreeSet;

    #[test]
    fn cuts_have_their_french_names_of_france_and_of_canada() {
        let entries = shipped().entries.iter();
        let mut belly = entries.filter(|one| one.product.code.0 == "pork-belly");
        let belly = belly.next().expect("it is listed");
        let french = |profile| {
            belly.product_in(profile).names[&Line("fr".to_owned())]
                .0
                .clone()
        };
        assert_eq!(french(Profile::Eu), "Poitrine de porc");
        assert_eq!(french(Profile::Ca), "Flanc de porc");
    }

    #[test]
    fn every_entry_is_in_a_group_and_made_of_what_is_in_the_list() {
        let file = shipped();
        let codes: BTreeSet<&str> = file
            .entries
            .iter()
            .map(|one| one.product.code.0.as_str())
            .collect();
        assert_eq!(codes.len(), file.entries.len(), "no code twice");
        assert!(codes.len() >= 80, "{}", codes.len());
        for one in &file.entries {
            let code = &one.product.code.0;
            assert!(
                file.groups.iter().any(|group| group.key == one.group),
                "{code}"
            );
            for language in ["en", "fr"] {
                let mut names = one.product.names.iter();
                assert!(
                    names.any(|(of, name)| of.0 == language && !name.0.is_empty()),
                    "{code}"
                );
            }
            for part in &one.recipe {
                assert!(
                    codes.contains(part.product.0.as_str()),
                    "{code}: {}",
                    part.product.0
                );
            }
        }
    }

    #[test]
    fn what_a_part_has_of_allergens_the_whole_has_too() {
        let file = shipped();
        let of = |code: &str| file.entries.iter().find(|one| one.product.code.0 == code);
        for one in &file.entries {
            let own: BTreeSet<_> = one.product.allergens.iter().map(|word| word.0).collect();
            for part in &one.recipe {
                let part = of(&part.product.0).expect("it is in the list");
                for allergen in &part.product.allergens {
                    assert!(
                        own.contains(&allergen.0),
                        "{}: {:?}",
                        one.product.code.0,
                        allergen.0
                    );
                }
            }
        }
    }

    #[test]
    fn what_a_name_tells_of_allergens_is_ticked() {
        let law = law::shipped().expect("the law is read");
        for one in &shipped().entries {
            let product = one.product.product();
            for (place, of) in &law.laws.places {
                let rules = &of.statements;
                let untold = statement::untold_by(rules, &product, &product.allergens).inside;
                assert_eq!(untold, BTreeSet::new(), "{place} {}", product.code);
            }
        }
    }

    #[test]
    fn every_row_is_one_of_the_law_or_the_trade() {
        let law = law::shipped().expect("the law is read");
        for one in &shipped().entries {
            for row in one.facts.iter().flat_map(|fact| &fact.rows) {
                let id = domain::rows::RowId::new(row);
                let mut places = law.laws.places.values();
                let known = law.trade_rows.get(&id).is_some()
                    || places.any(|place| place.rows.get(&id).is_some());
                assert!(known, "{}: {row}", one.product.code.0);
            }
        }
    }

    /// A starter cure as it is weighed in a place, and what the rules of that place say of it.
    fn judged(one: &StarterEntry, place: Profile, laws: &Laws) -> Option<Assessed> {
        let cured = one.product.product().cured.cure?;
        let parts = one.recipe_in(place);
        let sum = |fits: &dyn Fn(&Product) -> bool| -> Grams {
            let fitting = parts.iter().filter(|part| {
                let mut entries = shipped().entries.iter();
                let of = entries.find(|of| of.product.code.0 == part.product.0);
                of.is_some_and(|of| fits(&of.product.product()))
            });
            fitting.map(|part| part.grams.0).sum()
        };
        let is_meat = |of: &Product| of.species.is_some() && of.kind != ProductKind::Ingredient;
        let day = chrono::NaiveDate::from_ymd_opt(2026, 6, 26).expect("a day");
        let mut cure = Cure::new(cured.method, cured.class, sum(&is_meat), day);
        cure.heated = cured.heated;
        cure.water = sum(&|of| of.keeping.stable_as == Some(Natural::Water));
        cure.salt = sum(&|of| of.part.in_cure == Some(InCure::Other(CurePart::Salt)));
        cure.sugar = sum(&|of| of.part.in_cure == Some(InCure::Other(CurePart::Sugar)));
        cure.starter =
            !sum(&|of| of.part.in_cure == Some(InCure::Other(CurePart::Starter))).is_none_left();
        for part in &parts {
            let mut entries = shipped().entries.iter();
            let of = entries.find(|of| of.product.code.0 == part.product.0)?;
            let strength = of.product.product().curing_salt();
            cure.salts.extend(strength.map(|of| (of, part.grams.0)));
        }
        Some(assess(&cure, place, laws).expect("it can be judged"))
    }

    #[test]
    fn no_starter_cure_falls_outside_the_rows_of_its_place() {
        let law = law::shipped().expect("the law is read");
        let mut wrong = Vec::new();
        for one in &shipped().entries {
            for place in Profile::ALL.iter().copied() {
                let Some(judged) = judged(one, place, &law.laws) else {
                    continue;
                };
                // What is only to be known is said of every cure.
                for finding in judged
                    .findings
                    .iter()
                    .filter(|of| of.gravity > Gravity::Note)
                {
                    let code = &one.product.code.0;
                    wrong.push(format!(
                        "{code} in {place:?}: {:?} {:?} {:?}",
                        finding.gravity, finding.rows, finding.says
                    ));
                }
            }
        }
        assert_eq!(wrong.join("\n"), "");
    }

    #[test]
    fn dry_cured_bacon_has_what_its_place_asks() {
        let law = law::shipped().expect("the law is read");
        let mut entries = shipped().entries.iter();
        let bacon = entries.find(|one| one.product.code.0 == "belly-in-dry-cure");
        let bacon = bacon.expect("it is listed");
        let ppm = |place| {
            let judged = judged(bacon, place, &law.laws).expect("it is a cure");
            judged.nitrite_ppm.normalize().to_string()
        };
        // At least 120 by us-N16, at most 200 by us-N14; at most 120 by canada-eu-uk-4.3.
        assert_eq!(ppm(Profile::Us), "125");
        assert_eq!(ppm(Profile::Ca), "118.75");
    }
}
