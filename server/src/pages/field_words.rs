//! What the fields of the lists are called, what is said beside them where a decision can hurt, and the rows
//! that it rests on.

use crate::lists::List;
use crate::lists::fields::{self, Field};
use words::{Language, Speech};

/// A heading of a table as the fields know it, where a screen calls one of them so in either language; those that
/// stand there already are not meant twice.
pub fn column(list: List, said: &str, taken: &[String]) -> Option<&'static str> {
    let all = fields::of(list);
    if all.iter().any(|field| field.column() == said) {
        return None;
    }
    let is_called = |field: &&Field| {
        Language::ALL.into_iter().any(|language| {
            let called = Speech::in_language(language).text(heading(field.name));
            called.to_lowercase() == said.trim()
        })
    };
    let free = |field: &&Field| !taken.iter().any(|column| column == field.column());
    let mut found = all.iter().filter(is_called);
    found.find(free).map(Field::column)
}

/// What a field is called.
pub fn heading(field: &str) -> &'static str {
    match field {
        "code" => "page-field-code",
        "name" => "page-field-name",
        "number" => "page-field-number",
        "address" => "page-field-address",
        "phone" => "page-field-phone",
        "country" => "page-field-country",
        "born_there" => "page-field-born-there",
        "premises_id" => "page-field-premises-id",
        "trichinae_certificate" => "page-field-trichinae-certificate",
        "kind" => "page-field-kind",
        "scale_grams" => "page-field-scale-grams",
        "limits.below_celsius" => "page-field-limits-below-celsius",
        "limits.below_fahrenheit" => "page-field-limits-below-fahrenheit",
        "limits.above_celsius" => "page-field-limits-above-celsius",
        "limits.above_fahrenheit" => "page-field-limits-above-fahrenheit",
        "certificate" => "page-field-certificate",
        "templates" => "page-field-templates",
        "names.en" => "page-field-names-en",
        "names.fr" => "page-field-names-fr",
        "customer_names.en" => "page-field-customer-names-en",
        "customer_names.fr" => "page-field-customer-names-fr",
        "cooking.en" => "page-field-cooking-en",
        "cooking.fr" => "page-field-cooking-fr",
        "species" => "page-field-species",
        "raw" => "page-field-raw",
        "allergens" => "page-field-allergens",
        "storage" => "page-field-storage",
        "keep.days" => "page-field-keep-days",
        "keep.from" => "page-field-keep-from",
        "keep.day_one_counts" => "page-field-keep-day-one-counts",
        "keep.freeze_day_counts" => "page-field-keep-freeze-day-counts",
        "keep_if_stable.days" => "page-field-keep-if-stable-days",
        "keep_if_stable.from" => "page-field-keep-if-stable-from",
        "keep_if_stable.day_one_counts" => "page-field-keep-if-stable-day-one-counts",
        "keep_if_stable.freeze_day_counts" => "page-field-keep-if-stable-freeze-day-counts",
        "controlled" => "page-field-controlled",
        "stable_as" => "page-field-stable-as",
        "for_sale" => "page-field-for-sale",
        "price_minor_per_kg" => "page-field-price-minor-per-kg",
        "gtin" => "page-field-gtin",
        "till_number" => "page-field-till-number",
        "face_cm2" => "page-field-face",
        "panel_apart" => "page-field-panel-apart",
        "cut_style" => "page-field-cut-style",
        "cut" => "page-field-cut",
        "process" => "page-field-process",
        "value_minor_per_kg" => "page-field-value-minor-per-kg",
        "cooked_as" => "page-field-cooked-as",
        "nature" => "page-field-nature",
        "cure.class" => "page-field-cure-class",
        "cure.method" => "page-field-cure-method",
        "cure.heated" => "page-field-cure-heated",
        "cure.nitrite" => "page-field-cure-nitrite",
        "uncured.resembles" => "page-field-uncured-resembles",
        "uncured.natural" => "page-field-uncured-natural",
        "in_cure" => "page-field-in-cure",
        "curing_salt.nitrite_percent" => "page-field-curing-salt-nitrite-percent",
        "curing_salt.nitrite_of" => "page-field-curing-salt-nitrite-of",
        "curing_salt.nitrate_percent" => "page-field-curing-salt-nitrate-percent",
        "curing_salt.nitrate_of" => "page-field-curing-salt-nitrate-of",
        "curing_salt.salt_percent" => "page-field-curing-salt-salt-percent",
        "cure.salting" => "page-field-cure-salting",
        "cure.days" => "page-field-cure-days",
        "release.loss_percent" => "page-field-release-loss-percent",
        "release.tolerance_points" => "page-field-release-tolerance-points",
        "release.days" => "page-field-release-days",
        "release.water_activity" => "page-field-release-water-activity",
        "release.curve" => "page-field-release-curve",
        "release.salting" => "page-field-release-salting",
        "release.signature" => "page-field-release-signature",
        "standard.place" => "page-field-standard-place",
        "standard.made_there" => "page-field-standard-made-there",
        "standard.mince" => "page-field-standard-mince",
        "standard.steak" => "page-field-standard-steak",
        "standard.tenderised" => "page-field-standard-tenderised",
        "standard.cooking.method.en" => "page-field-standard-cooking-method-en",
        "standard.cooking.method.fr" => "page-field-standard-cooking-method-fr",
        "standard.cooking.celsius" => "page-field-standard-cooking-celsius",
        "standard.cooking.fahrenheit" => "page-field-standard-cooking-fahrenheit",
        "standard.cooking.hold_minutes" => "page-field-standard-cooking-hold-minutes",
        "standard.loaf" => "page-field-standard-loaf",
        "standard.shank_bones_out" => "page-field-standard-shank-bones-out",
        "standard.bones_remain" => "page-field-standard-bones-remain",
        "standard.packed_in" => "page-field-standard-packed-in",
        "standard.protein_percent" => "page-field-standard-protein-percent",
        "standard.fat_percent" => "page-field-standard-fat-percent",
        "standard.collagen_percent" => "page-field-standard-collagen-percent",
        "standard.shank_over_percent" => "page-field-standard-shank-over-percent",
        "standard.added_percent" => "page-field-standard-added-percent",
        "standard.salt_percent" => "page-field-standard-salt-percent",
        "standard.water_percent" => "page-field-standard-water-percent",
        _ => "page-field-other",
    }
}

