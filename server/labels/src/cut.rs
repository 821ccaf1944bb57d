//! A label on a roll is cut as short as its words need: the texts that give way end where their
//! smallest letters end, and what stands below them moves up.

use crate::facts::Facts;
use crate::length::{Area, Length};
use crate::refusal::CodeKind;
use crate::stack::Reading;
use crate::template::{CodePlace, Columns, Item, Stack, Table, Template};

/// A label is cut at whole millimetres.
const MILLIMETRE: Length = Length::from_um(1_000);

/// The stack whose texts give way: the tallest.
pub(crate) fn giving(template: &Template) -> Option<(usize, &Stack)> {
    let stacks = template.items.iter().enumerate();
    let stacks = stacks.filter_map(|(nth, item)| match item {
        Item::Stack(stack) => Some((nth, stack)),
        _ => None,
    });
    stacks.max_by_key(|(_, stack)| stack.area.h)
}

/// The template as short as these facts need it; nothing where it is not for a roll, or where they
/// do not fit it anyhow.
pub(crate) fn cut(template: &Template, facts: &Facts) -> Option<Template> {
    let shortest = template.shortest()?;
    let without = without_till(template, facts);
    let template = without.as_ref().unwrap_or(template);
    let most = template.height() - shortest;
    let (nth, stack) = giving(template)?;
    let texts = Reading::of(stack, facts)?;
    // Whole millimetres, from not at all to as much as may be: the most at which the texts still fit.
    let fits = |millimetres: i64| {
        let (area, notch) = shorter(stack, MILLIMETRE * millimetres)?;
        (texts.least(notch)? <= area.bottom()).then_some(())
    };
    fits(0)?;
    let (mut good, mut bad) = (0, most.um() / MILLIMETRE.um() + 1);
    // Without the notch they take least: more than what is then left cannot go.
    let longest = texts.least(None)? - stack.area.y;
    bad = bad.min((stack.area.h - longest).um() / MILLIMETRE.um() + 1);
    // They seldom take much more than that.
    let mut step = 1;
    while bad - good > 1 {
        let middle = (bad - step).max((good + bad) / 2);
        match fits(middle) {
            Some(()) => good = middle,
            None => bad = middle,
        }
        step *= 2;
    }
    let by = MILLIMETRE * good;
    let items = template.items.iter().enumerate();
    let items = items.map(|(at, item)| match item {
        Item::Stack(own) if at == nth => shortened(own, by).map(Item::Stack),
        other if below(stack, other) => Some(other.raised(by)),
        other => Some(other.clone()),
    });
    let items = items.collect::<Option<Vec<Item>>>()?;
    Some(template.with(items, template.height() - by, None))
}

/// The template without the place for the till's code, where the pack has no such number: what stands below it
/// moves up.
fn without_till(template: &Template, facts: &Facts) -> Option<Template> {
    let place = template.code_place(CodeKind::Ean13)?;
    if facts.ean13.is_some() {
        return None;
    }
    let from = place.area.y;
    let lower = template.items.iter().map(|item| item.area().y);
    let by = lower.filter(|y| *y > from).min().map(|next| next - from)?;
    let kept = template
        .items
        .iter()
        .filter(|item| item.area() != place.area);
    let items = kept.map(|item| match item.area().y > from {
        true => item.raised(by),
        false => item.clone(),
    });
    let height = template.height() - by;
    Some(template.with(items.collect(), height, template.shortest()))
}

/// The paper of a stack without its lowest part; a notch at its foot moves up with the foot.
fn shorter(stack: &Stack, by: Length) -> Option<(Area, Option<Area>)> {
    let area = Area {
        h: stack.area.h - by,
        ..stack.area
    };
    let notch = stack
        .notch
        .map(|notch| match stands_at_foot(stack, &notch) {
            true => Area {
                y: notch.y - by,
                ..notch
            },
            false => notch,
        });
    let holds = |notch: &Area| area.holds(notch);
    let sound = area.h > Length::ZERO && notch.as_ref().is_none_or(holds);
    sound.then_some((area, notch))
}

/// The stack on that paper.
fn shortened(stack: &Stack, by: Length) -> Option<Stack> {
    let (area, notch) = shorter(stack, by)?;
    Some(Stack {
        area,
        notch,
        ..stack.clone()
    })
}

fn stands_at_foot(stack: &Stack, notch: &Area) -> bool {
    notch.bottom() == stack.area.bottom()
}

/// Does an item stand below the texts, or in the notch at their foot?
fn below(stack: &Stack, item: &Item) -> bool {
    let notch = stack.notch.filter(|notch| stands_at_foot(stack, notch));
    let from = notch.map_or(stack.area.bottom(), |notch| notch.y);
    item.area().y >= from
}

impl Item {
    /// The paper that it takes, with what is cut out of it.
    fn area(&self) -> Area {
        match self {
            Item::Stack(stack) => stack.area,
            Item::Columns(columns) => columns.area,
            Item::Table(table) => table.area,
            Item::Code(place) => place.area,
            Item::Rule(area) | Item::Hole(area) => *area,
        }
    }

    /// The same, higher up.
    fn raised(&self, by: Length) -> Item {
        let up = |area: Area| Area {
            y: area.y - by,
            ..area
        };
        match self.clone() {
            Item::Stack(stack) => Item::Stack(Stack {
                area: up(stack.area),
                notch: stack.notch.map(up),
                ..stack
            }),
            Item::Columns(columns) => Item::Columns(Columns {
                area: up(columns.area),
                ..columns
            }),
            Item::Table(table) => Item::Table(Table {
                area: up(table.area),
                ..table
            }),
            Item::Code(place) => Item::Code(CodePlace {
                area: up(place.area),
                ..place
            }),
            Item::Rule(area) => Item::Rule(up(area)),
            Item::Hole(area) => Item::Hole(up(area)),
        }
    }
}
