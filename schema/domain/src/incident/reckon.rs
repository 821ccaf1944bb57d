//! How what an incident is about was looked for, counted and disposed of: pure, from what happened to each affected
//! pack. Balances follow the order of recording; what the book said is what it said when the incident began.

use super::CountState;
use crate::grams::Grams;
use crate::lot::{DeedId, LotId, PackId, PlaceId};
use crate::words::{Account, DeedKind};
use chrono::{DateTime, Utc};
use std::ops::AddAssign;

/// Something that happened to a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PackEvent {
    /// By which deed.
    pub deed: DeedId,
    /// What it was.
    pub kind: DeedKind,
    /// When.
    pub at: DateTime<Utc>,
    /// Where it was done, if that was said.
    pub place: Option<PlaceId>,
    /// Which account the grams went to or came from.
    pub account: Account,
    /// How many.
    pub grams: Grams,
    /// Was a whole pack sold?
    pub whole_pack: bool,
    /// Where the pack went, if it moved.
    pub to: Option<PlaceId>,
}

impl PackEvent {
    /// What it took out of the pack; less than nothing where it brought something.
    pub fn took(&self) -> Grams {
        match self.account {
            Account::Moved | Account::Noted => Grams::ZERO,
            Account::TakenBack => -self.grams,
            _ => self.grams,
        }
    }

    /// Did somebody say what the pack weighs, that it is not there, or that it has left?
    fn counts(&self) -> bool {
        let counted = matches!(
            self.kind,
            DeedKind::Count | DeedKind::Adopt | DeedKind::TakeBack
        );
        counted || self.leaves()
    }

    /// Did it leave for good?
    fn leaves(&self) -> bool {
        matches!(self.account, Account::Discarded | Account::Returned)
    }

    /// Did somebody have it in their hands?
    fn sees(&self) -> bool {
        use DeedKind::*;
        !matches!(self.kind, Hold | HoldRelease | Void | Correct)
    }
}

/// A pack and what happened to it, in the order of recording.
#[derive(Debug, Clone)]
pub struct PackTold {
    /// Its key.
    pub id: PackId,
    /// Its number.
    pub number: u32,
    /// What was in it at birth.
    pub made: Grams,
    /// Where it was put at birth.
    pub born: PlaceId,
    /// What happened to it.
    pub events: Vec<PackEvent>,
}

/// What became of a weight since the call. By the book, and back from customers, and surplus = missing, destroyed,
/// returned, gone otherwise, and left.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct CountSums {
    /// By the book when the incident began; of what was made or entered since, at its birth.
    pub book: Grams,
    /// Not found when it was counted, also where it was found later: never set off against `surplus`.
    pub missing: Grams,
    /// Found, and not in the book.
    pub surplus: Grams,
    /// Brought back by customers.
    pub back: Grams,
    /// Thrown away.
    pub destroyed: Grams,
    /// Sent back to where it came from.
    pub returned: Grams,
    /// Left otherwise: entered late, dried, let go and sold.
    pub gone: Grams,
    /// Still there.
    pub left: Grams,
}

impl AddAssign for CountSums {
    fn add_assign(&mut self, other: CountSums) {
        self.book += other.book;
        self.missing += other.missing;
        self.surplus += other.surplus;
        self.back += other.back;
        self.destroyed += other.destroyed;
        self.returned += other.returned;
        self.gone += other.gone;
        self.left += other.left;
    }
}

/// How a pack stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PackReckoned {
    /// Its key.
    pub id: PackId,
    /// Its number.
    pub number: u32,
    /// Where it is by the book.
    pub place: PlaceId,
    /// Where it was found, if that was said.
    pub found_at: Option<PlaceId>,
    /// How it stands.
    pub state: CountState,
    /// Is a part of it gone, and a part left?
    pub opened: bool,
    /// Its weight.
    pub sums: CountSums,
    /// When somebody first had it in their hands, or looked for it.
    pub seen: Option<DateTime<Utc>>,
    /// When it was first counted, or left.
    pub counted: Option<DateTime<Utc>>,
}

