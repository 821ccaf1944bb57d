//! Printing: what is in doubt and wants a person, how the printers are, and the queue.

use super::says::{CountSays, PageSays};
use super::spoken::Words;
use crate::app::damaged;
use crate::blocking::blocking;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::List;
use crate::read::names::Names;
use crate::read::{lot_named, prints as read};
use crate::routes::query;
use crate::wire::lists::PrinterEntry;
use crate::wire::prints::PrintRead;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::words::PrintState;
use serde::Deserialize;
use std::collections::HashMap;
use store::prints::Filter;
use store::{Conn, entries, leases, lots, print_runs, prints};

/// The most lines of each list; the API has all.
const MOST: usize = 40;

#[derive(Template)]
#[template(path = "printing.html")]
struct PrintingPage {
    words: Words,
    lot: Option<Wanted>,
    printers: Vec<Printer>,
    unsure: Vec<Line>,
    open: Vec<Line>,
    /// How many more wait, in words.
    more: Option<String>,
    done: Vec<Line>,
}

/// The lot whose labels are to be printed.
struct Wanted {
    code: String,
    shown: String,
    title: String,
}

struct Printer {
    code: String,
    name: String,
    trouble: Option<String>,
    counts: String,
}

struct Line {
    print: i32,
    shown: String,
    name: String,
    printer: String,
    says: String,
    trouble: Option<String>,
    asked: String,
    /// On which printer, and when it was asked for.
    on: String,
    /// Its mark as a reprint.
    mark: Option<String>,
    label: String,
    waits: bool,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    lot: Option<String>,
}

/// How printing stands.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    let asked: Asked = match query(&request) {
        Ok(asked) => asked,
        Err(error) => return super::trouble(speech, &error),
    };
    let made = blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| read_page(&app, conn, &asked))
    });
    super::page(speech, made.await)
}

fn read_page(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<PrintingPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let lot = match &asked.lot {
        Some(code) => {
            let row = lot_named(app, conn, code)?;
            let product = app.product(conn, row.version_id)?;
            Some(Wanted {
                shown: row.code()?.shown(),
                title: words.say(PageSays::PrintOf {
                    name: product.name(words.lang()).to_owned(),
                }),
                code: row.code,
            })
        }
        None => None,
    };
    let mut lines = Lines {
        app,
        words,
        names,
        printers: HashMap::new(),
    };
    let printers = lines.printers(conn)?;
    let unsure = lines.in_states(conn, &[PrintState::Unsure])?;
    let mut open = lines.in_states(
        conn,
        &[PrintState::Sent, PrintState::Sending, PrintState::Waiting],
    )?;
    let more = (open.len() > MOST).then(|| {
        words.say(PageSays::More {
            more: open.len() - MOST,
        })
    });
    open.truncate(MOST);
    let mut done = lines.in_states(
        conn,
        &[
            PrintState::Printed,
            PrintState::Refused,
            PrintState::Spoilt,
            PrintState::Cancelled,
        ],
    )?;
    done.sort_by_key(|line| -line.print);
    done.truncate(MOST);
    Ok(PrintingPage {
        words,
        lot,
        printers,
        unsure,
        open,
        more,
        done,
    })
}

/// Makes lines of prints.
struct Lines<'a> {
    app: &'a Caller<'a>,
    words: Words,
    names: Names,
    /// Printers' names by code.
    printers: HashMap<String, String>,
}

impl Lines<'_> {
    fn printers(&mut self, conn: &mut Conn) -> Result<Vec<Printer>> {
        let mut troubles = leases::troubles(conn)?;
        let mut printers = Vec::new();
        for row in entries::all(conn, List::Printers.as_str())? {
            let entry: PrinterEntry =
                serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
            let counts: Vec<String> = print_runs::counts(conn, row.id)?
                .into_iter()
                .map(|(state, labels)| self.count(&state, labels))
                .collect();
            self.printers.insert(row.code.clone(), entry.name.0.clone());
            printers.push(Printer {
                counts: match counts.is_empty() {
                    true => self.words.t("page-printing-none-yet"),
                    false => counts.join(", "),
                },
                trouble: troubles.remove(&row.id).map(|says| self.words.say(says)),
                code: row.code,
                name: entry.name.0,
            });
        }
        Ok(printers)
    }

    fn in_states(&self, conn: &mut Conn, states: &[PrintState]) -> Result<Vec<Line>> {
        let mut found = Vec::new();
        for state in states {
            let filter = Filter {
                state: Some(*state),
                ..Filter::default()
            };
            found.extend(prints::find(conn, filter, 500)?);
        }
        found.sort_by_key(|print| print.row.id);
        let mut keys: Vec<i32> = found.iter().map(|print| print.row.lot_id).collect();
        keys.dedup();
        let mut products = HashMap::new();
        for lot in lots::by_keys(conn, &keys)? {
            let product = self.app.product(conn, lot.version_id)?;
            products.insert(lot.code, product.code.clone());
        }
        let read = read::read(self.app, conn, &found)?;
        Ok(read
            .into_iter()
            .map(|print| self.line(print, &products))
            .collect())
    }

    /// So many labels that have come so far.
    fn count(&self, state: &str, labels: i64) -> String {
        use PrintState::*;
        let state = PrintState::parse(state).unwrap_or(Unsure);
        self.words.say(match state {
            Waiting => CountSays::Waiting { labels },
            Sending => CountSays::Sending { labels },
            Sent => CountSays::Sent { labels },
            Printed => CountSays::Printed { labels },
            Unsure => CountSays::Unsure { labels },
            Refused => CountSays::Refused { labels },
            Cancelled => CountSays::Cancelled { labels },
            Spoilt => CountSays::Spoilt { labels },
        })
    }

    fn line(&self, print: PrintRead, products: &HashMap<String, String>) -> Line {
        let product = products.get(&print.lot).map_or("", String::as_str);
        let printer = self.printers.get(&print.printer);
        let state = PrintState::parse(&print.state).unwrap_or(PrintState::Unsure);
        let printer = printer.cloned().unwrap_or_else(|| print.printer.clone());
        let (words, asked) = (&self.words, self.words.minute(&print.asked_at));
        Line {
            on: words.say(PageSays::On {
                printer: printer.clone(),
                asked: asked.clone(),
            }),
            name: self.names.product(product),
            printer,
            says: words.say(state.says()),
            asked,
            mark: (print.reprint > 0).then(|| words.say(PageSays::Reprint { nth: print.reprint })),
            waits: state == PrintState::Waiting,
            print: print.print,
            shown: print.shown,
            trouble: print.trouble,
            label: print.label,
        }
    }
}
