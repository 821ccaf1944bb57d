//! A printer is tried with a test label, and says for which of the kitchen's labels it has paper.

use serde_json::json;
use stories::printer::Manners;
use stories::queue::kitchen;
use stories::{Caller, Engine, Printer, on_both_engines};

on_both_engines! {
    a_printer_is_set_up_once_a_test_label_came_out
    a_printer_tells_for_which_labels_it_has_no_paper
    a_label_is_shown_on_the_paper_that_the_printer_has
}

/// Is the printer's step of setting up ticked?
fn ticked(caller: &Caller) -> bool {
    let page = caller.page("/set-up/people");
    let peg = page
        .split("<li")
        .find(|peg| peg.contains("\"/set-up/printer\""));
    peg.expect("a peg").starts_with(" class=\"was\"")
}

fn of_one_roll(roll: (i32, i32)) -> Printer {
    Printer::new(Manners {
        sizes: vec![roll],
        ..Manners::default()
    })
}

fn a_printer_is_set_up_once_a_test_label_came_out(engine: Engine) {
    let printer = of_one_roll((3000, 3000));
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let untried = "No label has come out here yet";
    assert!(!ticked(&caller), "it only stands in the list");
    let page = caller.page("/set-up/printer");
    let sizes = "The test label: 51 x 51, 76 x 57, 40 x 110, 102 x 76 or 102 x 152 mm";
    assert!(page.contains(untried) && page.contains(sizes), "{page}");
    let test = || caller.post("/api/printers/bench/test-label", &json!({}));
    let refused = test().expect(409);
    let says = refused.body["detail"].as_str().expect("why").to_owned();
    // Whatever roll would do, with what it has now.
    assert!(says.contains("says that it holds 30 x 30 mm"), "{says}");
    let rolls = "Put in a roll of 51 x 51, 76 x 57, 40 x 110, 102 x 76 or 102 x 152 mm";
    assert!(says.contains(rolls), "{says}");
    assert!(!ticked(&caller), "nothing came out");
    // It is told wherever the printer is.
    for page in ["/printing", "/set-up/printer"] {
        assert!(caller.page(page).contains(&says), "{page}");
    }
    // Another try that comes out, and it is done.
    printer.change(|manners| manners.sizes.push((5100, 5100)));
    test().expect(200);
    assert!(ticked(&caller));
    let page = caller.page("/set-up/printer");
    assert!(!page.contains(&says) && !page.contains(untried), "{page}");
    assert!(!caller.page("/printing").contains(&says));
    // One more in the list that prints nothing takes nothing from it.
    let other =
        json!({ "code": "other", "name": "Other", "address": "ipp://127.0.0.1:9/ipp/print" });
    caller.post("/api/printers", &other).expect(201);
    assert!(ticked(&caller));
}

fn a_printer_tells_for_which_labels_it_has_no_paper(engine: Engine) {
    let printer = of_one_roll((5100, 5100));
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let page = caller.page("/set-up/printer");
    for needed in [
        "What comes in: 102 x 76 or 102 x 152 mm",
        "The kitchen&#39;s own tubs and shelves: 51 x 51 or 102 x 76 mm",
        "What is on hold: 102 x 76 mm",
    ] {
        assert!(page.contains(needed), "{needed}: {page}");
    }
    let state = || caller.read("/api/printers/bench/state");
    let told = state();
    assert_eq!(told["state"], "ready, but not for all your labels");
    let lacks = told["lacks"].as_str().expect("what it lacks");
    assert!(lacks.contains("what is on hold: 102 x 76 mm"), "{lacks}");
    assert!(!lacks.contains("tubs"), "{lacks}");
    let paper = told["paper"].as_array().expect("line by line");
    assert!(
        paper.contains(&json!(
            "For the kitchen's own tubs and shelves: it has 51 x 51 mm."
        )),
        "{told}"
    );
    assert!(
        paper.contains(&json!("For what is on hold: it lacks 102 x 76 mm.")),
        "{told}"
    );
    assert!(lacks.contains("packs for customers: 62 x"), "{lacks}");
    // A roll of four by three inches is for all of them.
    printer.change(|manners| manners.sizes = vec![(5100, 5100), (10_200, 7_600)]);
    let told = state();
    assert_eq!(
        (&told["state"], &told["lacks"]),
        (&json!("ready"), &json!(null))
    );
    // Narrow paper is for customers' packs alone, and what is held is missed.
    printer.change(|manners| manners.sizes = vec![(6200, 10_000)]);
    let lacks = state()["lacks"].as_str().expect("a tag").to_owned();
    assert!(!lacks.contains("packs for customers"), "{lacks}");
    assert!(lacks.contains("what is on hold"), "{lacks}");
    // One that is for tubs alone lacks none of them.
    printer.change(|manners| manners.sizes = vec![(5100, 5100)]);
    let entry = caller.get("/api/printers/bench").expect(200);
    let mut tubs = entry.body.clone();
    tubs["templates"] = json!(["tub"]);
    caller
        .put_over("/api/printers/bench", entry.etag.as_deref().unwrap(), &tubs)
        .expect(200);
    let told = state();
    assert_eq!(
        (&told["state"], &told["lacks"]),
        (&json!("ready"), &json!(null))
    );
}

fn a_label_is_shown_on_the_paper_that_the_printer_has(engine: Engine) {
    let printer = of_one_roll((10_200, 15_200));
    let house = kitchen(engine, &printer);
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 9_000);
    let page = || caller.page(&format!("/lots/{pig}"));
    let shown = |page: &str| {
        let svg = page.split("<div class=\"label\"").nth(1).expect("a label");
        let size = svg.split("viewBox=\"").nth(1).expect("its size");
        size.split('"').next().unwrap_or_default().to_owned()
    };
    // Nobody asked the printer yet: the device that shows the label does.
    let before = page();
    assert!(before.contains("data-asks=\"bench\""), "{before}");
    caller.read("/api/printers/bench/state");
    let after = page();
    let told = "As the printer “Bench” prints it, on 102 × 152 mm.";
    assert!(after.contains(told), "{after}");
    assert!(!after.contains("data-asks"), "{after}");
    assert_ne!(shown(&before), shown(&after));
    let alone = caller.get(&format!("/lots/{pig}/label.svg")).expect(200);
    let alone = String::from_utf8_lossy(&alone.bytes).into_owned();
    assert!(alone.contains(&shown(&after)), "{alone}");
    // Paper that no label of it fits is no preview.
    printer.change(|manners| manners.sizes = vec![(3000, 3000)]);
    caller.read("/api/printers/bench/state");
    assert!(!page().contains("As the printer"), "{}", page());
    // The right roll is put in again, and somebody prints.
    printer.change(|manners| manners.sizes = vec![(10_200, 15_200)]);
    stories::queue::print(&caller, &pig);
    assert!(page().contains(told), "{}", page());
}
