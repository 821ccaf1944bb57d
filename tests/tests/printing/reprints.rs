//! What is printed again is marked, and never shows a later date than the first print.

use serde_json::{Value, json};
use stories::call::moment;
use stories::printer::Manners;
use stories::queue::{chops, kitchen, numbers, print, wait};
use stories::{Caller, Engine, Printer, on_both_engines};

on_both_engines! {
    a_reprint_is_marked_and_shows_no_later_date
    what_was_frozen_and_thawed_keeps_its_first_date
}

fn a_reprint_is_marked_and_shows_no_later_date(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 2);
    let first = print(&caller, &lot);
    let read = wait(&caller, &first, &["printed"]);
    let again = json!({ "printer": "bench", "lot": lot, "packs": [1], "again": { "why": "it fell into the brine" } });
    let second = numbers(&caller.deed("/api/prints", again.clone()).expect(201).body);
    let second = wait(&caller, &second, &["printed"]);
    assert_eq!(
        (&second[0]["reprint"], &second[0]["note"]),
        (&json!(1), &json!("it fell into the brine"))
    );
    assert_eq!(second[0]["use_by"], read[0]["use_by"]);
    assert!(
        words(&caller, &second[0]).contains("REPRINT 1"),
        "{}",
        words(&caller, &second[0])
    );
    assert!(!words(&caller, &read[0]).contains("REPRINT"));
    // Frozen, it shows no date: that is not a later one.
    let freeze = json!({ "lot": lot, "packs": [1], "state": "frozen", "to": "freezer" });
    caller.deed("/api/moves", freeze).expect(201);
    let frozen = numbers(&caller.deed("/api/prints", again.clone()).expect(201).body);
    let frozen = wait(&caller, &frozen, &["printed"]);
    assert_eq!(
        (&frozen[0]["use_by"], &frozen[0]["reprint"]),
        (&Value::Null, &json!(2))
    );
    // The small label has a place for the mark, too.
    let mut small = again;
    small["packs"] = json!([2]);
    small["template"] = json!("tub");
    let small = numbers(&caller.deed("/api/prints", small).expect(201).body);
    let small = wait(&caller, &small, &["printed"]);
    assert!(words(&caller, &small[0]).contains("REPRINT 1"));
}

fn what_was_frozen_and_thawed_keeps_its_first_date(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let day = -24 * 60;
    let receipt = json!({ "at": moment(4 * day), "place": "rail", "product": "pig-half", "grams": 5_000,
        "animal": { "farm": "BRC", "species": "pig", "killed_on": stories::call::chrono_day(-6), "abattoir": "DEMO-17", "carcass": "1" } });
    let pig = caller.deed("/api/receipts", receipt).expect(201).code(0);
    let step = json!({ "kind": "cut", "at": moment(4 * day + 10), "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-chop", "grams": 4_000 }] });
    let lot = caller.deed("/api/steps", step).expect(201).code(0);
    let prints = print(&caller, &lot);
    let first = wait(&caller, &prints, &["printed"]);
    for (at, state) in [(3 * day, "frozen"), (0, "chilled")] {
        let moved = json!({ "at": moment(at), "lot": lot, "state": state, "to": "cooler" });
        caller.deed("/api/moves", moved).expect(201);
    }
    let (was, is) = (
        first[0]["use_by"].clone(),
        caller.lot(&lot)["use_by"].clone(),
    );
    assert!(is.as_str() > was.as_str(), "{is} is later than {was}");
    let again = json!({ "printer": "bench", "lot": lot, "again": { "why": "the label came off" } });
    let asked = caller.deed("/api/prints", again).expect(201).body;
    assert_eq!(asked["prints"][0]["use_by"], was);
    assert_eq!(asked["warning_keys"], json!(["print-date-stands-though"]));
    let warning = asked["warnings"][0].as_str().unwrap();
    let day: chrono::NaiveDate = is.as_str().unwrap().parse().unwrap();
    let told = day.format("%a, %b %-d").to_string();
    assert!(warning.contains(&told), "{told} in {warning}");
    let second = wait(&caller, &numbers(&asked), &["printed"]);
    // Day, month and year, however the lines break.
    let dates = |print: &Value| -> Vec<String> {
        let shown = words(&caller, print);
        let shown: Vec<&str> = shown.split_whitespace().collect();
        let dated = shown.windows(3).filter(|three| three[2].starts_with("202"));
        dated.map(|three| three.join(" ")).collect()
    };
    assert!(!dates(&first[0]).is_empty());
    assert_eq!(dates(&second[0]), dates(&first[0]));
}

/// The words of a print's label, as a PDF reader finds them.
fn words(caller: &Caller, print: &Value) -> String {
    use std::io::Write;
    use std::process::{Command, Stdio};
    let label = caller
        .get(print["label"].as_str().unwrap())
        .expect(200)
        .bytes;
    let mut reader = Command::new("pdftotext")
        .args(["-", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("pdftotext is missing: install poppler-utils");
    reader.stdin.take().unwrap().write_all(&label).unwrap();
    String::from_utf8_lossy(&reader.wait_with_output().unwrap().stdout).into_owned()
}
