//! The logs: which there are, which are due here, their window, and what stands in each.

use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::logbook::{Telling, lines, told_due, under};
use crate::read::logs::{self, LogPage, LogQuery, Window, known_log};
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use chrono::{Days, NaiveDate};
use domain::log::{Group, LogKind, due};
use labels::report::{Line, Sort};
use serde::Deserialize;
use store::Conn;
use words::capital;

#[derive(Template)]
#[template(path = "logs.html")]
struct LogsPage {
    words: Words,
    from: NaiveDate,
    last: NaiveDate,
    logs: Vec<OneLog>,
}

/// A log in the list.
struct OneLog {
    word: &'static str,
    name: String,
    is_due: bool,
    told: Vec<String>,
    /// The window, as the files of a log take it.
    window: String,
    shown: String,
}

#[derive(Template)]
#[template(path = "log.html")]
struct LogView {
    words: Words,
    name: String,
    under: Vec<String>,
    told: Vec<String>,
    word: &'static str,
    from: NaiveDate,
    last: NaiveDate,
    window: String,
    groups: Vec<String>,
    /// Rows of cells of lines; each cell with the heading of its group.
    rows: Vec<Vec<(String, Vec<Told>)>>,
    nothing: String,
    next: Option<String>,
}

/// A line of a cell.
struct Told {
    label: Option<String>,
    text: String,
    hole: bool,
    mark: bool,
}

/// What the page is asked: days, the last of them included.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    from: Option<String>,
    last: Option<String>,
    after: Option<String>,
}

impl Asked {
    fn query(&self) -> Result<LogQuery> {
        let given = |text: &Option<String>| text.clone().filter(|text| !text.trim().is_empty());
        let last = given(&self.last).map(|text| {
            let day = crate::read::logs::day_of_page(&text, "last")?;
            Ok::<_, crate::error::Error>((day + Days::new(1)).to_string())
        });
        Ok(LogQuery {
            from: given(&self.from),
            until: last.transpose()?,
            after: given(&self.after),
            ..LogQuery::default()
        })
    }
}

/// The logs that there are.
pub async fn all(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, list).await
}

fn list(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<LogsPage> {
    let standing = app.standing(conn)?;
    let window = Window::read(app, conn, &standing, &asked.query()?)?;
    let (from, last) = window.days(standing.kitchen.zone);
    let speech = app.speech(&standing.kitchen);
    let law = logs::law(app, &standing);
    let one = |(kind, due): (LogKind, Vec<domain::log::Due<'_>>)| OneLog {
        word: kind.as_str(),
        name: capital(&speech.say(&kind.says())),
        is_due: !due.is_empty(),
        told: told_due(&due, &speech),
        window: of_files(from, last),
        shown: format!("from={from}&last={last}"),
    };
    let mut logs: Vec<OneLog> = logs::all(law).into_iter().map(one).collect();
    // What is due comes first.
    logs.sort_by_key(|log| !log.is_due);
    Ok(LogsPage {
        words: Words(speech),
        from,
        last,
        logs,
    })
}

fn of_files(from: NaiveDate, last: NaiveDate) -> String {
    format!("from={from}&until={}", last + Days::new(1))
}

/// One log.
pub async fn one(request: HttpRequest, asking: Asking, which: web::Path<String>) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        let page = logs::page(app, conn, known_log(&which)?, &asked.query()?)?;
        Ok(view(app, &page))
    })
    .await
}

fn view(app: &Caller<'_>, page: &LogPage) -> LogView {
    let speech = app.speech(page.kitchen());
    let words = Words(speech);
    let telling = Telling::of_screen(page, speech);
    let kind = page.log.kind;
    let due = due(&logs::law(app, &page.standing).duties, kind);
    let (from, last) = page.window.days(page.kitchen().zone);
    let columns = kind.columns();
    let groups: Vec<Group> = Group::ALL
        .iter()
        .filter(|group| columns.iter().any(|column| column.group() == **group))
        .copied()
        .collect();
    let heading = |group: &Group| words.headed(group.says());
    let told = |line: Line| Told {
        label: line.label,
        text: line.text,
        hole: line.sort == Sort::Hole,
        mark: line.sort == Sort::Mark,
    };
    let rows = page.log.entries.iter().map(|entry| {
        let cell = |group: &Group| {
            let lines = lines(&telling, entry, *group).into_iter();
            (heading(group), lines.map(told).collect())
        };
        groups.iter().map(cell).collect()
    });
    LogView {
        name: telling.name(kind),
        under: under(&telling),
        told: told_due(&due, &speech),
        word: kind.as_str(),
        window: of_files(from, last),
        groups: groups.iter().map(heading).collect(),
        rows: rows.collect(),
        nothing: words.say(crate::logbook::says::LogWords::Nothing),
        next: page.next.as_deref().map(crate::ids::shown_id),
        from,
        last,
        words,
    }
}
