//! Packs: the containers, and how each is now.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::on_each;
use crate::prepared::Prepared;
use crate::tables::{lots, pack_events, packs, voids};
use chrono::NaiveDate;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Array, BigInt, Bool, Date, Integer, Nullable, Text};
use domain::code::LotCode;
use domain::grams::Grams;
use domain::lot::{Pack, PackId, PackNow, PlaceId};
use domain::words::{Being, State};
use std::collections::BTreeSet;

/// A pack as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, AsChangeset, PartialEq)]
#[diesel(table_name = packs, treat_none_as_default_value = false, treat_none_as_null = true)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct PackRow {
    pub id: i32,
    pub lot_id: i32,
    pub number: i32,
    pub made_mg: i64,
    pub left_mg: i64,
    pub being: String,
    pub place_id: i32,
    pub state: String,
    pub use_by: Option<NaiveDate>,
    pub days_left: Option<i32>,
    pub taken_back: bool,
    pub printed: bool,
}

impl PackRow {
    /// A row of a pack as it is.
    pub(crate) fn new(id: i32, lot_id: i32, number: i32, made: Grams, now: &PackNow) -> PackRow {
        PackRow {
            id,
            lot_id,
            number,
            made_mg: made.milligrams(),
            left_mg: now.left.milligrams(),
            being: now.being.as_str().to_owned(),
            place_id: now.place.0,
            state: now.state.as_str().to_owned(),
            use_by: now.use_by,
            days_left: now.days_left,
            taken_back: now.taken_back,
            printed: false,
        }
    }

    /// The domain's pack.
    pub fn pack(&self) -> Result<Pack> {
        let bad = |what| Error::bad_row("packs", self.id, what);
        Ok(Pack {
            id: PackId(self.id),
            number: u32::try_from(self.number).map_err(|_| bad("number"))?,
            made: Grams::from_milligrams(self.made_mg),
            now: PackNow {
                left: Grams::from_milligrams(self.left_mg),
                being: Being::parse(&self.being).ok_or_else(|| bad("unknown being"))?,
                place: PlaceId(self.place_id),
                state: State::parse(&self.state).ok_or_else(|| bad("unknown state"))?,
                use_by: self.use_by,
                days_left: self.days_left,
                taken_back: self.taken_back,
            },
            past: None,
        })
    }
}

/// Which packs of a lot to load.
#[derive(Debug, Clone)]
pub enum PackChoice {
    /// All of them.
    All,
    /// Those that hold something.
    OnHand,
    /// These numbers.
    Numbers(Vec<i32>),
}

impl PackChoice {
    /// The packs of some numbers. A lot has none of more than the database counts to.
    pub fn of_numbers(numbers: &[u32]) -> PackChoice {
        let known = numbers.iter().map(|number| i32::try_from(*number));
        PackChoice::Numbers(known.filter_map(std::result::Result::ok).collect())
    }

    /// How many packs are named.
    pub fn named(&self) -> usize {
        match self {
            PackChoice::All | PackChoice::OnHand => 0,
            PackChoice::Numbers(numbers) => numbers.len(),
        }
    }

    /// Is a pack among those that are wanted?
    pub fn takes(&self, pack: &PackRow) -> bool {
        match self {
            PackChoice::All => true,
            PackChoice::OnHand => pack.left_mg > 0,
            PackChoice::Numbers(numbers) => numbers.contains(&pack.number),
        }
    }
}

/// Packs of a lot, by number.
pub fn of_lot(conn: &mut Conn, lot: i32, wanted: &PackChoice) -> Result<Vec<PackRow>> {
    if let PackChoice::Numbers(numbers) = wanted
        && let [number] = numbers[..]
    {
        return one_of_lot(conn, lot, number);
    }
    let query = packs::table
        .filter(packs::lot_id.eq(lot))
        .order(packs::number)
        .select(PackRow::as_select());
    Ok(match wanted {
        PackChoice::All => query.load(conn)?,
        PackChoice::OnHand => query.filter(packs::left_mg.gt(0)).load(conn)?,
        PackChoice::Numbers(numbers) => query.filter(packs::number.eq_any(numbers)).load(conn)?,
    })
}

/// One pack, as a scan asks for it: on the engine itself, whose prepared statement is found by the query's type.
fn one_of_lot(conn: &mut Conn, lot: i32, number: i32) -> Result<Vec<PackRow>> {
    Ok(on_each!(conn, c => packs::table
        .filter(packs::lot_id.eq(lot))
        .filter(packs::number.eq(number))
        .select(PackRow::as_select())
        .load(c)?))
}

