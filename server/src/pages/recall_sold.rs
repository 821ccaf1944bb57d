//! The packs of a scope that were sold: which they are, how much was in them, and when, so that whoever holds the rest knows
//! what to ask for back.

use super::spoken::Words;
use crate::read::names::Names;
use chrono::{DateTime, Utc};
use domain::grams::Grams;
use domain::lot::numbers::in_runs;
use domain::scope::{InScope, ScopeSold};

/// As many sales are read at a glance; of more the page shows a list that opens.
pub const AT_A_GLANCE: usize = 3;

/// Packs of one lot that were sold at once.
pub struct Sold {
    /// The lot's code, as an address says it.
    pub code: String,
    /// What it is.
    pub name: String,
    /// The lot with the numbers of its packs.
    pub packs: String,
    /// What was in them.
    pub weight: String,
    /// When.
    pub at: String,
}

/// What was sold of the lots of a scope, the last sale first.
pub fn sold(words: &Words, names: &Names, lots: &[InScope]) -> Vec<Sold> {
    let mut sales: Vec<(DateTime<Utc>, &InScope, Vec<ScopeSold>)> = Vec::new();
    for lot in lots {
        let mut of = lot.sold.clone();
        of.sort_by_key(|one| (one.at, one.number));
        let at_once = of.chunk_by(|one, next| one.at == next.at);
        sales.extend(at_once.map(|packs| (packs[0].at, lot, packs.to_vec())));
    }
    sales.sort_by_key(|(at, ..)| std::cmp::Reverse(*at));
    let sales = sales.into_iter();
    let told = sales.map(|(at, lot, packs)| {
        let numbers: Vec<u32> = packs.iter().map(|pack| pack.number).collect();
        let grams: Grams = packs.iter().map(|pack| pack.grams).sum();
        // A lot of one pack is its own pack, as its label has it.
        let is_alone = lot.whole && lot.affected == 1;
        Sold {
            code: lot.code.to_string(),
            name: names.product(&lot.product),
            packs: match is_alone {
                true => lot.code.shown(),
                false => format!("{}/{}", lot.code.shown(), in_runs(&numbers)),
            },
            weight: words.grams(grams),
            at: words.minute(at, names.zone()),
        }
    });
    told.collect()
}
