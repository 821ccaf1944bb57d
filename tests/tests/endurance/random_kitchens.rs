//! Random kitchens: hundreds of days of random deeds, good and bad, against the brute-force book.
//!
//! `GAMBREL_SEEDS` says how many; `GAMBREL_SEED` runs one. A failing seed is printed.

use crate::kitchen::Kitchen;
use std::sync::atomic::{AtomicU64, Ordering};
use stories::Engine;

const DEEDS: usize = 300;

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

fn run(engine: Engine, seeds: u64) {
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
                    let done = std::panic::catch_unwind(|| {
                        let mut kitchen = Kitchen::open(engine, seed);
                        for _ in 0..DEEDS {
                            kitchen.live();
                        }
                        kitchen.compare();
                    });
                    if let Err(why) = done {
                        eprintln!("seed {seed} failed on {engine:?}: run it alone with GAMBREL_SEED={seed}");
                        std::panic::resume_unwind(why);
                    }
                }
            });
        }
    });
}

#[test]
fn random_kitchens_on_sqlite() {
    run(Engine::Sqlite, 500);
}

#[test]
fn random_kitchens_on_postgres() {
    run(Engine::Postgres, 100);
}
