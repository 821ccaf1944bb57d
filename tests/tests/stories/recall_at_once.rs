//! A hold comes while clerks sell: from its answer on nothing of it leaves.

use diesel::connection::SimpleConnection;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use serde_json::json;
use std::time::Duration;
use store::{Address, Conn, Store};
use stories::call::moment;
use stories::day::{Told, farm};
use stories::{Answer, Caller, Engine, House, on_both_engines, recall};

on_both_engines! {
    a_sale_and_a_hold_at_once
    a_sale_that_waits_for_a_hold_comes_after_it
    a_clock_that_is_a_minute_behind_sells_nothing_held
    a_hold_by_a_clock_that_is_ahead_stands_at_once
    what_was_made_since_it_was_listed_is_held_with_it
}

/// Four clerks sell one pack after the other while the hold comes: from its answer on nothing leaves.
fn a_sale_and_a_hold_at_once(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 40_000);
    let cut = caller
        .step("cut")
        .of_grams(&pig, 40_000)
        .into_packs("pork-chop", 40_000, 200);
    let chops = cut.which("place", "case").made();
    let acknowledged = &std::sync::atomic::AtomicBool::new(false);
    let sold_after = std::thread::scope(|all| {
        let clerks: Vec<_> = (0..4)
            .map(|clerk| {
                let (caller, chops) = (caller.clone(), chops.clone());
                all.spawn(move || {
                    let mut after = 0;
                    for pack in (1..=200).filter(|pack| pack % 4 == clerk) {
                        let known = acknowledged.load(std::sync::atomic::Ordering::SeqCst);
                        let sold = caller.sell(&chops).with("pack", pack).ask();
                        match sold.status {
                            201 => after += u32::from(known),
                            status => {
                                assert_eq!(
                                    (status, known || sold.body["type"] == "/problems/held"),
                                    (409, true)
                                );
                            }
                        }
                    }
                    after
                })
            })
            .collect();
        std::thread::sleep(std::time::Duration::from_millis(100));
        let body = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Residue",
            "scope": { "start": [{ "lot": pig }], "spreads": "lineage" } });
        caller.deed("/api/incidents", body).expect(201);
        acknowledged.store(true, std::sync::atomic::Ordering::SeqCst);
        clerks
            .into_iter()
            .map(|clerk| clerk.join().unwrap())
            .sum::<u32>()
    });
    assert_eq!(sold_after, 0);
}

/// Whoever has to wait for a hold comes after it, however early it was asked: its time is when its turn comes.
fn a_sale_that_waits_for_a_hold_comes_after_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = an_hour_ago(&caller, "1");
    let record = Store::open(&Address::parse(&house.database).unwrap(), false, 1).unwrap();
    let sold: Number = std::thread::scope(|all| {
        record.look(|conn| {
            // As a hold does it.
            conn.batch_execute(match conn {
                Conn::Pg(_) => "BEGIN; SELECT pg_advisory_xact_lock(7023, 0)",
                Conn::Sqlite(_) => "BEGIN IMMEDIATE",
            })?;
            let sale = all.spawn(|| serve(&caller, &pig).expect(201));
            std::thread::sleep(Duration::from_millis(700));
            let free = chrono::Utc::now().naive_utc();
            conn.batch_execute("COMMIT")?;
            sale.join().unwrap();
            let sql = format!(
                "SELECT CAST(COUNT(*) AS BIGINT) AS number FROM deeds WHERE kind = 'serve' AND at >= '{free}'"
            );
            match conn {
                Conn::Sqlite(conn) => sql_query(sql).get_result(conn),
                Conn::Pg(conn) => sql_query(sql).get_result(conn),
            }
            .map_err(store::Error::from)
        })
    })
    .unwrap();
    assert_eq!(sold.number, 1, "served when its turn came");
}

/// Two services may share a record, and a machine may set its clock back: what is asked after a hold comes after it.
fn a_clock_that_is_a_minute_behind_sells_nothing_held(engine: Engine) {
    let mut house = House::furnished(engine);
    let pig = an_hour_ago(&house.caller(), "1");
    recall::begin(&house.caller(), json!({ "lot": pig }), false);
    house.kill();
    house.restart_at("-60s");
    let refused = serve(&house.caller(), &pig).expect(409);
    assert_eq!(refused.body["type"], "/problems/held", "{}", refused.body);
}

/// A tablet's clock may be ahead by a minute: what it holds is held from now on.
fn a_hold_by_a_clock_that_is_ahead_stands_at_once(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let (pig, other) = (an_hour_ago(&caller, "1"), an_hour_ago(&caller, "2"));
    let ahead = (chrono::Utc::now() + chrono::TimeDelta::seconds(90)).to_rfc3339();
    let hold = json!({ "lots": [{ "lot": pig }], "why": "it smells", "at": ahead });
    caller.deed("/api/holds", hold).expect(201);
    let recall = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Residue", "at": ahead,
        "told_at": moment(-1), "scope": { "start": [{ "lot": other }], "spreads": "lineage" } });
    caller.deed("/api/incidents", recall).expect(201);
    for lot in [pig, other] {
        let refused = serve(&caller, &lot).expect(409);
        assert_eq!(refused.body["type"], "/problems/held", "{}", refused.body);
    }
}

/// A half pig that came in an hour ago.
fn an_hour_ago(caller: &Caller, carcass: &str) -> String {
    let pig = caller.receive("pig-half").grams(2_000);
    pig.from(farm("BRC").carcass(carcass).side("left"))
        .at(moment(-60))
        .made()
}

fn serve(caller: &Caller, lot: &str) -> Answer {
    let body = json!({ "kind": "serve", "lot": lot, "grams": 5 });
    caller.deed("/api/departures", body)
}

#[derive(QueryableByName)]
struct Number {
    #[diesel(sql_type = diesel::sql_types::BigInt)]
    number: i64,
}

/// What was listed is held as it was listed, unless something came after: a pack that was made since, or an entry
/// that was changed since.
fn what_was_made_since_it_was_listed_is_held_with_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 40_000);
    let scope = json!({ "start": [{ "lot": pig }], "spreads": "lineage" });
    let lots = |answer: &Answer| answer.body["lots"].as_array().unwrap().len();
    let listed = caller.post("/api/scopes", &scope).expect(200);
    assert_eq!(lots(&listed), 1);
    let cut = caller
        .step("cut")
        .of_grams(&pig, 40_000)
        .into_packs("pork-chop", 40_000, 20);
    let chops = cut.which("place", "case").made();
    let hold = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Residue", "scope": scope });
    let begun = caller.deed("/api/incidents", hold.clone()).expect(201);
    assert_eq!(lots(&begun), 2, "{}", begun.body);
    let sold = caller.sell(&chops).with("pack", 1).ask();
    assert_eq!(sold.status, 409, "{}", sold.body);
    let again = caller.post("/api/scopes", &hold["scope"]).expect(200);
    let next = caller.deed("/api/incidents", hold).expect(201);
    assert_eq!(
        (&next.body["lots"], &next.body["scope_digest"]),
        (&again.body["lots"], &again.body["digest"]),
        "held as listed a moment ago"
    );
}
