//! Reading the values of IPP attributes: one or many, and collections by their members.

use ipp::prelude::{IppAttributeGroup, IppValue};
use std::ops::RangeInclusive;

/// The values of an attribute: none, one, or all of its set.
pub fn values<'a>(group: &'a IppAttributeGroup, name: &str) -> Vec<&'a IppValue> {
    group
        .get(name)
        .map_or_else(Vec::new, |attribute| all(attribute.value()))
}

fn all(value: &IppValue) -> Vec<&IppValue> {
    match value {
        IppValue::Array(values) => values.iter().collect(),
        one => vec![one],
    }
}

/// A whole number or a choice.
pub fn number(value: &IppValue) -> Option<i32> {
    match value {
        IppValue::Integer(number) | IppValue::Enum(number) => Some(*number),
        _ => None,
    }
}

/// The first whole number of an attribute.
pub fn first_number(group: &IppAttributeGroup, name: &str) -> Option<i32> {
    values(group, name).into_iter().find_map(number)
}

/// A number, or all from one to another.
pub fn span(value: &IppValue) -> Option<RangeInclusive<i32>> {
    match value {
        IppValue::Integer(number) => Some(*number..=*number),
        IppValue::RangeOfInteger { min, max } => Some(*min..=*max),
        _ => None,
    }
}

/// Yes or no.
pub fn truth(group: &IppAttributeGroup, name: &str) -> Option<bool> {
    values(group, name)
        .into_iter()
        .find_map(|value| match value {
            IppValue::Boolean(truth) => Some(*truth),
            _ => None,
        })
}

/// All texts of an attribute, whatever their kind.
pub fn texts(group: &IppAttributeGroup, name: &str) -> Vec<String> {
    values(group, name)
        .into_iter()
        .filter_map(|value| match value {
            IppValue::Keyword(_)
            | IppValue::MimeMediaType(_)
            | IppValue::NameWithoutLanguage(_)
            | IppValue::TextWithoutLanguage(_)
            | IppValue::Uri(_) => Some(value.to_string()),
            IppValue::NameWithLanguage { name, .. } => Some(name.to_string()),
            IppValue::TextWithLanguage { text, .. } => Some(text.to_string()),
            _ => None,
        })
        .map(|text| shown(&text))
        .collect()
}

/// A printer's words as they may be kept and shown: one line, nothing that cannot be seen.
fn shown(text: &str) -> String {
    let seen = text
        .chars()
        .filter(|letter| !letter.is_control() && !crate::door::unseen::is_unseen(*letter));
    seen.take(LONGEST).collect()
}

/// The most letters of one of a printer's words.
const LONGEST: usize = 300;

/// A member of a collection.
pub fn member<'a>(value: &'a IppValue, name: &str) -> Option<&'a IppValue> {
    match value {
        IppValue::Collection(members) => members
            .iter()
            .find(|(key, _)| key.as_str() == name)
            .map(|(_, value)| value),
        _ => None,
    }
}
