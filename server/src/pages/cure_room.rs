//! The cure room: what is wrong first, then what is due, then the rest, small; each with its button.

use super::bench_says::BenchSays;
use super::curve;
use super::done::Done;
use super::hanging::counted;
use super::piece::way_of;
use super::says::PageSays;
use super::spoken::{NONE, Words};
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::cure_room::{self, Room};
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::cure_room::{PieceStage, RoomTask, Task};
use domain::family::{LyingView, PieceView, Relative};
use domain::lot::brief;
use domain::measure::Percent;
use domain::moment::day_of;
use domain::right::Right;
use domain::says::Says;
use serde::Deserialize;
use serde_json::json;
use store::Conn;

#[derive(Template)]
#[template(path = "cure-room.html")]
struct CureRoom {
    words: Words,
    head: String,
    counted: String,
    alarms: Vec<Card>,
    lines: Vec<Line>,
    rest: Vec<Quiet>,
    /// What lies in its cure and does not hang.
    lies: Vec<Lies>,
    done: Option<Done>,
}

/// A piece that something is wrong with.
struct Card {
    code: String,
    title: String,
    told: String,
    alarms: Vec<String>,
    picture: String,
    /// Is the alarm all that stands in the way of its release, for who may sign?
    to_sign: bool,
    may_weigh: bool,
}

/// A piece that something is due of, with its button.
struct Line {
    code: String,
    sign: &'static str,
    says: String,
    more: String,
    act: String,
    first: bool,
    /// Where the button leads; or the deed that it is.
    path: String,
    body: Option<String>,
    small: Option<String>,
}

/// A piece that hangs or lies quietly.
struct Quiet {
    code: String,
    tag: String,
    name: String,
    told: String,
    /// Has somebody or something stopped it?
    stopped: bool,
    lost: String,
    next: String,
    may_weigh: bool,
}

/// What lies in its cure and does not hang afterwards.
struct Lies {
    code: String,
    shown: String,
    name: String,
    told: String,
    /// When it is turned next, and when it comes out.
    next: String,
    left: String,
    may_weigh: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// The deed that was just done.
    did: Option<String>,
}

/// Every piece on hand.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<CureRoom> {
    let room = cure_room::read(app.app(), conn)?;
    let words = Words(app.speech(room.reading.kitchen()));
    let done = Done::of(app, conn, &words, asked.did.as_deref(), "/cure-room")?;
    let (mut alarms, mut lines, mut rest) = (Vec::new(), Vec::new(), Vec::new());
    for view in &room.pieces {
        let Some(of) = room.reading.family.get(view.lot) else {
            continue;
        };
        if view.alarm.is_some() || view.likely.is_some() {
            alarms.push(card(app, &words, of, view));
            continue;
        }
        match line(app, &words, &room, of, view) {
            Some(line) => lines.push(line),
            None => rest.push(quiet(app, &words, of, view)),
        }
    }
    // What is only to be signed comes first: nobody has to fetch a scale for it.
    lines.sort_by_key(|line: &Line| !line.first);
    let mut lies = Vec::new();
    for lot in &room.lies {
        let Some(of) = room.reading.family.get(*lot) else {
            continue;
        };
        let view = room.lying.iter().find(|view| view.lot == *lot);
        match view.and_then(|view| Some((view, view.due.first()?))) {
            Some((view, task)) => {
                let tag = &view.piece.tag;
                let told = dated(&words, view);
                lines.push(tended(app, &words, &room, of, tag, task, &told));
            }
            None => lies.push(lying(app, &words, &room, of, view)),
        }
    }
    let (due, pieces) = (lines.len(), room.pieces.len());
    Ok(CureRoom {
        head: match (alarms.len(), due) {
            (0, 0) => words.t("page-nav-cure-room"),
            (alarms, due) => words.say(BenchSays::RoomHead { alarms, due }),
        },
        counted: counted(&words, pieces, room.lies.len()),
        words,
        alarms,
        lines,
        rest,
        lies,
        done,
    })
}

