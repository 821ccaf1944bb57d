//! The kitchen's lists: which there are, and what stands in each. Who sets the kitchen up adds and changes here.

use super::bench::Pick;
use super::home::AnchorShown;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::{List, entry};
use crate::read::entries::{self, Kept};
use crate::read::names::Names;
use crate::read::seek::fold;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Right;
use domain::words::{PlaceKind, ProductKind, Species};
use serde::Deserialize;
use std::collections::BTreeMap;
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
    groups: Vec<Group>,
    /// May whoever reads it change it?
    may: bool,
    /// Is there a form for a new one, and a table?
    adds: bool,
    imports: bool,
    starts: bool,
}

/// Entries of one kind; those of a short list have no heading.
struct Group {
    name: String,
    lines: Vec<Pick>,
    /// Does it stand open?
    opens: bool,
}

/// A list of so many products is read as it is.
const SHORT: usize = 12;

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
    let wanted = fold(&q);
    let language = words.lang();
    let mut lines: Vec<(Option<ProductKind>, Pick)> = Vec::new();
    for kept in entries::all(conn, list)? {
        if is_till && kept.text("till_number").is_none() && kept.text("gtin").is_none() {
            continue;
        }
        let name = match list {
            List::Recipes => names.product(&kept.code),
            _ => kept.name(language),
        };
        let found = fold(&format!("{} {name}", kept.code));
        if found.contains(&wanted) {
            let kind = kept.text("kind").and_then(|kind| ProductKind::parse(&kind));
            let pick = Pick {
                more: more(list, is_till, &kept, &words, &names),
                ..Pick::of(&kept.code, name)
            };
            lines.push((kind.filter(|_| list == List::Products && !is_till), pick));
        }
    }
    lines.sort_by_cached_key(|(_, one)| fold(&one.name));
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
        groups: grouped(&words, lines, !wanted.is_empty()),
        words,
        q,
    })
}

/// What there is much of is folded by its kind, in the order of the kinds; what was looked for stands open.
fn grouped(words: &Words, lines: Vec<(Option<ProductKind>, Pick)>, found: bool) -> Vec<Group> {
    let short = lines.len() <= SHORT || lines.iter().all(|(kind, _)| kind.is_none());
    if short {
        let lines: Vec<Pick> = lines.into_iter().map(|(_, pick)| pick).collect();
        let name = String::new();
        let group = Group {
            name,
            lines,
            opens: true,
        };
        return vec![group];
    }
    let mut groups: BTreeMap<usize, Group> = BTreeMap::new();
    for (kind, pick) in lines {
        let nth = ProductKind::ALL.iter().position(|of| Some(*of) == kind);
        let group = groups
            .entry(nth.unwrap_or(usize::MAX))
            .or_insert_with(|| Group {
                name: kind.map_or_else(
                    || words.t("page-field-other"),
                    |kind| words.headed(kind.says()),
                ),
                lines: Vec::new(),
                opens: found,
            });
        group.lines.push(pick);
    }
    groups.into_values().collect()
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

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Speech};

    #[test]
    fn many_products_are_folded_by_kind_and_what_is_looked_for_stands_open() {
        let words = Words(Speech::in_language(Language::English));
        let of = |many: usize| -> Vec<(Option<ProductKind>, Pick)> {
            let kinds = [ProductKind::Cured, ProductKind::Cut];
            let each = (0..many).map(|nth| {
                let pick = Pick::of(&nth.to_string(), nth.to_string());
                (Some(kinds[nth % 2]), pick)
            });
            each.collect()
        };
        let told = |groups: &[Group]| -> Vec<(String, usize, bool)> {
            let each = groups.iter();
            each.map(|of| (of.name.clone(), of.lines.len(), of.opens))
                .collect()
        };
        let few = grouped(&words, of(SHORT), false);
        assert_eq!(told(&few), [(String::new(), SHORT, true)]);
        let many = told(&grouped(&words, of(SHORT + 1), false));
        let cut = words.headed(ProductKind::Cut.says());
        let cured = words.headed(ProductKind::Cured.says());
        assert_eq!(many, [(cut, 6, false), (cured, 7, false)]);
        assert!(
            grouped(&words, of(40), true)
                .iter()
                .all(|group| group.opens)
        );
    }
}
