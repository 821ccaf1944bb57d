//! Tables of a kitchen's lists in the words of the screens, and the file to begin with.

use crate::french::read;
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_table_may_be_headed_in_the_words_of_the_screen
}

/// What would become of a table: new, changed, wrong.
fn tried(caller: &Caller, list: &str, text: &str) -> (u64, u64, u64) {
    let path = format!("/api/{list}/import?try=true");
    let answer = caller.post_bytes(&path, "text/csv; charset=utf-8", text.as_bytes());
    let body = answer.expect(200).body;
    let of = |fate: &str| body[fate].as_u64().expect("a figure");
    (of("new"), of("changed"), of("wrong"))
}

fn a_table_may_be_headed_in_the_words_of_the_screen(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    for prices in [
        "Code;Price a kilogram\npork-chop;33\n",
        "Code;Prix au kilo\npork-chop;34\n",
        "code;price_per_kg\npork-chop;35\n",
    ] {
        assert_eq!(tried(&caller, "products", prices), (0, 1, 0), "{prices}");
    }
    // Who called it so is told so.
    let wrong = "Code;Prix au kilo\npork-chop;dear\n";
    let path = "/api/products/import?try=true";
    let told = caller
        .post_bytes(path, "text/csv", wrong.as_bytes())
        .expect(200);
    assert_eq!(
        told.body["lines"][0]["columns"][0], "prix au kilo",
        "{}",
        told.body
    );
    caller
        .post_bytes(path, "text/csv", b"Code;Colour\npork-chop;red\n")
        .expect(422);
    // The file to begin with is one that is taken, in each language, with the words of a screen in it.
    for language in ["en", "fr"] {
        for (list, rows) in [
            ("products", 2),
            ("farms", 1),
            ("suppliers", 1),
            ("abattoirs", 1),
            ("places", 1),
        ] {
            let sample = read(
                &house,
                &caller,
                &format!("/lists/{list}/sample.csv"),
                language,
            );
            assert_eq!(
                tried(&caller, list, &sample),
                (rows, 0, 0),
                "{list}, {language}: {sample}"
            );
        }
    }
    let sample = read(&house, &caller, "/lists/products/sample.csv", "fr");
    assert!(
        sample.contains("Poitrine de porc") && sample.contains(";Oui;"),
        "{sample}"
    );
}
