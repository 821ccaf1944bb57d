//! A side of pork on the bench, in a real browser: weighed by keyboard and scale, left and taken over, cut off, undone.

use serde_json::Value;
use stories::browser::Browser;
use stories::queue::until;
use stories::{Caller, Engine, House};

const TABLET: (u32, u32) = (820, 1180);
const PHONE: (u32, u32) = (390, 844);

/// Return, as a keyboard and a scale press it.
const RETURN: &str = "\u{e007}";

/// What a side of 45 kg gives, in the order of the knife; 450 g is loss.
const SIDE: [(&str, &str); 12] = [
    ("pork-ham", "11.025"),
    ("pork-loin", "8.325"),
    ("pork-belly", "6.975"),
    ("pork-spareribs", "1.440"),
    ("pork-shoulder", "3.600"),
    ("pork-picnic", "4.050"),
    ("pork-jowl", "0.720"),
    ("pork-feet", "0.765"),
    ("pork-fat", "5.535"),
    ("pork-bones", "0.675"),
    ("pork-trim", "1.125"),
    ("pork-scrap", "0.315"),
];

/// Somebody at the bench with a side before them.
struct Bench<'a> {
    browser: &'a Browser,
    house: &'a House,
    lot: String,
}

impl<'a> Bench<'a> {
    fn of(browser: &'a Browser, house: &'a House, person: &str, screen: (u32, u32)) -> Bench<'a> {
        browser.sign_in(&house.address, person);
        browser.resize(screen);
        Bench {
            browser,
            house,
            lot: house.caller().side_on_the_rail(),
        }
    }

    fn open(&self) {
        let path = format!("/lots/{}/break-down", self.lot);
        self.browser.open(&format!("{}{path}", self.house.address));
        self.until("document.activeElement.matches('[data-weight]')");
    }

    /// The scale types a weight and Return, which keeps it.
    fn weigh(&self, weight: &str) {
        self.browser.press(&format!("{weight}{RETURN}"));
    }

    #[track_caller]
    fn until(&self, so: &str) {
        until(|| self.browser.run(&format!("return !!({so})")) == true);
    }

    fn says(&self, css: &str) -> String {
        let script = format!("return document.querySelector(\"{css}\").innerText");
        let text = self.browser.run(&script);
        text.as_str().unwrap_or_default().replace('\u{a0}', " ")
    }

    /// The cut in hand.
    fn cut(&self) -> String {
        self.says("[data-cut-name]")
    }

    /// How many weights the device keeps.
    fn kept(&self) -> Value {
        let key = format!("break-down:{}/1", self.lot);
        let script = format!("return JSON.parse(localStorage.getItem('{key}'))?.kept.length ?? 0");
        self.browser.run(&script)
    }

    /// The deed that the page says was just done.
    fn did(&self) -> String {
        let script = "return document.readyState === 'complete' ? new URL(location.href).searchParams.get('did') : null";
        let mut id = String::new();
        until(|| {
            let found = self.browser.run(script);
            id = found.as_str().unwrap_or_default().to_owned();
            !id.is_empty()
        });
        id
    }
}

fn left(caller: &Caller, lot: &str) -> Value {
    caller.read(&format!("/api/lots/{lot}"))["on_hand_grams"].clone()
}

