//! Sending a file to the disk little by little while it is filled: sent all at once at the end, whatever anybody records
//! would wait until all of it is written.

use std::io;
use std::sync::mpsc::{self, RecvTimeoutError};
use std::thread;
use std::time::Duration;

/// Does something that fills a file, and calls `send` every so often meanwhile, on a thread of its own. What `send` says
/// is left to whoever needs the file: a disk that fails tells them too.
pub fn gradually<T>(
    every: Duration,
    send: impl Fn() -> io::Result<()> + Send,
    fill: impl FnOnce() -> T,
) -> T {
    thread::scope(|scope| {
        let (filled, until) = mpsc::channel::<()>();
        scope.spawn(move || {
            while until.recv_timeout(every) == Err(RecvTimeoutError::Timeout) {
                let _ = send();
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
    fn what_is_filled_is_sent_meanwhile_and_the_answer_comes_back() {
        let sent = AtomicU32::new(0);
        let send = || {
            sent.fetch_add(1, Ordering::Relaxed);
            Err(io::Error::other("a disk that fails"))
        };
        let seen = gradually(Duration::from_millis(1), send, || {
            for _ in 0..5_000 {
                if sent.load(Ordering::Relaxed) < 2 {
                    thread::sleep(Duration::from_millis(1));
                }
            }
            sent.load(Ordering::Relaxed)
        });
        assert!(seen >= 2, "sent {seen} times");
    }
}
