//! Letters that nobody sees: names that hold them look like other names. They are refused at the door,
//! where a field can be named; what is on record stays as it was written.

use crate::error::Error;
use crate::wire::says::ValueSays;
use domain::gs1::GS;
use serde_json::Value;

/// Refuses a body that holds a letter which turns the text around it or is not seen at all.
///
/// # Errors
/// 422, naming the field.
pub fn refuse(body: &[u8]) -> Result<(), Error> {
    // Nearly no body has an escape or a letter of these rows, and then there is nothing to look for.
    if !body.iter().any(|byte| suspect(*byte)) {
        return Ok(());
    }
    // What is no JSON is refused by the reader, who can say why.
    let Ok(value) = serde_json::from_slice::<Value>(body) else {
        return Ok(());
    };
    match find(&value, "", String::new()) {
        Some((field, letter)) => Err(Error::cannot_be(field, says(letter))),
        None => Ok(()),
    }
}

/// What is said of such a letter.
pub fn says(letter: char) -> ValueSays {
    let code = format!("U+{:04X}", u32::from(letter));
    ValueSays::Unseen { code }
}

/// Could a letter that nobody sees begin with this byte, or be written with it?
fn suspect(byte: u8) -> bool {
    matches!(
        byte,
        b'\\' | 0xc2 | 0xcd | 0xd8 | 0xe1 | 0xe2 | 0xe3 | 0xef | 0xf0..=0xf4
    )
}

/// The first such letter, and the field that it stands in. `name` is the name of that field alone.
fn find(value: &Value, name: &str, path: String) -> Option<(String, char)> {
    match value {
        Value::String(text) => {
            let letter = text.chars().find(|letter| !may_stand(*letter, name))?;
            Some((path, letter))
        }
        Value::Array(values) => values
            .iter()
            .enumerate()
            .find_map(|(nth, value)| find(value, name, format!("{path}[{nth}]"))),
        Value::Object(fields) => fields.iter().find_map(|(key, value)| {
            let inside = match path.is_empty() {
                true => key.clone(),
                false => format!("{path}.{key}"),
            };
            find(value, key, inside)
        }),
        _ => None,
    }
}

fn may_stand(letter: char, field: &str) -> bool {
    match letter {
        // A scanner's separator means something in what was scanned, and nowhere else.
        GS => matches!(field, "barcode" | "lot"),
        // A telephone's keyboard puts these into a picture; in a note they do no harm.
        '\u{200d}' | '\u{fe0e}' | '\u{fe0f}' => matches!(field, "note" | "why" | "text"),
        _ => !is_unseen(letter),
    }
}

/// A letter that is not seen, is none, or turns the order of the others. Controls are the field's own
/// affair: a note may have lines.
pub fn is_unseen(letter: char) -> bool {
    // The last two of every plane, and a row of the first, are no letters for ever.
    let is_none = u32::from(letter) & 0xfffe == 0xfffe || matches!(letter, '\u{fdd0}'..='\u{fdef}');
    is_none
        || matches!(letter,
        '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}' | '\u{17b4}' | '\u{17b5}'
        | '\u{180b}'..='\u{180f}' | '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}' | '\u{2800}' | '\u{3164}' | '\u{fe00}'..='\u{fe0f}' | '\u{feff}' | '\u{ffa0}'
        | '\u{fff0}'..='\u{fffb}' | '\u{e0000}'..='\u{e0fff}')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(body: &str, refused: Option<&str>) {
        let problem = refuse(body.as_bytes()).err().map(|error| error.problem());
        let field = problem.and_then(|problem| problem.field);
        assert_eq!(field.as_deref(), refused, "{body}");
    }

    #[test]
    fn what_nobody_sees_is_refused_by_its_field() {
        check(r#"{"name":"Brindlecombe","note":"a\nb"}"#, None);
        check("{\"name\":\"Café – l’été\u{a0}: œuf\"}", None);
        check("{\"name\":\"pork\u{202e}krop\"}", Some("name"));
        check(r#"{"names":{"en":"x","fr":"a\u200bb"}}"#, Some("names.fr"));
        check(
            r#"{"inputs":[{"lot":"a"},{"product":"a\u0000","grams":1,"x":"\ufeff"}]}"#,
            Some("inputs[1].x"),
        );
        check(r#"{"code":"AB\u001dC"}"#, Some("code"));
        check(r#"{"barcode":"01\u001d10","lot":"01\u001d10"}"#, None);
        check("{\"note\":\"well done ❤\u{fe0f}\"}", None);
        check("{\"name\":\"❤\u{fe0f}\"}", Some("name"));
        check("{\"name\":\"\u{202e}", None);
        for none in [
            '\u{ffff}',
            '\u{fffe}',
            '\u{fdd0}',
            '\u{1ffff}',
            '\u{10fffe}',
        ] {
            check(&format!("{{\"name\":\"a{none}\"}}"), Some("name"));
        }
    }

    proptest::proptest! {
        #[test]
        fn any_letter_is_found_however_it_is_written(letter: char) {
            let plain = serde_json::json!({ "name": format!("a{letter}b") }).to_string();
            let escaped: String = letter.encode_utf16(&mut [0; 2]).iter()
                .map(|unit| format!("\\u{unit:04x}")).collect();
            let escaped = format!("{{\"name\":\"a{escaped}b\"}}");
            for body in [plain, escaped] {
                proptest::prop_assert_eq!(
                    refuse(body.as_bytes()).is_err(),
                    is_unseen(letter) || letter == GS,
                    "{}", body
                );
            }
        }
    }
}
