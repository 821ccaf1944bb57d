//! A piece of the cure room under the hand: on the scale, turned or hung, released with a signature.

use super::bench::{self, DEGREES, Pick, Units, WEIGHT};
use super::bench_says::{BenchSays, WorkSays};
use super::says::PageSays;
use super::spoken::Words;
use super::{curve, see_other, trouble};
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use crate::read::seek::{self, SeekQuery, Thing};
use crate::rooms::blocking;
use crate::routes::any_query;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::cure_room::{Task, loss};
use domain::family::{PieceView, room};
use domain::grams::Grams;
use domain::lot::{Lot, brief};
use domain::moment::day_of;
use domain::right::Right;
use domain::says::Arg;
use domain::words::StepKind;
use rust_decimal::Decimal;
use serde::Deserialize;
use serde_json::json;
use store::Conn;
use store::family::Extent;

/// What is done with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PieceAct {
    /// It is weighed.
    Weigh,
    /// It is turned, rinsed, left to equalise or hung: it stays the lot that it is.
    Tend,
    /// It comes down, signed for.
    Release,
}

impl PieceAct {
    fn name(self) -> &'static str {
        match self {
            PieceAct::Weigh => "page-act-weigh",
            PieceAct::Tend => "page-act-tend",
            PieceAct::Release => "page-act-release",
        }
    }

    fn right(self) -> Right {
        match self {
            PieceAct::Release => Right::Release,
            _ => Right::Work,
        }
    }
}

#[derive(Template)]
#[template(path = "piece.html")]
struct PiecePage {
    words: Words,
    units: Units,
    act: PieceAct,
    title: String,
    heading: String,
    shown: String,
    lot: String,
    tag: String,
    /// Where it is on its way, its day, its loss.
    told: Option<String>,
    /// What it weighed, and what is expected.
    scale: Vec<String>,
    forecast: String,
    alarms: Vec<String>,
    /// What is not met yet.
    missing: Vec<String>,
    /// Is an alarm all that stands in the way?
    to_sign: bool,
    /// Who signs for the alarm, where that is not done on this page.
    signs: Option<Signs>,
    picture: String,
    body: String,
    /// Green weight in grams: what the loss is worked out of.
    green: String,
    /// The deeds that tend it, and where it may be.
    tends: Vec<Pick>,
    places: Vec<Pick>,
    sentences: Vec<(&'static str, String)>,
    then: String,
    may: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Where the page goes when it is done: the cure room, else the lot.
    from: Option<String>,
    /// Which way it is tended.
    #[serde(rename = "as")]
    tend: Option<String>,
}

/// It is weighed.
pub async fn weigh(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(request, asking, code.into_inner(), PieceAct::Weigh).await
}

/// It is tended.
pub async fn tend(request: HttpRequest, asking: Asking, code: web::Path<String>) -> HttpResponse {
    page(request, asking, code.into_inner(), PieceAct::Tend).await
}

/// It is released.
pub async fn release(
    request: HttpRequest,
    asking: Asking,
    code: web::Path<String>,
) -> HttpResponse {
    page(request, asking, code.into_inner(), PieceAct::Release).await
}

/// A tag was scanned to weigh its piece: on to the scale, or to what else it may be.
pub async fn by_tag(request: HttpRequest, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let asked: SeekQuery = match any_query(&request) {
        Ok(asked) => asked,
        Err(error) => return trouble(speech, &error),
    };
    let said: String = asked.q.unwrap_or_default().trim().to_owned();
    let found = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let found = seek::seek(&app, conn, &said)?;
            Ok::<_, crate::error::Error>(match found.only() {
                Some(Thing::Lot(lot, _)) => format!("/lots/{}/weigh?from=cure-room", lot.code),
                _ => format!("/find?q={}", super::find::encoded(&said)),
            })
        })
    });
    match found.await {
        Ok(path) => see_other(&path),
        Err(error) => trouble(speech, &error),
    }
}

async fn page(request: HttpRequest, asking: Asking, code: String, act: PieceAct) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked| {
        read(app, conn, &code, act, asked)
    })
    .await
}

