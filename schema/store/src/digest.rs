//! The digest of the record: all tables, in the order of their keys.

use crate::animals::AnimalRow;
use crate::conditions::ConditionRow;
use crate::conn::Conn;
use crate::deeds::DeedRow;
use crate::error::Result;
use crate::lots::LotRow;
use crate::packs::PackRow;
use crate::prints::PrintRow;
use crate::record::PackEventRow;
use crate::sources::SourceRow;
use crate::stops::StopRow;
use crate::tables::*;
use diesel::prelude::*;
use sha2::{Digest, Sha256};

/// Rows read at a time.
const CHUNK: i64 = 2_000;

macro_rules! feed {
    ($conn:expr, $hash:expr, $table:ident, $row:ty, $select:expr, $key:expr) => {{
        let mut last = i32::MIN;
        loop {
            let rows: Vec<$row> =
                $table::table.filter($table::id.gt(last)).order($table::id).limit(CHUNK).select($select).load($conn)?;
            for row in &rows {
                $hash.update(format!("{} {row:?}\n", stringify!($table)));
            }
            match rows.last() {
                Some(row) => last = $key(row),
                None => break,
            }
        }
    }};
    ($conn:expr, $hash:expr, $table:ident, ($($column:ty),+)) => {
        feed!($conn, $hash, $table, (i32, $($column),+), $table::all_columns, |row: &(i32, $($column),+)| row.0)
    };
    ($conn:expr, $hash:expr, $table:ident, $row:ty) => {
        feed!($conn, $hash, $table, $row, <$row>::as_select(), |row: &$row| row.id)
    };
}

/// SHA-256 over every row of every table that only deeds change, as lower-case hexadecimal.
///
/// Left out are `print_runs`, `print_events`, `printer_leases` and `wrong_labels`: they change by themselves
/// while a printer works, and the digest is to say whether anybody did anything. What was asked for, what
/// each label says and what people settled are in (`prints`, `kept_texts`, `deeds`), and
/// `gambrel check` reads the others and holds them against these.
pub fn digest(conn: &mut Conn) -> Result<String> {
    let mut hash = Sha256::new();
    feed!(conn, hash, additions, (i32, String, i64));
    feed!(conn, hash, animals, AnimalRow);
    feed!(conn, hash, answers, (String));
    feed!(conn, hash, conditions, ConditionRow);
    feed!(
        conn,
        hash,
        core_readings,
        (i32, chrono::NaiveDateTime, String, i64, Option<i32>)
    );
    feed!(conn, hash, corrections, (i32, String, String));
    feed!(conn, hash, counters, (i32));
    feed!(conn, hash, deeds, DeedRow);
    feed!(conn, hash, entries, (String, String, i32));
    feed!(conn, hash, house_codes, (String, String));
    feed!(
        conn,
        hash,
        incident_acts,
        (i32, String, Option<String>, String)
    );
    feed!(conn, hash, incident_reports, (i32, String));
    feed!(
        conn,
        hash,
        incident_scopes,
        (i32, String, String, i32, String)
    );
    feed!(
        conn,
        hash,
        incidents,
        (
            String,
            String,
            chrono::NaiveDateTime,
            String,
            bool,
            bool,
            String
        )
    );
    feed!(
        conn,
        hash,
        judged_again,
        (i32, i32, Option<String>, String, String)
    );
    feed!(conn, hash, kept_texts, (String, String));
    feed!(conn, hash, label_truths, (i32));
    feed!(conn, hash, lots, LotRow);
    feed!(
        conn,
        hash,
        measurements,
        (
            i32,
            Option<i32>,
            Option<i32>,
            String,
            i64,
            Option<i32>,
            Option<i32>
        )
    );
    feed!(conn, hash, pack_events, PackEventRow);
    feed!(conn, hash, packs, PackRow);
    feed!(conn, hash, prints, PrintRow);
    feed!(conn, hash, probe_checks, (i32, String, String, i64));
    feed!(
        conn,
        hash,
        reasons,
        (
            i32,
            i32,
            String,
            String,
            String,
            String,
            Option<String>,
            Option<String>
        )
    );
    feed!(conn, hash, series, (String, i32));
    feed!(conn, hash, sources, SourceRow);
    feed!(conn, hash, steps, (i64, i64));
    feed!(conn, hash, stop_ends, (i32, i32, String));
    feed!(conn, hash, stops, StopRow);
    feed!(
        conn,
        hash,
        versions,
        (i32, i32, String, String, chrono::NaiveDateTime)
    );
    feed!(conn, hash, voids, (i32, String));
    Ok(hash
        .finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect())
}
