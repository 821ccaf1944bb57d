//! Records that earlier versions wrote open, are sound, and answer as they did when they were written.

use stories::labels::{save, words};
use stories::old_records::{LOTS, all, ask, differences};
use stories::{Engine, on_both_engines};

on_both_engines! {
    an_old_record_answers_as_it_did
    an_old_lot_gets_labels_and_its_code_scans
}

fn an_old_record_answers_as_it_did(engine: Engine) {
    for kept in all(engine) {
        let house = kept.open();
        let now = ask(&house.caller(), house.folder());
        let before = kept.answers();
        assert!(before.len() > 80, "{} questions", before.len());
        let told: Vec<String> = before
            .iter()
            .flat_map(|(question, before)| match now.get(question) {
                Some(now) => differences(question, before, now),
                None => vec![format!("{question} is asked no more")],
            })
            .collect();
        assert!(told.is_empty(), "{kept}:\n{}", told.join("\n"));
        house.check();
    }
}

fn an_old_lot_gets_labels_and_its_code_scans(engine: Engine) {
    for kept in all(engine) {
        let house = kept.open();
        let caller = house.caller();
        for name in LOTS {
            let code = caller.noted(name);
            let lot = caller.lot(&code);
            let label = caller.get(&format!("/api/lots/{code}/labels.pdf?packs=1"));
            let pdf = save(house.folder(), "old.pdf", &label.expect(200).bytes);
            let (shown, text) = (lot["shown"].as_str().unwrap(), words(&pdf));
            assert!(text.contains(shown), "{kept}: {shown} in {text}");
            let page = caller.get(&format!("/lots/{code}")).expect(200).bytes;
            assert!(String::from_utf8(page).unwrap().contains(shown));
        }
    }
}
