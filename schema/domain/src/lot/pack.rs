//! One physical container: what was in it at first, and how each event changes it.
//!
//! A pack is the fold of its events. A deed applies one event; a void folds again without the
//! voided ones; the audit folds everything and compares.

use super::{PackId, PlaceId};
use crate::dates::{Later, earliest};
use crate::grams::Grams;
use crate::moment::Moment;
use crate::words::{Account, Being, State};
use chrono::{DateTime, NaiveDate, Utc};

/// A pack: its birth, and how it is now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pack {
    /// Its key.
    pub id: PackId,
    /// Its number in the lot, from 1.
    pub number: u32,
    /// The grams in it when it was made.
    pub made: Grams,
    /// How it is now.
    pub now: PackNow,
    /// What it lived through: loaded for a deed that is entered late, whose event may come between others.
    pub past: Option<Past>,
}

/// What a pack lived through, voided deeds left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Past {
    /// How it was born.
    pub born: PackNow,
    /// Its events, in the order in which they were recorded.
    pub events: Vec<Event>,
}

impl Pack {
    /// The pack after one more event, or `None` where it would hold less than nothing.
    pub fn after(&self, event: &Event, later: Later) -> Option<PackNow> {
        let Some(past) = &self.past else {
            return self.now.after(event, self.made, later);
        };
        let mut events = past.events.clone();
        events.push(*event);
        refold(past.born, self.made, later, &events).ok()
    }

    /// How it was at a moment, after all that had happened to it by then, whatever was recorded first: what a
    /// deed makes of it that is entered late follows from that.
    pub fn at(&self, moment: &Moment, later: Later) -> PackNow {
        match &self.past {
            Some(past) if later.freezes_once => {
                let by_then = |event: &&Event| match later.by_moment {
                    true => event.at <= moment.at,
                    false => event.day <= moment.day,
                };
                let then = past.events.iter().filter(by_then);
                let then: Vec<Event> = then.copied().collect();
                dated(past.born, self.made, later, &then)
            }
            _ => self.now,
        }
    }

    /// Are two packs shown alike: the same is left in them, in the same place, kept the same way,
    /// until the same day?
    pub fn is_like(&self, other: &Pack) -> bool {
        let told = |of: &PackNow| {
            (
                of.left,
                of.being,
                of.place,
                of.state,
                of.use_by,
                of.days_left,
            )
        };
        told(&self.now) == told(&other.now)
    }
}

/// The date that a pack is born with.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct BirthDate {
    /// Its last day, if it has one.
    pub use_by: Option<NaiveDate>,
    /// What can still change it.
    pub later: Later,
    /// Was what it is made of frozen before?
    pub was_frozen: bool,
}

/// What changes about a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PackNow {
    /// Grams left.
    pub left: Grams,
    /// What has become of it.
    pub being: Being,
    /// Where it is.
    pub place: PlaceId,
    /// How it is kept.
    pub state: State,
    /// Its last day; none while frozen, or where no rule gives one.
    pub use_by: Option<NaiveDate>,
    /// While frozen: the days it still has. Afterwards it stays, and says that it was frozen.
    pub days_left: Option<i32>,
    /// Did a customer bring it back? Then it is never for sale again.
    pub taken_back: bool,
}

impl PackNow {
    /// A new pack: full, on hand, dated.
    pub fn new(
        made: Grams,
        place: PlaceId,
        state: State,
        dated: BirthDate,
        day: NaiveDate,
    ) -> PackNow {
        let born = PackNow {
            left: made,
            being: Being::OnHand,
            place,
            state: if state == State::Frozen {
                State::Chilled
            } else {
                state
            },
            use_by: dated.use_by,
            days_left: dated.was_frozen.then_some(0),
            taken_back: false,
        };
        born.kept_as(state, dated.later, day)
    }

    /// Can something still be taken out of it?
    pub fn is_on_hand(&self) -> bool {
        matches!(self.being, Being::OnHand | Being::Open)
    }

