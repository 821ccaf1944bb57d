//! Labels go to a printer once, and the record knows what became of each, whatever the printer, the
//! line or the power does. The printer here is one for stories; a real one is in `ippeveprinter.rs`.

use ipp::model::Operation;
use serde_json::{Value, json};
use std::time::{Duration, Instant};
use stories::printer::Manners;
use stories::{Caller, Engine, House, Printer, on_both_engines};

on_both_engines! {
    labels_come_out_once_and_as_they_were_kept
    the_same_again_is_answered_and_not_printed
    a_reprint_is_marked_and_shows_no_later_date
    a_printer_that_is_off_is_waited_for
    an_empty_roll_is_told_and_waited_for
    a_size_that_is_not_there_is_refused
    lost_answers_print_nothing_twice
    a_printer_that_only_prints_at_once
    a_printer_that_forgets_leaves_doubt_to_people
    what_is_broken_off_before_it_came_out_goes_again
    a_jam_is_settled_pack_by_pack
    what_waits_can_be_cancelled
    a_kill_in_the_middle_loses_and_doubles_nothing
    the_list_the_page_and_the_record
}

/// A kitchen with a printer in its list.
fn kitchen(engine: Engine, printer: &Printer) -> House {
    let house = House::furnished(engine);
    list(&house.caller(), printer);
    house
}

fn list(caller: &Caller, printer: &Printer) {
    let entry = json!({ "code": "bench", "name": "Bench", "address": printer.address() });
    caller.post("/api/printers", &entry).expect(201);
}

/// A lot of chops in so many packs.
fn chops(caller: &Caller, carcass: &str, packs: u32) -> String {
    let pig = caller.half_pig(carcass, 10_000);
    let step = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig }],
        "outputs": [{ "product": "pork-chop", "grams": 9_000, "pack_count": packs }] });
    caller.deed("/api/steps", step).expect(201).code(0)
}

fn print(caller: &Caller, lot: &str) -> Vec<i64> {
    let asked = json!({ "printer": "bench", "lot": lot });
    numbers(&caller.deed("/api/prints", asked).expect(201).body)
}

fn numbers(body: &Value) -> Vec<i64> {
    let prints = body["prints"].as_array().expect("prints");
    prints
        .iter()
        .map(|print| print["print"].as_i64().expect("a number"))
        .collect()
}

/// Waits until every one of these prints is in one of these states.
#[track_caller]
fn wait(caller: &Caller, prints: &[i64], states: &[&str]) -> Vec<Value> {
    let give_up = Instant::now() + Duration::from_secs(60);
    loop {
        let read: Vec<Value> = prints
            .iter()
            .map(|print| caller.get(&format!("/api/prints/{print}")).expect(200).body)
            .collect();
        if read
            .iter()
            .all(|print| states.contains(&print["state"].as_str().unwrap()))
        {
            return read;
        }
        assert!(Instant::now() < give_up, "not {states:?}: {read:#?}");
        std::thread::sleep(Duration::from_millis(30));
    }
}

#[track_caller]
fn once_each(printer: &Printer, prints: &[i64]) {
    let copies = printer.copies();
    assert_eq!(
        copies.into_iter().collect::<Vec<_>>(),
        prints.iter().map(|print| (*print, 1)).collect::<Vec<_>>()
    );
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
    // Frozen for a day and thawed: the record's date is a later one, the label's is not.
    let freeze = json!({ "lot": lot, "packs": [1], "state": "frozen", "to": "freezer" });
    caller.deed("/api/moves", freeze).expect(201);
    let frozen = numbers(&caller.deed("/api/prints", again.clone()).expect(201).body);
    let frozen = wait(&caller, &frozen, &["printed"]);
    assert_eq!(
        (&frozen[0]["use_by"], &frozen[0]["reprint"]),
        (&Value::Null, &json!(2))
    );
    let printed_day = second[0]["use_by"].as_str().unwrap();
    for print in [&frozen[0], &second[0]] {
        assert_ne!(
            print["use_by"].as_str().map(|day| day > printed_day),
            Some(true)
        );
    }
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

fn a_printer_that_is_off_is_waited_for(engine: Engine) {
    let mut printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 3);
    printer.switch_off();
    let asked = caller
        .deed("/api/prints", json!({ "printer": "bench", "lot": lot }))
        .expect(201);
    assert!(
        asked.body["warnings"][0]
            .as_str()
            .unwrap()
            .contains("does not answer")
    );
    let prints = numbers(&asked.body);
    let told = || {
        caller
            .get(&format!("/api/prints/{}", prints[0]))
            .expect(200)
            .body
    };
    let give_up = Instant::now() + Duration::from_secs(20);
    while told()["trouble"].is_null() {
        assert!(Instant::now() < give_up);
        std::thread::sleep(Duration::from_millis(50));
    }
    assert!(
        told()["trouble"]
            .as_str()
            .unwrap()
            .contains("“Bench” does not answer")
    );
    assert_eq!(told()["state"], "waiting");
    let state = caller.get("/api/printers/bench/state").expect(200).body;
    assert_eq!(
        (&state["reachable"], &state["prints"]["waiting"]),
        (&json!(false), &json!(3))
    );
    printer.switch_on();
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
}

