//! The numbers of a family in one statement: readings of its lots, and what was added to its steps.

use crate::conn::Conn;
use crate::error::Result;
use crate::measurements::{self, IF_THEY_COUNT, THAT_COUNT};
use crate::on_each;
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Bool, Integer, Text, Timestamp};
use domain::family::LotReading;
use domain::grams::Grams;
use domain::lot::DeedId;
use domain::words::Addition;
use std::collections::HashMap;

/// The numbers of a family.
#[derive(Default)]
pub struct Numbers {
    /// The readings of each lot, the oldest first; voided ones are left out.
    pub readings: HashMap<i32, Vec<LotReading>>,
    /// The water, ice and steam of each step.
    pub water: HashMap<DeedId, Grams>,
}

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

/// The readings of lots and the additions of steps.
pub fn of(conn: &mut Conn, lots: &[i32], steps: &[i32]) -> Result<Numbers> {
    let listed = |keys: &[i32]| {
        let keys: Vec<String> = keys.iter().map(i32::to_string).collect();
        if keys.is_empty() {
            "NULL".into()
        } else {
            keys.join(", ")
        }
    };
    let sql = format!(
        "SELECT FALSE AS added, of.lot_id AS owner, deeds.at, of.quantity AS what, of.millionths AS amount, of.id
         FROM measurements of {THAT_COUNT}
         WHERE of.lot_id IN ({}) AND {IF_THEY_COUNT}
         UNION ALL
         SELECT TRUE AS added, of.deed_id AS owner, deeds.at, of.what, of.mg AS amount, of.id
         FROM additions of JOIN deeds ON deeds.id = of.deed_id
         WHERE of.deed_id IN ({})
         ORDER BY 3, 6",
        listed(lots),
        listed(steps)
    );
    let rows: Vec<NumberRow> = on_each!(conn, c => sql_query(sql).load(c)?);
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
            true => {
                let water = numbers.water.entry(DeedId(row.owner)).or_default();
                *water += Grams::from_milligrams(row.amount);
            }
        }
    }
    Ok(numbers)
}
