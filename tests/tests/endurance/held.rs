//! Eight clients pack, sell and print while thousands of lots are held in one act: proved from the record, in the
//! order of its chain, from the hold on no gram of them leaves and no label for a customer comes out.
//!
//! `HELD_LOTS` says how many lots; 400 if left out.

use diesel::sql_types::BigInt;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use serde_json::{Value, json};
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
use store::{Address, Conn, Store};
use stories::day::Told;
use stories::{Answer, Caller, Engine, House, on_both_engines, recall};

on_both_engines! { thousands_of_lots_are_held_while_eight_clients_work }

const CLIENTS: usize = 8;
/// Lots that one step makes: as many as it may.
const OF_EACH: usize = 200;
/// Deeds that are done before the hold is asked for.
const BEFORE: usize = 40;
/// How often each client tries in vain after it was answered.
const IN_VAIN: usize = 30;

/// What was done, as the clients saw it.
#[derive(Default)]
struct Seen {
    /// Deeds that were taken.
    done: AtomicUsize,
    /// Those of them that were asked for after the hold was answered.
    after: AtomicUsize,
    /// Deeds that were refused because of it.
    refused: AtomicUsize,
    held: AtomicBool,
}

fn thousands_of_lots_are_held_while_eight_clients_work(engine: Engine) {
    let count = std::env::var("HELD_LOTS").ok();
    let count: usize = count.and_then(|count| count.parse().ok()).unwrap_or(400);
    let house = House::furnished(engine);
    let caller = house.caller();
    // A pack for a customer tells where it is.
    let address = json!("Cinderhook Lane 1, Harrowick");
    stories::labels::set(&caller, &[("address", address)]);
    let pig = caller.half_pig("0608-17", 100 * count as u64 + 1_000);
    let lots: Vec<String> = (0..count.div_ceil(OF_EACH))
        .flat_map(|_| chops(&caller, &pig))
        .collect();
    let seen = Seen::default();
    std::thread::scope(|all| {
        for client in 0..CLIENTS {
            let (caller, lots, seen) = (house.caller(), &lots, &seen);
            all.spawn(move || work(&caller, lots.iter().skip(client).step_by(CLIENTS), seen));
        }
        stories::queue::until(|| seen.done.load(Ordering::SeqCst) >= BEFORE);
        recall::begin(&caller, json!({ "lot": pig }), false);
        seen.held.store(true, Ordering::SeqCst);
    });
    let (after, refused) = (seen.after.into_inner(), seen.refused.into_inner());
    assert_eq!(after, 0, "deeds that went through after the answer");
    assert!(refused > 0, "somebody tried");
    let address = Address::parse(&house.database).unwrap();
    let record = Store::open(&address, false, 1).unwrap();
    let number = |sql: &str| record.look(|conn| number(conn, sql)).unwrap();
    assert!(number(HELD) >= i64::try_from(lots.len()).unwrap());
    assert_eq!(number(LEFT), 0, "grams that left");
    assert_eq!(number(PRINTED), 0, "labels that came out");
    println!(
        "{engine:?}: {} lots held, {} deeds before, {refused} refused",
        lots.len(),
        seen.done.into_inner()
    );
}

/// Two hundred lots of chops, a pack each.
fn chops(caller: &Caller, pig: &str) -> Vec<String> {
    let chop = json!({ "product": "pork-chop", "grams": 100, "place": "case" });
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig, "grams": 100 * OF_EACH }],
        "outputs": vec![chop; OF_EACH] });
    let made = caller.deed("/api/steps", step).expect(201);
    (0..OF_EACH).map(|nth| made.code(nth)).collect()
}

/// Packs, sells and prints, one lot after the other.
fn work<'a>(caller: &Caller, lots: impl Iterator<Item = &'a String>, seen: &Seen) {
    let mut in_vain = 0;
    for (nth, lot) in lots.enumerate() {
        let known = seen.held.load(Ordering::SeqCst);
        let answer: Answer = match nth % 3 {
            0 => caller.sell(lot).with("pack", 1).ask(),
            1 => {
                let step = caller.step("portion").of_grams(lot, 50);
                step.into("pork-chop", 50).ask()
            }
            _ => caller.deed("/api/label-documents", json!({ "lot": lot })),
        };
        match answer.status {
            201 => {
                seen.done.fetch_add(1, Ordering::SeqCst);
                seen.after.fetch_add(usize::from(known), Ordering::SeqCst);
            }
            _ => {
                let held: &Value = &answer.body["type"];
                assert_eq!(held, "/problems/held", "{}", answer.body);
                seen.refused.fetch_add(1, Ordering::SeqCst);
                in_vain += usize::from(known);
            }
        }
        if in_vain == IN_VAIN {
            break;
        }
    }
}

#[derive(QueryableByName)]
struct Number {
    #[diesel(sql_type = BigInt)]
    number: i64,
}

fn number(conn: &mut Conn, sql: &str) -> store::Result<i64> {
    let found: Number = match conn {
        Conn::Sqlite(conn) => sql_query(sql).get_result(conn)?,
        Conn::Pg(conn) => sql_query(sql).get_result(conn)?,
    };
    Ok(found.number)
}

/// Lots that the recall holds.
const HELD: &str = "SELECT CAST(COUNT(DISTINCT lot_id) AS BIGINT) AS number FROM stops WHERE incident_id IS NOT NULL";
/// What happened to food of theirs that the chain has after the hold, and takes some away or makes it into something.
const LEFT: &str = "SELECT CAST(COUNT(*) AS BIGINT) AS number FROM pack_events
    JOIN stops ON stops.lot_id = pack_events.lot_id AND stops.incident_id IS NOT NULL
    JOIN chain AS done ON done.kind = 'deed' AND done.of_id = pack_events.deed_id
    JOIN chain AS held ON held.kind = 'deed' AND held.of_id = stops.incident_id
    WHERE done.id > held.id AND pack_events.account NOT IN ('moved', 'noted')";
/// Their labels that the chain has after the hold, but for the tag that says so.
const PRINTED: &str = "SELECT CAST(COUNT(*) AS BIGINT) AS number FROM prints
    JOIN stops ON stops.lot_id = prints.lot_id AND stops.incident_id IS NOT NULL
    JOIN chain AS done ON done.kind = 'deed' AND done.of_id = prints.deed_id
    JOIN chain AS held ON held.kind = 'deed' AND held.of_id = stops.incident_id
    WHERE done.id > held.id AND prints.template <> 'hold'";
