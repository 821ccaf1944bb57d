//! The numbers of a family in one statement: readings of its lots and what was found too much of them, and
//! what was added to its steps, lost in them and read in their logs.

use crate::conn::Conn;
use crate::error::Result;
use crate::keyed;
use crate::measurements::{self, IF_THEY_COUNT, THAT_COUNT};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_types::{BigInt, Bool, Integer, Text, Timestamp};
use domain::family::LotReading;
use domain::grams::Grams;
use domain::lot::DeedId;
use domain::measure::Temperature;
use domain::words::{Addition, Quantity, StepKind};
use std::collections::HashMap;

/// The numbers of a family.
#[derive(Default)]
pub struct Numbers {
    /// The readings of each lot, the oldest first; voided ones are left out.
    pub readings: HashMap<i32, Vec<LotReading>>,
    /// The water, ice and steam of each step.
    pub water: HashMap<DeedId, Grams>,
    /// What each step lost.
    pub lost: HashMap<DeedId, Grams>,
    /// The hottest core in the log of each step.
    pub cores: HashMap<DeedId, Temperature>,
    /// What was found too much of each lot of which anything was, count by count.
    pub surplus: HashMap<i32, Grams>,
}

/// What a step lost, as the statement below names it.
const LOST: &str = "step-lost";
/// What a count found too much, likewise.
const SURPLUS: &str = "surplus";

#[derive(QueryableByName)]
struct NumberRow {
    #[diesel(sql_type = Bool)]
    added: bool,
    #[diesel(sql_type = Integer)]
    owner: i32,
    #[diesel(sql_type = Timestamp)]
    at: NaiveDateTime,
    #[diesel(sql_type = Text)]
    what: String,
    #[diesel(sql_type = BigInt)]
    amount: i64,
}

/// How a core is read, and by which step.
const COOK: &str = StepKind::Cook.as_str();
const CELSIUS: &str = Quantity::Celsius.as_str();
const FAHRENHEIT: &str = Quantity::Fahrenheit.as_str();

/// The readings of lots, the additions of steps, and the cores that were read in them.
pub fn of(conn: &mut Conn, lots: &[i32], steps: &[i32]) -> Result<Numbers> {
    let rows: Vec<NumberRow> = keyed::of_both(conn, lots, steps, |of_lots, of_steps| {
        format!(
        "SELECT FALSE AS added, of.lot_id AS owner, deeds.at, of.quantity AS what, of.millionths AS amount, of.id
         FROM measurements of {THAT_COUNT}
         WHERE of.lot_id {of_lots} AND {IF_THEY_COUNT}
         UNION ALL
         SELECT TRUE AS added, of.deed_id AS owner, deeds.at, of.what, of.mg AS amount, of.id
         FROM additions of JOIN deeds ON deeds.id = of.deed_id
         WHERE of.deed_id {of_steps}
         UNION ALL
         SELECT TRUE AS added, of.id AS owner, deeds.at, '{LOST}' AS what, of.loss_mg AS amount, of.id
         FROM steps of JOIN deeds ON deeds.id = of.id
         WHERE of.id {of_steps} AND of.loss_mg > 0
         UNION ALL
         SELECT TRUE AS added, of.deed_id AS owner, of.at, of.quantity AS what, of.millionths AS amount, of.id
         FROM core_readings of
         WHERE of.deed_id {of_steps}
             AND NOT EXISTS (SELECT 1 FROM corrections WHERE corrections.deed_id = of.deed_id)
         UNION ALL
         SELECT TRUE AS added, of.deed_id AS owner, deeds.at, of.quantity AS what, of.millionths AS amount, of.id
         FROM measurements of JOIN deeds ON deeds.id = of.deed_id
         WHERE of.deed_id {of_steps} AND of.lot_id IS NULL AND deeds.kind = '{COOK}'
             AND of.quantity IN ('{CELSIUS}', '{FAHRENHEIT}')
             AND NOT EXISTS (SELECT 1 FROM corrections WHERE corrections.deed_id = of.deed_id)
         UNION ALL
         SELECT TRUE AS added, of.lot_id AS owner, deeds.at, '{SURPLUS}' AS what, -of.mg AS amount, of.id
         FROM pack_events of JOIN deeds ON deeds.id = of.deed_id
         WHERE of.lot_id {of_lots} AND of.account = 'unexplained' AND of.mg < 0
             AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = of.deed_id)
         ORDER BY 3, 6"
        )
    })?;
    let mut numbers = Numbers::default();
    for row in rows {
        match row.added {
            false => numbers
                .readings
                .entry(row.owner)
                .or_default()
                .push(LotReading {
                    at: row.at.and_utc(),
                    quantity: measurements::quantity(&row.what)?,
                    millionths: row.amount,
                }),
            true if row.what == Addition::ScaleDifference.as_str() => {}
            true if row.what == SURPLUS => {
                let surplus = numbers.surplus.entry(row.owner).or_default();
                *surplus += Grams::from_milligrams(row.amount);
            }
            true if row.what == LOST => {
                let lost = Grams::from_milligrams(row.amount);
                numbers.lost.insert(DeedId(row.owner), lost);
            }
            true if Quantity::parse(&row.what).is_some() => {
                let read = LotReading {
                    at: row.at.and_utc(),
                    quantity: measurements::quantity(&row.what)?,
                    millionths: row.amount,
                };
                if let Some(read) = read.temperature() {
                    let hottest = numbers.cores.entry(DeedId(row.owner)).or_insert(read);
                    *hottest = read.max(*hottest);
                }
            }
            true => {
                let water = numbers.water.entry(DeedId(row.owner)).or_default();
                *water += Grams::from_milligrams(row.amount);
            }
        }
    }
    Ok(numbers)
}
