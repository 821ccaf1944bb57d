//! One entry of a list, as a form: each field with what it is called, what is said beside it where a decision can
//! hurt, and the rows behind that. It is sent as the documented call, by `assets/lists.js`.

use super::bench::Pick;
use super::field_words::{heading, help, hurts, part, rows};
use super::list_choices::choices;
use super::list_parts::{self, code_after_name, fold};
use super::lists::{NEW, kept, named};
use super::spoken::Words;
use super::way_back::ours;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::lists::fields::{self, Field, HEADS, Sort};
use crate::lists::{List, entry};
use crate::read::entries::{self, Kept};
use crate::read::names::Names;
use crate::read::seek;
use actix_web::{HttpRequest, HttpResponse, web};
use askama::Template;
use domain::right::Right;
use domain::words::{ProductKind, Profile};
use serde::Deserialize;
use store::Conn;

/// A field of a form.
pub struct Asked {
    /// Where its value is.
    pub name: &'static str,
    /// The same, as an id.
    pub id: String,
    /// What it is called.
    pub heading: String,
    /// What is said beside it.
    pub help: Option<String>,
    /// The rows behind that.
    pub rows: Vec<RowShown>,
    /// The heading that it is the first of.
    pub part: Option<String>,
    /// Does its part stand open: is anything in it, or is it what most entries need?
    pub opens: bool,
    /// Is it the last of its part?
    pub ends: bool,
    /// How it is sent: `figure`.
    pub sent_as: &'static str,
    /// What stands in it.
    pub value: String,
    /// What may be chosen.
    pub choices: Vec<Pick>,
    /// Must something stand in it?
    pub needed: bool,
    /// May it be left empty, so that nobody looks for what to put in? What is folded away nobody takes for asked.
    pub optional: bool,
    /// Is it in capital letters, always?
    pub capitals: bool,
    /// May it no more be changed?
    pub locked: bool,
    /// Can what is decided in its part hurt somebody?
    pub hurts: bool,
}

/// A row, as it stands beside a field.
pub struct RowShown {
    /// Its name.
    pub id: String,
    /// What it says.
    pub says: String,
    /// Is it not confirmed?
    pub is_open: bool,
}

/// Rows of the law, as they stand beside a field.
pub fn rows_shown(rows: Vec<crate::read::law::RowFound>) -> Vec<RowShown> {
    let rows = rows.into_iter();
    rows.map(|row| RowShown {
        id: row.id,
        says: row.says,
        is_open: !row.confirmed,
    })
    .collect()
}

#[derive(Template)]
#[template(path = "list-form.html")]
struct FormPage {
    words: Words,
    title: String,
    list: &'static str,
    back: String,
    /// Where the page goes when it is kept.
    then: String,
    /// What that page calls a new one that it is told of.
    told_as: Option<&'static str>,
    call: String,
    method: &'static str,
    version: Option<i32>,
    body: String,
    heads: String,
    /// Is its code made of its name, where none is typed?
    codes: bool,
    fields: Vec<Asked>,
    may: bool,
    /// Of a product: where its recipe is.
    recipe: Option<String>,
    /// Of a recipe: its parts, and what may be one.
    parts: Option<(Vec<PartRow>, Vec<Pick>)>,
}

impl FormPage {
    /// The same for whoever came from another page, which is told the code of what is new.
    fn leading_back(self, then: &str) -> FormPage {
        FormPage {
            told_as: match (self.version, List::parse(self.list)) {
                (None, Some(List::Products)) => Some("product"),
                (None, Some(List::Suppliers)) => Some("supplier"),
                _ => None,
            },
            back: self.words.t("page-back"),
            then: then.to_owned(),
            ..self
        }
    }
}

