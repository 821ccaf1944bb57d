//! Whether the letters of a template are as high as the law asks on a label of that size.

use domain::law::Law;
use domain::rows::Finding;
use domain::statement::{Lettering, check_height};
use labels::{Field, Style, Template};
use rust_decimal::Decimal;

/// What is too low, worst first; nothing where the place is silent.
pub fn check(template: &Template, law: &Law) -> Vec<Finding> {
    let panel = Decimal::new(template.area_mm2(), 2);
    // Beside the name as legible as that, else as high as the place says (`canada-eu-uk-2.14`).
    let name = template
        .text_styles()
        .find(|style| style.field == Field::Name)
        .map_or(Decimal::ZERO, |style| lowest(&style));
    let mut findings: Vec<Finding> = template
        .text_styles()
        .filter_map(|style| {
            let height = lowest(&style);
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
