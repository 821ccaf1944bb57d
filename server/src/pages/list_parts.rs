//! How a long form is folded: each part of it opens by a tap, and stands open where something is in it.

use super::list_form::Asked;

/// The parts of a long form that are open at once.
const OPEN: [&str; 3] = ["keep.days", "for_sale", "limits.below_celsius"];

/// Folds away the parts in which nothing stands.
pub fn fold(fields: &mut [Asked]) {
    let mut from = fields.iter().position(|field| field.part.is_some());
    while let Some(first) = from {
        let mut after = fields[first + 1..].iter();
        let next = after.position(|field| field.part.is_some());
        let end = next.map_or(fields.len(), |nth| first + 1 + nth);
        let is_told = fields[first..end]
            .iter()
            .any(|field| !field.value.is_empty());
        fields[first].opens = is_told || OPEN.contains(&fields[first].name);
        fields[end - 1].ends = true;
        from = (end < fields.len()).then_some(end);
    }
}

/// A code that is made of the name, or proposed of it, is asked for after it.
pub fn code_after_name(fields: &mut [Asked]) {
    let name = fields
        .iter()
        .rposition(|field| field.name == "name" || field.name.starts_with("names."));
    if let Some(name) = name {
        fields[..=name].rotate_left(1);
    }
}
