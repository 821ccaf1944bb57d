//! Which tables and columns there are, read from the very text that diesel's own come from.

use std::sync::LazyLock;

/// What a column holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A whole number.
    Number,
    /// A text.
    Text,
    /// Yes or no.
    Bool,
    /// A day.
    Day,
    /// A time, in UTC.
    Time,
    /// Bytes.
    Bytes,
}

/// A table.
#[derive(Debug)]
pub struct Table {
    /// Its name.
    pub name: &'static str,
    /// Its columns, in order.
    pub(crate) columns: Vec<(&'static str, Kind)>,
    /// Are its rows large?
    pub(crate) is_large: bool,
    /// How many of the first columns are its key.
    pub(crate) keys: usize,
}

impl Table {
    /// Takes the value of a column out of a row.
    pub fn blank(&self, row: &mut super::Row, column: &str) {
        let place = self.columns.iter().position(|(name, _)| *name == column);
        if let Some(value) = place.and_then(|place| row.get_mut(place)) {
            *value = serde_json::Value::Null;
        }
    }
}

/// Every table of the record, those first that others name. Sessions, tokens, leases and what came of copies are
/// of one machine and are carried nowhere.
const ORDER: [&str; 48] = [
    "counters",
    "identities",
    "series",
    "entries",
    "versions",
    "house_codes",
    "deeds",
    "answers",
    "voids",
    "steps",
    "additions",
    "animals",
    "lots",
    "packs",
    "pack_events",
    "sources",
    "measurements",
    "core_readings",
    "probe_checks",
    "reasons",
    "incidents",
    "incident_scopes",
    "incident_acts",
    "incident_reports",
    "papers",
    "paper_parts",
    "thinnings",
    "stops",
    "stop_ends",
    "conditions",
    "corrections",
    "judged_again",
    "kept_texts",
    "prints",
    "print_runs",
    "print_events",
    "label_truths",
    "wrong_labels",
    "people",
    "person_roles",
    "clock_words",
    "chain",
    "chain_due",
    "sessions",
    "tokens",
    "printer_leases",
    "record_leases",
    "copies",
];

/// Tables that are of one machine.
const NOT_CARRIED: [&str; 5] = [
    "sessions",
    "tokens",
    "printer_leases",
    "record_leases",
    "copies",
];

static ALL: LazyLock<Vec<Table>> = LazyLock::new(|| {
    let mut all = read(include_str!("../tables.rs"));
    all.sort_by_key(|table| ORDER.iter().position(|name| *name == table.name));
    all
});

/// The tables that make up the record, those first that others name.
pub fn tables() -> impl Iterator<Item = &'static Table> {
    ALL.iter()
        .filter(|table| !NOT_CARRIED.contains(&table.name))
}

/// Every table, also those of one machine.
pub(crate) fn every() -> impl Iterator<Item = &'static Table> {
    ALL.iter()
}

/// The tables of diesel's text: `name (key) { column -> Type, … }`.
fn read(text: &'static str) -> Vec<Table> {
    let mut found = Vec::new();
    for part in text.split("diesel::table! {").skip(1) {
        let Some((head, rest)) = part.split_once('{') else {
            continue;
        };
        let (Some((name, keys)), Some((columns, _))) = (head.split_once('('), rest.split_once('}'))
        else {
            continue;
        };
        let column = |column: &'static str| {
            let (name, kind) = column.split_once("->")?;
            let kind = kind.trim();
            let kind = kind
                .strip_prefix("Nullable<")
                .map_or(kind, |inner| inner.trim_end_matches('>'));
            let kind = match kind {
                "Integer" | "BigInt" => Kind::Number,
                "Bool" => Kind::Bool,
                "Date" => Kind::Day,
                "Timestamp" => Kind::Time,
                "Binary" => Kind::Bytes,
                _ => Kind::Text,
            };
            Some((name.trim(), kind))
        };
        let name = name.trim();
        found.push(Table {
            name,
            is_large: name == "paper_parts",
            columns: columns.split(',').filter_map(column).collect(),
            keys: keys.split(',').count(),
        });
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_table_has_its_place_and_reads() {
        let mut names: Vec<&str> = ALL.iter().map(|table| table.name).collect();
        assert_eq!(names, ORDER, "a table lacks its place in the order");
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), ORDER.len());
        let deeds = ALL.iter().find(|table| table.name == "deeds").unwrap();
        assert_eq!(deeds.columns[1], ("uid", Kind::Bytes));
        assert_eq!(deeds.columns[4], ("began_at", Kind::Time));
        assert_eq!(deeds.columns[7], ("late", Kind::Bool));
        let events = ALL.iter().find(|table| table.name == "print_events");
        assert_eq!(events.unwrap().keys, 2);
    }
}
