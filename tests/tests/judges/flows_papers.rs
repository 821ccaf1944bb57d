//! A paper in a real browser: from the lot's page, by the camera's own button, refused, and undone.

use super::flows::{Hand, PHONE, TABLET};
use std::path::Path;
use stories::browser::Browser;
use stories::queue::until;
use stories::{Engine, House};

#[test]
fn a_photo_of_a_delivery_note_is_three_taps_from_the_lot() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let lot = caller.noted("L13");
    let corpus =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../server/tests/parsers/corpus/papers");
    let file = |name: &str| {
        let path = corpus.join(name).canonicalize().expect("it is on file");
        path.display().to_string()
    };
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open(&format!("/lots/{lot}"));
    hand.tap(&format!("a.act[href='/papers?lot={lot}']"));
    until(|| hand.text().contains("No papers yet"));
    hand.tap(".choices label:has([value=certificate])");
    browser.type_into("[data-file][capture]", &file("photo.jpg"));
    let deed = hand.did();
    assert_eq!(hand.taps, 2, "and one on the shutter");
    let kept = caller.read(&format!("/api/papers?lot={lot}"))["papers"][0].clone();
    assert_eq!(
        (&kept["kind"], &kept["id"]),
        (&"certificate".into(), &deed.clone().into())
    );
    // It belongs to what made the lot, unless somebody says otherwise.
    assert_eq!(kept["of"], caller.lot(&lot)["made_by_step"]);
    let sent = std::fs::read(corpus.join("photo.jpg")).unwrap();
    assert_eq!(
        caller.get(&format!("/api/papers/{deed}")).expect(200).bytes,
        sent
    );
    until(|| {
        let drawn = "return document.querySelector('.papers img')?.naturalWidth > 0";
        browser.run(drawn) == true
    });
    hand.tap("button.undo");
    until(|| hand.text().contains("Taken back"));
    assert!(browser.errors().is_empty());
    // What is none is refused where the form is, in the reader's words.
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", PHONE);
    hand.open(&format!("/papers?lot={lot}"));
    browser.type_into("[data-file]:not([capture])", &file("cut-off.jpg"));
    until(|| hand.text().contains("The end of this paper is missing"));
}
