//! A log, as it is answered to a program.

use super::{instant, shown_id};
use crate::logbook::Telling;
use crate::read::logs::LogPage;
use crate::wire::cures::number;
use crate::wire::{Number, Weight};
use domain::log::{Cell, Column, Due, Entry, Hole, LogKind, Value};
use domain::measure::Scale;
use domain::rows::RowId;
use serde::Serialize;
use serde_json::json;
use utoipa::ToSchema;
use words::Speech;

/// The logs that there are.
#[derive(Debug, Serialize, ToSchema)]
#[schema(example = json!({ "logs": [ { "log": "grinding", "says": "Grinding", "due": [
    { "record": "ground-beef-log", "on": "grind-beef", "row": "us-G9", "kept": ["us-G8"] } ],
    "told": ["The ground beef log is due where beef is ground (us-G9).", "Kept for 1 year (us-G8)."] } ] }))]
pub struct LogsRead {
    /// Each, with what makes it due here.
    pub logs: Vec<LogDueRead>,
}

/// A log, and what makes it due here.
#[derive(Debug, Serialize, ToSchema)]
pub struct LogDueRead {
    /// Its word in the address.
    pub log: String,
    /// Its name.
    pub says: String,
    /// The rules that ask for it; none where no rule does.
    pub due: Vec<DueRead>,
    /// The same in sentences, with how long it is kept.
    pub told: Vec<String>,
}

/// A rule that asks for a log.
#[derive(Debug, Serialize, ToSchema)]
pub struct DueRead {
    /// The record, as the rule names it.
    pub record: String,
    /// The occasion on which it is due.
    pub on: String,
    /// The row.
    pub row: String,
    /// The rows by which it is kept.
    pub kept: Vec<String>,
}

/// A page of a log.
#[derive(Debug, Serialize, ToSchema)]
#[schema(example = json!({ "log": "departures", "says": "Departures", "from": "2026-06-01T00:00:00-04:00",
    "until": "2026-06-27T00:00:00-04:00", "due": [], "columns": [ { "column": "to", "says": "to", "rows": ["us-O5"] } ],
    "entries": [ { "deed": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c3e", "kind": "ship", "at": "2026-06-20T09:00:00-04:00",
        "by": "Oda Marsh", "remarks": [], "cells": [ { "column": "to-address", "values": [], "holes": [
            { "field": "receiver-address", "says": "MISSING: the address of that firm (us-O5)", "row": "us-O5" } ] } ] } ],
    "holes": 1, "next": null }))]
pub struct LogRead {
    /// Which log.
    pub log: String,
    /// Its name.
    pub says: String,
    /// The window: at that moment or after it.
    pub from: String,
    /// Before that moment.
    pub until: String,
    /// What makes it due here.
    pub due: Vec<DueRead>,
    /// Its columns, in order.
    pub columns: Vec<ColumnRead>,
    /// Its entries, in the order of their times.
    pub entries: Vec<EntryRead>,
    /// How many holes this page has.
    pub holes: usize,
    /// `after` of the next page, if there is one.
    pub next: Option<String>,
}

/// A column.
#[derive(Debug, Serialize, ToSchema)]
pub struct ColumnRead {
    /// Its word.
    pub column: String,
    /// Its heading.
    pub says: String,
    /// The rows that want it.
    pub rows: Vec<String>,
}

/// An entry: one deed.
#[derive(Debug, Serialize, ToSchema)]
pub struct EntryRead {
    /// The deed's id.
    pub deed: String,
    /// What it was.
    pub kind: String,
    /// When.
    pub at: String,
    /// Who.
    pub by: String,
    /// When it was entered, where that was later than it happened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub entered: Option<String>,
    /// Why it was voided, if it was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub voided: Option<String>,
    /// What is to be known of it besides: voided, corrected, entered later.
    pub remarks: Vec<String>,
    /// Its cells, those left out that hold nothing and have to hold nothing.
    pub cells: Vec<CellRead>,
}

/// A cell.
#[derive(Debug, Serialize, ToSchema)]
pub struct CellRead {
    /// Of which column.
    pub column: String,
    /// What stands in it: each with `is`, its own fields, and `says`.
    #[schema(value_type = Vec<Object>)]
    pub values: Vec<serde_json::Value>,
    /// What a rule wants there and the record lacks.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<HoleRead>,
}

/// What a rule wants and the record lacks.
#[derive(Debug, Serialize, ToSchema)]
pub struct HoleRead {
    /// The field, as the rule names it.
    pub field: String,
    /// In words.
    pub says: String,
    /// The row that wants it.
    pub row: String,
}

