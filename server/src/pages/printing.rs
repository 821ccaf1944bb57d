//! Printing: what is in doubt and wants a person, how the printers are, and the queue.

use super::says::{CountSays, PageSays};
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::ids::shown_id;
use crate::read::lot_named;
use crate::read::names::Names;
use crate::read::prints::{PrinterView, document_path, label_path, printers, views};
use crate::routes::known;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use chrono_tz::Tz;
use domain::print::PrintView;
use domain::right::Right;
use domain::words::PrintState;
use serde::Deserialize;
use std::collections::HashMap;
use store::prints::Filter;
use store::{Conn, lots, prints};
use uuid::Uuid;

/// The most lines of each list; the API has all.
const MOST: usize = 40;

#[derive(Template)]
#[template(path = "printing.html")]
struct PrintingPage {
    words: Words,
    lot: Option<Wanted>,
    printers: Vec<Printer>,
    /// May the reader say by which certificate a printer is known?
    trusts: bool,
    unsure: Vec<Line>,
    open: Vec<Line>,
    /// All that wait, to be cancelled at once: how many, and which.
    waiting: Option<(String, String)>,
    /// The document that was just made.
    document: Option<String>,
    /// How many more wait, in words.
    more: Option<String>,
    done: Vec<Line>,
}

/// The lot whose labels are to be printed, or all that a deed made.
struct Wanted {
    /// The lot's code; none where it is a deed.
    code: String,
    /// The deed's id; none where it is a lot.
    step: String,
    shown: String,
    title: String,
    /// Does it hang as several pieces, which may have one tag?
    hangs: bool,
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
    step: Option<String>,
    /// The deed that just made a document.
    pdf: Option<Uuid>,
}

/// How printing stands.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read_page).await
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
                hangs: product.is_hung() && row.pack_count > 1,
                code: row.code,
                step: String::new(),
            })
        }
        None => match &asked.step {
            Some(id) => Some(of_deed(conn, &words, names.zone(), id)?),
            None => None,
        },
    };
    let mut lines = Lines {
        app,
        words,
        names,
        printers: HashMap::new(),
    };
    let printers = printers(conn)?.into_iter();
    let printers = printers.map(|of| lines.printer(of)).collect();
    let unsure = lines.in_states(conn, &[PrintState::Unsure])?;
    let mut open = lines.in_states(
        conn,
        &[PrintState::Sent, PrintState::Sending, PrintState::Waiting],
    )?;
    let wait: Vec<String> = open
        .iter()
        .filter(|line| line.waits)
        .map(|line| line.print.to_string())
        .collect();
    let waiting = (wait.len() > 1).then(|| {
        let labels = wait.len();
        (words.say(PageSays::CancelAll { labels }), wait.join(","))
    });
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
        trusts: app.who.may(Right::SetUp),
        unsure,
        open,
        waiting,
        document: asked.pdf.map(|deed| document_path(&deed.to_string())),
        more,
        done,
    })
}

fn of_deed(conn: &mut Conn, words: &Words, zone: Tz, id: &str) -> Result<Wanted> {
    let deed = known(conn, id)?;
    Ok(Wanted {
        shown: words.say(PageSays::Did {
            deed: words.headed(deed.kind()?.says()),
            by: deed.person.clone(),
            at: words.minute(deed.at.and_utc(), zone),
        }),
        title: words.t("page-printing-of-deed"),
        hangs: false,
        code: String::new(),
        step: shown_id(&deed.uid),
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
    fn printer(&mut self, view: PrinterView) -> Printer {
        let counts = view.counts.into_iter();
        let counts: Vec<String> = counts
            .map(|(state, labels)| self.count(state, labels))
            .collect();
        self.printers.insert(view.code.clone(), view.name.clone());
        Printer {
            counts: match counts.is_empty() {
                true => self.words.t("page-printing-none-yet"),
                false => counts.join(", "),
            },
            trouble: view.trouble.map(|says| self.words.say(says)),
            code: view.code,
            name: view.name,
        }
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
        Ok(views(conn, &found)?
            .into_iter()
            .map(|print| self.line(print, &products))
            .collect())
    }

    /// So many labels that have come so far.
    fn count(&self, state: PrintState, labels: i64) -> String {
        use PrintState::*;
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

    fn line(&self, print: PrintView, products: &HashMap<String, String>) -> Line {
        let product = products.get(print.lot.as_str()).map_or("", String::as_str);
        let printer = self.printers.get(&print.printer);
        let words = &self.words;
        let printer = match print.is_document {
            true => words.t("page-printing-as-document"),
            false => printer.cloned().unwrap_or_else(|| print.printer.clone()),
        };
        let asked = words.minute(print.asked_at, self.names.zone());
        Line {
            on: words.say(PageSays::On {
                printer: printer.clone(),
                asked: asked.clone(),
            }),
            name: self.names.product(product),
            printer,
            says: words.say(print.says()),
            asked,
            mark: (print.reprint > 0).then(|| words.say(PageSays::Reprint { nth: print.reprint })),
            waits: print.state == PrintState::Waiting,
            print: print.number,
            shown: print.shown(),
            label: label_path(print.number),
            trouble: print.trouble.map(|says| words.say(says)),
        }
    }
}