#[test]
fn a_side_is_weighed_off_and_recorded_by_keyboard_alone_and_undone_its_weights_are_there_again() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    browser.be_patient();
    let bench = Bench::of(&browser, &house, "Oda Marsh", TABLET);
    bench.open();
    // What is usual is said in words; the row behind it opens by a tap.
    let usual = bench.says("[data-usual-says]");
    assert_eq!(
        usual,
        "ham, bone in, skin on: usual 9.00 to 12.15 kg, most often 11.03"
    );
    bench.until("!document.querySelector('[data-usual-why]').open");
    browser.tap("[data-usual-why] summary");
    let why = bench.says("[data-usual-source]");
    assert!(
        why.starts_with("What is plausible") && why.contains("trade-1.2-bands"),
        "{why}"
    );
    browser.run("document.querySelector('[data-weight]').focus()");
    for (nth, (_, weight)) in SIDE.iter().enumerate() {
        assert!(
            bench.cut().starts_with(&(nth + 1).to_string()),
            "{}",
            bench.cut()
        );
        bench.weigh(weight);
    }
    assert_eq!(bench.kept(), 12);
    // The demo's clock stands at a quarter to eleven, whatever this device's says.
    let last = bench.says("[data-last-says]");
    assert!(last.contains("10:"), "{last}");
    let sentence = bench.says("[data-deed-says]");
    assert!(
        sentence.contains("Fresh ham 11.025 kg") && sentence.contains("0.450 kg is loss."),
        "{sentence}"
    );
    // The button has the focus by then.
    browser.press(RETURN);
    let deed = bench.did();
    let step = caller.read(&format!("/api/steps/{deed}"));
    assert_eq!(
        (&step["kind"], &step["by"]),
        (&"break-down".into(), &"Oda Marsh".into())
    );
    assert_eq!(left(&caller, &bench.lot), 0);
    let made = caller.read(&format!("/api/lots/{}/descendants", bench.lot));
    let made = made["lots"].as_array().expect("lots");
    for (product, weight) in SIDE {
        let grams = weight.parse::<f64>().expect("a weight") * 1000.0;
        let is_it =
            |lot: &&Value| lot["product"] == product && lot["made_grams"].as_f64() == Some(grams);
        assert!(made.iter().any(|lot| is_it(&lot)), "{product}: {made:?}");
    }
    browser.tap("button.undo");
    until(|| left(&caller, &bench.lot) == 45_000);
    // The page that says so comes after that, and would come over what is opened next.
    bench.until(
        "new URL(location.href).searchParams.has('did') && document.readyState === 'complete' \
        && document.querySelector('.done button.undo') === null",
    );
    // Nobody weighs twelve cuts twice.
    bench
        .browser
        .open(&format!("{}/lots/{}/break-down", house.address, bench.lot));
    bench.until("!document.querySelector('[data-record]').hidden");
    assert!(bench.says("[data-begun]").contains("44.550 kg"));
    browser.tap("[data-record] button.grand");
    bench.did();
    assert_eq!(left(&caller, &bench.lot), 0);
    assert!(browser.errors().is_empty());
}

#[test]
fn an_odd_weight_is_told_before_it_is_kept_and_whoever_takes_over_goes_on() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    browser.be_patient();
    let bench = Bench::of(&browser, &house, "Pim Verrall", PHONE);
    bench.open();
    // A scale that says its unit, and is meant in grams.
    bench.weigh("ST,GS,+ 11025 g");
    assert_eq!(bench.cut(), "2 Loin");
    browser.press(&format!("2.1{RETURN}"));
    let told = bench.says("[data-odd]");
    assert!(
        told.contains("Light for Loin") && told.contains("7.20 kg to 9.90 kg"),
        "{told}"
    );
    assert_eq!(bench.kept(), 1);
    browser.tap("[data-keep]");
    assert_eq!(bench.kept(), 2);
    // More than is there is not kept at all.
    browser.press(&format!("40{RETURN}{RETURN}"));
    assert_eq!(
        (bench.kept(), bench.cut()),
        (2.into(), "3 Belly".to_owned())
    );
    // Undone, and kept again.
    browser.tap("[data-undo]");
    assert_eq!((bench.kept(), bench.cut()), (1.into(), "2 Loin".to_owned()));
    bench.weigh("8.325");
    // On the picture: what is off is hatched, what is now is black.
    let is = |cut: &str, class: &str| {
        let css = format!(".side .cut.{class}[data-of={cut}]");
        browser.run(&format!("return document.querySelector('{css}') !== null")) == true
    };
    assert!(is("ham", "off") && is("loin", "off") && is("belly", "now") && !is("jowl", "off"));
    // A finger on the picture takes another cut first.
    browser.run("document.querySelector('.side .cut[data-of=jowl] path').dispatchEvent(new MouseEvent('click', { bubbles: true }))");
    assert_eq!(bench.cut(), "7 Jowl");
    bench.weigh("0.720");

    // Twenty minutes later somebody else stands there.
    browser.sign_in(&house.address, "Oda Marsh");
    bench.open();
    let begun = bench.says("[data-begun]");
    assert!(
        begun.contains("Pim Verrall") && begun.contains("20.070 kg"),
        "{begun}"
    );
    bench.weigh("6.975");
    browser.tap("[data-rest-stays] input");
    browser.tap("[data-record] button.grand");
    let deed = bench.did();
    assert_eq!(left(&caller, &bench.lot), 45_000 - 27_045);
    let step = caller.read(&format!("/api/steps/{deed}"));
    assert_eq!(step["by"], "Oda Marsh");
    assert_eq!(step["note"], "Weighed by Pim Verrall, Oda Marsh.");
    // What came off before is told when the rest is cut up.
    bench.open();
    assert_eq!(bench.cut(), "4 Spareribs");
    assert_eq!(bench.kept(), 0);
    assert!(is("ham", "off"));
}

