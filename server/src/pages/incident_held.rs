//! What may be disposed of in a recall: each lot that is held, with its packs on hand.

use super::says::PageSays;
use super::spoken::Words;
use crate::recall;
use crate::recall::facts::{IncidentFacts, LotFacts, PackFacts};
use domain::grams::Grams;

/// What may be disposed of.
pub(super) struct Held {
    /// Each lot.
    pub(super) each: Vec<HeldLot>,
    /// All of it in words.
    pub(super) says: String,
}

/// A lot of which something is there and held.
pub(super) struct HeldLot {
    /// Its code.
    pub(super) code: String,
    /// As it is shown.
    pub(super) shown: String,
    /// What it is.
    pub(super) name: String,
    /// What is left of it.
    pub(super) left: String,
    /// What its field for pack numbers is called.
    pub(super) packs: String,
    /// Has it several packs with something in them?
    pub(super) several: bool,
    /// Those, each with what is in it, where they are few enough to be buttons.
    pub(super) chips: Vec<(u32, String)>,
}

/// The most packs of a lot that are shown as buttons.
const MOST_CHIPS: usize = 24;

/// The most lots of which packs are shown as buttons: a page is read, and comes over the wire.
const MOST_WITH_CHIPS: usize = 40;

/// The lots of which something is there and held; nothing where nothing is to be disposed of.
pub(super) fn held(words: &Words, facts: &IncidentFacts) -> Option<Held> {
    if facts.closed || facts.drill || !facts.holds {
        return None;
    }
    let left = facts.lots.iter();
    let left: Vec<&LotFacts> = left
        .filter(|lot| lot.sums.left_grams.0 > Grams::ZERO)
        .collect();
    let says = PageSays::IncidentDispose {
        lots: left.len(),
        weight: left.iter().map(|lot| lot.sums.left_grams.0).sum(),
    };
    let each = left.iter().map(|lot| HeldLot {
        code: lot.code.clone(),
        shown: lot.shown.clone(),
        name: recall::facts::in_language(&lot.names, words.lang(), &lot.product),
        left: words.grams(lot.sums.left_grams.0),
        packs: words.say(PageSays::IncidentDisposePacks {
            lot: lot.shown.clone(),
        }),
        several: in_it(lot).nth(1).is_some(),
        chips: match in_it(lot).count() {
            2..=MOST_CHIPS if left.len() <= MOST_WITH_CHIPS => in_it(lot)
                .map(|pack| (pack.pack, words.grams(pack.sums.left_grams.0)))
                .collect(),
            _ => Vec::new(),
        },
    });
    (!left.is_empty()).then(|| Held {
        each: each.collect(),
        says: words.say(says),
    })
}

/// The packs of a lot with something in them.
fn in_it(lot: &LotFacts) -> impl Iterator<Item = &PackFacts> {
    let packs = lot.packs.iter();
    packs.filter(|pack| pack.sums.left_grams.0 > Grams::ZERO)
}