fn card(app: &Caller<'_>, words: &Words, of: &Relative, view: &PieceView) -> Card {
    let only_alarm = view.alarm.is_some() && view.release.unmet.len() == 1;
    Card {
        code: of.lot.code.to_string(),
        title: titled(words, of, &view.piece.tag),
        told: told(words, view),
        alarms: alarms(words, view),
        picture: curve::draw(words, view, &app.law.trade.cure_room),
        to_sign: only_alarm && !view.is_released() && app.who.may(Right::Release),
        may_weigh: may_weigh(app, of),
    }
}

/// One scale for one piece: of a lot of several packs nobody knows which of them was weighed.
fn may_weigh(app: &Caller<'_>, of: &Relative) -> bool {
    of.lot.pack_count == 1 && app.who.may(Right::Work)
}

fn titled(words: &Words, of: &Relative, tag: &str) -> String {
    words.say(BenchSays::OfTag {
        tag: tag.to_owned(),
        name: of.lot.product.name(words.lang()).to_owned(),
    })
}

/// What is due of a piece, as one line; nothing where it only hangs.
fn line(
    app: &Caller<'_>,
    words: &Words,
    room: &Room<'_>,
    of: &Relative,
    view: &PieceView,
) -> Option<Line> {
    let tag = &view.piece.tag;
    if view.may_be_released() {
        let by = app.who.name.clone();
        let may = app.who.may(Right::Release);
        return Some(Line {
            first: may,
            act: match may {
                true => words.t("page-release-it"),
                false => words.t("page-release-see"),
            },
            small: may.then(|| words.say(BenchSays::SignedBy { by })),
            more: told(words, view),
            ..plain(words, of, tag, "tick", "release?from=cure-room")
        });
    }
    let task = view.due.first()?;
    let told = told(words, view);
    Some(tended(app, words, room, of, tag, task, &told))
}

/// A line whose button leads to a page of the lot.
fn plain(words: &Words, of: &Relative, tag: &str, sign: &'static str, path: &str) -> Line {
    let code = of.lot.code.to_string();
    Line {
        sign,
        says: titled(words, of, tag),
        more: String::new(),
        act: words.t("page-act-see"),
        first: false,
        path: format!("/lots/{code}/{path}"),
        body: None,
        small: None,
        code,
    }
}

/// What is due of a piece, or of what lies in its cure, with the button that does it.
fn tended(
    app: &Caller<'_>,
    words: &Words,
    room: &Room<'_>,
    of: &Relative,
    tag: &str,
    task: &RoomTask,
    told: &str,
) -> Line {
    let more = format!("{}. {told}", words.headed(task.without_tag()));
    let may = app.who.may(Right::Work);
    let tended = |act| {
        let way = format!("{}&from=cure-room", way_of(task.task));
        let line = plain(words, of, tag, "turn", &way);
        match may {
            true => Line {
                act: words.t(act),
                ..line
            },
            false => plain(words, of, tag, "turn", ""),
        }
    };
    let line = match task.task {
        Task::Turn | Task::Overhaul => {
            let here = brief::places(&of.lot.packs);
            let here = here
                .first()
                .map(|place| room.reading.standing.lists.place_code(*place));
            let lot = of.lot.code.to_string();
            let body = json!({ "kind": "turn", "place": here, "inputs": [{ "lot": lot }] });
            Line {
                body: Some(body.to_string()).filter(|_| may),
                ..tended("page-tend-turned")
            }
        }
        Task::Rinse => tended("page-tend-rinse"),
        Task::Equalise => tended("page-tend-equalise"),
        Task::Hang => tended("page-tend-hang"),
        _ if may_weigh(app, of) => Line {
            act: words.t("page-act-weigh"),
            ..plain(words, of, tag, "scale", "weigh?from=cure-room")
        },
        _ => plain(words, of, tag, "scale", ""),
    };
    Line { more, ..line }
}

