//! Labels are asked of a printer: each once, unless somebody says why again.

use super::order::Order;
use super::press::{Press, PrinterCheck};
use super::{DeedHeader, Done, perform};
use crate::app::{App, damaged};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::printing::address::PrinterAddress;
use crate::printing::client::Client;
use crate::read::prints as read;
use crate::wire::lists::PrinterEntry;
use crate::wire::prints::{PrintAsked, PrintsDone};
use domain::words::DeedKind;
use store::prints;

/// Records what is to be printed; the printer is woken afterwards.
///
/// # Errors
/// 409 where packs were printed before and nobody says why again, or where the printer does not have
/// the label's size; whatever the labels themselves refuse.
pub fn take(app: &Caller<'_>, asked: &PrintAsked) -> Result<Done> {
    let order = Order::of(asked);
    order.check()?;
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Print,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked
            .again
            .as_ref()
            .map(|again| &again.why)
            .or(asked.note.as_ref()),
    };
    // Before the transaction: nothing is asked of a printer inside one.
    let looked = look(app, &asked.printer.0)?;
    let done = perform(app, header, asked, |facts| {
        let mut press = Press::open(facts, order, &looked)?;
        let rows = press.labels(facts)?;
        let at = facts.moment.recorded_at.naive_utc();
        let made = prints::insert(facts.tx, rows, at)?;
        Ok(PrintsDone {
            id: asked.id.0.to_string(),
            kind: DeedKind::Print.as_str().into(),
            late: false,
            prints: read::read(app, facts.tx.conn, &made)?,
            document: None,
            warnings: Vec::new(),
            warning_keys: Vec::new(),
            said: press.warnings,
        })
    })?;
    app.bell.ring();
    Ok(done)
}

/// The most labels that one deed asks for.
pub const MOST: usize = 400;

fn look(app: &App, code: &str) -> Result<PrinterCheck> {
    let row = app
        .store
        .look(|conn| read::printer(conn, code, "printer"))?;
    let entry: PrinterEntry = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
    let address = PrinterAddress::of(&entry).map_err(|says| Error::cannot_be("printer", says))?;
    let templates = entry.templates.unwrap_or_default();
    let answer = Client::new(&address).capabilities();
    if let Ok(answer) = &answer {
        app.printers.note(code, answer);
    }
    Ok(PrinterCheck {
        name: entry.name.0,
        templates: templates.into_iter().map(|template| template.0).collect(),
        answer,
    })
}
