//! Labels are asked of a printer, come out once, and are settled by people.
//! The printer is one for stories; a real one is in `ippeveprinter.rs`.

use serde_json::{Value, json};
use stories::printer::Manners;
use stories::queue::{chops, kitchen, numbers, once_each, print, wait};
use stories::{Caller, Engine, Printer, on_both_engines};

on_both_engines! {
    labels_come_out_once_and_as_they_were_kept
    the_same_again_is_answered_and_not_printed
    a_size_that_is_not_there_is_refused
    a_printer_that_takes_dots_only_gets_dots
    what_waits_can_be_cancelled
    what_is_undone_takes_its_waiting_labels_along
    a_jam_is_settled_pack_by_pack
    the_list_the_page_and_the_record
}

fn labels_come_out_once_and_as_they_were_kept(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 6);
    let prints = print(&caller, &lot);
    assert_eq!(prints.len(), 6);
    let read = wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
    for sheet in printer.paper() {
        let print = stories::printer::print_of(&sheet.token);
        assert_eq!(sheet.format, "application/pdf");
        let label = caller
            .get(&format!("/api/prints/{print}/label.pdf"))
            .expect(200);
        assert_eq!(label.bytes, sheet.document, "the label of print {print}");
    }
    assert_eq!(
        (&read[3]["pack"], &read[3]["reprint"]),
        (&json!(4), &json!(0))
    );
    let states: Vec<&str> = read[0]["events"]
        .as_array()
        .unwrap()
        .iter()
        .map(|event| event["state"].as_str().unwrap())
        .collect();
    assert_eq!(states, ["waiting", "sending", "sending", "sent", "printed"]);
    // The list changes afterwards; what was printed does not.
    let product = caller.get("/api/products/pork-chop").expect(200);
    let mut other = product.body.clone();
    other["names"]["en"] = json!("Another name");
    caller
        .put_over(
            "/api/products/pork-chop",
            product.etag.as_deref().unwrap(),
            &other,
        )
        .expect(200);
    let label = caller
        .get(&format!("/api/prints/{}/label.pdf", prints[0]))
        .expect(200);
    assert!(
        printer
            .paper()
            .iter()
            .any(|sheet| sheet.document == label.bytes)
    );
}

fn the_same_again_is_answered_and_not_printed(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 3);
    let id = stories::call::fresh_id();
    let asked = json!({ "id": id, "by": "Cook", "printer": "bench", "lot": lot, "packs": [1, 2] });
    let first = caller.post("/api/prints", &asked).expect(201);
    let prints = numbers(&first.body);
    wait(&caller, &prints, &["printed"]);
    assert_eq!(
        caller.post("/api/prints", &asked).expect(200).body,
        first.body
    );
    // Pack 3 is new, 1 and 2 are not; nothing of it is printed.
    let refused = caller
        .deed("/api/prints", json!({ "printer": "bench", "lot": lot }))
        .refused(409, "packs");
    assert_eq!(refused.body["type"], "/problems/printed-before");
    let detail = refused.body["detail"].as_str().unwrap();
    assert!(
        detail.contains("packs 1 to 2") && detail.contains("by Cook"),
        "{detail}"
    );
    caller
        .deed(
            "/api/prints",
            json!({ "printer": "bench", "lot": format!("{lot}/3") }),
        )
        .expect(201);
    for (body, status, field) in [
        (json!({ "printer": "bench" }), 422, "lot"),
        (json!({ "printer": "none", "lot": lot }), 422, "printer"),
        (
            json!({ "printer": "bench", "lot": lot, "packs": [9] }),
            422,
            "packs",
        ),
        (
            json!({ "printer": "bench", "lot": lot, "template": "none" }),
            422,
            "template",
        ),
        (
            json!({ "printer": "bench", "lot": lot, "again": { "why": "" } }),
            422,
            "again.why",
        ),
    ] {
        caller.deed("/api/prints", body).refused(status, field);
    }
    let void = json!({ "why": "a mistake" });
    caller
        .deed(&format!("/api/steps/{id}/void"), void)
        .refused(409, None);
}

