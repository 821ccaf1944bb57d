//! Is the clock right? It is doubted when it jumps, ahead or back: against the machine's own count of time while
//! the service runs, against the last deed and the file's times at the start, against the database's clock.
//! While it is in doubt no deed is taken and no verdict says sell; a manager says that it is right.

use crate::app::App;
use crate::error::{Error, Result};
use crate::problems::ServiceSays;
use crate::world::{Clock, awake};
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use domain::limits::CLOCK_SLACK_MINUTES;
use std::sync::{Mutex, PoisonError};
use std::time::Duration;
use store::clock::{ClockWord, Recorded};
use store::pulse::Watch;
use store::{Conn, deeds};

/// So long nobody does anything in a kitchen that is open.
const SILENT: TimeDelta = TimeDelta::days(31);
/// How far two clocks may differ, and the clock may be set ahead while the service runs.
const LEAP: TimeDelta = TimeDelta::minutes(10);

/// What is known of the clock.
#[derive(Debug, Default)]
pub struct Clockwork(Mutex<State>);

#[derive(Debug, Default)]
struct State {
    /// The clock, and how long the machine had run, when that was looked at first or a manager spoke.
    since: Option<(DateTime<Utc>, Duration)>,
    /// What a manager said last.
    word: Option<ClockWord>,
    /// How far ahead of the database's clock a manager has said that ours is right.
    database_ahead: TimeDelta,
    /// Why it is in doubt.
    doubt: Option<ServiceSays>,
}

impl Clockwork {
    fn state(&self) -> std::sync::MutexGuard<'_, State> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Why the clock is in doubt, if it is.
    pub fn doubt(&self) -> Option<ServiceSays> {
        self.state().doubt.clone()
    }

    /// The latest time that the record is sure of, as far as managers have said what was wrong.
    pub fn sure(&self, recorded: &Recorded) -> Option<NaiveDateTime> {
        recorded.sure(self.state().word.as_ref())
    }

    /// Now, but never before what the record is sure of: of several services on one record, the clock of one may be
    /// some seconds behind another's, and what is sold after a hold must not come before it.
    pub fn not_before(&self, now: DateTime<Utc>, latest: Option<NaiveDateTime>) -> DateTime<Utc> {
        let newest = None;
        let last = self.sure(&Recorded { latest, newest });
        last.map_or(now, |last| now.max(last.and_utc()))
    }

    /// Looks at the clock beside what the watch has just seen.
    pub fn look(&self, app: &App, watch: &Watch) {
        let mut state = self.state();
        let found = match app.clock {
            // The demo's own clock is part of its story.
            Clock::Shifted(_) | Clock::Stopped(_) => None,
            Clock::Machine => state.found(app.now(), watch),
        };
        if state.doubt.is_none() && found.is_some() {
            tracing::error!(
                "the clock is in doubt: no deed is taken until a manager says that it is right"
            );
        }
        state.doubt = found;
    }
}

impl State {
    fn found(&mut self, now: DateTime<Utc>, watch: &Watch) -> Option<ServiceSays> {
        let (told, ran) = *self.since.get_or_insert((now, awake()));
        let shown = now.naive_utc();
        let passed = TimeDelta::from_std(awake().saturating_sub(ran)).unwrap_or_default();
        let leap = now - told - passed;
        if leap > LEAP {
            let minutes = usize::try_from(leap.num_minutes()).unwrap_or_default();
            return Some(ServiceSays::ClockLeapt {
                now: shown,
                minutes,
            });
        }
        if leap < -LEAP {
            let minutes = usize::try_from(-leap.num_minutes()).unwrap_or_default();
            return Some(ServiceSays::ClockSetBack {
                now: shown,
                minutes,
            });
        }
        if let Some(theirs) = watch.database_now()
            && shown - theirs > LEAP + self.database_ahead
        {
            return Some(ServiceSays::ClockAheadOfDatabase {
                now: shown,
                database: theirs,
            });
        }
        let written = watch
            .file_written_at()
            .map(|at| DateTime::<Utc>::from(at).naive_utc());
        let last = watch.recorded().latest?;
        let spoken = self.word.as_ref().map(|word| word.at);
        let seen = [Some(last), written, spoken].into_iter().flatten().max()?;
        // Where the database has a clock, that one has been asked.
        if watch.database_now().is_none() && shown - seen > SILENT {
            return Some(ServiceSays::ClockFarAhead { now: shown, last });
        }
        None
    }
}

/// A manager says that the clock is right: the kitchen works on, whatever was recorded ahead.
///
/// # Errors
/// The database is away.
pub fn set_right(app: &App, person: &str, why: &str) -> Result<()> {
    let now = app.now();
    let slack = TimeDelta::minutes(CLOCK_SLACK_MINUTES);
    let word = app.store.write(|tx| {
        let last = deeds::last_recorded_at(tx.conn)?;
        let word = ClockWord {
            id: 0,
            at: now.naive_utc(),
            ahead_until: last.filter(|last| *last > (now + slack).naive_utc()),
            person: person.to_owned(),
            why: why.to_owned(),
            last_deed: deeds::last(tx.conn)?,
        };
        store::clock::keep(tx, &word)?;
        Ok::<_, Error>(word)
    })?;
    let mut state = app.clockwork.state();
    state.word = Some(word);
    state.since = Some((now, awake()));
    if let Some(ServiceSays::ClockAheadOfDatabase { now, database }) = state.doubt {
        state.database_ahead = now - database;
    }
    state.doubt = None;
    Ok(())
}

impl App {
    /// Reads what managers have said of the clock.
    ///
    /// # Errors
    /// The database is away.
    pub fn learn_clock(&self, conn: &mut Conn) -> store::Result<()> {
        let word = store::clock::last(conn)?;
        self.clockwork.state().word = word;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(minutes: i64, expected: Option<&str>) {
        let now = Clock::Machine.now();
        let mut state = State {
            since: Some((now - TimeDelta::minutes(minutes), awake())),
            ..State::default()
        };
        let folder = tempfile::tempdir().unwrap();
        let address = store::Address::Sqlite(folder.path().join("kitchen.db"));
        let store = store::Store::open(&address, true, 1).unwrap();
        let found = state.found(now, &store.watch());
        let found = found.map(|says| domain::says::Says::from(says).key().to_owned());
        assert_eq!(found.as_deref(), expected, "{minutes}");
    }

    #[test]
    fn a_clock_that_is_set_while_the_service_runs_is_doubted_either_way() {
        check(0, None);
        check(9, None);
        check(11, Some("service-clock-leapt"));
        check(-9, None);
        check(-30, Some("service-clock-set-back"));
    }
}
