//! Something random, for many seeds, on two threads. `GAMBREL_SEEDS` says how many; `GAMBREL_SEED` runs one.
//! A failing seed is printed.

use std::sync::atomic::{AtomicU64, Ordering};
use stories::Engine;

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// Was one seed asked for, to be looked at?
pub fn is_one() -> bool {
    number("GAMBREL_SEED").is_some()
}

/// Goes through seeds.
pub fn each(
    engine: Engine,
    seeds: u64,
    one: impl Fn(Engine, u64) + Sync + std::panic::RefUnwindSafe,
) {
    let seeds = number("GAMBREL_SEEDS").unwrap_or(seeds);
    let (first, last) = number("GAMBREL_SEED").map_or((0, seeds), |seed| (seed, seed + 1));
    let next = AtomicU64::new(first);
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                loop {
                    let seed = next.fetch_add(1, Ordering::Relaxed);
                    if seed >= last {
                        break;
                    }
                    if let Err(why) = std::panic::catch_unwind(|| one(engine, seed)) {
                        eprintln!("seed {seed} failed on {engine:?}: run it alone with GAMBREL_SEED={seed}");
                        std::panic::resume_unwind(why);
                    }
                }
            });
        }
    });
}
