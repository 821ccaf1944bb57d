//! The record as rows for a spreadsheet, noun by noun, some at a time: what a reader wants to see of each, with codes
//! in place of keys.

use crate::conn::Conn;
use crate::error::Result;
use crate::on_each;
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Binary, Bool, Date, Integer, Nullable, Text, Timestamp};

/// Rows read at a time.
const AT_ONCE: usize = 1_000;

/// A row with its key.
pub trait Keyed {
    /// Its key.
    fn key(&self) -> i32;
}

/// Declares a row and the query that finds some of them after a key.
macro_rules! sheet {
    ($(#[$about:meta])* $row:ident by $find:ident: $sql:literal { $($column:ident: $kind:ty => $of:ty),+ $(,)? }) => {
        $(#[$about])*
        #[derive(Debug, Clone, QueryableByName)]
        #[allow(missing_docs, reason = "the columns of the query")]
        pub struct $row {
            #[diesel(sql_type = Integer)]
            pub id: i32,
            $(#[diesel(sql_type = $kind)] pub $column: $of),+
        }

        impl Keyed for $row {
            fn key(&self) -> i32 {
                self.id
            }
        }

        /// Some of them after a key, in the order of their keys.
        ///
        /// # Errors
        /// The database is away.
        pub fn $find(conn: &mut Conn, after: i32) -> Result<Vec<$row>> {
            let sql = format!(concat!($sql, " LIMIT {}"), AT_ONCE);
            Ok(on_each!(conn, c => sql_query(sql).bind::<Integer, _>(after).load(c)?))
        }
    };
}

sheet!(
    /// A lot, where it came from and where its weight went.
    LotSheet by lots: "SELECT lots.id, lots.code, entries.code AS product, lots.made_at, deeds.kind AS made_by, deeds.uid,
            deeds.person,
            lots.note, lots.voided, lots.pack_count, lots.allergens, lots.species, lots.made_mg, lots.taken_back_mg,
            lots.used_mg, lots.sold_mg, lots.served_mg, lots.discarded_mg, lots.shipped_mg, lots.returned_mg,
            lots.lost_mg, lots.unexplained_mg, lots.on_hand_mg,
            (SELECT MIN(packs.use_by) FROM packs WHERE packs.lot_id = lots.id AND packs.left_mg > 0) AS use_by,
            animals.farm, animals.killed_on, animals.carcass, sources.supplier, sources.supplier_lot
        FROM lots JOIN deeds ON deeds.id = lots.deed_id
            JOIN versions ON versions.id = lots.version_id JOIN entries ON entries.id = versions.entry_id
            LEFT JOIN sources ON sources.lot_id = lots.id AND sources.is_current
            LEFT JOIN animals ON animals.id = sources.animal_id
        WHERE lots.id > $1 ORDER BY lots.id" {
        code: Text => String, product: Text => String, made_at: Timestamp => NaiveDateTime, made_by: Text => String, uid: Binary => Vec<u8>,
        person: Text => String, note: Nullable<Text> => Option<String>, voided: Bool => bool,
        pack_count: Integer => i32, allergens: Text => String, species: Text => String, made_mg: BigInt => i64,
        taken_back_mg: BigInt => i64, used_mg: BigInt => i64, sold_mg: BigInt => i64, served_mg: BigInt => i64,
        discarded_mg: BigInt => i64, shipped_mg: BigInt => i64, returned_mg: BigInt => i64, lost_mg: BigInt => i64,
        unexplained_mg: BigInt => i64, on_hand_mg: BigInt => i64, use_by: Nullable<Date> => Option<NaiveDate>,
        farm: Nullable<Text> => Option<String>, killed_on: Nullable<Date> => Option<NaiveDate>,
        carcass: Nullable<Text> => Option<String>, supplier: Nullable<Text> => Option<String>,
        supplier_lot: Nullable<Text> => Option<String>,
    }
);

sheet!(
    /// A pack as it is.
    PackSheet by packs: "SELECT packs.id, lots.code, packs.number, packs.made_mg, packs.left_mg, packs.being, packs.state,
            packs.place_id, packs.use_by
        FROM packs JOIN lots ON lots.id = packs.lot_id
        WHERE packs.id > $1 ORDER BY packs.id" {
        code: Text => String, number: Integer => i32, made_mg: BigInt => i64, left_mg: BigInt => i64,
        being: Text => String, state: Text => String, place_id: Integer => i32,
        use_by: Nullable<Date> => Option<NaiveDate>,
    }
);

sheet!(
    /// What was used by which deed.
    UseSheet by uses: "SELECT pack_events.id, used.code, packs.number, pack_events.mg, deeds.kind, deeds.at, deeds.uid
        FROM pack_events JOIN lots used ON used.id = pack_events.lot_id JOIN packs ON packs.id = pack_events.pack_id
            JOIN deeds ON deeds.id = pack_events.deed_id
        WHERE pack_events.account = 'used' AND pack_events.id > $1
            AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = pack_events.deed_id)
        ORDER BY pack_events.id" {
        code: Text => String, number: Integer => i32, mg: BigInt => i64, kind: Text => String,
        at: Timestamp => NaiveDateTime, uid: Binary => Vec<u8>,
    }
);

sheet!(
    /// A source animal.
    AnimalSheet by animals: "SELECT animals.id, deeds.uid, animals.farm, animals.species, animals.killed_on, animals.abattoir,
            animals.carcass, animals.tag, animals.head
        FROM animals JOIN deeds ON deeds.id = animals.deed_id
        WHERE animals.id > $1 ORDER BY animals.id" {
        uid: Binary => Vec<u8>, farm: Text => String, species: Text => String, killed_on: Date => NaiveDate,
        abattoir: Nullable<Text> => Option<String>, carcass: Nullable<Text> => Option<String>,
        tag: Nullable<Text> => Option<String>, head: Integer => i32,
    }
);

sheet!(
    /// Whatever anybody did.
    DeedSheet by deeds: "SELECT deeds.id, deeds.uid, deeds.kind, deeds.at, deeds.recorded_at, deeds.person, deeds.place_id,
            deeds.note, voids.why AS voided
        FROM deeds LEFT JOIN voids ON voids.deed_id = deeds.id
        WHERE deeds.id > $1 ORDER BY deeds.id" {
        uid: Binary => Vec<u8>, kind: Text => String, at: Timestamp => NaiveDateTime,
        recorded_at: Timestamp => NaiveDateTime, person: Text => String, place_id: Nullable<Integer> => Option<i32>,
        note: Nullable<Text> => Option<String>, voided: Nullable<Text> => Option<String>,
    }
);

sheet!(
    /// A recall or a drill.
    IncidentSheet by incidents: "SELECT incidents.id, incidents.number, incidents.hazard, incidents.drill, incidents.told_by,
            incidents.told_at, incidents.why,
            (SELECT MIN(deeds.at) FROM incident_acts JOIN deeds ON deeds.id = incident_acts.id
             WHERE incident_acts.incident_id = incidents.id AND incident_acts.kind = 'closed') AS closed_at
        FROM incidents WHERE incidents.id > $1 ORDER BY incidents.id" {
        number: Text => String, hazard: Text => String, drill: Bool => bool, told_by: Text => String,
        told_at: Timestamp => NaiveDateTime, why: Text => String, closed_at: Nullable<Timestamp> => Option<NaiveDateTime>,
    }
);
