//! The counter in a real browser: scanned, sold, undone, by touch and by keyboard alone, on each screen and in each
//! language, with the taps that it takes.

use serde_json::{Value, json};
use std::path::Path;
use stories::browser::Browser;
use stories::queue::until;
use stories::{Caller, Engine, House};

const SIZES: [(u32, u32); 3] = [(1280, 800), (820, 1180), (390, 844)];
const ENTER: &str = "\u{e007}";
const TAB: &str = "\u{e004}";

/// Somebody at the counter, with a scanner that types.
struct Counter<'a> {
    browser: &'a Browser,
    house: &'a House,
    taps: u32,
}

impl<'a> Counter<'a> {
    fn open(browser: &'a Browser, house: &'a House, screen: (u32, u32)) -> Counter<'a> {
        browser.resize(screen);
        browser.open(&format!("{}/counter", house.address));
        let counter = Counter {
            browser,
            house,
            taps: 0,
        };
        counter.run(WATCH);
        counter
    }

    fn run(&self, script: &str) -> Value {
        self.browser.run(script)
    }

    /// A scan: typing and Enter, into whatever has the cursor.
    fn scan(&self, code: &str) {
        self.browser.type_into(":focus", &format!("{code}{ENTER}"));
    }

    fn tap(&mut self, css: &str) {
        self.browser.tap(css);
        self.taps += 1;
    }

    fn waits_for(&self, css: &str) {
        let script = format!("return document.querySelector(`{css}`) !== null");
        until(|| self.run(&script) == true);
    }

    fn waits_for_word(&self, verdict: &str) {
        self.waits_for(&format!("[data-verdict={verdict}]"));
    }

    /// The deeds that the address says were just done.
    fn did(&self) -> Vec<String> {
        let mut ids = String::new();
        until(|| {
            let script = "return new URL(location.href).searchParams.get('did')";
            ids = self.run(script).as_str().unwrap_or_default().to_owned();
            !ids.is_empty()
        });
        ids.split(',').map(str::to_owned).collect()
    }

    /// Steps on with the keyboard until a selector finds what has the cursor; how many steps that were.
    fn step_to(&self, css: &str) -> u32 {
        let there = format!("return document.activeElement.matches(`{css}`)");
        for steps in 0..20 {
            if self.run(&there) == true {
                return steps;
            }
            self.browser.type_into(":focus", TAB);
        }
        panic!("{css} is not reached by keyboard");
    }
}

/// Keeps how long it took from Enter to the word on the screen.
const WATCH: &str = "
    window.took = [];
    let enter = null;
    document.addEventListener('keydown', (event) => {
        if (event.key === 'Enter') { enter = performance.now(); }
    }, true);
    new MutationObserver(() => {
        if (enter !== null && document.querySelector('[data-verdict]')) {
            const from = enter;
            enter = null;
            requestAnimationFrame(() => setTimeout(() => window.took.push(performance.now() - from)));
        }
    }).observe(document.documentElement, { childList: true, subtree: true });";

fn verdict(caller: &Caller, code: &str) -> Value {
    caller.read(&format!("/api/scan?code={code}"))["verdict"].clone()
}

#[test]
fn scanned_in_no_tap_sold_in_one_and_undone_in_one() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = format!("{}/13", caller.noted("L13"));
    let mut took = Vec::new();
    for (language, word) in [("en", "SELL"), ("fr", "VENDRE")] {
        let browser = Browser::reading(language);
        browser.be_patient();
        browser.sign_in(&house.address, "Tamsin Roke");
        for size in SIZES {
            let mut counter = Counter::open(&browser, &house, size);
            counter.scan(&bacon);
            counter.waits_for_word("sell");
            assert_eq!(counter.taps, 0);
            let told = "return document.querySelector('.verdict strong').textContent";
            assert_eq!(counter.run(told), word);
            fits(&counter, size);
            counter.tap("[data-sells] button");
            let did = counter.did();
            assert_eq!((counter.taps, did.len()), (1, 1));
            assert_eq!(verdict(&caller, &bacon), "gone");
            counter.taps = 0;
            counter.waits_for("button.undo");
            counter.tap("button.undo");
            counter.waits_for_word("sell");
            assert_eq!(counter.taps, 1);
            assert_eq!(verdict(&caller, &bacon), "sell");
            until(|| counter.run("return window.took.length > 0") == true);
            let first = counter.run("return window.took[0]");
            took.push(first.as_f64().expect("milliseconds"));
            assert!(browser.errors().is_empty());
        }
    }
    took.sort_by(f64::total_cmp);
    println!("scan to word, from Enter to the painted word, in ms: {took:.1?}");
}

