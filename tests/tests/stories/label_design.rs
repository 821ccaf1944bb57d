//! What whoever designs a label has to hand, at the command line.

use serde_json::Value;
use std::process::{Command, Output};
use stories::house::binary;
use stories::{Engine, House};

fn label(args: &[&str]) -> Output {
    let mut command = Command::new(binary());
    command.env_remove("GAMBREL_TOKEN").arg("label").args(args);
    command.output().expect("the binary runs")
}

#[track_caller]
fn told(args: &[&str]) -> Value {
    let out = label(args);
    let says = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{args:?}: {says}");
    serde_json::from_slice(&out.stdout).unwrap_or_else(|error| panic!("{args:?}: {error}"))
}

#[test]
fn a_template_its_schema_and_facts_are_printed() {
    assert_eq!(told(&["--show", "roll-us"])["purpose"], "retail");
    assert!(told(&["--schema"])["properties"]["items"].is_object());
    assert!(told(&["--sample", "tub"])["texts"]["name"].is_string());
    let out = label(&["--show", "poster"]);
    let says = String::from_utf8_lossy(&out.stderr);
    assert!(!out.status.success() && says.contains("roll-us"), "{says}");
}

#[test]
fn the_facts_of_a_real_pack_make_a_label_on_standard_output() {
    let house = House::demo(Engine::Sqlite);
    let jar = house.caller().noted("L31");
    let pack = format!("{jar}/7");
    let asked = [
        "--from",
        &house.address,
        "--pack",
        &pack,
        "--token",
        &house.token,
    ];
    let facts = told(&asked);
    assert_eq!(facts["texts"]["name"], "Pork rillettes");
    let file = house.folder().join("facts.json");
    std::fs::write(&file, facts.to_string()).unwrap();
    let file = file.to_str().unwrap();
    let out = label(&[file, "--template", "roll-us", "--out", "-.png"]);
    assert!(
        out.stdout.starts_with(b"\x89PNG"),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let out = label(&[file, "--template", "roll-us", "--out", "-"]);
    assert!(
        out.stdout.starts_with(b"%PDF"),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    // Without a token, and of a pack that is not there: in words.
    let out = label(&asked[..4]);
    assert!(!out.status.success() && out.stdout.is_empty());
    let none = format!("{jar}/9999");
    let out = label(&[
        "--from",
        &house.address,
        "--pack",
        &none,
        "--token",
        &house.token,
    ]);
    let says = String::from_utf8_lossy(&out.stderr);
    assert!(!out.status.success() && says.contains("pack"), "{says}");
}
