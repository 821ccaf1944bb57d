//! What was ever said of where lots came from: what is known now, and what was known until it was corrected.

use super::rows::Uid;
use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::keyed::{self, AT_ONCE};
use crate::lots::LotRow;
use crate::tables::{animals, deeds, entries, lots, sources, versions, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::{exists, not};
use diesel::prelude::*;
use domain::code::LotCode;
use domain::scope::SourceFact;
use std::collections::HashMap;

/// Which facts are looked at.
#[derive(Debug, Clone, Copy)]
pub enum FactFilter<'a> {
    /// Those about one animal.
    Animal(i32),
    /// Those about animals of a farm, or of any, killed in a time whose end is out.
    Killed {
        /// The farm's code.
        farm: Option<&'a str>,
        /// Killed on this day or later.
        from: Option<NaiveDate>,
        /// Killed before this day.
        until: Option<NaiveDate>,
    },
    /// Those about a supplier's lots.
    Supplier(&'a str),
}

type Row = (
    (i32, String, bool, bool, i32),
    Option<(
        i32,
        i32,
        String,
        NaiveDate,
        Option<String>,
        Option<String>,
        Option<String>,
    )>,
    (Option<String>, Option<String>),
);

/// The facts, in the order in which they were told; those that voided deeds told are left out.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn facts(conn: &mut Conn, filter: FactFilter<'_>) -> Result<Vec<SourceFact>> {
    let mut query = sources::table
        .inner_join(lots::table.on(lots::id.eq(sources::lot_id)))
        .left_join(animals::table.on(sources::animal_id.eq(animals::id.nullable())))
        // By `EXISTS`: of a join without a match PostgreSQL thinks that next to nothing is left, and begins there.
        .filter(not(exists(
            voids::table.filter(voids::deed_id.eq(sources::deed_id)),
        )))
        .order((sources::lot_id, sources::id))
        .select((
            (
                sources::lot_id,
                lots::code,
                lots::voided,
                sources::is_current,
                sources::deed_id,
            ),
            (
                animals::id,
                animals::deed_id,
                animals::farm,
                animals::killed_on,
                animals::abattoir,
                animals::carcass,
                animals::tag,
            )
                .nullable(),
            (sources::supplier, sources::supplier_lot),
        ))
        .into_boxed();
    match filter {
        FactFilter::Animal(key) => query = query.filter(sources::animal_id.eq(key)),
        FactFilter::Killed { farm, from, until } => {
            query = query.filter(sources::animal_id.is_not_null());
            if let Some(farm) = farm {
                query = query.filter(animals::farm.eq(farm.to_owned()));
            }
            if let Some(from) = from {
                query = query.filter(animals::killed_on.ge(from));
            }
            if let Some(until) = until {
                query = query.filter(animals::killed_on.lt(until));
            }
        }
        FactFilter::Supplier(code) => query = query.filter(sources::supplier.eq(code.to_owned())),
    }
    let rows: Vec<Row> = query.load(conn)?;
    let brought: Vec<i32> = rows
        .iter()
        .filter_map(|row| Some(row.1.as_ref()?.1))
        .collect();
    let uids = uids(conn, brought)?;
    let once = rows.iter().filter(|row| !row.0.3);
    let corrected = corrected(conn, once.map(|row| row.0.0).collect())?;
    let fact = |((lot, code, is_voided, is_current, _), animal, (supplier, supplier_lot)): Row| {
        let read = LotCode::read(&code);
        let mut fact = SourceFact {
            lot,
            code: Some(read.map_err(|_| Error::bad_row("lots", lot, "malformed code"))?),
            is_current,
            is_voided,
            supplier,
            supplier_lot,
            corrected: corrected.get(&lot).filter(|_| !is_current).cloned(),
            ..SourceFact::default()
        };
        if let Some((key, deed, farm, killed_on, abattoir, carcass, tag)) = animal {
            fact.animal = Some(key);
            fact.uid = uids.get(&deed).cloned().unwrap_or_default();
            fact.farm = Some(farm);
            fact.killed_on = Some(killed_on);
            fact.abattoir = abattoir;
            fact.carcass = carcass;
            fact.tag = tag;
        }
        Ok(fact)
    };
    rows.into_iter().map(fact).collect()
}

/// The ids of deeds, as devices made them.
///
/// # Errors
/// The database is away.
pub fn uids(conn: &mut Conn, mut keys: Vec<i32>) -> Result<HashMap<i32, Vec<u8>>> {
    keys.sort_unstable();
    keys.dedup();
    let mut found = HashMap::new();
    for some in keys.chunks(AT_ONCE) {
        let rows: Vec<Uid> = keyed::of(conn, some, |these| {
            format!("SELECT id, uid FROM deeds WHERE id {these}")
        })?;
        found.extend(rows.into_iter().map(|row| (row.id, row.uid)));
    }
    Ok(found)
}

type Correctors = HashMap<i32, (String, chrono::DateTime<chrono::Utc>)>;

/// Who said of lots what is known now, and when.
fn corrected(conn: &mut Conn, keys: Vec<i32>) -> Result<Correctors> {
    let mut found = HashMap::new();
    for some in keys.chunks(10_000) {
        let rows: Vec<(i32, String, NaiveDateTime)> = sources::table
            .inner_join(deeds::table.on(deeds::id.eq(sources::deed_id)))
            .filter(
                sources::lot_id
                    .eq_any(some)
                    .and(sources::is_current.eq(true)),
            )
            .select((sources::lot_id, deeds::person, deeds::at))
            .load(conn)?;
        found.extend(
            rows.into_iter()
                .map(|(lot, by, at)| (lot, (by, at.and_utc()))),
        );
    }
    Ok(found)
}

/// Did somebody of that name ever do anything?
///
/// # Errors
/// The database is away.
pub fn did_anything(conn: &mut Conn, person: &str) -> Result<bool> {
    let of = deeds::table.filter(deeds::person.eq(person));
    Ok(diesel::select(diesel::dsl::exists(of)).get_result(conn)?)
}

/// The lots of some codes, in the order of the codes; codes never given out are not among them.
///
/// # Errors
/// The database is away.
pub fn lots_of_codes(conn: &mut Conn, codes: &[&str]) -> Result<Vec<LotRow>> {
    let mut found = Vec::with_capacity(codes.len());
    for some in codes.chunks(10_000) {
        let rows = lots::table.filter(lots::code.eq_any(some));
        found.extend(rows.select(LotRow::as_select()).load::<LotRow>(conn)?);
    }
    found.sort_by(|one, other| one.code.cmp(&other.code));
    Ok(found)
}

/// The lots of a product that deeds made in a time, whose end is out; voided ones left out.
///
/// # Errors
/// The database is away.
pub fn of_product(
    conn: &mut Conn,
    product: &str,
    from: NaiveDateTime,
    until: NaiveDateTime,
) -> Result<Vec<i32>> {
    Ok(lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
        .filter(entries::code.eq(product).and(lots::voided.eq(false)))
        .filter(lots::made_at.ge(from).and(lots::made_at.lt(until)))
        .order(lots::id)
        .select(lots::id)
        .load(conn)?)
}