/// What stands beside it.
pub fn help(field: &str) -> Option<&'static str> {
    Some(match field {
        "code" => "page-help-code",
        "born_there" => "page-help-born-there",
        "trichinae_certificate" => "page-help-trichinae-certificate",
        "scale_grams" => "page-help-scale-grams",
        "certificate" => "page-help-certificate",
        "customer_names.en" => "page-help-customer-names",
        "cooking.en" => "page-help-cooking",
        "uncured.resembles" => "page-help-uncured",
        "standard.cooking.method.en" => "page-help-standard-cooking",
        "raw" => "page-help-raw",
        "allergens" => "page-help-allergens",
        "keep.days" => "page-help-keep-days",
        "controlled" => "page-help-controlled",
        "gtin" => "page-help-gtin",
        "till_number" => "page-help-till-number",
        "face_cm2" => "page-help-face",
        "panel_apart" => "page-help-panel-apart",
        "cut_style" => "page-help-cut-style",
        "cut" => "page-help-cut",
        "process" => "page-help-process",
        "cooked_as" => "page-help-cooked-as",
        "cure.class" => "page-help-cure-class",
        "cure.nitrite" => "page-help-cure-nitrite",
        "cure.salting" => "page-help-cure-salting",
        "cure.days" => "page-help-cure-days",
        "curing_salt.nitrite_percent" => "page-help-curing-salt-nitrite-percent",
        "curing_salt.nitrate_percent" => "page-help-curing-salt-nitrate-percent",
        "release.water_activity" => "page-help-release-water-activity",
        "release.curve" => "page-help-release-curve",
        "standard.place" => "page-help-standard-place",
        "standard.tenderised" => "page-help-standard-tenderised",
        "standard.protein_percent" => "page-help-standard-protein-percent",
        _ => return None,
    })
}

/// The rows behind it, of whichever place; those that the kitchen's place has are shown.
pub fn rows(field: &str) -> &'static str {
    match field {
        "trichinae_certificate" => "us-6, us-6.1",
        "scale_grams" => "trade-N8",
        "keep.days" => "us-D2, us-D11, canada-eu-uk-7.8",
        "keep.day_one_counts" => "us-D3",
        "keep.freeze_day_counts" => "us-DT4",
        "keep_if_stable.days" => "us-1.9-B",
        "face_cm2" => "us-4.3",
        "panel_apart" => "us-4.2-safe",
        "controlled" => "us-1.9-A, us-1.9-B",
        "cut_style" => "trade-1.2-template",
        "cut" => "trade-1.2-bands",
        "process" => "trade-3-usda",
        "cooked_as" => "us-1.8-intact",
        "cure.class" => "us-N14, us-N3, confirmed-X-EU-1, canada-eu-uk-4.2",
        "cure.method" => "us-H2, us-H6",
        "curing_salt.nitrite_percent" => {
            "trade-2.3-no1, trade-2.3-588, trade-2.3-half, trade-2.3-percent"
        }
        "curing_salt.nitrate_percent" => "us-N8, trade-2.3-no2, trade-N9",
        "release.loss_percent" => {
            "trade-2.2-pancetta, trade-2.2-coppa, trade-2.2-prosciutto, trade-2.1-country-loss"
        }
        "release.days" => "trade-2.1-country-days, trade-2.2-ham-days",
        "release.water_activity" => "us-S10, us-S2",
        "release.curve" => "trade-2.1-curve, trade-2.1-band",
        "release.salting" => "trade-2.1-house, trade-2.1-salt-most",
        "cure.salting" => "trade-2.1-dry-bacon, trade-2.1-pickle",
        "cure.days" => "trade-2.1-dry-bacon, trade-2.1-salt-most",
        _ => "",
    }
}

/// Can what is decided in the part that it begins hurt somebody?
pub fn hurts(field: &str) -> bool {
    matches!(
        field,
        "keep.days" | "cure.class" | "curing_salt.nitrite_percent" | "release.loss_percent"
    )
}

/// The heading that a field is the first of; of a product's, `list_parts` says so.
pub fn part(field: &str) -> Option<&'static str> {
    (field == "limits.below_celsius").then_some("page-part-limits")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_heading_is_the_name_of_another_field() {
        for list in [
            List::Products,
            List::Farms,
            List::Suppliers,
            List::Abattoirs,
            List::Places,
        ] {
            for field in fields::of(list) {
                for language in Language::ALL {
                    let called = Speech::in_language(language)
                        .text(heading(field.name))
                        .to_lowercase();
                    let other = fields::of(list).iter().find(|one| one.column() == called);
                    assert!(other.is_none_or(|one| one.name == field.name), "{called}");
                    let meant = column(list, &called, &[]);
                    assert!(meant.is_some() || other.is_some(), "{called}");
                }
            }
        }
    }
}
