//! The timetable: a thread of the service makes a copy every so often, and knows when one is late.

use super::keep::Keeping;
use super::key::Key;
use super::make;
use crate::app::App;
use crate::pulse;
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use std::path::PathBuf;
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::Duration;
use store::Conn;
use store::copied::{self, COPY, CopyRow, DRILL};
use store::record_lease::{self, LeaseRow};

/// How often it is looked whether one is due; at every which tick.
const TICK: Duration = Duration::from_millis(500);
const LOOK_EVERY: u32 = 4;
/// After one that failed it is tried again so soon.
const AGAIN: TimeDelta = TimeDelta::minutes(10);
/// A copy takes time, and a machine is switched off over night: so much is not late yet, at the most.
const GRACE: TimeDelta = TimeDelta::hours(6);
/// A copy is to be tried once a quarter (common practice, no source).
const TRIED_EVERY: TimeDelta = TimeDelta::days(92);

/// When copies are made, and what becomes of them.
#[derive(Debug, Clone)]
pub struct Timetable {
    /// The folder that they go into.
    pub folder: PathBuf,
    /// How long from one to the next.
    pub every: TimeDelta,
    /// What they are locked with.
    pub key: Option<Key>,
    /// Which are kept.
    pub keeping: Keeping,
}

/// What is known of the copies of a record.
#[derive(Debug, Clone, Default)]
pub struct Known {
    /// The last good copy.
    pub last: Option<CopyRow>,
    /// The last trial that was good.
    pub drill: Option<CopyRow>,
    /// The last of all copies, where it failed.
    pub failed: Option<CopyRow>,
    /// The last of all trials, where it failed.
    pub drill_failed: Option<CopyRow>,
    /// Where the record is, and since when.
    pub lease: Option<LeaseRow>,
}

/// How it stands with the copies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// No timetable is set up.
    Off,
    /// As the timetable says.
    OnTime,
    /// The last good one is too long ago.
    Late,
    /// The last try failed.
    Failed,
}

impl Standing {
    /// As a program reads it.
    pub fn as_str(self) -> &'static str {
        match self {
            Standing::Off => "off",
            Standing::OnTime => "on-time",
            Standing::Late => "late",
            Standing::Failed => "failed",
        }
    }
}

impl Known {
    /// What the record knows.
    ///
    /// # Errors
    /// The database is away.
    pub fn read(conn: &mut Conn) -> store::Result<Known> {
        let rows = copied::last(conn, 100)?;
        let newest = |what: &str| rows.iter().find(|row| row.what == what);
        let failed = |what: &str| newest(what).filter(|row| row.trouble.is_some()).cloned();
        // Most often it is among the last ones.
        let good = |what: &str| {
            let mut of = rows.iter().filter(|row| row.what == what);
            of.find(|row| row.trouble.is_none()).cloned()
        };
        let all = rows.len() < 100;
        let mut older = |what: &str, found: Option<CopyRow>| match found {
            None if !all => copied::last_good(conn, what),
            found => Ok(found),
        };
        Ok(Known {
            failed: failed(COPY),
            drill_failed: failed(DRILL),
            last: older(COPY, good(COPY))?,
            drill: older(DRILL, good(DRILL))?,
            lease: record_lease::last(conn)?,
        })
    }

    /// Since when the record is where it is.
    fn since(&self) -> Option<NaiveDateTime> {
        self.lease.as_ref().map(|lease| lease.at)
    }

    /// How it stands now.
    pub fn standing(&self, timetable: Option<&Timetable>, now: DateTime<Utc>) -> Standing {
        let Some(timetable) = timetable else {
            return match self.failed {
                Some(_) => Standing::Failed,
                None => Standing::Off,
            };
        };
        let begun = self.last.as_ref().map(|row| row.at).max(self.since());
        let grace = (timetable.every / 4).min(GRACE);
        let is_late = begun.is_some_and(|at| now.naive_utc() - at > timetable.every + grace);
        match (is_late, &self.failed) {
            (true, _) => Standing::Late,
            (false, Some(_)) => Standing::Failed,
            (false, None) => Standing::OnTime,
        }
    }

    /// Has nobody tried a copy for too long?
    pub fn is_untried(&self, timetable: Option<&Timetable>, now: DateTime<Utc>) -> bool {
        let since = self.drill.as_ref().map(|row| row.at).or(self.since());
        timetable.is_some() && since.is_some_and(|at| now.naive_utc() - at > TRIED_EVERY)
    }

    /// Is a copy to be made now?
    fn is_due(&self, timetable: &Timetable, now: DateTime<Utc>) -> bool {
        let after = |row: &Option<CopyRow>, time: TimeDelta| {
            let at = row.as_ref().map(|row| row.at);
            at.is_none_or(|at| now.naive_utc() - at >= time)
        };
        after(&self.last, timetable.every) && after(&self.failed, AGAIN.min(timetable.every))
    }
}

