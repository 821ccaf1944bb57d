//! The drills: when the next one is due, and how fast and how fully each of the last ones found its packs.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::drills::{self, Drill};
use crate::read::names::Names;
use actix_web::HttpResponse;
use askama::Template;
use store::Conn;

#[derive(Template)]
#[template(path = "drills.html")]
struct Drills {
    words: Words,
    due: String,
    rows: Vec<Row>,
}

struct Row {
    number: String,
    day: String,
    what: String,
    packs: usize,
    scoped: String,
    located: String,
    counted: String,
    share: String,
    missing: String,
}

/// The drills.
pub async fn page(asking: Asking) -> HttpResponse {
    super::from_record(asking, view).await
}

fn view(app: &Caller<'_>, conn: &mut Conn) -> Result<Drills> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let due = drills::due(app, conn)?;
    let rows = drills::past(conn)?
        .into_iter()
        .map(|drill| row(&words, drill));
    Ok(Drills {
        rows: rows.collect(),
        due: match due {
            Some(due) => words.say(PageSays::DrillDue { day: due.by }),
            None => words.t("page-drill-none-due"),
        },
        words,
    })
}

fn row(words: &Words, drill: Drill) -> Row {
    let after = |seconds: Option<i64>| match seconds {
        Some(seconds) => words.say(PageSays::Minutes {
            minutes: (seconds + 59) / 60,
        }),
        None => super::spoken::NONE.to_owned(),
    };
    Row {
        day: words.day(drill.day),
        what: drill.what(words.lang()),
        number: drill.number,
        packs: drill.packs,
        scoped: after(drill.scoped),
        located: after(drill.located),
        counted: after(drill.counted),
        share: words.share(drill.share),
        missing: words.or_dash(drill.missing),
    }
}
