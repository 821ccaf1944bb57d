//! `gambrel keeping`: how long each record is kept by the rules of the place, and which papers may be thinned.

use crate::app::App;
use crate::caller::Caller;
use crate::config::KeepingArgs;
use crate::read::keeping;
use crate::wire::answers::KeepingRead;
use crate::world::Clock;
use law::Shipped;
use std::collections::BTreeMap;
use std::fmt::Write;
use store::Store;

/// What there is to tell.
///
/// # Errors
/// In words: the record cannot be opened or read.
pub fn told(args: &KeepingArgs, law: Shipped) -> Result<String, String> {
    let place = args.database.resolve(false)?;
    let store = Store::open(&place.address, false, 2).map_err(|error| error.to_string())?;
    let app = App::new(store, Clock::Machine, String::new(), BTreeMap::new(), law);
    let caller = Caller::new(&app);
    let read = app.store.read(|conn| keeping::read(&caller, conn));
    let read = read.map_err(|error| error.to_string())?;
    Ok(lines(&read))
}

fn lines(read: &KeepingRead) -> String {
    let mut text = format!("{}, {}\n{}\n\n", read.place, read.today, read.says);
    for rule in &read.rules {
        let over = rule.over_before.as_deref().map_or_else(String::new, |day| {
            format!(" Over for what is older than {day}.")
        });
        let _ = writeln!(text, "{}: {} [{}]{over}", rule.name, rule.says, rule.row);
    }
    let _ = write!(
        text,
        "\npapers: {}, bytes: {}, thinned: {}",
        read.papers, read.bytes, read.thinned
    );
    if let Some(incident) = &read.open_incident {
        let _ = write!(text, "\nopen: {incident}");
    }
    for paper in &read.may_be_thinned {
        let name = paper.name.as_deref().unwrap_or_default();
        let says = paper.says.as_deref().unwrap_or_default();
        let _ = write!(text, "\n{} {} {name}: {says}", paper.id, paper.kind);
    }
    text
}
