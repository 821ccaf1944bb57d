//! What beef, minced meat, tenderised steak and packs without air say in each place, by a list of its own.
//!
//! Typed from the tables of facts, not from the data that the service reads: `us` F4, R4, R5; `canada-eu-uk` 4.18, 10.7,
//! 10.14, 10.15, 11.1, 14.1, 14.6; `confirmed` 10.7, 10.13; `additions` F4.

use crate::label_items::label;
use chrono::NaiveDate;
use serde_json::{Value, json};
use stories::day::Told;
use stories::labels::set;
use stories::{Caller, Engine, House};

/// The places with the languages of their labels.
const PLACES: [(&str, &[&str]); 7] = [
    ("us", &["en"]),
    ("us", &["en", "fr"]),
    ("ca", &["en", "fr"]),
    ("ca", &["fr", "en"]),
    ("eu", &["fr"]),
    ("eu", &["en", "fr"]),
    ("uk", &["en"]),
];

/// The kind of pack that is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Meat {
    Beef,
    BeefMince,
    PorkMince,
    Tenderised,
    WithoutAir,
}

/// The sentences that a pack must say, by the tables of facts.
fn due(meat: Meat, place: &str, languages: &[&str]) -> Vec<&'static str> {
    let (english, french) = (languages.contains(&"en"), languages.contains(&"fr"));
    let first = languages[0];
    let in_europe = matches!(place, "eu" | "uk");
    let mut due: Vec<&str> = Vec::new();
    let mut ask = |holds: bool, words: &'static str| due.extend(holds.then_some(words));
    match meat {
        // 10.7 with the numbers of abattoir and kitchen; 11.1: country and number.
        Meat::Beef => {
            let (en, fr) = (in_europe && first == "en", in_europe && first == "fr");
            ask(en, "Reference number:");
            ask(en, "Born in: Ireland");
            ask(en, "Reared in: Ireland");
            ask(en, "Slaughtered in France 35.238.001");
            ask(en, "Cutting in: France 35.101.004");
            ask(fr, "Numéro de référence");
            ask(fr, "Élevé en : Irlande");
            ask(fr, "Abattu en : France 35.238.001");
            ask(fr, "Découpé en : France 35.101.004");
            ask(in_europe, "FR 35.101.004");
        }
        // 10.13: where slaughtered, where prepared, and the other country that it came from; F4, 10.14: 20 and 15.
        Meat::BeefMince => {
            let (en, fr) = (in_europe && first == "en", in_europe && first == "fr");
            ask(en, "Reference number:");
            ask(en, "Slaughtered in France");
            ask(en, "Prepared France");
            ask(en, "Origin: Ireland");
            ask(en, "fat content under 20 %");
            ask(en, "collagen/meat protein ratio under 15 %");
            ask(fr, "Élaboré en : France");
            ask(fr, "Origine : Irlande");
            ask(fr, "matières grasses inférieur à 20 %");
        }
        // F4, 10.14: 30 and 18 with pork in it.
        Meat::PorkMince => {
            ask(in_europe && english, "fat content under 30 %");
            ask(in_europe && english, "protein ratio under 18 %");
            ask(in_europe && french, "matières grasses inférieur à 30 %");
        }
        // us F4; canada-eu-uk 4.18, a steak of it.
        Meat::Tenderised => {
            ask(place == "us", "mechanically tenderized");
            ask(place == "us", "145 °F");
            ask(place == "us" && first == "en", "thermometer");
            let ca = place == "ca";
            ask(ca, "mechanically tenderized");
            ask(ca, "attendri mécaniquement");
            ask(
                ca,
                "Cook to a minimum internal temperature of 63°C (145°F).",
            );
            ask(ca, "Turn steak over at least twice during cooking.");
            ask(ca, "Faire cuire jusqu'à ce que la température interne");
            ask(
                ca,
                "Retourner le bifteck au moins deux fois durant la cuisson.",
            );
        }
        // us R4, R5.
        Meat::WithoutAir => {
            ask(place == "us", "41 °F or below");
            ask(place == "us", "Discard");
            ask(place == "us", "within 30 days of packing");
            ask(place == "us" && french, "dans les 30 jours de l’emballage");
        }
    }
    due
}

