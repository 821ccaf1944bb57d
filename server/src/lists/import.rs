//! Many entries of a list at once, from a table as a spreadsheet writes it: a row an entry, a column a field,
//! named as the fields are. All or nothing; tried first, it tells line by line what would become of it. A
//! column that is not there, or is empty, leaves its field as it was.

use super::cells::{find, put, value};
use super::entry::{self, Entry};
use super::fields::{self, Field, HEADS};
use super::says::ImportSays;
use super::table::Table;
use crate::caller::Caller;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use actix_web::http::StatusCode;
use domain::says::{Arg, Says};
use serde_json::{Map, Value};
use std::collections::BTreeSet;
use store::db::MayRetry;
use store::{Tx, entries};

/// What becomes of a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fate {
    /// It is new.
    New,
    /// It is in the list, and is changed.
    Changed,
    /// It is in the list, just so.
    Same,
    /// It cannot be.
    Wrong,
}

impl Fate {
    /// As it is spelt everywhere.
    pub const fn as_str(self) -> &'static str {
        match self {
            Fate::New => "new",
            Fate::Changed => "changed",
            Fate::Same => "same",
            Fate::Wrong => "wrong",
        }
    }

    /// The word for a reader.
    pub fn says(self) -> Says {
        match self {
            Fate::New => ImportSays::New,
            Fate::Changed => ImportSays::Changed,
            Fate::Same => ImportSays::Same,
            Fate::Wrong => ImportSays::Wrong,
        }
        .into()
    }
}

/// A line of a table.
#[derive(Debug, Clone)]
pub struct Line {
    /// Its number in the file, the heading being the first.
    pub number: usize,
    /// The code of its entry, as it stands there.
    pub code: String,
    /// What becomes of it.
    pub fate: Fate,
    /// The column at fault, or those that change.
    pub columns: Vec<String>,
    /// What is wrong, and what would do.
    pub says: Option<Says>,
}

/// What became of a table, or would.
#[derive(Debug, Clone, Default)]
pub struct Report {
    /// Line by line.
    pub lines: Vec<Line>,
}

impl Report {
    /// How many lines have some fate.
    pub fn count(&self, fate: Fate) -> usize {
        self.lines.iter().filter(|line| line.fate == fate).count()
    }

    fn refused(&self) -> Option<Error> {
        let line = self.lines.iter().find(|line| line.fate == Fate::Wrong)?;
        let detail = ImportSays::LineWrong {
            line: line.number,
            column: line.columns.first().cloned().unwrap_or_default(),
            says: line.says.clone().unwrap_or_else(|| Fate::Wrong.says()),
            wrong: self.count(Fate::Wrong),
        };
        let (status, slug) = (StatusCode::UNPROCESSABLE_ENTITY, "table");
        let problem = Problem::new(status, slug, TitleSays::Table, detail);
        Some(problem.at(format!("line {}", line.number)).into())
    }
}

/// Stops the writing of a table that was only tried, or has something wrong in it.
enum Halt {
    Told(Report),
    Failed(Error),
}

impl From<Error> for Halt {
    fn from(error: Error) -> Halt {
        Halt::Failed(error)
    }
}

impl From<store::Error> for Halt {
    fn from(error: store::Error) -> Halt {
        Halt::Failed(error.into())
    }
}

impl MayRetry for Halt {
    fn is_conflict(&self) -> bool {
        matches!(self, Halt::Failed(error) if error.is_conflict())
    }

    fn of_store(&self) -> Option<&store::Error> {
        match self {
            Halt::Told(_) => None,
            Halt::Failed(error) => error.of_store(),
        }
    }
}

/// Takes over a table into its list, or only tells what would become of it.
///
/// # Errors
/// 422 where a line of it cannot be, and it was not only tried: nothing is taken over then.
pub fn take<E: Entry>(app: &Caller<'_>, table: &Table, is_tried: bool) -> Result<Report> {
    let columns = known_columns::<E>(table)?;
    let done = app.store.write(|tx| {
        entry::lock(tx)?;
        let mut report = Report::default();
        let mut seen = BTreeSet::new();
        for (number, cells) in &table.rows {
            let line = line::<E>(app, tx, &columns, *number, cells, &mut seen)?;
            report.lines.push(line);
        }
        match is_tried || report.count(Fate::Wrong) > 0 {
            true => Err(Halt::Told(report)),
            false => Ok(report),
        }
    });
    match done {
        Ok(report) => Ok(report),
        Err(Halt::Told(report)) if is_tried => Ok(report),
        Err(Halt::Told(report)) => report.refused().map_or(Ok(report), Err),
        Err(Halt::Failed(error)) => Err(error),
    }
}

