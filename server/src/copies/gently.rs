//! Copying so that those who pack do not feel it: the processor is theirs first, and the disk is never kept busy for long.

use super::prove::SIDE_BY_SIDE;
use rustix::process::setpriority_process;
use std::fs::File;
use std::panic;
use std::path::Path;
use std::thread;
use std::time::Duration;
use store::gradually::gradually;

/// How often what was written meanwhile is sent to the disk: it lies in a row, so it may be some megabytes.
const EVERY: Duration = Duration::from_millis(25);
/// As the system counts: 0 is like everybody, 19 is whenever nobody else wants to.
const BEHIND: i32 = 15;

/// Does something on a thread of its own, which goes behind all others together with those that it starts. Nothing that
/// others wait for belongs in there: they would wait for the slowest.
pub fn behind_others<T: Send>(work: impl FnOnce() -> T + Send) -> T {
    thread::scope(|scope| {
        let behind = scope.spawn(|| {
            go_behind();
            work()
        });
        behind
            .join()
            .unwrap_or_else(|panic| panic::resume_unwind(panic))
    })
}

/// The thread goes behind all others, for good.
pub fn go_behind() {
    // Where the system does not let us, it is only slower for the others.
    let _ = setpriority_process(None, BEHIND);
}

/// How many halves of a record are proven at once behind others: one processor is left to those who pack. Where all were
/// busy, a deed had to wait for a third of a second now and then, however far behind them the others went.
pub fn halves_at_once() -> u32 {
    match thread::available_parallelism() {
        Ok(processors) if processors.get() > 2 => SIDE_BY_SIDE,
        _ => 1,
    }
}

/// Does something that fills a file, which is sent to the disk little by little meanwhile.
pub fn settling<T>(path: &Path, fill: impl FnOnce() -> T) -> T {
    // Not there yet, or a disk that fails: whoever fills it, or gives it its name, notices.
    gradually(EVERY, || File::open(path)?.sync_data(), fill)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    #[test]
    fn what_is_filled_is_there_and_the_answer_comes_back() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("copy");
        let answer = settling(&path, || {
            fs::write(&path, "half").unwrap();
            thread::sleep(3 * EVERY);
            fs::write(&path, "whole").unwrap();
            7
        });
        assert_eq!(
            (answer, fs::read_to_string(&path).unwrap().as_str()),
            (7, "whole")
        );
    }

    #[test]
    fn what_goes_behind_others_takes_its_own_along_and_nobody_else() {
        use rustix::process::getpriority_process;
        let before = getpriority_process(None).unwrap();
        let behind = behind_others(|| {
            let its_own = thread::spawn(|| getpriority_process(None).unwrap());
            (getpriority_process(None).unwrap(), its_own.join().unwrap())
        });
        assert_eq!(behind, (BEHIND, BEHIND));
        assert_eq!(getpriority_process(None).unwrap(), before);
    }
}
