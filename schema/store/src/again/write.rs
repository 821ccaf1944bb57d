//! Writing down what came of judging again: what changed of lots and their packs, and what was before.

use crate::chain::rows::JudgedRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::insert_rows;
use crate::lots::{LotRow, contents, joined, life, write_origin};
use crate::measurements::{self, Measurement, Told};
use crate::packs;
use crate::prepared::Prepared;
use crate::tables::{judged_again, lots as lots_table};
use chrono::NaiveDate;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Array, Date, Integer, Nullable, Text};
use domain::deed::again::BornAs;
use domain::lot::{PackId, PackNow};
use domain::stop::{NewStop, StopId};
use serde_json::{Map, Value, json};
use std::collections::HashMap;

/// A lot that was judged again, and is not what it was.
#[derive(Debug)]
pub struct JudgedLot<'a> {
    /// The lot as it stands.
    pub row: &'a LotRow,
    /// What it was born as, from now on.
    pub born: &'a BornAs,
    /// Its packs that are otherwise now.
    pub packs: Vec<(PackId, PackNow)>,
    /// What its cure brought, where that is otherwise now.
    pub measured: &'a [Measurement],
}

/// A stop that is placed because of what was judged again.
#[derive(Debug, Clone)]
pub struct StopOf {
    /// On which lot.
    pub lot: i32,
    /// On which pack of it; none for the whole lot.
    pub pack: Option<PackId>,
    /// The stop; its root may be one that has no key yet.
    pub stop: NewStop,
    /// What it is named by until it has a key: below zero.
    pub named: StopId,
}

/// Places stops. What is inherited follows what it is inherited from.
///
/// # Errors
/// The database is away or full.
pub fn place(tx: &mut Tx<'_>, deed: i32, mut all: Vec<StopOf>) -> Result<()> {
    let unnamed = |stop: &StopOf| stop.stop.root.is_some_and(|root| root.0 < 0);
    let (mut heirs, first): (Vec<StopOf>, Vec<StopOf>) = all.drain(..).partition(unnamed);
    let onto = |of: &StopOf| (of.lot, of.pack, of.stop.clone());
    let put = |tx: &mut Tx<'_>, some: &[StopOf]| {
        let rows: Vec<_> = some.iter().map(onto).collect();
        let rows: Vec<_> = rows
            .iter()
            .map(|(lot, pack, stop)| (*lot, *pack, stop))
            .collect();
        crate::stops::place(tx, deed, &rows)
    };
    let keys = put(tx, &first)?;
    let known = first.iter().zip(keys);
    let known: HashMap<StopId, i32> = known.map(|(of, key)| (of.named, key)).collect();
    for heir in &mut heirs {
        let root = heir.stop.root.and_then(|root| known.get(&root));
        heir.stop.root = root.map(|key| StopId(*key));
    }
    put(tx, &heirs)?;
    Ok(())
}

/// The columns of a lot that follow from what it was made of.
struct Columns {
    allergens: String,
    species: String,
    origin: &'static str,
    animal: Option<i32>,
    later: Option<String>,
    use_by: Option<NaiveDate>,
    days_left: Option<i32>,
}

impl Columns {
    fn of(lot: &JudgedLot<'_>) -> Result<Columns> {
        let (origin, animal) = write_origin(lot.born.origin);
        Ok(Columns {
            allergens: contents(
                &lot.born.allergens,
                &lot.born.may_contain,
                lot.born.supplied.as_ref(),
            ),
            species: joined(lot.born.species.iter().map(|word| word.as_str())),
            origin,
            animal,
            // Its first condition stays, as it was at its birth; what it is since is in `conditions`.
            later: match lot.row.condition()? {
                Some(condition) => Some(life(condition, &lot.born.later)),
                None => lot.row.later.clone(),
            },
            use_by: lot.born.born.use_by,
            days_left: lot.born.born.days_left,
        })
    }

    /// What of a lot changes, as it was and as it is.
    fn against(&self, row: &LotRow) -> (Value, Value) {
        let (mut was, mut now) = (Map::new(), Map::new());
        let mut tell = |name: &str, before: Value, after: Value| {
            if before != after {
                was.insert(name.to_owned(), before);
                now.insert(name.to_owned(), after);
            }
        };
        tell("allergens", json!(row.allergens), json!(self.allergens));
        tell("species", json!(row.species), json!(self.species));
        tell("origin", json!(row.origin), json!(self.origin));
        tell("animal", json!(row.animal_id), json!(self.animal));
        tell("later", json!(row.later), json!(self.later));
        let day = |day: Option<NaiveDate>| json!(day.map(|day| day.to_string()));
        tell("use_by", day(row.born_use_by), day(self.use_by));
        tell(
            "days_left",
            json!(row.born_days_left),
            json!(self.days_left),
        );
        (Value::Object(was), Value::Object(now))
    }
}

