//! What the benches share: medians of two works in turn, a table, and a load of many connections.

pub mod load;

use std::time::{Duration, Instant};

/// `usual`, or `smallest` where the bench is run with `--smallest`: then it only shows that it still
/// runs, and its figures mean nothing.
pub fn size<T>(usual: T, smallest: T) -> T {
    if std::env::args().any(|arg| arg == "--smallest") {
        smallest
    } else {
        usual
    }
}

/// How long something takes once.
pub fn once<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    std::hint::black_box(work());
    start.elapsed()
}

/// The one in the middle.
pub fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

/// The medians of two works that are done in turn, so that a busy machine is busy for both. Each is
/// done once before, unmeasured.
pub fn in_turn<A, B>(
    rounds: usize,
    mut one: impl FnMut() -> A,
    mut other: impl FnMut() -> B,
) -> (Duration, Duration) {
    once(&mut one);
    once(&mut other);
    let (mut ones, mut others) = (Vec::with_capacity(rounds), Vec::with_capacity(rounds));
    for _ in 0..rounds {
        ones.push(once(&mut one));
        others.push(once(&mut other));
    }
    (median(ones), median(others))
}

/// Milliseconds, with as many digits as tell something.
pub fn ms(time: Duration) -> String {
    let ms = time.as_secs_f64() * 1e3;
    match ms {
        ms if ms < 1.0 => format!("{ms:.3}"),
        ms if ms < 10.0 => format!("{ms:.2}"),
        _ => format!("{ms:.1}"),
    }
}

/// How many times `floor` something took.
pub fn times(ours: Duration, floor: Duration) -> String {
    format!("{:.2}", ours.as_secs_f64() / floor.as_secs_f64())
}

/// Prints a row of a table: the first cell is words, the others are numbers.
pub fn row(cells: &[&str]) {
    let (words, numbers) = cells.split_first().expect("a row has cells");
    let numbers: String = numbers.iter().map(|cell| format!(" {cell:>12}")).collect();
    println!("{words:<34}{numbers}");
}
