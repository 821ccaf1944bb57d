//! Deeds: every one once, with what was asked and what was answered.

use crate::chain::rows::AnswerLine;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::tables::{
    additions, answers, deeds, entries, lots, measurements, pack_events, steps, voids,
};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::{exists, max, not, select};
use diesel::prelude::*;
use domain::moment::Moment;
use domain::words::DeedKind;

/// A deed as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = deeds, treat_none_as_default_value = false)]
pub struct DeedRow {
    /// Its key.
    pub id: i32,
    /// The id that the device made: 16 bytes.
    pub uid: Vec<u8>,
    /// What it was.
    pub kind: String,
    /// When it ended, UTC.
    pub at: NaiveDateTime,
    /// When it began, UTC.
    pub began_at: Option<NaiveDateTime>,
    /// When the record took it, UTC.
    pub recorded_at: NaiveDateTime,
    /// The kitchen's day of it.
    pub day: NaiveDate,
    /// Entered later than it happened.
    pub late: bool,
    /// Who did it.
    pub person: String,
    /// Where.
    pub place_id: Option<i32>,
    /// A word about it.
    pub note: Option<String>,
    /// What was asked, as canonical text.
    pub request: String,
}

impl DeedRow {
    /// What it was.
    pub fn kind(&self) -> Result<DeedKind> {
        DeedKind::parse(&self.kind).ok_or_else(|| Error::bad_row("deeds", self.id, "unknown kind"))
    }
}

/// A deed to be recorded.
#[derive(Debug, Clone)]
pub struct NewDeed<'a> {
    /// The id that the device made.
    pub uid: [u8; 16],
    /// What it is.
    pub kind: DeedKind,
    /// When.
    pub moment: Moment,
    /// Who.
    pub person: &'a str,
    /// Where.
    pub place_id: Option<i32>,
    /// A word about it.
    pub note: Option<&'a str>,
    /// What was asked, as canonical text.
    pub request: &'a str,
}

/// The deed with that id, if it was recorded.
pub fn by_uid(conn: &mut Conn, uid: &[u8; 16]) -> Result<Option<DeedRow>> {
    Ok(deeds::table
        .filter(deeds::uid.eq(&uid[..]))
        .select(DeedRow::as_select())
        .get_result(conn)
        .optional()?)
}

/// Did a deed that was not voided make, touch or measure this lot?
pub fn stands_on(conn: &mut Conn, deed: i32, lot: i32) -> Result<bool> {
    let made = lots::table.filter(lots::id.eq(lot).and(lots::deed_id.eq(deed)));
    let touched = pack_events::table.filter(
        pack_events::lot_id
            .eq(lot)
            .and(pack_events::deed_id.eq(deed)),
    );
    let measured = measurements::table.filter(
        measurements::lot_id
            .eq(lot)
            .and(measurements::deed_id.eq(deed)),
    );
    let voided = voids::table.filter(voids::deed_id.eq(deed));
    let is_of_it = exists(made).or(exists(touched)).or(exists(measured));
    Ok(select(is_of_it.and(not(exists(voided)))).get_result(conn)?)
}

/// The deed that made a lot, and those that did something to it and made nothing: what they read, they read of it.
/// Voided ones are left out.
///
/// # Errors
/// The database is away.
pub fn that_read(conn: &mut Conn, lot: i32, maker: i32) -> Result<Vec<DeedRow>> {
    let touched = pack_events::table
        .filter(pack_events::lot_id.eq(lot))
        .select(pack_events::deed_id);
    let made = lots::table.filter(lots::deed_id.eq(deeds::id));
    let voided = voids::table.filter(voids::deed_id.eq(deeds::id));
    let in_place = (deeds::id.eq_any(touched)).and(not(exists(made)));
    Ok(deeds::table
        .filter(deeds::id.eq(maker).or(in_place).and(not(exists(voided))))
        .order((deeds::at, deeds::id))
        .select(DeedRow::as_select())
        .load(conn)?)
}

/// Deeds by their keys, newest first.
pub fn by_keys(conn: &mut Conn, keys: &[i32]) -> Result<Vec<DeedRow>> {
    Ok(deeds::table
        .filter(deeds::id.eq_any(keys))
        .order((deeds::recorded_at.desc(), deeds::id.desc()))
        .select(DeedRow::as_select())
        .load(conn)?)
}

/// What was answered to a deed.
pub fn answer(conn: &mut Conn, deed: i32) -> Result<String> {
    Ok(answers::table
        .find(deed)
        .select(answers::body)
        .get_result(conn)?)
}