/// The logs, for a reader.
pub fn logs_read(all: &[(LogKind, Vec<Due<'_>>)], speech: &Speech) -> LogsRead {
    let read = |(kind, due): &(LogKind, Vec<Due<'_>>)| LogDueRead {
        log: kind.as_str().to_owned(),
        says: words::capital(&speech.say(&kind.says())),
        due: due.iter().map(due_read).collect(),
        told: crate::logbook::told_due(due, speech),
    };
    LogsRead {
        logs: all.iter().map(read).collect(),
    }
}

fn due_read(due: &Due<'_>) -> DueRead {
    DueRead {
        record: due.record.as_str().to_owned(),
        on: due.on.as_str().to_owned(),
        row: due.row.to_string(),
        kept: due.kept.iter().map(|kept| kept.row.to_string()).collect(),
    }
}

/// A page of a log, for a reader.
pub fn log_read(page: &LogPage, due: &[Due<'_>], speech: Speech) -> LogRead {
    let telling = Telling::of_screen(page, speech);
    let zone = page.kitchen().zone;
    let kind = page.log.kind;
    LogRead {
        log: kind.as_str().to_owned(),
        says: telling.name(kind),
        from: instant(page.window.from.naive_utc(), zone),
        until: instant(page.window.until.naive_utc(), zone),
        due: due.iter().map(due_read).collect(),
        columns: kind
            .columns()
            .iter()
            .map(|column| column_read(*column, due, &speech))
            .collect(),
        entries: page
            .log
            .entries
            .iter()
            .map(|entry| entry_read(&telling, entry))
            .collect(),
        holes: page.log.holes(),
        next: page.next.as_deref().map(shown_id),
    }
}

fn column_read(column: Column, due: &[Due<'_>], speech: &Speech) -> ColumnRead {
    let wanted = due.iter().flat_map(|due| &due.columns);
    let mut rows: Vec<String> = wanted
        .filter(|(of, _)| *of == column)
        .map(|(_, row)| row.to_string())
        .collect();
    rows.sort();
    rows.dedup();
    ColumnRead {
        column: column.as_str().to_owned(),
        says: speech.say(&column.says()),
        rows,
    }
}

fn entry_read(telling: &Telling<'_>, entry: &Entry) -> EntryRead {
    let zone = telling.page.kitchen().zone;
    let cells = entry.cells.iter();
    let cells = cells.filter(|cell| !cell.values.is_empty() || !cell.holes.is_empty());
    EntryRead {
        deed: shown_id(&entry.uid),
        kind: entry.deed.as_str().to_owned(),
        at: instant(entry.at.naive_utc(), zone),
        by: entry.by.clone(),
        entered: entry.entered.map(|at| instant(at.naive_utc(), zone)),
        voided: entry.undone.as_ref().map(|undone| undone.why.clone()),
        remarks: crate::logbook::remarks(telling, entry),
        cells: cells.map(|cell| cell_read(telling, cell)).collect(),
    }
}

fn cell_read(telling: &Telling<'_>, cell: &Cell) -> CellRead {
    let hole = |hole: &Hole| HoleRead {
        field: hole.field.clone(),
        says: telling.hole(hole),
        row: hole.row.to_string(),
    };
    CellRead {
        column: cell.column.as_str().to_owned(),
        values: cell
            .values
            .iter()
            .map(|value| value_read(telling, value))
            .collect(),
        holes: cell.holes.iter().map(hole).collect(),
    }
}

/// A value: what it is, its own fields, and the same in words.
fn value_read(telling: &Telling<'_>, value: &Value) -> serde_json::Value {
    let zone = telling.page.kitchen().zone;
    let figure = |decimal| json!(number(decimal));
    let read = |read: &domain::measure::Temperature| match read.scale() {
        Scale::Celsius => ("celsius", number(read.degrees())),
        Scale::Fahrenheit => ("fahrenheit", number(read.degrees())),
    };
    let mut told = match value {
        Value::Text(_) | Value::Named(_) => json!({ "is": "text" }),
        Value::Lot(code, pack) => json!({ "is": "lot", "lot": code.to_string(), "pack": pack }),
        Value::Moment(at) => json!({ "is": "moment", "at": instant(at.naive_utc(), zone) }),
        Value::Day(day) => json!({ "is": "day", "day": day.to_string() }),
        Value::Weight(grams) => json!({ "is": "weight", "grams": Weight(*grams) }),
        Value::Temperature(of) => {
            let (scale, degrees) = read(of);
            json!({ "is": "temperature", scale: degrees })
        }
        Value::Percent(of) => json!({ "is": "percent", "percent": figure(of.number()) }),
        Value::Number(of) => json!({ "is": "number", "number": figure(*of) }),
        Value::Ppm(of) => json!({ "is": "ppm", "ppm": figure(*of) }),
        Value::Millimetres(of) => json!({ "is": "millimetres", "millimetres": figure(*of) }),
        Value::Count(of) => json!({ "is": "count", "count": of }),
        Value::Length(of) => {
            let minutes = Number(of.num_seconds().saturating_mul(1_000_000) / 60);
            json!({ "is": "length", "minutes": minutes })
        }
        Value::Material { lot, grams, .. } => {
            json!({ "is": "material", "lot": lot.to_string(), "grams": Weight(*grams) })
        }
        Value::Point { at, read: of } => {
            let (scale, degrees) = read(of);
            json!({ "is": "point", "at": instant(at.naive_utc(), zone), scale: degrees })
        }
        Value::Said { says, rows } => {
            let rows: Vec<String> = rows.iter().map(RowId::to_string).collect();
            json!({ "is": "said", "key": says.key(), "rows": rows })
        }
    };
    if let Some(fields) = told.as_object_mut() {
        fields.insert("says".to_owned(), json!(telling.value(value)));
    }
    told
}