/// The packs that are wanted of each of several lots, by lot and number.
pub fn of_each(conn: &mut Conn, wanted: &[(i32, PackChoice)]) -> Result<Vec<PackRow>> {
    if let [(lot, wanted)] = wanted {
        // One lot is the usual case, and its prepared statement is kept.
        return of_lot(conn, *lot, wanted);
    }
    let mut found = Vec::new();
    for some in wanted.chunks(AT_ONCE) {
        let mut query = packs::table
            .order((packs::lot_id, packs::number))
            .select(PackRow::as_select())
            .into_boxed();
        for (lot, wanted) in some {
            let of = packs::lot_id.eq(*lot);
            query = match wanted {
                PackChoice::All => query.or_filter(of),
                PackChoice::OnHand => query.or_filter(of.and(packs::left_mg.gt(0))),
                PackChoice::Numbers(numbers) => {
                    query.or_filter(of.and(packs::number.eq_any(numbers)))
                }
            };
        }
        found.extend(query.load::<PackRow>(conn)?);
    }
    // In one order whatever was asked first, and none twice.
    found.sort_by_key(|pack| (pack.lot_id, pack.number));
    found.dedup_by_key(|pack| pack.id);
    Ok(found)
}

/// How many lots one statement asks for: SQLite nests a thousand alternatives and no more.
const AT_ONCE: usize = 200;

/// The numbers of the packs of a lot that hold something.
pub fn numbers_on_hand(conn: &mut Conn, lot: &LotCode) -> Result<Vec<u32>> {
    let numbers: Vec<i32> = packs::table
        .inner_join(lots::table.on(lots::id.eq(packs::lot_id)))
        .filter(lots::code.eq(lot.as_str()).and(packs::left_mg.gt(0)))
        .order(packs::number)
        .select(packs::number)
        .load(conn)?;
    Ok(numbers.into_iter().map(i32::unsigned_abs).collect())
}

/// Packs of several lots, by lot and number.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<Vec<PackRow>> {
    let query = packs::table
        .filter(packs::lot_id.eq_any(lots))
        .order((packs::lot_id, packs::number));
    Ok(query.select(PackRow::as_select()).load(conn)?)
}

/// All packs of some lots, or those of some numbers, and of others those that something is left in; by
/// lot and number.
pub fn of_family(
    conn: &mut Conn,
    lots: &[i32],
    numbers: Option<&[u32]>,
    others: &[i32],
) -> Result<Vec<PackRow>> {
    if let ([lot], []) = (lots, others) {
        let numbers = numbers.map(PackChoice::of_numbers);
        return of_lot(conn, *lot, &numbers.unwrap_or(PackChoice::All));
    }
    let left = packs::lot_id.eq_any(others).and(packs::left_mg.gt(0));
    let of_lots = packs::lot_id.eq_any(lots);
    let query = packs::table
        .order((packs::lot_id, packs::number))
        .select(PackRow::as_select());
    Ok(match numbers {
        None => query.filter(of_lots.or(left)).load(conn)?,
        Some(numbers) => {
            let numbers = numbers
                .iter()
                .filter_map(|number| i32::try_from(*number).ok());
            let named = packs::number.eq_any(numbers.collect::<Vec<_>>());
            query.filter(of_lots.and(named).or(left)).load(conn)?
        }
    })
}

/// The packs of several lots that something is left in, by lot and number.
pub fn left_of_lots(conn: &mut Conn, lots: &[i32]) -> Result<Vec<PackRow>> {
    let query = packs::table
        .filter(packs::lot_id.eq_any(lots).and(packs::left_mg.gt(0)))
        .order((packs::lot_id, packs::number));
    Ok(query.select(PackRow::as_select()).load(conn)?)
}

/// Packs by their keys.
pub fn by_keys(conn: &mut Conn, keys: &[i32]) -> Result<Vec<PackRow>> {
    Ok(packs::table
        .filter(packs::id.eq_any(keys))
        .order(packs::id)
        .select(PackRow::as_select())
        .load(conn)?)
}

/// Sets packs to how they are now; those that a label was ever printed for come back. On PostgreSQL, where
/// each statement is a round trip, all at once.
pub(crate) fn set_all(conn: &mut Conn, all: &[(PackId, PackNow)]) -> Result<Vec<i32>> {
    let distinct: BTreeSet<PackId> = all.iter().map(|(pack, _)| *pack).collect();
    match conn {
        Conn::Pg(conn) if all.len() > 1 && distinct.len() == all.len() => set_at_once(conn, all),
        // What is changed twice ends as it was changed last.
        _ => {
            let mut printed = Vec::new();
            for (pack, now) in all {
                if set(conn, *pack, now)? && printed.last() != Some(&pack.0) {
                    printed.push(pack.0);
                }
            }
            Ok(printed)
        }
    }
}

