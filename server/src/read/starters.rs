//! The starter list as this kitchen may pick from it: what is listed already, and the rows that its place has.

use crate::caller::Caller;
use crate::error::Result;
use crate::read::law;
use crate::wire::lists::ProductEntry;
use crate::wire::starters::{
    StarterFactRead, StarterGroupRead, StarterRead, StartersRead, shipped,
};
use domain::yields::CuttingStyle;
use store::Conn;

/// The list in a language.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, language: &str) -> Result<StartersRead> {
    let standing = app.standing(conn)?;
    let place = standing.kitchen.entry.profile.0;
    let file = shipped();
    let styles = &app.law.trade.yields.styles;
    let all: Vec<&ProductEntry> = file.entries.iter().map(|one| &one.product).collect();
    let groups = file.groups.iter().map(|group| {
        let entries = file.entries.iter().filter(|one| one.group == group.key);
        let name = group.name.get(language).or_else(|| group.name.get("en"));
        StarterGroupRead {
            key: group.key.clone(),
            name: name.cloned().unwrap_or_default(),
            entries: entries
                .map(|one| StarterRead {
                    listed: standing.lists.products.contains_key(&one.product.code.0),
                    facts: one
                        .facts
                        .iter()
                        .map(|fact| {
                            let rows = law::named(app, place, &fact.rows.join(", "), language);
                            StarterFactRead {
                                about: fact.about.clone(),
                                common_practice: rows.is_empty(),
                                rows,
                            }
                        })
                        .collect(),
                    cut_of: cut_of(styles, &all, &one.product),
                    product: one.product_in(place),
                    recipe: one.recipe_in(place),
                })
                .collect(),
        }
    });
    Ok(StartersRead {
        groups: groups.collect(),
    })
}

/// Some products of the list, as they are kept in an entry.
pub fn bodies(codes: &[&str]) -> Vec<serde_json::Value> {
    let entries = shipped().entries.iter();
    let named = entries.filter(|one| codes.contains(&one.product.code.0.as_str()));
    named
        .filter_map(|one| serde_json::to_value(&one.product).ok())
        .collect()
}

/// The carcasses of the list that a piece is cut of.
fn cut_of(styles: &[CuttingStyle], all: &[&ProductEntry], product: &ProductEntry) -> Vec<String> {
    let Some(cut) = &product.cut else {
        return Vec::new();
    };
    let gives = |carcass: &&&ProductEntry| {
        let style = styles.iter().find(|style| {
            let own = carcass.cut_style.as_ref();
            own.is_some_and(|own| own.0 == style.key)
        });
        let species = product.species.as_ref().map(|of| of.0);
        style.is_some_and(|style| {
            Some(style.species) == species && style.pieces.iter().any(|piece| piece.key == cut.0)
        })
    };
    let found = all.iter().filter(gives);
    found.map(|carcass| carcass.code.0.clone()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_piece_brings_the_carcass_that_it_is_cut_of() {
        let law = ::law::shipped().expect("the law is read");
        let styles = &law.trade.yields.styles;
        let entries = shipped().entries.iter();
        let all: Vec<&ProductEntry> = entries.map(|one| &one.product).collect();
        let of = |code: &str| {
            let product = all.iter().find(|one| one.code.0 == code).expect(code);
            cut_of(styles, &all, product)
        };
        assert_eq!(of("pork-belly"), ["pig-half"]);
        assert_eq!(of("lamb-leg"), ["lamb-carcass"]);
        assert_eq!(of("beef-round"), ["beef-hind"]);
        assert_eq!(of("beef-chuck"), ["beef-fore"]);
        // What is bought or made is cut of nothing.
        assert_eq!(of("salt"), Vec::<String>::new());
        assert_eq!(of("bacon-slab"), Vec::<String>::new());
    }
}
