//! Random kitchens: hundreds of days of random deeds, good and bad, against the brute-force book.

use crate::kitchen::Kitchen;
use crate::seeds::each;
use stories::Engine;

const DEEDS: usize = 300;

fn live(engine: Engine, seed: u64) {
    let mut kitchen = Kitchen::open(engine, seed);
    for _ in 0..DEEDS {
        kitchen.live();
    }
    kitchen.compare();
}

#[test]
fn random_kitchens_on_sqlite() {
    each(Engine::Sqlite, 500, live);
}

#[test]
fn random_kitchens_on_postgres() {
    each(Engine::Postgres, 100, live);
}
