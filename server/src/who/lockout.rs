//! Wrong PINs slow down: by person and device, so that nobody locks somebody else out, and nobody for ever.

use crate::world::Stopwatch;
use std::collections::HashMap;
use std::sync::{Mutex, PoisonError};
use std::time::Duration;

/// Wrong PINs that are forgiven.
const FREE: u32 = 3;
/// The longest anybody waits.
const LONGEST: Duration = Duration::from_secs(300);
/// How many pairs of person and device are remembered; the table is not to grow with whoever tries.
const MOST: usize = 10_000;

/// Who has tried, and how often in vain.
#[derive(Default)]
pub struct Lockout(Mutex<HashMap<(i32, String), (u32, Stopwatch)>>);

impl Lockout {
    /// How long somebody has still to wait before the next try.
    pub fn wait(&self, person: i32, device: &str) -> Option<Duration> {
        let tried = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let (times, last) = tried.get(&(person, device.to_owned()))?;
        pause(*times)
            .checked_sub(last.elapsed())
            .filter(|left| !left.is_zero())
    }

    /// A wrong PIN.
    pub fn failed(&self, person: i32, device: &str) {
        let mut tried = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if tried.len() >= MOST {
            tried.retain(|_, (times, last)| last.elapsed() < pause(*times));
        }
        let one = tried
            .entry((person, device.to_owned()))
            .or_insert_with(|| (0, Stopwatch::start()));
        *one = (one.0 + 1, Stopwatch::start());
    }

    /// A right one.
    pub fn passed(&self, person: i32, device: &str) {
        let mut tried = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        tried.remove(&(person, device.to_owned()));
    }
}

/// The pause after so many wrong PINs: 2, 4, 8 seconds and on, at most five minutes.
fn pause(times: u32) -> Duration {
    match times.checked_sub(FREE) {
        None | Some(0) => Duration::ZERO,
        Some(more) => Duration::from_secs(1 << more.min(9)).min(LONGEST),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pause_grows_and_ends() {
        let pauses: Vec<u64> = (0..8)
            .chain([40])
            .map(|times| pause(times).as_secs())
            .collect();
        assert_eq!(pauses, [0, 0, 0, 0, 2, 4, 8, 16, 300]);
    }

    #[test]
    fn whoever_tries_on_one_device_locks_nobody_out_on_another() {
        let lockout = Lockout::default();
        for _ in 0..10 {
            lockout.failed(1, "there");
        }
        assert!(lockout.wait(1, "there").is_some());
        assert!(lockout.wait(1, "here").is_none() && lockout.wait(2, "there").is_none());
        lockout.passed(1, "there");
        assert!(lockout.wait(1, "there").is_none());
    }
}
