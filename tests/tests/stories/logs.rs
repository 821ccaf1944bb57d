//! The logs as the rules name them, against the demo's record: for a program, a spreadsheet and paper.

use serde_json::{Value, json};
use std::process::Command;
use stories::{Caller, Engine, House, on_both_engines};
use uuid::Uuid;

on_both_engines! {
    every_log_is_answered_in_every_form
    what_is_missing_is_a_hole_and_never_a_blank
    a_long_log_is_read_page_by_page
    what_cannot_be_asked_of_a_log_is_told
}

const ALL: [&str; 11] = [
    "receiving",
    "grinding",
    "batches",
    "cooking",
    "cooling",
    "curing",
    "trichinae",
    "clean-downs",
    "temperatures",
    "corrections",
    "departures",
];
const YEAR: &str = "from=2025-01-01&until=2026-06-27";

fn entries(log: &Value) -> &Vec<Value> {
    log["entries"].as_array().expect("entries")
}

fn cell<'a>(entry: &'a Value, column: &str) -> &'a Value {
    let cells = entry["cells"].as_array().expect("cells");
    let cell = cells.iter().find(|cell| cell["column"] == column);
    cell.unwrap_or(&Value::Null)
}

fn text(caller: &Caller, path: &str) -> String {
    String::from_utf8(caller.get(path).expect(200).bytes).expect("text")
}

fn every_log_is_answered_in_every_form(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    for log in ALL {
        let read = caller.read(&format!("/api/logs/{log}?{YEAR}&limit=200"));
        assert_eq!(read["log"], log);
        let columns = read["columns"].as_array().unwrap().len();
        assert!(columns > 4, "{log}");
        let csv = text(&caller, &format!("/api/logs/{log}?{YEAR}&as=csv"));
        let csv = csv.strip_prefix('\u{feff}').expect("its mark");
        if read["next"].is_null() {
            assert_eq!(
                csv.matches("\r\n").count(),
                entries(&read).len() + 1,
                "{log}"
            );
        }
        let path = format!("/api/logs/{log}?{YEAR}&as=pdf");
        let pdf = caller.get(&path).expect(200).bytes;
        assert_eq!(
            pdf,
            caller.get(&path).expect(200).bytes,
            "{log}: the same bytes"
        );
        let file = house.folder().join(format!("{log}.pdf"));
        std::fs::write(&file, &pdf).expect("written");
        let checked = Command::new("qpdf").arg("--check").arg(&file).output();
        let checked = checked.expect("qpdf is missing");
        assert!(checked.status.success(), "{log}: {checked:?}");
        let page = text(
            &caller,
            &format!("/logs/{log}?from=2025-01-01&last=2026-06-26"),
        );
        assert!(page.contains("as=csv"), "{log}");
    }
    for log in [
        "receiving",
        "grinding",
        "batches",
        "cooking",
        "curing",
        "departures",
    ] {
        let read = caller.read(&format!("/api/logs/{log}?{YEAR}"));
        assert!(!entries(&read).is_empty(), "{log} is empty");
    }
    // The document tells every form of them.
    let document = caller.read("/api/openapi.json");
    let forms = &document["paths"]["/api/logs/{which}"]["get"]["responses"]["200"]["content"];
    let forms: Vec<&String> = forms.as_object().expect("forms").keys().collect();
    assert_eq!(forms, ["application/json", "application/pdf", "text/csv"]);
    let logs = caller.read("/api/logs");
    let logs = logs["logs"].as_array().expect("logs");
    assert_eq!(logs.len(), ALL.len());
    let grinding = logs.iter().find(|log| log["log"] == "grinding").unwrap();
    assert_eq!(grinding["due"][0]["record"], "ground-beef-log");
    assert_eq!(grinding["due"][0]["kept"][0], "us-G8");
    assert!(text(&caller, "/logs").contains("us-G9"));
}

