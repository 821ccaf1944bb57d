//! "What came of it" as a table: what is on hand first, and every column that says something.

use super::says::PageSays;
use super::spoken::{NONE, Words};
use crate::read::names::Names;
use domain::family::{Descendant, Descendants, Went};
use domain::grams::Grams;

/// The table.
pub struct Forward {
    /// Its columns of weights, after lot and place.
    pub heads: Vec<String>,
    /// Lots with something on hand.
    pub on_hand: Vec<Row>,
    /// Lots that nothing is left of.
    pub gone: Vec<Row>,
    /// The last row.
    pub sums: Vec<Cell>,
    /// What is on hand of all of it.
    pub left: String,
    /// `36 lots in all, 11 with something on hand.`
    pub says: String,
    /// What nobody can account for, if anything.
    pub unexplained: Option<String>,
}

/// A lot of it.
pub struct Row {
    /// Its code.
    pub code: String,
    /// For the eye.
    pub shown: String,
    /// Its product's name, and a word about it.
    pub name: String,
    /// A weight for each column.
    pub cells: Vec<Cell>,
}

/// A weight or a share.
pub struct Cell {
    /// It.
    pub text: String,
    /// What stands below it: where most of what is left is, how many packs were sold.
    pub below: Option<String>,
}

type Column = (&'static str, bool, fn(&Went) -> Grams);

/// The head of what was sold.
const SOLD: &str = "page-forward-sold";

/// The columns; some stay out where no lot has anything to say there.
const COLUMNS: [Column; 12] = [
    ("page-on-hand", true, |went| went.on_hand),
    ("page-made", true, |went| went.made),
    ("page-forward-taken-back", false, |went| went.taken_back),
    ("page-forward-used", true, |went| went.used),
    (SOLD, true, |went| went.sold),
    ("page-forward-served", true, |went| went.served),
    ("page-forward-shipped", false, |went| went.shipped),
    ("page-forward-returned", false, |went| went.returned),
    ("page-forward-discarded", true, |went| went.discarded),
    ("page-forward-lost", false, |went| went.lost),
    ("page-forward-head-missing", true, |went| went.missing),
    ("page-forward-head-surplus", false, |went| went.surplus),
];

impl Forward {
    /// The table of what was found.
    pub fn of(found: &Descendants, names: &Names) -> Forward {
        let says_something = |of: &fn(&Went) -> Grams| {
            let mut lots = found.lots.iter();
            lots.any(|lot| of(&lot.went) != Grams::ZERO)
        };
        let columns: Vec<&Column> = COLUMNS
            .iter()
            .filter(|(_, always, of)| *always || says_something(of))
            .collect();
        let words = Words::of(names);
        let heads = columns.iter().map(|(head, ..)| *head).chain(["page-share"]);
        let sum = |column: &&Column| Cell {
            text: words.grams(column.2(&found.totals)),
            below: packs_sold(column, found.totals.sold_packs, names),
        };
        let mut sums: Vec<Cell> = columns.iter().map(sum).collect();
        sums.push(Cell {
            text: String::new(),
            below: None,
        });
        let (mut on_hand, mut gone) = (Vec::new(), Vec::new());
        for lot in &found.lots {
            let row = row(lot, names, &columns);
            if lot.went.on_hand == Grams::ZERO {
                gone.push(row);
            } else {
                on_hand.push(row);
            }
        }
        let (missing, surplus) = (found.totals.missing, found.totals.surplus);
        let unexplained = [
            (missing, PageSays::Missing { weight: missing }),
            (surplus, PageSays::Surplus { weight: surplus }),
        ];
        let unexplained = unexplained
            .into_iter()
            .filter(|(weight, _)| *weight != Grams::ZERO);
        let unexplained: Vec<String> = unexplained.map(|(_, says)| words.say(says)).collect();
        Forward {
            says: words.say(PageSays::LotsInAll {
                lots: found.lots.len(),
                on_hand: on_hand.len(),
            }),
            left: words.grams(found.totals.on_hand),
            unexplained: (!unexplained.is_empty()).then(|| unexplained.join(" ")),
            heads: heads.map(|key| words.t(key)).collect(),
            on_hand,
            gone,
            sums,
        }
    }

    /// How many columns the table has.
    pub fn width(&self) -> usize {
        self.heads.len() + 1
    }
}

fn row(lot: &Descendant, names: &Names, columns: &[&Column]) -> Row {
    let (name, words) = (names.product(&lot.product), Words::of(names));
    let place = lot.place.as_ref().map(|place| names.place(place));
    let cell = |(nth, column): (usize, &&Column)| Cell {
        text: words.or_dash(column.2(&lot.went)),
        below: match nth {
            0 => place.clone(),
            _ => packs_sold(column, lot.went.sold_packs, names),
        },
    };
    let mut cells: Vec<Cell> = columns.iter().enumerate().map(cell).collect();
    let share = lot.share.map(|share| words.share(share));
    cells.push(Cell {
        text: share.unwrap_or_else(|| NONE.into()),
        below: None,
    });
    Row {
        code: lot.code.to_string(),
        shown: lot.code.shown(),
        name: match &lot.note {
            Some(note) => format!("{name} ({note})"),
            None => name,
        },
        cells,
    }
}

/// How many packs were sold, where the column is the one of what was sold.
fn packs_sold(column: &Column, packs: i64, names: &Names) -> Option<String> {
    let packs = usize::try_from(packs).ok().filter(|packs| *packs > 0)?;
    (column.0 == SOLD).then(|| Words::of(names).packs(packs))
}
