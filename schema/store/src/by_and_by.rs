//! A large file is sent to the disk by and by while it is filled.

use std::sync::mpsc::{self, RecvTimeoutError};
use std::thread;
use std::time::Duration;

/// How often what was written meanwhile is sent to the disk.
const EVERY: Duration = Duration::from_millis(25);

/// Does something that fills a file, while `send` sends what is in it to the disk again and again: sent all at once at
/// the end, whatever anybody records would wait until all of it is written.
pub fn by_and_by<T>(send: impl Fn() + Send, fill: impl FnOnce() -> T) -> T {
    thread::scope(|scope| {
        let (filled, until) = mpsc::channel::<()>();
        scope.spawn(move || {
            while until.recv_timeout(EVERY) == Err(RecvTimeoutError::Timeout) {
                send();
            }
        });
        let made = fill();
        drop(filled);
        made
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicU32, Ordering};

    #[test]
    fn it_is_sent_while_it_is_filled_and_no_longer() {
        let sent = AtomicU32::new(0);
        let send = || {
            sent.fetch_add(1, Ordering::Relaxed);
        };
        let made = by_and_by(send, || {
            thread::sleep(4 * EVERY);
            7
        });
        let after = sent.load(Ordering::Relaxed);
        assert!(made == 7 && after > 0, "{made}, sent {after} times");
        thread::sleep(2 * EVERY);
        assert_eq!(sent.load(Ordering::Relaxed), after);
    }
}
