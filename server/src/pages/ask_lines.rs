//! What is on hand of what a guest asks about, line by line: what is alike and known by the same stands together.

use super::says::PageSays;
use super::spoken::Words;
use crate::read::ask::{Asked, AskedLine};
use domain::ask::Told;
use domain::family::food;
use domain::grams::Grams;
use domain::ingredients;
use domain::says::Says;

/// One of the three: with, not known, without.
pub struct Group {
    pub told: &'static str,
    pub says: String,
    pub lines: Vec<Line>,
}

/// A product with one answer.
pub struct Line {
    pub name: String,
    pub lot: String,
    /// By what it is known, or what it is made of.
    pub because: String,
    pub much: String,
}

/// What is on hand of lots that are alike, as it is told to a guest.
struct Alike<'a> {
    line: &'a AskedLine,
    packs: usize,
    left: Grams,
    /// How many packs may not be sold.
    held: usize,
}

impl<'a> Alike<'a> {
    /// Where only what the counter sells is asked for, what may not be sold is not counted.
    fn of(line: &'a AskedLine, offered: bool) -> Alike<'a> {
        Alike {
            line,
            packs: if offered {
                line.sellable
            } else {
                line.packs.len()
            },
            left: if offered {
                line.sellable_left
            } else {
                line.left
            },
            held: line.packs.len() - line.sellable,
        }
    }

    fn much(&self, words: &Words, offered: bool) -> String {
        let much = words.say(PageSays::AskLine {
            packs: words.packs(self.packs),
            weight: self.left,
        });
        let packs = self.held;
        match (packs, offered) {
            (0, _) => much,
            (_, true) => format!("{much}. {}", words.say(PageSays::AskHeldMore { packs })),
            (_, false) => format!("{much}. {}", words.say(PageSays::AskHeldOf { packs })),
        }
    }
}

/// One group: what is alike and known by the same stands on one line.
pub fn group(
    words: &Words,
    asked: &Asked<'_>,
    lines: &[&AskedLine],
    offered: bool,
    told: Told,
    key: &'static str,
) -> Group {
    let mut alike: Vec<Alike<'_>> = Vec::new();
    for line in lines.iter().filter(|line| line.answer.told == told) {
        let product = &asked.lot(line).product.code;
        let same = |of: &&mut Alike<'_>| {
            asked.lot(of.line).product.code == *product && of.line.answer == line.answer
        };
        let more = Alike::of(line, offered);
        match alike.iter_mut().find(same) {
            Some(of) => {
                of.packs += more.packs;
                of.left += more.left;
                of.held += more.held;
            }
            None => alike.push(more),
        }
    }
    let say = |says: &Says| words.say(says.clone());
    let lines = alike.into_iter().map(|of| {
        let line = of.line;
        let lot = asked.lot(line);
        let because: Vec<String> = line.answer.because.iter().map(say).collect();
        Line {
            name: lot.product.name(words.lang()).to_owned(),
            lot: lot.code.to_string(),
            because: match told {
                Told::No => made_of(words, asked, line),
                _ => words.apart(&because),
            },
            much: of.much(words, offered),
        }
    });
    let lines: Vec<Line> = lines.collect();
    Group {
        told: told.as_str(),
        says: words.say(PageSays::AskGroup {
            group: words.t(key),
            things: lines.len(),
        }),
        lines,
    }
}

/// What it is made of, for whoever wants to see that it is without.
fn made_of(words: &Words, asked: &Asked<'_>, line: &AskedLine) -> String {
    let reading = &asked.reading;
    let Some(of) = reading.family.get(line.lot) else {
        return String::new();
    };
    let lists = &reading.standing.lists;
    let food = food(&reading.family, of, lists, &reading.law.cures, words.lang());
    ingredients::list(&food.parts, words.lang())
}
