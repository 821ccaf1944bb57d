//! The digest of the record: all tables that only deeds change, in the order of their names and keys, as they are
//! carried ([`crate::carry`]): the same on both engines.

use crate::carry;
use crate::conn::Conn;
use crate::error::Result;
use sha2::{Digest, Sha256};

/// Rows read at a time.
const CHUNK: usize = 2_000;

/// The tables, in the order of their names.
const TABLES: [&str; 34] = [
    "additions",
    "animals",
    "answers",
    "chain",
    "clock_words",
    "conditions",
    "core_readings",
    "corrections",
    "deeds",
    "entries",
    "house_codes",
    "incident_acts",
    "incident_reports",
    "incident_scopes",
    "incidents",
    "judged_again",
    "kept_texts",
    "label_truths",
    "lots",
    "measurements",
    "pack_events",
    "packs",
    "papers",
    "prints",
    "probe_checks",
    "reasons",
    "series",
    "sources",
    "steps",
    "stop_ends",
    "stops",
    "thinnings",
    "versions",
    "voids",
];

/// SHA-256 over every row of every table that only deeds change, as lower-case hexadecimal.
///
/// Left out are `print_runs`, `print_events`, `printer_leases` and `wrong_labels`: they change by themselves
/// while a printer works, and the digest is to say whether anybody did anything. What was asked for, what
/// each label says and what people settled are in (`prints`, `kept_texts`, `deeds`), and
/// `gambrel check` reads the others and holds them against these. Keys that are given out are no part of it, nor
/// are people and their tokens. The content of papers is in it by its SHA-256, which `gambrel check` holds it against.
pub fn digest(conn: &mut Conn) -> Result<String> {
    let mut hash = Sha256::new();
    let mut tables: Vec<&carry::Table> = carry::tables()
        .filter(|table| TABLES.contains(&table.name))
        .collect();
    tables.sort_unstable_by_key(|table| table.name);
    for table in tables {
        let mut last: Option<carry::Row> = None;
        loop {
            let rows = carry::read(conn, table, last.as_ref(), CHUNK)?;
            let Some(end) = rows.last() else { break };
            last = Some(end.clone());
            for row in &rows {
                hash.update(format!("{} {}\n", table.name, carry::line(table, row)));
            }
        }
    }
    Ok(crate::kept::hexadecimal(&hash.finalize()))
}
