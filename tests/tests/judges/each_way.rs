//! Acts in a real browser, each by a finger and by the keyboard alone, on a desk, a tablet and a phone, in both
//! languages, with the taps that a finger needs; what was done is undone the same way, so that the next finds the
//! kitchen as it was.

use super::browser::SIZES;
use serde_json::json;
use stories::browser::Browser;
use stories::day::{Told, bought};
use stories::queue::until;
use stories::{Caller, Engine, House};

const RETURN: &str = "\u{e007}";
const TAB: &str = "\u{e004}";
const DOWN: &str = "\u{e015}";

/// What is done on a page, one thing after the other.
enum Do {
    /// Types into a field.
    Type(&'static str, &'static str),
    /// Chooses one of several, by its value.
    Choose(&'static str, &'static str),
    /// Presses a button.
    Press(&'static str),
}

use Do::{Choose, Press, Type};

const GRAND: Do = Press("button.grand");
const DEGREES: &str = "input[name=celsius], input[name=fahrenheit]";

/// An act: where it is, what is done there, the taps of a finger, what the record then calls it.
struct Act {
    path: String,
    does: Vec<Do>,
    taps: u32,
    kind: &'static str,
}

fn acts(caller: &Caller) -> Vec<Act> {
    let lot = |name: &str, act: &str| format!("/lots/{}/{act}", caller.noted(name));
    let bones = caller.receive("pork-bones").bought(bought("HRW", "B-1"));
    let bones = bones.grams(4_000).to("cooler-1").made();
    let act = |path: String, does: Vec<Do>, taps, kind| Act {
        path,
        does,
        taps,
        kind,
    };
    vec![
        act(
            lot("L16", "pack"),
            vec![
                Type("input[name=_each]", "250"),
                Choose("outputs.0.pack_count", "12"),
                GRAND,
            ],
            2,
            "pack",
        ),
        act(lot("L13", "freeze"), vec![GRAND], 1, "move"),
        act(
            lot("L13", "move?packs=13"),
            vec![Choose("to", "cooler-1"), GRAND],
            2,
            "move",
        ),
        act(lot("L13", "discard?packs=14"), vec![GRAND], 1, "discard"),
        act(lot("L13", "serve?packs=15"), vec![GRAND], 1, "serve"),
        act(lot("L13", "count"), vec![GRAND], 1, "count"),
        act(
            lot("H-05", "weigh"),
            vec![Type("input[name=grams]", "8.115 kg"), GRAND],
            1,
            "measure",
        ),
        act(
            lot("H-05", "tend"),
            vec![Choose("kind", "hang"), GRAND],
            2,
            "hang",
        ),
        act(lot("H-02", "release"), vec![GRAND], 1, "release"),
        act(
            "/places/bench/clean-down".to_owned(),
            vec![GRAND],
            1,
            "clean-down",
        ),
        act(
            "/places/cooler-1/temperature".to_owned(),
            vec![Type(DEGREES, "3.4"), GRAND],
            1,
            "measure",
        ),
        act(
            "/places/freezer/failed".to_owned(),
            vec![GRAND],
            1,
            "place-failed",
        ),
        act(
            format!("/make/cook?product=pork-stock&lot={bones}"),
            vec![
                Press("[data-boiled]"),
                Type("input[name='outputs.0.grams']", "3000"),
                GRAND,
            ],
            2,
            "cook",
        ),
    ]
}

/// With what it is done.
#[derive(Debug, Clone, Copy)]
enum With {
    Finger,
    Keys,
}

/// Somebody at a screen.
struct Hand<'a> {
    browser: &'a Browser,
    with: With,
    taps: u32,
}

impl Hand<'_> {
    fn does(&mut self, what: &Do) {
        match (self.with, what) {
            (With::Finger, Type(field, text)) => self.browser.type_into(field, text),
            (With::Finger, Choose(name, value)) => {
                self.tap(&format!("label:has(input[name='{name}'][value='{value}'])"))
            }
            (With::Finger, Press(button)) => self.tap(button),
            (With::Keys, Type(field, text)) => {
                self.step_to(field);
                self.browser.press(text);
            }
            (With::Keys, Choose(name, value)) => self.choose(name, value),
            (With::Keys, Press(button)) => {
                self.step_to(button);
                self.browser.press(RETURN);
            }
        }
    }

    fn tap(&mut self, css: &str) {
        self.browser.touch(css);
        self.taps += 1;
    }

    /// Steps on with the keyboard until a selector finds what has the cursor.
    fn step_to(&self, css: &str) {
        let there = format!("return document.activeElement.matches({})", json!(css));
        for _ in 0..90 {
            if self.browser.run(&there) == true {
                return;
            }
            self.browser.press(TAB);
        }
        panic!("{css} is not reached by keyboard");
    }

    /// Among things of which one is chosen the arrows go round.
    fn choose(&self, name: &str, value: &str) {
        self.step_to(&format!("input[name='{name}']"));
        let there = format!(
            "return document.querySelector({}).checked",
            json!(format!("input[name='{name}'][value='{value}']"))
        );
        for _ in 0..30 {
            if self.browser.run(&there) == true {
                return;
            }
            self.browser.press(DOWN);
        }
        panic!("{value} is not chosen by keyboard");
    }

    fn did(&self) -> String {
        let mut id = String::new();
        until(|| {
            let found = self.browser.run(
                "return document.readyState === 'complete' ? new URL(location.href).searchParams.get('did') : null",
            );
            id = found.as_str().unwrap_or_default().to_owned();
            !id.is_empty()
        });
        id
    }
}

fn each(with: With) {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let acts = acts(&caller);
    for language in ["en", "fr"] {
        let browser = Browser::reading(language);
        browser.sign_in(&house.address, "Oda Marsh");
        for size in SIZES {
            browser.resize(size);
            for act in &acts {
                let mut hand = Hand {
                    browser: &browser,
                    with,
                    taps: 0,
                };
                browser.open(&format!("{}{}", house.address, act.path));
                act.does.iter().for_each(|what| hand.does(what));
                let deed = hand.did();
                let told = || format!("{} ({language}, {size:?}, {with:?})", act.path);
                if matches!(with, With::Finger) {
                    assert_eq!(hand.taps, act.taps, "{}", told());
                }
                let step = || caller.read(&format!("/api/steps/{deed}"));
                assert_eq!(step()["kind"], act.kind, "{}", told());
                assert_eq!(step()["by"], "Oda Marsh", "{}", told());
                hand.taps = 0;
                hand.does(&Press("button.undo"));
                until(|| !step()["voided"].is_null());
                assert!(hand.taps <= 1);
            }
            assert!(browser.errors().is_empty(), "{language}, {size:?}");
        }
    }
}

#[test]
fn each_act_by_a_finger() {
    each(With::Finger);
}

#[test]
fn each_act_by_the_keyboard_alone() {
    each(With::Keys);
}
