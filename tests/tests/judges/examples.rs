//! Every call of the API has an example in the document, and each does what the document says: they are sent one
//! after the other to the demo kitchen; the status is one of those told, and a validator that nobody here wrote
//! holds each answer against its schema.

use super::browser::at_the_bench;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::io::{Read, Write};
use std::net::TcpStream;
use stories::{Engine, House};

/// Compares each answer with the schema that its status has.
const JUDGE: &str = r#"
import json, sys
from jsonschema import Draft202012Validator
document, cases = (json.load(open(path)) for path in sys.argv[1:3])
wrong = []
for case in cases:
    content = document["paths"][case["path"]][case["method"]]["responses"][case["status"]].get("content", {})
    schema = content.get("application/json", {}).get("schema")
    if schema is None:
        continue
    whole = {**schema, "components": document["components"]}
    for error in list(Draft202012Validator(whole).iter_errors(case["answer"]))[:3]:
        wrong.append("%s %s: %s at %s" % (case["method"], case["path"], error.message[:200], list(error.path)))
print("\n".join(wrong))
sys.exit(1 if wrong else 0)
"#;

/// A call as the document has it.
struct Call {
    path: String,
    method: String,
    operation: Value,
}

#[test]
fn every_call_has_an_example_that_does_what_it_says() {
    let house = House::demo(Engine::Sqlite);
    let caller = house.caller();
    let _printer = at_the_bench(&caller);
    let document = caller.read("/api/openapi.json");
    let unsure = caller.read("/api/prints?state=unsure")["prints"][0]["print"].clone();
    let mut calls = calls(&document);
    let lacking: Vec<String> = calls
        .iter()
        .filter(|call| call.operation["x-example-order"].is_null())
        .map(|call| format!("{} {}", call.method, call.path))
        .collect();
    assert!(lacking.is_empty(), "no example: {lacking:?}");
    calls.sort_by_key(|call| call.operation["x-example-order"].as_u64());
    // What only the record knows, in the place of the example's own.
    let mut known: BTreeMap<&str, String> = BTreeMap::new();
    let (mut cases, mut wrong) = (Vec::new(), Vec::new());
    for call in &calls {
        let name = format!("{} {}", call.method, call.path);
        let path = address(call, &known);
        let mut body = body(call);
        if call.path == "/api/print-settlements" {
            body["prints"][0]["print"] = unsure.clone();
        }
        if call.path == "/api/print-cancellations" {
            body["prints"][0] = known["print"].parse().unwrap_or(0).into();
        }
        let (status, answer) = match name.as_str() {
            "post /api/photo-scans" | "post /api/papers" => {
                let answer = caller.post_bytes(
                    &path,
                    "image/png",
                    include_bytes!("../../../server/tests/parsers/corpus/photos/tub-plain.png"),
                );
                (answer.status, answer.body)
            }
            _ if call.path.ends_with("/import") => {
                let text = body.as_str().expect("a table").as_bytes();
                let answer = caller.post_bytes(&path, "text/csv", text);
                (answer.status, answer.body)
            }
            "put /api/sessions/mine/pin" | "put /api/sessions/mine/reading" => {
                signed_in(&house, &call.method, &path, &body)
            }
            _ if call.method == "put" => {
                let etag = match call.path.starts_with("/api/people") {
                    true => Some("\"v1\"".to_owned()),
                    false => caller.get(&path).etag,
                };
                let answer = caller.put_over(&path, &etag.unwrap_or_default(), &body);
                (answer.status, answer.body)
            }
            _ => {
                let text = if body.is_null() {
                    String::new()
                } else {
                    body.to_string()
                };
                let answer = caller.send(&call.method.to_uppercase(), &path, &text);
                (answer.status, answer.body)
            }
        };
        if call.operation["responses"][status.to_string()].is_null() {
            wrong.push(format!("{name}: {status} {answer}"));
            continue;
        }
        match name.as_str() {
            "post /api/people" => {
                known.insert(
                    "person",
                    answer["id"].as_str().unwrap_or_default().to_owned(),
                );
            }
            "post /api/prints" => {
                known.insert("print", answer["prints"][0]["print"].to_string());
            }
            "post /api/tokens" => {
                known.insert("token", answer["id"].to_string());
            }
            _ => {}
        }
        cases.push(json!({ "path": call.path, "method": call.method, "status": status.to_string(), "answer": answer }));
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let folder = house.folder();
    let files = ["document.json", "cases.json", "judge.py"].map(|name| folder.join(name));
    std::fs::write(&files[0], document.to_string()).expect("it is written");
    std::fs::write(&files[1], json!(cases).to_string()).expect("it is written");
    std::fs::write(&files[2], JUDGE).expect("it is written");
    let python = std::env::var("GAMBREL_PYTHON").unwrap_or_else(|_| "python3".into());
    let judged = std::process::Command::new(python)
        .args([&files[2], &files[0], &files[1]])
        .output()
        .expect("python runs");
    assert!(
        judged.status.success(),
        "{}{}",
        String::from_utf8_lossy(&judged.stdout),
        String::from_utf8_lossy(&judged.stderr)
    );
}

fn calls(document: &Value) -> Vec<Call> {
    let paths = document["paths"].as_object().expect("paths");
    let each = paths.iter().flat_map(|(path, item)| {
        let methods = item.as_object().into_iter().flatten();
        methods.map(|(method, operation)| Call {
            path: path.clone(),
            method: method.clone(),
            operation: operation.clone(),
        })
    });
    each.collect()
}

/// The address of an example: its path filled in, and its query.
fn address(call: &Call, known: &BTreeMap<&str, String>) -> String {
    let (mut path, mut query) = (call.path.clone(), Vec::new());
    for parameter in call.operation["parameters"]
        .as_array()
        .into_iter()
        .flatten()
    {
        let (name, value) = (
            parameter["name"].as_str().unwrap_or_default(),
            &parameter["example"],
        );
        let text = value
            .as_str()
            .map_or_else(|| value.to_string(), str::to_owned);
        match parameter["in"].as_str() {
            Some("path") => {
                let own = match call.path.as_str() {
                    of if of.starts_with("/api/people/") => known.get("person").map(String::as_str),
                    of if of.starts_with("/api/prints/") => known.get("print").map(String::as_str),
                    of if of.starts_with("/api/tokens/") => known.get("token").map(String::as_str),
                    // The printer that stands at the bench in this test.
                    of if of.ends_with("/test-label") => Some("bench"),
                    _ => None,
                };
                path = path.replace(&format!("{{{name}}}"), own.unwrap_or(&text));
            }
            Some("query") if !value.is_null() => query.push(format!("{name}={text}")),
            _ => {}
        }
    }
    match query.is_empty() {
        true => path,
        false => format!("{path}?{}", query.join("&")),
    }
}

fn body(call: &Call) -> Value {
    let content = call.operation["requestBody"]["content"].as_object();
    let media = content.and_then(|content| content.values().next());
    media.map_or(Value::Null, |media| media["example"].clone())
}

/// A call of somebody who signed in, as a browser sends it.
fn signed_in(house: &House, method: &str, path: &str, body: &Value) -> (u16, Value) {
    let person = json!({ "person": "Ruth Amory", "pin": "4826" });
    let other = json!({ "person": "Ruth Amory", "pin": "7193" });
    let begun = [person, other]
        .iter()
        .map(|who| raw(house, "POST", "/api/sessions", "", who))
        .find(|answer| answer.starts_with("HTTP/1.1 201"));
    let begun = begun.expect("one of the two is the PIN");
    let set = begun
        .lines()
        .filter_map(|line| line.strip_prefix("set-cookie: "));
    let pairs: Vec<&str> = set.filter_map(|line| line.split(';').next()).collect();
    let answer = raw(house, &method.to_uppercase(), path, &pairs.join("; "), body);
    let status = answer[9..12].parse().expect("a status");
    let text = answer.split_once("\r\n\r\n").map_or("", |(_, text)| text);
    (status, serde_json::from_str(text).unwrap_or_default())
}

fn raw(house: &House, method: &str, path: &str, cookies: &str, body: &Value) -> String {
    let host = house.address.trim_start_matches("http://");
    let body = body.to_string();
    let mut stream = TcpStream::connect(host).expect("it listens");
    let request = format!(
        "{method} {path} HTTP/1.1\r\nHost: {host}\r\nOrigin: http://{host}\r\nCookie: {cookies}\r\n\
         Content-Type: application/json\r\nContent-Length: {}\r\nConnection: close\r\n\r\n{body}",
        body.len()
    );
    stream.write_all(request.as_bytes()).expect("it is sent");
    let mut answer = String::new();
    stream.read_to_string(&mut answer).expect("it answers");
    answer
}
