//! An entry of the product list whose name tells an allergen that nobody ticked: it is said when it is listed, and what
//! is bought as it has it, with all that is made of it.

use super::corrections::{corrects, product};
use super::names::listed;
use serde_json::{Value, json};
use stories::call::fresh_id;
use stories::day::{Told, bought};
use stories::labels::{save, words};
use stories::{Caller, Engine, House, on_both_engines};

on_both_engines! {
    an_allergen_that_the_name_tells_is_in_it
}

fn powder(caller: &Caller, id: &str, code: &str, declares: Value) -> stories::day::Receipt {
    let mut paper = bought("PTS", "M-1");
    if !declares.is_null() {
        paper["declares"] = declares;
    }
    let powder = caller.receive(code).to("cooler").grams(2_000);
    powder.bought(paper).id(id)
}

fn an_allergen_that_the_name_tells_is_in_it(engine: Engine) {
    let house = House::furnished(engine);
    let caller = house.caller();
    let plain = |name: &str| json!({ "kind": "ingredient", "species": null, "raw": false, "storage": "ambient", "names": { "en": name } });
    // us-A1: milk. Nobody ticked it.
    let found = listed(&caller, "powder", "", plain("Milk powder"));
    assert_eq!(found, ["naming-tells-allergen trade-food-words"]);
    assert_eq!(
        listed(&caller, "pepper", "", plain("Black pepper")),
        [] as [&str; 0]
    );
    product(
        &caller,
        "burger",
        json!({ "kind": "mixed", "raw": true, "names": { "en": "Burger", "fr": "Hachis" } }),
    );
    let pig = caller.half_pig("0608-17", 20_000);
    let burger = |powder: &str| {
        let mix = caller.step("grind").of_grams(&pig, 900);
        mix.of_grams(powder, 100).into("burger", 1_000).made()
    };
    let id = fresh_id();
    let done = powder(&caller, &id, "powder", Value::Null).done();
    assert_eq!(done.body["warning_keys"], json!(["supplied-named-on-list"]));
    let made = burger(&done.code(0));
    for lot in [&done.code(0), &made] {
        assert_eq!(caller.lot(lot)["allergens"], json!(["milk"]));
        let scan = caller.read(&format!("/api/scan?code={lot}"));
        assert_eq!(scan["allergens"], json!(["milk"]));
    }
    let because = caller.why(&done.code(0))["because"]["contents"].to_string();
    assert!(because.contains("us-A1"), "{because}");
    let pdf = caller.get(&format!("/api/lots/{made}/labels.pdf"));
    let text = words(&save(house.folder(), "burger.pdf", &pdf.expect(200).bytes));
    assert!(text.contains("Contains: milk"), "{text}");
    // What the pack tells counts, and what it told later is as if it had been told at the door.
    let none = json!({ "allergens": [] });
    let told = powder(&caller, &fresh_id(), "powder", none).done();
    assert_eq!(told.body["warning_keys"], json!([]));
    assert_eq!(caller.lot(&told.code(0))["allergens"], json!([]));
    let soy = json!({ "declares": { "allergens": ["soy"] } });
    corrects(caller.correct(&id).with("bought", soy));
    assert_eq!(caller.lot(&made)["allergens"], json!(["soy"]));
    // A bought sauce is of what its recipe's parts are called.
    let sauce = json!({ "kind": "mixed", "species": null, "raw": false, "storage": "ambient", "names": { "en": "Sauce" } });
    listed(&caller, "sauce", "", sauce);
    let recipe = json!({ "product": "sauce", "parts": [{ "product": "pepper", "grams": 900 }, { "product": "powder", "grams": 100 }] });
    caller.post("/api/recipes", &recipe).expect(201);
    let sauce = powder(&caller, &fresh_id(), "sauce", Value::Null).made();
    assert_eq!(caller.lot(&sauce)["allergens"], json!(["milk"]));
}
