//! A kitchen from nothing to the tag of its first animal, on a tablet, as its first manager does it: with the taps
//! that it takes, and no call but those that the pages make.

use serde_json::json;
use std::time::Instant;
use stories::browser::Browser;
use stories::printer::Manners;
use stories::queue::until;
use stories::{Engine, House, Printer};

/// The most taps from signing in to the first tag. Fields that are typed into are counted, too.
const MOST_TAPS: u32 = 60;

struct Hand<'a> {
    browser: &'a Browser,
    taps: u32,
}

impl Hand<'_> {
    fn tap(&mut self, css: &str) {
        self.browser.tap(css);
        self.taps += 1;
    }

    fn type_into(&mut self, css: &str, text: &str) {
        self.browser.run(&format!(
            "document.querySelector({}).value = ''",
            json!(css)
        ));
        self.browser.type_into(css, text);
        self.taps += 1;
    }

    /// Waits until the page of a path is there.
    fn at(&self, path: &str) {
        let here = "return document.readyState === 'complete' ? location.pathname : ''";
        until(|| self.browser.run(here) == path);
    }

    /// Waits until something stands on the page.
    fn sees(&self, css: &str) {
        let there = format!(
            "return document.querySelector({}) !== null && document.readyState === 'complete'",
            json!(css)
        );
        until(|| self.browser.run(&there) == true);
    }
}

/// The word that an empty kitchen prints, and that signs its first manager in.
fn first_word(house: &mut House) -> String {
    let line = house.line();
    let word = line.split("the word ").nth(1);
    let word = word.and_then(|rest| rest.split(':').next());
    word.unwrap_or_else(|| panic!("{line:?}")).to_owned()
}

