//! The pulse of the record: a thread of its own asks it twice a second how it is. Whoever waits for a
//! database that hangs is told so, and `/api/health` tells what was found without asking anybody.

use crate::app::App;
use crate::problems::ServiceSays;
use crate::world::Stopwatch;
use domain::says::Says;
use rustix::process::{Resource, getrlimit};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, LazyLock, Mutex, PoisonError};
use std::thread;
use std::time::Duration;
use store::Error;
use store::db::MayRetry;
use store::pulse::Watch;

/// How often the record is asked.
const EVERY: Duration = Duration::from_millis(500);
/// At every which beat people are read anew.
const PEOPLE_EVERY: u32 = 4;
/// A beat that is so late means that the database hangs.
const LATE_MS: u64 = 1_500;
/// So little room on the disk is none: the next deeds would find it full.
const LEAST_ROOM: u64 = 4 << 20;

/// A file that may not grow by so much takes no large deed.
const LEAST_GROWTH: u64 = 256 << 10;

static PULSE: LazyLock<Pulse> = LazyLock::new(|| Pulse {
    since: Stopwatch::start(),
    last_ms: AtomicU64::new(0),
    beats: AtomicBool::new(false),
    trouble: Mutex::new(None),
    doubt: Mutex::new(None),
});

struct Pulse {
    since: Stopwatch,
    /// When the record last answered, in milliseconds of the process.
    last_ms: AtomicU64,
    /// Does anybody feel it?
    beats: AtomicBool,
    /// What was found last.
    trouble: Mutex<Option<Trouble>>,
    /// Why the clock is in doubt.
    doubt: Mutex<Option<ServiceSays>>,
}

/// What keeps the record from taking deeds.
#[derive(Debug, Clone)]
pub struct Trouble {
    /// In a word: `database`, `disk`, `read-only` …
    pub status: &'static str,
    /// In a sentence.
    pub why: Says,
}

impl Trouble {
    /// What an error of the store means.
    pub fn of(error: &Error) -> Trouble {
        let (status, why) = match error {
            Error::Full(_) => ("disk-full", ServiceSays::DatabaseFull),
            Error::Disk(_) => ("disk", ServiceSays::DatabaseDisk),
            Error::ReadOnly(_) => ("read-only", ServiceSays::DatabaseReadOnly),
            Error::Gone(_) => ("gone", ServiceSays::DatabaseGone),
            Error::Emptied(_) => ("emptied", ServiceSays::DatabaseEmptied),
            Error::Locked(_) => ("locked", ServiceSays::DatabaseLocked),
            Error::Damaged(_) | Error::Broken(_) | Error::Newer(_) => {
                ("damaged", ServiceSays::Damaged)
            }
            Error::Address(_) | Error::Away(_) | Error::Conflict(_) => {
                ("database", ServiceSays::DatabaseAway)
            }
        };
        let why = why.into();
        Trouble { status, why }
    }
}

/// Has the record not answered for too long?
pub fn is_late() -> bool {
    let pulse = &*PULSE;
    pulse.beats.load(Ordering::Relaxed)
        && pulse
            .now_ms()
            .saturating_sub(pulse.last_ms.load(Ordering::Relaxed))
            > LATE_MS
}

/// What is wrong with the record, as far as it was felt.
pub fn trouble() -> Option<Trouble> {
    if is_late() {
        return Some(Trouble::of(&Error::Away(String::new())));
    }
    let trouble = PULSE.trouble.lock();
    trouble.unwrap_or_else(PoisonError::into_inner).clone()
}

impl Pulse {
    fn now_ms(&self) -> u64 {
        u64::try_from(self.since.elapsed().as_millis()).unwrap_or(u64::MAX)
    }

    fn felt(&self, found: Option<Trouble>) {
        self.last_ms.store(self.now_ms(), Ordering::Relaxed);
        self.beats.store(true, Ordering::Relaxed);
        let mut trouble = self.trouble.lock().unwrap_or_else(PoisonError::into_inner);
        if trouble.as_ref().map(|trouble| trouble.status)
            != found.as_ref().map(|found| found.status)
        {
            match &found {
                Some(found) => tracing::error!("the record is unwell: {}", found.status),
                None => tracing::info!("the record is well again"),
            }
        }
        *trouble = found;
    }
}

/// Feels the pulse until the service ends; once before this returns.
pub fn feel(app: &Arc<App>) {
    let app = app.clone();
    let mut watch = app.store.watch();
    beat(&app, &mut watch, 1);
    let started = thread::Builder::new().name("pulse".into()).spawn(move || {
        let mut beats = 2;
        while !app.bell.closing() {
            thread::sleep(EVERY);
            beat(&app, &mut watch, beats);
            beats = beats.wrapping_add(1);
        }
    });
    if let Err(error) = started {
        tracing::error!("nobody feels the record's pulse: {error}");
        PULSE.beats.store(false, Ordering::Relaxed);
    }
}

fn beat(app: &App, watch: &mut Watch, nth: u32) {
    let mut found = watch.look().err().map(|error| Trouble::of(&error));
    // Another process may have signed somebody out, or set the clock right.
    if found.is_none() && nth.is_multiple_of(PEOPLE_EVERY) {
        let error = app.store.look(|conn| app.learn(conn)).err();
        found = error.and_then(|error| error.of_store().map(Trouble::of));
    }
    if found.is_none() && has_no_room(app) {
        found = Some(Trouble::of(&Error::Full(String::new())));
    }
    if found.is_none() {
        app.clockwork.look(app, watch);
        let doubt = app.clock_is_wrong(&watch.recorded());
        *PULSE.doubt.lock().unwrap_or_else(PoisonError::into_inner) = doubt;
    }
    PULSE.felt(found);
}

/// Why the clock is in doubt, if it is.
pub fn clock_doubt() -> Option<ServiceSays> {
    PULSE
        .doubt
        .lock()
        .unwrap_or_else(PoisonError::into_inner)
        .clone()
}

/// A manager has just said that the clock is right.
pub fn clock_is_right() {
    *PULSE.doubt.lock().unwrap_or_else(PoisonError::into_inner) = None;
}

/// Is the disk under the record as good as full, or may its files grow no more?
fn has_no_room(app: &App) -> bool {
    let store::Address::Sqlite(path) = app.store.address() else {
        return false;
    };
    let full = rustix::fs::statvfs(path.as_path())
        .is_ok_and(|disk| disk.f_bavail.saturating_mul(disk.f_frsize) < LEAST_ROOM);
    let longest = getrlimit(Resource::Fsize).current;
    let may_not_grow = longest.is_some_and(|longest| {
        let mut log = path.as_os_str().to_owned();
        log.push("-wal");
        let log = std::path::PathBuf::from(log);
        let mut lengths = [path.as_path(), &log].into_iter();
        lengths.any(|path| {
            let length = std::fs::metadata(path).map_or(0, |about| about.len());
            length.saturating_add(LEAST_GROWTH) > longest
        })
    });
    full || may_not_grow
}
