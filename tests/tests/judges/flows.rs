//! Acts in a real browser, on the screens of a kitchen, with the taps that they take: packed, sold, undone.

use serde_json::Value;
use stories::browser::Browser;
use stories::queue::{until, until_or};
use stories::{Caller, Engine, House};

/// A tablet at the bench, a phone at the counter.
pub(super) const TABLET: (u32, u32) = (820, 1180);
pub(super) const PHONE: (u32, u32) = (390, 844);

/// A hand: it counts its taps.
pub(super) struct Hand<'a> {
    browser: &'a Browser,
    house: &'a House,
    pub(super) taps: u32,
}

impl<'a> Hand<'a> {
    /// Somebody at a screen of that size.
    pub(super) fn of(
        browser: &'a Browser,
        house: &'a House,
        person: &str,
        screen: (u32, u32),
    ) -> Hand<'a> {
        browser.be_patient();
        browser.sign_in(&house.address, person);
        browser.resize(screen);
        Hand {
            browser,
            house,
            taps: 0,
        }
    }

    pub(super) fn open(&mut self, path: &str) {
        self.browser.open(&format!("{}{path}", self.house.address));
        self.taps = 0;
    }

    pub(super) fn tap(&mut self, css: &str) {
        self.browser.tap(css);
        self.taps += 1;
    }

    /// The deed that the page says was just done.
    pub(super) fn did(&self) -> String {
        let mut id = String::new();
        let told = || {
            let found = self.browser.run(
                "return document.readyState === 'complete' ? new URL(location.href).searchParams.get('did') : null",
            );
            id = found.as_str().unwrap_or_default().to_owned();
            !id.is_empty()
        };
        until_or(told, || format!("no deed is told: {}", self.text()));
        id
    }

    /// Taken back in one tap; what is opened next waits for the page that says so, which comes after the record has it.
    pub(super) fn undo(&mut self) {
        self.tap("button.undo");
        let told = "return document.readyState === 'complete' && new URL(location.href).searchParams.has('did') \
            && document.querySelector('.done button.undo') === null";
        until_or(
            || self.browser.run(told) == true,
            || format!("nothing is taken back: {}", self.text()),
        );
    }

    pub(super) fn text(&self) -> String {
        let text = self
            .browser
            .run("return document.querySelector('main').innerText");
        // A weight and its unit stand on one line.
        text.as_str().unwrap_or_default().replace('\u{a0}', " ")
    }
}

pub(super) fn newest(caller: &Caller) -> Value {
    caller.read("/api/lots?limit=1")["lots"][0].clone()
}

#[test]
fn twelve_packs_are_three_taps_after_the_weight_and_one_undoes_them() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let slab = caller.noted("L16");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open(&format!("/lots/{slab}/pack"));
    browser.type_into("input[name=_each]", "250");
    hand.taps = 0;
    hand.tap(".choices label:has(input[name='outputs.0.product']:checked)");
    hand.tap(".choices label:has(input[value='12'])");
    assert!(
        hand.text().contains("Pack 12 x 250 g of"),
        "{}",
        hand.text()
    );
    hand.tap("button.grand");
    assert_eq!(hand.taps, 3);
    let deed = hand.did();
    let made = newest(&caller);
    assert_eq!(
        (made["pack_count"].as_u64(), made["grams"].as_f64()),
        (Some(12), Some(3000.0)),
        "{made}"
    );
    let read = caller.read(&format!("/api/steps/{deed}"));
    assert_eq!(read["kind"], "pack", "{read}");
    assert_eq!(read["by"], "Oda Marsh");
    // The bags are shown, with the numbers of their labels and what became of those: this printer is off.
    let code = made["code"].as_str().expect("a code").to_owned();
    until(|| {
        browser.run("return document.readyState === 'complete' && location.pathname")
            == format!("/lots/{code}")
    });
    let shown = hand.text();
    assert!(shown.contains("/ 1–12"), "{shown}");
    // Until that is known they are on their way, and the page follows them.
    until(|| hand.text().contains("12 labels wait for the printer"));
    let waits = || {
        let prints = caller.read(&format!("/api/prints?lot={code}&state=waiting"));
        prints["prints"].as_array().map_or(0, Vec::len)
    };
    assert_eq!(waits(), 12);
    // Undone from the same place.
    hand.taps = 0;
    hand.tap("button.undo");
    assert_eq!(hand.taps, 1);
    until(|| !caller.read(&format!("/api/steps/{deed}"))["voided"].is_null());
    // No label of a bag that is none comes out later.
    assert_eq!(waits(), 0);
    assert!(hand.browser.errors().is_empty());
}