#[test]
#[allow(
    clippy::disallowed_methods,
    reason = "the test is timed for whoever reads its output"
)]
fn from_an_empty_record_to_the_first_tag() {
    let mut house = House::empty(Engine::Sqlite);
    let word = first_word(&mut house);
    // The rolls of a kitchen that receives carcasses and packs tubs.
    let printer = Printer::new(Manners {
        sizes: vec![(10_200, 7_600), (5_100, 5_100), (6_200, 10_000)],
        ..Manners::default()
    });
    let browser = Browser::reading("en");
    browser.be_patient();
    browser.resize(super::flows::TABLET);
    let mut hand = Hand {
        browser: &browser,
        taps: 0,
    };
    let began = Instant::now();
    browser.open(&format!("{}/sign-in", house.address));
    // The only one there is: nobody has to be chosen.
    hand.sees("input[name=pin]");
    hand.type_into("input[name=pin]", &word);
    hand.tap("button.likeliest");
    hand.at("/me");
    hand.type_into("input[name=pin]", "2580");
    hand.tap("form[action='/me/pin'] button");
    hand.at("/");
    // Today leads on.
    hand.tap("a.first.grand");
    hand.at("/set-up/kitchen");
    hand.type_into("input[name=name]", "Cinderhook Kitchen");
    hand.type_into("input[name=code]", "CHK");
    // A browser that asks for English alone says of no country, and nobody's law is taken for granted.
    let chosen = "return document.querySelector('input[name=profile]:checked')";
    assert_eq!(browser.run(chosen), json!(null));
    hand.tap("label:has(input[value='us'])");
    // A list with the tablet's own zone chosen, if it has one.
    browser.run("document.querySelector('select[name=time_zone]').value = 'America/New_York'");
    hand.tap("button.grand");
    hand.at("/set-up/places");
    let told = browser.run("return document.querySelector('main').innerText");
    assert!(
        told.as_str()
            .is_some_and(|text| text.contains("no address yet")),
        "{told}"
    );
    hand.tap("button.grand");
    hand.at("/set-up/people");
    // Who begins is called Manager until they say their name.
    hand.type_into("form[data-version] input[name=name]", "Oda Marsh");
    hand.tap("form[data-version] button");
    until(|| {
        browser.run("return document.querySelector('form[data-version]') === null && document.readyState === 'complete'") == true
    });
    hand.type_into("input[name=name]", "Jory Abend");
    hand.type_into("input[name=pin]", "1470");
    // Nobody beside them reads it, unless they want to read it themselves.
    let seen = "return document.querySelector('form[data-show] input[name=pin]').type";
    assert_eq!(browser.run(seen), "password");
    browser.tap("[data-reveals]");
    assert_eq!(browser.run(seen), "text");
    browser.tap("[data-reveals]");
    assert_eq!(browser.run(seen), "password");
    hand.tap("form[data-show] button:not([data-reveals])");
    until(|| {
        let text = browser.run("return document.querySelector('main').innerText");
        text.as_str()
            .is_some_and(|text| text.contains("Jory Abend ("))
    });
    hand.tap("a[href='/set-up/printer']:not(.pegs a)");
    hand.at("/set-up/printer");
    hand.type_into("input[name=address]", &printer.address());
    hand.tap("form[data-call='/api/printers'] button");
    hand.sees("form[data-call$='/test-label']");
    hand.tap("form[data-call$='/test-label'] button");
    until(|| browser.run("return document.querySelector('[data-shown]').hidden") == false);
    hand.tap("a[href='/set-up/products']:not(.pegs a)");
    hand.at("/set-up/products");
    hand.tap("a.first.grand");
    hand.at("/starters");
    // What something ticked is made of stays ticked, and says for what; once nothing needs it, it goes.
    let state = "const [pot, part] = ['pancetta', 'salt'].map((code) => document.querySelector(`input[data-code='${code}']`));
        const press = (tick, to) => { if (tick.checked !== to) { tick.click(); } };
        press(pot, true); press(part, false);
        const kept = [part.checked, part.closest('label').querySelector('[data-for]')?.textContent ?? ''];
        press(pot, false); press(part, false);
        const gone = [part.checked, part.closest('label').querySelector('[data-for]') === null];
        document.querySelectorAll('input[data-calls]:checked:not(:disabled)').forEach((tick) => tick.click());
        return [kept[0], kept[1], gone[0], gone[1]]";
    let state = browser.run(state);
    assert_eq!(
        (&state[0], &state[2], &state[3]),
        (&json!(true), &json!(false), &json!(true)),
        "{state}"
    );
    assert!(
        state[1]
            .as_str()
            .is_some_and(|says| says.starts_with("Stays ticked: needed for")),
        "{state}"
    );
    // The whole of the pork.
    hand.tap("[data-group] > summary");
    hand.tap("[data-group] input[data-all]");
    hand.tap(".thumb button");
    hand.at("/set-up/animal");
    let told = browser.run("return document.querySelector('p.done').innerText");
    assert!(
        told.as_str()
            .is_some_and(|text| text.contains("products are added")),
        "{told}"
    );
    hand.type_into("input[name=code]", "BRC");
    hand.type_into("input[name=name]", "Brindlecombe Pigs");
    hand.tap("form[data-call='/api/farms'] button");
    hand.sees("form[data-call='/api/abattoirs']");
    hand.type_into("input[name=number]", "DEMO-17");
    hand.type_into("input[name=name]", "Harle Gate");
    hand.tap("form[data-call='/api/abattoirs'] button");
    hand.sees("a.first.grand[href='/receive']");
    hand.tap("a.first.grand[href='/receive']");
    hand.at("/receive");
    hand.tap("label:has(input[value='pig-half'])");
    // A date is picked from a calendar: one tap more for its day.
    let killed = "const field = document.querySelector(\"input[name='animal.killed_on']\"); const before = field.value;
        field.value = new Date(Date.now() - 172800000).toISOString().slice(0, 10);
        field.dispatchEvent(new Event('input', { bubbles: true })); return before";
    assert_eq!(browser.run(killed), "");
    hand.taps += 2;
    hand.type_into("input[name='animal.carcass']", "0608-17");
    // A half pig is offered as a left or a right one; it is no whole animal without a word, one tap further.
    let offered = "return document.querySelector(\"[name='animal.side'][value='whole']\").closest('label').hidden";
    assert_eq!(browser.run(offered), true);
    let hidden = "return document.querySelector('[data-if-part-whole]').hidden";
    browser.tap("[data-all-sides]");
    browser.tap("label:has(input[value='whole'])");
    assert_eq!(browser.run(hidden), false);
    hand.tap("label:has(input[value='left'])");
    assert_eq!(browser.run(hidden), true);
    hand.type_into("input[name=grams]", "45");
    hand.tap("button.grand");
    until(|| {
        let here = browser.run("return location.pathname");
        here.as_str()
            .is_some_and(|path| path.starts_with("/lots/BRC"))
    });
    let seconds = began.elapsed().as_secs();
    println!(
        "from signing in to the first tag: {} taps and fields, {seconds} s",
        hand.taps
    );
    assert!(hand.taps <= MOST_TAPS, "{} taps", hand.taps);
    // Its tag comes out, after the test label.
    until(|| printer.paper().len() >= 2);
    // The lead has left Today.
    browser.open(&format!("{}/", house.address));
    assert_eq!(
        browser.run("return document.querySelector('.begin') === null"),
        true
    );
    let errors = browser.errors();
    assert!(errors.is_empty(), "{errors:?}");
    let caller = house.caller();
    let lots = caller.read("/api/lots");
    assert_eq!(lots["lots"][0]["product"], "pig-half");
    let code = lots["lots"][0]["code"].as_str().expect("a code");
    caller
        .get(&format!("/api/lots/{code}/labels.pdf"))
        .expect(200);
    assert_eq!(caller.read("/api/kitchen")["languages"], json!(["en"]));
}