/// What a pack must not say.
fn barred(meat: Meat, place: &str) -> &'static [&'static str] {
    match (meat, place) {
        // A shop that is not under inspection carries no number of an inspected plant (us X-US-33).
        (Meat::Beef, "us" | "ca") => &["35.101.004", "CUTTING IN"],
        // Birth and rearing are not for minced beef (confirmed 10.13).
        (Meat::BeefMince, _) => &["BORN IN", "REARED IN"],
        _ => &[],
    }
}

/// Does a text say every word of a sentence? Lines and columns of a label stand between its words.
fn says(text: &str, sentence: &str) -> bool {
    let bare = |text: &str| text.to_uppercase().replace('\u{a0}', " ");
    let text = bare(text);
    bare(sentence).split(' ').all(|word| text.contains(word))
}

fn product(caller: &Caller, code: &str, english: &str, french: &str, more: Value) {
    let mut body = json!({ "code": code, "names": { "en": english, "fr": french }, "kind": "cut", "species": "cattle",
        "raw": true, "storage": "chilled", "for_sale": true, "price_minor_per_kg": 2_000,
        "keep": { "days": 9, "from": "made", "day_one_counts": true } });
    for (key, value) in more.as_object().expect("fields") {
        body[key] = value.clone();
    }
    caller.post("/api/products", &body).expect(201);
}

/// The lots of each kind, from one ox that was born in Ireland and killed in France, and from a pig.
fn lots(caller: &Caller) -> Vec<(Meat, String)> {
    let change = |path: &str, fields: Value| {
        let known = caller.get(path).expect(200);
        let mut body = known.body.clone();
        for (key, value) in fields.as_object().expect("fields") {
            body[key] = value.clone();
        }
        caller
            .put_over(path, &known.etag.unwrap(), &body)
            .expect(200);
    };
    change(
        "/api/farms/BRC",
        json!({ "country": "IE", "born_there": true }),
    );
    let abattoir = json!({ "name": "Harle Hall", "country": "FR", "number": "35.238.001" });
    caller.post("/api/abattoirs", &abattoir).expect(201);
    let mince = |of: &str| json!({ "kind": "mixed", "species": of, "standard": { "mince": if of == "pig" { "with-pork" } else { "beef" } } });
    product(
        caller,
        "ox-quarter",
        "Quarter of beef",
        "Quartier de bœuf",
        json!({ "kind": "carcass", "for_sale": false }),
    );
    product(caller, "ox-steak", "Beef steak", "Bifteck", json!({}));
    let soft = json!({ "standard": { "tenderised": true, "steak": true } });
    product(
        caller,
        "soft-steak",
        "Mechanically tenderized beef steak",
        "Bifteck attendri mécaniquement",
        soft,
    );
    product(
        caller,
        "ox-mince",
        "Beef mince",
        "Bœuf haché",
        mince("cattle"),
    );
    product(
        caller,
        "pig-mince",
        "Pork mince",
        "Porc haché",
        mince("pig"),
    );
    product(
        caller,
        "sealed-chop",
        "Pork chop",
        "Côtelette de porc",
        json!({ "species": "pig" }),
    );
    let animal = json!({ "farm": "BRC", "species": "cattle", "killed_on": "2026-11-27", "carcass": "B-7", "abattoir": "35.238.001" });
    let body =
        json!({ "product": "ox-quarter", "grams": 40_000, "place": "cooler", "animal": animal });
    let ox = caller.deed("/api/receipts", body).expect(201).code(0);
    let pig = caller.half_pig("0608-17", 20_000);
    let cut = |of: &str, into: &str| {
        caller
            .step("cut")
            .of_grams(of, 500)
            .into(into, 500)
            .done()
            .code(0)
    };
    let grind = |of: &str, into: &str| {
        caller
            .step("grind")
            .of_grams(of, 500)
            .into(into, 500)
            .done()
            .code(0)
    };
    let sealed = caller
        .step("pack")
        .of_grams(&pig, 500)
        .into("sealed-chop", 500);
    vec![
        (Meat::Beef, cut(&ox, "ox-steak")),
        (Meat::Tenderised, cut(&ox, "soft-steak")),
        (Meat::BeefMince, grind(&ox, "ox-mince")),
        (Meat::PorkMince, grind(&pig, "pig-mince")),
        (
            Meat::WithoutAir,
            sealed.which("packaging", "vacuum").done().code(0),
        ),
    ]
}

