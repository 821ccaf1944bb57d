//! Which lots a deed was about, what came of them and what of it is left: who may still need its papers.

use crate::conn::Conn;
use crate::error::Result;
use crate::keyed::among;
use crate::on_each;
use crate::tables::{incident_acts, incidents, lots, measurements, pack_events, sources};
use crate::trace::with_reach;
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Date, Nullable, Text, Timestamp};

/// The lots that a deed made, touched, measured, or told the source of.
///
/// # Errors
/// The database is away.
pub fn lots_of(conn: &mut Conn, deed: i32) -> Result<Vec<i32>> {
    let mut keys: Vec<i32> = lots::table
        .filter(lots::deed_id.eq(deed))
        .select(lots::id)
        .load(conn)?;
    keys.extend(
        pack_events::table
            .filter(pack_events::deed_id.eq(deed))
            .select(pack_events::lot_id)
            .load::<i32>(conn)?,
    );
    keys.extend(
        measurements::table
            .filter(measurements::deed_id.eq(deed))
            .select(measurements::lot_id)
            .load::<Option<i32>>(conn)?
            .into_iter()
            .flatten(),
    );
    keys.extend(
        sources::table
            .filter(sources::deed_id.eq(deed))
            .select(sources::lot_id)
            .load::<i32>(conn)?,
    );
    keys.sort_unstable();
    keys.dedup();
    Ok(keys)
}

/// The deeds that made or touched some lots.
///
/// # Errors
/// The database is away.
pub fn deeds_of(conn: &mut Conn, of: &[i32]) -> Result<Vec<i32>> {
    let mut keys: Vec<i32> = lots::table
        .filter(lots::id.eq_any(of))
        .select(lots::deed_id)
        .load(conn)?;
    keys.extend(
        pack_events::table
            .filter(pack_events::lot_id.eq_any(of))
            .select(pack_events::deed_id)
            .load::<i32>(conn)?,
    );
    keys.extend(
        measurements::table
            .filter(measurements::lot_id.eq_any(of))
            .select(measurements::deed_id)
            .load::<i32>(conn)?,
    );
    keys.sort_unstable();
    keys.dedup();
    Ok(keys)
}

/// The deeds that brought an animal, or what is known of it.
///
/// # Errors
/// The database is away.
pub fn deeds_of_animal(conn: &mut Conn, animal: i32) -> Result<Vec<i32>> {
    let mut keys: Vec<i32> = sources::table
        .filter(sources::animal_id.eq(animal))
        .select(sources::deed_id)
        .load(conn)?;
    keys.sort_unstable();
    keys.dedup();
    Ok(keys)
}

/// The lots that something was bought or delivered as, from which a lot was made, itself among them.
///
/// # Errors
/// The database is away.
pub fn back(conn: &mut Conn, lot: i32) -> Result<Vec<i32>> {
    #[derive(QueryableByName)]
    struct Found {
        #[diesel(sql_type = diesel::sql_types::Integer)]
        id: i32,
    }
    let sql = format!(
        "{} SELECT id FROM back",
        with_back(&format!("SELECT {lot}"))
    );
    let found: Vec<Found> = on_each!(conn, c => sql_query(sql).load(c)?);
    Ok(found.into_iter().map(|found| found.id).collect())
}

/// The beginning of a query over `back(id)`: some lots and all from which they were made.
fn with_back(starts: &str) -> String {
    format!(
        "WITH RECURSIVE back(id) AS (
             {starts}
             UNION
             SELECT used.lot_id FROM back CROSS JOIN lots made CROSS JOIN pack_events used
             WHERE made.id = back.id AND used.deed_id = made.deed_id AND used.account = 'used'
         )"
    )
}

/// What came of some lots.
#[derive(Debug, Clone, Default)]
pub struct Came {
    /// The code of one that is on hand.
    pub on_hand: Option<String>,
    /// The last day on which anything happened to any.
    pub last: Option<NaiveDate>,
    /// The last day of any pack.
    pub eaten_by: Option<NaiveDate>,
}

/// What came of some lots.
///
/// # Errors
/// The database is away.
pub fn came_of(conn: &mut Conn, starts: &[i32]) -> Result<Came> {
    if starts.is_empty() {
        return Ok(Came::default());
    }
    #[derive(QueryableByName)]
    struct Found {
        #[diesel(sql_type = Nullable<Text>)]
        on_hand: Option<String>,
        #[diesel(sql_type = Nullable<Date>)]
        last: Option<NaiveDate>,
        #[diesel(sql_type = Nullable<Date>)]
        eaten_by: Option<NaiveDate>,
    }
    let sql = format!(
        "{}
         SELECT (SELECT MIN(lots.code) FROM reach CROSS JOIN lots
                 WHERE lots.id = reach.id AND lots.on_hand_mg > 0 AND NOT lots.voided) AS on_hand,
             (SELECT MAX(deeds.day) FROM reach CROSS JOIN pack_events happened CROSS JOIN deeds
                 WHERE happened.lot_id = reach.id AND deeds.id = happened.deed_id) AS last,
             (SELECT MAX(packs.use_by) FROM reach CROSS JOIN packs WHERE packs.lot_id = reach.id) AS eaten_by",
        with_reach(&among(starts))
    );
    let found: Found = on_each!(conn, c => sql_query(sql).get_result(c)?);
    Ok(Came {
        on_hand: found.on_hand,
        last: found.last,
        eaten_by: found.eaten_by,
    })
}

/// When the oldest of all that is on hand was begun, back to its sources, and the code of that source.
///
/// # Errors
/// The database is away.
pub fn oldest_on_hand(conn: &mut Conn) -> Result<Option<(NaiveDateTime, String)>> {
    #[derive(QueryableByName)]
    struct Found {
        #[diesel(sql_type = Timestamp)]
        made_at: NaiveDateTime,
        #[diesel(sql_type = Text)]
        code: String,
    }
    let sql = format!(
        "{} SELECT lots.made_at, lots.code FROM back CROSS JOIN lots WHERE lots.id = back.id
         ORDER BY lots.made_at, lots.id LIMIT 1",
        with_back("SELECT id FROM lots WHERE on_hand_mg > 0 AND NOT voided")
    );
    let found: Vec<Found> = on_each!(conn, c => sql_query(sql).load(c)?);
    Ok(found
        .into_iter()
        .next()
        .map(|found| (found.made_at, found.code)))
}

/// The number of an incident that nobody has closed, a drill or a real one.
///
/// # Errors
/// The database is away.
pub fn open_incident(conn: &mut Conn) -> Result<Option<String>> {
    let closed = incident_acts::table
        .filter(incident_acts::kind.eq(crate::incidents::CLOSED))
        .select(incident_acts::incident_id);
    Ok(incidents::table
        .filter(incidents::id.ne_all(closed))
        .order(incidents::id)
        .select(incidents::number)
        .first(conn)
        .optional()?)
}
