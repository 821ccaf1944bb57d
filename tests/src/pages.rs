//! Every page, for whoever opens them all.

use crate::Caller;
use crate::day::{Told, bought};
use serde_json::json;

/// The pages of the demo kitchen by name; a drill is begun and a side received for them.
///
/// # Panics
/// It is not the demo kitchen.
pub fn pages(caller: &Caller) -> Vec<(&'static str, String)> {
    let lot = |name: &str| format!("/lots/{}", caller.noted(name));
    let scan = |name: &str| format!("/scan?code={}", caller.noted(name));
    let animals = caller.read("/api/animals");
    let animal = animals["animals"][0]["id"].as_str().expect("an animal");
    let drill = json!({ "told_by": "Lise Hartnoll", "hazard": "residue", "drill": true, "why": "The yearly one",
        "scope": { "start": [{ "carcass": "0608-17" }], "spreads": "lineage" } });
    let drill = caller.deed("/api/incidents", drill).expect(201).body["number"].clone();
    let drill = drill.as_str().expect("its number").to_owned();
    vec![
        ("drills", "/recall/drills".to_owned()),
        ("copies", "/copies".to_owned()),
        ("recall: drill", "/recall?drill=yes".to_owned()),
        ("recall: one", format!("/recall/{drill}")),
        ("recall: count", format!("/recall/{drill}/count?place=case")),
        (
            "recall: scanned",
            format!(
                "/recall/{drill}/count?place=case&code={}/1",
                caller.noted("L13")
            ),
        ),
        ("today", "/".to_owned()),
        ("found", "/find?q=17".to_owned()),
        ("found nothing", "/find?q=nothing-of-that-name".to_owned()),
        ("scan", "/scan".to_owned()),
        ("scan: sell", scan("L13")),
        ("scan: gone", scan("L20")),
        ("scan: unknown", "/scan?code=nothing".to_owned()),
        ("scan of a label", format!("/l/{}/13", caller.noted("L13"))),
        ("lots", "/lots".to_owned()),
        ("lots: none", "/lots?q=nothing-of-that-name".to_owned()),
        ("lot: half pig", lot("S10")),
        ("lot: bacon", lot("L13")),
        ("lot: ribs", lot("L22")),
        ("lot: rillettes", lot("L31")),
        ("lot: ham", lot("H-04")),
        ("lot: salt", lot("B02")),
        ("pack", format!("/lots/{}/pack", caller.noted("L16"))),
        ("freeze", format!("/lots/{}/freeze", caller.noted("L13"))),
        ("discard", format!("/lots/{}/discard", caller.noted("L13"))),
        ("count", format!("/lots/{}/count", caller.noted("L13"))),
        ("cure room", "/cure-room".to_owned()),
        ("weigh", format!("/lots/{}/weigh", caller.noted("H-05"))),
        ("tend", format!("/lots/{}/tend", caller.noted("H-05"))),
        ("release", format!("/lots/{}/release", caller.noted("H-02"))),
        ("cool", format!("/lots/{}/cool", caller.noted("L31"))),
        (
            "strength",
            format!("/lots/{}/strength", caller.noted("CU1-2602")),
        ),
        ("core", format!("/lots/{}/core", cooked_unread(caller))),
        ("places", "/places".to_owned()),
        ("place: freezer", "/places/freezer".to_owned()),
        ("place: bench", "/places/bench".to_owned()),
        ("clean down", "/places/bench/clean-down".to_owned()),
        ("temperature", "/places/cooler-1/temperature".to_owned()),
        ("not cold", "/places/freezer/failed".to_owned()),
        ("move packs", "/places/case/move".to_owned()),
        ("thaw packs", "/places/freezer/thaw".to_owned()),
        ("discard packs", "/places/case/discard".to_owned()),
        ("count a place", "/places/case/count".to_owned()),
        ("adopt", "/adopt".to_owned()),
        ("probes", "/probes".to_owned()),
        ("waiting", "/waiting".to_owned()),
        ("supply", format!("/lots/{}/ship", caller.noted("L13"))),
        (
            "take back",
            format!("/lots/{}/take-back", caller.noted("L13")),
        ),
        ("receive", "/receive".to_owned()),
        ("receive: bought", "/receive?of=bought".to_owned()),
        ("make", "/make".to_owned()),
        ("make: cook", "/make/cook".to_owned()),
        ("make: cut", "/make/cut".to_owned()),
        ("make: pack", "/make/pack".to_owned()),
        ("pot: stock", "/make/cook?product=pork-stock".to_owned()),
        ("pot: cure", "/make/cure?product=pancetta".to_owned()),
        ("animals", "/animals".to_owned()),
        ("wrong labels", "/wrong-labels".to_owned()),
        ("recall", "/recall?q=0608-17".to_owned()),
        (
            "recall: scope",
            format!("/recall?lot={}", caller.noted("S10")),
        ),
        ("animal", format!("/animals/{animal}")),
        ("printing", "/printing".to_owned()),
        (
            "printing: lot",
            format!("/printing?lot={}", caller.noted("L31")),
        ),
        ("sign in", "/sign-in".to_owned()),
        ("who am I", "/me".to_owned()),
        ("logs", "/logs".to_owned()),
        ("papers", "/papers".to_owned()),
        (
            "papers of a lot",
            format!("/papers?lot={}", caller.noted("L13")),
        ),
        ("keeping", "/keeping".to_owned()),
        (
            "a log",
            "/logs/grinding?from=2026-01-01&last=2026-06-26".to_owned(),
        ),
        ("trust", "/trust".to_owned()),
        ("people", "/people".to_owned()),
        ("nothing here", "/nothing-here".to_owned()),
        ("counter: basket", counter_basket(caller)),
        (
            "counter: hold",
            format!("/counter?code={}", caller.noted("B03")),
        ),
        (
            "counter: not for sale",
            format!("/counter?code={}", caller.noted("H-04")),
        ),
        ("ask", "/ask".to_owned()),
        (
            "ask: answered",
            "/ask?asked=yes&about=pig&about=alcohol".to_owned(),
        ),
        ("lists", "/lists".to_owned()),
        ("list: products", "/lists/products".to_owned()),
        ("list: till numbers", "/lists/till-numbers".to_owned()),
        ("list: new product", "/lists/products/new".to_owned()),
        (
            "list: a curing salt",
            "/lists/products/curing-salt-2".to_owned(),
        ),
        ("list: a place", "/lists/places/freezer".to_owned()),
        ("list: a farm", "/lists/farms/BRC".to_owned()),
        ("recipe", "/lists/recipes/fennel-sausage".to_owned()),
        ("import", "/lists/products/import".to_owned()),
        ("starters", "/starters".to_owned()),
        ("rules", "/rules".to_owned()),
        ("rules: work", "/rules?show=open".to_owned()),
        ("set up: kitchen", "/set-up/kitchen".to_owned()),
        ("set up: places", "/set-up/places?from=kitchen".to_owned()),
        ("set up: people", "/set-up/people".to_owned()),
        ("set up: printer", "/set-up/printer".to_owned()),
        ("set up: products", "/set-up/products".to_owned()),
        ("set up: animal", "/set-up/animal".to_owned()),
        (
            "break down",
            format!("/lots/{}/break-down", caller.side_on_the_rail()),
        ),
    ]
}

/// Pork that was cooked, and nobody measured its core.
fn cooked_unread(caller: &Caller) -> String {
    let loin = caller.receive("pork-loin").bought(bought("HRW", "U-1"));
    let loin = loin.grams(4_000).to("cooler-1").made();
    let cooked = caller.step("cook").place("stove").of_grams(&loin, 2_000);
    cooked.into("pulled-pork", 1_500).made()
}

fn counter_basket(caller: &Caller) -> String {
    let bacon = caller.noted("L13");
    format!("/counter?code={bacon}/13&with={bacon}/14,{bacon}/15")
}
