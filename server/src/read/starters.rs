//! The starter list as this kitchen may pick from it: what is listed already, and the rows that its place has.

use crate::caller::Caller;
use crate::error::Result;
use crate::read::law;
use crate::wire::starters::{
    StarterFactRead, StarterGroupRead, StarterRead, StartersRead, shipped,
};
use store::Conn;

/// The list in a language.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn read(app: &Caller<'_>, conn: &mut Conn, language: &str) -> Result<StartersRead> {
    let standing = app.standing(conn)?;
    let place = standing.kitchen.entry.profile.0;
    let file = shipped();
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
