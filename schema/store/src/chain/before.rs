//! What was on record before the chain is sealed when the record is opened, and is marked so.

use super::born::Order;
use super::link;
use super::read::{self, Alone};
use super::seal::{DEED, Root};
use crate::conn::Conn;
use crate::error::Result;
use crate::tables::{chain_due, deeds};
use diesel::connection::SimpleConnection;
use diesel::prelude::*;

/// Seals what the record held before it had a chain, once. Several processes may start at the same time.
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub(crate) fn seal_what_is_due(conn: &mut Conn) -> Result<()> {
    if !is_due(conn)? {
        return Ok(());
    }
    conn.batch_execute(match conn {
        Conn::Sqlite(_) => "BEGIN IMMEDIATE",
        Conn::Pg(_) => "BEGIN; SELECT pg_advisory_xact_lock(7025)",
    })?;
    let done = seal_all(conn);
    conn.batch_execute(if done.is_ok() { "COMMIT" } else { "ROLLBACK" })?;
    done
}

/// Does it hold what was never sealed?
///
/// # Errors
/// The database is away.
pub(crate) fn is_due(conn: &mut Conn) -> Result<bool> {
    let due = chain_due::table.select(chain_due::id).load::<i32>(conn)?;
    Ok(!due.is_empty())
}

fn seal_all(conn: &mut Conn) -> Result<()> {
    if !is_due(conn)? {
        return Ok(()); // another process has just done it
    }
    for kind in read::BY_THEMSELVES {
        let rows = read::alone(conn, kind, None)?;
        let about: Vec<_> = rows
            .into_iter()
            .map(|(of, parts)| (Root { kind, of }, parts))
            .collect();
        link::append(conn, &about, true)?;
    }
    let all: Vec<i32> = deeds::table.order(deeds::id).select(deeds::id).load(conn)?;
    let (alone, order) = (Alone::new(), Order::new());
    for some in all.chunks(read::AT_ONCE) {
        let mut parts = read::of_deeds(conn, some, &alone, &order)?;
        let of = |of: &i32| {
            (
                Root {
                    kind: DEED,
                    of: *of,
                },
                parts.remove(of).unwrap_or_default(),
            )
        };
        let about: Vec<_> = some.iter().map(of).collect();
        link::append(conn, &about, true)?;
    }
    diesel::delete(chain_due::table).execute(conn)?;
    Ok(())
}
