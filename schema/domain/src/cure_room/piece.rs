//! A hanging piece: its tag, its green weight, its day in salt, its weighings.

use super::{Curve, Planned, ReleaseRule};
use crate::grams::Grams;
use crate::measure::Percent;
use chrono::NaiveDate;
use rust_decimal::Decimal;

/// One weighing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PieceWeighing {
    /// The day.
    pub day: NaiveDate,
    /// What it weighed.
    pub grams: Grams,
}

/// Where a piece is on its way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PieceStage {
    /// In salt or in brine.
    InSalt,
    /// Out of the salt, cold, until it has spread.
    Equalising,
    /// In the smoke.
    Smoking,
    /// Drying and ageing.
    Hanging,
    /// Released.
    Released,
}

/// Who signed, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Signed {
    /// The day.
    pub day: NaiveDate,
    /// Who.
    pub by: String,
}

/// A piece in the cure room.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// What its tag says: `H-04`.
    pub tag: String,
    /// The product: two hams can be mixed up, a ham and a coppa cannot.
    pub product: String,
    /// Its weight before the salt.
    pub green: Grams,
    /// The day it went in salt.
    pub in_salt: NaiveDate,
    /// Where it is on its way.
    pub stage: PieceStage,
    /// Its weighings, by day.
    pub weighings: Vec<PieceWeighing>,
    /// The curve that it dries along: the house's own, or the trade's. Some products have none.
    pub curve: Option<Curve>,
    /// What it is released by.
    pub rule: ReleaseRule,
    /// The last reading of its water activity.
    pub water_activity: Option<Decimal>,
    /// Who said that an alarm has been looked at.
    pub alarm_signed: Option<Signed>,
    /// Who signed the release.
    pub signed: Option<Signed>,
    /// What was planned for it.
    pub plan: Vec<Planned>,
    /// The days it was turned or salted again.
    pub turned: Vec<NaiveDate>,
}

impl Piece {
    /// A piece that hangs, and of which nothing else is known yet.
    pub fn hung(tag: impl Into<String>, green: Grams, in_salt: NaiveDate) -> Piece {
        Piece {
            tag: tag.into(),
            product: String::new(),
            green,
            in_salt,
            stage: PieceStage::Hanging,
            weighings: Vec::new(),
            curve: None,
            rule: ReleaseRule::default(),
            water_activity: None,
            alarm_signed: None,
            signed: None,
            plan: Vec::new(),
            turned: Vec::new(),
        }
    }

    /// Days since it went in salt; none before that.
    pub fn age(&self, on: NaiveDate) -> Option<u32> {
        (on - self.in_salt).num_days().try_into().ok()
    }

    /// The weighings up to a day, the oldest first.
    pub fn weighed(&self, until: NaiveDate) -> Vec<PieceWeighing> {
        let mut weighed: Vec<PieceWeighing> = self.weighings.clone();
        weighed.retain(|weighing| weighing.day <= until);
        weighed.sort_by_key(|weighing| weighing.day);
        weighed
    }

    /// The last weighing up to a day.
    pub fn last(&self, until: NaiveDate) -> Option<PieceWeighing> {
        self.weighed(until).pop()
    }

    /// The loss to expect on a day: by its curve, and from its last weighing before that day on.
    pub fn expected_loss(&self, on: NaiveDate) -> Option<Percent> {
        let curve = self.curve.as_ref()?;
        let by_curve = curve.loss_on(self.age(on)?);
        let before = on.pred_opt().and_then(|before| self.last(before));
        let Some((last, age)) = before.and_then(|last| Some((last, self.age(last.day)?))) else {
            return Some(by_curve);
        };
        let since = by_curve.number() - curve.loss_on(age).number();
        Some(Percent::new(loss(self.green, last.grams).number() + since))
    }
}

/// What a piece has lost, in percent of its green weight; below nothing where it is heavier.
pub fn loss(green: Grams, now: Grams) -> Percent {
    Percent::of(
        Decimal::from((green - now).milligrams()),
        Decimal::from(green.milligrams()),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_piece_that_ran_ahead_stays_ahead() {
        let day = |text: &str| -> NaiveDate { text.parse().unwrap() };
        let mut piece = Piece::hung("a", Grams::whole(1000), day("2026-01-01"));
        let points = vec![(0, Percent::new(0)), (100, Percent::new(20))];
        piece.curve = Some(Curve::new(None, points).unwrap());
        assert_eq!(
            piece.expected_loss(day("2026-01-11")),
            Some(Percent::new(2))
        );
        piece.weighings.push(PieceWeighing {
            day: day("2026-01-11"),
            grams: Grams::whole(970),
        });
        assert_eq!(
            piece.expected_loss(day("2026-01-21")),
            Some(Percent::new(5))
        );
        assert_eq!(piece.age(day("2025-12-31")), None);
    }

    proptest! {
        #[test]
        fn the_lighter_the_more_is_lost(green in 1i64..100_000_000, one in 0i64..100_000_000, more in 1i64..1_000_000) {
            let grams = Grams::from_milligrams;
            prop_assert!(loss(grams(green), grams(one)) > loss(grams(green), grams(one + more)));
        }
    }
}
