//! Papers kept with a deed: what is taken, where it is found, how it is served, and when what it holds may go.

use serde_json::{Value, json};
use std::io::{Read, Write};
use std::net::TcpStream;
use stories::call::{chrono_day, fresh_id, moment};
use stories::{Answer, Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_paper_is_kept_with_its_deed_and_found_from_all_that_came_of_it
    what_a_paper_holds_goes_when_nobody_needs_it_and_not_before
}

const PNG: &[u8] = include_bytes!("../../../server/tests/parsers/corpus/photos/tub-plain.png");
const NOTE: &[u8] = b"%PDF-1.4\n1 0 obj << >> endobj\ntrailer << >>\n%%EOF\n";

fn paper(caller: &Caller, query: &str, kind: &str, holds: &[u8]) -> Answer {
    caller.post_bytes(&format!("/api/papers?{query}"), kind, holds)
}

/// The deed that made a lot.
fn made_by(caller: &Caller, lot: &str) -> String {
    caller.lot(lot)["made_by_step"].as_str().unwrap().to_owned()
}

/// The papers that a query finds, by their kinds.
fn kinds(caller: &Caller, query: &str) -> Vec<String> {
    let found = caller.read(&format!("/api/papers?{query}"));
    let papers = found["papers"].as_array().unwrap().iter();
    papers
        .map(|paper| paper["kind"].as_str().unwrap().to_owned())
        .collect()
}

/// An answer with its headers, as it came.
fn headers(house: &House, path: &str) -> String {
    let host = house.address.trim_start_matches("http://");
    let mut stream = TcpStream::connect(host).unwrap();
    let asked = format!(
        "GET {path} HTTP/1.1\r\nHost: {host}\r\nAuthorization: Bearer {}\r\nConnection: close\r\n\r\n",
        house.token
    );
    stream.write_all(asked.as_bytes()).unwrap();
    let mut bytes = Vec::new();
    stream.read_to_end(&mut bytes).unwrap();
    let text = String::from_utf8_lossy(&bytes);
    text.split("\r\n\r\n").next().unwrap().to_lowercase()
}

