//! A piece in the cure room, told from the record: its green weight, its weighings, where it is on
//! its way.

use crate::app::App;
use crate::error::Result;
use chrono::NaiveDate;
use domain::cure_room::{self, Piece, Planned, Stage, Weighing};
use domain::genealogy::Ancestry;
use domain::grams::Grams;
use domain::lot::LotId;
use domain::moment::day_of;
use domain::product::Product;
use domain::words::DeedKind;
use std::collections::HashMap;
use store::lots::LotRow;
use store::{Conn, deeds, lots, measurements, trace};

/// The piece that a lot is, if it came out of a cure.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &App, conn: &mut Conn, row: &LotRow) -> Result<Option<Piece>> {
    let product = app.product(conn, row.version_id)?;
    let Some(rule) = product.release.clone() else {
        return Ok(None);
    };
    let ancestry = trace::back(conn, row.id)?;
    let Some(line) = line(conn, row, &ancestry)? else {
        return Ok(None);
    };
    let zone = app.kitchen(conn)?.zone;
    let mut piece = Piece::hung(
        row.note.clone().unwrap_or(row.code()?.shown()),
        line.green,
        line.in_salt,
    );
    piece.product = product.code.clone();
    piece.rule = rule;
    for lot in line.lots {
        for (at, quantity, millionths) in measurements::of_lot(conn, lot)? {
            let day = day_of(at.and_utc(), zone);
            match quantity.as_str() {
                "grams" => piece.weighings.push(Weighing {
                    day,
                    grams: Grams::from_milligrams(millionths / 1_000),
                }),
                "water-activity" => {
                    piece.water_activity =
                        Some(rust_decimal::Decimal::new(millionths, 6).normalize());
                }
                _ => {}
            }
        }
    }
    let rules = &app.law.trade.cure_room;
    piece.curve = product
        .curve
        .as_deref()
        .and_then(|key| rules.curve(key))
        .cloned();
    piece.plan = planned(app, &product, &piece);
    let (stage, turned) = stage(conn, row, &piece, zone)?;
    (piece.stage, piece.turned) = (stage, turned);
    Ok(Some(piece))
}

/// The lots that the piece was, newest first, back to the cure step.
struct Line {
    lots: Vec<i32>,
    green: Grams,
    in_salt: NaiveDate,
}

fn line(conn: &mut Conn, row: &LotRow, ancestry: &Ancestry) -> Result<Option<Line>> {
    let keys: Vec<i32> = ancestry
        .descendants_first(LotId(row.id))
        .iter()
        .map(|lot| lot.0)
        .collect();
    let rows: HashMap<i32, LotRow> = lots::by_keys(conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let mut line = Vec::new();
    let mut lot = row.id;
    loop {
        line.push(lot);
        let Some(of) = rows.get(&lot) else {
            return Ok(None);
        };
        let Some(made_by) = deeds::by_keys(conn, &[of.deed_id])?.pop() else {
            return Ok(None);
        };
        let meat: Vec<_> = ancestry
            .uses_of(LotId(lot))
            .iter()
            .filter(|used| {
                rows.get(&used.lot.0)
                    .is_some_and(|row| !row.species.is_empty())
            })
            .collect();
        if made_by.kind()? == DeedKind::Cure {
            let green: i64 = meat.iter().map(|used| used.milligrams).sum();
            return Ok(Some(Line {
                lots: line,
                green: Grams::from_milligrams(green),
                in_salt: made_by.day,
            }));
        }
        match meat.as_slice() {
            [one] => lot = one.lot.0,
            _ => return Ok(None),
        }
    }
}

fn planned(app: &App, product: &Product, piece: &Piece) -> Vec<Planned> {
    let rules = &app.law.trade.cure_room;
    let method = product.salting.as_deref().and_then(|key| rules.method(key));
    let plan = method.map(|method| {
        cure_room::plan(
            piece.in_salt,
            piece.green,
            None,
            method,
            piece.rule.days,
            rules,
        )
    });
    plan.and_then(std::result::Result::ok).unwrap_or_default()
}

/// Where it is on its way, by what was done with it; and the kitchen's days on which it was turned.
fn stage(
    conn: &mut Conn,
    row: &LotRow,
    piece: &Piece,
    zone: chrono_tz::Tz,
) -> Result<(Stage, Vec<NaiveDate>)> {
    let mut stage = match piece.weighings.is_empty() {
        true => Stage::InSalt,
        // Somebody took it out of the salt to weigh it.
        false => Stage::Hanging,
    };
    let mut turned = Vec::new();
    for done in store::record::history(conn, row.id, row.deed_id)? {
        if done.voided {
            continue;
        }
        match DeedKind::parse(&done.kind) {
            Some(DeedKind::Turn) => turned.push(day_of(done.at.and_utc(), zone)),
            Some(DeedKind::Rinse | DeedKind::Equalise) => stage = Stage::Equalising,
            Some(DeedKind::Smoke) => stage = Stage::Smoking,
            Some(DeedKind::Hang) => stage = Stage::Hanging,
            Some(DeedKind::Release) => stage = Stage::Released,
            _ => {}
        }
    }
    Ok((stage, turned))
}
