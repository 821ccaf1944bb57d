//! Probes: what their last checks showed, and a check in melting ice or boiling water.

use super::bench::{DEGREES, Pick, Units};
use super::done::Done;
use super::place_act;
use super::place_says::{PlacePageSays, PlaceWorkSays};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::List;
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::heat::Bath;
use domain::measure::Temperature;
use domain::right::Right;
use domain::words::Quantity;
use rust_decimal::Decimal;
use serde::Deserialize;
use store::{Conn, entries};

#[derive(Template)]
#[template(path = "probes.html")]
struct ProbesPage {
    words: Words,
    units: Units,
    /// Each probe; `more` is what its last check showed.
    probes: Vec<Pick>,
    sentence: String,
    may: bool,
    done: Option<Done>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    did: Option<String>,
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<ProbesPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let mut probes = place_act::probes(conn)?;
    for probe in &mut probes {
        probe.more = last(conn, &words, &names, &probe.code)?;
    }
    Ok(ProbesPage {
        sentence: words.say(PlaceWorkSays::ProbeCheck {
            field: Units::of(&words).degrees,
        }),
        may: app.who.may(Right::Work) && !probes.is_empty(),
        done: Done::of(app, conn, &words, asked.did.as_deref(), "/probes")?,
        units: Units::of(&words),
        probes,
        words,
    })
}

fn last(conn: &mut Conn, words: &Words, names: &Names, code: &str) -> Result<String> {
    let entry = entries::get(conn, List::Probes.as_str(), code)?;
    let checks = match entry {
        Some(entry) => store::probes::checks(conn, entry.id)?,
        None => Vec::new(),
    };
    Ok(checks.last().map_or_else(
        || words.t("page-place-never-checked"),
        |check| {
            let degrees = Decimal::new(check.millionths, 6).normalize();
            words.say(PlacePageSays::Checked {
                at: words.minute(check.at, names.zone()),
                bath: words.t(match check.bath {
                    Bath::Ice => "page-place-ice",
                    Bath::Boiling => "page-place-boiling",
                }),
                read: match check.quantity {
                    Quantity::Fahrenheit => Temperature::fahrenheit(degrees),
                    _ => Temperature::celsius(degrees),
                },
            })
        },
    ))
}
