//! Which packs a deed draws on, and how much of each: shared by steps, departures and moves.

use super::says::DrawSays;
use crate::grams::Grams;
use crate::limits::HEAVIEST;
use crate::lot::{Lot, Pack};
use crate::refusal::{Refusal, RefusalKind, Result};
use crate::words::Being;

/// How a caller names what to draw on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Choice {
    /// One pack, by number or because it is the only one on hand; all that is left, or so many grams.
    One {
        /// The pack's number.
        pack: Option<u32>,
        /// How much of it.
        grams: Option<Grams>,
    },
    /// These packs, whole.
    Whole(Vec<u32>),
    /// Every pack on hand, whole.
    All,
}

/// So much of one pack.
#[derive(Debug, Clone, Copy)]
pub struct Draw<'a> {
    /// The lot.
    pub lot: &'a Lot,
    /// The pack.
    pub pack: &'a Pack,
    /// How much.
    pub grams: Grams,
}

/// Settles a choice against what the lot holds. `field` is the path of the object that holds the
/// choice (`inputs[0].`), or empty at the top.
///
/// # Errors
/// A voided lot, a pack that never was, a pack named twice, an unclear choice, more than is left.
pub fn settle<'a>(lot: &'a Lot, choice: &Choice, field: &str) -> Result<Vec<Draw<'a>>> {
    not_voided(lot, &format!("{field}lot"))?;
    match choice {
        Choice::One { pack, grams } => {
            let pack = match pack {
                Some(number) => numbered(lot, *number, &format!("{field}pack"))?,
                None => the_only_one(lot, field)?,
            };
            Ok(vec![draw(lot, pack, *grams, field)?])
        }
        Choice::Whole(numbers) => {
            let at = |nth: usize| format!("{field}packs[{nth}]");
            if numbers.is_empty() {
                return Err(Refusal::cannot_be(
                    format!("{field}packs"),
                    DrawSays::NoPack,
                ));
            }
            if let Some(nth) = repeated(numbers) {
                let pack = numbers[nth];
                return Err(Refusal::cannot_be(at(nth), DrawSays::PackTwice { pack }));
            }
            let whole = |(nth, number): (usize, &u32)| {
                draw_whole(lot, numbered(lot, *number, &at(nth))?, &at(nth))
            };
            numbers.iter().enumerate().map(whole).collect()
        }
        Choice::All => {
            let all: Vec<_> = lot
                .on_hand()
                .map(|pack| Draw {
                    lot,
                    pack,
                    grams: pack.now.left,
                })
                .collect();
            if all.is_empty() {
                Err(nothing_left(lot, None, &format!("{field}lot")))
            } else {
                Ok(all)
            }
        }
    }
}

/// Refuses a lot that was voided.
pub fn not_voided(lot: &Lot, field: &str) -> Result<()> {
    if lot.voided {
        let lot = lot.code.clone();
        let detail = DrawSays::Voided { lot };
        return Err(Refusal::new(RefusalKind::Voided, field, detail));
    }
    Ok(())
}

/// The pack of that number.
pub fn numbered<'a>(lot: &'a Lot, number: u32, field: &str) -> Result<&'a Pack> {
    lot.pack(number).ok_or_else(|| {
        let detail = DrawSays::NoSuchPack {
            lot: lot.code.clone(),
            packs: lot.pack_count,
            pack: number,
        };
        Refusal::cannot_be(field, detail)
    })
}

fn the_only_one<'a>(lot: &'a Lot, field: &str) -> Result<&'a Pack> {
    let mut on_hand = lot.on_hand();
    match (on_hand.next(), on_hand.next()) {
        (Some(pack), None) => Ok(pack),
        (Some(_), Some(_)) => {
            let mut packs: Vec<String> = lot
                .on_hand()
                .take(20)
                .map(|pack| pack.number.to_string())
                .collect();
            if lot.on_hand().count() > packs.len() {
                packs.push("…".into());
            }
            let detail = DrawSays::WhichPack {
                lot: lot.code.clone(),
                packs: packs.join(", "),
            };
            Err(Refusal::cannot_be(format!("{field}pack"), detail))
        }
        (None, _) => Err(nothing_left(
            lot,
            lot.packs.first().filter(|_| lot.pack_count == 1),
            &format!("{field}lot"),
        )),
    }
}

fn draw<'a>(lot: &'a Lot, pack: &'a Pack, grams: Option<Grams>, field: &str) -> Result<Draw<'a>> {
    let Some(grams) = grams else {
        return draw_whole(lot, pack, &format!("{field}pack"));
    };
    let at = format!("{field}grams");
    weight(grams, &at)?;
    if pack.now.is_on_hand() && grams <= pack.now.left {
        return Ok(Draw { lot, pack, grams });
    }
    if !pack.now.is_on_hand() {
        return Err(nothing_left(lot, Some(pack), &at));
    }
    let detail = DrawSays::NotEnough {
        pack: lot.shown(pack.number),
        left: pack.now.left,
        asked: grams,
    };
    Err(Refusal::new(RefusalKind::NotEnough, at, detail))
}

fn draw_whole<'a>(lot: &'a Lot, pack: &'a Pack, field: &str) -> Result<Draw<'a>> {
    if pack.now.is_on_hand() {
        return Ok(Draw {
            lot,
            pack,
            grams: pack.now.left,
        });
    }
    Err(nothing_left(lot, Some(pack), field))
}

fn nothing_left(lot: &Lot, pack: Option<&Pack>, field: &str) -> Refusal {
    match pack {
        Some(pack) if pack.now.being == Being::Missing => {
            let pack = lot.shown(pack.number);
            let detail = DrawSays::Missing { pack };
            Refusal::new(RefusalKind::Missing, field, detail)
        }
        Some(pack) => {
            let detail = DrawSays::Emptied {
                pack: lot.shown(pack.number),
                being: pack.now.being,
            };
            Refusal::new(RefusalKind::NotEnough, field, detail)
        }
        None => {
            let lot = lot.code.clone();
            Refusal::new(RefusalKind::NotEnough, field, DrawSays::NothingLeft { lot })
        }
    }
}

/// Refuses a weight that is nothing, less than nothing, or more than a kitchen has.
pub fn weight(grams: Grams, field: &str) -> Result<()> {
    if grams <= Grams::ZERO {
        let none = Grams::ZERO;
        return Err(Refusal::cannot_be(
            field,
            DrawSays::NoWeight { grams, none },
        ));
    }
    if grams > HEAVIEST {
        let most = HEAVIEST;
        return Err(Refusal::cannot_be(
            field,
            DrawSays::TooHeavy { grams, most },
        ));
    }
    Ok(())
}

/// The position of the first value that was there before.
pub fn repeated<T: Ord>(values: &[T]) -> Option<usize> {
    let mut seen = std::collections::BTreeSet::new();
    values.iter().position(|value| !seen.insert(value))
}
