//! A tablet that sleeps and a service that is killed, in the middle of each act: whatever was pressed is done once, in
//! the end, and whatever was typed is there still.

use super::flows::TABLET;
use super::waiting_flows::{lines, slip};
use serde_json::json;
use stories::browser::Browser;
use stories::day::{Told, bought};
use stories::queue::until;
use stories::{Caller, Engine, House};

/// An act: where it is, and what is typed and tapped before its button is pressed.
struct Act {
    path: String,
    types: Vec<(&'static str, &'static str)>,
    taps: Vec<&'static str>,
}

fn act(path: String, types: &[(&'static str, &'static str)], taps: &[&'static str]) -> Act {
    Act {
        path,
        types: types.to_vec(),
        taps: taps.to_vec(),
    }
}

/// The acts of a kitchen that was furnished a moment ago: what they are of is received for them.
fn acts(caller: &Caller) -> Vec<Act> {
    let half = caller.half_pig("17", 40_000);
    let chops = caller.receive("pork-chop").bought(bought("PTS", "C-1"));
    let chops = chops.grams(5_000).to("cooler").made();
    let lot = |act: &str| format!("/lots/{chops}/{act}");
    vec![
        act(
            lot("pack"),
            &[("input[name=_each]", "200")],
            &[".choices label:has(input[value='4'])"],
        ),
        act(
            lot("move?packs=1"),
            &[],
            &[".choices label:has(input[value='freezer'])"],
        ),
        act(lot("count"), &[], &[]),
        act(
            "/places/cooler/temperature".to_owned(),
            &[("input[name=celsius], input[name=fahrenheit]", "3.4")],
            &[],
        ),
        act("/places/bench/clean-down".to_owned(), &[], &[]),
        act(
            format!("/lots/{half}/move?packs=1"),
            &[],
            &[".choices label:has(input[value='cooler'])"],
        ),
        act(
            lot("freeze"),
            &[],
            &[".choices label:has(input[value='freezer'])"],
        ),
        act(
            lot("discard?packs=1"),
            &[],
            &[".choices label:has(input[name='why'])"],
        ),
    ]
}

fn fill(browser: &Browser, act: &Act) {
    act.types
        .iter()
        .for_each(|(field, text)| browser.type_into(field, text));
    act.taps.iter().for_each(|css| browser.tap(css));
}

/// The ids of all deeds that this device has kept, in their order.
fn kept(browser: &Browser) -> Vec<String> {
    let rows = browser.wait_for("waiting.all().then((rows) => rows.map((row) => row.id))");
    let rows = rows.as_array().expect("rows").iter();
    rows.map(|id| id.as_str().expect("an id").to_owned())
        .collect()
}

/// Everything that was asked is on record, each once.
fn is_recorded(caller: &Caller, ids: &[String]) {
    for id in ids {
        let step = caller.read(&format!("/api/steps/{id}"));
        assert!(step["voided"].is_null(), "{step}");
        assert_eq!(step["by"], "Ada Finch", "{step}");
    }
    let mut once = ids.to_vec();
    once.sort();
    once.dedup();
    assert_eq!(once.len(), ids.len());
}

/// A furnished kitchen with somebody who signs in with a PIN, at a tablet of theirs.
fn kitchen() -> (House, Browser) {
    let house = House::furnished(Engine::Sqlite);
    let body = json!({ "name": "Ada Finch", "roles": ["manager"], "pin": "2580" });
    house.caller().post("/api/people", &body).expect(201);
    let browser = Browser::reading("en");
    browser.resize(TABLET);
    browser.open(&format!("{}/sign-in", house.address));
    let sign_in = "fetch('/api/sessions', { method: 'POST', headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({ person: 'Ada Finch', pin: '2580' }) }).then((answer) => answer.status)";
    let status = browser.wait_for(sign_in);
    assert!(status == 201 || status == 200, "{status}");
    (house, browser)
}

#[test]
fn a_tablet_that_sleeps_in_the_middle_of_each_act_loses_nothing() {
    let (house, browser) = kitchen();
    let caller = house.caller();
    for (nth, act) in acts(&caller).iter().enumerate() {
        browser.open(&format!("{}{}", house.address, act.path));
        fill(&browser, act);
        // It sleeps over what is typed, and wakes to it.
        let typed =
            "return JSON.stringify(Array.from(document.querySelector('form[data-deed]').elements)
            .map((field) => [field.name, field.value, field.checked]))";
        let before = browser.run(typed);
        browser.sleeps(true);
        browser.sleeps(false);
        assert_eq!(browser.run(typed), before, "{}", act.path);
        // Without a line it is pressed, and sleeps again while the line comes back.
        browser.cut_off(true);
        browser.tap("button.grand");
        slip(&browser);
        browser.sleeps(true);
        browser.cut_off(false);
        browser.sleeps(false);
        until(|| lines(&browser) == json!([0, 0, nth + 1]));
    }
    is_recorded(&caller, &kept(&browser));
}

#[test]
fn a_service_that_is_killed_in_the_middle_of_each_act_has_it_once_when_it_is_back() {
    let (mut house, browser) = kitchen();
    let caller = house.caller();
    let acts = acts(&caller);
    let address = house.address.clone();
    for (nth, act) in acts.iter().enumerate() {
        browser.open(&format!("{address}{}", act.path));
        fill(&browser, act);
        press_and_die(&mut house, &browser, Dies::ALL[nth % 2]);
        until(|| lines(&browser) == json!([0, 0, nth + 1]));
    }
    is_recorded(&house.caller(), &kept(&browser));
}

