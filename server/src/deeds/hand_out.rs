//! Labels leave as a document: a person prints it by what means they have, and then they count as printed.
//!
//! Nobody tells whether such a label came out. So they are down as printed from the moment that they were
//! asked for, and whoever sees that one did not come out says so, as of any other. Reading a label as PDF
//! records nothing: a `GET` is only for the eye.

use super::order::Order;
use super::press::Press;
use super::says::PrintDeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::lists::entry::lock;
use crate::read::prints as read;
use crate::wire::prints::{DocumentAsked, PrintsDone};
use domain::words::DeedKind;
use store::entries::{self, EntryBody, EntryRow};
use store::prints;

/// The list in which the record keeps what is printed by no printer of the kitchen's list.
const DOCUMENTS: &str = "label-documents";

/// The one entry of it; what the print of such a label says instead of a printer's code.
const PDF: &str = "pdf";

/// Records which labels leave, and what each says.
///
/// # Errors
/// 409 where packs were printed before and nobody says why again; whatever the labels themselves refuse.
pub fn take(app: &Caller<'_>, asked: &DocumentAsked) -> Result<Done> {
    let order = Order::of_document(asked);
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
    perform(app, header, asked, |facts| {
        let onto = document(facts)?;
        let mut press = Press::of_document(onto, order, asked.dpi.unwrap_or(203));
        let rows = press.labels(facts)?;
        let at = facts.moment.recorded_at.naive_utc();
        let by = facts.by.clone();
        let made = prints::hand_out(facts.tx, rows, &PrintDeedSays::HandedOut { by }.into(), at)?;
        Ok(PrintsDone {
            id: asked.id.0.to_string(),
            kind: DeedKind::Print.as_str().into(),
            late: false,
            prints: read::read(app, facts.tx.conn, &made)?,
            document: Some(read::document_path(&asked.id.0.to_string())),
            warnings: Vec::new(),
            warning_keys: Vec::new(),
            said: press.warnings,
        })
    })
}

/// What stands in the place of a printer.
fn document(facts: &mut Facts<'_, '_>) -> Result<EntryRow> {
    let known = entries::get(facts.tx.conn, DOCUMENTS, PDF)?;
    if let Some(known) = known {
        return Ok(known);
    }
    lock(facts.tx)?;
    if entries::get(facts.tx.conn, DOCUMENTS, PDF)?.is_none() {
        let body = EntryBody {
            text: "{}",
            search: "",
            at: facts.moment.recorded_at.naive_utc(),
        };
        entries::insert(facts.tx, DOCUMENTS, PDF, body)?;
    }
    let made = entries::get(facts.tx.conn, DOCUMENTS, PDF)?;
    made.ok_or_else(|| store::Error::Broken("what was just added is not there".into()).into())
}
