//! Log lines on their way out: a thread of their own writes them, and nobody waits for it.

use std::io::{self, Write};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender, sync_channel};
use std::thread;
use std::time::Duration;
use tracing_subscriber::fmt::MakeWriter;

/// How many lines may wait. Whoever reads standard error may have stopped; the kitchen goes on.
const WAITING: usize = 4_096;
/// How much is written at once.
const AT_ONCE: usize = 64 << 10;
/// How long the end of the program waits for the last lines.
const FAREWELL: Duration = Duration::from_secs(1);

enum LogLetter {
    Line(Vec<u8>),
    /// The last one; whoever sent it wants to know when it is out.
    End,
}

/// Where lines are handed in.
#[derive(Clone)]
pub struct Lines {
    letters: SyncSender<LogLetter>,
    lost: Arc<AtomicU64>,
}

/// Keeps the log going; when it is dropped, what waits is written.
pub struct LogGuard {
    letters: SyncSender<LogLetter>,
    ended: Receiver<()>,
}

/// Opens the way to standard error.
pub fn open() -> io::Result<(Lines, LogGuard)> {
    let (letters, waiting) = sync_channel(WAITING);
    let (tell, ended) = sync_channel(1);
    let lost = Arc::new(AtomicU64::new(0));
    let missed = lost.clone();
    thread::Builder::new().name("log".into()).spawn(move || {
        write(&waiting, &missed, &mut io::stderr());
        let _ = tell.send(());
    })?;
    let kept = LogGuard {
        letters: letters.clone(),
        ended,
    };
    Ok((Lines { letters, lost }, kept))
}

/// Writes what comes until the end. A log that nobody can read any more is no reason to stop.
fn write(waiting: &Receiver<LogLetter>, lost: &AtomicU64, out: &mut impl Write) {
    let mut text = Vec::new();
    let mut more = true;
    while more {
        let mut next = waiting.recv().ok();
        loop {
            match next {
                Some(LogLetter::Line(line)) => text.extend(line),
                Some(LogLetter::End) => more = false,
                // Nothing waits; or nobody is left to send anything.
                None => break,
            }
            if !more || text.len() >= AT_ONCE {
                break;
            }
            next = waiting.try_recv().ok();
        }
        more &= !text.is_empty();
        let lost = lost.swap(0, Ordering::Relaxed);
        if lost > 0 {
            text.extend(format!("{lost} lines of the log were not taken in time\n").bytes());
        }
        let _ = out.write_all(&text).and_then(|()| out.flush());
        text.clear();
    }
}

impl Write for Lines {
    /// A whole line, which is how they come.
    fn write(&mut self, line: &[u8]) -> io::Result<usize> {
        if self
            .letters
            .try_send(LogLetter::Line(line.to_vec()))
            .is_err()
        {
            self.lost.fetch_add(1, Ordering::Relaxed);
        }
        Ok(line.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

impl MakeWriter<'_> for Lines {
    type Writer = Lines;

    fn make_writer(&self) -> Lines {
        self.clone()
    }
}

impl Drop for LogGuard {
    fn drop(&mut self) {
        if self.letters.try_send(LogLetter::End).is_ok() {
            let _: Result<(), RecvTimeoutError> = self.ended.recv_timeout(FAREWELL);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_come_out_whole_and_in_order_and_lost_ones_are_counted() {
        let (letters, waiting) = sync_channel(3);
        let lost = Arc::new(AtomicU64::new(0));
        let mut lines = Lines { letters, lost };
        for line in ["one\n", "two\n", "three\n", "four\n"] {
            lines.write_all(line.as_bytes()).unwrap();
        }
        let lost = lines.lost.clone();
        drop(lines);
        let mut out = Vec::new();
        write(&waiting, &lost, &mut out);
        let told = String::from_utf8(out).unwrap();
        assert_eq!(
            told,
            "one\ntwo\nthree\n1 lines of the log were not taken in time\n"
        );
    }
}