/// The word, the allergens, the price and the acts are on one screen, without shifting it.
#[test]
fn a_lot_is_no_pack_and_a_part_is_no_code() {
    let house = House::demo(Engine::Sqlite);
    let bacon = house.caller().noted("L13");
    let browser = Browser::reading("en");
    browser.be_patient();
    browser.sign_in(&house.address, "Tamsin Roke");
    let mut counter = Counter::open(&browser, &house, SIZES[0]);
    // Cut short: which one is it?
    counter.scan(&bacon[..bacon.len() - 1]);
    counter.waits_for_word("choose");
    counter.tap(&format!(".choices.some a[href='/counter?code={bacon}']"));
    // The lot alone is not sold: which pack is it?
    counter.waits_for(&format!(".choices.some a[href='/counter?code={bacon}/13']"));
    counter.waits_for_word("choose");
    let sells = "return document.querySelector('[data-sells]') !== null";
    assert_eq!(counter.run(sells), false);
    counter.tap(&format!(".choices.some a[href='/counter?code={bacon}/13']"));
    counter.waits_for_word("sell");
    counter.waits_for("[data-sells] button");
    assert_eq!(counter.taps, 2);
    assert!(browser.errors().is_empty());
}

fn fits(counter: &Counter<'_>, (_, height): (u32, u32)) {
    let seen = counter.run(
        "const at = (css) => document.querySelector(css).getBoundingClientRect();
         const thumb = at('.thumb');
         return { word: at('.verdict strong').top, told: at('.told').bottom, price: at('.price').bottom,
             allergens: at('.allergens').bottom, thumb: thumb.top, bottom: thumb.bottom,
             button: at('[data-sells] button').height, y: scrollY };",
    );
    let of = |name: &str| seen[name].as_f64().expect("a figure");
    assert!(of("word") > 0.0 && of("y") == 0.0, "{seen}");
    for part in ["allergens", "price", "told"] {
        assert!(of(part) <= of("thumb"), "{part} is under the thumb: {seen}");
    }
    assert!(of("bottom") <= f64::from(height) + 1.0, "{seen}");
    assert!(of("button") >= 57.0, "{seen}");
}

#[test]
fn by_keyboard_alone() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = format!("{}/13", caller.noted("L13"));
    for (language, size) in [("fr", SIZES[0]), ("en", SIZES[2])] {
        let browser = Browser::reading(language);
        browser.be_patient();
        browser.sign_in(&house.address, "Tamsin Roke");
        let counter = Counter::open(&browser, &house, size);
        counter.scan(&bacon);
        counter.waits_for_word("sell");
        let steps = counter.step_to("[data-sells] button");
        assert!(steps <= 6, "{steps} steps to the button");
        counter.browser.type_into(":focus", ENTER);
        counter.did();
        assert_eq!(verdict(&caller, &bacon), "gone");
        counter.waits_for("button.undo");
        counter.step_to("button.undo");
        counter.browser.type_into(":focus", ENTER);
        counter.waits_for_word("sell");
        assert_eq!(verdict(&caller, &bacon), "sell");
        // The box has the cursor again: the next scan goes on from there, wherever it was.
        counter.scan("nothing of ours");
        counter.waits_for_word("unknown");
        assert!(browser.errors().is_empty());
    }
}

#[test]
fn several_for_one_guest_are_sold_in_one_tap_and_undone_in_one() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let (bacon, rillettes) = (caller.noted("L13"), caller.noted("L31"));
    let packs = [
        format!("{bacon}/13"),
        format!("{bacon}/14"),
        format!("{rillettes}/{}", on_hand(&caller, &rillettes)),
    ];
    let words = || {
        packs
            .iter()
            .map(|pack| verdict(&caller, pack))
            .collect::<Vec<_>>()
    };
    let before = words();
    let browser = Browser::reading("en");
    browser.be_patient();
    browser.sign_in(&house.address, "Tamsin Roke");
    let mut counter = Counter::open(&browser, &house, SIZES[2]);
    for (nth, pack) in packs.iter().enumerate() {
        counter.scan(pack);
        counter.waits_for(&format!("[href$=\"{}\"].act.small", pack));
        if nth < 2 {
            counter.tap(".thumb a.act.small");
            counter.waits_for(".basket li");
            until(|| {
                counter.run("return document.querySelector('[data-verdict]') === null") == true
            });
        }
    }
    counter.taps = 0;
    counter.tap("[data-sells] button");
    let did = counter.did();
    assert_eq!((counter.taps, did.len()), (1, 2), "one deed for each lot");
    assert!(packs.iter().all(|pack| verdict(&caller, pack) == "gone"));
    counter.waits_for("button.undo");
    counter.tap("button.undo");
    assert_eq!(counter.taps, 2);
    until(|| words() == before);
    counter.waits_for(".basket li");
    let lines = counter.run("return document.querySelectorAll('.basket li').length");
    assert_eq!(lines, 3, "they are in the basket again");
    assert!(browser.errors().is_empty());
}

/// A pack of a lot that is on hand.
fn on_hand(caller: &Caller, lot: &str) -> u64 {
    let packs = caller.lot(lot)["packs"].clone();
    let mut packs = packs.as_array().into_iter().flatten();
    let pack = packs.find(|pack| pack["is"] == "on-hand");
    pack.and_then(|pack| pack["pack"].as_u64())
        .expect("a pack on hand")
}

