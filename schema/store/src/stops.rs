//! Stops: what deeds placed on lots and packs, and what ended them.

pub mod about;
pub(crate) mod checked;

use crate::chain::rows::StopEndRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::keyed;
use crate::reasons::{basis, rule_in};
use crate::said;
use crate::tables::{deeds, lots, packs, sources, stop_ends, stops, versions, voids};
use chrono::{DateTime, NaiveDateTime, Utc};
use diesel::dsl::exists;
use diesel::prelude::*;
use domain::dates::Because;
use domain::lot::PackId;
use domain::rows::RowId;
use domain::stop::{Cause, IncidentId, NewStop, Placed, StopId};
use domain::words::{DeedKind, Disposal, State, StopKind, Topic};
use std::collections::HashMap;

/// A stop as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = stops, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct StopRow {
    pub id: i32,
    pub deed_id: i32,
    pub lot_id: i32,
    pub pack_id: Option<i32>,
    pub root_id: i32,
    pub kind: String,
    pub topic: String,
    pub said: String,
    pub basis: String,
    pub since: NaiveDateTime,
    pub incident_id: Option<i32>,
}

impl StopRow {
    /// The domain's stop, ended or not.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn placed(&self, ended: Option<DateTime<Utc>>) -> Result<Placed> {
        let bad = |what: &str| Error::bad_row("stops", self.id, what);
        let rule = serde_json::from_str(&self.basis).ok();
        Ok(Placed {
            id: StopId(self.id),
            root: StopId(self.root_id),
            pack: self.pack_id.map(PackId),
            cause: Cause {
                kind: StopKind::parse(&self.kind).ok_or_else(|| bad("unknown kind"))?,
                topic: Topic::parse(&self.topic).ok_or_else(|| bad("unknown topic"))?,
                because: Because {
                    says: said::recalled(&self.said),
                    rule: rule
                        .as_ref()
                        .and_then(rule_in)
                        .ok_or_else(|| bad("unknown basis"))?,
                },
                since: self.since.and_utc(),
            },
            incident: self.incident_id.map(IncidentId),
            ended,
        })
    }
}

/// Did a deed place a stop, or end one? To take it back is to lift the stop, or to place it again.
///
/// # Errors
/// The database is away.
pub fn hangs_on(conn: &mut Conn, deed: i32) -> Result<bool> {
    let placed = stops::table.filter(stops::deed_id.eq(deed));
    Ok(diesel::select(diesel::dsl::exists(placed)).get_result(conn)?)
}

/// Is there anything to look for on a lot? A stop is seen where it lies. A hold that noted it on each lot besides took twice as long, since all of a lot's row is
/// written anew then.
#[diesel::dsl::auto_type]
pub(crate) fn is_stopped() -> _ {
    let placed = stops::table.filter(stops::lot_id.eq(lots::id));
    lots::stopped.or(exists(placed))
}

/// A stop with the lot, or the pack of it, that it goes on.
pub(crate) type Onto<'a> = (i32, Option<PackId>, &'a NewStop);

/// Places stops.
pub(crate) fn place(tx: &mut Tx<'_>, deed: i32, all: &[Onto<'_>]) -> Result<Vec<i32>> {
    if all.is_empty() {
        return Ok(Vec::new());
    }
    let mut ids = tx.ids.take(tx.conn, all.len())?.into_iter();
    let mut rows = Vec::with_capacity(all.len());
    // A hold places one stop on many lots: what it says is written out once.
    for same in all.chunk_by(|one, other| std::ptr::eq(one.2, other.2)) {
        let stop = same[0].2;
        let said = said::kept(&stop.cause.because.says);
        let basis = basis(&stop.cause.because.rule).to_string();
        let row = |((lot, pack, _), id): (&Onto<'_>, i32)| StopRow {
            id,
            deed_id: deed,
            lot_id: *lot,
            pack_id: pack.map(|pack| pack.0),
            root_id: stop.root.map_or(id, |root| root.0),
            kind: stop.cause.kind.as_str().to_owned(),
            topic: stop.cause.topic.as_str().to_owned(),
            said: said.clone(),
            basis: basis.clone(),
            since: stop.cause.since.naive_utc(),
            incident_id: stop.incident.map(|of| of.0),
        };
        rows.extend(same.iter().zip(ids.by_ref()).map(row));
    }
    insert_rows!(tx.conn, stops::table, &rows);
    tx.seal_all(deed, &rows);
    let mut keys: Vec<i32> = all.iter().map(|(lot, _, _)| *lot).collect();
    keys.sort_unstable();
    keys.dedup();
    are_there(tx.conn, &keys)?;
    Ok(rows.into_iter().map(|row| row.id).collect())
}

