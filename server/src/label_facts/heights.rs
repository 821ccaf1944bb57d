//! Whether the letters of a template are as high as the law asks on a label of that size.

use domain::law::Law;
use domain::rows::Finding;
use domain::statement::{Lettering, check_height, letter_height};
use labels::{Field, Style, Template};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The least height of the net weight's letters on a face of so many square centimetres, in micrometres; nothing where
/// the place has no rule for it.
pub fn net_least_um(law: &Law, face_cm2: u32) -> Option<i64> {
    let least = letter_height(&law.statements, Lettering::NetQuantity, face_cm2.into())?;
    (least.millimetres * Decimal::ONE_THOUSAND).ceil().to_i64()
}

/// What is too low, worst first; nothing where the place is silent. The face of the pack is the label's own where
/// nobody has stated it.
pub fn check(template: &Template, law: &Law, face_cm2: Option<u32>) -> Vec<Finding> {
    let own = || Decimal::new(template.area_mm2(), 2);
    let panel = face_cm2.map_or_else(own, Decimal::from);
    // The layout sets it as high as the face of the pack asks.
    let net = face_cm2.and_then(|face| net_least_um(law, face));
    let net = net.map_or(Decimal::ZERO, |least| Decimal::new(least, 3));
    // Beside the name as legible as that, else as high as the place says (`canada-eu-uk-2.14`).
    let name = template
        .text_styles()
        .find(|style| style.field == Field::Name)
        .map_or(Decimal::ZERO, |style| lowest(&style));
    let mut findings: Vec<Finding> = template
        .text_styles()
        .filter_map(|style| {
            let height = match style.field {
                Field::Net => lowest(&style).max(net),
                _ => lowest(&style),
            };
            let what = match style.field {
                Field::Thawed | Field::SecondThawed if height < name => Lettering::Thawed,
                field => lettering(field),
            };
            check_height(&law.statements, &law.rows, what, panel, height)
        })
        .collect();
    findings.sort_by_key(|finding| !finding.refuses());
    findings
}

/// The height that the law measures: small letters, but figures where a text is all figures.
fn lowest(style: &Style) -> Decimal {
    let (small, capitals) = style.lowest();
    let height = match style.field {
        // `us` 4.3 measures the small o of "Net Wt."; elsewhere it is figures and a unit.
        Field::Net => small.max(capitals),
        _ => small,
    };
    Decimal::new(height.um(), 3)
}

fn lettering(field: Field) -> Lettering {
    match field {
        Field::Net => Lettering::NetQuantity,
        Field::Ingredients | Field::SecondIngredients => Lettering::IngredientList,
        Field::HandlingHeading
        | Field::HandlingWhy
        | Field::HandlingKeep
        | Field::HandlingApart
        | Field::HandlingCook
        | Field::HandlingHot => Lettering::SafeHandling,
        _ => Lettering::Label,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::words::Profile;

    #[test]
    fn the_net_weight_grows_with_the_face_of_the_pack() {
        let law = law::shipped().unwrap();
        let us = |face| net_least_um(law.laws.of(Profile::Us), face);
        // us 4.3: 1/16, 1/8, 3/16 and 1/4 inch on faces up to 5, 25, 100 and 400 square inches.
        assert_eq!([us(30), us(120)], [Some(1_588), Some(3_175)]);
        assert_eq!([us(216), us(700)], [Some(4_763), Some(6_350)]);
    }
}