#[test]
fn beef_mince_and_packs_without_air_say_what_the_tables_of_facts_ask() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    set(
        &caller,
        &[
            ("country", json!("FR")),
            ("establishment", json!("35.101.004")),
        ],
    );
    let lots = lots(&caller);
    let mut wrong: Vec<String> = Vec::new();
    let mut asked = 0;
    for (place, languages) in PLACES {
        set(
            &caller,
            &[("profile", json!(place)), ("languages", json!(languages))],
        );
        for (meat, lot) in &lots {
            let of = format!("{place} {languages:?} {meat:?}");
            let text = match label(&house, &caller, lot, 1) {
                Ok(text) => text,
                Err(why) => {
                    wrong.push(format!("{of}: {why}"));
                    continue;
                }
            };
            let due = due(*meat, place, languages);
            asked += due.len();
            let lacks: Vec<&&str> = due
                .iter()
                .filter(|sentence| !says(&text, sentence))
                .collect();
            let odd: Vec<&&str> = barred(*meat, place)
                .iter()
                .filter(|words| text.contains(**words))
                .collect();
            if !lacks.is_empty() || !odd.is_empty() {
                wrong.push(format!(
                    "{of}: lacks {lacks:?}, and says {odd:?}\n    {text}"
                ));
            }
        }
    }
    assert!(asked > 60, "{asked} sentences");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// 14.1: without another control, 10 days from packing are the most, of a fresh cut 13 (14.6); us R5: 30.
#[test]
fn a_pack_without_air_keeps_as_long_as_its_place_lets_it() {
    for (place, kind, most) in [("us", "cut", 30), ("uk", "cut", 13), ("uk", "mixed", 10)] {
        let house = House::furnished(Engine::Sqlite);
        let caller = house.caller();
        set(&caller, &[("profile", json!(place))]);
        let long = json!({ "species": "pig", "kind": kind, "keep": { "days": 60, "from": "packed", "day_one_counts": false } });
        product(
            &caller,
            "sealed-chop",
            "Pork chop",
            "Côtelette de porc",
            long,
        );
        let pig = caller.half_pig("0608-17", 20_000);
        let sealed = caller
            .step("pack")
            .of_grams(&pig, 500)
            .into("sealed-chop", 500);
        let lot = caller.lot(&sealed.which("packaging", "vacuum").done().code(0));
        let day = |text: &Value| text.as_str().unwrap()[..10].parse::<NaiveDate>().unwrap();
        let kept = (day(&lot["use_by"]) - day(&lot["made_at"])).num_days();
        assert!(
            kept <= most && kept > most - 3,
            "{place} {kind}: {kept} days"
        );
    }
}

/// Where the kitchen is, and its approval number, are entered where it is set up.
#[test]
fn an_approval_number_belongs_to_the_state_that_gave_it() {
    let house = House::furnished(Engine::Sqlite);
    let caller = house.caller();
    let put = |changes: Value| {
        let kitchen = caller.get("/api/kitchen").expect(200);
        let mut body = kitchen.body.clone();
        for (key, value) in changes.as_object().expect("fields") {
            body[key] = value.clone();
        }
        caller.put_over("/api/kitchen", &kitchen.etag.unwrap(), &body)
    };
    put(json!({ "country": "France" })).refused(422, "country");
    put(json!({ "establishment": "35.101.004" })).refused(422, "country");
    put(json!({ "country": "FR", "establishment": "35.101.004", "panel_apart": true })).expect(200);
    let page = caller.get("/set-up/kitchen").expect(200);
    let page = String::from_utf8(page.bytes).unwrap();
    for shown in [
        r#"name="country" value="FR""#,
        r#"name="establishment" value="35.101.004""#,
        r#"<option value="yes" selected"#,
    ] {
        assert!(page.contains(shown), "{shown}");
    }
}