/// Notes on lots that there is something to look for besides stops.
///
/// # Errors
/// The database is away.
pub(crate) fn mark(conn: &mut Conn, mut keys: Vec<i32>) -> Result<()> {
    keys.sort_unstable();
    keys.dedup();
    for some in keys.chunks(10_000) {
        keyed::change(conn, some, |these| {
            format!("UPDATE lots SET stopped = TRUE WHERE id {these} AND NOT stopped")
        })?;
    }
    Ok(())
}

/// Refuses a stop on a lot that is not there. PostgreSQL is asked once for all of them: row by row, by a foreign key, that
/// took longer than to write the stops (see `migrate`).
fn are_there(conn: &mut Conn, keys: &[i32]) -> Result<()> {
    if !matches!(conn, Conn::Pg(_)) {
        return Ok(());
    }
    let mut there = 0;
    for some in keys.chunks(10_000) {
        let found: Vec<HowMany> = keyed::of(conn, some, |these| {
            format!("SELECT CAST(COUNT(*) AS BIGINT) AS rows FROM lots WHERE id {these}")
        })?;
        there += found.iter().map(|of| of.rows).sum::<i64>();
    }
    match there == keys.len() as i64 {
        true => Ok(()),
        false => Err(Error::Broken("a stop on a lot that is not there".into())),
    }
}

#[derive(QueryableByName)]
struct HowMany {
    #[diesel(sql_type = diesel::sql_types::BigInt)]
    rows: i64,
}

/// Ends stops.
pub(crate) fn end(tx: &mut Tx<'_>, deed: i32, all: &[(StopId, Disposal)]) -> Result<()> {
    let ids = tx.ids.take(tx.conn, all.len())?;
    let row = |((stop, what), id): (&(StopId, Disposal), i32)| StopEndRow {
        id,
        deed_id: deed,
        stop_id: stop.0,
        what: what.as_str().to_owned(),
    };
    let rows: Vec<StopEndRow> = all.iter().zip(ids).map(row).collect();
    insert_rows!(tx.conn, stop_ends::table, &rows);
    tx.seal_all(deed, &rows);
    Ok(())
}

/// The stops of some lots that have any, by lot, in order; those that voided deeds placed are left out.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<HashMap<i32, Vec<Placed>>> {
    let mut found: HashMap<i32, Vec<Placed>> = HashMap::new();
    if lots.is_empty() {
        return Ok(found);
    }
    let rows: Vec<StopRow> = stops::table
        .left_join(voids::table.on(voids::deed_id.eq(stops::deed_id)))
        .filter(stops::lot_id.eq_any(lots).and(voids::id.is_null()))
        .order(stops::id)
        .select(StopRow::as_select())
        .load(conn)?;
    let mut ends: Vec<i32> = rows.iter().flat_map(|row| [row.id, row.root_id]).collect();
    ends.sort_unstable();
    ends.dedup();
    let ended: Vec<(i32, NaiveDateTime)> = stop_ends::table
        .inner_join(deeds::table.on(deeds::id.eq(stop_ends::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(stop_ends::deed_id)))
        .filter(stop_ends::stop_id.eq_any(ends).and(voids::id.is_null()))
        .select((stop_ends::stop_id, deeds::at))
        .load(conn)?;
    let mut first: HashMap<i32, NaiveDateTime> = HashMap::new();
    for (stop, at) in ended {
        let known = first.entry(stop).or_insert(at);
        *known = at.min(*known);
    }
    for row in rows {
        let ends = [row.id, row.root_id];
        let ended = ends.iter().filter_map(|stop| first.get(stop)).min();
        let placed = row.placed(ended.map(|at| at.and_utc()))?;
        found.entry(row.lot_id).or_default().push(placed);
    }
    Ok(found)
}

