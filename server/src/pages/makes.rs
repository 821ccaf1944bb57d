//! What kind of step makes a product, and the ways to come by one of which nothing is on hand.

use super::way_back;
use domain::family::Lists;
use domain::product::Product;
use domain::words::{ProductKind, StepKind};

/// Of what several steps can make, the one that a kitchen means.
const MADE_BY: [StepKind; 6] = [
    StepKind::Cure,
    StepKind::Render,
    StepKind::Grind,
    StepKind::Cook,
    StepKind::Mix,
    StepKind::Smoke,
];

/// Does a step of that kind make such a product?
pub fn makes(kind: StepKind, product: &Product) -> bool {
    use ProductKind::*;
    match kind {
        StepKind::Cure => product.cured.cure.is_some(),
        StepKind::Grind => product.kind == Mixed,
        StepKind::Mix => matches!(product.kind, Mixed | Cooked | Ingredient),
        StepKind::Smoke => matches!(product.kind, Cured | Cooked),
        StepKind::Render => product.kind == Rendered,
        _ => matches!(product.kind, Cooked | Stock | Rendered),
    }
}

/// How to come by a product, the likelier way first: the address and the key of its words. What comes in at the door is
/// received, and leads back to where it was lacking; what never does, but has a recipe or comes off a carcass, is made
/// first.
pub fn ways(lists: &Lists, code: &str, comes_in: bool, back: &str) -> Vec<(String, &'static str)> {
    let bought = format!("/receive?of=bought&product={code}");
    let receive = (way_back::leading(&bought, back), "page-pot-receive");
    let Some(product) = lists.products.get(code) else {
        return vec![receive];
    };
    let by = MADE_BY.into_iter().find(|kind| makes(*kind, product));
    let made = match by.filter(|_| lists.recipes.contains_key(code)) {
        Some(by) => {
            let path = format!("/make/{}?product={code}", by.as_str());
            Some((path, "page-pot-make"))
        }
        None => comes_off(lists, product).then(|| ("/make".to_owned(), "page-pot-break-down")),
    };
    match (made, comes_in) {
        (None, _) => vec![receive],
        (Some(made), false) => vec![made, receive],
        (Some(made), true) => vec![receive, made],
    }
}

/// Is it a raw piece of an animal of which the house takes carcasses?
fn comes_off(lists: &Lists, product: &Product) -> bool {
    use ProductKind::{Carcass, Cut, Fat, Offal, Trim};
    let is_carcass = |of: &Product| of.kind == Carcass && of.species == product.species;
    product.raw
        && product.species.is_some()
        && matches!(product.kind, Cut | Fat | Offal | Trim)
        && lists.products.values().any(|of| is_carcass(of))
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::words::Species;
    use std::sync::Arc;

    fn of(kind: ProductKind) -> Product {
        Product {
            kind,
            ..Product::unnamed()
        }
    }

    #[test]
    fn a_step_makes_what_its_kind_can() {
        assert!(makes(StepKind::Cook, &of(ProductKind::Stock)));
        assert!(!makes(StepKind::Grind, &of(ProductKind::Cooked)));
        assert!(!makes(StepKind::Cure, &of(ProductKind::Cured)));
    }

    #[test]
    fn what_is_made_here_is_made_before_it_is_received() {
        let mut lists = Lists::default();
        let mut add = |code: &str, kind, species| {
            let product = Product {
                raw: true,
                species,
                ..of(kind)
            };
            lists.products.insert(code.to_owned(), Arc::new(product));
        };
        add("stock", ProductKind::Stock, None);
        add("salt", ProductKind::Ingredient, None);
        add("half", ProductKind::Carcass, Some(Species::Pig));
        add("trim", ProductKind::Trim, Some(Species::Pig));
        add("veal-trim", ProductKind::Trim, Some(Species::Cattle));
        lists.recipes.insert("stock".to_owned(), Vec::new());
        let ways = |code: &str, comes_in| {
            let ways = ways(&lists, code, comes_in, "/make/cook").into_iter();
            let paths: Vec<String> = ways.map(|(path, _)| path).collect();
            paths.join(" ")
        };
        let bought = |code: &str| format!("/receive?of=bought&product={code}&then=/make/cook");
        let made = "/make/cook?product=stock";
        assert_eq!(ways("stock", false), format!("{made} {}", bought("stock")));
        assert_eq!(ways("stock", true), format!("{} {made}", bought("stock")));
        assert_eq!(ways("salt", false), bought("salt"));
        assert_eq!(ways("trim", false), format!("/make {}", bought("trim")));
        // No carcass of it ever comes: it is bought.
        assert_eq!(ways("veal-trim", false), bought("veal-trim"));
    }
}
