//! How a long form is folded: what a new entry needs stands above; each part of the rest opens by a tap, and stands
//! open where something is in it.

use super::list_form::Asked;
use super::spoken::Words;

/// The parts of a long form that are open at once.
const OPEN: [&str; 3] = ["keep.days", "for_sale", "limits.below_celsius"];

/// The parts of a product's form in their order, and the fields of each by their names or the beginnings of them. The
/// first has no heading.
const OF_PRODUCT: [(&str, &[&str]); 11] = [
    (
        "",
        &["names.", "kind", "species", "raw", "allergens", "storage"],
    ),
    ("page-part-keep", &["keep.days", "keep.from"]),
    ("page-part-counter", &["for_sale", "price_minor_per_kg"]),
    (NAMES, &["code", "customer_names."]),
    (
        "page-part-keep-more",
        &["keep.", "keep_if_stable.", "controlled", "stable_as"],
    ),
    (
        "page-part-label",
        &["gtin", "till_number", "face_cm2", "panel_apart", "cooking."],
    ),
    ("page-part-yield", &[""]),
    ("page-part-cure", &["cure.", "uncured.", "in_cure"]),
    ("page-part-salt", &["curing_salt."]),
    ("page-part-release", &["release."]),
    ("page-part-standard", &["standard."]),
];

/// The part of the names that few need.
const NAMES: &str = "page-part-names";

/// What has no part of its own is in that of the yield.
const ELSE: &str = "page-part-yield";

/// The part of a field of a product; a name in a language in which nobody here reads or labels is seldom needed.
fn part_of(field: &str, languages: &[&str]) -> usize {
    let fits = |&(heading, fields): &(&str, &[&str])| {
        heading != ELSE
            && fields
                .iter()
                .any(|of| field == *of || of.ends_with('.') && field.starts_with(of))
    };
    let seldom = field
        .strip_prefix("names.")
        .is_some_and(|language| !languages.contains(&language));
    let nth = |heading| OF_PRODUCT.iter().position(|(of, _)| *of == heading);
    let found = match seldom {
        true => nth(NAMES),
        false => OF_PRODUCT.iter().position(fits).or_else(|| nth(ELSE)),
    };
    found.unwrap_or_default()
}

/// Puts what a new product needs above, and the rest into its parts.
pub fn product(fields: &mut [Asked], words: &Words, languages: &[&str]) {
    let read = [languages, &[words.lang()]].concat();
    fields.sort_by_key(|field| part_of(field.name, &read));
    let mut last = 0;
    for field in fields {
        let part = part_of(field.name, &read);
        field.part = (part != last).then(|| words.t(OF_PRODUCT[part].0));
        last = part;
    }
}

/// Folds away the parts in which nothing stands; a code stands in each.
pub fn fold(fields: &mut [Asked]) {
    let mut from = fields.iter().position(|field| field.part.is_some());
    while let Some(first) = from {
        let mut after = fields[first + 1..].iter();
        let next = after.position(|field| field.part.is_some());
        let end = next.map_or(fields.len(), |nth| first + 1 + nth);
        let is_told = fields[first..end]
            .iter()
            .any(|field| !field.value.is_empty() && field.name != "code");
        fields[first].opens = is_told || OPEN.contains(&fields[first].name);
        fields[end - 1].ends = true;
        fields[first..end]
            .iter_mut()
            .for_each(|field| field.optional = false);
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

/// A code that is made of the name is seldom of their own: it is folded away below all that is asked.
pub fn code_last(fields: &mut [Asked], words: &Words) {
    let code = fields.iter().position(|field| field.name == "code");
    if let Some(code) = code {
        fields[code].part = Some(words.t("page-part-code"));
        fields[code..].rotate_left(1);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lists::List;
    use crate::lists::fields;

    fn heading(field: &str, languages: &[&str]) -> &'static str {
        OF_PRODUCT[part_of(field, languages)].0
    }

    #[test]
    fn what_a_new_product_needs_stands_above() {
        let all = fields::of(List::Products).iter();
        let above: Vec<&str> = all
            .map(|field| field.name)
            .filter(|field| heading(field, &["en"]).is_empty())
            .collect();
        let needed = ["names.en", "kind", "species", "raw", "allergens", "storage"];
        assert_eq!(above, needed);
        for needed in fields::of(List::Products).iter().filter(|of| of.needed) {
            // What must be told is never folded away; a code is made of the name.
            let above = heading(needed.name, &["en"]).is_empty();
            assert!(above || needed.name == "code", "{}", needed.name);
        }
    }

    #[test]
    fn every_field_has_its_part() {
        assert_eq!(heading("names.fr", &["en"]), "page-part-names");
        assert_eq!(heading("names.fr", &["fr", "en"]), "");
        assert_eq!(heading("keep.from", &[]), "page-part-keep");
        assert_eq!(heading("keep.day_one_counts", &[]), "page-part-keep-more");
        assert_eq!(heading("cooked_as", &[]), "page-part-yield");
        assert_eq!(heading("cut_style", &[]), "page-part-yield");
        assert_eq!(
            heading("curing_salt.nitrate_percent", &[]),
            "page-part-salt"
        );
        assert_eq!(
            heading("standard.cooking.celsius", &[]),
            "page-part-standard"
        );
    }
}
