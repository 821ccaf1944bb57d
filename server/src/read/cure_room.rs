//! The cure room: every piece with its loss, its alarms, when it may be ready, what is due.

use super::piece;
use crate::app::App;
use crate::error::Result;
use crate::lists::List;
use crate::read::statement::told;
use crate::wire::cure_room::*;
use crate::wire::cures::number;
use crate::wire::{Day, Number, Weight};
use chrono::NaiveDate;
use domain::cure_room::{self, Piece, Rules, Stage, Task};
use domain::moment::day_of;
use domain::words::Topic;
use store::list_lots::{self, Sought};
use store::lots::LotRow;
use store::{Conn, entries, measurements};

/// The most pieces of one product.
const MOST: i64 = 200;

/// Every piece on hand.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &App, conn: &mut Conn) -> Result<CureRoomRead> {
    let kitchen = app.kitchen(conn)?;
    let today = day_of(app.now(), kitchen.zone);
    let mut found: Vec<(LotRow, Piece)> = Vec::new();
    for entry in entries::all(conn, List::Products.as_str())? {
        if app
            .product_of(entry.version_id, &entry.body)?
            .release
            .is_none()
        {
            continue;
        }
        let sought = Sought {
            product: Some(entry.code.clone()),
            on_hand: true,
            ..Sought::default()
        };
        for (row, _) in list_lots::list(conn, &sought, MOST)? {
            if let Some(piece) = piece::read(app, conn, &row)? {
                found.push((row, piece));
            }
        }
    }
    found.sort_by_key(|(row, piece)| (piece.in_salt, row.id));
    let all: Vec<Piece> = found.iter().map(|(_, piece)| piece.clone()).collect();
    let mut pieces = Vec::with_capacity(found.len());
    for (row, piece) in &found {
        let name = app
            .product(conn, row.version_id)?
            .name(kitchen.language())
            .to_owned();
        pieces.push(told_of(app, row, piece, &all, name, today)?);
    }
    Ok(CureRoomRead { pieces })
}

fn told_of(
    app: &App,
    row: &LotRow,
    piece: &Piece,
    all: &[Piece],
    name: String,
    today: NaiveDate,
) -> Result<PieceRead> {
    let rules = &app.law.trade.cure_room;
    let percent = |percent: domain::measure::Percent| number(percent.number().round_dp(2));
    let last = piece.last(today);
    let alarm = cure_room::unsigned(piece, today, rules);
    let likely = last.and_then(|last| cure_room::likely_tag(piece, last, all, rules));
    let forecast = cure_room::forecast(piece, today, rules);
    let release = cure_room::release(&signed(piece, today), today, rules);
    let released = piece.stage == Stage::Released;
    let curve = piece
        .curve
        .as_ref()
        .map(|curve| curve.points().to_vec())
        .unwrap_or_default();
    Ok(PieceRead {
        lot: row.code.clone(),
        shown: row.code()?.shown(),
        tag: piece.tag.clone(),
        name,
        stage: stage(piece.stage).to_owned(),
        green_grams: Weight(piece.green),
        in_salt: Day(piece.in_salt),
        days: piece.age(today).unwrap_or(0),
        loss_percent: last.map(|last| percent(cure_room::loss(piece.green, last.grams))),
        expected_loss_percent: last
            .and_then(|last| piece.curve.as_ref().zip(piece.age(last.day)))
            .map(|(curve, age)| percent(curve.loss_on(age))),
        weighings: piece
            .weighed(today)
            .into_iter()
            .map(|weighing| WeighingRead {
                day: Day(weighing.day),
                grams: Weight(weighing.grams),
                loss_percent: percent(cure_room::loss(piece.green, weighing.grams)),
            })
            .collect(),
        curve: curve
            .into_iter()
            .map(|(day, loss)| CurvePoint {
                day,
                loss_percent: percent(loss),
            })
            .collect(),
        alarms: alarm
            .filter(|_| !released)
            .iter()
            .map(|alarm| told(&alarm.finding(), &app.law.trade_rows))
            .collect(),
        likely_tag: likely.map(|likely| words::Speech::default().say(&likely.says)),
        forecast: match released {
            true => "Released.".into(),
            false => forecast.says(),
        },
        earliest: forecast.earliest().filter(|_| !released).map(Day),
        may_be_released: !released && release.is_allowed(),
        missing: match released {
            true => Vec::new(),
            false => release
                .unmet
                .iter()
                .map(|unmet| words::Speech::default().say(&unmet.says))
                .collect(),
        },
        due: due(piece, today, rules),
        plan: piece
            .plan
            .iter()
            .map(|planned| PlannedRead {
                day: Day(planned.day),
                task: planned.task.says().to_owned(),
            })
            .collect(),
    })
}

/// As it would be if the one who looks signed today: what else is missing is what matters.
fn signed(piece: &Piece, today: NaiveDate) -> Piece {
    Piece {
        signed: Some(cure_room::Signed {
            day: today,
            by: String::new(),
        }),
        ..piece.clone()
    }
}

fn due(piece: &Piece, today: NaiveDate, rules: &Rules) -> Vec<String> {
    if piece.stage == Stage::Released {
        return Vec::new();
    }
    let due = cure_room::due(std::slice::from_ref(piece), today, rules);
    let wanted = due.into_iter().filter(|due| due.task != Task::Salt);
    wanted
        .map(|due| format!("{} (since {})", due.task.says(), due.since))
        .collect()
}

fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::InSalt => "in-salt",
        Stage::Equalising => "equalising",
        Stage::Smoking => "smoking",
        Stage::Hanging => "hanging",
        Stage::Released => "released",
    }
}

/// How a lot was cured, told by itself or by the nearest lot that it came from.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn cured(conn: &mut Conn, row: &LotRow, rows: &domain::rows::Rows) -> Result<Option<CureRead>> {
    let ancestry = store::trace::back(conn, row.id)?;
    let line = ancestry.descendants_first(domain::lot::LotId(row.id));
    let keys: Vec<i32> = line.iter().map(|lot| lot.0).collect();
    // One question for the whole family; the few that were cured are then read one by one.
    let cured = measurements::of_lots(conn, &keys, "nitrite-ppm")?;
    let nearest = keys
        .iter()
        .find(|lot| cured.iter().any(|(of, _)| of == *lot));
    if let Some(lot) = nearest {
        let read = measurements::of_lot(conn, *lot)?;
        let last = |quantity: &str| {
            let found = read.iter().rev().find(|(_, of, _)| of == quantity);
            Number(found.map_or(0, |(_, _, millionths)| *millionths))
        };
        let of = store::lots::by_keys(conn, &[*lot])?.pop();
        return Ok(Some(CureRead {
            lot: of.map(|row| row.code).unwrap_or_default(),
            nitrite_ppm: last("nitrite-ppm"),
            nitrate_ppm: last("nitrate-ppm"),
            salt_percent: last("salt-percent"),
            because: super::why::of_topic(conn, *lot, Topic::Cure, rows)?,
        }));
    }
    Ok(None)
}