#[test]
fn what_is_sent_into_a_dead_network_is_kept_and_recorded_once() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    browser.be_patient();
    let bench = Bench::of(&browser, &house, "Oda Marsh", TABLET);
    bench.open();
    // One cut in three pieces.
    browser.tap("[data-cut=fat]");
    for weight in ["2.5", "2", "1.035"] {
        browser.press(weight);
        browser.tap("[data-another]");
    }
    assert!(bench.says("[data-cut-more]").contains("5.535 kg"));
    browser.tap("[data-rest-stays] input");
    browser.cut_off(true);
    browser.tap("[data-record] button.grand");
    bench.until("document.querySelector('[data-told] .slip')");
    assert!(bench.says("[data-told]").contains("waits on this device"));
    assert_eq!(left(&caller, &bench.lot), 45_000);
    browser.cut_off(false);
    until(|| left(&caller, &bench.lot) == 45_000 - 5_535);
    // The page is opened anew: what was recorded is not there to be recorded again.
    bench.open();
    assert_eq!(bench.kept(), 0);
    let made = caller.read(&format!("/api/lots/{}/descendants", bench.lot));
    let made = made["lots"].as_array().expect("lots");
    assert_eq!(made.len(), 1, "{made:?}");
    let fat = made[0]["code"].as_str().expect("a code");
    let packs = caller.read(&format!("/api/lots/{fat}"))["packs"].clone();
    let weights: Vec<&Value> = packs
        .as_array()
        .into_iter()
        .flatten()
        .map(|pack| &pack["grams"])
        .collect();
    assert_eq!(weights, [&Value::from(2500), &2000.into(), &1035.into()]);
}

/// What stands in the box of weights, and was not kept, is asked about: it neither goes nor is lost unsaid.
#[test]
fn a_weight_that_was_typed_and_not_kept_is_asked_about_before_the_deed() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let browser = Browser::reading("en");
    browser.be_patient();
    let bench = Bench::of(&browser, &house, "Oda Marsh", PHONE);
    bench.open();
    bench.weigh("11.025");
    browser.press("8.325");
    browser.tap("[data-rest-stays] input");
    browser.tap("[data-record] button.grand");
    bench.until("!document.querySelector('[data-unkept]').hidden");
    let asks = bench.says("[data-unkept-says]");
    assert!(asks.contains("2 Loin") && asks.contains("8.325"), "{asks}");
    assert_eq!(left(&caller, &bench.lot), 45_000);
    browser.tap("[data-keep-it]");
    assert_eq!(bench.kept(), 2);
    // One that was typed by mistake is left out by its word.
    browser.tap("[data-cut=belly]");
    browser.press("6");
    browser.tap("[data-rest-stays] input");
    browser.tap("[data-record] button.grand");
    bench.until("!document.querySelector('[data-unkept]').hidden");
    browser.tap("[data-leave-out]");
    assert_eq!(bench.kept(), 2);
    browser.tap("[data-record] button.grand");
    bench.did();
    assert_eq!(left(&caller, &bench.lot), 45_000 - 11_025 - 8_325);
    assert!(browser.errors().is_empty());
}
