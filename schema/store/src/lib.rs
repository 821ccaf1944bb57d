//! The record in SQLite or PostgreSQL. Diesel lives here and nowhere else.
//!
//! Reading order: [`db`] (open by address, read, and the one `write` that owns transactions),
//! `tables`, then one file per noun. Rows hold primitives; they turn into the domain's types here.
//! A function that takes a [`Tx`] belongs inside a deed's transaction; one that takes a [`Conn`] reads.
//!
//! What has a unique key is loaded with `get_result`, not `first`: SQLite prepares a statement anew each
//! time it runs with a `LIMIT` that is bound.

pub mod address;
pub mod again;
pub mod animals;
pub mod audit;
mod beside;
pub mod carry;
pub mod chain;
pub mod clock;
mod condition_audit;
pub mod conditions;
mod conn;
pub mod cooling;
pub mod copied;
pub mod copies;
pub mod corrections;
pub mod db;
pub mod deeds;
pub mod digest;
pub mod entries;
mod error;
pub mod family;
mod file;
mod gate;
pub mod gradually;
pub mod history;
mod ids;
pub mod incident_life;
pub mod incident_reports;
pub mod incidents;
pub mod integrity;
pub mod kept;
mod keyed;
pub mod leases;
pub mod list_lots;
pub mod logs;
pub mod lots;
pub mod measurements;
mod migrate;
pub mod occupants;
pub mod packs;
mod paper_audit;
pub mod paper_reach;
pub mod papers;
pub mod people;
pub mod places;
mod prepared;
mod print_audit;
pub mod print_runs;
pub mod printed_origins;
pub mod prints;
pub mod probes;
pub mod pulse;
pub mod reasons;
pub mod record;
pub mod record_lease;
pub mod rights;
pub mod said;
pub mod scope;
pub mod series;
mod series_audit;
pub mod settle;
pub mod sheets;
pub mod sources;
pub mod stands;
pub mod stops;
mod tables;
mod tls;
pub mod trace;
mod turn;
pub mod voids;
mod wrong_label_audit;
pub mod wrong_labels;

pub use address::Address;
pub use conn::Conn;
pub use db::{Store, Tx};
pub use error::{Error, Result};
pub use turn::Turn;

/// Runs a diesel expression on whichever engine is connected: batches and `Option` columns need
/// the engine's own type.
macro_rules! on_each {
    ($conn:expr, $c:ident => $body:expr) => {
        match $conn {
            $crate::Conn::Sqlite($c) => $body,
            $crate::Conn::Pg($c) => $body,
        }
    };
}
pub(crate) use on_each;

/// Inserts rows into a table. A statement for just so many rows is prepared once and kept, that for any number
/// is parsed each time: on SQLite rows go in by eights, the rest one by one. Not on PostgreSQL, where each
/// statement is a round trip: there many rows are copied in, which asks the server to parse and plan nothing. The
/// row's type says `treat_none_as_default_value = false`: else diesel begins a transaction of its own around
/// several rows, inside ours.
macro_rules! insert_rows {
    ($conn:expr, $table:expr, $rows:expr) => {{
        let (conn, rows): (&mut $crate::Conn, &[_]) = (&mut *$conn, $rows);
        match conn {
            $crate::Conn::Sqlite(c) => {
                let (eights, rest) = rows.as_chunks::<8>();
                for eight in eights {
                    diesel::insert_into($table).values(eight).execute(c)?;
                }
                for row in rest {
                    diesel::insert_into($table).values(row).execute(c)?;
                }
            }
            $crate::Conn::Pg(c) if rows.len() == 1 => {
                diesel::insert_into($table).values(&rows[0]).execute(c)?;
            }
            $crate::Conn::Pg(c) if rows.len() < $crate::COPIED => {
                if !rows.is_empty() {
                    diesel::insert_into($table).values(rows).execute(c)?;
                }
            }
            $crate::Conn::Pg(c) => {
                diesel::copy_from($table).from_insertable(rows).execute(c)?;
            }
        }
    }};
}
pub(crate) use insert_rows;

/// From so many rows on they are copied into PostgreSQL.
pub(crate) const COPIED: usize = 8;
