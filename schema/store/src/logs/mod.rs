//! What the logs are built of: the deeds of a window, a page at a time, with everything that each wrote down, in
//! as many statements for a hundred deeds as for one.

mod around;
mod details;
mod upon;

pub use around::{cleaned, ground, probe_checks};
pub use details::{Loaded, load};

use crate::conn::Conn;
use crate::deeds::DeedRow;
use crate::error::Result;
use crate::tables::{deeds, lots, measurements, pack_events, packs, stops};
use chrono::NaiveDateTime;
use diesel::dsl::exists;
use diesel::prelude::*;
use domain::words::DeedKind;

/// Which deeds. Everything given must hold.
#[derive(Debug, Clone, Default)]
pub struct DeedSearch<'a> {
    /// At that moment or after it, UTC.
    pub from: NaiveDateTime,
    /// Before that moment.
    pub until: NaiveDateTime,
    /// Of these kinds.
    pub kinds: &'a [DeedKind],
    /// Or of any kind, where it placed a stop of its own.
    pub or_stopped: bool,
    /// Only such as made a lot.
    pub made_lots: bool,
    /// At this place; what has no place of its own by where its packs lie.
    pub place: Option<i32>,
    /// By this person.
    pub by: Option<&'a str>,
    /// That made, touched or read this lot, or placed a stop on it.
    pub lot: Option<i32>,
    /// After this one.
    pub after: Option<(NaiveDateTime, i32)>,
}

/// The deeds that fit, in the order of their times.
///
/// # Errors
/// The database is away.
pub fn deeds(conn: &mut Conn, sought: &DeedSearch<'_>, limit: i64) -> Result<Vec<DeedRow>> {
    let mut query = deeds::table
        .filter(deeds::at.ge(sought.from).and(deeds::at.lt(sought.until)))
        .order((deeds::at, deeds::id))
        .limit(limit)
        .select(DeedRow::as_select())
        .into_boxed();
    let kinds = sought.kinds.iter().map(|kind| kind.as_str());
    let kinds: Vec<&str> = kinds.collect();
    query = match sought.or_stopped {
        true => {
            let own = stops::table.filter(
                stops::deed_id
                    .eq(deeds::id)
                    .and(stops::root_id.eq(stops::id)),
            );
            query.filter(deeds::kind.eq_any(kinds).or(exists(own)))
        }
        false => query.filter(deeds::kind.eq_any(kinds)),
    };
    if sought.made_lots {
        query = query.filter(exists(lots::table.filter(lots::deed_id.eq(deeds::id))));
    }
    if let Some(place) = sought.place {
        let lay_there = pack_events::table
            .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
            .filter(
                pack_events::deed_id
                    .eq(deeds::id)
                    .and(packs::place_id.eq(place)),
            );
        query = query.filter(
            deeds::place_id
                .eq(place)
                .assume_not_null()
                .or(deeds::place_id.is_null().and(exists(lay_there))),
        );
    }
    if let Some(by) = sought.by {
        query = query.filter(deeds::person.eq(by));
    }
    if let Some(lot) = sought.lot {
        let made = lots::table.filter(lots::id.eq(lot).and(lots::deed_id.eq(deeds::id)));
        let touched = pack_events::table.filter(
            pack_events::lot_id
                .eq(lot)
                .and(pack_events::deed_id.eq(deeds::id)),
        );
        let read = measurements::table.filter(
            measurements::lot_id
                .eq(lot)
                .and(measurements::deed_id.eq(deeds::id)),
        );
        let stopped = stops::table.filter(stops::lot_id.eq(lot).and(stops::deed_id.eq(deeds::id)));
        query = query.filter(
            exists(made)
                .or(exists(touched))
                .or(exists(read))
                .or(exists(stopped)),
        );
    }
    if let Some((at, id)) = sought.after {
        query = query.filter(deeds::at.gt(at).or(deeds::at.eq(at).and(deeds::id.gt(id))));
    }
    Ok(query.load(conn)?)
}
