//! What each printer answered when it was asked last, as long as the service runs: by that a label is shown as it will
//! come out, before anybody prints it. Nothing is printed by it.

use super::capabilities::Capabilities;
use super::paper;
use crate::app::{App, damaged};
use crate::error::Result;
use crate::lists::List;
use crate::wire::lists::PrinterEntry;
use labels::Template;
use std::collections::BTreeMap;
use std::sync::{Arc, PoisonError, RwLock};
use store::{Conn, entries};

/// The printers that answered, by code.
#[derive(Debug, Default)]
pub struct Seen(RwLock<BTreeMap<String, Arc<Capabilities>>>);

impl Seen {
    /// A printer answered.
    pub fn note(&self, code: &str, answer: &Capabilities) {
        let mut seen = self.0.write().unwrap_or_else(PoisonError::into_inner);
        seen.insert(code.to_owned(), Arc::new(answer.clone()));
    }

    /// What a printer answered last; nothing where nobody asked it yet.
    pub fn of(&self, code: &str) -> Option<Arc<Capabilities>> {
        let seen = self.0.read().unwrap_or_else(PoisonError::into_inner);
        seen.get(code).cloned()
    }
}

/// The labels that a printer is for: those that its entry names, else those of which it has the paper.
pub fn labels_for(
    only: &[String],
    printer: &Capabilities,
    templates: &BTreeMap<String, Template>,
) -> Vec<String> {
    if !only.is_empty() {
        return only.to_vec();
    }
    let fitting = templates.values();
    let fitting = fitting.filter(|template| paper::has(printer, template));
    fitting.map(|template| template.name().to_owned()).collect()
}

/// A printer that answered, and the labels that it is for.
pub struct OnPaper {
    /// What people call it.
    pub name: String,
    /// What it answered.
    pub can: Arc<Capabilities>,
    /// The labels that it is for.
    pub labels: Vec<String>,
}

/// A printer of the list.
pub enum Listed {
    /// It answered.
    Answered(OnPaper),
    /// Nobody asked it since the service began; its code.
    Unasked(String),
}

/// The printers of the list, with what is known of their paper.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn listed(app: &App, conn: &mut Conn) -> Result<Vec<Listed>> {
    let rows = entries::all(conn, List::Printers.as_str())?.into_iter();
    let each = rows.map(|row| {
        let Some(can) = app.printers.of(&row.code) else {
            return Ok(Listed::Unasked(row.code));
        };
        let entry: PrinterEntry =
            serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
        let only = entry.templates.into_iter().flatten();
        let only: Vec<String> = only.map(|of| of.0).collect();
        Ok(Listed::Answered(OnPaper {
            name: entry.name.0,
            labels: labels_for(&only, &can, &app.templates),
            can,
        }))
    });
    each.collect()
}