#[test]
fn what_is_refused_is_told_where_the_form_is_and_nothing_is_recorded() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let slab = caller.noted("L16");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let before = newest(&caller);
    hand.open(&format!("/lots/{slab}/pack"));
    browser.type_into("input[name=_each]", "900");
    hand.tap(".choices label:has(input[value='12'])");
    hand.tap("button.grand");
    until(|| {
        browser.run("return document.querySelector('[data-told] [role=alert]') !== null") == true
    });
    assert!(hand.text().contains("5.99 kg"), "{}", hand.text());
    assert_eq!(newest(&caller), before, "nothing is recorded");
}

#[test]
fn a_pack_is_sold_in_one_tap_after_the_scan_and_undone_in_one() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("fr");
    let mut hand = Hand::of(&browser, &house, "Tamsin Roke", PHONE);
    let verdict = || caller.read(&format!("/api/scan?code={bacon}/13"))["verdict"].clone();
    assert_eq!(verdict(), "sell");
    hand.open(&format!("/scan?code={bacon}/13"));
    assert!(hand.text().contains("VENDRE"), "{}", hand.text());
    hand.tap(".thumb button");
    assert_eq!(hand.taps, 1);
    hand.did();
    assert_eq!(verdict(), "gone");
    hand.taps = 0;
    hand.tap("button.undo");
    assert_eq!(hand.taps, 1);
    until(|| verdict() == "sell");
}

/// What each may do of Today: its buttons lead to no refusal.
#[test]
fn today_offers_each_what_they_may_do() {
    let house = House::demo(Engine::Sqlite);
    for (person, never) in [
        (
            "Tamsin Roke",
            &[
                "/freeze?",
                "/weigh",
                "/release",
                "/tend",
                "/temperature",
                "/thaw",
                "drill=yes",
                "clean-downs",
            ][..],
        ),
        ("Pim Verrall", &["/release", "drill=yes"]),
        ("Oda Marsh", &[]),
    ] {
        let browser = Browser::reading("en");
        let mut hand = Hand::of(&browser, &house, person, TABLET);
        hand.open("/");
        let ways = "return [...document.querySelectorAll('.hours a.act, .hours form')].map((one) => one.getAttribute('href') ?? one.dataset.deed)";
        let ways = browser.run(ways);
        let ways: Vec<&str> = ways
            .as_array()
            .unwrap()
            .iter()
            .filter_map(Value::as_str)
            .collect();
        assert!(ways.len() > 8, "{person}: {ways:?}");
        for way in never {
            assert!(
                !ways.iter().any(|of| of.contains(way)),
                "{person}: {way} in {ways:?}"
            );
        }
        let has = |what: &str| ways.iter().any(|of| of.contains(what));
        assert_eq!(has("/release"), person == "Oda Marsh", "{person}: {ways:?}");
        assert_eq!(has("/weigh"), person != "Tamsin Roke", "{person}: {ways:?}");
    }
}

#[test]
fn today_leads_to_the_act_and_the_act_leaves_today() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Pim Verrall", TABLET);
    hand.open("/");
    assert!(hand.text().contains("Pork chop, 4 packs: last day"));
    let link = "return [...document.querySelectorAll('.hours li')].find(line => line.textContent.includes('Pork chop')).querySelector('a.act').getAttribute('href')";
    let path = browser.run(link);
    hand.open(path.as_str().expect("a way to the act"));
    assert!(hand.text().contains("Freeze"), "{}", hand.text());
    hand.tap("button.grand");
    hand.did();
    let today = caller.read("/api/today").to_string();
    assert!(!today.contains("Pork chop, 4 packs"), "{today}");
}

#[test]
fn packs_are_counted_with_one_tap_for_what_changed() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("fr");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let left = || caller.read(&format!("/api/lots/{bacon}"))["on_hand_grams"].clone();
    assert_eq!(left(), 3000);
    hand.open(&format!("/lots/{bacon}/count"));
    // As the fields come, with their figures: one pack was found lighter.
    browser.run("document.querySelector('.fields input').value = ''");
    browser.type_into(".fields input", "248,5");
    hand.tap("button.grand");
    hand.did();
    assert_eq!(left(), 2998.5);
    hand.tap("button.undo");
    until(|| left() == 3000);
}

#[test]
fn a_pack_goes_elsewhere_in_two_taps() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    hand.open(&format!("/lots/{bacon}/move?packs=13"));
    let shown = hand.text();
    assert!(shown.contains("Pack 13"), "{shown}");
    let nowhere = "return document.querySelector(\"input[value='case']\") === null";
    assert_eq!(browser.run(nowhere), true, "it is there already: {shown}");
    hand.tap(".choices label:has(input[value='cooler-1'])");
    hand.tap("button.grand");
    assert_eq!(hand.taps, 2);
    hand.did();
    let packs = caller.read(&format!("/api/lots/{bacon}"))["packs"].clone();
    let there = |number: u64| {
        let mut packs = packs.as_array().into_iter().flatten();
        packs.any(|pack| pack["pack"] == number && pack["place"] == "cooler-1")
    };
    assert!(there(13) && !there(14), "{packs}");
}
