//! The picture of an incident: the lots in scope, those that it begins with among them. As it was at another moment
//! it is made of its facts; as the record is, of what its scope loaded.

use super::facts::{IncidentFacts, LotFacts};
use super::gather::{self, AsOf};
use super::lots_now;
use crate::app::App;
use crate::deeds::incident::of_id;
use crate::error::Result;
use crate::pictures::{Drawn, Family};
use crate::wire::Instant;
use crate::wire::asked::Id;
use chrono::{DateTime, Days, NaiveDateTime, NaiveTime};
use domain::grams::Grams;
use domain::moment::on_clock;
use domain::words::{Account, DeedKind};
use store::Conn;

/// What is drawn of an incident in a language: as it was kept at its close, or as the record is, or was at a moment.
///
/// # Errors
/// 404 for none, 422 for a moment before it began; the database is away, or the record is damaged.
pub fn drawn(
    app: &App,
    conn: &mut Conn,
    id: Id,
    at: Option<Instant>,
    language: &str,
) -> Result<Family> {
    let row = of_id(conn, id, None)?;
    Ok(match gather::as_of(conn, &row, at)? {
        AsOf::Kept(facts) => picture(&facts, language),
        AsOf::Then(until) => picture(&gather::to_draw(app, conn, &row, until)?, language),
        AsOf::Now(last) => {
            let (lots, zone) = lots_now::lots(app, conn, &row, language)?;
            let until = day_after(on_clock(last.and_utc(), zone));
            Family { lots, until }
        }
    })
}

/// What is drawn of facts that are there, in a language.
pub(super) fn picture(facts: &IncidentFacts, language: &str) -> Family {
    let lots = facts.lots.iter();
    Family {
        lots: lots.map(|lot| one(lot, facts, language)).collect(),
        until: day_after(local(&facts.as_of)),
    }
}

/// Where a picture ends that is drawn as of a moment.
fn day_after(at: NaiveDateTime) -> NaiveDateTime {
    let day = at.date();
    let day = day.checked_add_days(Days::new(1)).unwrap_or(day);
    day.and_time(NaiveTime::MIN)
}

/// A moment by the kitchen's clock.
pub(super) fn local(text: &str) -> NaiveDateTime {
    let at = DateTime::parse_from_rfc3339(text);
    at.map_or(NaiveDateTime::MIN, |at| at.naive_local())
}

fn one(lot: &LotFacts, facts: &IncidentFacts, language: &str) -> Drawn {
    let left = lot.went.on_hand.0;
    let held = facts.holds && !facts.drill;
    let went = [
        (Account::Used, lot.went.used),
        (Account::Sold, lot.went.sold),
        (Account::Served, lot.went.served),
        (Account::Discarded, lot.went.discarded),
        (Account::Shipped, lot.went.shipped),
        (Account::Returned, lot.went.returned),
        (Account::Lost, lot.went.lost),
        (Account::Unexplained, lot.went.unexplained),
    ];
    let went = went.iter().filter(|(_, grams)| grams.0 > Grams::ZERO);
    let name = super::facts::in_language(&lot.names, language, &lot.product);
    Drawn {
        code: lot.shown.clone(),
        name: match &lot.note {
            Some(note) => format!("{name} ({note})"),
            None => name,
        },
        made_at: local(&lot.made_at),
        step: DeedKind::parse(&lot.made_kind).unwrap_or(DeedKind::Receive),
        made_by: lot.made_by,
        is_start: lot.is_start,
        made: lot.went.made.0,
        on_hand: left,
        held: if held { left } else { Grams::ZERO },
        gone_at: lot.gone_at.as_deref().map(local),
        places: lot
            .places
            .iter()
            .map(|(code, grams)| (facts.place(code).to_owned(), grams.0))
            .collect(),
        went: went.map(|(account, _)| *account).collect(),
        used_in: lot.used_in.clone(),
    }
}