/// A part of a recipe.
pub struct PartRow {
    /// The product.
    pub product: String,
    /// Its grams.
    pub grams: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Led {
    /// Where whoever was led here goes back to.
    then: Option<String>,
}

/// The page of an entry, or of a new one.
pub async fn page(
    request: HttpRequest,
    path: web::Path<(String, String)>,
    asking: Asking,
) -> HttpResponse {
    let (list, code) = path.into_inner();
    super::asked(&request, asking, move |app, conn, led: &Led| {
        let page = form(app, conn, &list, &code)?;
        Ok(match ours(led.then.as_deref()) {
            Some(then) => page.leading_back(then),
            None => page,
        })
    })
    .await
}

fn form(app: &Caller<'_>, conn: &mut Conn, list: &str, code: &str) -> Result<FormPage> {
    let list = named(list)?;
    if list == List::Recipes {
        return recipe(app, conn, code);
    }
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let kept = kept(conn, list, code)?;
    let title = match &kept {
        Some(kept) => kept.name(words.lang()),
        None => a_new(&words, list, app.kitchen(conn)?.entry.profile.0),
    };
    let recipe = match (list, &kept) {
        (List::Products, Some(kept)) if has_recipe(kept) => {
            Some(format!("/lists/recipes/{}", kept.code))
        }
        _ => None,
    };
    Ok(FormPage {
        title,
        list: list.as_str(),
        back: words.headed(list.says()),
        then: format!("/lists/{}", list.as_str()),
        told_as: None,
        call: call(list, kept.as_ref()),
        method: if kept.is_some() { "PUT" } else { "POST" },
        version: kept.as_ref().map(|kept| kept.version),
        body: kept
            .as_ref()
            .map_or_else(|| "{}".to_owned(), |kept| kept.body.to_string()),
        heads: HEADS.join(" "),
        codes: kept.is_none() && codes(list),
        fields: asked(app, conn, &words, list, kept.as_ref())?,
        may: app.who.may(Right::SetUp),
        recipe,
        parts: None,
        words,
    })
}

/// What a form is for that adds an entry.
fn a_new(words: &Words, list: List, place: Profile) -> String {
    words.t(match list {
        List::Farms => "page-new-farm",
        List::Abattoirs => {
            return words.in_place(["page-new-abattoir", "page-new-abattoir-us"], place);
        }
        List::Suppliers => "page-new-supplier",
        List::Places => "page-new-place",
        List::Products | List::Recipes => "page-new-product",
        List::Printers => "page-new-printer",
        List::Probes => "page-new-probe",
    })
}

/// Is its code nothing but a short name? That of a farm begins lot codes, an abattoir's number is the authority's.
fn codes(list: List) -> bool {
    !matches!(list, List::Farms | List::Abattoirs | List::Recipes)
}

/// Is it made of other things?
fn has_recipe(kept: &Kept) -> bool {
    let kind = kept.text("kind").and_then(|kind| ProductKind::parse(&kind));
    !matches!(kind, Some(ProductKind::Carcass | ProductKind::Waste) | None)
}

fn call(list: List, kept: Option<&Kept>) -> String {
    match kept {
        Some(kept) => format!("/api/{}/{}", list.as_str(), kept.code),
        None => format!("/api/{}", list.as_str()),
    }
}

/// The fields of an entry, as a form asks for them.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn asked(
    app: &Caller<'_>,
    conn: &mut Conn,
    words: &Words,
    list: List,
    kept: Option<&Kept>,
) -> Result<Vec<Asked>> {
    let standing = app.standing(conn)?;
    let place = standing.kitchen.entry.profile.0;
    let all = fields::of(list).iter().enumerate();
    let each = all.map(|(nth, field)| {
        let value = kept
            .and_then(|kept| kept.text(field.name))
            .unwrap_or_default();
        let found = crate::read::law::named(app, place, rows(field.name), words.lang());
        let choices = choices(app, words, field, &value);
        let is_made = field.name == "code" && kept.is_none() && codes(list);
        let help = match is_made {
            true => Some("page-help-code-made"),
            false => help(field.name),
        };
        Asked {
            name: field.name,
            id: format!("field-{}", field.name.replace(['.', '_'], "-")),
            heading: words.t(heading(field.name)),
            help: help.map(|key| words.t(key)),
            rows: rows_shown(found),
            part: part(field.name).map(|key| words.t(key)),
            opens: false,
            ends: false,
            sent_as: sent_as(field, !choices.is_empty()),
            value: match field.sort {
                Sort::Money => money(&value),
                _ => value,
            },
            choices,
            needed: field.needed && !is_made,
            optional: !field.needed && !matches!(field.sort, Sort::Many(_)),
            capitals: list == List::Farms && field.name == "code" || field.name == "country",
            locked: nth == 0 && kept.is_some(),
            hurts: hurts(field.name),
        }
    });
    let mut each: Vec<Asked> = each.collect();
    if kept.is_none() && (codes(list) || list == List::Farms) {
        code_after_name(&mut each);
    }
    if list == List::Products {
        list_parts::product(&mut each, words, &standing.kitchen.languages());
    } else if kept.is_none() && codes(list) {
        list_parts::code_last(&mut each, words);
    }
    fold(&mut each);
    Ok(each)
}

fn sent_as(field: &Field, has_choices: bool) -> &'static str {
    match field.sort {
        Sort::Line if has_choices => "one",
        Sort::Line => "line",
        Sort::Text => "text",
        Sort::Yes => "yes",
        Sort::Whole | Sort::Figure => "figure",
        Sort::Money => "money",
        Sort::One(_) => "one",
        Sort::Many(_) => "many",
        Sort::Lines => "lines",
    }
}

/// Hundredths as people write money.
fn money(minor: &str) -> String {
    let minor: Option<i64> = minor.parse().ok();
    let written = minor.map(|minor| format!("{}.{:02}", minor / 100, minor % 100));
    written.unwrap_or_default()
}

/// Blank rows of a recipe, for what is added.
const BLANK: usize = 4;

/// The recipe of a product.
fn recipe(app: &Caller<'_>, conn: &mut Conn, code: &str) -> Result<FormPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let product = match code {
        NEW => None,
        code => entries::find(conn, List::Products, code)?,
    };
    let product = product.ok_or_else(|| entry::no_such_entry(List::Products, code))?;
    let kept = entries::find(conn, List::Recipes, code)?;
    let mut parts: Vec<PartRow> = Vec::new();
    let has = kept
        .as_ref()
        .and_then(|kept| kept.body["parts"].as_array().cloned());
    for part in has.unwrap_or_default() {
        parts.push(PartRow {
            product: part["product"].as_str().unwrap_or_default().to_owned(),
            grams: part["grams"].to_string(),
        });
    }
    parts.extend((0..BLANK).map(|_| PartRow {
        product: String::new(),
        grams: String::new(),
    }));
    let mut products: Vec<Pick> = entries::all(conn, List::Products)?
        .into_iter()
        .filter(|one| one.code != code)
        .map(|one| Pick::of(&one.code, one.name(words.lang())))
        .collect();
    products.sort_by_cached_key(|one| seek::fold(&one.name));
    Ok(FormPage {
        title: product.name(words.lang()),
        list: List::Recipes.as_str(),
        back: words.headed(List::Recipes.says()),
        then: format!("/lists/{}", List::Recipes.as_str()),
        told_as: None,
        call: call(List::Recipes, kept.as_ref()),
        method: if kept.is_some() { "PUT" } else { "POST" },
        version: kept.as_ref().map(|kept| kept.version),
        body: serde_json::json!({ "product": code }).to_string(),
        heads: String::new(),
        codes: false,
        fields: Vec::new(),
        may: app.who.may(Right::SetUp),
        recipe: None,
        parts: Some((parts, products)),
        words,
    })
}