fn a_paper_is_kept_with_its_deed_and_found_from_all_that_came_of_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 20_000);
    let deed = made_by(&caller, &pig);
    let (id, by) = (fresh_id(), "by=Cook");
    let asked = format!("id={id}&of={deed}&kind=delivery-note&name=note%20118&{by}");
    paper(&caller, &asked, "application/pdf", NOTE).expect(201);
    paper(&caller, &asked, "application/pdf", NOTE).expect(200);
    paper(&caller, &asked, "application/pdf", &[NOTE, b"\n"].concat()).expect(409);
    let photo = fresh_id();
    let asked = format!("id={photo}&of={deed}&kind=photo&{by}");
    // The sender calls it a JPEG; what it holds says what it is.
    paper(&caller, &asked, "image/jpeg", PNG).expect(201);
    let log = fresh_id();
    let asked = format!("id={log}&of={deed}&kind=print-out&{by}");
    paper(&caller, &asked, "text/csv", b"time;\xb0C\r\n10:00;3,4\r\n").expect(201);

    // What is none is not taken, whatever it is called.
    let another = || format!("id={}&of={deed}&kind=other&{by}", fresh_id());
    let refused = |kind: &str, holds: &[u8], status: u16| {
        paper(&caller, &another(), kind, holds).expect(status).body["key"].clone()
    };
    assert_eq!(
        refused("application/pdf", b"MZ\x90\0\x03", 415),
        "paper-not-read"
    );
    assert_eq!(refused("application/zip", b"PK\x03\x04", 415), "paper-send");
    assert_eq!(
        refused("application/pdf", &NOTE[..20], 422),
        "paper-cut-off"
    );
    assert_eq!(
        refused("image/png", &PNG[..PNG.len() - 9], 422),
        "paper-cut-off"
    );
    assert_eq!(refused("text/plain", b"", 422), "paper-empty");
    let large = vec![b' '; (10 << 20) + 1];
    assert_eq!(refused("text/plain", &large, 413), "paper-too-large");
    let unknown = format!("id={}&of={}&kind=other&{by}", fresh_id(), fresh_id());
    paper(&caller, &unknown, "application/pdf", NOTE).expect(404);
    let of_paper = format!("id={}&of={id}&kind=other&{by}", fresh_id());
    let says = paper(&caller, &of_paper, "application/pdf", NOTE).refused(422, "of");
    assert_eq!(says.body["key"], "paper-of-paper");

    // Found by its deed, its lot, its animal, and from what was made of it.
    let cut = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig, "grams": 2_000 }],
        "outputs": [{ "product": "pork-chop", "grams": 1_900 }] });
    let chop = caller.deed("/api/steps", cut).expect(201).code(0);
    let animal = caller.read(&format!("/api/lots/{chop}/origins"))["animals"][0]["id"].clone();
    let all = ["delivery-note", "photo", "print-out"];
    for query in [
        format!("of={deed}"),
        format!("lot={pig}"),
        format!("lot={chop}"),
        format!("animal={}", animal.as_str().unwrap()),
    ] {
        assert_eq!(kinds(&caller, &query), all, "{query}");
    }
    caller
        .get(&format!("/api/papers?of={deed}&lot={pig}"))
        .expect(422);
    let page = caller.get(&format!("/papers?lot={chop}")).expect(200);
    let page = String::from_utf8(page.bytes).unwrap();
    assert!(
        page.contains("note 118") && page.contains(&format!("src=\"/api/papers/{photo}\"")),
        "{page}"
    );

    // Byte for byte, and so that nothing of it runs.
    assert_eq!(
        caller
            .get(&format!("/api/papers/{photo}"))
            .expect(200)
            .bytes,
        PNG
    );
    let told = caller.read(&format!("/api/papers?of={deed}"))["papers"][1].clone();
    assert_eq!(
        (&told["form"], &told["bytes"]),
        (&json!("image/png"), &json!(PNG.len()))
    );
    for (paper, kind, how) in [
        (&photo, "image/png", "inline"),
        (&id, "application/pdf", "attachment"),
        (&log, "text/plain; charset=iso-8859-1", "attachment"),
    ] {
        let told = headers(&house, &format!("/api/papers/{paper}"));
        for has in [
            format!("content-type: {kind}"),
            format!("content-disposition: {how};"),
            "x-content-type-options: nosniff".into(),
            "content-security-policy: sandbox; default-src 'none'".into(),
        ] {
            assert!(told.contains(&has), "{has} is not in {told}");
        }
    }

    // Taken back like any deed: it stays, and says so.
    let void = format!("/api/steps/{photo}/void");
    caller
        .deed(&void, json!({ "why": "of another pig" }))
        .expect(201);
    let papers = caller.read(&format!("/api/papers?of={deed}"));
    assert_eq!(papers["papers"][1]["voided"], true);
    assert_eq!(
        caller
            .get(&format!("/api/papers/{photo}"))
            .expect(200)
            .bytes,
        PNG
    );
    let counter = json!({ "name": "till", "role": "counter" });
    let till = caller.post("/api/tokens", &counter).expect(201).body;
    let till = caller.showing(till["token"].as_str().unwrap());
    paper(&till, &another(), "application/pdf", NOTE).expect(403);
    till.get(&format!("/api/papers/{id}")).expect(200);
}

/// A deed of four years ago.
fn long_ago(caller: &Caller, path: &str, mut body: Value, minutes: i64) -> Value {
    body["at"] = json!(moment(minutes - 4 * 366 * 24 * 60));
    body["note"] = json!("from the old book");
    caller.deed(path, body).expect(201).body
}

