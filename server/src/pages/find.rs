//! The one box: it takes anything, and goes to the thing or lists what it may be.

use super::says::PageSays;
use super::spoken::Words;
use super::{see_other, trouble};
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::read::seek::{self, SeekQuery, Sought, Thing};
use crate::rooms::blocking;
use crate::routes::any_query;
use crate::who::Who;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::right::Right;

#[derive(Template)]
#[template(path = "found.html")]
struct FoundPage {
    words: Words,
    q: String,
    head: String,
    says: Option<String>,
    groups: Vec<Group>,
    /// Where all lots that fit are, when there are more.
    all: Option<String>,
}

struct Group {
    name: String,
    things: Vec<Line>,
}

struct Line {
    path: String,
    name: String,
    more: String,
}

enum Answer {
    Go(String),
    Choose(FoundPage),
}

/// Whatever somebody typed or scanned.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    match ask(&request, asking).await {
        Ok(Answer::Go(path)) => see_other(&path),
        Ok(Answer::Choose(page)) => super::page(speech, Ok(page)),
        Err(error) => trouble(speech, &error),
    }
}

async fn ask(request: &HttpRequest, asking: Asking) -> Result<Answer> {
    let SeekQuery { q } = any_query(request)?;
    let said: String = q.unwrap_or_default().trim().chars().take(LONGEST).collect();
    if !asking.who().may(Right::See) {
        return Ok(Answer::Go(format!("/counter?code={}", encoded(&said))));
    }
    blocking(move || {
        let app = asking.caller();
        app.store.read(|conn| {
            let printable: String = said.chars().filter(|letter| !letter.is_control()).collect();
            let found = seek::seek(&app, conn, &printable)?;
            if let Some(thing) = found.only() {
                return Ok(Answer::Go(path(thing, asking.who())));
            }
            let names = Names::load(&app, conn)?;
            Ok(Answer::Choose(choose(&app, &names, &said, &found)))
        })
    })
    .await
}

/// The most letters that are looked at: a scanner's longest string is shorter.
const LONGEST: usize = 400;

/// Where somebody gets to. Only who manages people has their page; others have their own.
fn path(thing: &Thing, who: &Who) -> String {
    match thing {
        Thing::Person(_, name) if *name == who.name => "/me".to_owned(),
        Thing::Person(..) if !who.may(Right::People) => "/me".to_owned(),
        thing => thing.path(),
    }
}

fn choose(app: &Caller<'_>, names: &Names, said: &str, found: &Sought) -> FoundPage {
    let words = Words::of(names);
    let mut groups: Vec<Group> = Vec::new();
    for thing in &found.things {
        // Who may not see the people's page is shown no way to it.
        let hidden = matches!(thing, Thing::Person(_, name) if *name != app.who.name && !app.who.may(Right::People));
        if hidden {
            continue;
        }
        let name = words.t(group(thing));
        let line = line(&words, names, thing, &app.who);
        match groups.iter_mut().find(|group| group.name == name) {
            Some(group) => group.things.push(line),
            None => groups.push(Group {
                name,
                things: vec![line],
            }),
        }
    }
    let none = groups.is_empty() && !said.is_empty();
    let q = said.to_owned();
    FoundPage {
        words,
        head: match (said.is_empty(), none) {
            (true, _) => words.t("page-box"),
            (_, true) => words.say(PageSays::FoundNothing { said: q.clone() }),
            (_, false) => words.say(PageSays::FoundSome { said: q.clone() }),
        },
        says: found.elsewhere.then(|| words.t("page-found-elsewhere")),
        all: found.more.then(|| format!("/lots?q={}", encoded(said))),
        groups,
        q,
    }
}

fn group(thing: &Thing) -> &'static str {
    match thing {
        Thing::Lot(..) => "page-nav-lots",
        Thing::Animal(_) => "page-nav-animals",
        Thing::Person(..) => "page-people",
        Thing::Place(..) => "page-found-places",
        Thing::Farm(..) => "page-found-farms",
        Thing::Product(..) => "page-found-products",
    }
}

fn line(words: &Words, names: &Names, thing: &Thing, who: &Who) -> Line {
    let (name, more) = match thing {
        Thing::Lot(lot, _) => {
            let left = match lot.on_hand.is_none_left() {
                true => words.t("page-nothing-left"),
                false => words.grams(lot.on_hand),
            };
            let place = names.placed(&lot.places);
            let told = [Some(lot.code.shown()), lot.note.clone(), Some(left), place];
            let told: Vec<String> = told.into_iter().flatten().collect();
            (names.product(&lot.product), told.join(", "))
        }
        Thing::Animal(animal) => {
            let number = animal.carcass.as_deref().or(animal.tag.as_deref());
            let from = PageSays::From {
                what: words.headed(animal.species.says()),
                farm: names.farm(&animal.farm),
            };
            let killed = PageSays::Killed {
                day: animal.killed_on,
            };
            let name = format!("{} {}", words.say(from), number.unwrap_or_default());
            (name.trim().to_owned(), words.say(killed))
        }
        Thing::Person(_, name) => (name.clone(), String::new()),
        Thing::Place(code, name) | Thing::Farm(code, name) | Thing::Product(code, name) => {
            (name.clone(), code.clone())
        }
    };
    Line {
        path: path(thing, who),
        name,
        more,
    }
}

/// A text as it stands in a query.
pub(super) fn encoded(text: &str) -> String {
    let bytes = text.bytes().map(|byte| match byte {
        b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'.' | b'_' | b'~' | b'/' => {
            char::from(byte).to_string()
        }
        byte => format!("%{byte:02X}"),
    });
    bytes.collect()
}