/// The stops that failures of places put on some packs and that nobody ended: the stop, the pack, the failure's deed.
///
/// # Errors
/// The database is away.
pub fn of_failures(conn: &mut Conn, some: &[i32]) -> Result<Vec<(StopId, PackId, i32)>> {
    let rows: Vec<(i32, Option<i32>, i32)> = stops::table
        .inner_join(deeds::table.on(deeds::id.eq(stops::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(stops::deed_id)))
        .filter(deeds::kind.eq(DeedKind::PlaceFailed.as_str()))
        .filter(voids::id.is_null().and(stops::root_id.eq(stops::id)))
        .filter(stops::pack_id.eq_any(some))
        .order(stops::id)
        .select((stops::id, stops::pack_id, stops::deed_id))
        .load(conn)?;
    let ids: Vec<i32> = rows.iter().map(|(stop, ..)| *stop).collect();
    let ended: Vec<i32> = stop_ends::table
        .left_join(voids::table.on(voids::deed_id.eq(stop_ends::deed_id)))
        .filter(stop_ends::stop_id.eq_any(ids).and(voids::id.is_null()))
        .select(stop_ends::stop_id)
        .load(conn)?;
    let standing = rows.into_iter().filter(|(stop, ..)| !ended.contains(stop));
    let of =
        |(stop, pack, deed): (i32, Option<i32>, i32)| Some((StopId(stop), PackId(pack?), deed));
    Ok(standing.filter_map(of).collect())
}

/// The first stops of their lines that wait for a row to be confirmed, and the lots that they are on.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn waiting_for(conn: &mut Conn, row: &RowId) -> Result<(Vec<StopId>, Vec<i32>)> {
    let rows: Vec<StopRow> = stops::table
        .filter(stops::topic.eq(Topic::Confirmation.as_str()))
        .filter(stops::root_id.eq(stops::id))
        .order(stops::id)
        .select(StopRow::as_select())
        .load(conn)?;
    let (mut waits, mut lots) = (Vec::new(), Vec::new());
    for of in rows {
        let placed = of.placed(None)?;
        if placed.cause.because.rows().contains(row) {
            waits.push(placed.id);
            lots.push(of.lot_id);
        }
    }
    lots.sort_unstable();
    lots.dedup();
    Ok((waits, lots))
}

/// The lots that something is left of and that a stop was ever placed on, or that are noted.
pub fn stopped_lots(conn: &mut Conn) -> Result<Vec<i32>> {
    let placed = stops::table.select(stops::lot_id).distinct();
    Ok(lots::table
        .filter(lots::stopped.eq(true).or(lots::id.eq_any(placed)))
        .filter(lots::on_hand_mg.gt(0))
        .order(lots::id)
        .select(lots::id)
        .load(conn)?)
}

