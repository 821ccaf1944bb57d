//! What came out of the heat and cools: what was read of it, and what is due when.

use crate::error::Result;
use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;
use domain::family::Family;
use domain::heat::{CoolingDue, CoreReading, cooling_due};
use domain::law::Law;
use domain::lot::{Lot, LotId, brief};
use domain::measure::Temperature;
use domain::today::CoolingLot;
use domain::words::{ProductKind, Quantity, State};
use rust_decimal::Decimal;
use store::Conn;
use store::cooling::{self, CoreRead};

/// How long what came out of the heat is looked at.
const COOLED_WITHIN: TimeDelta = TimeDelta::hours(12);

/// The lots that came out of the heat lately, each with the deed that made it.
///
/// # Errors
/// The database is away.
pub fn out_of_heat(conn: &mut Conn, now: DateTime<Utc>) -> Result<Vec<(i32, i32)>> {
    Ok(cooling::out_of_heat(
        conn,
        (now - COOLED_WITHIN).naive_utc(),
    )?)
}

/// Those of them that are not cold yet.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn going_on(
    conn: &mut Conn,
    of: &[(i32, i32)],
    family: &Family,
    law: &Law,
    zone: Tz,
) -> Result<Vec<CoolingLot>> {
    let has_to = |lot: i32| {
        family
            .get(LotId(lot))
            .is_some_and(|of| has_to_cool(&of.lot))
    };
    let of: Vec<(i32, i32)> = of.iter().copied().filter(|(lot, _)| has_to(*lot)).collect();
    let mut read = cooling::readings(conn, &of)?;
    let lots = of.iter().filter_map(|(key, _)| {
        let lot = &family.get(LotId(*key))?.lot;
        let readings = core(&read.remove(key).unwrap_or_default());
        let due = due(law, &readings, lot);
        Some(CoolingLot {
            lot: lot.id,
            last: readings.last().copied(),
            next: due.into_iter().find(|stage| !stage.is_met)?,
            zone,
        })
    });
    Ok(lots.collect())
}

/// What was read of a lot since it was made.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(conn: &mut Conn, lot: &Lot, deed: i32) -> Result<Vec<CoreReading>> {
    let mut read = cooling::readings(conn, &[(lot.id.0, deed)])?;
    Ok(core(&read.remove(&lot.id.0).unwrap_or_default()))
}

/// What is due of it, by the way to cool that the place takes.
pub fn due(law: &Law, readings: &[CoreReading], lot: &Lot) -> Vec<CoolingDue> {
    let plan = law.heat.usual_cooling();
    plan.map_or_else(Vec::new, |plan| cooling_due(plan, readings, lot.made_at))
}

/// Is it kept cold, and still there to be cooled? As a step that heats asks it.
fn has_to_cool(lot: &Lot) -> bool {
    let product = &lot.product;
    let by_kind = matches!(product.kind, ProductKind::Cooked | ProductKind::Stock) && !product.raw;
    let thawed = |pack: &domain::lot::Pack| pack.now.state != State::Frozen;
    (product.cooked_as.is_some() || by_kind)
        && product.is_controlled()
        && brief::left(&lot.packs).any(thawed)
}

fn core(read: &[CoreRead]) -> Vec<CoreReading> {
    let of = |(at, quantity, millionths): &CoreRead| {
        let degrees = Decimal::new(*millionths, 6).normalize();
        CoreReading {
            at: *at,
            core: match quantity {
                Quantity::Fahrenheit => Temperature::fahrenheit(degrees),
                _ => Temperature::celsius(degrees),
            },
        }
    };
    read.iter().map(of).collect()
}
