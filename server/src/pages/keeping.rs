//! How long everything is kept by the rules of the place, and the papers that may be thinned.

use super::done::Done;
use super::papers::{self, Paper};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::read::papers::keeping;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::duties::keeping::over_before;
use domain::right::Right;
use domain::says::Arg;
use serde::Deserialize;
use serde_json::json;
use store::Conn;

#[derive(Template)]
#[template(path = "keeping.html")]
struct KeepingPage {
    words: Words,
    place: String,
    /// The record, what the rule says, its row, and the day before which it is over.
    rules: Vec<Rule>,
    /// How many papers there are.
    count: String,
    /// Why nothing may be thinned now, if so.
    waits: Option<String>,
    papers: Vec<(Paper, String)>,
    body: String,
    may: bool,
    done: Option<Done>,
}

struct Rule {
    name: String,
    says: String,
    row: String,
    over: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    did: Option<String>,
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<KeepingPage> {
    let found = keeping(app, conn)?;
    let names = Names::load(app, conn)?;
    let (words, zone) = (Words::of(&names), names.zone());
    let standing = app.standing(conn)?;
    let place = standing.kitchen.entry.profile.0;
    let law = app.laws(&standing.confirmed).of(place);
    let rules = law.duties.keeping.iter().map(|rule| Rule {
        name: words.headed(rule.record.says()),
        says: law
            .rows
            .get(&rule.row)
            .map(|row| row.says.in_language(words.lang()).to_owned())
            .unwrap_or_default(),
        row: rule.row.to_string(),
        over: over_before(rule, found.today).map_or_else(|| "–".into(), |day| words.day(day)),
    });
    let (count, bytes, thinned) = found.counts;
    let incident = found.standing.incident().map(str::to_owned);
    let ids: Vec<String> = found
        .may_go
        .iter()
        .map(|(paper, _)| crate::ids::shown_id(&paper.uid))
        .collect();
    let may_go = found.may_go.iter().map(|(paper, kept)| {
        let says = words.say(kept.says(found.today));
        (papers::told(&words, zone, paper), says)
    });
    Ok(KeepingPage {
        place: words.headed(place.says()),
        rules: rules.collect(),
        count: words.say(PageSays::PapersKept {
            papers: Arg::Count(count),
            megabytes: Arg::Count((bytes + (1 << 20) - 1) >> 20),
            thinned: Arg::Count(thinned),
        }),
        waits: incident
            .map(|incident| words.say(domain::paper::PaperSays::NeededIncident { incident })),
        papers: may_go.collect(),
        body: json!({ "papers": ids }).to_string(),
        may: app.who.may(Right::Thin),
        done: Done::of(app, conn, &words, asked.did.as_deref(), "/keeping")?,
        words,
    })
}
