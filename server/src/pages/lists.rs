//! The kitchen's lists: which there are, and what stands in each. Who sets the kitchen up adds and changes here.

use super::bench::Pick;
use super::home::AnchorShown;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::{List, entry};
use crate::read::entries::{self, Kept};
use crate::read::names::Names;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Right;
use domain::words::{PlaceKind, ProductKind, Species};
use serde::Deserialize;
use store::Conn;

/// The lists in the order in which a kitchen has them.
const SHOWN: [List; 8] = [
    List::Products,
    List::Recipes,
    List::Farms,
    List::Abattoirs,
    List::Suppliers,
    List::Places,
    List::Printers,
    List::Probes,
];

#[derive(Template)]
#[template(path = "lists.html")]
struct Index {
    words: Words,
    lists: Vec<Pick>,
    may: bool,
    /// The end of the record's chain, for whoever keeps it outside.
    anchor: Option<AnchorShown>,
}

#[derive(Template)]
#[template(path = "list.html")]
struct ListPage {
    words: Words,
    title: String,
    q: String,
    path: String,
    lines: Vec<Pick>,
    /// May whoever reads it change it?
    may: bool,
    /// Is there a form for a new one, and a table?
    adds: bool,
    imports: bool,
    starts: bool,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Nothing {}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    q: Option<String>,
}

/// All lists.
pub async fn index(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, |app, conn, _: &Nothing| {
        let names = Names::load(app, conn)?;
        let words = Words::of(&names);
        let mut lists = Vec::new();
        for list in SHOWN {
            let count = entries::all(conn, list)?.len();
            lists.push(Pick {
                more: count.to_string(),
                ..Pick::of(list.as_str(), words.headed(list.says()))
            });
        }
        let may = app.who.may(Right::SetUp);
        let anchor = match may {
            true => AnchorShown::of(conn)?,
            false => None,
        };
        Ok(Index {
            anchor,
            may: app.who.may(Right::SetUp),
            words,
            lists,
        })
    })
    .await
}

/// One list.
pub async fn one(request: HttpRequest, list: web::Path<String>, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, move |app, conn, asked: &Asked| {
        shown(app, conn, &list, asked)
    })
    .await
}

/// The list of a name in a path.
///
/// # Errors
/// 404 where there is none.
pub fn named(name: &str) -> Result<List> {
    List::parse(name).ok_or_else(|| super::nowhere(&format!("/lists/{name}")))
}

/// Products that a till knows by a number: no list of its own.
const TILL: &str = "till-numbers";

fn shown(app: &Caller<'_>, conn: &mut Conn, name: &str, asked: &Asked) -> Result<ListPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let is_till = name == TILL;
    let list = if is_till {
        List::Products
    } else {
        named(name)?
    };
    let q = asked.q.clone().unwrap_or_default();
    let wanted = q.trim().to_lowercase();
    let language = words.lang();
    let mut lines: Vec<Pick> = Vec::new();
    for kept in entries::all(conn, list)? {
        if is_till && kept.text("till_number").is_none() && kept.text("gtin").is_none() {
            continue;
        }
        let name = match list {
            List::Recipes => names.product(&kept.code),
            _ => kept.name(language),
        };
        let found = format!("{} {name}", kept.code).to_lowercase();
        if found.contains(&wanted) {
            lines.push(Pick {
                more: more(list, is_till, &kept, &words, &names),
                ..Pick::of(&kept.code, name)
            });
        }
    }
    lines.sort_by(|one, other| one.name.cmp(&other.name));
    Ok(ListPage {
        title: match is_till {
            true => words.t("page-lists-till"),
            false => words.headed(list.says()),
        },
        path: list.as_str().to_owned(),
        may: app.who.may(Right::SetUp),
        adds: !is_till && list != List::Recipes,
        imports: !is_till && is_imported(list),
        starts: !is_till && list == List::Products,
        words,
        q,
        lines,
    })
}

/// Is there a call that takes a table of them?
pub const fn is_imported(list: List) -> bool {
    matches!(
        list,
        List::Products | List::Farms | List::Suppliers | List::Abattoirs | List::Places
    )
}

/// What stands small below a name.
fn more(list: List, is_till: bool, kept: &Kept, words: &Words, names: &Names) -> String {
    let text = |name: &str| kept.text(name);
    let kind = || ProductKind::parse(&text("kind")?).map(|kind| words.say(kind.says()));
    let species = || Species::parse(&text("species")?).map(|of| words.say(of.says()));
    let price = || text("price_minor_per_kg")?.parse::<i64>().ok();
    let currency = || names.currency();
    let parts: Vec<Option<String>> = match list {
        List::Products if is_till => vec![text("till_number"), text("gtin")],
        List::Products => vec![
            kind(),
            species(),
            price().map(|minor| words.price(minor, &currency())),
        ],
        List::Recipes => {
            let parts = kept.body["parts"].as_array().into_iter().flatten();
            let named = parts.filter_map(|part| Some(names.product(part["product"].as_str()?)));
            vec![Some(named.collect::<Vec<_>>().join(", "))]
        }
        List::Places => {
            let kind = text("kind").and_then(|kind| PlaceKind::parse(&kind));
            vec![kind.map(|kind| words.say(kind.says()))]
        }
        List::Printers => vec![text("address")],
        _ => vec![
            text("number").filter(|_| list != List::Abattoirs),
            text("address"),
            text("country"),
        ],
    };
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    match list {
        List::Recipes => parts.join(", "),
        _ => [vec![kept.code.clone()], parts].concat().join(" · "),
    }
}

/// The entry of a path; nothing for a new one.
///
/// # Errors
/// 404 where there is none.
pub fn kept(conn: &mut Conn, list: List, code: &str) -> Result<Option<Kept>> {
    match code {
        NEW => Ok(None),
        code => match entries::find(conn, list, code)? {
            Some(kept) => Ok(Some(kept)),
            None => Err(entry::no_such_entry(list, code)),
        },
    }
}

/// The last part of the path of a new entry.
pub const NEW: &str = "new";