/// What the service does about copies.
#[derive(Debug, Default)]
pub struct Copying {
    /// The timetable, if one is set up.
    pub timetable: Option<Timetable>,
    /// What was known a moment ago.
    seen: Mutex<Known>,
}

impl Copying {
    /// What was known a moment ago, without asking the record.
    pub fn seen(&self) -> Known {
        let seen = self.seen.lock();
        seen.unwrap_or_else(PoisonError::into_inner).clone()
    }

    fn look(&self, app: &App) -> Option<Known> {
        let known = app.store.read(Known::read).ok()?;
        let mut seen = self.seen.lock().unwrap_or_else(PoisonError::into_inner);
        seen.clone_from(&known);
        Some(known)
    }
}

/// Makes copies by the timetable until the service ends.
pub fn keep_up(app: &Arc<App>) {
    let app = app.clone();
    let started = thread::Builder::new().name("copies".into()).spawn(move || {
        // Whoever stands at the counter comes first.
        let _ = rustix::process::nice(10);
        let mut ticks = 0_u32;
        while !app.bell.closing() {
            if ticks.is_multiple_of(LOOK_EVERY) {
                turn(&app);
            }
            ticks = ticks.wrapping_add(1);
            thread::sleep(TICK);
        }
    });
    if let Err(error) = started {
        tracing::error!("nobody makes copies: {error}");
    }
}

fn turn(app: &App) {
    let Some(known) = app.copying.look(app) else {
        return;
    };
    let now = app.now();
    let timetable = app.copying.timetable.as_ref();
    // A copy by a wrong clock would be the newest for years.
    let due = timetable.filter(|timetable| known.is_due(timetable, now));
    let Some(timetable) = due.filter(|_| pulse::clock_doubt().is_none()) else {
        return;
    };
    let (folder, key) = (&timetable.folder, timetable.key.as_ref());
    match make::make(&app.store, folder, key, &timetable.keeping, now) {
        Ok(made) => tracing::info!("a copy was made: {}", made.path.display()),
        Err(trouble) => tracing::error!("no copy was made: {}", trouble.says),
    }
    app.copying.look(app);
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hours: i64) -> DateTime<Utc> {
        let begin: DateTime<Utc> = "2026-06-26T10:00:00Z".parse().unwrap();
        begin + TimeDelta::hours(hours)
    }

    fn row(hours: i64) -> Option<CopyRow> {
        let at = at(hours).naive_utc();
        Some(CopyRow {
            at,
            ..CopyRow::default()
        })
    }

    fn lease(hours: i64) -> Option<LeaseRow> {
        Some(LeaseRow {
            id: 1,
            mark: Vec::new(),
            at: at(hours).naive_utc(),
            medium: String::new(),
            place: String::new(),
            why: record_lease::MADE.into(),
        })
    }

    fn daily() -> Timetable {
        Timetable {
            folder: "copies".into(),
            every: TimeDelta::days(1),
            key: None,
            keeping: Keeping::default(),
        }
    }

    fn check(known: &Known, hours: i64, standing: Standing, due: bool) {
        let timetable = daily();
        assert_eq!(known.standing(Some(&timetable), at(hours)), standing);
        assert_eq!(known.is_due(&timetable, at(hours)), due);
    }

    #[test]
    fn a_copy_is_due_once_a_day_and_late_some_hours_later() {
        let mut known = Known {
            lease: lease(0),
            ..Known::default()
        };
        check(&known, 0, Standing::OnTime, true);
        check(&known, 31, Standing::Late, true);
        known.last = row(0);
        check(&known, 23, Standing::OnTime, false);
        check(&known, 24, Standing::OnTime, true);
        check(&known, 31, Standing::Late, true);
        known.failed = row(24);
        check(&known, 24, Standing::Failed, false);
        check(&known, 25, Standing::Failed, true);
        check(&known, 31, Standing::Late, true);
        assert_eq!(known.standing(None, at(31)), Standing::Failed);
        known.failed = None;
        assert_eq!(known.standing(None, at(31)), Standing::Off);
    }

    #[test]
    fn a_record_that_was_just_moved_has_a_day_for_its_first_copy_there() {
        let known = Known {
            last: row(-400),
            lease: lease(0),
            ..Known::default()
        };
        check(&known, 1, Standing::OnTime, true);
    }

    #[test]
    fn a_copy_is_tried_once_a_quarter() {
        let known = |drill, since| Known {
            drill,
            lease: lease(since),
            ..Known::default()
        };
        let (timetable, quarter) = (daily(), 92 * 24);
        let untried = |known: &Known, now| known.is_untried(Some(&timetable), at(now));
        assert!(!untried(&known(None, 0), quarter));
        assert!(untried(&known(None, 0), quarter + 1));
        assert!(!untried(&known(row(100), 0), quarter + 1));
        assert!(!known(None, 0).is_untried(None, at(quarter + 1)));
    }
}
