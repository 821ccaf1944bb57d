//! Places: which there are, and one of them with what stands in it, its last readings and its acts.

use super::acts::Button;
use super::done::Done;
use super::place_says::PlacePageSays;
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::read::place::{self, Counted, PlaceView, StandingLot};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono::{DateTime, Utc};
use domain::lot::Pack;
use domain::lot::brief::earliest;
use domain::moment::day_of;
use domain::right::Right;
use domain::says::Arg;
use domain::today::TodaySays;
use domain::words::State;
use serde::Deserialize;
use store::Conn;

#[derive(Template)]
#[template(path = "places.html")]
struct PlacesPage {
    words: Words,
    places: Vec<Line>,
}

/// A place of the list.
struct Line {
    path: String,
    name: String,
    more: String,
}

/// All places.
pub async fn all(asking: Asking) -> HttpResponse {
    super::from_record(asking, |app, conn| {
        let names = Names::load(app, conn)?;
        let words = Words::of(&names);
        let standing = app.standing(conn)?;
        let counted = place::counted(app, conn)?;
        let line = |(code, name): (&str, &str)| {
            let key = standing.lists.place_key(code);
            Line {
                path: format!("/places/{code}"),
                name: name.to_owned(),
                more: match key.and_then(|key| counted.get(&key.0)) {
                    Some(counted) => words.0.arg(&told(counted)),
                    None => words.t("page-place-empty"),
                },
            }
        };
        Ok(PlacesPage {
            places: names.places_by_name().into_iter().map(line).collect(),
            words,
        })
    })
    .await
}

#[derive(Template)]
#[template(path = "place.html")]
struct PlacePage {
    words: Words,
    code: String,
    name: String,
    head: String,
    asks: Option<String>,
    /// That it is too warm there, or too cold, as it was read last.
    beyond: Option<String>,
    cleaned: Option<String>,
    worked: Vec<String>,
    warmth: Vec<(String, String)>,
    lots: Vec<Row>,
    /// That there are more than are shown.
    more: Option<String>,
    acts: Vec<Button>,
    is_read: bool,
    is_contact: bool,
    done: Option<Done>,
}

/// What stands there of a lot.
struct Row {
    code: String,
    shown: String,
    name: String,
    packs: String,
    grams: String,
    use_by: String,
    stands: Option<String>,
    stopped: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The deeds that were just done.
    did: Option<String>,
}

/// The most lots on the page of a place; the list of lots has them all, page by page.
const MOST: usize = 100;

/// One place.
pub async fn one(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked| {
        read(app, conn, &code, asked)
    })
    .await
}

fn read(app: &Caller<'_>, conn: &mut Conn, code: &str, asked: &Asked) -> Result<PlacePage> {
    let view = place::read(app, conn, code)?;
    let names = Names::of(view.standing.clone(), app.speech(&view.standing.kitchen));
    let words = Words::of(&names);
    let zone = names.zone();
    let today = day_of(app.now(), zone);
    let shown = view.lots.iter().take(MOST);
    let lots = shown.map(|lot| row(lot, &names, today));
    Ok(PlacePage {
        head: match view.lots.is_empty() {
            true => words.t("page-place-empty"),
            false => words.say(PlacePageSays::Head {
                lots: view.lots.len(),
                what: told(&view.counted()),
            }),
        },
        asks: asks(&words, &view),
        beyond: beyond(&words, &view),
        cleaned: cleaned(&words, &view, zone),
        worked: worked(&words, &view, zone),
        warmth: warmth(&words, &view, zone),
        lots: lots.collect(),
        more: view
            .lots
            .len()
            .checked_sub(MOST + 1)
            .map(|more| words.say(PlacePageSays::MoreLots { lots: more + 1 })),
        acts: acts(&words, app, &view, today),
        is_read: !view.listed.is_contact || view.listed.has_limits,
        is_contact: view.listed.is_contact,
        done: Done::of(
            app,
            conn,
            &words,
            asked.did.as_deref(),
            &format!("/places/{code}"),
        )?,
        code: view.code,
        name: view.listed.name,
        words,
    })
}

/// How cold it has to be.
pub(super) fn asks(words: &Words, view: &PlaceView) -> Option<String> {
    let limits = view.listed.limits.clone();
    (!limits.is_empty()).then(|| {
        words.say(PlacePageSays::Asks {
            limits: Arg::Sentences(limits),
        })
    })
}

