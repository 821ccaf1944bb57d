//! A tub without a label turns up: it is the pack that is missing, or a thing of which nobody knows the history.

use super::bench::{self, Pick, Units, WEIGHT};
use super::managers::not_yours;
use super::place_says::{PlacePageSays, PlaceWorkSays};
use super::spoken::Words;
use crate::app::App;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::named::named;
use crate::read::names::Names;
use crate::read::seek::fold;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::lot::Pack;
use domain::right::Right;
use serde::Deserialize;
use serde_json::json;
use std::collections::BTreeSet;
use store::lots::LotRow;
use store::packs::PackRow;
use store::{Conn, stands};

#[derive(Template)]
#[template(path = "adopt.html")]
struct AdoptPage {
    words: Words,
    units: Units,
    /// The packs that are missing: each is a way to this page with it.
    missing: Vec<Missing>,
    /// The one that it is taken for.
    is: Option<Missing>,
    body: String,
    products: Vec<Pick>,
    places: Vec<Pick>,
    whys: Vec<String>,
    printers: Vec<Pick>,
    sentence: String,
    may: bool,
    /// Who may not, and whom to ask.
    not_yours: Option<String>,
}

struct Missing {
    path: String,
    name: String,
    more: String,
    /// `BRC-26159-A0R-Q/7`.
    shown: String,
    code: String,
    number: u32,
    product: String,
}

#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
struct Asked {
    /// Where it turned up.
    place: Option<String>,
    /// The missing pack that it is: `CODE/N`.
    is: Option<String>,
}

/// The most missing packs that are told of.
const MOST: i64 = 60;

/// The page.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, read).await
}

fn read(app: &Caller<'_>, conn: &mut Conn, asked: &Asked) -> Result<AdoptPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let place = asked.place.as_deref();
    let all = missing(app, conn, &names, place)?;
    let is = match asked.is.as_deref() {
        Some(is) => Some(named(is, "is", &app.ours())?),
        None => None,
    };
    let (found, others): (Vec<Missing>, Vec<Missing>) = all.into_iter().partition(|pack| {
        let meant = is.as_ref();
        meant.is_some_and(|is| {
            is.code.to_string() == pack.code && is.pack.is_none_or(|number| number == pack.number)
        })
    });
    let is = found.into_iter().next();
    let mut products: Vec<Pick> = names
        .products()
        .into_iter()
        .map(|(code, name)| Pick::of(&code, name))
        .collect();
    products.sort_by_cached_key(|one| fold(&one.name));
    let printers = crate::read::prints::printers(conn)?;
    let printers = printers.into_iter().map(|of| Pick::of(&of.code, of.name));
    Ok(AdoptPage {
        units: Units::of(&words),
        body: match &is {
            Some(pack) => {
                json!({ "is": format!("{}/{}", pack.code, pack.number), "product": pack.product })
            }
            None => json!({}),
        }
        .to_string(),
        sentence: words.say(match &is {
            Some(pack) => PlaceWorkSays::AdoptMissing {
                name: pack.name.clone(),
                lot: pack.shown.clone(),
            },
            None => PlaceWorkSays::AdoptUnknown,
        }),
        whys: [
            "page-adopt-why-washed",
            "page-adopt-why-fell",
            "page-adopt-why-never",
        ]
        .map(|key| words.t(key))
        .to_vec(),
        missing: match is {
            Some(_) => Vec::new(),
            None => others,
        },
        products,
        places: bench::places(&names, place),
        printers: printers.collect(),
        not_yours: not_yours(app, &words, Right::Work),
        may: app.who.may(Right::Work),
        is,
        words,
    })
}

/// The packs that nobody found.
fn missing(app: &App, conn: &mut Conn, names: &Names, place: Option<&str>) -> Result<Vec<Missing>> {
    let rows = stands::missing(conn, MOST)?;
    let keys: BTreeSet<i32> = rows.iter().map(|row| row.lot_id).collect();
    let keys: Vec<i32> = keys.into_iter().collect();
    let lots = store::lots::by_keys(conn, &keys)?;
    let of = |row: &PackRow| lots.iter().find(|lot| lot.id == row.lot_id);
    let each = rows.iter().filter_map(|row| of(row).map(|lot| (lot, row)));
    each.map(|(lot, row)| told(app, conn, names, lot, &row.pack()?, place))
        .collect()
}

fn told(
    app: &App,
    conn: &mut Conn,
    names: &Names,
    lot: &LotRow,
    pack: &Pack,
    place: Option<&str>,
) -> Result<Missing> {
    let words = Words::of(names);
    let product = app.product(conn, lot.version_id)?;
    let code = lot.code()?;
    let with = place.map_or(String::new(), |place| format!("&place={place}"));
    let shown = match lot.pack_count {
        1 => code.shown(),
        _ => format!("{}/{}", code.shown(), pack.number),
    };
    Ok(Missing {
        path: format!("/adopt?is={code}/{}{with}", pack.number),
        name: product.name(words.lang()).to_owned(),
        more: words.say(PlacePageSays::MissingPack {
            pack: shown.clone(),
            weight: words.grams(pack.made),
            place: names.place_of(pack.now.place),
        }),
        shown,
        number: pack.number,
        product: product.code.clone(),
        code: code.to_string(),
    })
}
