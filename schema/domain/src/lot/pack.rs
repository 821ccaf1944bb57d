//! One physical container: what was in it at first, and how each event changes it.
//!
//! A pack is the fold of its events. A deed applies one event; a void folds again without the
//! voided ones; the audit folds everything and compares.

use super::{PackId, PlaceId};
use crate::dates::Later;
use crate::grams::Grams;
use crate::words::{Account, Being, State};
use chrono::NaiveDate;

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
}

impl Pack {
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
    /// While frozen: the days it still has.
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
        date: Option<NaiveDate>,
        later: Later,
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
            use_by: date,
            days_left: None,
            taken_back: false,
        };
        born.kept_as(state, later, day)
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
                    now.use_by = later.date_opened(event.day, now.use_by);
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

    fn kept_as(mut self, state: State, later: Later, day: NaiveDate) -> PackNow {
        match (self.state, state) {
            (State::Frozen, State::Frozen) => {}
            (_, State::Frozen) => {
                self.days_left = self.use_by.map(|use_by| later.days_left(use_by, day));
                self.use_by = None;
            }
            (State::Frozen, _) => {
                self.use_by = later.date_thawed(self.days_left.take(), day);
            }
            _ => {}
        }
        self.state = state;
        self
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
/// leave it with less than nothing.
pub fn refold(
    born: PackNow,
    made: Grams,
    later: Later,
    events: &[Event],
) -> Result<PackNow, usize> {
    events
        .iter()
        .enumerate()
        .try_fold(born, |now, (nth, event)| {
            now.after(event, made, later).ok_or(nth)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn tub() -> PackNow {
        PackNow::new(
            Grams::whole(500),
            PlaceId(1),
            State::Chilled,
            Some(day("2026-06-19")),
            Later::default(),
            day("2026-06-13"),
        )
    }

    fn check(events: &[What], left: i64, being: Being) {
        let events: Vec<Event> = events
            .iter()
            .map(|what| Event {
                what: *what,
                day: day("2026-06-14"),
            })
            .collect();
        let now = refold(tub(), Grams::whole(500), Later::default(), &events).unwrap();
        assert_eq!((now.left, now.being), (Grams::whole(left), being));
    }

    #[test]
    fn a_pack_becomes_what_emptied_it() {
        use Account::*;
        let took = |account, grams| What::Took(account, Grams::whole(grams));
        check(&[took(Used, 200)], 300, Being::Open);
        check(&[took(Used, 200), took(Sold, 300)], 0, Being::Sold);
        check(&[took(Lost, 20)], 480, Being::OnHand);
        check(&[took(Unexplained, 500)], 0, Being::Missing);
        check(
            &[took(Unexplained, 500), took(Unexplained, -500)],
            500,
            Being::OnHand,
        );
        check(
            &[took(Unexplained, 500), took(Unexplained, -400)],
            400,
            Being::Open,
        );
        check(
            &[took(Sold, 500), What::TakenBack(Grams::whole(500))],
            500,
            Being::OnHand,
        );
    }

    #[test]
    fn never_below_zero() {
        let event = |grams| Event {
            what: What::Took(Account::Used, Grams::whole(grams)),
            day: day("2026-06-14"),
        };
        assert_eq!(
            refold(
                tub(),
                Grams::whole(500),
                Later::default(),
                &[event(300), event(201)]
            ),
            Err(1)
        );
    }

    #[test]
    fn frozen_keeps_its_days() {
        let kept = |state, on: &str| Event {
            what: What::Moved {
                place: None,
                state: Some(state),
            },
            day: day(on),
        };
        let frozen = refold(
            tub(),
            Grams::whole(500),
            Later::default(),
            &[kept(State::Frozen, "2026-06-15")],
        )
        .unwrap();
        assert_eq!((frozen.use_by, frozen.days_left), (None, Some(4)));
        let thawed = frozen
            .after(
                &kept(State::Chilled, "2026-09-01"),
                Grams::whole(500),
                Later::default(),
            )
            .unwrap();
        assert_eq!(
            (thawed.use_by, thawed.days_left),
            (Some(day("2026-09-04")), None)
        );
    }
}
