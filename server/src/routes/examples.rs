//! An example of each call, in the document. They are one day in the demo kitchen, in their order
//! (`x-example-order`): a test sends each of them there and looks whether it does what the document says.

use serde::Deserialize;
use serde_json::{Map, Value};

/// The examples, in the order in which they are sent.
const EXAMPLES: &str = include_str!("examples.json");

/// An example.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Example {
    /// The method and the path as the document has it.
    call: String,
    /// What stands in the path.
    #[serde(default)]
    path: Map<String, Value>,
    /// What stands in the query.
    #[serde(default)]
    query: Map<String, Value>,
    /// What is sent.
    body: Option<Value>,
}

/// Puts each example where its call is described.
pub fn put_into(mut document: Value) -> Value {
    let examples: Vec<Example> = serde_json::from_str(EXAMPLES).unwrap_or_default();
    for (nth, example) in examples.into_iter().enumerate() {
        let Some((method, path)) = example.call.split_once(' ') else {
            continue;
        };
        // Asked for by name only: an index into what is not there would put a null there.
        let item = document["paths"].get_mut(path);
        let Some(operation) = item.and_then(|item| item.get_mut(method.to_lowercase())) else {
            continue;
        };
        operation["x-example-order"] = nth.into();
        let parameters = operation.get_mut("parameters");
        let parameters = parameters.and_then(Value::as_array_mut);
        for parameter in parameters.into_iter().flatten() {
            let given = match parameter["in"].as_str() {
                Some("path") => &example.path,
                Some("query") => &example.query,
                _ => continue,
            };
            let name = parameter["name"].as_str().unwrap_or_default();
            if let Some(value) = given.get(name) {
                parameter["example"] = value.clone();
            }
        }
        let content = operation.pointer_mut("/requestBody/content");
        let content = content.and_then(Value::as_object_mut);
        let media = content.and_then(|content| content.values_mut().next());
        if let (Some(media), Some(body)) = (media, example.body) {
            media["example"] = body;
        }
    }
    document
}
