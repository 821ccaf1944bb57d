//! The log of the service: one plain line for each request, deeds and refusals by name, nothing of a body.

use serde_json::json;
use stories::{Engine, House};

#[test]
fn each_request_has_one_line_and_no_line_tells_a_body() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log");
    let mut house = House::logging(Engine::Sqlite, std::fs::File::create(&path).unwrap());
    let caller = house.caller();
    let id = stories::call::fresh_id();
    let bought = json!({ "id": id, "by": "Somebody Secret", "place": "cooler", "product": "salt", "grams": 1_000,
        "bought": { "supplier": "PTS", "supplier_lot": "S-1" } });
    caller.post("/api/receipts", &bought).expect(201);
    caller.post("/api/receipts", &bought).expect(200);
    let mut wrong = bought.clone();
    wrong["id"] = json!(stories::call::fresh_id());
    wrong["bought"]["supplier"] = json!("NOBODY");
    caller.post("/api/receipts", &wrong).expect(422);
    caller.get("/scan?code=SECRET").expect(200);
    house.end();
    let log = std::fs::read_to_string(&path).unwrap();
    let lines_with = |part: &str| log.lines().filter(|line| line.contains(part)).count();
    let deed = format!("deed={id} kind=\"receive\"");
    assert_eq!(lines_with(&format!("{deed} new=true")), 1, "{log}");
    assert_eq!(lines_with(&format!("{deed} new=false")), 1, "{log}");
    assert_eq!(lines_with("route=\"/api/receipts\""), 3, "{log}");
    let refused = "WARN refused method=POST path=\"/api/receipts\" status=422 ms=";
    assert_eq!(lines_with(refused), 1, "{log}");
    let of = format!(
        "problem=cannot-be field=\"bought.supplier\" deed={}",
        wrong["id"].as_str().unwrap()
    );
    assert_eq!(lines_with(&of), 1, "{log}");
    assert_eq!(lines_with("path=\"/api/receipts\""), 3, "{log}");
    assert_eq!(lines_with("path=\"/scan\" status=200"), 1, "{log}");
    assert!(
        !log.to_lowercase().contains("secret") && !log.contains("\u{1b}"),
        "{log}"
    );
}
