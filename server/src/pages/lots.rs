//! The page that finds lots.

use super::says::PageSays;
use super::spoken::{NONE, Words};
use super::{see_other, trouble};
use crate::app::App;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::find::{self, LotsQuery};
use crate::read::names::Names;
use crate::rooms::blocking;
use crate::routes::query;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use chrono::NaiveDate;
use domain::lot::Brief;
use domain::moment::day_of;
use domain::says::Arg;
use domain::scanned::{self, Scanned};
use domain::words::{Being, State, StopKind};

/// How many lots stand on one page: fifty were eleven screens of a phone.
const MOST: &str = "25";

#[derive(Template)]
#[template(path = "lots.html")]
struct LotsPage {
    words: Words,
    q: String,
    place: String,
    state: String,
    places: Vec<Choice>,
    states: Vec<Choice>,
    /// What else narrows the list.
    also: Vec<Also>,
    narrowed: bool,
    lots: Vec<Row>,
    next: Option<String>,
}

struct Choice {
    value: String,
    says: String,
    chosen: bool,
}

/// A part of the query that has no field of its own: kept, and told of in words.
struct Also {
    name: &'static str,
    value: String,
    says: String,
}

struct Row {
    code: String,
    shown: String,
    name: String,
    note: Option<String>,
    has: bool,
    on_hand: String,
    use_by: String,
    place: String,
    /// How it stands with its last day, where that is near or past.
    stands: Option<String>,
    /// How it is stopped, where it is.
    stopped: Option<String>,
}

enum Found {
    /// The lot whose label was scanned into the field.
    One(String),
    Many(LotsPage),
}

/// Lots, newest first; a code in full goes to its lot at once.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    let speech = asking.speech();
    match find(&request, asking).await {
        Ok(Found::One(code)) => see_other(&format!("/lots/{code}")),
        Ok(Found::Many(lots)) => super::page(speech, Ok(lots)),
        Err(error) => trouble(speech, &error),
    }
}

async fn find(request: &HttpRequest, asking: Asking) -> Result<Found> {
    let mut asked: LotsQuery = query(request)?;
    asked.limit.get_or_insert_with(|| MOST.to_owned());
    blocking(move || {
        let app = asking.caller();
        match named(&app, asked.q.as_deref())? {
            Some(code) => Ok(Found::One(code)),
            None => find_many(&app, &asked).map(Found::Many),
        }
    })
    .await
}

fn named(app: &App, text: Option<&str>) -> Result<Option<String>> {
    let Some(text) = text.filter(|text| !text.trim().is_empty()) else {
        return Ok(None);
    };
    app.store.look(|conn| {
        app.kitchen_lately(conn)?;
        let Scanned::Lot { code, .. } = scanned::read(text, &app.ours()) else {
            return Ok(None);
        };
        Ok(store::lots::by_code(conn, &code)?.map(|row| row.code))
    })
}

fn find_many(app: &Caller<'_>, asked: &LotsQuery) -> Result<LotsPage> {
    let found = find::lots_marked(app, asked)?;
    let names = Names::seen(app)?;
    let words = Words::of(&names);
    let today = day_of(app.now(), names.zone());
    let (q, place, state) = (given(&asked.q), given(&asked.place), given(&asked.state));
    let also = also(asked, &names);
    let choice = |value: &str, says: String, chosen: &str| Choice {
        chosen: value == chosen,
        value: value.to_owned(),
        says,
    };
    let states = State::ALL.iter().map(|word| (word.as_str(), word.says()));
    let states = states.chain(Being::ALL.iter().map(|word| (word.as_str(), word.says())));
    let places = names.places_by_name().into_iter();
    let places: Vec<Choice> = places
        .map(|(code, name)| choice(code, name.to_owned(), &place))
        .collect();
    Ok(LotsPage {
        words,
        narrowed: !(q.is_empty() && place.is_empty() && state.is_empty() && also.is_empty()),
        places,
        states: states
            .map(|(spelt, word)| choice(spelt, words.headed(word), &state))
            .collect(),
        next: found.next(),
        lots: found
            .lots
            .into_iter()
            .zip(found.marks)
            .map(|(lot, stopped)| row(lot, &names, today, stopped))
            .collect(),
        q,
        place,
        state,
        also,
    })
}

fn given(text: &Option<String>) -> String {
    text.as_deref().unwrap_or_default().trim().to_owned()
}

fn also(asked: &LotsQuery, names: &Names) -> Vec<Also> {
    let (product, farm) = (given(&asked.product), given(&asked.farm));
    let (killed, before) = (given(&asked.killed_on), given(&asked.use_by_before));
    let of_product = PageSays::OnlyProduct {
        product: names.product(&product),
    };
    let of_farm = PageSays::OnlyFarm {
        farm: names.farm(&farm),
    };
    let of_day = PageSays::OnlyKilled { day: day(&killed) };
    let of_last_day = PageSays::OnlyBefore { day: day(&before) };
    [
        ("product", of_product, product),
        ("farm", of_farm, farm),
        ("killed_on", of_day, killed),
        ("use_by_before", of_last_day, before),
    ]
    .into_iter()
    .filter(|(_, _, value)| !value.is_empty())
    .map(|(name, says, value)| Also {
        says: Words::of(names).say(says),
        name,
        value,
    })
    .collect()
}

/// A day of the query; what was sent, where it is none.
fn day(text: &str) -> Arg {
    text.parse()
        .map_or_else(|_| Arg::Text(text.to_owned()), Arg::Day)
}

fn row(lot: Brief, names: &Names, today: NaiveDate, stopped: Option<StopKind>) -> Row {
    let none = || NONE.to_owned();
    let words = Words::of(names);
    Row {
        name: names.product(&lot.product),
        has: !lot.on_hand.is_none_left(),
        on_hand: words.or_dash(lot.on_hand),
        use_by: lot.use_by.map_or_else(none, |day| words.day(day)),
        stopped: stopped.map(|kind| match kind {
            StopKind::Held => words.t("title-held"),
            _ => words.t("title-stopped"),
        }),
        stands: lot.use_by.and_then(|day| words.standing(day, today)),
        place: names.placed(&lot.places).unwrap_or_else(none),
        code: lot.code.to_string(),
        shown: lot.code.shown(),
        note: lot.note,
    }
}
