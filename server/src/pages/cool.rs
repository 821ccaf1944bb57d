//! A cooling: readings with their hours, as a curve against what the place asks.

use super::bench::{self, DEGREES, Pick, Units};
use super::bench_says::WorkSays;
use super::heat_shown::{self, Clock, Rule};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::lot::brief;
use domain::right::Right;
use domain::words::State;
use serde_json::json;
use store::Conn;
use store::family::Extent;

#[derive(Template)]
#[template(path = "cool.html")]
struct CoolPage {
    words: Words,
    units: Units,
    heading: String,
    shown: String,
    lot: String,
    body: String,
    places: Vec<Pick>,
    rule: Rule,
    clock: Clock,
    sentence: String,
    may: bool,
}

/// The page of a cooling.
pub async fn page(asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::from_record(asking, move |app, conn| read(app, conn, &code)).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<CoolPage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::ALONE)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    let lot = &view.of.lot;
    let warm = brief::left(&lot.packs).filter(|pack| pack.now.state != State::Frozen);
    let warm: Vec<u32> = warm.map(|pack| pack.number).collect();
    let here = brief::places(&lot.packs).first().copied();
    let here = here.map(|place| reading.standing.lists.place_code(place).to_owned());
    let code = lot.code.to_string();
    let input = match lot.pack_count {
        1 => json!({ "lot": code }),
        _ => json!({ "lot": code, "packs": warm }),
    };
    let (name, shown) = (lot.product.name(words.lang()).to_owned(), lot.code.shown());
    Ok(CoolPage {
        heading: words.say(PageSays::ActOf {
            act: words.t("page-act-cool"),
            name: name.clone(),
        }),
        body: json!({ "kind": "chill", "inputs": [input] }).to_string(),
        places: bench::places(&names, here.as_deref()),
        rule: heat_shown::of_cooling(&words, reading.law),
        clock: Clock::of(app.now(), reading.kitchen().zone),
        sentence: words.say(WorkSays::Cool {
            name,
            lot: shown.clone(),
        }),
        may: app.who.may(Right::Work) && !warm.is_empty() && !lot.voided,
        units: Units::of(&words),
        lot: code,
        shown,
        words,
    })
}