fn what_a_paper_holds_goes_when_nobody_needs_it_and_not_before(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let animal = json!({ "farm": "BRC", "species": "pig", "killed_on": chrono_day(-4 * 366 - 2),
        "abattoir": "DEMO-17", "carcass": "0001", "side": "left" });
    let receipt =
        json!({ "place": "rail", "product": "pig-half", "grams": 20_000, "animal": animal });
    let pig = long_ago(&caller, "/api/receipts", receipt, 0);
    let (lot, deed) = (
        pig["lots"][0]["code"].as_str().unwrap(),
        pig["id"].as_str().unwrap(),
    );
    let old = fresh_id();
    let then = moment(1 - 4 * 366 * 24 * 60).replace('+', "%2B");
    let asked = format!("id={old}&of={deed}&kind=certificate&by=Cook&at={then}&note=late");
    paper(&caller, &asked, "application/pdf", NOTE).expect(201);

    let thin = |papers: &[&str]| {
        let body = json!({ "papers": papers, "why": "older than any rule asks" });
        caller.deed("/api/thinnings", body)
    };
    let may_go = || {
        caller.read("/api/keeping")["may_be_thinned"]
            .as_array()
            .unwrap()
            .len()
    };
    let key = |answer: Answer| answer.expect(409).body["key"].clone();
    // The half pig still hangs.
    assert_eq!(key(thin(&[&old])), "paper-needed-on-hand");
    assert_eq!(may_go(), 0);
    let gone = json!({ "kind": "discard", "lot": lot, "why": "spoilt" });
    long_ago(&caller, "/api/departures", gone, 60);
    assert_eq!(may_go(), 1);
    // Somebody asks after something: nothing goes meanwhile.
    let incident = json!({ "told_by": "Harle Gate", "hazard": "residue", "hold": true, "why": "Called",
        "drill": true, "scope": { "start": [{ "lot": lot }], "spreads": "lineage" } });
    let incident = caller.deed("/api/incidents", incident);
    let incident = match incident.status {
        201 => incident.body["id"].clone(),
        _ => panic!("{}", incident.body),
    };
    assert_eq!(key(thin(&[&old])), "paper-needed-incident");
    assert_eq!(may_go(), 0);
    let close = format!("/api/incidents/{}/close", incident.as_str().unwrap());
    caller.deed(&close, json!({ "why": "done" })).expect(201);
    // What was brought today is kept by the rules of the place.
    let fresh = fresh_id();
    let asked = format!("id={fresh}&of={deed}&kind=photo&by=Cook");
    paper(&caller, &asked, "image/png", PNG).expect(201);
    assert_eq!(key(thin(&[&old, &fresh])), "paper-kept-until");
    assert_eq!(
        caller.get(&format!("/api/papers/{old}")).expect(200).bytes,
        NOTE
    );
    let cook = json!({ "name": "a cook", "role": "cook" });
    let cook = caller.post("/api/tokens", &cook).expect(201).body;
    let cook = caller.showing(cook["token"].as_str().unwrap());
    let body = json!({ "papers": [old], "why": "room" });
    assert_eq!(
        cook.deed("/api/thinnings", body).expect(403).body["right"],
        "thin"
    );

    let done = thin(&[&old]).expect(201).body;
    let gone = caller.get(&format!("/api/papers/{old}")).expect(410);
    assert_eq!(gone.body["key"], "paper-thinned");
    let told = caller.read(&format!("/api/papers?of={deed}"))["papers"][0].clone();
    assert_eq!(
        (&told["thinned"], &told["bytes"]),
        (&json!(true), &json!(NOTE.len()))
    );
    assert_eq!(key(thin(&[&old])), "paper-thinned-before");
    let void = format!("/api/steps/{}/void", done["id"].as_str().unwrap());
    let says = caller.deed(&void, json!({ "why": "no" })).expect(409);
    assert_eq!(says.body["key"], "void-of-thinning");
    // Each rule of the place says until when, with its row.
    let keeping = caller.read("/api/keeping");
    let rules = keeping["rules"].as_array().unwrap();
    assert!(
        rules.len() > 5 && rules.iter().all(|rule| rule["row"] != ""),
        "{keeping}"
    );
    assert_eq!(keeping["thinned"], 1);
    let told = std::process::Command::new(stories::house::binary())
        .args(["keeping", "--database", &house.database])
        .output()
        .unwrap();
    let told = String::from_utf8(told.stdout).unwrap();
    assert!(
        told.contains("confirmed-X-US-21") && told.contains("thinned: 1"),
        "{told}"
    );
}
