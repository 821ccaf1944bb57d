//! Incidents: recalls and drills, how far each goes, what was done in it, and what it holds.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::on_each;
use crate::stops;
use crate::tables::{
    deeds, incident_acts, incident_scopes, incidents, stop_ends, stops as stops_table, voids,
};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::BigInt;
use domain::grams::Grams;

use domain::incident::{Hazard, Onto};
use domain::lot::{LotId, PackId};
use domain::stop::NewStop;
use std::collections::BTreeSet;

/// An incident.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = incidents)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct IncidentRow {
    pub id: i32,
    pub number: String,
    pub told_by: String,
    pub told_at: NaiveDateTime,
    pub hazard: String,
    pub drill: bool,
    pub holds: bool,
    pub why: String,
}

impl IncidentRow {
    /// What it is about.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn hazard(&self) -> Result<Hazard> {
        let hazard = Hazard::parse(&self.hazard);
        hazard.ok_or_else(|| Error::bad_row("incidents", self.id, "unknown hazard"))
    }
}

/// How far an incident goes, by one of its acts.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = incident_scopes)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct ScopeRow {
    pub id: i32,
    pub incident_id: i32,
    pub question: String,
    pub digest: String,
    pub lots: i32,
    pub why: String,
}

/// Something else that was done in an incident.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = incident_acts)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct ActRow {
    pub id: i32,
    pub incident_id: i32,
    pub kind: String,
    pub whom: Option<String>,
    pub text: String,
}

/// The act that ends an incident.
pub const CLOSED: &str = "closed";
/// The acts that say whether guests are told.
pub const SHOWN: &str = "shown";
/// Guests are told no longer.
pub const HIDDEN: &str = "hidden";
/// A disposition of what it holds.
pub const DISPOSED: &str = "disposed";

/// When a deed was done, and by whom.
#[derive(Debug, Clone, Queryable)]
pub struct Done {
    /// The deed's id.
    pub uid: Vec<u8>,
    /// When.
    pub at: NaiveDateTime,
    /// When it was recorded.
    pub recorded_at: NaiveDateTime,
    /// Who.
    pub person: String,
}

/// Adds an incident.
///
/// # Errors
/// The database is away or full.
pub fn insert(tx: &mut Tx<'_>, row: &IncidentRow) -> Result<()> {
    diesel::insert_into(incidents::table)
        .values(row)
        .execute(tx.conn)?;
    tx.seal(row.id, row);
    Ok(())
}

/// Adds how far it goes.
///
/// # Errors
/// The database is away or full.
pub fn insert_scope(tx: &mut Tx<'_>, row: &ScopeRow) -> Result<()> {
    diesel::insert_into(incident_scopes::table)
        .values(row)
        .execute(tx.conn)?;
    tx.seal(row.id, row);
    Ok(())
}

/// Adds something else that was done.
///
/// # Errors
/// The database is away or full.
pub fn insert_act(tx: &mut Tx<'_>, row: &ActRow) -> Result<()> {
    diesel::insert_into(incident_acts::table)
        .values((
            incident_acts::id.eq(row.id),
            incident_acts::incident_id.eq(row.incident_id),
            incident_acts::kind.eq(&row.kind),
            incident_acts::whom.eq(&row.whom),
            incident_acts::text.eq(&row.text),
        ))
        .execute(tx.conn)?;
    tx.seal(row.id, row);
    Ok(())
}

/// Places holds of an incident, under the deed that it began with: they are its own, whichever deed they came by.
///
/// # Errors
/// The database is away or full.
pub fn hold(tx: &mut Tx<'_>, incident: i32, onto: &[Onto], stop: &NewStop) -> Result<()> {
    let all: Vec<_> = onto
        .iter()
        .map(|(lot, pack)| (lot.0, *pack, stop))
        .collect();
    stops::place(tx, incident, &all)?;
    Ok(())
}

