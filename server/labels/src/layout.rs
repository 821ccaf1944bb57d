//! Facts and a template in, a placed label or a refusal out.

use crate::facts::{Facts, Field};
use crate::length::Dpi;
use crate::placed::{Placed, PlacedLabel};
use crate::refusal::Refusal;
use crate::template::{Item, Template};
use crate::{apart, codes, columns, cut, least, stack, table};

/// Lays one label out for one printer. Every text of the facts ends up on it whole and legible,
/// or is one that the template says it leaves out, or the label is refused.
pub fn lay_out(facts: &Facts, template: &Template, dpi: Dpi) -> Result<PlacedLabel, Refusal> {
    if !template.suits(dpi) {
        let (template, dpi) = (template.name().to_owned(), dpi.number());
        return Err(Refusal::Printer { template, dpi });
    }
    for field in facts
        .texts
        .keys()
        .filter(|field| facts.text(**field).is_some())
    {
        // Said only beside bars that hold the lot alone, where there is room for it.
        let known = *field == Field::LotOnly || template.fields().any(|known| known == *field);
        if !template.omits(*field) && !known {
            return Err(Refusal::NoPlace { field: *field });
        }
    }
    codes::check(facts, template)?;
    let raised = least::raised(template, facts);
    let template = raised.as_ref().unwrap_or(template);
    let Some(apart) = apart::split(template, facts) else {
        return lay(facts, template, dpi);
    };
    Ok(PlacedLabel {
        second: Some(Box::new(lay(facts, &apart.panel, dpi)?)),
        ..lay(facts, &apart.front, dpi)?
    })
}

/// One label of a pack.
fn lay(facts: &Facts, template: &Template, dpi: Dpi) -> Result<PlacedLabel, Refusal> {
    let in_clear = codes::in_clear(facts, template, dpi);
    let facts = in_clear.as_ref().unwrap_or(facts);
    let shorter = cut::cut(template, facts);
    let template = shorter.as_ref().unwrap_or(template);
    let (mut items, mut holes) = (Vec::new(), Vec::new());
    for item in &template.items {
        match item {
            Item::Stack(stack) => items.extend(stack::fill(stack, facts)?),
            Item::Code(place) => {
                items.extend(codes::place(place, facts, template, dpi)?.map(Placed::Code))
            }
            Item::Columns(columns) => items.extend(columns::fill(columns, facts)?),
            Item::Table(table) => items.extend(table::fill(table, facts)?),
            Item::Rule(area) => items.push(Placed::Rule(*area)),
            Item::Hole(area) => holes.push(*area),
        }
    }
    Ok(PlacedLabel {
        width: template.width(),
        height: template.height(),
        dpi,
        items,
        holes,
        second: None,
    })
}
