//! What became of the labels of what was just made: so that nobody waits at a printer that is off.

use super::bench_says::BenchSays;
use super::spoken::Words;
use crate::error::Result;
use crate::read::prints::views;
use domain::print::PrintView;
use domain::words::PrintState;
use std::collections::BTreeMap;
use store::deeds::DeedRow;
use store::lots::LotRow;
use store::{Conn, prints};

/// In sentences: how many came out, how many wait for which printer and what is wrong there, how many are in doubt;
/// or that none was asked for.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn told(conn: &mut Conn, words: &Words, deed: &DeedRow, made: &[LotRow]) -> Result<String> {
    let keys: Vec<i32> = made.iter().map(|lot| lot.id).collect();
    let found = prints::since(conn, deed.id, &keys, &[])?;
    let labels = views(conn, &found)?;
    if labels.is_empty() {
        return Ok(words.say(BenchSays::LabelsNone));
    }
    let printers = crate::read::prints::printers(conn)?;
    let mut told = Vec::new();
    let of = |state: fn(&PrintView) -> bool| labels.iter().filter(move |one| state(one));
    let pdf = of(|one| one.is_document && one.state == PrintState::Printed).count();
    if pdf > 0 {
        told.push(words.say(BenchSays::LabelsAsPdf { labels: pdf }));
    }
    let out = of(|one| !one.is_document && one.state == PrintState::Printed).count();
    if out > 0 {
        told.push(words.say(BenchSays::LabelsOut { labels: out }));
    }
    let mut open: BTreeMap<&str, usize> = BTreeMap::new();
    for one in of(|one| one.state.is_open()) {
        *open.entry(one.printer.as_str()).or_default() += 1;
    }
    for (code, labels) in open {
        let printer = printers.iter().find(|printer| printer.code == code);
        told.push(words.say(BenchSays::LabelsOpen {
            labels,
            printer: printer.map_or_else(|| code.to_owned(), |printer| printer.name.clone()),
        }));
        if let Some(trouble) = printer.and_then(|printer| printer.trouble.clone()) {
            told.push(words.say(trouble));
        }
    }
    let doubt = of(|one| matches!(one.state, PrintState::Unsure | PrintState::Refused)).count();
    if doubt > 0 {
        told.push(words.say(BenchSays::LabelsDoubt { labels: doubt }));
    }
    Ok(told.join(" "))
}
