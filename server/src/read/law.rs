//! The rows of a place's law, for whoever asks "says who?".

use super::says::{QuerySays, spelt};
use crate::app::App;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::answers::{LawRead, RowRead};
use domain::rows::Row;
use domain::words::Profile;
use store::Conn;

/// A row as it was found, for pages.
pub use crate::wire::answers::RowRead as RowFound;

/// The rows of a place in a language; those that are not confirmed alone, if so wanted.
///
/// # Errors
/// 404 for a place that there is no law of.
pub fn read(app: &App, place: &str, unconfirmed: bool, language: &str) -> Result<LawRead> {
    let known = Profile::parse(place).and_then(|word| app.law.laws.places.get(&word));
    let law = known.ok_or_else(|| {
        Error::not_found(QuerySays::NoLaw {
            place: place.to_owned(),
            known: spelt(Profile::SPELT.iter().copied()),
        })
    })?;
    let wanted = |row: &&Row| !unconfirmed || !row.is_confirmed();
    Ok(LawRead {
        place: place.to_owned(),
        rows: law
            .rows
            .iter()
            .filter(wanted)
            .map(|row| row_read(app, row, language))
            .collect(),
    })
}

/// The rows of the kitchen's place, as it has confirmed them.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn of_kitchen(
    app: &Caller<'_>,
    conn: &mut Conn,
    unconfirmed: bool,
    language: &str,
) -> Result<LawRead> {
    let standing = app.standing(conn)?;
    let place = standing.kitchen.entry.profile.0;
    let law = app.laws(&standing.confirmed).of(place);
    let wanted = |row: &&Row| !unconfirmed || !row.is_confirmed();
    let rows = law.rows.iter().filter(wanted);
    Ok(LawRead {
        place: place.as_str().to_owned(),
        rows: rows.map(|row| row_read(app, row, language)).collect(),
    })
}

/// The facts of the trade, which every place shares.
pub fn of_trade(app: &App, language: &str) -> Vec<RowRead> {
    let rows = app.law.trade_rows.iter();
    rows.map(|row| row_read(app, row, language)).collect()
}

/// The rows that a rule's text names, found in the place's law or among the facts of the trade.
pub fn named(app: &App, place: Profile, rules: &str, language: &str) -> Vec<RowRead> {
    let law = app.law.laws.of(place);
    let find = |name: &str| {
        let id = domain::rows::RowId::new(name);
        law.rows.get(&id).or_else(|| app.law.trade_rows.get(&id))
    };
    rules
        .split(", ")
        .filter_map(find)
        .map(|row| row_read(app, row, language))
        .collect()
}

fn row_read(app: &App, row: &Row, language: &str) -> RowRead {
    RowRead {
        id: row.id.to_string(),
        says: row.says.in_language(language).to_owned(),
        also: row.also.iter().map(ToString::to_string).collect(),
        cite: row.cite.clone(),
        mark: row.mark.as_str().to_owned(),
        confirmed: row.is_confirmed(),
        sources: row
            .sources
            .iter()
            .map(|key| app.law.sources.get(key).unwrap_or(key).clone())
            .collect(),
    }
}