#[test]
fn each_word_has_its_sound_and_none_before_a_tap() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    browser.be_patient();
    browser.sign_in(&house.address, "Tamsin Roke");
    let mut counter = Counter::open(&browser, &house, SIZES[2]);
    let played = "return document.documentElement.dataset.played ?? ''";
    counter.scan(&format!("{}/13", caller.noted("L13")));
    counter.waits_for_word("sell");
    assert_eq!(counter.run(played), "", "nobody has tapped yet");
    counter.tap(".verdict strong");
    let (chop, liver) = (last_day(&caller), past(&caller));
    counter.run("document.querySelector('[data-scan]').focus()");
    counter.scan(&chop);
    counter.waits_for_word("sell-today");
    assert_eq!(counter.run(played), "sell-today");
    counter.scan(&liver);
    counter.waits_for_word("pull");
    assert_eq!(counter.run(played), "pull");
    // Off the shelf, in one tap, and back in one.
    counter.taps = 0;
    counter.tap(".thumb form button.first");
    let did = counter.did();
    assert_eq!(
        caller.read(&format!("/api/steps/{}", did[0]))["kind"],
        "discard"
    );
    assert_eq!(verdict(&caller, &liver), "gone");
    counter.waits_for("button.undo");
    counter.tap("button.undo");
    counter.waits_for_word("pull");
    assert_eq!(counter.taps, 2);
    // What is sold already comes back with a tap.
    let bacon = format!("{}/13", caller.noted("L13"));
    let sell = json!({ "kind": "sell", "lot": caller.noted("L13"), "packs": [13] });
    caller.deed("/api/departures", sell).expect(201);
    counter.scan(&bacon);
    counter.waits_for_word("gone");
    counter.tap(".thumb form button");
    counter.did();
    assert_eq!(verdict(&caller, &bacon), "not-for-sale");
    assert!(browser.errors().is_empty());
}

/// A pack of the product that a sort of Today's things is about.
fn of_today(caller: &Caller, sort: &str) -> String {
    let today = caller.read("/api/today?limit=200");
    let mut hands = today["hands"].as_array().into_iter().flatten();
    let hand = hands
        .find(|hand| hand["sort"] == sort)
        .expect("there is one");
    format!("{}/{}", hand["lot"].as_str().unwrap(), hand["packs"][0])
}

fn last_day(caller: &Caller) -> String {
    of_today(caller, "last-day")
}

fn past(caller: &Caller) -> String {
    of_today(caller, "past")
}

#[test]
fn a_photo_is_read_where_there_is_no_camera() {
    let house = House::demo(Engine::Sqlite);
    let browser = Browser::reading("fr");
    browser.be_patient();
    browser.sign_in(&house.address, "Tamsin Roke");
    let counter = Counter::open(&browser, &house, SIZES[2]);
    let folder =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../server/tests/parsers/corpus/photos");
    let photo = |name: &str| {
        let file = folder.join(name).canonicalize().expect("it is on file");
        browser.type_into("[data-photo] input", &file.display().to_string());
    };
    photo("no-code.jpg");
    counter.waits_for("[data-told] [role=alert]");
    let said = counter.run("return document.querySelector('[data-told]').innerText");
    assert!(said.as_str().unwrap().contains("aucun code"), "{said}");
    // What is refused stands on the console, as the browser has it.
    drop(browser.errors());
    photo("tub-tilted.jpg");
    counter.waits_for("[data-verdict]");
    let code = counter.run("return new URL(location.href).searchParams.get('code')");
    assert!(
        code.as_str().unwrap().ends_with("/L/BRC26159A006/12"),
        "{code}"
    );
    assert!(browser.errors().is_empty());
}

#[test]
fn a_guest_asks_with_chips_and_by_words() {
    let house = House::demo(Engine::Sqlite);
    let browser = Browser::reading("en");
    browser.be_patient();
    browser.sign_in(&house.address, "Tamsin Roke");
    let mut counter = Counter::open(&browser, &house, SIZES[1]);
    counter
        .browser
        .open(&format!("{}/ask", counter.house.address));
    // What guests ask most is one tap.
    counter.tap("[data-about=pig]");
    counter.waits_for("[data-told=no]");
    assert_eq!(counter.taps, 1);
    counter.tap("details.several summary");
    counter.tap(".chips label:has([value=alcohol])");
    counter.tap("details.several button");
    until(|| {
        counter.run("return document.querySelector('h1').textContent")
            == "A guest asks: pork, alcohol"
    });
    let with = counter.run("return document.querySelector('[data-told=yes]').innerText");
    assert!(
        with.as_str().unwrap().contains("Braised lamb shoulder"),
        "{with}"
    );
    counter
        .browser
        .type_into(".box input", &format!("milk{ENTER}"));
    until(|| {
        counter.run("return document.querySelector('h1').textContent") == "A guest asks: milk"
    });
    assert!(browser.errors().is_empty());
}
