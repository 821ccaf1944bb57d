//! What the cells of a table say, and where in an entry that stands.

use super::fields::{Choice, Field, Sort};
use super::says::ImportSays;
use domain::says::Says;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use serde_json::{Map, Value};
use words::{Language, Speech};

/// What a cell says; nothing where it is empty.
pub fn value(field: &Field, cell: &str) -> std::result::Result<Option<Value>, ImportSays> {
    if cell.is_empty() {
        return Ok(None);
    }
    let text = || Value::from(cell);
    Ok(Some(match field.sort {
        Sort::Line | Sort::Text => text(),
        Sort::One(choices) => Value::from(spelt(choices, cell)),
        Sort::Many(choices) => {
            let all = cell.split([';', ',', '|', ' ', '\n']);
            let words = all.map(str::trim).filter(|word| !word.is_empty());
            let words = words.map(|word| match choices().iter().any(|(own, _)| *own == word) {
                true => word.to_owned(),
                false => spelt(choices, word),
            });
            words.map(Value::from).collect()
        }
        Sort::Lines => {
            let all = cell.split([';', ',', '|', ' ', '\n']);
            let words = all.map(str::trim).filter(|word| !word.is_empty());
            words.map(Value::from).collect()
        }
        Sort::Yes => match cell.to_lowercase().as_str() {
            "yes" | "true" | "oui" | "vrai" | "1" | "x" => Value::from(true),
            "no" | "false" | "non" | "faux" | "0" => Value::from(false),
            _ => {
                let cell = cell.to_owned();
                return Err(ImportSays::NoYes { cell });
            }
        },
        Sort::Whole | Sort::Figure => figure(cell)?,
        Sort::Money => money(cell)?,
    }))
}

/// A word as it is spelt everywhere, where the cell has it so or as a screen says it, in either language.
fn spelt(choices: fn() -> Vec<Choice>, cell: &str) -> String {
    let small = cell.to_lowercase();
    let is_said = |says: &Says| {
        let each = Language::ALL.into_iter();
        let mut said = each.map(|language| Speech::in_language(language).say(says));
        said.any(|said| said.to_lowercase() == small)
    };
    let mut all = choices().into_iter();
    let own = all.find(|(own, says)| *own == small || is_said(says));
    own.map_or(small, |(own, _)| own.to_owned())
}

/// What a cell says of a value, for a table that a person fills in: the other way round.
pub fn shown(field: &Field, value: &Value, speech: Speech) -> String {
    let said = |word: &str| match field.sort {
        Sort::One(choices) => {
            let mut all = choices().into_iter();
            all.find(|(own, _)| *own == word)
                .map_or_else(|| word.to_owned(), |(_, says)| speech.say(&says))
        }
        _ => word.to_owned(),
    };
    match value {
        Value::String(text) => said(text),
        Value::Bool(true) => speech.text("page-yes"),
        Value::Bool(false) => speech.text("page-no"),
        Value::Array(all) => {
            let words = all.iter().filter_map(Value::as_str);
            words.collect::<Vec<_>>().join(" ")
        }
        Value::Number(number) => match field.sort {
            Sort::Money => {
                let amount = number.as_i64().map(|minor| Decimal::new(minor, 2));
                amount.map_or_else(String::new, |amount| amount.to_string())
            }
            _ => number.to_string(),
        },
        Value::Null | Value::Object(_) => String::new(),
    }
}

/// A figure as a spreadsheet writes it: `2,5` and `2.5` are the same.
fn figure(cell: &str) -> std::result::Result<Value, ImportSays> {
    let plain: String = cell
        .chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| if letter == ',' { '.' } else { letter })
        .collect();
    let is_one = plain.len() <= 20
        && plain
            .chars()
            .all(|letter| letter.is_ascii_digit() || ".-".contains(letter));
    let read = is_one.then(|| serde_json::from_str::<serde_json::Number>(&plain).ok());
    match read.flatten() {
        Some(number) => Ok(Value::Number(number)),
        None => Err(ImportSays::NoFigure {
            cell: cell.to_owned(),
        }),
    }
}

/// An amount of money in hundredths: `24,50` is 2450.
fn money(cell: &str) -> std::result::Result<Value, ImportSays> {
    let no = || ImportSays::NoFigure {
        cell: cell.to_owned(),
    };
    let read = figure(cell)?.to_string().parse::<Decimal>();
    let minor = read
        .ok()
        .and_then(|amount| amount.checked_mul(Decimal::from(100)));
    let minor = minor
        .filter(Decimal::is_integer)
        .and_then(|minor| minor.to_i64());
    minor.map(Value::from).ok_or_else(no)
}

/// Puts a value where its name says.
pub fn put(body: &mut Value, name: &str, value: Value) {
    match name.split_once('.') {
        Some((part, rest)) => {
            if !body[part].is_object() {
                body[part] = Value::Object(Map::new());
            }
            put(&mut body[part], rest, value);
        }
        None => body[name] = value,
    }
}

/// The value of a name.
pub fn find<'a>(body: &'a Value, name: &str) -> Option<&'a Value> {
    name.split('.')
        .try_fold(body, |body, part| body.get(part))
        .filter(|value| !value.is_null())
}
