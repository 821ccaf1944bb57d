//! A row as values that both engines agree on.

use super::shape::{Kind, Table};
use crate::chain::line::Cell;
use crate::conn::Conn;
use crate::error::{Error, Result};
use diesel::sql_types::Text;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use serde_json::Value;

/// The values of a row, in the order of its table's columns: numbers, texts, yes and no; days as `2026-03-09`, times
/// as `2026-03-09T04:05:06.007008Z`, bytes in hexadecimal.
pub type Row = Vec<Value>;

#[derive(QueryableByName)]
struct Written {
    #[diesel(sql_type = Text)]
    row: String,
}

/// Rows of a table in the order of its key, after one of them.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(
    conn: &mut Conn,
    table: &Table,
    after: Option<&Row>,
    at_most: usize,
) -> Result<Vec<Row>> {
    let sqlite = matches!(conn, Conn::Sqlite(_));
    let shown = |(name, kind): &(&str, Kind)| match (kind, sqlite) {
        (Kind::Bytes, true) => format!("lower(hex({name}))"),
        (Kind::Bytes, false) => format!("encode({name}, 'hex')"),
        (Kind::Time, false) => format!("to_char({name}, 'YYYY-MM-DD\"T\"HH24:MI:SS.US')"),
        (Kind::Day, false) => format!("to_char({name}, 'YYYY-MM-DD')"),
        _ => (*name).to_owned(),
    };
    let columns: Vec<String> = table.columns.iter().map(shown).collect();
    let keys: Vec<&str> = table.columns[..table.keys].iter().map(|of| of.0).collect();
    let (keys, name) = (keys.join(", "), table.name);
    let make = if sqlite {
        "json_array"
    } else {
        "json_build_array"
    };
    let from = after.map(|row| {
        let key: Vec<String> = row[..table.keys].iter().map(Value::to_string).collect();
        format!("WHERE ({keys}) > ({})", key.join(", "))
    });
    let sql = format!(
        "SELECT CAST({make}({}) AS TEXT) AS row FROM {name} {} ORDER BY {keys} LIMIT {at_most}",
        columns.join(", "),
        from.unwrap_or_default()
    );
    let rows: Vec<Written> = match conn {
        Conn::Sqlite(conn) => sql_query(sql).load(conn)?,
        Conn::Pg(conn) => sql_query(sql).load(conn)?,
    };
    let bad = |error: serde_json::Error| Error::Broken(format!("{name}: {error}"));
    rows.iter()
        .map(|written| {
            let row: Row = serde_json::from_str(&written.row).map_err(bad)?;
            let values = row.into_iter().zip(&table.columns);
            Ok(values
                .map(|(value, (_, kind))| settled(value, *kind))
                .collect())
        })
        .collect()
}

/// A value as both engines have it.
fn settled(value: Value, kind: Kind) -> Value {
    match (kind, value) {
        (Kind::Bool, Value::Number(number)) => Value::Bool(number.as_i64() != Some(0)),
        (Kind::Time, Value::String(text)) => {
            let (whole, part) = text.split_once('.').unwrap_or((&text, ""));
            let part: String = part.chars().chain("000000".chars()).take(6).collect();
            Value::String(format!("{}.{part}Z", whole.replace(' ', "T")))
        }
        (_, value) => value,
    }
}

/// A row as a line of JSON, without blanks and with the names of its columns.
pub fn line(table: &Table, row: &Row) -> String {
    let mut line = String::from("{");
    for (nth, ((name, _), value)) in table.columns.iter().zip(row).enumerate() {
        if nth > 0 {
            line.push(',');
        }
        line.push('"');
        line.push_str(name);
        line.push_str("\":");
        match value {
            Value::String(text) => text.as_str().put(&mut line),
            other => line.push_str(&other.to_string()),
        }
    }
    line.push('}');
    line
}

/// The row of a line; none where it is no line of that table.
pub fn parse(table: &Table, line: &str) -> Option<Row> {
    let Value::Object(mut fields) = serde_json::from_str(line).ok()? else {
        return None;
    };
    let columns = table.columns.iter();
    let row: Option<Row> = columns.map(|(name, _)| fields.remove(*name)).collect();
    row.filter(|_| fields.is_empty())
}

