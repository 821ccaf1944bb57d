//! A recall after the hold: counted place by place, disposed of, told to people, closed, and told for ever after by
//! the same bytes.

use serde_json::{Value, json};
use std::process::Command;
use stories::day::Told;
use stories::recall::{begin, count_all, file, incident, milestones};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    the_scenario_to_its_end
}

fn dispose(caller: &Caller, id: &str, lot: &Value) -> Answer {
    let body = json!({ "lot": lot, "what": "discarded", "why": "As the inspector agreed", "witness": "The inspector",
        "document": "Form 12", "place": "rail", "incident": id });
    caller.deed("/api/dispositions", body)
}

fn the_scenario_to_its_end(engine: Engine) {
    let house = House::demo(engine);
    let caller = house.caller();
    let id = begin(&caller, json!({ "carcass": "060817" }), false);
    let read = incident(&caller, &id);
    let begun = caller.read(&format!("/api/steps/{id}"))["recorded_at"].clone();
    let drawn = file(&caller, &id, "family.svg");
    let count = &read["count"];
    assert_eq!(count["book_grams"], 26927);
    assert_eq!(count["lots"].as_array().unwrap().len(), 11);
    assert_eq!(count["uncounted_packs"], count["packs"]);
    // As one walks: in the order in which the kitchen lists its places.
    let places: Vec<&str> = count["places"]
        .as_array()
        .unwrap()
        .iter()
        .map(|of| of["place"].as_str().unwrap())
        .collect();
    let listed = caller.read("/api/places");
    assert!(places.len() >= 4, "{places:?} of {listed}");
    // 57 by the book, by day and hour.
    let sold = read["sold"].as_array().unwrap().iter();
    assert_eq!(
        sold.map(|of| of["packs"].as_u64().unwrap()).sum::<u64>(),
        57
    );
    // One of twelve is missing: sold at the till by its price only.
    let bacon = caller.noted("L13");
    let packs = caller.lot(&bacon)["packs"].clone();
    let first = packs
        .as_array()
        .unwrap()
        .iter()
        .find(|pack| pack["is"] == "on-hand");
    let first = first.unwrap()["pack"].as_u64().unwrap();
    let page = |path: &str| {
        let page = caller.get(path).expect(200).bytes;
        String::from_utf8(page).unwrap().replace('\u{a0}', " ")
    };
    let scanned = page(&format!(
        "/recall/CHK-2026-1/count?place=case&code={bacon}/{first}"
    ));
    assert!(scanned.contains("data-alone"), "counted by its scan alone");
    count_all(&caller, &id, &[(&bacon, first)]);
    let read = incident(&caller, &id);
    let count = &read["count"];
    assert_eq!(
        (
            &count["left_grams"],
            &count["missing_grams"],
            &count["surplus_grams"]
        ),
        (&json!(26677), &json!(250), &json!(0))
    );
    assert_eq!(
        milestones(&read),
        ["called", "scoped", "held", "located", "counted"]
    );
    // Two jars of lard come back, and are held.
    let lard = caller.noted("L25");
    let jars = caller.lot(&lard)["packs"].clone();
    for jar in jars
        .as_array()
        .unwrap()
        .iter()
        .filter(|jar| jar["is"] == "sold")
        .take(2)
    {
        caller
            .take_back(&lard, jar["pack"].clone())
            .with("why", "recall notice")
            .done();
    }
    let count = incident(&caller, &id)["count"].clone();
    assert_eq!(
        (&count["back_grams"], &count["left_grams"]),
        (&json!(600), &json!(27277))
    );
    for (kind, whom, text) in [
        ("told", "Harle Gate", "By telephone and e-mail"),
        ("answered", "Harle Gate", "An inspector comes on Monday"),
        ("told", "Health department", "By telephone"),
    ] {
        let body = json!({ "kind": kind, "whom": whom, "text": text });
        caller
            .deed(&format!("/api/incidents/{id}/notes"), body)
            .expect(201);
    }
    let read = incident(&caller, &id);
    let source = |role: &str| {
        let all = read["sources"].as_array().unwrap().iter();
        all.clone()
            .find(|of| of["role"] == role)
            .unwrap_or_else(|| panic!("no {role}"))
            .clone()
    };
    assert_eq!(source("farm")["name"], "Brindlecombe Pigs");
    assert_eq!(source("farm")["told_at"], Value::Null);
    assert_eq!(
        source("abattoir")["answered"],
        "An inspector comes on Monday"
    );
    let notice = &read["notices"][0];
    let told = notice["customers"].to_string();
    assert!(told.contains("residue") && told.contains("Lard"), "{told}");
    assert_eq!(
        read["notices"].as_array().unwrap().len(),
        2,
        "in both languages of the kitchen"
    );
    // The page says it, and what is taken away of it is there.
    let recall = page("/recall/CHK-2026-1");
    assert!(
        recall.contains("27.277 kg") && recall.contains("report.pdf"),
        "{recall}"
    );
    let lots: Vec<Value> = count["lots"]
        .as_array()
        .unwrap()
        .iter()
        .map(|lot| lot["code"].clone())
        .collect();
    for lot in &lots {
        let done = dispose(&caller, &id, lot).expect(201);
        let keys = done.body["warning_keys"].to_string();
        assert!(
            !keys.contains("incident-disposed"),
            "what leaves is what was counted: {keys}"
        );
    }
    let read = incident(&caller, &id);
    assert_eq!(
        (
            &read["count"]["destroyed_grams"],
            &read["count"]["left_grams"]
        ),
        (&json!(27277), &json!(0))
    );
    let disposed = read["disposals"].as_array().unwrap().iter();
    let witnessed = disposed.filter(|of| {
        of["witness"] == "The inspector" && of["place"] == "rail" && of["document"] == "Form 12"
    });
    assert_eq!(witnessed.count(), 11);
    let emptied = file(&caller, &id, "family.svg");
    assert!(emptied != drawn, "what was destroyed is drawn");
    let closed = caller
        .deed(
            &format!("/api/incidents/{id}/close"),
            json!({ "why": "No mixing of farms in stock and lard pots" }),
        )
        .expect(201);
    assert_eq!(
        closed.body["warning_keys"],
        json!(["incident-missing"]),
        "the pack stays unexplained"
    );
    let read = incident(&caller, &id);
    assert_eq!(
        milestones(&read),
        [
            "called", "scoped", "held", "located", "counted", "told", "disposed", "closed"
        ]
    );
    let begun = format!("family.svg?at={}", begun.as_str().unwrap());
    assert!(
        file(&caller, &id, &begun) == drawn,
        "drawn then as it is drawn back to then"
    );
    assert!(
        file(&caller, &id, "family.svg") == emptied,
        "drawn at its end as it was kept at its close"
    );
    kept_for_ever(&house, &caller, &id);
}

