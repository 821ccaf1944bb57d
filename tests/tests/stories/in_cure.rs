//! A belly in its cure: it says when it is turned and when it comes out, in the cure room and on Today.

use serde_json::{Value, json};
use stories::call::{chrono_day, moment};
use stories::day::{Told, bought};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    a_belly_in_its_cure_is_turned_and_comes_out_by_its_calendar
}

/// Minutes of a day.
const DAY: i64 = 24 * 60;

fn lists(caller: &Caller) {
    for body in [
        json!({ "code": "no-1", "names": { "en": "Curing salt" }, "kind": "ingredient", "storage": "ambient",
            "curing_salt": { "nitrite_percent": 6.25 } }),
        json!({ "code": "raw-belly", "names": { "en": "Belly" }, "kind": "cut", "species": "pig", "raw": true,
            "storage": "chilled" }),
        json!({ "code": "cured-belly", "names": { "en": "Belly in cure", "fr": "Flanc en salaison" }, "kind": "cured",
            "species": "pig", "raw": true, "storage": "chilled",
            "cure": { "class": "bacon", "method": "dry", "salting": "dry-bacon", "days": 11 } }),
    ] {
        caller.post("/api/products", &body).expect(201);
    }
    let never = json!({ "code": "never", "names": { "en": "Never" }, "kind": "cured", "species": "pig", "raw": true,
        "storage": "chilled", "cure": { "class": "bacon", "method": "dry", "days": 0 } });
    caller
        .post("/api/products", &never)
        .refused(422, "cure.days");
}

fn pieces(caller: &Caller) -> Vec<(String, String)> {
    let today = caller.read("/api/today");
    let hands = today["hands"].as_array().expect("hands").iter();
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    hands
        .filter(|hand| hand["sort"] == "piece")
        .map(|hand| (text(&hand["more"][0]), text(&hand["act"])))
        .collect()
}

fn a_belly_in_its_cure_is_turned_and_comes_out_by_its_calendar(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    lists(&caller);
    // The day on the bag of the salt is none of the belly's.
    let came = |product: &str, lot: &str| {
        let mut of = bought("PTS", lot);
        if product == "no-1" {
            of["use_by"] = json!(chrono_day(600));
        }
        let came = caller.receive(product).bought(of);
        came.grams(5_000)
            .to("cooler")
            .with("at", moment(-4 * DAY))
            .made()
    };
    let (salt, meat) = (came("no-1", "S-1"), came("raw-belly", "B-1"));
    // 2.5 g of a 6.25 % salt on a kilogram are 156 ppm; dry-cured bacon may have 200 (us-N14).
    let cured = |days: i64| {
        let cure = caller
            .step("cure")
            .of_grams(&meat, 1_000)
            .of_grams(&salt, 2.5);
        let cure = cure.into("cured-belly", 1_000);
        cure.with("at", moment(-days * DAY)).made()
    };
    let belly = cured(3);
    assert_eq!(caller.lot(&belly)["packs"][0]["use_by"], Value::Null);
    let lying = || caller.read("/api/cure-room")["lying"][0].clone();
    let told = lying();
    assert_eq!(told["lot"], belly.as_str(), "{told}");
    assert_eq!(told["days"], 3, "{told}");
    assert_eq!(told["ready"], chrono_day(8), "{told}");
    // Turned daily (trade-2.1-dry-bacon): ten times, then it comes out, and is weighed.
    assert_eq!(told["plan"].as_array().map(Vec::len), Some(13), "{told}");
    assert!(
        told["due"][0]
            .as_str()
            .unwrap_or_default()
            .starts_with("turn"),
        "{told}"
    );
    // The page that whoever cured it reads first says both days.
    let out = |lot: &str| {
        caller
            .page(&format!("/lots/{lot}"))
            .contains("Out of its cure on")
    };
    assert!(out(&belly) && !out(&salt));
    // So does its label: no last day is known yet, and the day on it is not under the words of one.
    // It is turned on more days than the label has room for, and none of them is kept back.
    let label = |lot: &str| {
        let page = caller.page(&format!("/lots/{lot}"));
        // The label breaks its lines where it has to.
        ["OUT OF CURE", "every"].map(|told| page.contains(told))
    };
    assert_eq!(label(&belly), [true, true]);
    let due = pieces(&caller);
    assert_eq!(due.len(), 1, "{due:?}");
    assert!(
        due[0].0.contains("turn") && due[0].1.starts_with("Turn"),
        "{due:?}"
    );
    let page = |path: &str| String::from_utf8(caller.get(path).expect(200).bytes).unwrap();
    assert!(
        page("/cure-room").contains("ut of its cure on"),
        "{}",
        page("/cure-room")
    );
    // Turned, it lies quietly until tomorrow.
    let turned = caller.step("turn").of(&belly).with("place", "cooler");
    turned.done();
    assert_eq!(pieces(&caller), []);
    assert_eq!(lying()["due"], json!([]));
    assert!(
        page("/cure-room").contains("urn on"),
        "{}",
        page("/cure-room")
    );
    // Its days are over: out of the salt, and then on the scale.
    let old = {
        let came = caller.receive("raw-belly").bought(bought("PTS", "B-2"));
        let came = came
            .grams(5_000)
            .to("cooler")
            .with("at", moment(-13 * DAY))
            .with("note", "entered late")
            .made();
        let salt = caller.receive("no-1").bought(bought("PTS", "S-2"));
        let salt = salt
            .grams(500)
            .to("cooler")
            .with("at", moment(-13 * DAY))
            .with("note", "entered late")
            .made();
        let cure = caller
            .step("cure")
            .of_grams(&came, 1_000)
            .of_grams(&salt, 2.5);
        cure.into("cured-belly", 1_000)
            .with("at", moment(-12 * DAY))
            .with("note", "entered late")
            .made()
    };
    let due = pieces(&caller);
    assert_eq!(due.len(), 1, "{due:?}");
    assert!(due[0].0.contains("out of the salt"), "{due:?}");
    caller.step("rinse").of(&old).with("place", "cooler").done();
    assert_eq!(label(&old), [false, false]);
    let due = pieces(&caller);
    assert!(due.len() == 1 && due[0].1.starts_with("Weigh"), "{due:?}");
    caller.measure(&old).with("grams", 950).done();
    assert_eq!(pieces(&caller), []);
}