/// A lot of an incident.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotReckoned {
    /// Its key.
    pub id: LotId,
    /// Its affected packs of which something was there when the incident began, or came since.
    pub packs: Vec<PackReckoned>,
    /// Their sums.
    pub sums: CountSums,
}

/// How an incident stands.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Reckoned {
    /// Each lot with something to count.
    pub lots: Vec<LotReckoned>,
    /// Their sums.
    pub sums: CountSums,
    /// When the last pack was found, or said to be missing; none while one is waiting.
    pub located: Option<DateTime<Utc>>,
    /// When the last pack was counted.
    pub counted: Option<DateTime<Utc>>,
    /// How many packs there are to count.
    pub to_count: usize,
    /// How many of them nobody has counted.
    pub uncounted: usize,
    /// How many of them nobody has looked for.
    pub waiting: usize,
}

/// Reckons an incident that began with a deed, from the affected packs of each lot.
pub fn reckon<'a>(
    lots: impl Iterator<Item = (LotId, Vec<&'a PackTold>)>,
    began: DeedId,
) -> Reckoned {
    let mut all = Reckoned::default();
    let (mut located, mut counted) = (None, None);
    for (id, packs) in lots {
        let packs: Vec<PackReckoned> = packs
            .into_iter()
            .filter_map(|pack| of_pack(pack, began))
            .collect();
        let mut sums = CountSums::default();
        for pack in &packs {
            sums += pack.sums;
            if pack.sums.book == Grams::ZERO {
                continue;
            }
            all.to_count += 1;
            all.uncounted += usize::from(pack.counted.is_none());
            all.waiting += usize::from(pack.seen.is_none());
            located = located.max(pack.seen);
            counted = counted.max(pack.counted);
        }
        all.sums += sums;
        if !packs.is_empty() {
            all.lots.push(LotReckoned { id, packs, sums });
        }
    }
    all.located = located.filter(|_| all.waiting == 0);
    all.counted = counted.filter(|_| all.uncounted == 0);
    all
}

/// A pack of which there is something to count; none where nothing was there and nothing came.
fn of_pack(pack: &PackTold, began: DeedId) -> Option<PackReckoned> {
    let mut left = pack.made;
    let mut sums = CountSums {
        book: left,
        ..CountSums::default()
    };
    let mut of = PackReckoned {
        id: pack.id,
        number: pack.number,
        place: pack.born,
        found_at: None,
        state: CountState::Waiting,
        opened: false,
        sums,
        seen: None,
        counted: None,
    };
    for event in &pack.events {
        left -= event.took();
        of.place = event.to.unwrap_or(of.place);
        if event.deed <= began {
            sums.book = left;
            continue;
        }
        match event.account {
            // What one count missed and another found stays both.
            Account::Unexplained if event.grams > Grams::ZERO => sums.missing += event.grams,
            Account::Unexplained => sums.surplus -= event.grams,
            Account::TakenBack => sums.back += event.grams,
            Account::Discarded => sums.destroyed += event.grams,
            Account::Returned => sums.returned += event.grams,
            Account::Moved | Account::Noted => {}
            _ => sums.gone += event.grams,
        }
        if event.sees() {
            of.seen = of.seen.or(Some(event.at));
        }
        if event.counts() {
            of.counted = of.counted.or(Some(event.at));
            // Where it was destroyed is not where it was found.
            if !event.leaves() {
                of.found_at = event.place.or(of.found_at);
            }
            of.state = match left {
                Grams::ZERO if event.leaves() => CountState::Gone,
                Grams::ZERO => CountState::Missing,
                _ => CountState::Found,
            };
        }
    }
    sums.left = left;
    let came = [sums.back, sums.missing, sums.surplus];
    let came = came.into_iter().any(|grams| grams > Grams::ZERO);
    if sums.book == Grams::ZERO && !came {
        return None;
    }
    of.opened = left > Grams::ZERO && left < pack.made;
    of.state = match (of.state, of.counted, of.seen) {
        (_, None, Some(_)) if left == Grams::ZERO => CountState::Gone,
        (_, None, Some(_)) => CountState::Seen,
        (state, _, _) => state,
    };
    of.sums = sums;
    Some(of)
}

#[cfg(test)]
mod tests;
