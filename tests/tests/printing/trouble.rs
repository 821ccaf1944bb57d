//! Whatever the printer, the line or the power does: no label is lost, none comes out twice, and what
//! nobody can know is left to people.

use ipp::model::Operation;
use serde_json::{Value, json};
use stories::printer::Manners;
use stories::queue::{chops, kitchen, numbers, once_each, print, until, wait};
use stories::{Engine, Neighbour, Printer, on_both_engines};

on_both_engines! {
    a_printer_that_is_off_is_waited_for
    an_empty_roll_is_told_and_waited_for
    lost_answers_print_nothing_twice
    a_printer_that_only_prints_at_once
    a_printer_that_forgets_leaves_doubt_to_people
    what_is_broken_off_before_it_came_out_goes_again
    a_kill_in_the_middle_loses_and_doubles_nothing
    two_services_share_a_printer
    the_end_of_the_service_waits_for_no_printer
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
    let told = || caller.read(&format!("/api/prints/{}", prints[0]));
    until(|| !told()["trouble"].is_null());
    assert!(
        told()["trouble"]
            .as_str()
            .unwrap()
            .contains("“Bench” does not answer")
    );
    assert_eq!(told()["state"], "waiting");
    let state = caller.read("/api/printers/bench/state");
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
    let state = caller.read("/api/printers/bench/state");
    assert_eq!(
        (&state["state"], &state["trouble"]),
        (&json!("stopped"), &json!(says))
    );
    // It is asked again and again how it is, and no label is sent meanwhile.
    let looked = printer.times_asked(Operation::GetPrinterAttributes);
    until(|| printer.times_asked(Operation::GetPrinterAttributes) >= looked + 2);
    assert_eq!(printer.times_asked(Operation::CreateJob), 0);
    printer.change(|manners| manners.reasons.clear());
    let prints = numbers(&asked.body);
    let read = wait(&caller, &prints, &["printed"]);
    assert_eq!(read[0]["trouble"], Value::Null);
    once_each(&printer, &prints);
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

fn a_kill_in_the_middle_loses_and_doubles_nothing(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let mut house = kitchen(engine, &printer);
    let lot = chops(&house.caller(), "0608-17", 40);
    let prints = print(&house.caller(), &lot);
    // Each time at another point of the talk with the printer: forty labels ask it more than 120 times.
    for more in [2, 7, 11, 17, 24] {
        let asked = printer.questions() + more;
        until(|| printer.questions() >= asked);
        house.kill();
        house.restart();
    }
    let caller = house.caller();
    wait(&caller, &prints, &["printed"]);
    once_each(&printer, &prints);
}

fn two_services_share_a_printer(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let mut house = kitchen(engine, &printer);
    let neighbour = Neighbour::of(&house);
    let mut prints = print(&house.caller(), &chops(&house.caller(), "0608-17", 40));
    until(|| printer.paper().len() >= 4);
    // The one that prints is killed, and the other does not wait for its lease to run out.
    house.kill();
    until(|| printer.paper().len() >= 12);
    house.restart();
    prints.extend(print(
        &house.caller(),
        &chops(&house.caller(), "0608-18", 40),
    ));
    until(|| printer.paper().len() >= 48);
    drop(neighbour);
    wait(&house.caller(), &prints, &["printed"]);
    once_each(&printer, &prints);
}

fn the_end_of_the_service_waits_for_no_printer(engine: Engine) {
    let printer = Printer::new(Manners::default());
    let mut house = kitchen(engine, &printer);
    let prints = print(&house.caller(), &chops(&house.caller(), "0608-17", 30));
    until(|| printer.paper().len() >= 3);
    // It has labels and prints none of them: who waited for it would wait for ever.
    printer.change(|manners| manners.holds = true);
    house.end();
    assert!(printer.paper().len() < prints.len());
    house.restart();
    printer.go_on();
    wait(&house.caller(), &prints, &["printed"]);
    once_each(&printer, &prints);
}