/// Report and record are the same bytes whatever is recorded and listed since; a PDF checker and a spreadsheet take
/// them.
fn kept_for_ever(house: &House, caller: &Caller, id: &str) {
    let (pdf, csv) = (
        file(caller, id, "report.pdf"),
        file(caller, id, "record.csv"),
    );
    let svg = file(caller, id, "family.svg");
    let lard = caller.noted("L25");
    let jars = caller.lot(&lard)["packs"].clone();
    let sold = jars
        .as_array()
        .unwrap()
        .iter()
        .find(|jar| jar["is"] == "sold");
    let pack = sold.unwrap()["pack"].clone();
    caller.take_back(&lard, pack).with("why", "late").done();
    let farm = caller.get("/api/farms/BRC").expect(200);
    let mut renamed = farm.body.clone();
    renamed["name"] = json!("Another name");
    let renamed = caller.put("/api/farms/BRC", &renamed);
    assert!(renamed.status < 500, "{}", renamed.body);
    assert!(file(caller, id, "report.pdf") == pdf, "the same report");
    assert!(file(caller, id, "record.csv") == csv, "the same record");
    assert!(file(caller, id, "family.svg") == svg, "the same picture");
    let later = file(caller, id, "report.pdf?at=2030-01-01T00:00:00Z");
    assert!(later == pdf, "later than its close is its close");
    let path = house.folder().join("report.pdf");
    std::fs::write(&path, &pdf).expect("written");
    let checked = Command::new("qpdf")
        .arg("--check")
        .arg(&path)
        .output()
        .expect("qpdf is missing");
    assert!(
        checked.status.success(),
        "{}",
        String::from_utf8_lossy(&checked.stdout)
    );
    let csv = String::from_utf8(csv).unwrap();
    let mut lines = csv.trim_start_matches('\u{feff}').split("\r\n");
    let head = lines.next().unwrap();
    assert!(
        head.contains("us-K6") && head.contains("additions-A12"),
        "{head}"
    );
    let columns = head.matches("\",\"").count();
    assert!(columns >= 15, "{head}");
    let received = lines
        .find(|line| line.contains("Brindlecombe Pigs"))
        .expect("what came in");
    assert!(received.contains(",45000,"), "{received}");
    let events = String::from_utf8(file(caller, id, "events.jsonld")).unwrap();
    assert!(
        events.contains("EPCISDocument") && events.contains("destroying"),
        "what was destroyed is told"
    );
}
