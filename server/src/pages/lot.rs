//! The page of a lot: what it is, its label, its family, where it went.

use super::forward::Forward;
use super::history::{self, Line};
use super::origins::Origins;
use super::packs::{self, Run};
use super::{format, label, tree};
use crate::blocking::blocking;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::label_facts::MOST;
use crate::read::names::Names;
use crate::read::{self, Reading};
use crate::wire;
use crate::wire::answers::{BecauseRead, LotRead};
use actix_web::{HttpResponse, web};
use askama::Template;
use chrono::NaiveDate;
use domain::family::origins;
use domain::moment::day_of;
use std::collections::BTreeMap;
use store::Conn;
use store::family::Extent;

#[derive(Template)]
#[template(path = "lot.html")]
struct LotPage {
    code: String,
    shown: String,
    name: String,
    note: Option<String>,
    voided: bool,
    product: String,
    use_by: String,
    stands: Option<&'static str>,
    because: Vec<BecauseRead>,
    on_hand: String,
    made: String,
    made_at: String,
    kind: &'static str,
    species: Option<String>,
    allergens: String,
    ingredients: BTreeMap<String, String>,
    packs: Vec<Run>,
    /// The parts that the labels of all packs on hand come in: words and query of each.
    parts: Vec<(String, String)>,
    /// The label of the first pack on hand, or why it cannot be made.
    label: Option<std::result::Result<String, String>>,
    origins: Origins,
    forward: Forward,
    /// The family for a wide screen and for a narrow one.
    tree: tree::Pictures,
    history: Vec<Line>,
    readings: Vec<history::Reading>,
}

/// What the page tells of: why, and what was made from it.
const EXTENT: Extent = Extent {
    descendants: true,
    ..Extent::REASONED
};

/// A lot.
pub async fn page(asking: Asking, code: web::Path<String>) -> HttpResponse {
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read(&app, conn, &code))
    });
    super::page(made.await)
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<LotPage> {
    let (reading, id) = Reading::of_code(app.app(), conn, code, EXTENT)?;
    let kitchen = reading.kitchen();
    let today = day_of(app.now(), kitchen.zone);
    let names = Names::of(reading.standing.clone(), kitchen.language());
    let lot = read::lot::of(app, &reading, id)?;
    let origins = origins(&reading.family, id);
    let origins = wire::answers::origins::read(&lot.code, &origins);
    let forward = wire::answers::descendants::of_family(&reading.family, &reading.standing.lists);
    let tree = tree::draw(&reading, id, &origins, &names);
    let name = lot.names.get(kitchen.language());
    let name = name.or_else(|| lot.names.values().next());
    let first = lot
        .packs
        .iter()
        .find(|pack| pack.left_grams.0.milligrams() > 0);
    let label = first.map(|first| {
        label::draw(app.app(), &reading, id, Some(first.pack), None)
            .map_err(|error| words::Speech::default().say(&error.problem().detail))
    });
    let on_hand = lot.packs.iter();
    let on_hand = on_hand.filter(|pack| pack.left_grams.0.milligrams() > 0);
    let parts = parts(on_hand.count());
    let last_day = lot.use_by.map(|day| day.0);
    Ok(LotPage {
        name: name.cloned().unwrap_or_else(|| lot.product.clone()),
        use_by: use_by(&lot, last_day),
        stands: last_day.and_then(|day| format::standing(day, today)),
        on_hand: lot.on_hand_grams.0.to_string(),
        made: lot.grams.0.to_string(),
        made_at: format::minute(&lot.made_at),
        kind: reading
            .family
            .get(id)
            .map_or("", |of| format::raw_or_ready(&of.lot.product)),
        species: (!lot.species.is_empty()).then(|| lot.species.join(", ").replace('-', " ")),
        allergens: format::allergens(&lot.allergens),
        packs: packs::runs(&lot.packs, &names, today),
        history: history::lines(&lot.steps),
        readings: history::readings(&lot.readings),
        origins: Origins::of(origins, &names),
        forward: Forward::of(forward, &names),
        parts,
        label,
        tree,
        code: lot.code,
        shown: lot.shown,
        note: lot.note,
        voided: lot.voided,
        product: lot.product,
        because: lot.use_by_because,
        ingredients: lot.ingredients,
    })
}

/// The words and the query of each part of so many labels.
fn parts(labels: usize) -> Vec<(String, String)> {
    if labels <= MOST {
        return vec![("Labels of all packs on hand (PDF)".into(), String::new())];
    }
    let part = |nth: usize| {
        let (from, to) = (nth * MOST + 1, labels.min((nth + 1) * MOST));
        let words = format!("Labels {from} to {to} of those on hand (PDF)");
        (words, format!("?part={}", nth + 1))
    };
    (0..labels.div_ceil(MOST)).map(part).collect()
}

/// The last day; or what stands in its place.
fn use_by(lot: &LotRead, last_day: Option<NaiveDate>) -> String {
    let mut on_hand = lot
        .packs
        .iter()
        .filter(|pack| pack.left_grams.0.milligrams() > 0)
        .peekable();
    if on_hand.peek().is_none() {
        return "Nothing left".into();
    }
    match (last_day, on_hand.find_map(|pack| pack.days_left)) {
        (Some(day), _) => format::day(day),
        (None, Some(days)) => packs::thawed(days),
        (None, None) => "No date".into(),
    }
}