/// The fields of the columns.
fn known_columns<E: Entry>(table: &Table) -> Result<Vec<&'static Field>> {
    let all = fields::of(E::LIST);
    let mut known: Vec<&'static Field> = Vec::new();
    for (nth, column) in table.columns.iter().enumerate() {
        let found = all.iter().find(|field| field.column() == column);
        let twice = found.is_some_and(|field| known.iter().any(|one| one.name == field.name));
        let says = match found {
            Some(_) if twice => ImportSays::ColumnTwice {
                column: column.clone(),
            },
            Some(field) => {
                known.push(field);
                continue;
            }
            None => ImportSays::NoColumn {
                number: nth + 1,
                column: column.clone(),
                columns: Arg::All(all.iter().map(|field| Arg::from(field.column())).collect()),
            },
        };
        let status = StatusCode::UNPROCESSABLE_ENTITY;
        let problem = Problem::new(status, "table", TitleSays::Table, says);
        return Err(problem.at("line 1").into());
    }
    let head = all[0].name;
    if !known.iter().any(|field| field.name == head) {
        let says = ImportSays::NoHead {
            column: head.to_owned(),
        };
        let status = StatusCode::UNPROCESSABLE_ENTITY;
        let problem = Problem::new(status, "table", TitleSays::Table, says);
        return Err(problem.at("line 1").into());
    }
    Ok(known)
}

fn line<E: Entry>(
    app: &Caller<'_>,
    tx: &mut Tx<'_>,
    columns: &[&'static Field],
    number: usize,
    cells: &[String],
    seen: &mut BTreeSet<String>,
) -> Result<Line> {
    let head = fields::of(E::LIST)[0].name;
    let at = columns.iter().position(|field| field.name == head);
    let code = at.and_then(|at| cells.get(at)).cloned().unwrap_or_default();
    let mut line = Line {
        number,
        code: code.clone(),
        fate: Fate::Wrong,
        columns: Vec::new(),
        says: None,
    };
    let mut wrong = |column: &str, says: Says| Line {
        columns: Some(column.to_owned())
            .filter(|name| !name.is_empty())
            .into_iter()
            .collect(),
        says: Some(says),
        ..line.clone()
    };
    if cells.len() > columns.len() {
        let says = ImportSays::Cells {
            cells: cells.len(),
            columns: columns.len(),
        };
        return Ok(wrong("", says.into()));
    }
    if !code.is_empty() && !seen.insert(code.clone()) {
        return Ok(wrong(head, ImportSays::Twice { code }.into()));
    }
    let known = match code.chars().any(char::is_control) {
        true => None,
        false => entries::get(tx.conn, E::LIST.as_str(), &code)?,
    };
    let was = match &known {
        Some(known) => {
            serde_json::from_str(&known.body).map_err(|error| crate::app::damaged(&error))?
        }
        None => Value::Object(Map::new()),
    };
    let mut body = was.clone();
    for (field, cell) in columns.iter().zip(cells) {
        match value(field, cell) {
            Ok(Some(value)) => put(&mut body, field.name, value),
            Ok(None) => {}
            Err(says) => return Ok(wrong(field.column(), says.into())),
        }
    }
    for head in HEADS {
        let (part, name) = head.split_once('.').unwrap_or((head, ""));
        if body[part].is_object() && body[part].get(name).is_none() {
            body.as_object_mut().map(|body| body.remove(part));
        }
    }
    // What is told when an entry is written is no part of it.
    let asked = crate::body::parse::<E>(body.to_string().as_bytes());
    let entry = match asked {
        Ok(entry) => entry,
        Err(error) => return told(error, columns, &mut wrong),
    };
    if let Some(known) = &known
        && known.body == crate::wire::asked::canonical(&entry)
    {
        line.fate = Fate::Same;
        return Ok(line);
    }
    if let Err(error) = entry::put_down(app, tx, &entry, known.as_ref()) {
        return told(error, columns, &mut wrong);
    }
    line.fate = if known.is_some() {
        Fate::Changed
    } else {
        Fate::New
    };
    if known.is_some() {
        let differs = |field: &&&Field| find(&was, field.name) != find(&body, field.name);
        let changed = columns.iter().filter(differs);
        line.columns = changed.map(|field| field.column().to_owned()).collect();
    }
    Ok(line)
}

/// A refusal of one entry is its line's; a database that is away is everybody's.
fn told(
    error: Error,
    columns: &[&'static Field],
    wrong: &mut impl FnMut(&str, Says) -> Line,
) -> Result<Line> {
    if matches!(error, Error::Store(_)) {
        return Err(error);
    }
    let problem = error.problem();
    let field = problem.field.clone().unwrap_or_default();
    // A list in one cell: `allergens[2]` is the column `allergens`.
    let field = field.split('[').next().unwrap_or_default();
    let column = columns.iter().find(|one| one.name == field);
    Ok(wrong(
        column.map_or(field, |one| one.column()),
        problem.detail,
    ))
}
