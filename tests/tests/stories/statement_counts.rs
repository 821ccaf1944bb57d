//! How many statements one request may cost, counted on the wire between the service and PostgreSQL.
//!
//! Round trips are what a page waits for on a database that is not on the same machine; a recursive walk
//! is what grows with the record. Beginnings and ends of transactions count too.

use stories::day::{Told, farm};
use stories::{House, Wiretap};

/// What is asked for, statements at the most, recursive walks among them at the most.
const LIMITS: [(&str, usize, usize); 10] = [
    ("a lot's page", 12, 1),
    ("a lot", 12, 1),
    ("the cure room", 15, 1),
    // One of them asks what lies frozen, to thaw for tomorrow.
    ("today", 33, 1),
    ("fifty lots", 6, 0),
    ("the page of the lots", 8, 0),
    // One of them asks for all carcasses that hang, however many the house's list has.
    ("a side by its word", 8, 0),
    ("a label", 8, 1),
    ("a log of a year", 44, 1),
    // Three of them are the chain: its lock, its end, the new link. One asks whether anything is on record that
    // happened later: what is entered late counts in its true order.
    ("a step of two lots into two", 24, 0),
];

#[test]
fn a_request_costs_no_more_statements_than_it_may() {
    let (tap, house) = House::tapped();
    let caller = house.caller();
    let (bacon, rillettes) = (caller.noted("L13"), caller.noted("L31"));
    let [left, right] = ["left", "right"].map(|side| {
        let animal = farm("NTB").killed("2026-06-24").carcass("0624-9");
        let half = caller.receive("pig-half").grams(40_000);
        half.from(animal.side(side)).made()
    });
    let step = caller.step("break-down").of_grams(&left, 2_000);
    let step = step.of_grams(&right, 2_000);
    let step = step.into("pork-ham", 2_200).into("pork-loin", 1_700);
    let mut over = Vec::new();
    for (what, most, most_walks) in LIMITS {
        let path = match what {
            "a lot's page" => format!("/lots/{bacon}"),
            "a lot" => format!("/api/lots/{bacon}"),
            "today" => "/api/today".to_owned(),
            "the cure room" => "/cure-room".to_owned(),
            "a log of a year" => {
                "/api/logs/batches?from=2025-01-01&until=2026-06-27&limit=200".to_owned()
            }
            "fifty lots" => "/api/lots?limit=50".to_owned(),
            "the page of the lots" => "/lots".to_owned(),
            "a side by its word" => "/api/find?q=side".to_owned(),
            "a label" => format!("/api/lots/{rillettes}/labels.pdf?packs=7"),
            _ => String::new(),
        };
        let said = fewest(&tap, || match path.as_str() {
            "" => drop(step.clone().done()),
            path => drop(caller.get(path).expect(200)),
        });
        let walks = said
            .iter()
            .filter(|said| said.contains("RECURSIVE"))
            .count();
        println!("{what}: {} statements, {walks} walks", said.len());
        if said.len() > most || walks > most_walks {
            let text = said.join("\n  ");
            let (all, told) = (said.len(), format!("at the most {most} and {most_walks}"));
            over.push(format!(
                "{what}: {all} statements, {walks} walks; {told}:\n  {text}"
            ));
        }
    }
    assert!(over.is_empty(), "{}", over.join("\n"));
}

/// What a request says when nothing else is going on. The first time fills what the service remembers;
/// of the others one may be disturbed by the foreman of the printers, who looks for work now and then.
fn fewest(tap: &Wiretap, ask: impl Fn()) -> Vec<String> {
    ask();
    let times = (0..5).map(|_| {
        tap.heard();
        ask();
        tap.heard()
    });
    times.min_by_key(Vec::len).expect("five times")
}