    /// The pack after an event, or `None` where it would hold less than nothing.
    pub fn after(self, event: &Event, made: Grams, later: Later) -> Option<PackNow> {
        let mut now = self;
        match event.what {
            What::Moved { place, state } => {
                now.place = place.unwrap_or(now.place);
                return Some(now.kept_as(state.unwrap_or(now.state), later, event.day));
            }
            What::Noted => return Some(now),
            What::Took(account, grams) => {
                if grams > now.left && account != Account::Unexplained {
                    return None;
                }
                let opens =
                    now.left == made && !matches!(account, Account::Lost | Account::Unexplained);
                now.left -= grams;
                if opens && now.left > Grams::ZERO {
                    now.open(later, event.day);
                }
                now.being = match account {
                    // What was given up and is found whole again is as it was.
                    Account::Unexplained if now.left >= made => Being::OnHand,
                    _ => being_after(account, now.left, now.being),
                };
            }
            What::TakenBack(grams) => {
                now.left += grams;
                now.taken_back = true;
                now.being = if now.left < made {
                    Being::Open
                } else {
                    Being::OnHand
                };
            }
        }
        (now.left >= Grams::ZERO).then_some(now)
    }

    /// The last day, as the place where it is asked needs it: of what is frozen and has days left, none.
    pub fn days_frozen(&self) -> Option<i32> {
        self.days_left
            .filter(|_| self.state == State::Frozen && self.use_by.is_none())
    }

    /// How many days it keeps once it is thawed, the day of the thaw being the first, if it is frozen: the fewest that
    /// any rule gives.
    pub fn days_once_thawed(&self, later: Later) -> Option<i32> {
        let frozen = self.state == State::Frozen && self.use_by.is_none();
        let days = |after: u32| i32::try_from(after).unwrap_or(i32::MAX).saturating_add(1);
        let rule = later.thawed.map(|count| days(count.after()));
        let left = self.days_left.map(|days| days.max(1));
        let each = [rule, left].into_iter().flatten();
        each.min().filter(|_| frozen)
    }

    /// Was it frozen before?
    pub fn was_frozen(&self) -> bool {
        self.state == State::Frozen || self.days_left.is_some()
    }

    fn kept_as(mut self, state: State, later: Later, day: NaiveDate) -> PackNow {
        match (self.state, state) {
            (State::Frozen, State::Frozen) => {}
            (_, State::Frozen) => self.freeze(later, day),
            (State::Frozen, _) => self.thaw(later, day),
            _ => {}
        }
        self.state = state;
        self
    }

    /// What is sawn off while it is frozen opens it too: its clock still stands, and fewer days may be left to it.
    fn open(&mut self, later: Later, day: NaiveDate) {
        if self.state != State::Frozen || self.use_by.is_some() {
            self.use_by = later.date_opened(day, self.use_by);
            return;
        }
        let opened = later.opened.map(|count| count.last_day(day));
        let opened = opened.map(|last| later.days_left(last, day));
        self.days_left = [self.days_left, opened].into_iter().flatten().min();
    }

    fn freeze(&mut self, later: Later, day: NaiveDate) {
        let before = self.days_left.is_some();
        let left = |use_by: NaiveDate| match (later.freezes_once, before) {
            (true, true) => later.days_left_again(use_by, day),
            // What is past its day is not saved: the clock runs on.
            (true, false) if use_by < day => None,
            _ => Some(later.days_left(use_by, day)),
        };
        self.days_left = self.use_by.and_then(left);
        if self.days_left.is_some() {
            self.use_by = None;
        }
    }

    fn thaw(&mut self, later: Later, day: NaiveDate) {
        if !later.freezes_once {
            self.use_by = later.date_thawed(self.days_left.take(), day);
            return;
        }
        self.use_by = earliest(self.use_by, later.date_thawed(self.days_left, day));
        self.days_left = Some(self.days_left.unwrap_or(0));
    }
}

impl Being {
    /// Did it go to somebody, or away? What was used was used here.
    pub fn left_the_kitchen(self) -> bool {
        use Being::*;
        matches!(self, Sold | Served | Discarded | Shipped | Returned)
    }
}

