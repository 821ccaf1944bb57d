//! The places that are offered while a kitchen is set up.

use super::spoken::Words;
use domain::family::Lists;
use domain::words::PlaceKind;
use serde_json::json;

/// A place to be ticked.
pub struct PlaceLine {
    /// What it is called.
    pub name: String,
    /// What sort it is.
    pub kind: String,
    /// Is it ticked from the start?
    pub ticked: bool,
    /// The calls that it becomes.
    pub calls: String,
}

/// Those that the kitchen has not yet.
pub fn places(words: &Words, lists: &Lists) -> Vec<PlaceLine> {
    let usual = PLACES.iter();
    let usual = usual.filter(|(code, ..)| !lists.places.contains_key(*code));
    usual.map(|usual| place(words, *usual)).collect()
}

/// The places that most kitchens have: code, kind, name, the step of the scale there, ticked from the start.
type Usual = (&'static str, PlaceKind, &'static str, Option<f64>, bool);
const PLACES: [Usual; 14] = [
    ("rail", PlaceKind::Storage, "page-place-rail", None, true),
    (
        "walk-in",
        PlaceKind::Storage,
        "page-place-walk-in",
        None,
        true,
    ),
    (
        "cooked",
        PlaceKind::Storage,
        "page-place-cooked",
        None,
        true,
    ),
    (
        "freezer",
        PlaceKind::Storage,
        "page-place-freezer",
        None,
        true,
    ),
    (
        "dry-store",
        PlaceKind::Storage,
        "page-place-dry-store",
        None,
        true,
    ),
    (
        "salt-room",
        PlaceKind::Storage,
        "page-place-salt-room",
        None,
        false,
    ),
    (
        "cure-room",
        PlaceKind::Storage,
        "page-place-cure-room",
        None,
        true,
    ),
    (
        "bench",
        PlaceKind::Contact,
        "page-place-bench",
        Some(1.0),
        true,
    ),
    (
        "cure-table",
        PlaceKind::Contact,
        "page-place-cure-table",
        Some(0.1),
        true,
    ),
    (
        "grinder",
        PlaceKind::Contact,
        "page-place-grinder",
        None,
        true,
    ),
    (
        "slicer",
        PlaceKind::Contact,
        "page-place-slicer",
        None,
        false,
    ),
    ("stove", PlaceKind::Heat, "page-place-stove", None, true),
    ("smoker", PlaceKind::Heat, "page-place-smoker", None, false),
    ("case", PlaceKind::Counter, "page-place-case", None, true),
];

fn place(words: &Words, (code, kind, key, scale, ticked): Usual) -> PlaceLine {
    let name = words.t(key);
    let mut body = json!({ "code": code, "name": name, "kind": kind.as_str() });
    if let Some(grams) = scale {
        body["scale_grams"] = json!(grams);
    }
    PlaceLine {
        name,
        kind: words.say(kind.says()),
        ticked,
        calls: json!([["/api/places", body]]).to_string(),
    }
}