/// Writes down what some lots are from now on, and what they were.
///
/// # Errors
/// The database is away or full.
pub fn write(tx: &mut Tx<'_>, deed: i32, lots: &[JudgedLot<'_>]) -> Result<()> {
    let ids = tx.ids.take(tx.conn, lots.len())?;
    let mut rows = Vec::with_capacity(lots.len());
    let mut changed = Vec::with_capacity(lots.len());
    for (lot, id) in lots.iter().zip(ids) {
        let columns = Columns::of(lot)?;
        let (was, now) = columns.against(lot.row);
        rows.push(JudgedRow {
            id,
            deed_id: deed,
            lot_id: lot.row.id,
            condition: lot.born.condition.map(|condition| condition.to_string()),
            was: was.to_string(),
            now: now.to_string(),
        });
        if was != now {
            changed.push((lot.row.id, columns));
        }
    }
    if !tx.is_trial {
        insert_rows!(tx.conn, judged_again::table, &rows);
        tx.seal_all(deed, &rows);
    }
    set_all(tx.conn, &changed)?;
    let packs: Vec<_> = lots
        .iter()
        .flat_map(|lot| lot.packs.iter().copied())
        .collect();
    packs::set_all(tx.conn, &packs)?;
    let measured = lots.iter().filter(|lot| !lot.measured.is_empty());
    let told: Vec<Told<'_>> = measured
        .map(|lot| Told {
            of_deed: Some(lot.row.deed_id),
            lot: Some(lot.row.id),
            place: None,
            readings: lot.measured,
            probe: None,
        })
        .collect();
    measurements::insert_all(tx, deed, &told)
}

/// On PostgreSQL, where each statement is a round trip, all at once.
fn set_all(conn: &mut Conn, all: &[(i32, Columns)]) -> Result<()> {
    use lots_table::dsl as l;
    match conn {
        Conn::Pg(conn) => {
            fn each<'a, T>(all: &'a [(i32, Columns)], of: impl Fn(&'a Columns) -> T) -> Vec<T> {
                all.iter().map(|(_, columns)| of(columns)).collect()
            }
            let sql = "UPDATE lots SET allergens = now.allergens, species = now.species,
                    origin = now.origin, animal_id = now.animal_id, later = now.later,
                    born_use_by = now.use_by, born_days_left = now.days_left
                FROM unnest($1, $2, $3, $4, $5, $6, $7, $8)
                    AS now(id, allergens, species, origin, animal_id, later, use_by, days_left)
                WHERE lots.id = now.id";
            let update = sql_query(sql)
                .bind::<Array<Integer>, _>(all.iter().map(|(lot, _)| *lot).collect::<Vec<_>>())
                .bind::<Array<Text>, _>(each(all, |of| of.allergens.as_str()))
                .bind::<Array<Text>, _>(each(all, |of| of.species.as_str()))
                .bind::<Array<Text>, _>(each(all, |of| of.origin))
                .bind::<Array<Nullable<Integer>>, _>(each(all, |of| of.animal))
                .bind::<Array<Nullable<Text>>, _>(each(all, |of| of.later.as_deref()))
                .bind::<Array<Nullable<Date>>, _>(each(all, |of| of.use_by))
                .bind::<Array<Nullable<Integer>>, _>(each(all, |of| of.days_left));
            Prepared(update).execute(conn)?;
        }
        Conn::Sqlite(conn) => {
            for (lot, of) in all {
                let update = diesel::update(l::lots.find(*lot)).set((
                    l::allergens.eq(&of.allergens),
                    l::species.eq(&of.species),
                    l::origin.eq(of.origin),
                    l::animal_id.eq(of.animal),
                    l::later.eq(&of.later),
                    l::born_use_by.eq(of.use_by),
                    l::born_days_left.eq(of.days_left),
                ));
                Prepared(update).execute(conn)?;
            }
        }
    }
    Ok(())
}
