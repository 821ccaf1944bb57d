//! A dead network in a real browser: deeds wait on the device, go through once and in order, and what is refused then
//! comes back to who did it.

use super::flows::{Hand, PHONE, TABLET, newest};
use chrono::NaiveTime;
use serde_json::{Value, json};
use stories::browser::Browser;
use stories::queue::until;
use stories::{Engine, House};

/// How many deeds wait on the device, and how many were refused.
pub(super) fn lines(browser: &Browser) -> Value {
    browser.run(
        "return ['waits', 'refused', 'done'].map((line) => {
            const told = document.querySelector(`[data-line=${line}]`);
            return told.hidden ? 0 : Number(told.textContent.match(/\\d+/)[0]); });",
    )
}

pub(super) fn slip(browser: &Browser) -> String {
    until(|| {
        browser
            .run("return document.querySelector('[data-told] [data-slip]')?.offsetParent != null")
            == true
    });
    let slip = browser.run("return document.querySelector('[data-told] [data-slip]').textContent");
    slip.as_str().expect("a slip").to_owned()
}

#[test]
fn an_hour_that_stands_still_without_a_line_says_so() {
    let house = House::demo(Engine::Sqlite);
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    hand.open("/");
    let head = || browser.run("return document.querySelector('h1').textContent");
    let then = head().as_str().unwrap().to_owned();
    assert!(!then.starts_with("As of"), "{then}");
    browser.cut_off(true);
    until(|| head() == format!("As of {then}"));
}

#[test]
fn what_is_packed_weighed_and_sold_without_a_line_goes_through_once_and_in_order() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let (slab, ham, bacon) = (
        caller.noted("L16"),
        caller.noted("H-05"),
        caller.noted("L13"),
    );
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    let made_of = format!("/api/lots/{slab}/descendants");
    let lots = || caller.read(&made_of)["lots"].as_array().map(Vec::len);
    let before = lots();

    // Packed.
    hand.open(&format!("/lots/{slab}/pack"));
    browser.type_into("input[name=_each]", "250");
    hand.tap(".choices label:has(input[value='4'])");
    browser.cut_off(true);
    hand.tap("button.grand");
    let packed = slip(&browser);
    let told = hand.text();
    assert!(
        told.contains("waits on this device") && told.contains(&format!("Write {packed} on it")),
        "{told}"
    );
    assert_eq!(lines(&browser), json!([1, 0, 0]));
    assert_eq!(lots(), before);
    // A second press of the same is the same.
    browser.run("document.querySelector('form[data-deed]').hidden = false");
    browser.tap("button.grand");
    assert_eq!(slip(&browser), packed);
    assert_eq!(lines(&browser), json!([1, 0, 0]));
    browser.cut_off(false);
    until(|| lines(&browser) == json!([0, 0, 1]));
    let made = newest(&caller);
    assert_eq!(
        (&made["pack_count"], &made["grams"]),
        (&json!(4), &json!(1000))
    );
    assert_eq!(lots(), before.map(|lots| lots + 1), "once");

    // Weighed, and the answer lost on its way back: it is there once.
    let weighed = || caller.lot(&ham)["steps"].as_array().map(Vec::len);
    let once = weighed();
    hand.open(&format!("/lots/{ham}/weigh"));
    browser.type_into("input[name=grams]", "8.115");
    browser.run(
        "const real = window.fetch;
         window.fetch = async (path, asked) => { const answer = await real(path, asked);
            if (path === '/api/readings') { window.fetch = real; throw new Error('cut'); } return answer; };",
    );
    hand.tap("button.grand");
    slip(&browser);
    until(|| lines(&browser) == json!([0, 0, 2]));
    assert_eq!(caller.lot(&ham)["on_hand_grams"], 8115);
    assert_eq!(weighed(), once.map(|steps| steps + 1), "once");

    // Sold.
    browser.resize(PHONE);
    hand.open(&format!("/counter?code={bacon}/13"));
    browser.cut_off(true);
    hand.tap(".thumb button");
    slip(&browser);
    assert!(
        hand.text().contains("goes through by itself"),
        "{}",
        hand.text()
    );
    let verdict = || caller.read(&format!("/api/scan?code={bacon}/13"))["verdict"].clone();
    assert_eq!(verdict(), "sell");
    // The next scan has no answer, and that is said.
    browser.type_into(".box input", &format!("{bacon}/14\u{e007}"));
    until(|| hand.text().contains("this scan has no answer now"));
    browser.cut_off(false);
    until(|| verdict() == "gone");
    until(|| lines(&browser) == json!([0, 0, 3]));
    // What became of each is told with its slip, and goes when it was seen.
    hand.open("/waiting");
    until(|| hand.text().contains(&format!("{packed} went through")));
    assert!(
        hand.text()
            .contains(made["shown"].as_str().expect("a code"))
    );
    for _ in 0..3 {
        browser.tap("[data-seen]");
    }
    until(|| lines(&browser) == json!([0, 0, 0]));
}