#[derive(QueryableByName)]
struct SetPack {
    #[diesel(sql_type = Integer)]
    id: i32,
    #[diesel(sql_type = Bool)]
    printed: bool,
}

fn set_at_once(conn: &mut PgConnection, all: &[(PackId, PackNow)]) -> Result<Vec<i32>> {
    fn each<T>(all: &[(PackId, PackNow)], of: impl Fn(&PackNow) -> T) -> Vec<T> {
        all.iter().map(|(_, now)| of(now)).collect()
    }
    let sql = "UPDATE packs SET left_mg = now.left_mg, being = now.being, place_id = now.place_id,
                   state = now.state, use_by = now.use_by, days_left = now.days_left,
                   taken_back = now.taken_back
               FROM unnest($1, $2, $3, $4, $5, $6, $7, $8)
                   AS now(id, left_mg, being, place_id, state, use_by, days_left, taken_back)
               WHERE packs.id = now.id RETURNING packs.id, packs.printed";
    let update = sql_query(sql)
        .bind::<Array<Integer>, _>(all.iter().map(|(pack, _)| pack.0).collect::<Vec<_>>())
        .bind::<Array<BigInt>, _>(each(all, |now| now.left.milligrams()))
        .bind::<Array<Text>, _>(each(all, |now| now.being.as_str()))
        .bind::<Array<Integer>, _>(each(all, |now| now.place.0))
        .bind::<Array<Text>, _>(each(all, |now| now.state.as_str()))
        .bind::<Array<Nullable<Date>>, _>(each(all, |now| now.use_by))
        .bind::<Array<Nullable<Integer>>, _>(each(all, |now| now.days_left))
        .bind::<Array<Bool>, _>(each(all, |now| now.taken_back));
    let set: Vec<SetPack> = Prepared(update).load(conn)?;
    let printed = set.into_iter().filter(|pack| pack.printed);
    Ok(printed.map(|pack| pack.id).collect())
}

/// Sets a pack to how it is now; was a label ever printed for it?
fn set(conn: &mut Conn, pack: PackId, now: &PackNow) -> Result<bool> {
    let update = diesel::update(packs::table.find(pack.0))
        .set((
            packs::left_mg.eq(now.left.milligrams()),
            packs::being.eq(now.being.as_str()),
            packs::place_id.eq(now.place.0),
            packs::state.eq(now.state.as_str()),
            packs::use_by.eq(now.use_by),
            packs::days_left.eq(now.days_left),
            packs::taken_back.eq(now.taken_back),
        ))
        .returning(packs::printed);
    let printed: Option<bool> = Prepared(update).get_result(conn).optional()?;
    Ok(printed.unwrap_or(false))
}

/// Adds packs.
pub(crate) fn insert(tx: &mut Tx<'_>, deed: i32, rows: &[PackRow]) -> Result<()> {
    insert_rows!(tx.conn, packs::table, rows);
    tx.seal_all(deed, rows);
    Ok(())
}

/// How the packs of a lot came to be kept otherwise, the oldest first: pack, state, day. Voided deeds
/// are left out.
pub fn states(conn: &mut Conn, lot: i32) -> Result<Vec<(u32, State, NaiveDate)>> {
    let rows: Vec<(i32, Option<String>, NaiveDate)> = pack_events::table
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .filter(
            pack_events::lot_id
                .eq(lot)
                .and(pack_events::state.is_not_null())
                .and(voids::id.is_null()),
        )
        .order(pack_events::seq)
        .select((packs::number, pack_events::state, pack_events::day))
        .load(conn)?;
    let read = |(number, state, day): (i32, Option<String>, NaiveDate)| {
        let state = state.as_deref().and_then(State::parse);
        let state =
            state.ok_or_else(|| Error::bad_row("pack_events", lot, "has an unknown state"))?;
        Ok((number.unsigned_abs(), state, day))
    };
    rows.into_iter().map(read).collect()
}

/// What a deed did with packs: the lot, the number of the pack, and milligrams; each pack once.
pub fn of_deed(conn: &mut Conn, deed: i32) -> Result<Vec<(i32, u32, i64)>> {
    let rows: Vec<(i32, i32, i64)> = pack_events::table
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .filter(pack_events::deed_id.eq(deed))
        .order(pack_events::seq)
        .select((pack_events::lot_id, packs::number, pack_events::mg))
        .load(conn)?;
    let mut all: Vec<(i32, u32, i64)> = Vec::with_capacity(rows.len());
    for (lot, number, mg) in rows {
        let number = number.unsigned_abs();
        match all
            .iter_mut()
            .find(|(of, pack, _)| (*of, *pack) == (lot, number))
        {
            Some((_, _, sum)) => *sum += mg,
            None => all.push((lot, number, mg)),
        }
    }
    Ok(all)
}