fn read(
    app: &Caller<'_>,
    conn: &mut Conn,
    code: &str,
    act: PieceAct,
    asked: &Asked,
) -> Result<PiecePage> {
    let (reading, id) = LoadedFamily::of_code(app.app(), conn, code, Extent::ANCESTORS)?;
    let names = Names::of(reading.standing.clone(), app.speech(reading.kitchen()));
    let words = Words::of(&names);
    let view = reading.lot_view(id)?;
    let lot = &view.of.lot;
    let zone = reading.kitchen().zone;
    let today = day_of(app.now(), zone);
    let rules = &app.law.trade.cure_room;
    let piece = room(&reading.family, [id], zone, today, rules).pop();
    let name = lot.product.name(words.lang()).to_owned();
    let tag = piece.as_ref().map(|view| view.piece.tag.clone());
    let tag = tag.unwrap_or_else(|| lot.code.shown());
    let code = lot.code.to_string();
    let here = brief::places(&lot.packs).first().copied();
    let here = here.map(|place| reading.standing.lists.place_code(place).to_owned());
    let told = piece.as_ref();
    let only_alarm = |view: &PieceView| view.alarm.is_some() && view.release.unmet.len() == 1;
    let to_sign = told.is_some_and(only_alarm);
    let ready = told.is_some_and(PieceView::may_be_released) || to_sign;
    let there = lot.pack_count == 1 && brief::left(&lot.packs).next().is_some();
    let may = app.who.may(act.right()) && there && !lot.voided;
    Ok(PiecePage {
        title: words.t(act.name()),
        heading: words.say(PageSays::ActOf {
            act: words.t(act.name()),
            name: words.say(BenchSays::OfTag {
                tag: tag.clone(),
                name: name.clone(),
            }),
        }),
        told: told.map(|view| super::cure_room::told(&words, view)),
        scale: told.map(|view| scale(&words, view)).unwrap_or_default(),
        forecast: told.map_or_else(String::new, |view| words.say(view.forecast_says())),
        alarms: told
            .map(|view| super::cure_room::alarms(&words, view))
            .unwrap_or_default(),
        missing: match act {
            PieceAct::Release if !ready => missing(&words, told),
            _ => Vec::new(),
        },
        to_sign: to_sign && act == PieceAct::Release,
        signs: told
            .filter(|view| view.alarm.is_some() && act != PieceAct::Release)
            .map(|_| match (to_sign, app.who.may(Right::Release)) {
                (true, true) => Signs::Here,
                (_, true) => Signs::Later,
                (_, false) => Signs::Manager,
            }),
        picture: told.map_or_else(String::new, |view| curve::draw(&words, view, rules)),
        body: match act {
            PieceAct::Tend => json!({ "inputs": [{ "lot": code }] }).to_string(),
            _ => json!({ "lot": code }).to_string(),
        },
        green: told.map_or_else(String::new, |view| bench::in_grams(view.piece.green)),
        tends: tends(&words, asked.tend.as_deref()),
        places: bench::places(&names, here.as_deref()),
        sentences: sentences(&words, act, app, lot, (&tag, &name), told.is_some()),
        then: match asked.from.as_deref() {
            Some("cure-room") => "/cure-room".to_owned(),
            _ => format!("/lots/{code}"),
        },
        may: may && (act != PieceAct::Release || ready),
        units: Units::of(&words),
        shown: lot.code.shown(),
        lot: code,
        tag,
        words,
        act,
    })
}

/// Who signs for an alarm, and when.
enum Signs {
    /// Whoever reads it, at once: nothing else stands in the way of the release.
    Here,
    /// Whoever reads it, once the piece is ready.
    Later,
    /// A manager, once the piece is ready.
    Manager,
}

/// Where a task of the cure room is told, under the piece's own page.
pub fn way_of(task: Task) -> &'static str {
    match task {
        Task::Turn | Task::Overhaul => "tend?as=turn",
        Task::Rinse => "tend?as=rinse",
        Task::Equalise => "tend?as=equalise",
        Task::Hang => "tend?as=hang",
        Task::Weigh | Task::ReadyFrom | Task::ReadyBy | Task::Salt => "weigh",
    }
}

/// What the scale showed last, and what it is likely to show now.
fn scale(words: &Words, view: &PieceView) -> Vec<String> {
    let green = view.piece.green;
    let of_loss = |lost: domain::measure::Percent| {
        let kept = Decimal::from(green.milligrams()) * (Decimal::ONE - lost.fraction());
        let grams = (kept / Decimal::from(1_000)).round();
        Grams::whole(rust_decimal::prelude::ToPrimitive::to_i64(&grams).unwrap_or(0))
    };
    let expected = view.piece.expected_loss(view.today);
    let expected = expected.map(|lost| BenchSays::Expected {
        weight: of_loss(lost),
    });
    let last = view.piece.last(view.today).map(|last| BenchSays::Last {
        weight: last.grams,
        day: last.day,
    });
    let lost = view.piece.last(view.today).map(|last| BenchSays::Lost {
        percent: Arg::Tenths(loss(green, last.grams).number().round_dp(1)),
    });
    let told = [expected, last, lost].into_iter().flatten();
    told.map(|says| words.say(says)).collect()
}

fn missing(words: &Words, view: Option<&PieceView>) -> Vec<String> {
    let Some(view) = view else {
        return vec![words.t("page-act-cannot")];
    };
    view.missing().map(|says| words.say(says.clone())).collect()
}

/// The deeds that leave a piece the lot that it is.
const TENDS: [StepKind; 4] = [
    StepKind::Turn,
    StepKind::Rinse,
    StepKind::Equalise,
    StepKind::Hang,
];

fn tends(words: &Words, chosen: Option<&str>) -> Vec<Pick> {
    let chosen = chosen.unwrap_or("turn");
    let each = TENDS.map(|kind| Pick {
        chosen: kind.as_str() == chosen,
        ..Pick::of(
            kind.as_str(),
            words.headed(domain::words::DeedKind::from(kind).says()),
        )
    });
    each.into_iter().collect()
}

/// The sentence of the deed; of tending, one for each way.
fn sentences(
    words: &Words,
    act: PieceAct,
    app: &Caller<'_>,
    lot: &Lot,
    (tag, name): (&str, &str),
    has_green: bool,
) -> Vec<(&'static str, String)> {
    let of = BenchSays::OfTag {
        tag: tag.to_owned(),
        name: name.to_owned(),
    };
    let (name, lot) = (words.say(of), lot.code.shown());
    let each = |kind: StepKind| {
        let (name, lot) = (name.clone(), lot.clone());
        let says = match kind {
            StepKind::Rinse => WorkSays::Rinse { name, lot },
            StepKind::Equalise => WorkSays::Equalise { name, lot },
            StepKind::Hang => WorkSays::Hang { name, lot },
            _ => WorkSays::Turn { name, lot },
        };
        (kind.as_str(), words.say(says))
    };
    match act {
        PieceAct::Tend => TENDS.map(each).to_vec(),
        // Without a green weight nobody knows what is lost.
        PieceAct::Weigh if !has_green => vec![("", words.say(WorkSays::WeighAlone { name, lot }))],
        PieceAct::Weigh => vec![("", words.say(WorkSays::Weigh { name, lot }))],
        PieceAct::Release => {
            let by = app.who.name.clone();
            vec![("", words.say(WorkSays::Release { name, lot, by }))]
        }
    }
}