/// Writes rows into a table.
///
/// # Errors
/// The database is away or full; a row names another that is not there.
pub fn put(conn: &mut Conn, table: &Table, rows: &[Row]) -> Result<()> {
    let sqlite = matches!(conn, Conn::Sqlite(_));
    let taken = |(nth, (_, kind)): (usize, &(&str, Kind))| match (sqlite, kind) {
        (true, Kind::Bytes) => format!("unhex(json_extract(value, '$[{nth}]'))"),
        (true, _) => format!("json_extract(value, '$[{nth}]')"),
        (false, Kind::Bytes) => format!("decode(value->>{nth}, 'hex')"),
        (false, Kind::Number) => format!("(value->>{nth})::bigint"),
        (false, Kind::Bool) => format!("(value->>{nth})::boolean"),
        (false, Kind::Day) => format!("(value->>{nth})::date"),
        (false, Kind::Time) => format!("(value->>{nth})::timestamp"),
        (false, Kind::Text) => format!("value->>{nth}"),
    };
    let columns: Vec<&str> = table.columns.iter().map(|of| of.0).collect();
    let values: Vec<String> = table.columns.iter().enumerate().map(taken).collect();
    let each = if sqlite {
        "json_each(?)"
    } else {
        "json_array_elements($1::json) AS rows(value)"
    };
    let sql = format!(
        "INSERT INTO {} ({}) SELECT {} FROM {each}",
        table.name,
        columns.join(", "),
        values.join(", ")
    );
    let native = |row: &Row| -> Value {
        let values = row.iter().zip(&table.columns);
        let native = values.map(|(value, (_, kind))| match (kind, value) {
            (Kind::Time, Value::String(text)) => Value::String(time(text)),
            (_, value) => value.clone(),
        });
        native.collect()
    };
    let rows = Value::Array(rows.iter().map(native).collect()).to_string();
    let rows = rows.as_str();
    match conn {
        Conn::Sqlite(conn) => sql_query(sql).bind::<Text, _>(rows).execute(conn)?,
        Conn::Pg(conn) => sql_query(sql).bind::<Text, _>(rows).execute(conn)?,
    };
    Ok(())
}

/// A time as it is kept: without a fraction that says nothing, which is how the program writes it itself.
fn time(text: &str) -> String {
    let text = text.trim_end_matches('Z').replace('T', " ");
    match text.split_once('.') {
        Some((whole, "000000")) => whole.to_owned(),
        Some((whole, part)) if part.ends_with("000") => format!("{whole}.{}", &part[..3]),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn table() -> &'static Table {
        super::super::tables()
            .find(|table| table.name == "clock_words")
            .unwrap()
    }

    #[test]
    fn a_line_reads_back_to_its_row_and_nothing_else_does() {
        let at = "2026-06-26T14:40:00.000000Z";
        let row: Row = vec![
            json!(1),
            json!(at),
            json!(null),
            json!("Oda \"M\""),
            json!("é\n"),
            json!(7),
        ];
        let written = line(table(), &row);
        assert_eq!(parse(table(), &written), Some(row));
        assert_eq!(parse(table(), "{\"id\":1}"), None);
        assert_eq!(
            parse(table(), &written.replacen("\"id\"", "\"more\":1,\"id\"", 1)),
            None
        );
    }

    #[test]
    fn times_are_alike_whichever_engine_wrote_them() {
        for (kept, carried) in [
            ("2026-06-26 14:40:00", "2026-06-26T14:40:00.000000Z"),
            ("2026-06-26 14:40:00.123", "2026-06-26T14:40:00.123000Z"),
            (
                "2026-06-26T14:40:00.123456789",
                "2026-06-26T14:40:00.123456Z",
            ),
        ] {
            assert_eq!(settled(json!(kept), Kind::Time), json!(carried));
        }
        assert_eq!(time("2026-06-26T14:40:00.000000Z"), "2026-06-26 14:40:00");
        assert_eq!(
            time("2026-06-26T14:40:00.120000Z"),
            "2026-06-26 14:40:00.120"
        );
    }
}
