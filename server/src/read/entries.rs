//! The entries of a list as they are kept, for pages that show or change them.

use crate::app::damaged;
use crate::error::Result;
use crate::lists::{List, entry};
use serde_json::Value;
use store::Conn;
use store::entries::{self, EntryRow};

/// An entry as it is kept.
pub struct Kept {
    /// Its code.
    pub code: String,
    /// Which version of it this is.
    pub version: i32,
    /// What stands in it.
    pub body: Value,
}

impl Kept {
    fn of(row: EntryRow) -> Result<Kept> {
        Ok(Kept {
            body: serde_json::from_str(&row.body).map_err(|error| damaged(&error))?,
            code: row.code,
            version: row.number,
        })
    }

    /// What it is called in a language, as far as the list says.
    pub fn name(&self, language: &str) -> String {
        let names = &self.body["names"];
        let first = || names.as_object()?.values().next();
        let name = names
            .get(language)
            .or_else(|| names.get("en"))
            .or_else(first)
            .unwrap_or(&self.body["name"]);
        name.as_str().unwrap_or(&self.code).to_owned()
    }

    /// The text at a place in it: `keep.days`; nothing where none stands there.
    pub fn text(&self, name: &str) -> Option<String> {
        let value = name
            .split('.')
            .try_fold(&self.body, |body, part| body.get(part))?;
        match value {
            Value::Null => None,
            Value::String(text) => Some(text.clone()),
            Value::Bool(is) => Some(if *is { "yes" } else { "no" }.to_owned()),
            Value::Array(all) => {
                let texts = all.iter().filter_map(Value::as_str);
                Some(texts.collect::<Vec<_>>().join("\n"))
            }
            other => Some(other.to_string()),
        }
    }
}

/// All entries of a list, by code.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn all(conn: &mut Conn, list: List) -> Result<Vec<Kept>> {
    let rows = entries::all(conn, list.as_str())?;
    rows.into_iter().map(Kept::of).collect()
}

/// The entry of a code, if there is one.
///
/// # Errors
/// The database is away, or the entry is damaged.
pub fn find(conn: &mut Conn, list: List, code: &str) -> Result<Option<Kept>> {
    let row = match code.chars().any(char::is_control) {
        true => None,
        false => entries::get(conn, list.as_str(), code)?,
    };
    row.map(Kept::of).transpose()
}

/// The entry of a code.
///
/// # Errors
/// 404 where there is none; the database is away, or the entry is damaged.
pub fn one(conn: &mut Conn, list: List, code: &str) -> Result<Kept> {
    find(conn, list, code)?.ok_or_else(|| entry::no_such_entry(list, code))
}