fn being_after(account: Account, left: Grams, before: Being) -> Being {
    if left > Grams::ZERO {
        return match account {
            // Drying and recounting do not open a pack, and what was found is no longer missing.
            Account::Lost | Account::Unexplained if before == Being::OnHand => Being::OnHand,
            _ => Being::Open,
        };
    }
    match account {
        Account::Sold => Being::Sold,
        Account::Served => Being::Served,
        Account::Discarded => Being::Discarded,
        Account::Shipped => Being::Shipped,
        Account::Returned => Being::Returned,
        Account::Unexplained => Being::Missing,
        _ => Being::Used,
    }
}

/// Something that happened to a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Event {
    /// What happened.
    pub what: What,
    /// On which of the kitchen's days.
    pub day: NaiveDate,
    /// When.
    pub at: DateTime<Utc>,
}

impl Event {
    /// What happens at a moment.
    pub fn new(what: What, moment: &Moment) -> Event {
        let (day, at) = (moment.day, moment.at);
        Event { what, day, at }
    }

    fn moves(&self) -> bool {
        matches!(self.what, What::Moved { .. })
    }
}

/// What can happen to a pack.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum What {
    /// Grams went to an account. Negative only for a surplus found, or a gain in weight.
    Took(Account, Grams),
    /// A customer brought grams back.
    TakenBack(Grams),
    /// It went elsewhere, or is kept in another way.
    Moved {
        /// The new place, if it changed.
        place: Option<PlaceId>,
        /// The new state, if it changed.
        state: Option<State>,
    },
    /// A step noted something about it that changes no grams, place or state.
    Noted,
}

/// The pack as its birth and its events make it, or the position of the first event that would
/// leave it with less than nothing. Balances follow the order of recording; dates, and where and how it is kept, that in
/// which it happened.
pub fn refold(
    born: PackNow,
    made: Grams,
    later: Later,
    events: &[Event],
) -> Result<PackNow, usize> {
    let mut each = events.iter().enumerate();
    let now = each.try_fold(born, |now, (nth, event)| {
        now.after(event, made, later).ok_or(nth)
    })?;
    if told_in_order(events, later) {
        return Ok(now);
    }
    let dated = dated(born, made, later, events);
    Ok(PackNow {
        use_by: dated.use_by,
        days_left: dated.days_left,
        state: dated.state,
        place: match later.by_moment {
            true => dated.place,
            false => now.place,
        },
        ..now
    })
}

/// Were events recorded in the order in which they happened? What is taken out twice on one day comes to the same in
/// either order; a move, a freeze or a thaw does not.
pub fn told_in_order(events: &[Event], later: Later) -> bool {
    if !later.freezes_once || events.is_sorted_by_key(|event| event.day) && !later.by_moment {
        return true;
    }
    let (mut day, mut last, mut moved) = (None, None, None);
    events.iter().all(|event| {
        let after = match event.moves() {
            true => last,
            false => moved,
        };
        let follows = Some(event.day) >= day && (!later.by_moment || Some(event.at) >= after);
        day = day.max(Some(event.day));
        last = last.max(Some(event.at));
        if event.moves() {
            moved = moved.max(Some(event.at));
        }
        follows
    })
}

/// The places in a list of events by the order in which they happened.
pub fn as_it_happened(events: &[Event], later: Later) -> Vec<usize> {
    let mut order: Vec<usize> = (0..events.len()).collect();
    match later.by_moment {
        true => order.sort_by_key(|nth| events[*nth].at),
        false => order.sort_by_key(|nth| events[*nth].day),
    }
    order
}

/// The pack as events make it in the order in which they happened.
fn dated(born: PackNow, made: Grams, later: Later, events: &[Event]) -> PackNow {
    let order = as_it_happened(events, later);
    let order = order.iter().map(|nth| &events[*nth]);
    order.fold(born, |now, event| {
        // In this order a count may come before what it counted: no grams, but the dates go on.
        now.after(event, made, later).unwrap_or(now)
    })
}

#[cfg(test)]
mod tests;
