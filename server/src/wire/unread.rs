//! What the JSON reader says of a value that it cannot read, by its kind: its own words are English.

use super::says::{ValueSays, in_fault};
use crate::problems::{KindSays, RequestSays};
use domain::says::{Arg, Says};

/// What was wrong, and the field that it names itself.
#[derive(Debug, PartialEq, Eq)]
pub struct Unread {
    /// What was wrong.
    pub says: Says,
    /// A field that is missing, not known, or there twice.
    pub field: Option<String>,
}

/// Reads what serde says of a value. Its texts are those of `serde::de::Error`.
pub fn unread(text: &str) -> Unread {
    if let Some(says) = in_fault(text) {
        return Unread { says, field: None };
    }
    let name = || text.split('`').nth(1).unwrap_or_default().to_owned();
    let of_field = |says: RequestSays| Unread {
        says: says.into(),
        field: Some(name()),
    };
    let says: Says = match text.split_whitespace().take(2).collect::<Vec<_>>()[..] {
        ["missing", "field"] => return of_field(RequestSays::MissingField { name: name() }),
        ["duplicate", "field"] => return of_field(RequestSays::Twice { name: name() }),
        ["unknown", "field"] => {
            let known = names(text);
            return of_field(match known.is_empty() {
                true => RequestSays::NoFields { name: name() },
                false => RequestSays::UnknownField {
                    name: name(),
                    known: Arg::All(known.into_iter().map(Arg::from).collect()),
                },
            });
        }
        ["unknown", "variant"] => ValueSays::NoneOf {
            text: name(),
            words: names(text).join(", "),
        }
        .into(),
        ["invalid", _] => not_that(text),
        ["provided", "string"] => RequestSays::NoTruth.into(),
        ["number", "too"] | ["cannot", "parse"] => RequestSays::NoNumber.into(),
        _ => unknown(text),
    };
    Unread { says, field: None }
}

/// The names that were expected.
fn names(text: &str) -> Vec<String> {
    let names = text.split('`').skip(3).step_by(2);
    names.map(str::to_owned).collect()
}

/// What the reader says in its own words is for programmers: it goes to the log alone.
fn unknown(text: &str) -> Says {
    tracing::debug!("a value could not be read: {text}");
    RequestSays::Unread.into()
}

/// `invalid type: string "x", expected u32`.
fn not_that(text: &str) -> Says {
    if text.starts_with("invalid digit") {
        return RequestSays::NoNumber.into();
    }
    let told = text
        .split_once(": ")
        .and_then(|(_, rest)| rest.rsplit_once(", expected "));
    match told {
        Some((told, wanted)) => RequestSays::NotThat {
            wanted: wanted_kind(wanted).into(),
            told: told_kind(told).into(),
        }
        .into(),
        None => unknown(text),
    }
}

fn wanted_kind(text: &str) -> KindSays {
    match text {
        "a string" | "a borrowed string" => KindSays::Text,
        "a boolean" => KindSays::Truth,
        "u8" | "u16" | "u32" | "u64" | "usize" => KindSays::CountingNumber,
        "i8" | "i16" | "i32" | "i64" | "isize" => KindSays::WholeNumber,
        "a JSON number" => KindSays::Number,
        "a sequence" => KindSays::List,
        "a map" => KindSays::Object,
        _ if text.starts_with("struct ") => KindSays::Object,
        _ => KindSays::Other,
    }
}

fn told_kind(text: &str) -> KindSays {
    let figure = || text.split('`').nth(1).unwrap_or_default().to_owned();
    match text.split(' ').next().unwrap_or_default() {
        "string" => {
            let quoted = text.trim_start_matches("string ").trim_matches('"');
            let text = quoted.to_owned();
            KindSays::Quoted { text }
        }
        "boolean" | "integer" | "floating" | "number" => KindSays::Figure { figure: figure() },
        "null" | "unit" => KindSays::Nothing,
        "sequence" => KindSays::List,
        "map" => KindSays::Object,
        _ => KindSays::Other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, says: &str, field: Option<&str>) {
        let read = unread(text);
        assert_eq!(
            (read.says.to_string().as_str(), read.field.as_deref()),
            (says, field)
        );
    }

    #[test]
    fn what_serde_says_is_told_by_its_kind() {
        check(
            "missing field `grams`",
            "request-missing-field name=\"grams\"",
            Some("grams"),
        );
        check(
            "unknown field `gram`, expected one of `lot`, `pack`, `grams`",
            "request-unknown-field name=\"gram\" known=[\"lot\", \"pack\", \"grams\"]",
            Some("gram"),
        );
        check(
            "unknown field `x`, there are no fields",
            "request-no-fields name=\"x\"",
            Some("x"),
        );
        check(
            "unknown variant `7F`, expected `60F` or `38F`",
            "value-none-of text=\"7F\" words=\"60F, 38F\"",
            None,
        );
        check(
            "invalid type: string \"x\", expected a JSON number",
            "request-not-that wanted=(kind-number) told=(kind-quoted text=\"x\")",
            None,
        );
        check(
            "invalid value: integer `-1`, expected u32",
            "request-not-that wanted=(kind-counting-number) told=(kind-figure figure=\"-1\")",
            None,
        );
        check("invalid digit found in string", "request-no-number", None);
        check("no such thing", "request-unread-value", None);
    }

    #[test]
    fn what_serde_really_says_is_known() {
        #[derive(Debug, serde::Deserialize)]
        #[serde(deny_unknown_fields)]
        #[allow(dead_code, reason = "only parsed")]
        struct Asked {
            text: String,
            count: Option<u32>,
            truth: Option<bool>,
            list: Option<Vec<u32>>,
        }
        let told = |json: &str| {
            let error = serde_json::from_str::<Asked>(json).unwrap_err().to_string();
            let text = error.rsplit_once(" at line ").unwrap().0.to_owned();
            unread(&text).says
        };
        for (json, key) in [
            ("{}", "request-missing-field"),
            (r#"{"text":"","text":""}"#, "request-twice"),
            (r#"{"txt":""}"#, "request-unknown-field"),
            (r#"{"text":1}"#, "request-not-that"),
            (r#"{"text":"","count":-1}"#, "request-not-that"),
            (r#"{"text":"","count":1.5}"#, "request-not-that"),
            (r#"{"text":"","truth":"yes"}"#, "request-not-that"),
            (r#"{"text":"","list":{}}"#, "request-not-that"),
        ] {
            let says = told(json);
            assert_eq!(says.key(), key, "{json}: {says}");
            assert!(!says.to_string().contains("kind-other"), "{json}: {says}");
        }
    }
}