fn a_size_that_is_not_there_is_refused(engine: Engine) {
    let printer = Printer::new(Manners {
        sizes: vec![(10200, 15200)],
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 2);
    let asked = json!({ "printer": "bench", "lot": lot, "template": "tub" });
    let refused = caller
        .deed("/api/prints", asked.clone())
        .refused(409, "printer");
    let detail = refused.body["detail"].as_str().unwrap();
    assert!(
        detail.contains("it needs 51 x 51 mm, and the printer says that it holds 102 x 152 mm. Put in a roll of 51 x 51 mm"),
        "{detail}"
    );
    // One that says it has it, and then says no: told with the print, and free to be asked for again.
    printer.change(|manners| {
        manners.sizes.push((5100, 5100));
        manners.refuses_size = true;
    });
    let prints = numbers(&caller.deed("/api/prints", asked.clone()).expect(201).body);
    let read = wait(&caller, &prints, &["refused"]);
    assert!(!read[0]["trouble"].as_str().unwrap().is_empty());
    printer.change(|manners| manners.refuses_size = false);
    let prints = numbers(&caller.deed("/api/prints", asked).expect(201).body);
    let read = wait(&caller, &prints, &["printed"]);
    assert_eq!(read[0]["reprint"], 0);
    once_each(&printer, &prints);
    // Raster only: said in words, not sent.
    printer.change(|manners| manners.formats = vec!["image/urf"]);
    let other = chops(&caller, "0608-18", 1);
    let prints = numbers(
        &caller
            .deed(
                "/api/prints",
                json!({ "printer": "bench", "lot": other, "template": "tub" }),
            )
            .expect(201)
            .body,
    );
    let read = wait(&caller, &prints, &["refused"]);
    assert!(read[0]["trouble"].as_str().unwrap().contains("image/urf"));
}

fn a_printer_that_takes_dots_only_gets_dots(engine: Engine) {
    let printer = Printer::new(Manners {
        formats: vec!["image/pwg-raster"],
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 3);
    let prints = print(&caller, &lot);
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
    for sheet in printer.paper() {
        assert_eq!(sheet.format, "image/pwg-raster");
        assert!(sheet.document.starts_with(b"RaS2PwgRaster"));
    }
}

fn what_waits_can_be_cancelled(engine: Engine) {
    let printer = Printer::new(Manners {
        reasons: vec!["media-jam"],
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 3);
    let prints = print(&caller, &lot);
    let cancel = json!({ "prints": [prints[1]] });
    caller
        .deed("/api/print-cancellations", cancel.clone())
        .expect(201);
    caller
        .deed("/api/print-cancellations", cancel)
        .refused(409, "prints");
    printer.change(|manners| manners.reasons.clear());
    wait(&caller, &[prints[0], prints[2]], &["printed"]);
    once_each(&printer, &[prints[0], prints[2]]);
    caller
        .deed("/api/print-cancellations", json!({ "prints": [prints[0]] }))
        .refused(409, "prints");
}

/// Voids what made a lot; what was said then.
fn undone(caller: &Caller, lot: &str) -> String {
    let deed = caller.lot(lot)["made_by_step"].clone();
    let void = format!("/api/steps/{}/void", deed.as_str().unwrap());
    let done = caller.deed(&void, json!({ "why": "a mistake" }));
    done.expect(201).body["warnings"].to_string()
}

fn what_is_undone_takes_its_waiting_labels_along(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    // What came out is to be taken off, and is named by its packs.
    let out = chops(&caller, "0608-17", 3);
    let printed = print(&caller, &out);
    wait(&caller, &printed, &["printed"]);
    let said = undone(&caller, &out);
    assert!(said.contains("Take these labels off"), "{said}");
    assert!(said.contains("/ 1–3"), "{said}");
    assert!(!said.contains("cancelled"), "{said}");
    // What still waits is cancelled, nobody is sent to look for it, and the printer never sees it.
    printer.change(|manners| manners.reasons = vec!["media-jam"]);
    let waits = chops(&caller, "0608-18", 3);
    let prints = print(&caller, &waits);
    let said = undone(&caller, &waits);
    assert!(said.contains("3 labels that still waited"), "{said}");
    assert!(!said.contains("Take these labels off"), "{said}");
    let events = wait(&caller, &prints, &["cancelled"])[0]["events"].clone();
    assert!(
        events.to_string().contains("undid what it was of"),
        "{events}"
    );
    // A pack that was only touched keeps the label that was asked for before, and loses the one of what is undone.
    let kept = chops(&caller, "0608-19", 1);
    let first = print(&caller, &kept);
    let frozen = json!({ "lot": kept, "packs": [1], "state": "frozen", "to": "freezer" });
    let frozen = caller.deed("/api/moves", frozen).expect(201).body["id"].clone();
    let asked = json!({ "printer": "bench", "lot": kept, "again": { "why": "frozen" } });
    let second = numbers(&caller.deed("/api/prints", asked).expect(201).body);
    let void = format!("/api/steps/{}/void", frozen.as_str().unwrap());
    caller
        .deed(&void, json!({ "why": "a mistake" }))
        .expect(201);
    wait(&caller, &second, &["cancelled"]);
    printer.change(|manners| manners.reasons.clear());
    wait(&caller, &first, &["printed"]);
    let sent: Vec<i64> = printed.iter().chain(&first).copied().collect();
    once_each(&printer, &sent);
}

fn a_jam_is_settled_pack_by_pack(engine: Engine) {
    let printer = Printer::new(Manners {
        breaks_off: (4, None),
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 4);
    let prints = print(&caller, &lot);
    wait(&caller, &prints, &["unsure"]);
    let settle = |came_out: [bool; 4], again: Option<bool>| {
        let seen: Vec<Value> = prints
            .iter()
            .zip(came_out)
            .map(|(print, came_out)| json!({ "print": print, "came_out": came_out }))
            .collect();
        json!({ "prints": seen, "again": again })
    };
    let before = house.check();
    for (wrong, field) in [
        (json!({ "prints": [] }), "prints"),
        (
            json!({ "prints": [{ "print": prints[0], "came_out": true }, { "print": prints[0], "came_out": false }] }),
            "prints[1].print",
        ),
    ] {
        caller
            .deed("/api/print-settlements", wrong)
            .refused(422, field);
    }
    assert_eq!(house.check(), before);
    let done = caller
        .deed(
            "/api/print-settlements",
            settle([true, true, false, false], None),
        )
        .expect(201);
    let anew = numbers(&done.body)[4..].to_vec();
    assert_eq!(anew.len(), 2);
    wait(&caller, &prints[..2], &["printed"]);
    wait(&caller, &prints[2..], &["spoilt"]);
    wait(&caller, &anew, &["printed"]);
    once_each(&printer, &anew);
    // What is settled stays settled; a blank label that the printer took for printed can be told.
    caller
        .deed(
            "/api/print-settlements",
            json!({ "prints": [{ "print": prints[2], "came_out": true }] }),
        )
        .refused(409, "prints[0].print");
    let blank = json!({ "prints": [{ "print": anew[0], "came_out": false }], "again": false });
    assert_eq!(
        caller
            .deed("/api/print-settlements", blank)
            .expect(201)
            .body["prints"]
            .as_array()
            .unwrap()
            .len(),
        1
    );
    // Pack 3 has no label now, and is asked for as if for the first time.
    let third = json!({ "printer": "bench", "lot": lot, "packs": [3] });
    let third = numbers(&caller.deed("/api/prints", third).expect(201).body);
    assert_eq!(wait(&caller, &third, &["printed"])[0]["reprint"], 0);
}

fn the_list_the_page_and_the_record(engine: Engine) {
    let printer = Printer::new(Manners {
        breaks_off: (1, None),
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 3);
    let prints = print(&caller, &lot);
    wait(&caller, &prints, &["printed", "unsure"]);
    // What a printer does by itself leaves the record's digest as it was.
    let before = house.check();
    let state = caller.read("/api/printers/bench/state");
    assert_eq!(state["prints"], json!({ "printed": 2, "unsure": 1 }));
    assert_eq!(house.check(), before);
    let page = caller.read("/api/prints?printer=bench&state=printed&limit=1");
    assert_eq!(page["prints"][0]["print"], prints[2]);
    let next = page["next"].as_i64().expect("there is more");
    let page = caller.read(&format!(
        "/api/prints?printer=bench&state=printed&limit=1&after={next}"
    ));
    assert_eq!(
        (&page["prints"][0]["print"], &page["next"]),
        (&json!(prints[1]), &Value::Null)
    );
    let of_lot = caller.read(&format!("/api/prints?lot={lot}"));
    assert_eq!(of_lot["prints"].as_array().unwrap().len(), 3);
    caller.get("/api/prints?state=lost").refused(422, "state");
    caller.get("/api/prints/999999").refused(404, None);
    caller.get("/api/prints/x/label.pdf").refused(404, None);
    let html = String::from_utf8(caller.get("/printing").expect(200).bytes).unwrap();
    for words in ["Bench", "It came out", "It did not", "data-print"] {
        assert!(html.contains(words), "{words} is not on the page");
    }
    for (address, field) in [
        ("http://printer/", "address"),
        ("https://printer/ipp/print", "address"),
    ] {
        let entry = json!({ "code": "other", "name": "Other", "address": address });
        caller.post("/api/printers", &entry).refused(422, field);
    }
}
