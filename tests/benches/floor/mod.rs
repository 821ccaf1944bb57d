//! The traces as written for the rows and nothing else.

use chrono::NaiveDateTime;
use diesel::RunQueryDsl;
use diesel::dsl::sql;
use diesel::sql_types::{BigInt, Integer, Nullable, Text, Timestamp};
use store::Conn;

type Columns = (
    Integer,
    Integer,
    Text,
    Text,
    Timestamp,
    Text,
    Nullable<Text>,
    BigInt,
    BigInt,
    BigInt,
    BigInt,
    Integer,
    BigInt,
    BigInt,
    BigInt,
    BigInt,
    BigInt,
    BigInt,
    BigInt,
    Nullable<Text>,
);

/// A row of the walk forward, read by position.
pub type Row = (
    i32,
    i32,
    String,
    String,
    NaiveDateTime,
    String,
    Option<String>,
    i64,
    i64,
    i64,
    i64,
    i32,
    i64,
    i64,
    i64,
    i64,
    i64,
    i64,
    i64,
    Option<String>,
);

/// All lots made from a lot, in detail.
pub fn forward(conn: &mut Conn, start: i32) -> Vec<Row> {
    let text = format!(
        "WITH RECURSIVE reach(id) AS (
             SELECT {start}
             UNION
             SELECT made.id FROM reach CROSS JOIN pack_events used CROSS JOIN lots made
             WHERE used.lot_id = reach.id AND used.account = 'used'
                 AND made.deed_id = used.deed_id AND NOT made.voided
         )
         SELECT lots.id, lots.deed_id, lots.code, entries.code, lots.made_at, lots.origin, lots.note,
             made_mg, taken_back_mg, used_mg, sold_mg, sold_packs, served_mg, discarded_mg, shipped_mg,
             returned_mg, lost_mg, on_hand_mg, unexplained_mg,
             CASE WHEN on_hand_mg > 0 THEN (
                 SELECT place.code FROM packs JOIN entries place ON place.id = packs.place_id
                 WHERE packs.lot_id = lots.id AND packs.left_mg > 0
                 ORDER BY packs.left_mg DESC, packs.number LIMIT 1
             ) END
         FROM reach CROSS JOIN lots CROSS JOIN versions CROSS JOIN entries
         WHERE lots.id = reach.id AND versions.id = lots.version_id AND entries.id = versions.entry_id
         ORDER BY lots.id"
    );
    let query = sql::<Columns>(&text);
    match conn {
        Conn::Sqlite(conn) => query.load(conn),
        Conn::Pg(conn) => query.load(conn),
    }
    .expect("the record is there")
}

/// Everything that went into a lot: what was made, by which step, of what, how much, and of what origin.
pub fn back(conn: &mut Conn, lot: i32) -> Vec<(i32, i32, i32, i64, String)> {
    let text = format!(
        "WITH RECURSIVE up(id, deed_id) AS (
             SELECT id, deed_id FROM lots WHERE id = {lot}
             UNION
             SELECT parent.id, parent.deed_id FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
             WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id
         )
         SELECT up.id, used.deed_id, used.lot_id, used.mg, parent.origin
         FROM up CROSS JOIN pack_events used CROSS JOIN lots parent
         WHERE used.deed_id = up.deed_id AND used.account = 'used' AND parent.id = used.lot_id"
    );
    let query = sql::<(Integer, Integer, Integer, BigInt, Text)>(&text);
    match conn {
        Conn::Sqlite(conn) => query.load(conn),
        Conn::Pg(conn) => query.load(conn),
    }
    .expect("the record is there")
}