/// The limit that its last reading broke, where that matters.
pub(super) fn beyond(words: &Words, view: &PlaceView) -> Option<String> {
    let broken = view.beyond.as_ref()?;
    let suffers = |lot: &StandingLot| {
        let mut packs = lot.packs.iter();
        packs.any(|pack| matches!(pack.now.state, State::Chilled | State::Frozen))
    };
    (broken.is_own || view.lots.iter().any(suffers)).then(|| {
        words.say(TodaySays::Beyond {
            place: view.listed.name.clone(),
            read: broken.read,
            limit: broken.limit.clone(),
        })
    })
}

/// When it was cleaned down last.
fn cleaned(words: &Words, view: &PlaceView, zone: chrono_tz::Tz) -> Option<String> {
    view.cleaned.as_ref().map(|(at, by)| {
        words.say(PlacePageSays::Cleaned {
            at: words.minute(*at, zone),
            by: by.clone(),
        })
    })
}

/// What was worked there since.
pub(super) fn worked(words: &Words, view: &PlaceView, zone: chrono_tz::Tz) -> Vec<String> {
    let at = |at: DateTime<Utc>| words.minute(at, zone);
    let (raw, ready) = view.worked;
    let raw = raw.map(|raw| words.say(PlacePageSays::RawSince { at: at(raw) }));
    let ready = ready.map(|ready| words.say(PlacePageSays::ReadySince { at: at(ready) }));
    raw.into_iter().chain(ready).collect()
}

/// How warm it was: when, and how warm.
pub(super) fn warmth(
    words: &Words,
    view: &PlaceView,
    zone: chrono_tz::Tz,
) -> Vec<(String, String)> {
    let told = |(at, read): &(DateTime<Utc>, domain::measure::Temperature)| {
        let degrees = words.say(PlacePageSays::Degrees { at: *read });
        (words.minute(*at, zone), degrees)
    };
    view.warmth.iter().map(told).collect()
}

fn row(of: &StandingLot, names: &Names, today: chrono::NaiveDate) -> Row {
    let words = Words::of(names);
    let use_by = earliest(&of.packs);
    Row {
        code: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        name: names.product(&of.lot.product),
        packs: {
            let mut counted = Counted::default();
            counted.add(of.stands_as, of.packs.len());
            words.0.arg(&told(&counted))
        },
        grams: words.grams(of.grams()),
        use_by: use_by.map_or_else(|| super::spoken::NONE.to_owned(), |day| words.day(day)),
        stands: use_by.and_then(|day| words.standing(day, today)),
        stopped: of.stopped,
    }
}

/// How many stand there, each called what it is.
fn told(counted: &Counted) -> Arg {
    let Counted {
        carcasses,
        pieces,
        packs,
    } = *counted;
    let parts = [
        (carcasses > 0).then(|| PlacePageSays::Carcasses { carcasses }.into()),
        (pieces > 0).then(|| PlacePageSays::Pieces { pieces }.into()),
        (packs > 0).then(|| PageSays::Packs { packs }.into()),
    ];
    Arg::All(parts.into_iter().flatten().collect())
}

fn is_frozen(pack: &Pack) -> bool {
    pack.now.state == State::Frozen
}

/// What may be done over a place, the likeliest first.
fn acts(
    words: &Words,
    app: &Caller<'_>,
    view: &PlaceView,
    today: chrono::NaiveDate,
) -> Vec<Button> {
    let here = |act: &str| format!("/places/{}/{act}", view.code);
    let mut ways: Vec<(&str, String)> = Vec::new();
    let any = !view.lots.is_empty();
    if app.who.may(Right::Work) {
        if view.listed.is_contact {
            ways.push(("page-act-clean-down", here("clean-down")));
        } else {
            ways.push(("page-act-temperature", here("temperature")));
        }
        let good = |lot: &StandingLot| lot.packs.iter().any(|pack| lot.is_good(pack, today));
        if (view.beyond.is_some() || view.failed) && view.lots.iter().any(good) {
            ways.insert(0, ("page-act-move-good", here("move?good=yes")));
        }
        if any {
            ways.push(("page-act-moves", here("move")));
            let frozen = |lot: &StandingLot| lot.packs.iter().any(is_frozen);
            if view.lots.iter().any(frozen) {
                ways.push(("page-act-thaws", here("thaw")));
            }
            ways.push(("page-act-count-place", here("count")));
        }
        ways.push(("page-act-adopt", format!("/adopt?place={}", view.code)));
    }
    if any && app.who.may(Right::Sell) {
        ways.push(("page-act-discard", here("discard")));
    }
    if any && !view.listed.is_contact && app.who.may(Right::Work) {
        ways.push(("page-act-failed", here("failed")));
    }
    let buttons = ways
        .into_iter()
        .enumerate()
        .map(|(nth, (name, path))| Button::plain(words, name, path, nth == 0));
    buttons.collect()
}