fn what_is_missing_is_a_hole_and_never_a_blank(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let asked = json!({ "id": Uuid::from_u128(0x1091), "kind": "ship", "lot": bacon, "pack": 13, "to": "=The Inn" });
    caller.post("/api/departures", &asked).expect(201);
    let path = format!("/api/logs/departures?{YEAR}&lot={bacon}");
    let log = caller.read(&path);
    let shipped = entries(&log).iter().find(|entry| entry["kind"] == "ship");
    let shipped = shipped.expect("the shipping");
    assert_eq!(cell(shipped, "to")["values"][0]["says"], "=The Inn");
    assert_eq!(cell(shipped, "to")["holes"], Value::Null);
    for (column, field) in [
        ("to-address", "receiver-address"),
        ("to-telephone", "receiver-telephone"),
        ("carrier", "carrier"),
    ] {
        let hole = &cell(shipped, column)["holes"][0];
        assert_eq!(
            (&hole["field"], &hole["row"]),
            (&json!(field), &json!("us-O5"))
        );
        assert!(hole["says"].as_str().unwrap().contains("MISSING"), "{hole}");
    }
    let csv = text(&caller, &format!("{path}&as=csv"));
    assert!(csv.contains("\"'=The Inn\""), "{csv}");
    assert!(csv.contains("MISSING: the carrier (us-O5)"), "{csv}");
    // It was another pack: what was voided stays, says so, and lacks nothing.
    let void = json!({ "id": Uuid::from_u128(0x1092), "why": "another pack" });
    let id = Uuid::from_u128(0x1091);
    caller
        .post(&format!("/api/steps/{id}/void"), &void)
        .expect(201);
    let log = caller.read(&path);
    let shipped = entries(&log).iter().find(|entry| entry["kind"] == "ship");
    let shipped = shipped.expect("it stays");
    assert_eq!(shipped["voided"], "another pack");
    assert_eq!(cell(shipped, "carrier"), &Value::Null);
    let voids = caller.read(&format!("/api/logs/corrections?{YEAR}&limit=200"));
    let last = entries(&voids).last().expect("the void");
    assert_eq!(last["kind"], "void");
    assert_eq!(cell(last, "why")["values"][0]["says"], "another pack");
}

fn a_long_log_is_read_page_by_page(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let whole = caller.read(&format!("/api/logs/batches?{YEAR}&limit=200"));
    let mut ids: Vec<String> = Vec::new();
    let mut after = String::new();
    loop {
        let page = caller.read(&format!("/api/logs/batches?{YEAR}&limit=40{after}"));
        let deeds = entries(&page)
            .iter()
            .map(|entry| entry["deed"].as_str().unwrap().to_owned());
        ids.extend(deeds);
        match page["next"].as_str() {
            Some(next) => after = format!("&after={next}"),
            None => break,
        }
    }
    let first: Vec<&str> = entries(&whole)
        .iter()
        .map(|entry| entry["deed"].as_str().unwrap())
        .collect();
    assert_eq!(ids[..first.len()], first);
    let mut once = ids.clone();
    once.sort();
    once.dedup();
    assert_eq!(once.len(), ids.len());
    let csv = text(&caller, &format!("/api/logs/batches?{YEAR}&as=csv"));
    assert_eq!(csv.matches("\r\n").count(), ids.len() + 1);
    let bench = caller.read(&format!("/api/logs/batches?{YEAR}&place=grinder&limit=200"));
    assert!(entries(&bench).len() < ids.len());
}

fn what_cannot_be_asked_of_a_log_is_told(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    for (query, field) in [
        ("from=2026-06-10&until=2026-06-10", "until"),
        ("from=someday", "from"),
        ("place=attic", "place"),
        ("lot=nothing", "lot"),
        ("as=xml", "as"),
        ("limit=0", "limit"),
        ("after=nothing", "after"),
        ("colour=red", "colour"),
    ] {
        let refused = caller
            .get(&format!("/api/logs/receiving?{query}"))
            .expect(422);
        assert_eq!(refused.body["field"], field, "{query}");
    }
    caller.get("/api/logs/nothing").expect(404);
}
