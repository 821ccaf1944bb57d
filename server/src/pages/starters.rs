//! The starter list, to pick from by ticking: each thing picked becomes an ordinary product by the ordinary call,
//! with what it is made of.

use super::list_form::{RowShown, rows_shown};
use super::says::SetUpSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::names::Names;
use crate::read::starters;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::right::Right;
use serde::Deserialize;
use serde_json::{Value, json};
use store::Conn;

#[derive(Template)]
#[template(path = "starters.html")]
struct StartersPage {
    words: Words,
    groups: Vec<Group>,
    then: &'static str,
    /// Does the kitchen's setting up go on then?
    sets_up: bool,
    may: bool,
}

/// A group of it.
struct Group {
    name: String,
    /// How many things it has, and how many of them are on the list already.
    counted: String,
    lines: Vec<Line>,
}

/// A thing to pick.
struct Line {
    code: String,
    name: String,
    /// What it is, small.
    more: String,
    /// What stands behind what it says.
    facts: Vec<Fact>,
    /// What it is made or cut of, by code.
    needs: String,
    /// What its recipe names: without that it cannot be listed.
    parts: String,
    /// The calls that it becomes.
    calls: String,
    listed: bool,
}

/// What stands behind one thing that it says.
struct Fact {
    about: String,
    rows: Vec<RowShown>,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Given while the kitchen is set up: that goes on then.
    set_up: Option<String>,
}

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<StartersPage> {
    let words = Words::of(&Names::load(app, conn)?);
    let found = starters::read(app, conn, words.lang())?;
    let groups = found.groups.into_iter().map(|group| Group {
        name: group.name,
        counted: words.say(SetUpSays::GroupOf {
            things: group.entries.len(),
            listed: group.entries.iter().filter(|one| one.listed).count(),
        }),
        lines: group
            .entries
            .into_iter()
            .map(|one| {
                let product = serde_json::to_value(&one.product).unwrap_or_default();
                let parts = serde_json::to_value(&one.recipe).unwrap_or_default();
                let facts = one.facts.into_iter().map(|fact| Fact {
                    about: words.t(about(&fact.about)),
                    rows: rows_shown(fact.rows),
                });
                line(
                    &words,
                    &product,
                    &parts,
                    &one.cut_of,
                    facts.collect(),
                    one.listed,
                )
            })
            .collect(),
    });
    Ok(StartersPage {
        groups: groups.collect(),
        then: match asked.set_up {
            Some(_) => "/set-up/animal",
            None => "/lists/products",
        },
        sets_up: asked.set_up.is_some(),
        may: app.who.may(Right::SetUp),
        words,
    })
}

fn line(
    words: &Words,
    product: &Value,
    parts: &Value,
    cut_of: &[String],
    facts: Vec<Fact>,
    listed: bool,
) -> Line {
    let text = |name: &str| product[name].as_str().unwrap_or_default();
    let code = text("code").to_owned();
    let names = &product["names"];
    let name = names[words.lang()].as_str().or(names["en"].as_str());
    let needs: Vec<&str> = parts
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|part| part["product"].as_str())
        .collect();
    let mut calls = vec![json!(["/api/products", plain(product)])];
    if !needs.is_empty() {
        let recipe = json!({ "product": code, "parts": parts });
        calls.push(json!(["/api/recipes", recipe]));
    }
    Line {
        name: name.unwrap_or(&code).to_owned(),
        more: more(words, product),
        parts: needs.join(" "),
        needs: [needs, cut_of.iter().map(String::as_str).collect()]
            .concat()
            .join(" "),
        calls: json!(calls).to_string(),
        facts,
        listed,
        code,
    }
}

/// A product without the fields that say nothing.
fn plain(product: &Value) -> Value {
    let fields = product.as_object().into_iter().flatten();
    let said = fields.filter(|(_, value)| !value.is_null());
    Value::Object(
        said.map(|(name, value)| (name.clone(), value.clone()))
            .collect(),
    )
}

/// Days, allergens, raw or ready, in small letters.
fn more(words: &Words, product: &Value) -> String {
    use domain::words::{Allergen, KeepFrom};
    let mut said = Vec::new();
    if let Some(days) = product["keep"]["days"].as_u64() {
        let from = product["keep"]["from"].as_str().and_then(KeepFrom::parse);
        let from = from.map(|from| words.say(from.says())).unwrap_or_default();
        let days = u32::try_from(days).unwrap_or(u32::MAX);
        said.push(words.say(SetUpSays::Keeps { days, from }));
    }
    let allergens = product["allergens"].as_array().into_iter().flatten();
    let named: Vec<String> = allergens
        .filter_map(|one| Allergen::parse(one.as_str()?))
        .map(|one| words.say(one.says()))
        .collect();
    if !named.is_empty() {
        said.push(words.say(super::says::PageSays::Contains {
            allergens: named.join(", "),
        }));
    }
    if let Some(percent) = product["curing_salt"]["nitrite_percent"].as_f64() {
        let percent = words.0.decimals(
            rust_decimal::Decimal::from_f64_retain(percent).unwrap_or_default(),
            2,
        );
        said.push(words.say(SetUpSays::Nitrite { percent }));
    }
    said.join(" · ")
}

/// What a fact is about.
fn about(fact: &str) -> &'static str {
    match fact {
        "keep" => "page-about-keep",
        "cut" => "page-about-cut",
        "yield" => "page-about-yield",
        "cure" => "page-about-cure",
        "release" => "page-about-release",
        "salting" => "page-about-salting",
        _ => "page-about-strength",
    }
}
