//! A printer on an encrypted line is known by one certificate: no other is told anything.

use serde_json::{Value, json};
use stories::printer::Manners;
use stories::queue::{chops, numbers, once_each, print, until, wait};
use stories::{Caller, Engine, House, Printer, on_both_engines};

on_both_engines! {
    nothing_is_sent_before_a_manager_names_the_certificate
    a_certificate_that_changes_stops_the_queue_until_it_is_named
    what_is_no_encrypted_line_is_told_nothing
}

fn kitchen(engine: Engine, printer: &Printer, certificate: Option<&str>) -> House {
    let house = House::furnished(engine);
    let mut entry = json!({ "code": "bench", "name": "Bench", "address": printer.address() });
    if let Some(certificate) = certificate {
        entry["certificate"] = json!(certificate);
    }
    house.caller().post("/api/printers", &entry).expect(201);
    house
}

/// Names the certificate, as the page for printing does.
fn pin(caller: &Caller, certificate: &str) {
    let known = caller.get("/api/printers/bench").expect(200);
    let mut entry = known.body.clone();
    entry["certificate"] = json!(certificate);
    let version = known.etag.expect("a version");
    caller
        .put_over("/api/printers/bench", &version, &entry)
        .expect(200);
}

fn state(caller: &Caller) -> Value {
    caller.read("/api/printers/bench/state")
}

/// In pairs, as sentences have it.
fn pairs(fingerprint: &str) -> String {
    let digits = fingerprint.strip_prefix("sha256:").unwrap().to_uppercase();
    let pairs: Vec<&str> = (0..64).step_by(2).map(|at| &digits[at..at + 2]).collect();
    pairs.join(":")
}

fn nothing_is_sent_before_a_manager_names_the_certificate(engine: Engine) {
    let printer = Printer::encrypted(Manners::default());
    let house = kitchen(engine, &printer, None);
    let caller = house.caller();
    let shown = printer.fingerprint();
    let told = state(&caller);
    assert_eq!(told["reachable"], false);
    assert_eq!(
        told["certificate"],
        json!({ "seen": shown, "pinned": null })
    );
    let trouble = told["trouble"].as_str().unwrap();
    assert!(trouble.contains(&pairs(&shown)), "{trouble}");
    assert!(trouble.contains("Compare it"), "{trouble}");
    // Labels are taken and wait; the printer is asked for nothing.
    let lot = chops(&caller, "0608-17", 2);
    let prints = print(&caller, &lot);
    let told = || caller.read(&format!("/api/prints/{}", prints[0]));
    until(|| {
        told()["trouble"]
            .as_str()
            .is_some_and(|says| says.contains(&pairs(&shown)))
    });
    assert_eq!(
        (printer.questions(), &told()["state"]),
        (0, &json!("waiting"))
    );
    let page = String::from_utf8(caller.get("/printing").expect(200).bytes).unwrap();
    assert!(page.contains(&pairs(&shown)), "{page}");
    pin(&caller, &shown);
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
    let told = state(&caller);
    assert_eq!(told["reachable"], true);
    assert_eq!(
        told["certificate"],
        json!({ "seen": shown, "pinned": shown })
    );
}

fn a_certificate_that_changes_stops_the_queue_until_it_is_named(engine: Engine) {
    let printer = Printer::encrypted(Manners::default());
    let first = printer.fingerprint();
    // As a printer's own page shows it.
    let house = kitchen(engine, &printer, Some(&pairs(&first)));
    let caller = house.caller();
    assert_eq!(
        caller.read("/api/printers/bench")["certificate"],
        json!(first)
    );
    let mut all = print(&caller, &chops(&caller, "0608-17", 2));
    wait(&caller, &all, &["printed"]);
    let questions = printer.questions();

    printer.change_certificate();
    let second = printer.fingerprint();
    assert_ne!(first, second);
    let asked = json!({ "printer": "bench", "lot": chops(&caller, "0608-18", 2) });
    let asked = caller.deed("/api/prints", asked).expect(201);
    let warned = asked.body["warnings"][0].as_str().unwrap();
    assert!(
        warned.contains(&pairs(&first)) && warned.contains(&pairs(&second)),
        "{warned}"
    );
    let prints = numbers(&asked.body);
    let told = || caller.read(&format!("/api/prints/{}", prints[0]));
    until(|| {
        told()["trouble"]
            .as_str()
            .is_some_and(|says| says.contains(&pairs(&second)))
    });
    assert_eq!(printer.questions(), questions, "nothing was sent");
    assert_eq!(
        state(&caller)["certificate"],
        json!({ "seen": second, "pinned": first })
    );
    pin(&caller, &second);
    wait(&caller, &prints, &["printed"]);
    all.extend(prints);
    once_each(&printer, &all);
}

fn what_is_no_encrypted_line_is_told_nothing(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = House::furnished(engine);
    let caller = house.caller();
    let plain = printer.address();
    let any = format!("sha256:{}", "0".repeat(64));
    let refused = |entry: Value, field: &str| {
        let answer = caller.post("/api/printers", &entry).expect(422);
        assert_eq!(answer.body["field"], json!(field), "{:#?}", answer.body);
    };
    let entry = |address: &str, certificate: &str| json!({ "code": "bench", "name": "Bench", "address": address, "certificate": certificate });
    refused(entry(&plain, &any), "certificate");
    let encrypted = plain.replace("ipp:", "ipps:");
    refused(entry(&encrypted, "sha256:12"), "certificate");
    caller
        .post("/api/printers", &entry(&encrypted, &any))
        .expect(201);
    // It speaks IPP without TLS: no question goes there in the open.
    let told = state(&caller);
    assert_eq!(
        (&told["reachable"], &told["certificate"]["seen"]),
        (&json!(false), &Value::Null)
    );
    assert_eq!(printer.questions(), 0);
}
