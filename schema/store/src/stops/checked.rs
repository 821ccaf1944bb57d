//! What is asked of all stops when a record is checked.

use crate::conn::Conn;
use crate::error::Result;
use crate::on_each;
use crate::tables::{conditions, deeds, label_truths, lots, stops};
use diesel::dsl::{exists, not};
use diesel::prelude::*;

/// Stops of a deed or on a lot that is not there: on PostgreSQL no foreign key refuses them.
pub(crate) fn astray(conn: &mut Conn) -> Result<Vec<i32>> {
    let of_deed = exists(deeds::table.filter(deeds::id.eq(stops::deed_id)));
    let on_lot = exists(lots::table.filter(lots::id.eq(stops::lot_id)));
    let astray = stops::table.filter(not(of_deed).or(not(on_lot)));
    Ok(astray.order(stops::id).select(stops::id).load(conn)?)
}

/// Departures that passed a stop and carry no flag: deed and lot. A stop that a later deed placed, or that
/// an earlier one had ended, stood in nobody's way. Which was earlier says the chain: keys are given out in blocks,
/// and of two processes the later one may have the lower.
pub(crate) fn passed_unflagged(conn: &mut Conn) -> Result<Vec<(i32, i32)>> {
    let sql = "WITH sealed AS (SELECT of_id AS deed, id AS nth FROM chain WHERE kind = 'deed')
        SELECT DISTINCT pack_events.deed_id, pack_events.lot_id
        FROM pack_events
        JOIN deeds ON deeds.id = pack_events.deed_id
        JOIN stops ON stops.lot_id = pack_events.lot_id
            AND (stops.pack_id IS NULL OR stops.pack_id = pack_events.pack_id)
        LEFT JOIN sealed AS left_at ON left_at.deed = pack_events.deed_id
        LEFT JOIN sealed AS placed ON placed.deed = stops.deed_id
        WHERE pack_events.account IN ('sold', 'served', 'shipped')
            AND stops.since <= deeds.at
            AND COALESCE(placed.nth < left_at.nth, stops.deed_id < pack_events.deed_id)
            AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id IN (stops.deed_id, pack_events.deed_id))
            AND NOT EXISTS (SELECT 1 FROM stop_ends JOIN deeds AS ending ON ending.id = stop_ends.deed_id
                LEFT JOIN sealed AS ended ON ended.deed = stop_ends.deed_id
                WHERE stop_ends.stop_id IN (stops.id, stops.root_id) AND ending.at <= deeds.at
                    AND COALESCE(ended.nth < left_at.nth, stop_ends.deed_id < pack_events.deed_id))
            AND NOT EXISTS (SELECT 1 FROM reasons WHERE reasons.deed_id = pack_events.deed_id
                AND reasons.lot_id = pack_events.lot_id AND reasons.topic = 'stop')";
    let found: Vec<Unflagged> = on_each!(&mut *conn, c => diesel::sql_query(sql).load(c)?);
    Ok(found.iter().map(|of| (of.deed_id, of.lot_id)).collect())
}

#[derive(QueryableByName)]
struct Unflagged {
    #[diesel(sql_type = diesel::sql_types::Integer)]
    deed_id: i32,
    #[diesel(sql_type = diesel::sql_types::Integer)]
    lot_id: i32,
}

/// Lots that are noted although nothing ever was with them, or not although their condition changed.
pub(crate) fn wrongly_marked(conn: &mut Conn) -> Result<Vec<i32>> {
    // By `EXISTS`: what is in no list is looked for in the whole list each time, on PostgreSQL.
    let of_stop = exists(stops::table.filter(stops::lot_id.eq(lots::id)));
    let of_condition = exists(conditions::table.filter(conditions::lot_id.eq(lots::id)));
    // A label that was printed once may have been wrong for a time.
    let of_label = exists(label_truths::table.filter(label_truths::id.eq(lots::id)));
    let marked = lots::table.filter(lots::stopped.eq(true));
    let mut wrong: Vec<i32> = marked
        .filter(not(of_stop).and(not(of_condition)).and(not(of_label)))
        .select(lots::id)
        .load(conn)?;
    let unmarked = lots::table.filter(lots::stopped.eq(false).and(of_condition));
    wrong.extend(unmarked.select(lots::id).load::<i32>(conn)?);
    wrong.sort_unstable();
    wrong.dedup();
    Ok(wrong)
}
