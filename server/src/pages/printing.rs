//! Printing: what is in doubt and wants a person, how the printers are, and the queue.

use super::format;
use crate::app::{App, damaged};
use crate::blocking::blocking;
use crate::error::Result;
use crate::lists::List;
use crate::read::names::Names;
use crate::read::{lot_named, prints as read};
use crate::routes::query;
use crate::wire::lists::PrinterEntry;
use crate::wire::prints::PrintRead;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::words::PrintState;
use serde::Deserialize;
use std::collections::HashMap;
use store::prints::Filter;
use store::{Conn, entries, leases, lots, print_runs, prints};
use words::Speech;

/// The most lines of each list; the API has all.
const MOST: usize = 40;

#[derive(Template)]
#[template(path = "printing.html")]
struct PrintingPage {
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
    name: String,
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
pub async fn page(request: HttpRequest, app: web::Data<App>) -> HttpResponse {
    let asked: Asked = match query(&request) {
        Ok(asked) => asked,
        Err(error) => return super::trouble(&error),
    };
    let made = blocking(move || app.store.read(|conn| read_page(&app, conn, &asked)));
    super::page(made.await)
}

fn read_page(app: &App, conn: &mut Conn, asked: &Asked) -> Result<PrintingPage> {
    let names = Names::load(app, conn)?;
    let language = app.kitchen(conn)?.language().to_owned();
    let lot = match &asked.lot {
        Some(code) => {
            let row = lot_named(app, conn, code)?;
            let product = app.product(conn, row.version_id)?;
            Some(Wanted {
                shown: row.code()?.shown(),
                name: product.name(&language).to_owned(),
                code: row.code,
            })
        }
        None => None,
    };
    let mut lines = Lines {
        app,
        names,
        printers: HashMap::new(),
    };
    let printers = lines.printers(conn)?;
    let unsure = lines.in_states(conn, &[PrintState::Unsure])?;
    let mut open = lines.in_states(
        conn,
        &[PrintState::Sent, PrintState::Sending, PrintState::Waiting],
    )?;
    let more = (open.len() > MOST).then(|| format!("And {} more.", open.len() - MOST));
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
    app: &'a App,
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
                .map(|(state, count)| format!("{count} {state}"))
                .collect();
            self.printers.insert(row.code.clone(), entry.name.0.clone());
            printers.push(Printer {
                counts: match counts.is_empty() {
                    true => "Nothing was printed on it yet.".into(),
                    false => counts.join(", "),
                },
                trouble: troubles
                    .remove(&row.id)
                    .map(|says| Speech::default().say(&says)),
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

    fn line(&self, print: PrintRead, products: &HashMap<String, String>) -> Line {
        let product = products.get(&print.lot).map_or("", String::as_str);
        let printer = self.printers.get(&print.printer);
        let state = PrintState::parse(&print.state).unwrap_or(PrintState::Unsure);
        Line {
            name: self.names.product(product),
            printer: printer.cloned().unwrap_or_else(|| print.printer.clone()),
            says: Speech::default().say(&state.says()),
            asked: format::minute(&print.asked_at),
            mark: (print.reprint > 0).then(|| format!("reprint {}", print.reprint)),
            waits: state == PrintState::Waiting,
            print: print.print,
            shown: print.shown,
            trouble: print.trouble,
            label: print.label,
        }
    }
}