#[test]
fn what_was_typed_is_there_for_whoever_comes_next() {
    let (house, browser) = kitchen();
    let door = format!("{}/receive", house.address);
    let typed = || {
        browser.run(
            "return [document.querySelector('[name=\"animal.carcass\"]').value,
                document.querySelector('[name=grams]').value,
                document.querySelector('main > .waits[role=status]:not([hidden])')?.textContent.includes('Ada Finch') ?? false]",
        )
    };
    browser.open(&door);
    browser.type_into("[name='animal.carcass']", "17-K");
    browser.type_into("[name=grams]", "41.5");
    let kept = "return localStorage.length > 0";
    until(|| browser.run(kept) == true);
    browser.open(&format!("{}/places", house.address));
    browser.open(&door);
    assert_eq!(typed(), json!(["17-K", "41.5", true]));
    // It is nobody's any more: the form is empty again, also afterwards.
    browser.tap("main > .waits[role=status] button");
    until(|| typed() == json!(["", "", false]));
    browser.open(&door);
    assert_eq!(typed(), json!(["", "", false]));
    // What was recorded is not typed again.
    browser.type_into("[name='animal.carcass']", "18-K");
    browser.type_into("[name=grams]", "41.5");
    browser.run(
        "const form = document.querySelector('form[data-deed]');
        form.querySelector('[name=product]').checked = true;
        form.querySelector('[name=\"animal.side\"]').checked = true;
        form.elements['animal.farm'].selectedIndex = form.elements['animal.farm'].length - 1;
        form.elements['animal.killed_on'].value = form.elements['animal.killed_on'].max;
        form.dispatchEvent(new Event('input', { bubbles: true }))",
    );
    browser.tap("button.grand");
    until(|| browser.run("return location.pathname.startsWith('/lots/')") == true);
    browser.open(&door);
    assert_eq!(typed(), json!(["", "", false]));
}

/// When a service dies.
#[derive(Debug, Clone, Copy)]
enum Dies {
    /// Before it is asked.
    Before,
    /// After it has recorded, and before its answer has come.
    After,
}

impl Dies {
    const ALL: [Dies; 2] = [Dies::Before, Dies::After];
}

/// Presses the button of the act while the service dies, and starts it again.
fn press_and_die(house: &mut House, browser: &Browser, dies: Dies) {
    match dies {
        Dies::Before => {
            house.kill();
            browser.tap("main button.grand");
        }
        Dies::After => {
            browser.run(
                "const real = window.fetch; window.fetch = async (path, asked) => {
                    const answer = await real(path, asked);
                    if (asked?.method === 'POST') { window.fetch = real; throw new Error('cut'); }
                    return answer; };",
            );
            browser.tap("main button.grand");
            slip(browser);
            house.kill();
        }
    }
    slip(browser);
    house.restart_there();
}

#[test]
fn a_thaw_and_the_hold_of_a_recall_are_done_once_though_the_service_is_killed() {
    for dies in Dies::ALL {
        let (mut house, browser) = kitchen();
        let caller = house.caller();
        let address = house.address.clone();
        let chops = caller.receive("pork-chop").bought(bought("PTS", "C-1"));
        let chops = chops.grams(5_000).to("cooler").made();
        let frozen = json!({ "lot": chops, "to": "freezer", "state": "frozen" });
        caller.deed("/api/moves", frozen).expect(201);
        let thaw = act(
            format!("/lots/{chops}/thaw"),
            &[],
            &[".choices label:has(input[value='cooler'])"],
        );
        browser.open(&format!("{address}{}", thaw.path));
        fill(&browser, &thaw);
        press_and_die(&mut house, &browser, dies);
        until(|| lines(&browser) == json!([0, 0, 1]));
        let pack = house.caller().lot(&chops)["packs"][0].clone();
        assert_eq!(
            (&pack["state"], &pack["place"]),
            (&json!("chilled"), &json!("cooler")),
            "{dies:?}"
        );
        // Frozen and thawed: one move each, and no second one.
        let moves = house.caller().lot(&chops)["steps"].to_string();
        assert_eq!(
            moves.matches("\"kind\":\"move\"").count(),
            2,
            "{dies:?}: {moves}"
        );
        browser.open(&format!("{address}/recall?lot={chops}"));
        press_and_die(&mut house, &browser, dies);
        until(|| lines(&browser) == json!([0, 0, 2]));
        let all = house.caller().read("/api/incidents");
        let all = all["incidents"].as_array().expect("incidents").clone();
        assert_eq!(all.len(), 1, "{dies:?}: {all:?}");
        assert_eq!(house.caller().verdict(&chops), "hold", "{dies:?}");
        is_recorded(&house.caller(), &kept(&browser));
    }
}

#[test]
fn what_waits_outlives_the_page_and_goes_through_after_it_is_opened_anew() {
    let (mut house, browser) = kitchen();
    let caller = house.caller();
    let address = house.address.clone();
    let path = "/places/cooler/temperature";
    browser.open(&format!("{address}{path}"));
    let field = "input[name=celsius], input[name=fahrenheit]";
    browser.type_into(field, "3.1");
    house.kill();
    browser.tap("button.grand");
    let first = slip(&browser);
    // The page is gone, as when a tablet ends what it has not shown for long.
    browser.open("about:blank");
    house.restart_there();
    browser.open(&format!("{address}/waiting"));
    until(|| lines(&browser) == json!([0, 0, 1]));
    let text = browser.run("return document.querySelector('main').innerText");
    assert!(
        text.as_str().is_some_and(|text| text.contains(&first)),
        "{text}"
    );
    is_recorded(&caller, &kept(&browser));
}
