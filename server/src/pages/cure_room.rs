//! The cure room: one card a piece, its loss as a line against what is expected.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Asking;
use crate::read::cure_room;
use crate::rooms::blocking;
use actix_web::HttpResponse;
use askama::Template;
use domain::cure_room::PieceStage;
use domain::family::{PieceView, Relative};
use domain::measure::Percent;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

#[derive(Template)]
#[template(path = "cure-room.html")]
struct CureRoom {
    words: Words,
    pieces: Vec<Card>,
}

struct Card {
    code: String,
    shown: String,
    tag: String,
    name: String,
    /// Its stage, its day and its loss.
    says: String,
    forecast: String,
    ready: bool,
    alarms: Vec<String>,
    missing: Vec<String>,
    due: Vec<String>,
    picture: String,
}

/// Every piece on hand.
pub async fn page(asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let room = cure_room::read(app.app(), conn)?;
            let words = Words(app.speech(room.reading.kitchen()));
            let pieces = room.pieces.iter().filter_map(|piece| {
                let of = room.reading.family.get(piece.lot)?;
                Some(card(&words, of, piece))
            });
            Ok(CureRoom {
                words,
                pieces: pieces.collect(),
            })
        })
    });
    super::page(speech, made.await)
}

fn card(words: &Words, of: &Relative, view: &PieceView) -> Card {
    let lost = |loss: Percent| {
        let percent = words.0.number(loss.to_hundredths().round_dp(1));
        words.say(PageSays::Percent { percent })
    };
    let loss = match (view.loss, view.expected) {
        (Some(loss), Some(expected)) => PageSays::LossExpected {
            loss: lost(loss),
            expected: lost(expected),
        },
        (Some(loss), None) => PageSays::Loss { loss: lost(loss) },
        _ => PageSays::NeverWeighed,
    };
    let alarms = view.alarm.iter().map(|alarm| alarm.finding().says);
    let likely = view.likely.iter().map(|likely| likely.says.clone());
    let due = view.due.iter();
    Card {
        code: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        tag: view.piece.tag.clone(),
        name: of.lot.product.name(words.lang()).to_owned(),
        says: words.say(PageSays::Piece {
            stage: words.t(stage(view.piece.stage)),
            days: view.days(),
            loss: loss.into(),
        }),
        forecast: words.say(view.forecast_says()),
        ready: view.may_be_released(),
        alarms: alarms.chain(likely).map(|says| words.say(says)).collect(),
        missing: view.missing().map(|says| words.say(says.clone())).collect(),
        due: due.map(|due| words.say(due.without_tag())).collect(),
        picture: picture(words, view),
    }
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

const WIDE: i64 = 320;
const HIGH: i64 = 120;

/// Loss over days: the curve thin, the piece's own weighings thick with dots. Down is lost.
fn picture(words: &Words, view: &PieceView) -> String {
    let own: Vec<(Decimal, Decimal)> = view
        .weighed()
        .into_iter()
        .map(|(weighing, lost)| {
            let day = (weighing.day - view.piece.in_salt).num_days();
            (Decimal::from(day), lost.to_hundredths())
        })
        .collect();
    if own.is_empty() {
        return String::new();
    }
    let curve: Vec<(Decimal, Decimal)> = view
        .curve()
        .iter()
        .map(|(day, lost)| (Decimal::from(*day), lost.to_hundredths()))
        .collect();
    let points = || own.iter().chain(&curve);
    let most = |pick: fn(&(Decimal, Decimal)) -> Decimal| {
        points()
            .map(pick)
            .max()
            .unwrap_or_default()
            .max(Decimal::ONE)
    };
    let (days, loss) = (most(|point| point.0), most(|point| point.1));
    let at = |(day, lost): &(Decimal, Decimal)| {
        let x = (day * Decimal::from(WIDE - 16) / days + Decimal::from(8))
            .round()
            .to_i64()
            .unwrap_or(0);
        let y = (lost * Decimal::from(HIGH - 16) / loss + Decimal::from(8))
            .round()
            .to_i64()
            .unwrap_or(0);
        (x, y)
    };
    let line = |of: &[(Decimal, Decimal)]| {
        let points: Vec<String> = of
            .iter()
            .map(|point| {
                let (x, y) = at(point);
                format!("{x},{y}")
            })
            .collect();
        points.join(" ")
    };
    let start = std::iter::once((Decimal::ZERO, Decimal::ZERO));
    let own: Vec<_> = start.chain(own.clone()).collect();
    let dots: String = own
        .iter()
        .map(|point| {
            let (x, y) = at(point);
            format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"4\"/>")
        })
        .collect();
    format!(
        "<svg class=\"loss\" viewBox=\"0 0 {WIDE} {HIGH}\" role=\"img\" aria-label=\"{}\">\
         <polyline class=\"expected\" points=\"{}\"/><polyline class=\"own\" points=\"{}\"/>{dots}</svg>",
        words.say(PageSays::Curve {
            days: days.to_u32().unwrap_or(0),
            loss: loss.round_dp(0),
        }),
        line(&curve),
        line(&own)
    )
}
