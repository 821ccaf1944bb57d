//! The copies of the record: by which timetable, what came of the last ones, and in whose hands the record is.

use crate::app::App;
use crate::caller::Caller;
use crate::copies::says;
use crate::copies::timetable::{Known, Standing, Timetable};
use crate::error::Result;
use chrono::TimeDelta;
use chrono_tz::Tz;
use domain::moment::day_of;
use domain::says::Says;
use domain::today::CopiesDay;
use store::Conn;
use store::copied::{self, CopyRow};
use store::record_lease::{self, MOVED};

/// So many of the last ones are shown.
const MOST: i64 = 30;
/// So long it is told that the record was found elsewhere.
const MOVED_TOLD: TimeDelta = TimeDelta::days(7);

/// The copies of a record.
pub struct Copies<'a> {
    /// The timetable, if one is set up.
    pub timetable: Option<&'a Timetable>,
    /// How it stands.
    pub standing: Standing,
    /// Is a copy to be tried?
    pub is_untried: bool,
    /// What is known.
    pub known: Known,
    /// Which record it is.
    pub identity: Option<Vec<u8>>,
    /// What came of the last ones, the newest first.
    pub last: Vec<CopyRow>,
}

/// The copies.
///
/// # Errors
/// The database is away.
pub fn read<'a>(app: &'a Caller<'_>, conn: &mut Conn) -> Result<Copies<'a>> {
    let known = Known::read(conn)?;
    let timetable = app.copying.timetable.as_ref();
    Ok(Copies {
        standing: known.standing(timetable, app.now()),
        is_untried: known.is_untried(timetable, app.now()),
        timetable,
        known,
        identity: record_lease::identity(conn)?,
        last: copied::last(conn, MOST)?,
    })
}

/// What of it wants a hand today, as it was known a moment ago: the record is asked nothing for it.
pub fn today(app: &App, zone: Tz) -> CopiesDay {
    let known = app.copying.seen();
    let (timetable, now) = (app.copying.timetable.as_ref(), app.now());
    let day = |row: &CopyRow| day_of(row.at.and_utc(), zone);
    let why = |row: &CopyRow| {
        let sort = row.trouble.as_deref().unwrap_or_default();
        Says::from(says::of(sort))
    };
    let lease = known.lease.as_ref();
    let moved = lease.filter(|lease| lease.why == MOVED);
    CopiesDay {
        is_late: known.standing(timetable, now) == Standing::Late,
        is_untried: known.is_untried(timetable, now),
        last: known.last.as_ref().map(day),
        failed: known.failed.as_ref().map(why),
        tried: known.drill.as_ref().map(day),
        tried_in_vain: known.drill_failed.as_ref().map(why),
        moved: moved.is_some_and(|lease| now.naive_utc() - lease.at < MOVED_TOLD),
    }
}
