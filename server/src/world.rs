//! The one place that owns the clock, chance, and the machine's time zone.

use crate::problems::ServiceSays;
use chrono::{DateTime, SubsecRound, TimeDelta, Utc};
use chrono_tz::Tz;
use std::time::{Duration, Instant};

/// The clock that a service runs by.
#[derive(Debug, Clone, Copy)]
pub enum Clock {
    /// The machine's.
    Machine,
    /// The demo's: it runs on from a moment of the story.
    Shifted(TimeDelta),
    /// The demo's clock, which stands still while its story is recorded.
    Stopped(DateTime<Utc>),
}

impl Clock {
    /// A clock that stands at `start` now, and runs on.
    pub fn starting_at(start: DateTime<Utc>) -> Clock {
        Clock::Shifted(start - machine_now())
    }

    /// Now, to the microsecond: what both databases keep.
    pub fn now(&self) -> DateTime<Utc> {
        let now = match self {
            Clock::Machine => machine_now(),
            Clock::Shifted(by) => machine_now() + *by,
            Clock::Stopped(at) => *at,
        };
        now.trunc_subsecs(6)
    }

    /// Why this clock cannot be right by itself, if it cannot: no machine is older than its program.
    pub fn impossible(&self) -> Option<ServiceSays> {
        let built = built_at();
        match self {
            Clock::Machine if machine_now() < built => Some(ServiceSays::ClockBeforeBuild {
                now: self.now().naive_utc(),
            }),
            _ => None,
        }
    }
}

fn built_at() -> DateTime<Utc> {
    let seconds = env!("GAMBREL_BUILT_AT").parse().unwrap_or(0);
    DateTime::from_timestamp(seconds, 0).unwrap_or_default()
}

#[allow(
    clippy::disallowed_methods,
    reason = "this is the place that owns the clock"
)]
fn machine_now() -> DateTime<Utc> {
    Utc::now()
}

/// Measures how long something takes, whatever the clock on the wall does meanwhile.
#[derive(Debug, Clone, Copy)]
pub struct Stopwatch(Instant);

impl Stopwatch {
    /// Starts one.
    #[allow(
        clippy::disallowed_methods,
        reason = "this is the place that owns the clock"
    )]
    pub fn start() -> Stopwatch {
        Stopwatch(Instant::now())
    }

    /// The time since.
    pub fn elapsed(&self) -> Duration {
        self.0.elapsed()
    }

    /// The milliseconds since.
    pub fn milliseconds(&self) -> f64 {
        self.0.elapsed().as_secs_f64() * 1e3
    }
}

/// How long the machine has run, asleep or not: no one sets this count.
pub fn awake() -> Duration {
    let count = rustix::time::clock_gettime(rustix::time::ClockId::Boottime);
    let seconds = u64::try_from(count.tv_sec).unwrap_or_default();
    Duration::new(seconds, u32::try_from(count.tv_nsec).unwrap_or_default())
}

/// Bytes that nobody can guess: secrets of sessions and tokens, salt, words that sign in once.
///
/// # Errors
/// The machine has no source of chance.
pub fn chance<const N: usize>() -> Result<[u8; N], String> {
    let mut bytes = [0; N];
    getrandom::fill(&mut bytes).map_err(|error| error.to_string())?;
    Ok(bytes)
}

/// The machine's time zone, by its name; UTC where it has none.
pub fn machine_zone() -> Tz {
    iana_time_zone::get_timezone()
        .ok()
        .and_then(|name| name.parse().ok())
        .unwrap_or(Tz::UTC)
}
