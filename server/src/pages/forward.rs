//! "What came of it" as a table: what is on hand first, and every column that says something.

use super::format::{self, or_dash};
use crate::read::names::Names;
use crate::wire::Weight;
use crate::wire::answers::{DescendantRead, DescendantsRead, Whereabouts};
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
    pub sums: Vec<String>,
    /// How many packs were sold of all of it.
    pub sold_packs: Option<String>,
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
    /// Where most of what is left is.
    pub place: String,
    /// How many packs were sold, in words.
    pub sold_packs: Option<String>,
    /// A weight for each column.
    pub cells: Vec<String>,
}

type Column = (&'static str, bool, fn(&Whereabouts) -> Weight);

/// The columns; some stay out where no lot has anything to say there.
const COLUMNS: [Column; 11] = [
    ("On hand", true, |went| went.on_hand_grams),
    ("Made", true, |went| went.made_grams),
    ("Taken back", false, |went| went.taken_back_grams),
    ("Used", true, |went| went.used_grams),
    ("Sold", true, |went| went.sold_grams),
    ("Served", true, |went| went.served_grams),
    ("Shipped", false, |went| went.shipped_grams),
    ("Returned", false, |went| went.returned_grams),
    ("Discarded", true, |went| went.discarded_grams),
    ("Lost", false, |went| went.lost_grams),
    ("Unexplained", true, |went| went.unexplained_grams),
];

impl Forward {
    /// The table of what was found.
    pub fn of(found: DescendantsRead, names: &Names) -> Forward {
        let went: Vec<Whereabouts> = found.lots.iter().map(whereabouts).collect();
        let columns: Vec<&Column> = COLUMNS
            .iter()
            .filter(|(_, always, of)| *always || went.iter().any(|went| !is_none(of(went))))
            .collect();
        let heads = columns.iter().map(|(head, ..)| *head).chain(["Share"]);
        let sum = |column: &&Column| column.2(&found.totals).0.to_string();
        let mut sums: Vec<String> = columns.iter().map(sum).collect();
        sums.push(String::new());
        let (mut on_hand, mut gone) = (Vec::new(), Vec::new());
        for (lot, went) in found.lots.iter().zip(&went) {
            let cell = |column: &&Column| or_dash(&column.2(went));
            let mut cells: Vec<String> = columns.iter().map(cell).collect();
            cells.push(lot.share.map_or(format::NONE.into(), format::percent));
            let row = row(lot, names, cells);
            if is_none(went.on_hand_grams) {
                gone.push(row);
            } else {
                on_hand.push(row);
            }
        }
        let unexplained = found.totals.unexplained_grams;
        Forward {
            says: format!(
                "{} in all, {} with something on hand.",
                format::count(found.lots.len(), "lot", "lots"),
                on_hand.len()
            ),
            sold_packs: packs_sold(found.totals.sold_packs),
            left: found.totals.on_hand_grams.0.to_string(),
            unexplained: (!is_none(unexplained)).then(|| unexplained.0.to_string()),
            heads: heads.map(str::to_owned).collect(),
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

fn is_none(weight: Weight) -> bool {
    weight.0 == Grams::ZERO
}

fn row(lot: &DescendantRead, names: &Names, cells: Vec<String>) -> Row {
    let name = names.product(&lot.product);
    Row {
        code: lot.code.clone(),
        shown: format::shown(&lot.code),
        name: match &lot.note {
            Some(note) => format!("{name} ({note})"),
            None => name,
        },
        place: match &lot.place {
            Some(place) => names.place(place),
            None => format::NONE.into(),
        },
        sold_packs: packs_sold(lot.sold_packs),
        cells,
    }
}

fn packs_sold(packs: i64) -> Option<String> {
    let packs = usize::try_from(packs).ok().filter(|packs| *packs > 0)?;
    Some(format::count(packs, "pack", "packs"))
}

fn whereabouts(lot: &DescendantRead) -> Whereabouts {
    Whereabouts {
        made_grams: lot.made_grams,
        taken_back_grams: lot.taken_back_grams,
        used_grams: lot.used_grams,
        sold_grams: lot.sold_grams,
        sold_packs: lot.sold_packs,
        served_grams: lot.served_grams,
        discarded_grams: lot.discarded_grams,
        shipped_grams: lot.shipped_grams,
        returned_grams: lot.returned_grams,
        lost_grams: lot.lost_grams,
        on_hand_grams: lot.on_hand_grams,
        unexplained_grams: lot.unexplained_grams,
    }
}
