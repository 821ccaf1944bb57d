//! Forward and back through large records, each against hand-written SQL with the same columns, in
//! the same process over the same connection.
//!
//! `cargo bench -p stories --bench trace`. PostgreSQL too where `TEST_DATABASE_URL` names a server;
//! there up to `BENCH_POSTGRES_LOTS` lots (100000 if left out). Wanted: at most 1.3 times the floor,
//! and for each lot reached at a million at most 1.5 times that at ten thousand.

mod floor;
#[allow(dead_code, reason = "other benches use the rest of it")]
mod record;

use std::collections::HashMap;
use std::time::Duration;
use store::{Conn, trace};
use stories::Engine;
use stories::bench::{in_turn, ms, row, size as smaller, times};

fn main() {
    let most: usize = std::env::var("BENCH_POSTGRES_LOTS")
        .ok()
        .and_then(|most| most.parse().ok())
        .unwrap_or(100_000);
    for engine in record::engines() {
        println!("{engine:?}, medians; ours and the floor in turn");
        row(&[
            "", "lots", "reached", "floor ms", "ours ms", "times", "us/lot",
        ]);
        let mut each = HashMap::new();
        let usual: &[usize] = &[10_000, 100_000, 1_000_000];
        for &size in smaller(usual, &[2_000]) {
            if engine == Engine::Sqlite || size <= most {
                measure(engine, size, &mut each);
            }
        }
    }
}

/// `each` holds the microseconds for each lot reached in the smallest record.
fn measure(engine: Engine, size: usize, each: &mut HashMap<&'static str, f64>) {
    let folder = tempfile::tempdir().expect("a temporary folder can be made");
    let (app, grown) = record::grown(engine, folder.path(), size);
    let read = |work: &mut dyn FnMut(&mut Conn)| {
        app.store.look(|conn| -> store::Result<()> {
            work(conn);
            Ok(())
        })
    };
    read(&mut |conn| {
        for (what, start, rounds) in [
            ("forward from an animal", grown.animal, 101),
            ("forward from a spice", grown.spice, 51),
            ("forward from salt", grown.salt, 21),
        ] {
            let reached = trace::forward(conn, &[start]).expect("a trace").lots.len();
            assert_eq!(reached, floor::forward(conn, start).len());
            let conn = std::cell::RefCell::new(&mut *conn);
            let both = in_turn(
                rounds,
                || trace::forward(&mut conn.borrow_mut(), &[start]).expect("a trace"),
                || floor::forward(&mut conn.borrow_mut(), start),
            );
            print_row(what, grown.lots, reached, both, each);
        }
        let reached = floor::back(conn, grown.pack).len();
        let conn = std::cell::RefCell::new(&mut *conn);
        let both = in_turn(
            501,
            || trace::back(&mut conn.borrow_mut(), grown.pack).expect("a trace"),
            || floor::back(&mut conn.borrow_mut(), grown.pack),
        );
        print_row("back from a pack", grown.lots, reached, both, each);
    })
    .expect("the record is there");
}

fn print_row(
    what: &'static str,
    lots: usize,
    reached: usize,
    (ours, floor): (Duration, Duration),
    each: &mut HashMap<&'static str, f64>,
) {
    let per_lot = ours.as_secs_f64() * 1e6 / reached as f64;
    let smallest = *each.entry(what).or_insert(per_lot);
    row(&[
        what,
        &lots.to_string(),
        &reached.to_string(),
        &ms(floor),
        &ms(ours),
        &times(ours, floor),
        &format!("{per_lot:.2}"),
        &format!("{:.2}", per_lot / smallest),
    ]);
}
