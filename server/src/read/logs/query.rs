//! What is asked of a log: which window, which place, person or lot, and in which form.

use crate::app::App;
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::lists::standing::Standing;
use crate::read::says::{QuerySays, spelt};
use crate::wire::says::ValueSays;
use crate::wire::scalars::day;
use chrono::{DateTime, Days, NaiveDate, NaiveDateTime, TimeDelta, Utc};
use chrono_tz::Tz;
use domain::code::LotCode;
use domain::log::LogKind;
use domain::moment::{day_of, midnight};
use serde::Deserialize;
use store::Conn;
use utoipa::IntoParams;
use uuid::Uuid;

/// The query of a log. What is said of each field stands in the API's document.
#[derive(Debug, Default, Clone, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct LogQuery {
    /// From then on: an instant, or a day of the kitchen from 0:00; 30 days before `until` if left out
    pub from: Option<String>,
    /// Before then: an instant, or a day of the kitchen from 0:00, which is no part of it; the end of today if left out
    pub until: Option<String>,
    /// The code of the place where it was done
    pub place: Option<String>,
    /// Who did it, by the name as it was signed
    pub by: Option<String>,
    /// A lot that it made or touched, in any spelling of its code
    pub lot: Option<String>,
    /// The form: json, csv or pdf; json if left out. A file has the whole of the window
    #[serde(rename = "as")]
    pub form: Option<String>,
    /// The id of the last deed of the page before; of json only
    pub after: Option<String>,
    /// How many entries, at most 200; 50 if left out; of json only
    pub limit: Option<String>,
}

/// The form of an answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogForm {
    /// For a program.
    Json,
    /// For a spreadsheet.
    Csv,
    /// For paper.
    Pdf,
}

impl LogQuery {
    /// The form that is asked for.
    ///
    /// # Errors
    /// 422 for another.
    pub fn form(&self) -> Result<LogForm> {
        match given(&self.form).as_deref() {
            None | Some("json") => Ok(LogForm::Json),
            Some("csv") => Ok(LogForm::Csv),
            Some("pdf") => Ok(LogForm::Pdf),
            Some(other) => {
                let says = ValueSays::NoneOf {
                    text: other.to_owned(),
                    words: "json, csv, pdf".to_owned(),
                };
                Err(Error::cannot_be("as", says))
            }
        }
    }
}

/// The log of a path.
///
/// # Errors
/// 404 for a word that is none.
pub fn known_log(word: &str) -> Result<LogKind> {
    LogKind::parse(word).ok_or_else(|| {
        Error::not_found(QuerySays::NoLog {
            log: word.to_owned(),
            known: spelt(LogKind::SPELT.iter().copied()),
        })
    })
}

/// A window, and what else narrows a log.
#[derive(Debug, Clone)]
pub struct Window {
    /// At that moment or after it.
    pub from: DateTime<Utc>,
    /// Before that moment.
    pub until: DateTime<Utc>,
    /// At that place.
    pub place: Option<i32>,
    /// Its code.
    pub place_code: Option<String>,
    /// By that person.
    pub by: Option<String>,
    /// That lot.
    pub lot: Option<(i32, LotCode)>,
    /// After that deed.
    pub after: Option<(NaiveDateTime, i32)>,
}

impl Window {
    /// What a query asks for.
    ///
    /// # Errors
    /// 422 for a window that ends before it begins, a moment, a place or a code that is none; 404 for a lot that was
    /// never issued.
    pub fn read(
        app: &Caller<'_>,
        conn: &mut Conn,
        standing: &Standing,
        query: &LogQuery,
    ) -> Result<Window> {
        let zone = standing.kitchen.zone;
        let moment = |text: &Option<String>, field: &str| {
            let read =
                |text: String| moment(&text, zone).map_err(|says| Error::cannot_be(field, says));
            given(text).map(read).transpose()
        };
        let tomorrow = day_of(app.now(), zone) + Days::new(1);
        let until = moment(&query.until, "until")?;
        let until = until.unwrap_or_else(|| midnight(tomorrow, zone));
        let from = moment(&query.from, "from")?;
        let from = from.unwrap_or_else(|| midnight(day_of(until, zone) - Days::new(30), zone));
        if from >= until {
            return Err(Error::cannot_be("until", QuerySays::WindowEndsFirst));
        }
        let place_code = given(&query.place);
        let place = place_code.as_deref().map(|code| {
            let key = standing.lists.place_key(code);
            key.map(|key| key.0)
                .ok_or_else(|| Error::cannot_be("place", List::Places.lacks(code)))
        });
        Ok(Window {
            from,
            until,
            place: place.transpose()?,
            place_code,
            by: given(&query.by),
            lot: lot(app, conn, query)?,
            after: after(conn, query)?,
        })
    }

