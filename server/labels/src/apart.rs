//! The panel on safe handling on a second label of the same pack: the front becomes as short as a label without it.

use crate::facts::{Facts, Field};
use crate::length::{Area, Length};
use crate::template::{Align, Item, Stack, Template, TextStyle};

/// The shortest that the panel's label may be cut, where its template is for a roll. Common practice, no source.
const SHORTEST: Length = Length::from_um(20_000);

/// White at the edges: it may be less than on the front, for a frame goes round the panel.
const MARGIN: Length = Length::from_um(1_000);

/// White between the panel and the clear code below it.
const GAP: Length = Length::from_um(500);

/// The two labels of a pack.
pub(crate) struct Apart {
    pub front: Template,
    pub panel: Template,
}

/// A template as two, where the facts want the panel apart and say something in it. The law names what the principal
/// panel bears (`us-F1`), and the safe handling panel is none of it.
pub(crate) fn split(template: &Template, facts: &Facts) -> Option<Apart> {
    if !facts.panel_apart {
        return None;
    }
    let of_panel = |item: &Item| item.styles().any(|style| style.panel);
    let nth = template.items.iter().position(of_panel)?;
    let Item::Stack(stack) = &template.items[nth] else {
        return None;
    };
    let (mut panel, rest): (Vec<TextStyle>, Vec<TextStyle>) =
        stack.texts.iter().cloned().partition(|style| style.panel);
    for style in &mut panel {
        (style.close, style.gap) = (true, style.gap / 2);
    }
    let says = panel.iter().any(|style| facts.text(style.field).is_some());
    if !says || rest.is_empty() {
        return None;
    }
    let mut items = template.items.clone();
    items[nth] = Item::Stack(Stack {
        texts: rest,
        ..stack.clone()
    });
    Some(Apart {
        front: template.with(items, template.height(), template.shortest()),
        panel: below(template, panel)?,
    })
}

/// The panel's own label: the panel, and the clear code by which it is known to which pack it belongs.
fn below(template: &Template, panel: Vec<TextStyle>) -> Option<Template> {
    let lot = template.styles().find(|style| style.field == Field::Lot)?;
    let wide = template.width() - MARGIN * 2;
    let line = lot.min * 4 / 3;
    let foot = template.height() - MARGIN - line;
    let stack = |y: Length, h: Length, align, texts| {
        let area = Area {
            x: MARGIN,
            y,
            w: wide,
            h,
        };
        Item::Stack(Stack {
            area,
            notch: None,
            align,
            texts,
        })
    };
    let items = vec![
        stack(MARGIN, foot - GAP - MARGIN, Align::Left, panel),
        stack(foot, line, Align::Centre, vec![lot.clone()]),
    ];
    let shortest = template.shortest().map(|_| SHORTEST);
    Some(template.with(items, template.height(), shortest))
}
