//! Several packs of a place at once: moved, thawed, thrown away, or counted against the record. Packs are chosen by their
//! numbers; each lot is one call of the API.

use super::bench::{self, Pick, Units};
use super::place_says::{PlacePageSays, PlaceWorkSays};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::read::place::{self, StandingLot};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono::NaiveDate;
use domain::lot::Pack;
use domain::moment::day_of;
use domain::right::Right;
use domain::words::State;
use serde::Deserialize;
use serde_json::json;
use store::Conn;

/// What is done with several packs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Batch {
    /// They go elsewhere.
    Move,
    /// They go elsewhere to thaw.
    Thaw,
    /// They are thrown away.
    Discard,
    /// They are there, or they are missing.
    Count,
}

#[derive(Template)]
#[template(path = "place-packs.html")]
struct PlacePacksPage {
    words: Words,
    units: Units,
    batch: Batch,
    heading: String,
    code: String,
    name: String,
    call: &'static str,
    body: String,
    lots: Vec<Row>,
    /// How many packs more there are than are shown.
    more: Option<String>,
    places: Vec<Pick>,
    /// The reasons, and which one is known already.
    whys: Vec<(String, bool)>,
    /// Are all of them chosen before anybody taps?
    chosen: bool,
    sentence: String,
    button: String,
    may: bool,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    grams: String,
    packs: Vec<PackChoice>,
}

struct PackChoice {
    number: u32,
    /// What is left in it, to the eye.
    says: String,
    /// The same in grams, as the API takes it.
    grams: String,
}

/// The most packs on one page.
const MOST: usize = 400;

/// The most lots of which they are: a page is read, and comes over the wire.
const MOST_LOTS: usize = 150;

/// The page of moving.
pub async fn moves(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    asked(request, asking, code, Batch::Move).await
}

/// The page of thawing.
pub async fn thaws(asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(asking, code, Batch::Thaw).await
}

/// The page of throwing away.
pub async fn discards(
    request: HttpRequest,
    asking: Asking,
    code: web::Path<String>,
) -> HttpResponse {
    asked(request, asking, code, Batch::Discard).await
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Any word: only what is stopped.
    stopped: Option<String>,
    /// Any word: only what is still good, and all of it is chosen.
    good: Option<String>,
}

async fn asked(
    request: HttpRequest,
    asking: Asking,
    code: web::Path<String>,
    batch: Batch,
) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        let of = match (&asked.stopped, &asked.good) {
            (Some(_), _) => Of::Stopped,
            (None, Some(_)) => Of::Good,
            (None, None) => Of::All,
        };
        read(app, conn, &code, batch, of)
    })
    .await
}

/// Which packs are offered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Of {
    /// All that stand there.
    All,
    /// What is stopped, and not held.
    Stopped,
    /// What is still good.
    Good,
}

/// The page of counting.
pub async fn count(asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(asking, code, Batch::Count).await
}

async fn page(asking: Asking, code: web::Path<String>, batch: Batch) -> HttpResponse {
    super::from_record(asking, move |app, conn| {
        read(app, conn, &code, batch, Of::All)
    })
    .await
}

