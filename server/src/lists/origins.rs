//! Where farms and abattoirs are, as the record has it now, and the labels that tell it.

use super::List;
use super::standing::add;
use crate::app::App;
use crate::error::Result;
use crate::wrong_labels;
use domain::family::Lists;
use serde_json::Value;
use store::entries::{self, EntryRow};
use store::printed_origins::{self, OriginOf};
use store::{Conn, Tx};

/// The farms and abattoirs, and nothing else.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn of(conn: &mut Conn) -> Result<Lists> {
    let mut lists = Lists::default();
    for row in entries::all(conn, List::Farms.as_str())? {
        add(&mut lists.farms, row.code, &row.body)?;
    }
    for row in entries::all(conn, List::Abattoirs.as_str())? {
        add(&mut lists.abattoirs, row.code, &row.body)?;
    }
    Ok(lists)
}

/// An entry was changed: where it was a farm's or an abattoir's country, labels that tell the old one are wrong.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn changed(app: &App, tx: &mut Tx<'_>, list: List, known: &EntryRow, now: &str) -> Result<()> {
    let moved = ["country", "born_there"]
        .iter()
        .any(|field| told(&known.body, field) != told(now, field));
    if !moved {
        return Ok(());
    }
    let printed = match list {
        List::Farms => printed_origins::of(tx.conn, OriginOf::Farm(&known.code))?,
        List::Abattoirs => printed_origins::of(tx.conn, OriginOf::Abattoir(&known.code))?,
        _ => return Ok(()),
    };
    store::lots::lock_keys(tx, &printed)?;
    let lists = of(tx.conn)?;
    wrong_labels::may_say_else(app, tx, &lists, &printed, app.now().naive_utc())
}

fn told(body: &str, field: &str) -> Option<Value> {
    let body: Value = serde_json::from_str(body).ok()?;
    body.get(field).filter(|of| !of.is_null()).cloned()
}