fn an_empty_roll_is_told_and_waited_for(engine: Engine) {
    let printer = Printer::new(Manners {
        reasons: vec!["media-empty-error"],
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 2);
    let asked = caller
        .deed("/api/prints", json!({ "printer": "bench", "lot": lot }))
        .expect(201);
    let says = "The printer “Bench” is out of labels: put in a roll, the queue goes on by itself.";
    assert_eq!(asked.body["warnings"], json!([says]));
    let state = caller.get("/api/printers/bench/state").expect(200).body;
    assert_eq!(
        (&state["state"], &state["trouble"]),
        (&json!("stopped"), &json!(says))
    );
    std::thread::sleep(Duration::from_millis(700));
    assert_eq!(printer.times_asked(Operation::CreateJob), 0);
    printer.change(|manners| manners.reasons.clear());
    let prints = numbers(&asked.body);
    let read = wait(&caller, &prints, &["printed"]);
    assert_eq!(read[0]["trouble"], Value::Null);
    once_each(&printer, &prints);
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
        detail.contains("The label is 51 x 51 mm; the printer has 102 x 152."),
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

fn lost_answers_print_nothing_twice(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let mut all = Vec::new();
    for (nth, (lost, question)) in [
        (Operation::CreateJob, false),
        (Operation::CreateJob, true),
        (Operation::SendDocument, false),
        (Operation::SendDocument, true),
        (Operation::GetJobAttributes, false),
        (Operation::GetPrinterAttributes, false),
    ]
    .into_iter()
    .enumerate()
    {
        let lot = chops(&caller, &format!("0608-{nth}"), 2);
        printer.change(|manners| match question {
            true => manners.loses_question = Some(lost),
            false => manners.loses_answer = Some(lost),
        });
        let prints = print(&caller, &lot);
        wait(&caller, &prints, &["printed"]);
        all.extend(prints);
    }
    once_each(&printer, &all);
}

fn a_printer_that_only_prints_at_once(engine: Engine) {
    let printer = Printer::new(Manners {
        creates_jobs: false,
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let mut all = print(&caller, &chops(&caller, "0608-1", 3));
    wait(&caller, &all, &["printed"]);
    // The answer is lost: the label is in the printer's list.
    printer.change(|manners| manners.loses_answer = Some(Operation::PrintJob));
    let prints = print(&caller, &chops(&caller, "0608-2", 2));
    wait(&caller, &prints, &["printed"]);
    all.extend(prints);
    // The question is lost: it is not, and after a while that is proof.
    printer.change(|manners| manners.loses_question = Some(Operation::PrintJob));
    let prints = print(&caller, &chops(&caller, "0608-3", 1));
    wait(&caller, &prints, &["printed"]);
    all.extend(prints);
    once_each(&printer, &all);
    // A printer without a list cannot tell: a person must.
    printer.change(|manners| {
        manners.lists_jobs = false;
        manners.loses_answer = Some(Operation::PrintJob);
    });
    let prints = print(&caller, &chops(&caller, "0608-4", 1));
    wait(&caller, &prints, &["unsure"]);
    let seen = json!({ "prints": [{ "print": prints[0], "came_out": true }] });
    caller.deed("/api/print-settlements", seen).expect(201);
    wait(&caller, &prints, &["printed"]);
    all.extend(prints);
    once_each(&printer, &all);
}

fn a_printer_that_forgets_leaves_doubt_to_people(engine: Engine) {
    let mut printer = Printer::new(Manners {
        holds: true,
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let lot = chops(&caller, "0608-17", 4);
    let prints = print(&caller, &lot);
    wait(&caller, &prints[..2], &["sent"]);
    // It has two of them, and nothing has come out. Then somebody pulls its plug.
    printer.switch_off();
    printer.change(|manners| manners.holds = false);
    printer.switch_on();
    let read = wait(&caller, &prints, &["unsure", "printed"]);
    let states: Vec<&str> = read
        .iter()
        .map(|print| print["state"].as_str().unwrap())
        .collect();
    assert_eq!(states, ["unsure", "unsure", "printed", "printed"]);
    assert!(
        read[0]["trouble"]
            .as_str()
            .unwrap()
            .contains("no longer knows this label")
    );
    once_each(&printer, &prints[2..]);
    // Not a word of the printer's ends the doubt, and the pack is not printed a second time unasked.
    caller
        .deed("/api/prints", json!({ "printer": "bench", "lot": lot }))
        .refused(409, "packs");
    let seen = json!({ "prints": [{ "print": prints[0], "came_out": false }, { "print": prints[1], "came_out": false }] });
    let settled = caller.deed("/api/print-settlements", seen).expect(201);
    let anew = numbers(&settled.body)[2..].to_vec();
    let read = wait(&caller, &anew, &["printed"]);
    assert_eq!(
        (&read[0]["reprint"], &read[0]["instead_of"]),
        (&json!(0), &json!(prints[0]))
    );
    let mut out = prints[2..].to_vec();
    out.extend(&anew);
    once_each(&printer, &out);
    wait(&caller, &prints[..2], &["spoilt"]);
}

fn what_is_broken_off_before_it_came_out_goes_again(engine: Engine) {
    let printer = Printer::new(Manners {
        breaks_off: (2, Some(0)),
        ..Manners::default()
    });
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let prints = print(&caller, &chops(&caller, "0608-17", 3));
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
    // Three times is enough.
    printer.change(|manners| manners.breaks_off = (3, Some(0)));
    let refused = print(&caller, &chops(&caller, "0608-18", 1));
    let read = wait(&caller, &refused, &["refused"]);
    assert_eq!(read[0]["attempts"], 3);
    // Broken off without a number: nobody knows.
    printer.change(|manners| manners.breaks_off = (1, None));
    let unsure = print(&caller, &chops(&caller, "0608-19", 1));
    wait(&caller, &unsure, &["unsure"]);
    once_each(&printer, &prints);
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

fn a_kill_in_the_middle_loses_and_doubles_nothing(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let mut house = kitchen(engine, &printer);
    let lot = chops(&house.caller(), "0608-17", 40);
    let prints = print(&house.caller(), &lot);
    for nth in 0..5 {
        std::thread::sleep(Duration::from_millis(15 + 30 * nth));
        house.kill();
        house.restart();
    }
    let caller = house.caller();
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
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
    let state = caller.get("/api/printers/bench/state").expect(200).body;
    assert_eq!(state["prints"], json!({ "printed": 2, "unsure": 1 }));
    assert_eq!(house.check(), before);
    let page = caller
        .get("/api/prints?printer=bench&state=printed&limit=1")
        .expect(200)
        .body;
    assert_eq!(page["prints"][0]["print"], prints[2]);
    let next = page["next"].as_i64().expect("there is more");
    let page = caller
        .get(&format!(
            "/api/prints?printer=bench&state=printed&limit=1&after={next}"
        ))
        .expect(200)
        .body;
    assert_eq!(
        (&page["prints"][0]["print"], &page["next"]),
        (&json!(prints[1]), &Value::Null)
    );
    let of_lot = caller
        .get(&format!("/api/prints?lot={lot}"))
        .expect(200)
        .body;
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
        ("ipps://printer/ipp/print", "address"),
    ] {
        let entry = json!({ "code": "other", "name": "Other", "address": address });
        caller.post("/api/printers", &entry).refused(422, field);
    }
}
