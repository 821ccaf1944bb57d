//! What is on record is judged again, because a fact of it was wrong: what of a lot may change, what stays,
//! and which stops appear and end. The judgement itself is that of the deeds: `Step::again`,
//! `Receipt::birth`.

use crate::condition::{Condition, Stable};
use crate::dates::{Later, earliest};
use crate::lot::{PackId, PackNow};
use crate::origin::Origin;
use crate::plan::Birth;
use crate::product::Product;
use crate::stop::{NewStop, Placed, StopId};
use crate::supplied::Supplied;
use crate::words::{Allergen, Species};
use chrono::NaiveDate;
use std::collections::BTreeSet;

/// What a lot was born as, as far as a fact about its sources can change it.
#[derive(Debug, Clone, PartialEq)]
pub struct BornAs {
    /// What it was by what happened to it; none for a lot of the time before that was asked.
    pub condition: Option<Condition>,
    /// How each of its packs was; what was in it does not count here.
    pub born: PackNow,
    /// What can still change its packs' dates.
    pub later: Later,
    /// Allergens by union.
    pub allergens: BTreeSet<Allergen>,
    /// What may be in it unasked, by union.
    pub may_contain: BTreeSet<Allergen>,
    /// Of what it is made, where it was bought.
    pub supplied: Option<Supplied>,
    /// Species by union.
    pub species: BTreeSet<Species>,
    /// Where everything with a species in it comes from.
    pub origin: Origin,
}

impl BornAs {
    /// What a birth says.
    pub fn of(birth: &Birth) -> BornAs {
        BornAs {
            condition: Some(birth.condition),
            born: birth.born,
            later: birth.later,
            allergens: birth.allergens.clone(),
            may_contain: birth.may_contain.clone(),
            supplied: birth.supplied.clone(),
            species: birth.species.clone(),
            origin: birth.origin,
        }
    }

    /// What counts from now on: what is judged again, but no later date than one that was printed. A lot
    /// of the time before proof was asked stays as it was judged then.
    pub fn judged(&self, again: BornAs, printed: bool) -> BornAs {
        if self.condition.is_none() {
            return BornAs {
                condition: None,
                born: self.born,
                later: self.later,
                ..again
            };
        }
        let mut again = again;
        again.born = PackNow {
            use_by: again.born.use_by,
            days_left: again.born.days_left,
            ..self.born
        };
        if printed {
            again.born.use_by = earliest(self.born.use_by, again.born.use_by);
            again.born.days_left = match (self.born.days_left, again.born.days_left) {
                (Some(one), Some(other)) => Some(one.min(other)),
                (one, other) => one.or(other),
            };
            again.later.cap = earliest(self.later.cap, again.later.cap);
        }
        again
    }

    /// Is it dated alike?
    pub fn is_dated_as(&self, other: &BornAs) -> bool {
        (self.born.use_by, self.born.days_left, self.later)
            == (other.born.use_by, other.born.days_left, other.later)
    }
}

/// What a deed said of a lot's condition after its birth.
#[derive(Debug, Clone, PartialEq)]
pub enum Since {
    /// It was read, and its last readings show this.
    Read(Option<Stable>),
    /// A person let it go by name, where it was not proven.
    LetGo,
}

/// What a lot is after all that was said of it since.
pub fn condition_since<'a>(
    born: Option<Condition>,
    product: &Product,
    since: impl IntoIterator<Item = &'a Since>,
) -> Option<Condition> {
    since
        .into_iter()
        .fold(born, |condition, since| match (condition?, since) {
            (condition, Since::Read(shown)) => Some(condition.and_read(shown.as_ref())),
            (condition, Since::LetGo) if condition.lacks_proof(product) => Some(condition.let_go()),
            (condition, Since::LetGo) if claims_room(product) => Some(condition.let_stand()),
            (condition, Since::LetGo) => Some(condition),
        })
}

fn claims_room(product: &Product) -> bool {
    !product.raw && (product.claims_room() || product.keeping.controlled == Some(false))
}

/// The last day of something that has left already, where it is over, and earlier than was believed.
pub fn now_past(
    was: Option<NaiveDate>,
    now: Option<NaiveDate>,
    today: NaiveDate,
) -> Option<NaiveDate> {
    now.filter(|now| *now < today && was.is_none_or(|was| *now < was))
}

/// A stop as it is judged again: on the whole lot, or on a pack of it.
pub type JudgedStop = (Option<PackId>, NewStop);

/// How the stops that stand differ from those that are judged again.
#[derive(Debug, Default, PartialEq)]
pub struct StopsDiffer {
    /// Those that the record has and the judgement does not. One whose first of its line ends too ends with it.
    pub ended: Vec<StopId>,
    /// Those that the judgement has and the record does not, by their place in it.
    pub new: Vec<usize>,
}

