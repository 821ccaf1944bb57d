//! A lot's family: what went in, the lot, what came out.

use super::drawing::{self, Card, Side};
use super::says::PageSays;
use super::spoken::Words;
use crate::ids::shown_id;
use crate::read::LoadedFamily;
use crate::read::names::Names;
use domain::family::{AnimalShare, Family, Origins, children};
use domain::grams::Grams;
use domain::lot::LotId;
use std::cmp::Reverse;

/// The most boxes on a side; the tables tell of all.
const MOST: usize = 9;

/// The family, drawn twice.
pub struct Pictures {
    /// From left to right.
    pub wide: String,
    /// From top to bottom, for a phone.
    pub narrow: String,
}

/// Draws what went in, the lot, and what was made from it; for a carcass, its animal.
pub fn draw(reading: &LoadedFamily<'_>, lot: LotId, origins: &Origins, names: &Names) -> Pictures {
    let family = &reading.family;
    let words = Words::of(names);
    let mut uses: Vec<(LotId, Grams)> = Vec::new();
    for used in family.ancestry.uses_of(lot) {
        let grams = Grams::from_milligrams(used.milligrams);
        match uses.iter_mut().find(|(lot, _)| *lot == used.lot) {
            Some((_, sum)) => *sum += grams,
            None => uses.push((used.lot, grams)),
        }
    }
    let mut before = cards(family, uses, &words);
    if before.cards.is_empty() {
        before.cards = animals(origins, names);
    }
    let made = children(family, lot).into_iter();
    let made = made.map(|of| (of.lot.id, of.made())).collect();
    let after = cards(family, made, &words);
    let own = family.get(lot).map_or_else(Card::default, |of| Card {
        goes_to: None,
        title: of.lot.code.shown(),
        below: of.lot.product.name(words.lang()).to_owned(),
    });
    let title = words.t("page-lot-family-picture");
    Pictures {
        wide: drawing::wide(&title, &before, &own, &after),
        narrow: drawing::narrow(&title, &before, &own, &after),
    }
}

/// A card for each lot with its weight, the heaviest first.
fn cards(family: &Family, mut of: Vec<(LotId, Grams)>, words: &Words) -> Side {
    let all = of.len();
    of.sort_by_key(|(_, grams)| Reverse(*grams));
    of.truncate(MOST);
    let cards: Vec<Card> = of
        .into_iter()
        .filter_map(|(lot, grams)| {
            let of = family.get(lot)?;
            Some(Card {
                goes_to: Some(format!("/lots/{}", of.lot.code)),
                title: of.lot.code.shown(),
                below: format!(
                    "{}, {}",
                    short(of.lot.product.name(words.lang())),
                    words.grams(grams)
                ),
            })
        })
        .collect();
    let more = all.saturating_sub(cards.len());
    Side {
        more: (more > 0).then(|| words.say(PageSays::TreeMore { more })),
        cards,
    }
}

fn animals(origins: &Origins, names: &Names) -> Vec<Card> {
    let card = |of: &AnimalShare| Card {
        goes_to: Some(format!("/animals/{}", shown_id(&of.animal.uid))),
        title: format!(
            "{} {}",
            Words::of(names).headed(of.animal.species.says()),
            of.animal.carcass.as_deref().unwrap_or_default()
        ),
        below: short(&names.farm(&of.animal.farm)),
    };
    origins.animals.iter().take(MOST).map(card).collect()
}

/// What a box has room for.
fn short(name: &str) -> String {
    const ROOM: usize = 22;
    if name.chars().count() <= ROOM {
        return name.to_owned();
    }
    let start: String = name.chars().take(ROOM - 1).collect();
    format!("{}…", start.trim_end())
}
