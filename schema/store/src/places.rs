//! Places as they were cleaned, worked at and read: three statements for all of them.

use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{deeds, lots, measurements, voids};
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;
use domain::words::{DeedKind, Quantity};

/// When each place was last cleaned down, by its key.
pub fn cleaned(conn: &mut Conn) -> Result<Vec<(Option<i32>, Option<NaiveDateTime>)>> {
    Ok(deeds::table
        .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
        .filter(deeds::kind.eq(DeedKind::CleanDown.as_str()))
        .filter(voids::id.is_null())
        .group_by(deeds::place_id)
        .select((deeds::place_id, max(deeds::at)))
        .load(conn)?)
}

/// The lots made at places since a moment: the place's key, when, and the version of the product.
pub fn made_since(
    conn: &mut Conn,
    since: NaiveDateTime,
) -> Result<Vec<(Option<i32>, NaiveDateTime, i32)>> {
    Ok(lots::table
        .inner_join(deeds::table.on(deeds::id.eq(lots::deed_id)))
        .filter(deeds::at.gt(since).and(lots::voided.eq(false)))
        .filter(deeds::place_id.is_not_null())
        .filter(deeds::kind.ne(DeedKind::Receive.as_str()))
        .select((deeds::place_id, deeds::at, lots::version_id))
        .distinct()
        .load(conn)?)
}

/// When the warmth of each place was last read, by its key.
pub fn read(conn: &mut Conn) -> Result<Vec<(Option<i32>, Option<NaiveDateTime>)>> {
    let warmth = [Quantity::Celsius.as_str(), Quantity::Fahrenheit.as_str()];
    Ok(measurements::table
        .inner_join(deeds::table.on(deeds::id.eq(measurements::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(measurements::deed_id)))
        .filter(measurements::place_id.is_not_null())
        .filter(measurements::quantity.eq_any(warmth))
        .filter(voids::id.is_null())
        .group_by(measurements::place_id)
        .select((measurements::place_id, max(deeds::at)))
        .load(conn)?)
}
