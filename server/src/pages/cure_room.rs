//! The cure room: one card a piece, its loss as a line against what is expected.

use super::format;
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
    pieces: Vec<Card>,
}

struct Card {
    code: String,
    shown: String,
    tag: String,
    name: String,
    stage: String,
    days: u32,
    loss: String,
    forecast: String,
    ready: bool,
    alarms: Vec<String>,
    missing: Vec<String>,
    due: Vec<String>,
    picture: String,
}

/// Every piece on hand.
pub async fn page(asking: Asking) -> HttpResponse {
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let room = cure_room::read(&app, conn)?;
            Ok(CureRoom {
                pieces: room.pieces.into_iter().map(card).collect(),
            })
        })
    });
    super::page(made.await)
}

fn card(piece: PieceRead) -> Card {
    let lost = |loss| format!("{} %", decimal(loss).round_dp(1).normalize());
    let loss = match (piece.loss_percent, piece.expected_loss_percent) {
        (Some(loss), Some(expected)) => format!("{} lost, {} expected", lost(loss), lost(expected)),
        (Some(loss), None) => format!("{} lost", lost(loss)),
        _ => "never weighed".into(),
    };
    Card {
        picture: picture(&piece),
        stage: format::plain(&piece.stage),
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
        days: piece.days,
        loss,
        forecast: piece.forecast,
        missing: piece.missing,
        due: piece.due,
    }
}

const WIDE: i64 = 320;
const HIGH: i64 = 120;

/// Loss over days: the curve thin, the piece's own weighings thick with dots. Down is lost.
fn picture(piece: &PieceRead) -> String {
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
        "<svg class=\"loss\" viewBox=\"0 0 {WIDE} {HIGH}\" role=\"img\" aria-label=\"Loss over {days} days, up to {} per cent\">\
         <polyline class=\"expected\" points=\"{}\"/><polyline class=\"own\" points=\"{}\"/>{dots}</svg>",
        loss.round_dp(0),
        line(&curve),
        line(&own)
    )
}
