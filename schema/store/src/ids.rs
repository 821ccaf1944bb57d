//! Integer keys, given out in blocks: one counter on SQLite, one sequence on PostgreSQL.

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::prepared::Prepared;
use diesel::sql_types::BigInt;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use std::ops::Range;
use std::sync::{Mutex, PoisonError};

/// Keys taken from the database at a time. A crash wastes at most one block.
pub(crate) const BLOCK: i64 = 1_024;

/// The keys that are reserved and not yet used.
#[derive(Default)]
pub(crate) struct Ids(Mutex<Range<i32>>);

#[derive(QueryableByName)]
struct KeyStart {
    #[diesel(sql_type = BigInt)]
    start: i64,
}

impl Ids {
    /// `count` keys, rising, never given out before.
    pub(crate) fn take(&self, conn: &mut Conn, count: usize) -> Result<Vec<i32>> {
        let mut at_hand = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let mut taken = Vec::with_capacity(count);
        loop {
            taken.extend(at_hand.by_ref().take(count - taken.len()));
            if taken.len() == count {
                return Ok(taken);
            }
            *at_hand = next_block(conn)?;
        }
    }

    /// One key.
    pub(crate) fn one(&self, conn: &mut Conn) -> Result<i32> {
        Ok(self.take(conn, 1)?[0])
    }

    /// Drops the reserved keys: on SQLite the block was taken inside a transaction that was undone.
    pub(crate) fn forget(&self) {
        *self.0.lock().unwrap_or_else(PoisonError::into_inner) = 0..0;
    }
}

fn next_block(conn: &mut Conn) -> Result<Range<i32>> {
    let KeyStart { start } = match conn {
        Conn::Sqlite(conn) => {
            let sql = format!(
                "UPDATE counters SET next = next + {BLOCK} WHERE id = 1 RETURNING next - {BLOCK} AS start"
            );
            Prepared(sql_query(sql)).get_result(conn)?
        }
        // A sequence is never undone, so the reserved keys outlive a refused deed.
        Conn::Pg(conn) => {
            let sql = format!("SELECT nextval('keys') * {BLOCK} AS start");
            Prepared(sql_query(sql)).get_result(conn)?
        }
    };
    let key = |key: i64| {
        i32::try_from(key).map_err(|_| Error::Broken("the record has run out of keys".into()))
    };
    Ok(key(start)?..key(start + BLOCK)?)
}
