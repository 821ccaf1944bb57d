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
    use domain::statement;
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
}
