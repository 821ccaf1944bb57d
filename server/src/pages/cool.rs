//! A cooling: readings with their hours, as a curve against what the place asks.

use super::bench::{self, DEGREES, Pick, Units};
use super::bench_says::{BenchSays, WorkSays};
use super::done::Done;
use super::heat_shown::{self, Clock, Rule};
use super::managers::not_yours;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::cooling;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono_tz::Tz;
use domain::heat::{CoolingDue, CoreReading};
use domain::lot::brief;
use domain::measure::Scale;
use domain::moment::on_clock;
use domain::right::Right;
use domain::words::State;
use serde::Deserialize;
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
    /// What was read so far.
    so_far: Vec<Read>,
    /// How many those are: rows of the form go on after them.
    read_before: usize,
    /// What has to be reached by when; `left` is in minutes from now.
    due: Vec<Due>,
    done: Option<Done>,
    sentence: String,
    may: bool,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
}

/// No deed has that key.
const NO_DEED: i32 = 0;

/// A reading as it goes into the form again, and to the eye.
struct Read {
    nth: usize,
    clock: String,
    degrees: String,
    /// The field of its scale, and its sign.
    field: &'static str,
    sign: &'static str,
}

/// A stage of the cooling.
struct Due {
    says: String,
    is_met: bool,
    left: i64,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The deed that was just done.
    did: Option<String>,
}

/// The page of a cooling.
pub async fn page(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        read(app, conn, &code, asked.did.as_deref())
    })
    .await
}

fn so_far(readings: &[CoreReading], zone: Tz) -> Vec<Read> {
    let all = readings.iter().enumerate();
    let one = |(nth, read): (usize, &CoreReading)| {
        let (field, sign) = match read.core.scale() {
            Scale::Celsius => ("celsius", "°C"),
            Scale::Fahrenheit => ("fahrenheit", "°F"),
        };
        Read {
            nth,
            clock: read.at.with_timezone(&zone).format("%H:%M").to_string(),
            degrees: read.core.degrees().normalize().to_string(),
            field,
            sign,
        }
    };
    all.map(one).collect()
}

fn due(words: &Words, app: &Caller<'_>, stages: &[CoolingDue], zone: Tz) -> Vec<Due> {
    let one = |stage: &CoolingDue| {
        let (to, by) = (stage.to.into(), on_clock(stage.by, zone));
        Due {
            says: words.say(match stage.is_met {
                true => BenchSays::CoolMet { to },
                false => BenchSays::CoolBy { to, by },
            }),
            is_met: stage.is_met,
            left: (stage.by - app.now()).num_minutes(),
        }
    };
    stages.iter().map(one).collect()
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str, did: Option<&str>) -> Result<CoolPage> {
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
    let zone = reading.kitchen().zone;
    let made = store::lots::by_code(conn, &lot.code)?.map_or(0, |row| row.deed_id);
    let readings = cooling::of_lot(conn, lot, made)?;
    let stages = cooling::due(reading.law, &readings, lot);
    // What its cook was read by is no part of this log.
    let readings = cooling::of_lot(conn, lot, NO_DEED)?;
    let done = Done::of(app, conn, &words, did, &format!("/lots/{code}/cool"))?;
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
        clock: Clock::of(app.now(), zone),
        so_far: so_far(&readings, zone),
        read_before: readings.len(),
        due: due(&words, app, &stages, zone),
        done,
        sentence: words.say(WorkSays::Cool {
            name,
            lot: shown.clone(),
        }),
        not_yours: not_yours(app, &words, Right::Work),
        may: app.who.may(Right::Work) && !warm.is_empty() && !lot.voided,
        units: Units::of(&words),
        lot: code,
        shown,
        words,
    })
}
