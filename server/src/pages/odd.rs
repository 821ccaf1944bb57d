//! Weights that nobody asks about when something comes in or is packed: beyond them a page asks whether the unit is right.
//! They are wide, for they are to find grams that were typed for kilograms and no unusual pig: common practice, no source.

use domain::grams::Grams;
use domain::product::Product;
use domain::words::{ProductKind, Species};

/// The least and the most in grams of what comes in of a product; of birds and rabbits a head.
pub fn usual(product: &Product) -> (i64, i64) {
    match (product.kind, product.species) {
        (ProductKind::Carcass, Some(species)) => carcass(species),
        (_, Some(_)) => (50, 500_000),
        (_, None) => (1, 120_000),
    }
}

/// From the quarter of a young one to the whole of the largest.
fn carcass(species: Species) -> (i64, i64) {
    use Species::*;
    match species {
        Pig | Boar => (2_000, 350_000),
        Cattle | Bison => (10_000, 800_000),
        Horse => (20_000, 600_000),
        Sheep | Goat => (1_500, 90_000),
        Deer => (2_000, 250_000),
        Rabbit => (300, 6_000),
        Turkey => (1_500, 25_000),
        Goose => (1_000, 12_000),
        Chicken | Duck => (250, 8_000),
        GuineaFowl | Pheasant => (250, 4_000),
        Quail | Partridge | Pigeon => (60, 1_200),
    }
}

/// Of so much that is there, fewer grams than this nobody means in one go.
pub fn least_of(left: Grams) -> i64 {
    left.milligrams() / 1_000 / 200
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn kilograms_typed_for_grams_are_beyond_what_is_usual() {
        for species in Species::ALL {
            let (least, most) = carcass(*species);
            // What is in the middle, in the wrong unit.
            let middle = least.midpoint(most);
            assert!(
                middle / 1_000 < least && middle * 1_000 > most,
                "{species:?}"
            );
        }
        assert_eq!(least_of(Grams::whole(41_500)), 207);
    }
}
