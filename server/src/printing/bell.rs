//! What wakes those who print: rung when labels were asked for, and when the service ends.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// A bell that many wait for.
#[derive(Debug, Default)]
pub struct Bell {
    rung: Mutex<Rung>,
    wakes: Condvar,
}

#[derive(Debug, Default, Clone, Copy)]
struct Rung {
    times: u64,
    closing: bool,
}

impl Bell {
    /// Wakes all who wait.
    pub fn ring(&self) {
        self.lock().times += 1;
        self.wakes.notify_all();
    }

    /// Sends all home, for good.
    pub fn close(&self) {
        self.lock().closing = true;
        self.wakes.notify_all();
    }

    /// How often it has rung: to be handed to [`Bell::wait`].
    pub fn times(&self) -> u64 {
        self.lock().times
    }

    /// Is everybody sent home?
    pub fn closing(&self) -> bool {
        self.lock().closing
    }

    /// Waits for a ring after the `heard`th, or for so long.
    pub fn wait(&self, heard: u64, at_most: Duration) {
        let rung = self.lock();
        let _ = self
            .wakes
            .wait_timeout_while(rung, at_most, |rung| rung.times == heard && !rung.closing)
            .unwrap_or_else(PoisonError::into_inner);
    }

    fn lock(&self) -> MutexGuard<'_, Rung> {
        self.rung.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
