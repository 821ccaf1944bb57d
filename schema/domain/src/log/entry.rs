//! An entry of a log: a cell for each of its columns, and what of it a rule wants and the record lacks.

use super::doing::Doing;
use super::kind::{Column, LogKind};
use super::source::Known;
use super::value::Value;
use super::wanted::{Must, wanted};
use super::{CorrectedBy, UndoneBy};
use crate::rows::RowId;
use crate::says::Texts;
use crate::words::DeedKind;
use chrono::{DateTime, Utc};

/// A log.
#[derive(Debug, Clone, PartialEq)]
pub struct Log {
    /// Which.
    pub kind: LogKind,
    /// Its entries, in the order of the deeds.
    pub entries: Vec<Entry>,
}

impl Log {
    /// How many holes it has.
    pub fn holes(&self) -> usize {
        let cells = self.entries.iter().flat_map(|entry| &entry.cells);
        cells.map(|cell| cell.holes.len()).sum()
    }
}

/// An entry: one deed.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The deed's id.
    pub uid: Vec<u8>,
    /// What it was.
    pub deed: DeedKind,
    /// When it ended.
    pub at: DateTime<Utc>,
    /// Who.
    pub by: String,
    /// When it was entered, where that was later than it happened.
    pub entered: Option<DateTime<Utc>>,
    /// What voided it. Such an entry stays, and lacks nothing.
    pub undone: Option<UndoneBy>,
    /// What corrected it: the cells say what is right.
    pub corrected: Vec<CorrectedBy>,
    /// Its cells, in the order of the log's columns.
    pub cells: Vec<Cell>,
}

/// A cell.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Of which column.
    pub column: Column,
    /// What stands in it.
    pub values: Vec<Value>,
    /// What a rule wants there and the record lacks.
    pub holes: Vec<Hole>,
}

/// What a rule wants and the record lacks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hole {
    /// The field, as the rule names it.
    pub field: String,
    /// What it is, in words.
    pub says: Texts,
    /// The row that wants it.
    pub row: RowId,
}

/// How much of what belongs into a cell the record has.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Holds {
    /// All that there is.
    Whole,
    /// Something, and something of it is not known.
    Partly,
    /// Nothing has to stand there: what the column is about did not happen.
    Idle,
}

/// What a log puts into a column.
#[derive(Debug, Clone, PartialEq)]
pub struct Filled {
    /// Which.
    pub column: Column,
    /// The values.
    pub values: Vec<Value>,
    /// How much of it.
    pub holds: Holds,
}

impl Filled {
    /// All that there is.
    pub fn whole(column: Column, values: impl IntoIterator<Item = Value>) -> Filled {
        Filled {
            column,
            values: values.into_iter().collect(),
            holds: Holds::Whole,
        }
    }

    /// Values of which some may not be known: none stands for one that is not.
    pub fn of_each(column: Column, values: impl IntoIterator<Item = Option<Value>>) -> Filled {
        let all: Vec<Option<Value>> = values.into_iter().collect();
        let holds = match all.iter().any(Option::is_none) {
            true => Holds::Partly,
            false => Holds::Whole,
        };
        let mut values: Vec<Value> = Vec::new();
        for value in all.into_iter().flatten() {
            if !values.contains(&value) {
                values.push(value);
            }
        }
        Filled {
            column,
            values,
            holds,
        }
    }

    /// The same, where nothing has to stand there unless something does.
    pub fn if_any(mut self) -> Filled {
        if self.values.is_empty() {
            self.holds = Holds::Idle;
        }
        self
    }

    /// Does it lack something that a rule wants?
    fn lacks(&self) -> bool {
        match self.holds {
            Holds::Whole => self.values.is_empty(),
            Holds::Partly => true,
            Holds::Idle => false,
        }
    }
}

/// An entry of what a log put into its columns.
pub(super) fn entry(kind: LogKind, doing: &Doing, filled: Vec<Filled>, known: &Known<'_>) -> Entry {
    let wanted = match doing.undone {
        Some(_) => Vec::new(),
        None => wanted(kind, doing, known),
    };
    let cell = |column: &Column| {
        let own = filled.iter().find(|filled| filled.column == *column);
        let lacks = own.is_none_or(Filled::lacks);
        let here = wanted.iter().filter(|of| of.column == *column);
        let holes = here.filter(|of| lacks && of.must == Must::Always);
        Cell {
            column: *column,
            values: own.map_or(Vec::new(), |own| own.values.clone()),
            holes: holes
                .map(|of| Hole {
                    field: of.field.field.clone(),
                    says: of.field.says.clone(),
                    row: of.field.row.clone(),
                })
                .collect(),
        }
    };
    Entry {
        uid: doing.uid.clone(),
        deed: doing.kind,
        at: doing.at,
        by: doing.by.clone(),
        entered: doing.entered,
        undone: doing.undone.clone(),
        corrected: doing.corrected.clone(),
        cells: kind.columns().iter().map(cell).collect(),
    }
}
