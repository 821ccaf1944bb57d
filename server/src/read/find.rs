//! Finding lots.

use super::says::{QuerySays, spelt};
use crate::app::App;
use crate::error::{Error, Result};
use crate::read::brief::briefs;
use crate::read::stops;
use crate::wire::scalars::day;
use chrono_tz::Tz;
use domain::lot::Brief;
use domain::words::{Being, State, StopKind};
use serde::Deserialize;
use store::list_lots::{self, LotSearch};
use store::lots::LotRow;
use utoipa::IntoParams;

/// The query of a search for lots. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct LotsQuery {
    /// The product's code
    pub product: Option<String>,
    /// A place where some of it is
    pub place: Option<String>,
    /// The farm of an animal in it
    pub farm: Option<String>,
    /// The kill date of an animal in it
    pub killed_on: Option<String>,
    /// How some of it is kept, or what has become of some of it
    pub state: Option<String>,
    /// Something on hand must be used before this day
    pub use_by_before: Option<String>,
    /// A word in its code, note or product
    pub q: Option<String>,
    /// The last code of the page before
    pub after: Option<String>,
    /// How many, at most 200; 50 if left out
    pub limit: Option<String>,
}

/// The most lots of one page.
pub const MOST: i64 = 200;

/// A page of lots.
pub struct Found {
    /// The lots, newest first.
    pub lots: Vec<Brief>,
    /// How each is stopped, in the same order, where that was asked for.
    pub marks: Vec<Option<StopKind>>,
    /// Is there a next page?
    pub more: bool,
    /// The kitchen's time zone.
    pub zone: Tz,
}

impl Found {
    /// The code after which the next page goes on, if there is one.
    pub fn next(&self) -> Option<String> {
        let last = self.lots.last().filter(|_| self.more);
        last.map(|lot| lot.code.to_string())
    }
}

/// A page of lots, newest first.
///
/// # Errors
/// 422 where a value of the query cannot be.
pub fn lots(app: &App, query: &LotsQuery) -> Result<Found> {
    found(app, query, false)
}

/// The same, with how each is stopped.
///
/// # Errors
/// As [`lots`].
pub fn lots_marked(app: &App, query: &LotsQuery) -> Result<Found> {
    found(app, query, true)
}

fn found(app: &App, query: &LotsQuery, with_marks: bool) -> Result<Found> {
    let limit = limit(query.limit.as_deref())?;
    let given = |text: &Option<String>| {
        text.as_deref()
            .map(str::trim)
            .filter(|text| !text.is_empty())
            .map(str::to_owned)
    };
    let on_day = |text: &Option<String>, field: &str| {
        given(text)
            .map(|text| day(&text).map_err(|says| Error::cannot_be(field, says)))
            .transpose()
    };
    let mut sought = LotSearch {
        products: given(&query.product).map(|product| vec![product]),
        place: given(&query.place),
        farm: given(&query.farm),
        killed_on: on_day(&query.killed_on, "killed_on")?,
        use_by_before: on_day(&query.use_by_before, "use_by_before")?,
        word: given(&query.q).map(|word| word.to_lowercase()),
        ..LotSearch::default()
    };
    match given(&query.state).as_deref() {
        None => {}
        Some(word) if State::parse(word).is_some() => sought.state = Some(word.to_owned()),
        Some(word) if Being::parse(word).is_some() => sought.being = Some(word.to_owned()),
        Some(word) => {
            let known = State::SPELT.iter().chain(Being::SPELT).copied();
            let says = QuerySays::NotState {
                state: word.to_owned(),
                known: spelt(known),
            };
            return Err(Error::cannot_be("state", says));
        }
    }
    refuse_unprintable(&sought)?;
    app.store.read(|conn| {
        let kitchen = app.standing(conn)?.kitchen.clone();
        if let Some(after) = given(&query.after) {
            let named = crate::named::named(&after, "after", &app.ours())?;
            sought.after = Some(super::row(conn, &named.code, "after")?.id);
        }
        let rows = list_lots::list(conn, &sought, limit + 1)?;
        let more = rows.len() as i64 > limit;
        let rows = rows.into_iter().take(limit as usize);
        let rows: Vec<LotRow> = rows.map(|(row, _)| row).collect();
        Ok(Found {
            lots: briefs(app, conn, &rows)?,
            marks: match with_marks {
                true => stops::marked(conn, &rows, app.now())?,
                false => Vec::new(),
            },
            more,
            zone: kitchen.zone,
        })
    })
}

/// How many to a page.
///
/// # Errors
/// 422 where it is not a number from 1 to 200.
pub fn limit(text: Option<&str>) -> Result<i64> {
    let Some(text) = text.map(str::trim).filter(|text| !text.is_empty()) else {
        return Ok(50);
    };
    let number = text
        .parse::<i64>()
        .ok()
        .filter(|number| (1..=MOST).contains(number));
    number.ok_or_else(|| {
        Error::cannot_be(
            "limit",
            QuerySays::NotLimit {
                limit: text.to_owned(),
                most: MOST,
            },
        )
    })
}

/// A database cannot be asked for a character that it cannot hold.
fn refuse_unprintable(sought: &LotSearch) -> Result<()> {
    let product = sought.products.iter().flatten().next();
    let texts = [
        ("product", product),
        ("place", sought.place.as_ref()),
        ("farm", sought.farm.as_ref()),
        ("q", sought.word.as_ref()),
    ];
    for (field, text) in texts {
        if text.is_some_and(|text| text.chars().any(char::is_control)) {
            return Err(Error::cannot_be(field, QuerySays::Unprintable));
        }
    }
    Ok(())
}