fn quiet(app: &Caller<'_>, words: &Words, of: &Relative, view: &PieceView) -> Quiet {
    Quiet {
        code: of.lot.code.to_string(),
        tag: view.piece.tag.clone(),
        name: of.lot.product.name(words.lang()).to_owned(),
        told: words.say(PageSays::StageDay {
            stage: words.t(stage(view.piece.stage)),
            days: view.days(),
        }),
        stopped: of.lot.stops.iter().any(|placed| placed.ended.is_none()),
        lost: view.loss.map_or(NONE.to_owned(), |loss| lost(words, loss)),
        next: match view.is_released() {
            true => String::new(),
            false => words.say(view.forecast_says()),
        },
        may_weigh: may_weigh(app, of) && !view.is_released(),
    }
}

/// Something in its cure, with the days since it went in.
fn lying(
    app: &Caller<'_>,
    words: &Words,
    room: &Room<'_>,
    of: &Relative,
    view: Option<&LyingView>,
) -> Lies {
    let zone = room.reading.kitchen().zone;
    let since = day_of(app.now(), zone) - day_of(of.lot.made_at, zone);
    let since = u32::try_from(since.num_days()).unwrap_or(0);
    Lies {
        next: view.map_or_else(String::new, |view| next(words, view)),
        code: of.lot.code.to_string(),
        shown: of.note.clone().unwrap_or_else(|| of.lot.code.shown()),
        name: of.lot.product.name(words.lang()).to_owned(),
        told: words.say(PageSays::StageDay {
            stage: words.t("page-cure-room-in-cure"),
            // It went in when it was cured, whatever was cut or moved since.
            days: view.map_or(since, LyingView::days),
        }),
        left: words.grams(of.went.on_hand),
        may_weigh: may_weigh(app, of),
    }
}

/// When it is turned next, and when it comes out of its cure.
pub fn next(words: &Words, view: &LyingView) -> String {
    let turned = view.turned_next().filter(|_| !view.is_out());
    let turned = turned.map(|planned| BenchSays::TurnOn { day: planned.day });
    let out = match view.is_out() {
        true => Some(BenchSays::IsOut.into()),
        false => out_on(view),
    };
    let next = turned.map(Says::from).into_iter().chain(out);
    next.map(|says| words.headed(says))
        .collect::<Vec<_>>()
        .join(" ")
}

/// The day it comes out of its cure.
fn out_on(view: &LyingView) -> Option<Says> {
    view.ready().map(|day| BenchSays::OutOn { day }.into())
}

/// How long something lies in its cure already, and when it comes out.
fn dated(words: &Words, view: &LyingView) -> String {
    let day = words.headed(PageSays::StageDay {
        stage: words.t("page-cure-room-in-cure"),
        days: view.days(),
    });
    let out = out_on(view).map(|says| words.headed(says));
    [Some(format!("{day}.")), out]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join(" ")
}

fn lost(words: &Words, loss: Percent) -> String {
    let percent = words.0.number(loss.to_hundredths().round_dp(1));
    words.say(PageSays::Percent { percent })
}

/// Where a piece is on its way, its day and its loss.
pub fn told(words: &Words, view: &PieceView) -> String {
    let loss = match (view.loss, view.expected) {
        (Some(loss), Some(expected)) => PageSays::LossExpected {
            loss: lost(words, loss),
            expected: lost(words, expected),
        },
        (Some(loss), None) => PageSays::Loss {
            loss: lost(words, loss),
        },
        _ => PageSays::NeverWeighed,
    };
    words.headed(PageSays::Piece {
        stage: words.t(stage(view.piece.stage)),
        days: view.days(),
        loss: loss.into(),
    })
}

/// What looks wrong about a piece.
pub fn alarms(words: &Words, view: &PieceView) -> Vec<String> {
    let alarms = view.alarm.iter().map(|alarm| alarm.finding().says);
    let likely = view.likely.iter().map(|likely| likely.says.clone());
    alarms.chain(likely).map(|says| words.say(says)).collect()
}

/// The key of a stage.
fn stage(stage: PieceStage) -> &'static str {
    match stage {
        PieceStage::InSalt => "page-cure-room-in-salt",
        PieceStage::Equalising => "page-cure-room-equalising",
        PieceStage::Smoking => "page-cure-room-smoking",
        PieceStage::Hanging => "page-cure-room-hanging",
        PieceStage::Released => "page-cure-room-released",
    }
}