    /// The first and the last day of it, as the kitchen counts days.
    pub fn days(&self, zone: Tz) -> (NaiveDate, NaiveDate) {
        let last = self.until - TimeDelta::microseconds(1);
        (day_of(self.from, zone), day_of(last, zone))
    }

    /// Does it begin and end with a day?
    pub fn is_of_days(&self, zone: Tz) -> bool {
        let (first, last) = self.days(zone);
        midnight(first, zone) == self.from && midnight(last + Days::new(1), zone) == self.until
    }
}

fn lot(app: &App, conn: &mut Conn, query: &LogQuery) -> Result<Option<(i32, LotCode)>> {
    let Some(text) = given(&query.lot) else {
        return Ok(None);
    };
    let named = crate::named::named(&text, "lot", &app.ours())?;
    let row = crate::read::row(conn, &named.code, "lot")?;
    Ok(Some((row.id, named.code)))
}

fn after(conn: &mut Conn, query: &LogQuery) -> Result<Option<(NaiveDateTime, i32)>> {
    let Some(text) = given(&query.after) else {
        return Ok(None);
    };
    let refused = || {
        let after = text.clone();
        Error::cannot_be("after", QuerySays::NotAfter { after })
    };
    let uid = Uuid::parse_str(&text).map_err(|_| refused())?;
    let row = store::deeds::by_uid(conn, uid.as_bytes())?.ok_or_else(refused)?;
    Ok(Some((row.at, row.id)))
}

fn given(text: &Option<String>) -> Option<String> {
    let text = text.as_deref().map(str::trim);
    text.filter(|text| !text.is_empty()).map(str::to_owned)
}

/// A day of a page's query.
///
/// # Errors
/// 422 for what is none.
pub fn day_of_page(text: &str, field: &str) -> Result<NaiveDate> {
    day(text.trim()).map_err(|says| Error::cannot_be(field, says))
}

/// A moment of a query: an instant, or the beginning of a day.
fn moment(text: &str, zone: Tz) -> std::result::Result<DateTime<Utc>, ValueSays> {
    if text.len() == 10 {
        return day(text).map(|day| midnight(day, zone));
    }
    // A plus that was not written as %2B arrives as a space.
    let instant = DateTime::parse_from_rfc3339(&text.replace(' ', "+"));
    instant
        .map(|instant| instant.to_utc())
        .map_err(|_| ValueSays::NoTime {
            text: text.to_owned(),
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use chrono_tz::America::{New_York, Santiago};

    #[test]
    fn a_day_begins_by_the_clock_of_the_kitchen() {
        let check = |text: &str, zone: Tz, expected: &str| {
            let read = moment(text, zone).unwrap();
            assert_eq!(read, expected.parse::<DateTime<Utc>>().unwrap(), "{text}");
        };
        check("2026-06-10", New_York, "2026-06-10T04:00:00Z");
        check("2026-01-10", New_York, "2026-01-10T05:00:00Z");
        // At midnight the clock goes to one: the day begins there.
        check("2026-09-06", Santiago, "2026-09-06T04:00:00Z");
        check(
            "2026-06-10T07:40:00-04:00",
            New_York,
            "2026-06-10T11:40:00Z",
        );
        check(
            "2026-06-10T11:40:00 00:00",
            New_York,
            "2026-06-10T11:40:00Z",
        );
        assert!(moment("yesterday", New_York).is_err());
        assert!(moment("2026-02-30", New_York).is_err());
    }
}
