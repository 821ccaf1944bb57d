//! What became of the labels of what was just made: so that nobody waits at a printer that is off.

use super::bench_says::BenchSays;
use super::spoken::Words;
use crate::error::Result;
use crate::read::prints::views;
use domain::print::PrintView;
use domain::says::Says;
use domain::words::PrintState;
use std::collections::BTreeMap;
use store::deeds::DeedRow;
use store::lots::LotRow;
use store::{Conn, prints};

/// What became of them, and whether something more is about to.
pub struct Told {
    /// In sentences.
    pub says: String,
    /// Are some on their way to a printer of which nothing is known that is wrong?
    pub goes_on: bool,
}

/// How many came out, how many are on their way to which printer, or wait for it and what is wrong there, how many are in
/// doubt; or that none was asked for.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn told(conn: &mut Conn, words: &Words, deed: &DeedRow, made: &[LotRow]) -> Result<Told> {
    let keys: Vec<i32> = made.iter().map(|lot| lot.id).collect();
    let found = prints::since(conn, deed.id, &keys, &[])?;
    let labels = views(conn, &found)?;
    if labels.is_empty() {
        return Ok(Told {
            says: words.say(BenchSays::LabelsNone),
            goes_on: false,
        });
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
    let mut goes_on = false;
    for (code, labels) in open {
        let printer = printers.iter().find(|printer| printer.code == code);
        let name = printer.map_or_else(|| code.to_owned(), |printer| printer.name.clone());
        let trouble = printer.and_then(|printer| printer.trouble.clone());
        goes_on |= trouble.is_none();
        told.extend(on_the_way(words, labels, name, trouble));
    }
    let doubt = of(|one| matches!(one.state, PrintState::Unsure | PrintState::Refused)).count();
    if doubt > 0 {
        told.push(words.say(BenchSays::LabelsDoubt { labels: doubt }));
    }
    Ok(Told {
        says: told.join(" "),
        goes_on,
    })
}

/// Of labels that are not out yet: nobody waits at a printer that works, and who waits knows why.
fn on_the_way(words: &Words, labels: usize, printer: String, trouble: Option<Says>) -> Vec<String> {
    match trouble {
        None => vec![words.say(BenchSays::LabelsPrinting { labels, printer })],
        Some(trouble) => vec![
            words.say(BenchSays::LabelsOpen { labels, printer }),
            words.say(trouble),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Speech};

    #[test]
    fn labels_wait_only_where_something_is_wrong() {
        let words = Words(Speech::in_language(Language::English));
        let told = |trouble| on_the_way(&words, 2, "Bench".to_owned(), trouble).join(" ");
        assert_eq!(told(None), "2 labels are on their way to Bench.");
        let waits = told(Some(Says::key_only("page-past")));
        let past = words.t("page-past");
        assert_eq!(
            waits,
            format!("2 labels wait for the printer Bench. {past}")
        );
    }
}
