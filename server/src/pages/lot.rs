//! The page of a lot: what it is, its label, its family, where it went.

use super::forward::Forward;
use super::history::{self, Line};
use super::origins::Origins;
use super::packs::{self, Run};
use super::says::PageSays;
use super::spoken::Words;
use super::{label, tree};
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
    words: Words,
    code: String,
    shown: String,
    name: String,
    note: Option<String>,
    voided: bool,
    product: String,
    use_by: String,
    stands: Option<String>,
    because: Vec<BecauseRead>,
    on_hand: String,
    /// Of how much.
    made: String,
    made_at: String,
    kind: String,
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
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read(&app, conn, &code))
    });
    super::page(speech, made.await)
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<LotPage> {
    let (reading, id) = Reading::of_code(app.app(), conn, code, EXTENT)?;
    let kitchen = reading.kitchen();
    let today = day_of(app.now(), kitchen.zone);
    let names = Names::of(reading.standing.clone(), app.speech(kitchen));
    let words = Words::of(&names);
    let lot = read::lot::of(app, &reading, id)?;
    let origins = origins(&reading.family, id);
    let origins = wire::answers::origins::read(&lot.code, &origins);
    let forward = wire::answers::descendants::of_family(&reading.family, &reading.standing.lists);
    let tree = tree::draw(&reading, id, &origins, &names);
    let name = names.product_of(&lot.names);
    let first = lot
        .packs
        .iter()
        .find(|pack| pack.left_grams.0.milligrams() > 0);
    let label = first.map(|first| {
        label::draw(app.app(), &reading, id, Some(first.pack), None)
            .map_err(|error| words.say(error.problem().detail))
    });
    let on_hand = lot.packs.iter();
    let on_hand = on_hand.filter(|pack| pack.left_grams.0.milligrams() > 0);
    let parts = parts(&words, on_hand.count());
    let last_day = lot.use_by.map(|day| day.0);
    Ok(LotPage {
        words,
        name: name.unwrap_or_else(|| lot.product.clone()),
        use_by: use_by(&words, &lot, last_day),
        stands: last_day.and_then(|day| words.standing(day, today)),
        on_hand: words.grams(lot.on_hand_grams.0),
        made: words.say(PageSays::OfMade { made: lot.grams.0 }),
        made_at: words.minute(&lot.made_at),
        kind: reading
            .family
            .get(id)
            .map_or_else(String::new, |of| words.raw_or_ready(&of.lot.product)),
        species: (!lot.species.is_empty()).then(|| words.listed("Species", &lot.species)),
        allergens: words.allergens(&lot.allergens),
        packs: packs::runs(&lot.packs, &names, today),
        history: history::lines(&words, &lot.steps),
        readings: history::readings(&words, &lot.readings, &kitchen.entry.currency.0),
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
fn parts(words: &Words, labels: usize) -> Vec<(String, String)> {
    if labels <= MOST {
        return vec![(words.t("page-lot-labels"), String::new())];
    }
    let part = |nth: usize| {
        let (from, to) = (nth * MOST + 1, labels.min((nth + 1) * MOST));
        let says = words.say(PageSays::Labels { from, to });
        (says, format!("?part={}", nth + 1))
    };
    (0..labels.div_ceil(MOST)).map(part).collect()
}

/// The last day; or what stands in its place.
fn use_by(words: &Words, lot: &LotRead, last_day: Option<NaiveDate>) -> String {
    let mut on_hand = lot
        .packs
        .iter()
        .filter(|pack| pack.left_grams.0.milligrams() > 0)
        .peekable();
    if on_hand.peek().is_none() {
        return words.t("page-nothing-left");
    }
    match (last_day, on_hand.find_map(|pack| pack.days_left)) {
        (Some(day), _) => words.day(day),
        (None, Some(days)) => words.once_thawed(days),
        (None, None) => words.t("page-no-date"),
    }
}