#[test]
fn a_french_browser_is_proposed_france_and_a_refused_test_label_ticks_nothing() {
    let mut house = House::empty(Engine::Sqlite);
    let word = first_word(&mut house);
    let printer = Printer::new(Manners {
        sizes: vec![(3_000, 3_000)],
        ..Manners::default()
    });
    let browser = Browser::reading("fr-FR");
    browser.be_patient();
    browser.resize(super::flows::PHONE);
    let mut hand = Hand {
        browser: &browser,
        taps: 0,
    };
    browser.open(&format!("{}/sign-in", house.address));
    hand.sees("input[name=pin]");
    hand.type_into("input[name=pin]", &word);
    hand.tap("button.likeliest");
    hand.at("/me");
    hand.type_into("input[name=pin]", "2580");
    hand.tap("form[action='/me/pin'] button");
    hand.at("/");
    browser.open(&format!("{}/set-up/kitchen", house.address));
    let proposed = browser.run(
        "const value = (css) => document.querySelector(css).value;
         const zones = document.querySelector('select[name=time_zone]');
         return [value('input[name=profile]:checked'), value('input[name=country]'), value('select[name=currency]'),
            zones.querySelector('optgroup option').textContent, zones.querySelector('option[selected]').value];",
    );
    assert_eq!(
        proposed,
        json!(["eu", "FR", "EUR", "France – Paris", "Europe/Paris"])
    );
    // Another law is no longer in France.
    hand.tap("label:has(input[value='uk'])");
    let country = "return document.querySelector('input[name=country]').value";
    assert_eq!(browser.run(country), "");
    hand.tap("label:has(input[value='eu'])");
    assert_eq!(browser.run(country), "FR");
    hand.type_into("input[name=name]", "Boucherie Sablon");
    hand.type_into("input[name=code]", "BSN");
    hand.tap("button.grand");
    hand.at("/set-up/places");
    hand.sees("input[data-name][value='Plan de découpe']");
    // Nobody goes on as Manager by accident: the name is asked for first.
    browser.open(&format!("{}/set-up/people", house.address));
    let on = "return document.querySelector(\"a[href='/set-up/printer']:not(.pegs a)\") === null";
    assert_eq!(browser.run(on), true);
    hand.type_into("form[data-version] input[name=name]", "Lise Sablon");
    hand.tap("form[data-version] button");
    hand.sees("a[href='/set-up/printer']:not(.pegs a)");
    browser.open(&format!("{}/set-up/printer", house.address));
    hand.type_into("input[name=address]", &printer.address());
    hand.tap("form[data-call='/api/printers'] button");
    hand.sees("form[data-call$='/test-label']");
    let ticked =
        "return document.querySelector(\".pegs li:has([href='/set-up/printer'])\").className";
    assert_eq!(browser.run(ticked), "", "no label came out yet");
    // Which of the sizes it has, line by line.
    let lines = "return [...document.querySelectorAll('[data-paper] li')].map((line) => line.textContent).join(' ')";
    until(|| {
        let told = browser.run(lines);
        told.as_str()
            .is_some_and(|told| told.contains("il manque 51\u{a0}×\u{a0}51"))
    });
    hand.tap("form[data-call$='/test-label'] button");
    let told = "return document.querySelector('[data-told]').innerText";
    until(|| {
        let told = browser.run(told);
        told.as_str()
            .is_some_and(|told| told.contains("Mettez un rouleau de 51\u{a0}×\u{a0}51"))
    });
    assert_eq!(browser.run(ticked), "");
    printer.change(|manners| manners.sizes.push((5_100, 5_100)));
    hand.tap("form[data-call$='/test-label'] button");
    until(|| browser.run(ticked) == "was");
    assert_eq!(printer.paper().len(), 1);
    // The country of the first farm is asked for, and a farm without one is told where an animal comes in.
    let caller = house.caller();
    let farm = json!({ "code": "BRC", "name": "Ferme des Ronces" });
    caller.post("/api/farms", &farm).expect(201);
    let rail = json!({ "code": "rail", "name": "Rail", "kind": "storage" });
    caller.post("/api/places", &rail).expect(201);
    let half = json!({ "code": "pig-half", "names": { "fr": "Demi-porc" }, "kind": "carcass", "species": "pig", "raw": true,
        "allergens": [], "storage": "chilled" });
    caller.post("/api/products", &half).expect(201);
    browser.open(&format!("{}/receive", house.address));
    hand.tap("label:has(input[value='pig-half'])");
    let warned = "const told = document.querySelector(\"[data-if-lacks='animal.farm']\");
        return told.hidden ? '' : told.querySelector('a').getAttribute('href')";
    until(|| browser.run(warned) == "/lists/farms/BRC");
}