/// Records a deed, first of all in its transaction: a second one with the same id waits here.
pub fn insert(tx: &mut Tx<'_>, deed: &NewDeed<'_>) -> Result<i32> {
    let row = DeedRow {
        id: tx.ids.one(tx.conn)?,
        uid: deed.uid.to_vec(),
        kind: deed.kind.as_str().to_owned(),
        at: deed.moment.at.naive_utc(),
        began_at: deed.moment.began_at.map(|began| began.naive_utc()),
        recorded_at: deed.moment.recorded_at.naive_utc(),
        day: deed.moment.day,
        late: deed.moment.late,
        person: deed.person.to_owned(),
        place_id: deed.place_id,
        note: deed.note.map(str::to_owned),
        request: deed.request.to_owned(),
    };
    diesel::insert_into(deeds::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(row.id, &row);
    Ok(row.id)
}

/// Keeps what is answered.
pub fn keep_answer(tx: &mut Tx<'_>, deed: i32, body: &str) -> Result<()> {
    let row = AnswerLine { id: deed, body };
    diesel::insert_into(answers::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(deed, &row);
    Ok(())
}

/// When the record last took a deed.
pub fn last_recorded_at(conn: &mut Conn) -> Result<Option<NaiveDateTime>> {
    Ok(deeds::table
        .select(max(deeds::recorded_at))
        .get_result(conn)?)
}

/// The failures of a place that lasted, or were noticed, at a moment or later, and were not taken back.
///
/// # Errors
/// The database is away.
pub fn failures(conn: &mut Conn, place: i32, since: NaiveDateTime) -> Result<Vec<DeedRow>> {
    Ok(deeds::table
        .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
        .filter(deeds::place_id.eq(place).and(deeds::at.ge(since)))
        .filter(deeds::kind.eq(DeedKind::PlaceFailed.as_str()))
        .filter(voids::id.is_null())
        .order(deeds::id)
        .select(DeedRow::as_select())
        .load(conn)?)
}

/// The failures of any place that lasted, or were noticed, at a moment or later, and were not taken back.
///
/// # Errors
/// The database is away.
pub fn failures_anywhere(conn: &mut Conn, since: NaiveDateTime) -> Result<Vec<DeedRow>> {
    Ok(deeds::table
        .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
        .filter(deeds::kind.eq(DeedKind::PlaceFailed.as_str()))
        .filter(deeds::at.ge(since).and(voids::id.is_null()))
        .order(deeds::id)
        .select(DeedRow::as_select())
        .load(conn)?)
}

/// Was a place read after that moment?
///
/// # Errors
/// The database is away.
pub fn is_place_read(conn: &mut Conn, place: i32, since: NaiveDateTime) -> Result<bool> {
    let read = measurements::table
        .inner_join(deeds::table.on(deeds::id.eq(measurements::deed_id)))
        .filter(measurements::place_id.eq(place).and(deeds::at.gt(since)))
        // What a step there read of its food says nothing of the place.
        .filter(deeds::kind.eq(DeedKind::Measure.as_str()))
        .filter(measurements::lot_id.is_null())
        .select(measurements::id);
    let first: Option<i32> = read.first(conn).optional()?;
    Ok(first.is_some())
}

/// The key of the last deed.
pub fn last(conn: &mut Conn) -> Result<Option<i32>> {
    Ok(deeds::table.select(max(deeds::id)).get_result(conn)?)
}

/// What voided a deed, and why.
#[derive(Debug, Clone, Queryable)]
pub struct VoidedBy {
    /// The id of the void.
    pub uid: Vec<u8>,
    /// Why.
    pub why: String,
    /// When it was entered, UTC.
    pub recorded_at: NaiveDateTime,
    /// Who voided it.
    pub person: String,
}

/// What voided a deed, if anything did.
pub fn voided_by(conn: &mut Conn, deed: i32) -> Result<Option<VoidedBy>> {
    Ok(voids::table
        .inner_join(deeds::table.on(deeds::id.eq(voids::id)))
        .filter(voids::deed_id.eq(deed))
        .select((deeds::uid, voids::why, deeds::recorded_at, deeds::person))
        .get_result(conn)
        .optional()?)
}

/// The loss of a step, in milligrams, if the deed is one.
pub fn loss(conn: &mut Conn, deed: i32) -> Result<Option<i64>> {
    Ok(steps::table
        .find(deed)
        .select(steps::loss_mg)
        .get_result(conn)
        .optional()?)
}

/// What steps added: the step, what, and how many milligrams.
pub fn additions(conn: &mut Conn, deeds: &[i32]) -> Result<Vec<(i32, String, i64)>> {
    let added = additions::table
        .filter(additions::deed_id.eq_any(deeds))
        .order(additions::id);
    Ok(added
        .select((additions::deed_id, additions::what, additions::mg))
        .load(conn)?)
}

/// The clean-downs of a place, newest first.
pub fn clean_downs(conn: &mut Conn, place: &str, limit: i64) -> Result<Vec<DeedRow>> {
    Ok(deeds::table
        .inner_join(entries::table.on(deeds::place_id.eq(entries::id.nullable())))
        .filter(
            deeds::kind
                .eq(DeedKind::CleanDown.as_str())
                .and(entries::code.eq(place)),
        )
        .order((deeds::at.desc(), deeds::id.desc()))
        .limit(limit)
        .select(DeedRow::as_select())
        .load(conn)?)
}