fn read(
    app: &Caller<'_>,
    conn: &mut Conn,
    code: &str,
    batch: Batch,
    of: Of,
) -> Result<PlacePacksPage> {
    let mut view = place::read(app, conn, code)?;
    let today = day_of(app.now(), view.standing.kitchen.zone);
    match of {
        Of::All => {}
        Of::Stopped => {
            view.lots.retain(|lot| !lot.held);
            keep(&mut view, |lot, pack| lot.is_stopped(pack));
        }
        Of::Good => keep(&mut view, |lot, pack| lot.is_good(pack, today)),
    }
    if batch == Batch::Thaw {
        keep(&mut view, |_, pack| pack.now.state == State::Frozen);
    }
    let names = Names::of(view.standing.clone(), app.speech(&view.standing.kitchen));
    let words = Words::of(&names);
    let name = view.listed.name.clone();
    let place = name.clone();
    let (act, says) = match batch {
        Batch::Move if of == Of::Good => ("page-act-move-good", PlaceWorkSays::Moves { place }),
        Batch::Move => ("page-act-moves", PlaceWorkSays::Moves { place }),
        Batch::Thaw => ("page-act-thaws", PlaceWorkSays::Thaws { place }),
        Batch::Discard => ("page-act-discard", PlaceWorkSays::Discards { place }),
        Batch::Count => ("page-act-count-place", PlaceWorkSays::CountPlace { place }),
    };
    let mut left = MOST;
    let mut lots = Vec::with_capacity(view.lots.len().min(MOST_LOTS));
    for lot in view.lots.iter().take(MOST_LOTS) {
        if lot.packs.len() > left {
            break;
        }
        left -= lot.packs.len();
        lots.push(row(lot, &names));
    }
    let all = view.packs();
    let shown: usize = lots.iter().map(|lot| lot.packs.len()).sum();
    let elsewhere = names.places.keys().filter(|place| *place != code).count() > 0;
    let right = match batch {
        Batch::Discard => Right::Sell,
        _ => Right::Work,
    };
    Ok(PlacePacksPage {
        units: Units::of(&words),
        heading: words.say(PageSays::ActOf {
            act: words.t(act),
            name: name.clone(),
        }),
        call: match batch {
            Batch::Move | Batch::Thaw => "/api/moves",
            Batch::Discard => "/api/departures",
            Batch::Count => "/api/counts",
        },
        body: match batch {
            Batch::Move => json!({}),
            Batch::Thaw => json!({ "state": "chilled" }),
            Batch::Discard => json!({ "kind": "discard" }),
            Batch::Count => json!({ "place": view.code }),
        }
        .to_string(),
        more: (shown < all).then(|| words.say(PlacePageSays::More { packs: all - shown })),
        places: match batch {
            Batch::Move | Batch::Thaw => {
                let mut places = bench::places(&names, None);
                places.retain(|place| place.code != view.code);
                places
            }
            _ => Vec::new(),
        },
        whys: match batch {
            Batch::Discard => whys(&words, is_past(&view, today)),
            _ => Vec::new(),
        },
        chosen: of == Of::Good,
        sentence: words.say(says),
        button: words.t(act),
        may: app.who.may(right)
            && (batch == Batch::Count || !lots.is_empty())
            && (!matches!(batch, Batch::Move | Batch::Thaw) || elsewhere),
        lots,
        code: view.code,
        name,
        batch,
        words,
    })
}

/// Is all that stands there past its day?
fn is_past(view: &place::PlaceView, today: NaiveDate) -> bool {
    let packs = view.lots.iter().flat_map(|lot| &lot.packs);
    let mut days = packs.map(|pack| pack.now.use_by).peekable();
    days.peek().is_some() && days.all(|day| day.is_some_and(|day| day < today))
}

/// The reasons for throwing away: that it is past its day is known only where all of it is.
fn whys(words: &Words, is_past: bool) -> Vec<(String, bool)> {
    let keys = super::act_words::WHYS.into_iter();
    keys.map(|key| (words.t(key), is_past && key == "page-why-past"))
        .collect()
}

/// Of what stands there, some packs.
fn keep(view: &mut place::PlaceView, which: impl Fn(&StandingLot, &Pack) -> bool) {
    for lot in &mut view.lots {
        let kept: Vec<bool> = lot.packs.iter().map(|pack| which(lot, pack)).collect();
        let mut kept = kept.into_iter();
        lot.packs.retain(|_| kept.next().unwrap_or(false));
    }
    view.lots.retain(|lot| !lot.packs.is_empty());
}

fn row(of: &StandingLot, names: &Names) -> Row {
    let words = Words::of(names);
    let pack = |pack: &Pack| PackChoice {
        number: pack.number,
        says: words.grams(pack.now.left),
        grams: bench::in_grams(pack.now.left),
    };
    Row {
        code: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        name: names.product(&of.lot.product),
        grams: words.grams(of.grams()),
        packs: of.packs.iter().map(pack).collect(),
    }
}