/// The incident of an id.
///
/// # Errors
/// The database is away.
pub fn by_uid(conn: &mut Conn, uid: &[u8; 16]) -> Result<Option<IncidentRow>> {
    Ok(incidents::table
        .inner_join(deeds::table.on(deeds::id.eq(incidents::id)))
        .filter(deeds::uid.eq(&uid[..]))
        .select(IncidentRow::as_select())
        .get_result(conn)
        .optional()?)
}

/// The incident of a number.
///
/// # Errors
/// The database is away.
pub fn by_number(conn: &mut Conn, number: &str) -> Result<Option<IncidentRow>> {
    Ok(incidents::table
        .filter(incidents::number.eq(number))
        .select(IncidentRow::as_select())
        .get_result(conn)
        .optional()?)
}

/// Every incident, the newest first, with its id.
///
/// # Errors
/// The database is away.
pub fn all(conn: &mut Conn) -> Result<Vec<(IncidentRow, Done)>> {
    Ok(incidents::table
        .inner_join(deeds::table.on(deeds::id.eq(incidents::id)))
        .order(incidents::id.desc())
        .select((
            IncidentRow::as_select(),
            (deeds::uid, deeds::at, deeds::recorded_at, deeds::person),
        ))
        .load(conn)?)
}

/// The incidents that hold, and that nobody has closed.
///
/// # Errors
/// The database is away.
pub fn open_holding(conn: &mut Conn) -> Result<Vec<IncidentRow>> {
    let closed = incident_acts::table
        .filter(incident_acts::kind.eq(CLOSED))
        .select(incident_acts::incident_id);
    Ok(incidents::table
        .filter(incidents::holds.eq(true).and(incidents::drill.eq(false)))
        .filter(incidents::id.ne_all(closed))
        .order(incidents::id)
        .select(IncidentRow::as_select())
        .load(conn)?)
}

/// How far an incident goes, act by act.
///
/// # Errors
/// The database is away.
pub fn scopes(conn: &mut Conn, incident: i32) -> Result<Vec<(ScopeRow, Done)>> {
    Ok(incident_scopes::table
        .inner_join(deeds::table.on(deeds::id.eq(incident_scopes::id)))
        .filter(incident_scopes::incident_id.eq(incident))
        .order(incident_scopes::id)
        .select((
            ScopeRow::as_select(),
            (deeds::uid, deeds::at, deeds::recorded_at, deeds::person),
        ))
        .load(conn)?)
}

/// What else was done in it.
///
/// # Errors
/// The database is away.
pub fn acts(conn: &mut Conn, incident: i32) -> Result<Vec<(ActRow, Done)>> {
    Ok(incident_acts::table
        .inner_join(deeds::table.on(deeds::id.eq(incident_acts::id)))
        .left_join(voids::table.on(voids::deed_id.eq(incident_acts::id)))
        .filter(
            incident_acts::incident_id
                .eq(incident)
                .and(voids::id.is_null()),
        )
        .order(incident_acts::id)
        .select((
            ActRow::as_select(),
            (deeds::uid, deeds::at, deeds::recorded_at, deeds::person),
        ))
        .load(conn)?)
}

/// What one deed noted in its incident.
///
/// # Errors
/// The database is away.
pub fn act(conn: &mut Conn, deed: i32) -> Result<Option<ActRow>> {
    Ok(incident_acts::table
        .find(deed)
        .select(ActRow::as_select())
        .first(conn)
        .optional()?)
}

/// Is it closed?
///
/// # Errors
/// The database is away.
pub fn is_closed(conn: &mut Conn, incident: i32) -> Result<bool> {
    let closed = incident_acts::table
        .filter(incident_acts::incident_id.eq(incident))
        .filter(incident_acts::kind.eq(CLOSED));
    Ok(diesel::select(diesel::dsl::exists(closed)).get_result(conn)?)
}

