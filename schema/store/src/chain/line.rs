//! One row as it is written for the chain: a line of JSON with its columns in a fixed order.

use chrono::{Datelike, NaiveDate, NaiveDateTime, Timelike};
use std::fmt::Write;

/// A row that the chain is about: the columns that never change once it is written.
pub(crate) trait Written {
    /// Its table.
    const TABLE: &'static str;
    /// Its key.
    fn key(&self) -> i32;
    /// Writes it as one object of JSON, without blanks.
    fn write(&self, to: &mut String);
}

/// Says which columns of a row are in the chain, in their order there.
macro_rules! written {
    ($row:ty, $table:literal, $first:ident $(, $column:ident)*) => {
        impl $crate::chain::line::Written for $row {
            const TABLE: &'static str = $table;

            fn key(&self) -> i32 {
                self.id
            }

            fn write(&self, to: &mut String) {
                use $crate::chain::line::Cell;
                to.push_str(concat!("{\"", stringify!($first), "\":"));
                self.$first.put(to);
                $(
                    to.push_str(concat!(",\"", stringify!($column), "\":"));
                    self.$column.put(to);
                )*
                to.push('}');
            }
        }
    };
}
pub(crate) use written;

/// A value of a column.
pub(crate) trait Cell {
    /// Writes it as JSON.
    fn put(&self, to: &mut String);
}

impl Cell for i32 {
    fn put(&self, to: &mut String) {
        write!(to, "{self}").expect("a string takes it");
    }
}

impl Cell for i64 {
    fn put(&self, to: &mut String) {
        write!(to, "{self}").expect("a string takes it");
    }
}

impl Cell for bool {
    fn put(&self, to: &mut String) {
        to.push_str(if *self { "true" } else { "false" });
    }
}

impl Cell for str {
    fn put(&self, to: &mut String) {
        to.push('"');
        let mut rest = self;
        while let Some(at) = first_escaped(rest.as_bytes()) {
            to.push_str(&rest[..at]);
            match rest.as_bytes()[at] {
                b'"' => to.push_str("\\\""),
                b'\\' => to.push_str("\\\\"),
                b'\n' => to.push_str("\\n"),
                b'\r' => to.push_str("\\r"),
                b'\t' => to.push_str("\\t"),
                other => write!(to, "\\u{other:04x}").expect("a string takes it"),
            }
            rest = &rest[at + 1..];
        }
        to.push_str(rest);
        to.push('"');
    }
}

/// Where the first byte stands that JSON does not take as it is. Looked at many at once: nearly all of a record is plain.
fn first_escaped(bytes: &[u8]) -> Option<usize> {
    let is_escaped = |byte: &u8| *byte < 0x20 || *byte == b'"' || *byte == b'\\';
    let mut before = 0;
    for some in bytes.chunks(32) {
        if some.iter().fold(false, |any, byte| any | is_escaped(byte)) {
            return Some(before + some.iter().position(is_escaped)?);
        }
        before += some.len();
    }
    None
}

impl Cell for String {
    fn put(&self, to: &mut String) {
        self.as_str().put(to);
    }
}

impl Cell for &str {
    fn put(&self, to: &mut String) {
        (**self).put(to);
    }
}

/// An id that a device made, as hexadecimal.
impl Cell for Vec<u8> {
    fn put(&self, to: &mut String) {
        to.push('"');
        hexadecimal(self, to);
        to.push('"');
    }
}

impl Cell for NaiveDate {
    fn put(&self, to: &mut String) {
        let (year, month, day) = (self.year(), self.month(), self.day());
        write!(to, "\"{year:04}-{month:02}-{day:02}\"").expect("a string takes it");
    }
}

/// In UTC, to the microsecond, which is what both engines keep.
impl Cell for NaiveDateTime {
    fn put(&self, to: &mut String) {
        let (year, month, day) = (self.year(), self.month(), self.day());
        let (hour, minute, second) = (self.hour(), self.minute(), self.second());
        let micros = self.nanosecond() / 1_000;
        write!(
            to,
            "\"{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}.{micros:06}Z\""
        )
        .expect("a string takes it");
    }
}

impl<T: Cell> Cell for Option<T> {
    fn put(&self, to: &mut String) {
        match self {
            Some(value) => value.put(to),
            None => to.push_str("null"),
        }
    }
}

/// Bytes as lower-case hexadecimal.
pub(crate) fn hexadecimal(bytes: &[u8], to: &mut String) {
    const DIGITS: &[u8; 16] = b"0123456789abcdef";
    for byte in bytes {
        to.push(char::from(DIGITS[usize::from(byte >> 4)]));
        to.push(char::from(DIGITS[usize::from(byte & 15)]));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Row {
        id: i32,
        name: Option<String>,
        at: NaiveDateTime,
        uid: Vec<u8>,
        late: bool,
        mg: i64,
        day: Option<NaiveDate>,
    }
    written!(Row, "rows", id, name, at, uid, late, mg, day);

    #[test]
    fn a_row_is_written_as_json_that_reads_back_to_what_it_is() {
        let day = NaiveDate::from_ymd_opt(2026, 3, 9).unwrap();
        let row = Row {
            id: -7,
            name: Some("é \"q\" \\ \n\t\u{1} end".into()),
            at: day.and_hms_nano_opt(4, 5, 6, 7_008_999).unwrap(),
            uid: vec![0, 0xab],
            late: true,
            mg: i64::MAX,
            day: None,
        };
        let mut line = String::new();
        row.write(&mut line);
        assert_eq!(
            line,
            "{\"id\":-7,\"name\":\"é \\\"q\\\" \\\\ \\n\\t\\u0001 end\",\"at\":\"2026-03-09T04:05:06.007008Z\",\
             \"uid\":\"00ab\",\"late\":true,\"mg\":9223372036854775807,\"day\":null}"
        );
        let read: serde_json::Value = serde_json::from_str(&line).unwrap();
        assert_eq!(read["name"].as_str(), row.name.as_deref());
    }

    #[test]
    fn what_is_escaped_is_found_wherever_it_stands() {
        for at in 0..100 {
            let text = format!("é{}\"\\{}", "a".repeat(at), "b".repeat(100 - at));
            let mut line = String::new();
            text.put(&mut line);
            // The very form, which is what the chain is of: a plain letter may be written as an escape, too, and reads the same.
            assert_eq!(line, serde_json::to_string(&text).unwrap());
        }
    }
}
