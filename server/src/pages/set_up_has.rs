//! What the kitchen has of each step of setting up, and the animals that came in.

use super::animals::what;
use super::says::{PageSays, SetUpSays};
use super::spoken::{ABATTOIR, Words};
use crate::caller::Caller;
use crate::error::Result;
use crate::ids::shown_id;
use crate::lists::List;
use crate::read::entries;
use crate::read::names::Names;
use crate::read::seek::fold;
use domain::family::Listed;
use std::collections::BTreeMap;
use store::Conn;
use store::animals::{self, AnimalSearch};

/// What the kitchen has of a step.
pub struct Has {
    pub name: String,
    pub path: &'static str,
    pub what: String,
}

/// An animal that came in.
pub struct CameIn {
    /// Where it is shown.
    pub path: String,
    /// `Pig from Nettlebarrow Farm`.
    pub what: String,
    /// When it was killed.
    pub killed: String,
}

/// The most animals that are counted here: whoever has more has long set up.
const MOST_ANIMALS: i64 = 100;

/// The animals that came in, the newest kill first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn came_in(conn: &mut Conn, words: &Words, names: &Names) -> Result<Vec<CameIn>> {
    let rows = animals::list(conn, &AnimalSearch::default(), MOST_ANIMALS)?;
    let each = rows.iter().map(|(row, uid)| {
        let animal = row.source_animal(uid)?;
        Ok(CameIn {
            path: format!("/animals/{}", shown_id(&animal.uid)),
            what: words.say(PageSays::From {
                what: what(words, &animal),
                farm: names.farm(&animal.farm),
            }),
            killed: words.day(animal.killed_on),
        })
    });
    each.collect()
}

/// What stands at the foot of each step: what there is so far.
pub fn has(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    names: &Names,
    animals: &[CameIn],
) -> Result<Vec<Has>> {
    let standing = app.standing(conn)?;
    let known = app.people();
    let people = known.people.iter();
    let people = people.map(|one| words.person(&one.row.name));
    let printers = entries::all(conn, List::Printers)?.into_iter();
    let products = standing.lists.products.keys();
    let listed =
        |list: &BTreeMap<String, Listed>| list.values().map(|one| one.name.clone()).collect();
    let all: [(&str, &'static str, Vec<String>); 8] = [
        (
            "page-step-kitchen",
            "/set-up/kitchen",
            match standing.kitchen.is_set {
                true => vec![standing.kitchen.entry.name.0.clone()],
                false => Vec::new(),
            },
        ),
        (
            "page-step-places",
            "/lists/places",
            names.places.values().cloned().collect(),
        ),
        ("page-step-people", "/people", people.collect()),
        (
            "page-step-printer",
            "/lists/printers",
            printers.map(|one| one.name(words.lang())).collect(),
        ),
        (
            "page-step-products",
            "/lists/products",
            products.map(|code| names.product(code)).collect(),
        ),
        (
            "page-receive-farm",
            "/lists/farms",
            listed(&standing.lists.farms),
        ),
        (
            ABATTOIR[0],
            "/lists/abattoirs",
            listed(&standing.lists.abattoirs),
        ),
        (
            "page-set-up-animals",
            "/animals",
            animals.iter().map(|one| one.what.clone()).collect(),
        ),
    ];
    let shown = all.into_iter().filter(|(_, _, names)| !names.is_empty());
    Ok(shown
        .map(|(key, path, names)| Has {
            name: match key == ABATTOIR[0] {
                true => words.in_place(ABATTOIR, standing.kitchen.entry.profile.0),
                false => words.t(key),
            },
            path,
            what: match names.len() {
                1 => names.into_iter().next().unwrap_or_default(),
                count => words.say(SetUpSays::Has {
                    count,
                    names: some_of(words, names),
                }),
            },
        })
        .collect())
}

/// The first of them by name, and a sign that there are more.
fn some_of(words: &Words, mut names: Vec<String>) -> String {
    names.sort_by_key(|name| fold(name));
    if names.len() > MOST_NAMED {
        names.truncate(MOST_NAMED);
        names.push("…".to_owned());
    }
    words.apart(&names)
}

/// How many things are named at the foot.
const MOST_NAMED: usize = 12;
