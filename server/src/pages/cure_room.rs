//! The cure room: one card a piece, its loss as a line against what is expected.

use super::says::PageSays;
use super::spoken::Words;
use crate::blocking::blocking;
use crate::caller::Asking;
use crate::read::cure_room;
use crate::wire::cure_room::PieceRead;
use crate::wire::cures::decimal;
use actix_web::HttpResponse;
use askama::Template;
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
            let room = cure_room::read(&app, conn)?;
            let words = Words(app.speech(&*app.kitchen_lately(conn)?));
            let pieces = room.pieces.into_iter();
            Ok(CureRoom {
                words,
                pieces: pieces.map(|piece| card(&words, piece)).collect(),
            })
        })
    });
    super::page(speech, made.await)
}

fn card(words: &Words, piece: PieceRead) -> Card {
    let lost = |loss| {
        let percent = words.0.number(decimal(loss).round_dp(1));
        words.say(PageSays::Percent { percent })
    };
    let loss = match (piece.loss_percent, piece.expected_loss_percent) {
        (Some(loss), Some(expected)) => PageSays::LossExpected {
            loss: lost(loss),
            expected: lost(expected),
        },
        (Some(loss), None) => PageSays::Loss { loss: lost(loss) },
        _ => PageSays::NeverWeighed,
    };
    Card {
        picture: picture(words, &piece),
        says: words.say(PageSays::Piece {
            stage: words.t(stage(&piece.stage)),
            days: piece.days,
            loss: loss.into(),
        }),
        ready: piece.may_be_released,
        alarms: piece
            .alarms
            .into_iter()
            .map(|alarm| alarm.says)
            .chain(piece.likely_tag)
            .collect(),
        code: piece.lot,
        shown: piece.shown,
        tag: piece.tag,
        name: piece.name,
        forecast: piece.forecast,
        missing: piece.missing,
        due: piece.due,
    }
}

/// The key of a stage, as it is spelt on the wire.
fn stage(spelt: &str) -> &'static str {
    match spelt {
        "in-salt" => "page-cure-room-in-salt",
        "equalising" => "page-cure-room-equalising",
        "smoking" => "page-cure-room-smoking",
        "released" => "page-cure-room-released",
        _ => "page-cure-room-hanging",
    }
}

const WIDE: i64 = 320;
const HIGH: i64 = 120;

/// Loss over days: the curve thin, the piece's own weighings thick with dots. Down is lost.
fn picture(words: &Words, piece: &PieceRead) -> String {
    let own: Vec<(Decimal, Decimal)> = piece
        .weighings
        .iter()
        .map(|weighing| {
            let day = (weighing.day.0 - piece.in_salt.0).num_days();
            (Decimal::from(day), decimal(weighing.loss_percent))
        })
        .collect();
    if own.is_empty() {
        return String::new();
    }
    let curve: Vec<(Decimal, Decimal)> = piece
        .curve
        .iter()
        .map(|point| (Decimal::from(point.day), decimal(point.loss_percent)))
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