/// Everything that an incident ever held, let go or not: what a person let go is not held anew.
///
/// # Errors
/// The database is away.
pub fn ever_held(conn: &mut Conn, incident: i32) -> Result<BTreeSet<Onto>> {
    let rows: Vec<(i32, Option<i32>)> = stops_table::table
        .filter(stops_table::incident_id.eq(incident))
        .filter(stops_table::root_id.eq(stops_table::id))
        .select((stops_table::lot_id, stops_table::pack_id))
        .load(conn)?;
    let onto = |(lot, pack): (i32, Option<i32>)| (LotId(lot), pack.map(PackId));
    Ok(rows.into_iter().map(onto).collect())
}

#[derive(QueryableByName)]
struct OnHand {
    #[diesel(sql_type = BigInt)]
    packs: i64,
    #[diesel(sql_type = BigInt)]
    mg: i64,
}

/// How many packs on hand stand under an incident's holds, and what they weigh.
///
/// # Errors
/// The database is away.
pub fn on_hand(conn: &mut Conn, incident: i32) -> Result<(usize, Grams)> {
    let sql = format!(
        "SELECT CAST(COUNT(*) AS BIGINT) AS packs, CAST(COALESCE(SUM(packs.left_mg), 0) AS BIGINT) AS mg
         FROM packs WHERE packs.left_mg > 0 AND packs.lot_id IN (
             SELECT stops.lot_id FROM stops WHERE stops.incident_id = {incident}
         ) AND EXISTS (
             SELECT 1 FROM stops WHERE stops.incident_id = {incident} AND stops.lot_id = packs.lot_id
                 AND (stops.pack_id IS NULL OR stops.pack_id = packs.id)
                 AND NOT EXISTS (
                     SELECT 1 FROM stop_ends WHERE stop_ends.stop_id IN (stops.id, stops.root_id)
                         AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = stop_ends.deed_id)
                 )
         )"
    );
    let found: OnHand = on_each!(conn, c => sql_query(sql).get_result(c)?);
    let packs = usize::try_from(found.packs).unwrap_or_default();
    Ok((packs, Grams::from_milligrams(found.mg)))
}

/// What an incident holds and was not let go: lots, or packs of them. Holds that were inherited are not among it.
///
/// # Errors
/// The database is away.
pub fn held(conn: &mut Conn, incident: i32) -> Result<BTreeSet<Onto>> {
    let ended = stop_ends::table
        .left_join(voids::table.on(voids::deed_id.eq(stop_ends::deed_id)))
        .filter(voids::id.is_null())
        .select(stop_ends::stop_id);
    let rows: Vec<(i32, Option<i32>)> = stops_table::table
        .filter(stops_table::incident_id.eq(incident))
        .filter(stops_table::root_id.eq(stops_table::id))
        .filter(stops_table::id.ne_all(ended))
        .select((stops_table::lot_id, stops_table::pack_id))
        .load(conn)?;
    let onto = |(lot, pack): (i32, Option<i32>)| (LotId(lot), pack.map(PackId));
    Ok(rows.into_iter().map(onto).collect())
}

/// Incidents that are not as they must be: without a scope, holds for one that is not there, a drill that holds.
pub(crate) fn faults(conn: &mut Conn) -> Result<Vec<(i32, &'static str)>> {
    let scoped = incident_scopes::table.select(incident_scopes::incident_id);
    let bare: Vec<i32> = incidents::table
        .filter(incidents::id.ne_all(scoped))
        .select(incidents::id)
        .load(conn)?;
    let of: Vec<Option<i32>> = stops_table::table
        .filter(stops_table::incident_id.is_not_null())
        .select(stops_table::incident_id)
        .distinct()
        .load(conn)?;
    let may_hold: BTreeSet<i32> = incidents::table
        .filter(incidents::drill.eq(false))
        .select(incidents::id)
        .load(conn)?
        .into_iter()
        .collect();
    let holds = of.into_iter().flatten().filter(|of| !may_hold.contains(of));
    let bare = bare
        .into_iter()
        .map(|of| (of, "is an incident without a scope"));
    Ok(bare
        .chain(holds.map(|of| (of, "holds and is no recall")))
        .collect())
}
