//! Statements about some keys. The keys are bound, whatever their number, so that such a statement is read and planned
//! once: on PostgreSQL that takes as long as to walk to a few hundred lots.

use crate::conn::Conn;
use crate::error::Result;
use crate::prepared::Prepared;
use chrono::NaiveDateTime;
use diesel::deserialize::FromSqlRow;
use diesel::pg::Pg;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Array, Integer, Text, Timestamp, Untyped};
use diesel::sqlite::Sqlite;
use domain::code::LotCode;

/// Keys in one statement.
pub(crate) const AT_ONCE: usize = 2_000;

/// A row that either engine gives.
pub(crate) trait Row:
    FromSqlRow<Untyped, Sqlite> + FromSqlRow<Untyped, Pg> + 'static
{
}
impl<R: FromSqlRow<Untyped, Sqlite> + FromSqlRow<Untyped, Pg> + 'static> Row for R {}

/// How a text of SQL says that a column is one of some keys, at least one.
pub(crate) fn among(keys: &[i32]) -> String {
    let keys: Vec<String> = keys.iter().map(i32::to_string).collect();
    format!("IN ({})", keys.join(", "))
}

/// The keys as PostgreSQL binds them. Out of a query of its own it cannot tell how many there are: else it plans the first
/// times for just these, and reads whole tables beside other workers where an index leads to a few hundred rows.
const OF_ARRAY: &str = "= ANY((SELECT $1)::integer[])";
/// One alone is told apart: so many as an array may hold lead, it thinks, to so many lots that it had better read them all.
const ONE: &str = "= $1";
/// As SQLite does: it knows no arrays, but reads a list of JSON.
const OF_LIST: &str = "IN (SELECT value FROM json_each($1))";

fn list(keys: &[i32]) -> String {
    let keys: Vec<String> = keys.iter().map(i32::to_string).collect();
    format!("[{}]", keys.join(","))
}

/// The rows of a statement about some keys: it is told how SQL says that a column is one of them.
pub(crate) fn of<R: Row>(
    conn: &mut Conn,
    keys: &[i32],
    sql: impl Fn(&str) -> String,
) -> Result<Vec<R>> {
    Ok(match conn {
        Conn::Sqlite(conn) => {
            let sql = sql_query(sql(OF_LIST)).bind::<Text, _>(list(keys));
            Prepared(sql).load(conn)?
        }
        Conn::Pg(conn) => match keys {
            [one] => Prepared(sql_query(sql(ONE)).bind::<Integer, _>(*one)).load(conn)?,
            _ => Prepared(sql_query(sql(OF_ARRAY)).bind::<Array<Integer>, _>(keys)).load(conn)?,
        },
    })
}

/// Changes the rows of a statement about some keys; how many it changed.
pub(crate) fn change(conn: &mut Conn, keys: &[i32], sql: impl Fn(&str) -> String) -> Result<usize> {
    Ok(match conn {
        Conn::Sqlite(conn) => {
            let sql = sql_query(sql(OF_LIST)).bind::<Text, _>(list(keys));
            Prepared(sql).execute(conn)?
        }
        Conn::Pg(conn) => {
            let sql = sql_query(sql(OF_ARRAY)).bind::<Array<Integer>, _>(keys);
            Prepared(sql).execute(conn)?
        }
    })
}

/// The same of a statement whose second parameter is a moment.
pub(crate) fn of_until<R: Row>(
    conn: &mut Conn,
    keys: &[i32],
    until: NaiveDateTime,
    sql: impl Fn(&str) -> String,
) -> Result<Vec<R>> {
    Ok(match conn {
        Conn::Sqlite(conn) => {
            let sql = sql_query(sql(OF_LIST)).bind::<Text, _>(list(keys));
            Prepared(sql.bind::<Timestamp, _>(until)).load(conn)?
        }
        Conn::Pg(conn) => {
            let sql = sql_query(sql(OF_ARRAY)).bind::<Array<Integer>, _>(keys);
            Prepared(sql.bind::<Timestamp, _>(until)).load(conn)?
        }
    })
}

/// The same of a statement with two lists of keys. The first has to stand first in it: SQLite counts parameters in the order
/// in which it meets their names.
pub(crate) fn of_both<R: Row>(
    conn: &mut Conn,
    first: &[i32],
    second: &[i32],
    sql: impl Fn(&str, &str) -> String,
) -> Result<Vec<R>> {
    let second_of = |form: &str| form.replace("$1", "$2");
    Ok(match conn {
        Conn::Sqlite(conn) => {
            let sql = sql_query(sql(OF_LIST, &second_of(OF_LIST)));
            let sql = sql.bind::<Text, _>(list(first));
            Prepared(sql.bind::<Text, _>(list(second))).load(conn)?
        }
        Conn::Pg(conn) => {
            let sql = sql_query(sql(OF_ARRAY, &second_of(OF_ARRAY)));
            let sql = sql.bind::<Array<Integer>, _>(first);
            Prepared(sql.bind::<Array<Integer>, _>(second)).load(conn)?
        }
    })
}

/// The rows of a statement about the lot of a code: it is told how SQL says that a column is the code.
pub(crate) fn of_code<R: Row>(
    conn: &mut Conn,
    code: &LotCode,
    sql: impl Fn(&str) -> String,
) -> Result<Vec<R>> {
    let sql = sql_query(sql(ONE)).bind::<Text, _>(code.as_str());
    Ok(match conn {
        Conn::Sqlite(conn) => Prepared(sql).load(conn)?,
        Conn::Pg(conn) => Prepared(sql).load(conn)?,
    })
}

/// The same of a statement with a list of keys, which has to stand before the code.
pub(crate) fn of_code_or<R: Row>(
    conn: &mut Conn,
    keys: &[i32],
    code: &LotCode,
    sql: impl Fn(&str, &str) -> String,
) -> Result<Vec<R>> {
    let is = ONE.replace("$1", "$2");
    Ok(match conn {
        Conn::Sqlite(conn) => {
            let sql = sql_query(sql(OF_LIST, &is)).bind::<Text, _>(list(keys));
            Prepared(sql.bind::<Text, _>(code.as_str())).load(conn)?
        }
        Conn::Pg(conn) => {
            let sql = sql_query(sql(OF_ARRAY, &is)).bind::<Array<Integer>, _>(keys);
            Prepared(sql.bind::<Text, _>(code.as_str())).load(conn)?
        }
    })
}