/// The lots that something is left of and that are not proven to be what a list may claim of them: raw
/// or treated ones that it calls ready, those with a pack that has no date and is not frozen, and those whose maker's date is over.
pub fn unproven_lots(conn: &mut Conn, today: chrono::NaiveDate) -> Result<Vec<i32>> {
    let raw = lots::later.like("raw %").or(lots::later.like("treated %"));
    // What is listed as raw claims nothing of the sort: most of a kitchen is raw, and need not be looked at.
    let claims = versions::body.not_like("%\"raw\":true%");
    let mut found: Vec<i32> = lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .filter(raw.and(claims).and(lots::on_hand_mg.gt(0)))
        .select(lots::id)
        .load(conn)?;
    let undated: Vec<i32> = packs::table
        .filter(packs::left_mg.gt(0).and(packs::use_by.is_null()))
        .filter(packs::state.ne(State::Frozen.as_str()))
        .select(packs::lot_id)
        .distinct()
        .load(conn)?;
    found.extend(undated);
    // What stands at room temperature, or is listed as if it could.
    let warm: Vec<i32> = packs::table
        .filter(
            packs::left_mg
                .gt(0)
                .and(packs::state.eq(State::Ambient.as_str())),
        )
        .select(packs::lot_id)
        .distinct()
        .load(conn)?;
    found.extend(warm);
    let listed = versions::body.like("%\"controlled\":false%");
    let listed = listed.or(versions::body.like("%\"storage\":\"ambient\"%"));
    let listed: Vec<i32> = lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .filter(lots::on_hand_mg.gt(0).and(lots::species.ne("")).and(listed))
        .select(lots::id)
        .load(conn)?;
    found.extend(listed);
    // Most that was bought has such a date, and until it is over nothing hangs on it: only the dates are read of them all.
    // In one question with what was warmed and is not cooked through.
    let told = lots::later.like("%cap=%");
    let told = told.or(lots::later.like("%partly-cooked%"));
    let told: Vec<(i32, Option<String>)> = lots::table
        .filter(told.and(lots::on_hand_mg.gt(0)))
        .select((lots::id, lots::later))
        .load(conn)?;
    let stopped = told.into_iter().filter(|(_, later)| {
        let words = later.as_deref().unwrap_or_default();
        words.contains("partly-cooked") || is_over(words, today)
    });
    found.extend(stopped.map(|(lot, _)| lot));
    Ok(found)
}

/// Is the maker's date over that stands in what is kept of a lot's life? One that cannot be read is looked at, and says so.
fn is_over(life: &str, today: chrono::NaiveDate) -> bool {
    let mut words = life.split_whitespace();
    let cap = words.find_map(|word| word.strip_prefix("cap="));
    let cap = cap.and_then(|day| day.parse::<chrono::NaiveDate>().ok());
    cap.is_none_or(|cap| cap < today)
}

/// The lots that something is left of and that were made before conditions were asked.
pub fn judged_before(conn: &mut Conn) -> Result<Vec<i32>> {
    let before = lots::later.is_null().or(lots::later.not_like("%; %"));
    Ok(lots::table
        .filter(before.and(lots::on_hand_mg.gt(0)))
        .order(lots::id)
        .select(lots::id)
        .load(conn)?)
}

/// The bought lots that something is left of and that came in before it was kept of what they are made: what
/// is in them is read from the list of today.
pub fn read_from_list(conn: &mut Conn) -> Result<Vec<i32>> {
    let bought = sources::is_current
        .eq(true)
        .and(sources::supplier.is_not_null());
    // What was told when it came in stands on lines of its own, behind the allergens.
    let unkept = lots::allergens.not_like("%\n%");
    Ok(lots::table
        .inner_join(sources::table.on(sources::lot_id.eq(lots::id)))
        .filter(bought.and(unkept).and(lots::on_hand_mg.gt(0)))
        .order(lots::id)
        .select(lots::id)
        .load(conn)?)
}

/// The lots with a pack on hand whose last day is over.
pub fn past_lots(conn: &mut Conn, today: chrono::NaiveDate) -> Result<Vec<i32>> {
    Ok(packs::table
        .filter(packs::left_mg.gt(0).and(packs::use_by.lt(today)))
        .select(packs::lot_id)
        .distinct()
        .order(packs::lot_id)
        .load(conn)?)
}
