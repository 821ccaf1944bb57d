//! One act over a place: cleaned down, its warmth read, or that it did not stay cold. Each is one call of the API.

use super::bench::{self, DEGREES, Pick, Units};
use super::heat_shown::Clock;
use super::managers::not_yours;
use super::place_says::{PlacePageSays, PlaceWorkSays};
use super::places;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::{Error, Result};
use crate::lists::List;
use crate::read::names::Names;
use crate::read::place;
use actix_web::{HttpResponse, web};
use askama::Template;
use domain::right::Right;
use serde_json::json;
use store::{Conn, entries};

/// An act over a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum PlaceAct {
    /// It is cleaned down.
    CleanDown,
    /// How warm it is.
    Temperature,
    /// It did not stay cold.
    Failed,
}

#[derive(Template)]
#[template(path = "place-act.html")]
struct PlaceActPage {
    words: Words,
    units: Units,
    act: PlaceAct,
    heading: String,
    code: String,
    name: String,
    /// What is known that bears on it.
    told: Vec<String>,
    warmth: Vec<(String, String)>,
    probes: Vec<Pick>,
    call: &'static str,
    body: String,
    clock: Clock,
    /// When it was last known to be cold, if the record knows.
    from: String,
    sentence: String,
    button: String,
    may: bool,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
}

/// The page of cleaning it down.
pub async fn clean_down(asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(asking, code, PlaceAct::CleanDown).await
}

/// The page of its warmth.
pub async fn temperature(asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(asking, code, PlaceAct::Temperature).await
}

/// The page of a place that did not stay cold.
pub async fn failed(asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(asking, code, PlaceAct::Failed).await
}

async fn page(asking: Asking, code: web::Path<String>, act: PlaceAct) -> HttpResponse {
    super::from_record(asking, move |app, conn| read(app, conn, &code, act)).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str, act: PlaceAct) -> Result<PlaceActPage> {
    let view = place::read(app, conn, code)?;
    if act == PlaceAct::CleanDown && !view.listed.is_contact {
        let path = format!("/places/{code}/clean-down");
        return Err(Error::not_found(PageSays::NothingHere { path }));
    }
    let names = Names::of(view.standing.clone(), app.speech(&view.standing.kitchen));
    let words = Words::of(&names);
    let zone = names.zone();
    let name = view.listed.name.clone();
    let title = words.t(match act {
        PlaceAct::CleanDown => "page-act-clean-down",
        PlaceAct::Temperature => "page-act-temperature",
        PlaceAct::Failed => "page-act-failed",
    });
    let told = match act {
        PlaceAct::CleanDown => {
            let cleaned = view.cleaned.as_ref().map(|(at, by)| {
                words.say(PlacePageSays::CleanedLast {
                    at: words.minute(*at, zone),
                    by: by.clone(),
                })
            });
            let since = places::worked(&words, &view, zone);
            cleaned.into_iter().chain(since).collect()
        }
        PlaceAct::Temperature => {
            let beyond = places::beyond(&words, &view).map(|says| format!("{says}."));
            beyond
                .into_iter()
                .chain(places::asks(&words, &view))
                .collect()
        }
        PlaceAct::Failed => vec![
            words.t("page-place-failed-how"),
            match view.cold {
                Some((at, read)) => words.say(PlacePageSays::ColdLast {
                    read,
                    at: words.minute(at, zone),
                }),
                None => words.t("page-place-cold-unknown"),
            },
        ],
    };
    let lots = view.lots.len();
    let says = match act {
        PlaceAct::CleanDown => PlaceWorkSays::Clean {
            place: name.clone(),
        },
        PlaceAct::Temperature => PlaceWorkSays::Temperature {
            place: name.clone(),
            field: Units::of(&words).degrees,
        },
        PlaceAct::Failed => PlaceWorkSays::Failed {
            place: name.clone(),
            lots,
        },
    };
    // Nobody confirms an hour that nobody knows: it is the last good reading's, or it is asked.
    let from = view.cold.map(|(at, _)| at.with_timezone(&zone));
    Ok(PlaceActPage {
        heading: words.say(PageSays::ActOf {
            act: title.clone(),
            name: name.clone(),
        }),
        told,
        warmth: match act {
            PlaceAct::CleanDown => Vec::new(),
            _ => places::warmth(&words, &view, zone),
        },
        probes: match act {
            PlaceAct::Temperature => probes(conn)?,
            _ => Vec::new(),
        },
        call: match act {
            PlaceAct::CleanDown => "/api/clean-downs",
            PlaceAct::Temperature => "/api/readings",
            PlaceAct::Failed => "/api/place-failures",
        },
        body: json!({ "place": view.code }).to_string(),
        clock: Clock::of(app.now(), zone),
        from: from.map_or_else(String::new, |from| {
            from.format("%Y-%m-%dT%H:%M").to_string()
        }),
        sentence: words.say(says),
        button: match act {
            PlaceAct::CleanDown => title,
            PlaceAct::Temperature => words.t("page-place-keep-reading"),
            PlaceAct::Failed => words.t("page-place-failed-do"),
        },
        not_yours: not_yours(app, &words, Right::Work),
        may: app.who.may(Right::Work),
        units: Units::of(&words),
        code: view.code,
        name,
        act,
        words,
    })
}

/// The probes of the list; the only one is chosen.
pub(super) fn probes(conn: &mut Conn) -> Result<Vec<Pick>> {
    let rows = entries::all(conn, List::Probes.as_str())?;
    let only = rows.len() == 1;
    let named = |body: &str| {
        let entry: serde_json::Value = serde_json::from_str(body).unwrap_or_default();
        entry["name"].as_str().map(str::to_owned)
    };
    let picks = rows.iter().map(|row| Pick {
        chosen: only,
        ..bench::Pick::of(
            &row.code,
            named(&row.body).unwrap_or_else(|| row.code.clone()),
        )
    });
    Ok(picks.collect())
}