/// The counter's word is the kitchen's, and that does not know yet what waits here.
#[test]
fn what_this_device_sold_is_not_offered_again_before_the_kitchen_knows() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Tamsin Roke", PHONE);
    let scan = |code: &str| browser.type_into(".box input", &format!("{code}\u{e007}"));
    let word = || browser.run("return document.querySelector('[data-verdict]')?.dataset.verdict");
    let offers = || {
        browser.run(
            "return [...document.querySelectorAll('form[data-sells] button')].some((button) => button.getClientRects().length > 0)",
        )
    };
    hand.open(&format!("/counter?code={bacon}/13"));
    assert_eq!((word(), offers()), (json!("sell"), json!(true)));
    browser.cut_off(true);
    // One word, and no other: what is on the screen may be sold, what is scanned from now on may not.
    until(|| browser.run("return document.querySelector('[data-off]').hidden") == false);
    let told = browser.run("return document.querySelector('[data-off]').innerText");
    assert!(
        told.as_str().is_some_and(|told| {
            told.contains("may still be sold")
                && told.contains("is not sold")
                && !told.contains("Work on")
        }),
        "{told}"
    );
    hand.tap(".thumb button");
    let sold = slip(&browser);
    until(|| word() == "sold-here");
    assert_eq!(offers(), false);
    // One more is another one, and the same is never sold twice.
    browser.tap("[data-told] [data-once-more]");
    until(|| hand.text().contains("No line to the kitchen"));
    assert_eq!(offers(), false);
    assert_eq!(lines(&browser), json!([1, 0, 0]));
    scan(&format!("{}/L/{bacon}/13", house.address));
    until(|| word() == "sold-here");
    assert!(
        hand.text().contains("SOLD HERE") && hand.text().contains(&sold),
        "{}",
        hand.text()
    );
    // The line is back, and what waits is not through: its own word is still not the kitchen's.
    browser.run("waiting.send = async () => 'held'");
    browser.cut_off(false);
    scan(&format!("{bacon}/13"));
    until(|| hand.text().contains("Allergens") || hand.text().contains("allergens"));
    until(|| word() == "sold-here");
    assert_eq!(offers(), false);
    // Undone, it is for sale again; and another pack is all the time.
    browser.tap("[data-not-sold]");
    until(|| word() == "sell" && offers() == true);
    assert_eq!(lines(&browser), json!([0, 0, 0]));
}

#[test]
fn the_service_dies_in_the_middle_and_the_bench_works_on_across_a_reload() {
    let mut house = House::demo(Engine::Sqlite);
    let browser = Browser::reading("en");
    let path = "/places/cooler-1/temperature";
    let kept = |page: &str| {
        let look = format!("caches.match({page}).then((page) => Boolean(page))");
        browser.wait_for(&look) == true
    };
    // What keeps them begins with the first page, and keeps from the next one on.
    until(|| {
        Hand::of(&browser, &house, "Pim Verrall", TABLET).open(path);
        (0..100).any(|_| {
            std::thread::sleep(std::time::Duration::from_millis(50));
            kept("'/waiting'") && kept("'/assets/waiting-page.js'")
        })
    });
    Hand::of(&browser, &house, "Pim Verrall", TABLET).open(path);
    until(|| kept("location.href") && kept("'/waiting'"));
    let address = house.address.clone();
    house.kill();
    // Opened again: it comes from this device, and says so.
    browser.open(&format!("{address}{path}"));
    let text = || {
        let text = browser.run("return document.body.innerText");
        text.as_str().unwrap_or_default().replace('\u{a0}', " ")
    };
    assert!(text().contains("This page was kept at"), "{}", text());
    let field = "input[name=celsius], input[name=fahrenheit]";
    browser.type_into(field, "3.4");
    browser.tap("button.grand");
    let first = slip(&browser);
    // One more, and undone.
    browser.tap("[data-once-more]");
    browser.type_into(field, "9.9");
    browser.tap("button.grand");
    assert_ne!(slip(&browser), first);
    until(|| lines(&browser) == json!([2, 0, 0]));
    browser.tap("[data-told] [data-take-out]");
    until(|| lines(&browser) == json!([1, 0, 0]));
    // A page that was never opened leads to what waits.
    browser.open(&format!("{address}/places/freezer/temperature"));
    until(|| text().contains(&first));
    // It waits with who did it and when, to be sent when the service is back.
    let row =
        browser.wait_for("waiting.all().then((rows) => rows.find((row) => row.state === 'waits'))");
    assert_eq!(row["by"], "Pim Verrall", "{row}");
}

