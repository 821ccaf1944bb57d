//! Letters that the law wants higher on the face of this pack than the template sets them.

use crate::facts::{Facts, Field};
use crate::length::Length;
use crate::template::{Item, Template, TextStyle};

/// The template with its net weight as high as the facts ask; nothing where it is high enough.
pub(crate) fn raised(template: &Template, facts: &Facts) -> Option<Template> {
    let least = Length::from_um(facts.net_least_um?);
    let low = |style: &TextStyle| style.field == Field::Net && style.min < least;
    template.styles().any(low).then_some(())?;
    let higher = |texts: &mut Vec<TextStyle>| {
        for style in texts.iter_mut().filter(|style| low(style)) {
            (style.min, style.max) = (least, style.max.max(least));
        }
    };
    let mut items = template.items.clone();
    for item in &mut items {
        match item {
            Item::Stack(stack) => higher(&mut stack.texts),
            Item::Columns(columns) => {
                higher(&mut columns.left);
                higher(&mut columns.right);
            }
            Item::Table(_) | Item::Code(_) | Item::Rule(_) | Item::Hole(_) => {}
        }
    }
    Some(template.with(items, template.height(), template.shortest()))
}
