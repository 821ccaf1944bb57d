//! Whether a form makes good labels: nothing over the edge, nothing over each other, nothing twice.

use crate::cut;
use crate::facts::Field;
use crate::fault::Fault;
use crate::length::{Area, Length};
use crate::refusal::CodeKind;
use crate::template::{At, Item, Stack, Template};

/// Checks a template that has been read.
pub(crate) fn form(template: &Template) -> Result<(), At> {
    if !template.has_printer() {
        return Err(Fault::NoPrinter.into());
    }
    let (longest, giving) = (template.height(), cut::giving(template).is_some());
    if template
        .shortest()
        .is_some_and(|shortest| shortest > longest || !giving)
    {
        return Err(Fault::Roll.into());
    }
    texts(template)?;
    codes(template)?;
    places(template)
}

fn texts(template: &Template) -> Result<(), At> {
    let mut seen = template.omitted().clone();
    let name = template
        .text_styles()
        .find(|style| style.field == Field::Name);
    for (nth, item) in template.items.iter().enumerate() {
        for style in item.styles() {
            if !seen.insert(style.field) {
                return Err(At(Some(nth), Fault::Twice(style.field)));
            }
            if style.min > style.max {
                return Err(At(Some(nth), Fault::MinAboveMax(style.field)));
            }
            // `us` U2 and U3: at least half the size of the name.
            let beside_name = matches!(style.field, Field::NoNitrite | Field::NotPreserved);
            let half = name.map_or(Length::ZERO, |name| {
                name.weight.face().size_for(name.max, name.measure) / 2
            });
            if beside_name && style.weight.face().size_for(style.min, style.measure) < half {
                return Err(At(Some(nth), Fault::BelowHalfTheName(style.field)));
            }
        }
    }
    match template.required().any(|field| field == Field::Lot) {
        true => Ok(()),
        false => Err(Fault::NoLot.into()),
    }
}

fn codes(template: &Template) -> Result<(), At> {
    let mut seen: Vec<CodeKind> = Vec::new();
    for (nth, item) in template.items.iter().enumerate() {
        if let Item::Code(place) = item {
            if seen.contains(&place.kind) {
                return Err(At(Some(nth), Fault::TwoCodes(place.kind)));
            }
            seen.push(place.kind);
        }
    }
    Ok(())
}

fn places(template: &Template) -> Result<(), At> {
    let page = Area {
        x: Length::ZERO,
        y: Length::ZERO,
        w: template.width(),
        h: template.height(),
    };
    for (nth, item) in template.items.iter().enumerate() {
        let at = |fault| At(Some(nth), fault);
        let places = taken(item).map_err(at)?;
        if !places.iter().all(|place| page.holds(place)) {
            return Err(at(Fault::Outside(title(item))));
        }
        for other in &template.items[..nth] {
            let others = taken(other).map_err(at)?;
            if places.iter().any(|a| others.iter().any(|b| a.overlaps(b))) {
                return Err(at(Fault::Overlap(title(other), title(item))));
            }
        }
    }
    Ok(())
}

/// The paper that an item takes: a stack with a notch is three boxes.
fn taken(item: &Item) -> Result<Vec<Area>, Fault> {
    match item {
        Item::Code(place) => Ok(vec![place.area]),
        Item::Rule(area) | Item::Hole(area) => Ok(vec![*area]),
        Item::Columns(columns) => Ok(vec![columns.area]),
        Item::Table(table) => {
            let wide: Length = table.columns.iter().map(|column| column.w).sum();
            if table.columns.is_empty() || table.rows < 1 {
                return Err(Fault::EmptyTable);
            }
            match wide > table.area.w {
                true => Err(Fault::ColumnsTooWide),
                false => Ok(vec![table.area]),
            }
        }
        Item::Stack(Stack {
            area, notch: None, ..
        }) => Ok(vec![*area]),
        Item::Stack(Stack {
            area,
            notch: Some(notch),
            ..
        }) => {
            if !area.holds(notch) || notch.w == area.w {
                return Err(Fault::Notch);
            }
            let above = Area {
                h: notch.y - area.y,
                ..*area
            };
            let left = Area {
                y: notch.y,
                w: area.w - notch.w,
                h: notch.h,
                ..*area
            };
            let below = Area {
                y: notch.bottom(),
                h: area.bottom() - notch.bottom(),
                ..*area
            };
            let taken = [above, left, below].into_iter();
            Ok(taken.filter(|place| place.h > Length::ZERO).collect())
        }
    }
}

fn title(item: &Item) -> String {
    let fields: Vec<&str> = item.styles().map(|style| style.field.as_str()).collect();
    match item {
        Item::Code(place) => format!("the {}", place.kind),
        Item::Rule(_) => "a rule".to_owned(),
        Item::Hole(_) => "the hole".to_owned(),
        Item::Columns(_) => format!("the columns of {}", fields.join(", ")),
        Item::Table(_) => format!("the table of {}", fields.join(", ")),
        Item::Stack(_) => format!("the stack of {}", fields.join(", ")),
    }
}