#[test]
fn what_is_refused_later_comes_back_to_who_did_it_with_what_to_do() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let bacon = caller.noted("L13");
    let browser = Browser::reading("fr");
    let mut hand = Hand::of(&browser, &house, "Tamsin Roke", PHONE);
    hand.open(&format!("/counter?code={bacon}/13"));
    browser.cut_off(true);
    // It is held, and this device cannot know.
    let hold = json!({ "id": "019e2f6a-6a50-7c3e-9a55-0c4f3a1b2c77", "by": "Lise Hartnoll",
        "lots": [{ "lot": bacon }], "why": "a bag was open" });
    caller.post("/api/holds", &hold).expect(201);
    hand.tap(".thumb button");
    slip(&browser);
    browser.cut_off(false);
    until(|| lines(&browser) == json!([0, 1, 0]));
    // It stays on every page until somebody chooses.
    hand.open("/waiting");
    until(|| hand.text().contains("n’a pas été accepté"));
    let told = hand.text();
    assert!(
        told.contains("Tamsin Roke") && told.contains("a bag was open"),
        "{told}"
    );
    browser.tap("[data-again]");
    std::thread::sleep(std::time::Duration::from_secs(2));
    until(|| lines(&browser) == json!([0, 1, 0]));
    // It takes a second tap to lose something.
    browser.tap("[data-leave] summary");
    browser.tap("[data-drop]");
    until(|| lines(&browser) == json!([0, 0, 0]));
    assert_eq!(
        caller.read(&format!("/api/scan?code={bacon}/13"))["verdict"],
        "hold"
    );
}

#[test]
fn a_device_whose_store_does_not_answer_keeps_nobody_from_working() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let slab = caller.noted("L16");
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", TABLET);
    // A store that was left half made is asked and asked, and answers nothing.
    let deaf = "waiting.close(); waiting.isMade = async () => true; waiting.open = () => new Promise(() => {});";
    hand.open(&format!("/lots/{slab}/pack"));
    browser.run(deaf);
    browser.type_into("input[name=_each]", "250");
    hand.tap(".choices label:has(input[value='4'])");
    hand.tap("button.grand");
    hand.did();
    assert_eq!(newest(&caller)["pack_count"], 4);
    // It says so where it would show what waits, and not that nothing does.
    hand.open("/waiting");
    browser.run(deaf);
    until(|| hand.text().contains("cannot be read just now"));
    assert!(
        !hand.text().contains("Nothing waits here"),
        "{}",
        hand.text()
    );
    // It answers again.
    browser.run("waiting.isMade = async () => false;");
    until(|| hand.text().contains("Nothing waits here"));
}

#[test]
fn what_waits_is_told_with_the_kitchens_hour() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    let mut hand = Hand::of(&browser, &house, "Oda Marsh", PHONE);
    // The demo's clock stands years away from the device's, and its zone is another one.
    let hour = || {
        let now = caller.read("/api/today")["now"].clone();
        let of = now.as_str().expect("a moment")[11..16].to_owned();
        let hour = NaiveTime::parse_from_str(&of, "%H:%M").expect("an hour");
        hour.format("%-I:%M %P").to_string()
    };
    let kept = "caches.match('/waiting').then((page) => Boolean(page))";
    until(|| {
        hand.open("/waiting");
        browser.wait_for(kept) == true
    });
    hand.open("/places/cooler-1/temperature");
    browser.type_into("input[name=celsius], input[name=fahrenheit]", "3.4");
    let before = hour();
    browser.cut_off(true);
    hand.tap("button.grand");
    slip(&browser);
    hand.open("/waiting");
    let told = || {
        let told = browser.run(
            "return document.querySelector('[data-waiting] [data-who-when]')?.textContent ?? ''",
        );
        told.as_str().unwrap_or_default().to_owned()
    };
    until(|| !told().is_empty());
    browser.cut_off(false);
    let hours = [before, hour()];
    let told = told();
    assert!(
        hours
            .iter()
            .any(|hour| told.replace('\u{a0}', " ").ends_with(hour)),
        "{told}, not {hours:?}"
    );
}