/// Compares the stops that deeds placed on a lot by a judgement, with the judgement as it is now.
pub fn stops_differ(recorded: &[Placed], judged: &[JudgedStop]) -> StopsDiffer {
    let is = |placed: &Placed, (pack, stop): &JudgedStop| {
        let root = (placed.root != placed.id).then_some(placed.root);
        placed.pack == *pack && placed.cause == stop.cause && root == stop.root
    };
    let ended = recorded
        .iter()
        .filter(|placed| !judged.iter().any(|stop| is(placed, stop)))
        .map(|placed| placed.id);
    let new = (0..judged.len()).filter(|nth| !recorded.iter().any(|of| is(of, &judged[*nth])));
    StopsDiffer {
        ended: ended.collect(),
        new: new.collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::dates::{Because, Rule};
    use crate::grams::Grams;
    use crate::lot::{BirthDate, PlaceId};
    use crate::says::Says;
    use crate::stop::Cause;
    use crate::words::{ProvedBy, StableBy, State, Topic};

    fn day(text: &str) -> NaiveDate {
        text.parse().unwrap()
    }

    fn born(use_by: Option<&str>, condition: Option<Condition>) -> BornAs {
        let dated = BirthDate {
            use_by: use_by.map(day),
            ..BirthDate::default()
        };
        let made = day("2026-06-10");
        BornAs {
            condition,
            born: PackNow::new(Grams::whole(1), PlaceId(1), State::Chilled, dated, made),
            later: Later::default(),
            allergens: BTreeSet::new(),
            may_contain: BTreeSet::new(),
            supplied: None,
            species: BTreeSet::new(),
            origin: Origin::NoSpecies,
        }
    }

    #[test]
    fn a_printed_date_stays_where_it_is_the_earlier_one() {
        let check = |was, again, printed, expected: Option<&str>| {
            let (was, again) = (
                born(was, Some(Condition::RAW)),
                born(again, Some(Condition::RAW)),
            );
            assert_eq!(was.judged(again, printed).born.use_by, expected.map(day));
        };
        let (early, late) = (Some("2026-06-12"), Some("2026-06-16"));
        check(early, late, false, late);
        check(early, late, true, early);
        check(late, early, true, early);
        check(late, early, false, early);
        check(early, None, true, early);
        check(None, early, true, early);
    }

    #[test]
    fn what_was_judged_before_proof_was_asked_stays_but_for_what_is_in_it() {
        let was = born(Some("2026-06-12"), None);
        let mut again = born(Some("2026-06-11"), Some(Condition::RAW));
        again.allergens.insert(Allergen::Milk);
        let judged = was.judged(again, false);
        assert_eq!((judged.condition, judged.born), (None, was.born));
        assert!(judged.allergens.contains(&Allergen::Milk));
    }

    #[test]
    fn what_was_said_since_is_said_of_what_it_is_now() {
        let product = Product::unnamed();
        let stable = Stable {
            by: StableBy::Readings,
            because: Because {
                says: Says::as_written("dry"),
                rule: Rule::Rows(vec![]),
            },
        };
        let since = [Since::Read(Some(stable)), Since::LetGo];
        let of = |born| {
            condition_since(Some(born), &product, &since)
                .unwrap()
                .to_string()
        };
        assert_eq!(of(Condition::TREATED), "ready person readings");
        assert_eq!(of(Condition::ready(ProvedBy::Heat)), "ready heat readings");
        assert_eq!(condition_since(None, &product, &since), None);
    }

    #[test]
    fn what_has_left_is_told_of_where_its_day_was_over_sooner_than_was_believed() {
        let check = |was: Option<&str>, now: Option<&str>, expected: Option<&str>| {
            let past = now_past(was.map(day), now.map(day), day("2026-06-14"));
            assert_eq!(past, expected.map(day), "{was:?} {now:?}");
        };
        let (over, to_come) = (Some("2026-06-12"), Some("2026-06-16"));
        check(to_come, over, over);
        check(None, over, over);
        check(over, Some("2026-06-11"), Some("2026-06-11"));
        // It keeps still, or was known to be over when it left.
        check(to_come, Some("2026-06-14"), None);
        check(over, over, None);
        check(over, None, None);
        check(Some("2026-06-11"), over, None);
    }

    #[test]
    fn stops_end_and_appear_and_those_that_are_alike_stay() {
        let stop = |says: &str| {
            let because = Because {
                says: Says::as_written(says),
                rule: Rule::Rows(vec![]),
            };
            Cause::failed(
                Topic::Heat,
                because,
                day("2026-06-10").and_hms_opt(1, 0, 0).unwrap().and_utc(),
            )
        };
        let placed = |id, says| Placed {
            id: StopId(id),
            root: StopId(id),
            pack: None,
            cause: stop(says),
            incident: None,
            ended: None,
        };
        let recorded = [placed(1, "short"), placed(2, "slow")];
        let judged = [(None, stop("slow").into()), (None, stop("hot").into())];
        let differ = stops_differ(&recorded, &judged);
        assert_eq!((differ.ended, differ.new), (vec![StopId(1)], vec![1]));
    }
}
