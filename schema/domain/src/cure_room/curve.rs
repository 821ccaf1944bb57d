//! A drying curve: how much of its green weight a piece has lost, day by day from the first salt.

use super::says::CurveSays;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use rust_decimal::Decimal;

/// Points of a curve, linear between them. Loss never falls.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Curve {
    /// Where it comes from; none for a house's own.
    pub row: Option<RowId>,
    points: Vec<(u32, Percent)>,
}

impl Curve {
    /// A curve through points: day from the first salt, loss.
    ///
    /// # Errors
    /// Fewer than two points, no point of day 0 with no loss, days that do not rise, loss that
    /// falls or reaches a hundred.
    pub fn new(row: Option<RowId>, points: Vec<(u32, Percent)>) -> Result<Curve> {
        let wrong = |says: CurveSays| Err(Refusal::cannot_be("curve", says));
        if points.len() < 2 || points[0] != (0, Percent::default()) {
            return wrong(CurveSays::Begins);
        }
        if !points.is_sorted_by(|one, next| one.0 < next.0 && one.1 <= next.1) {
            return wrong(CurveSays::Rises);
        }
        if points[points.len() - 1].1.number() >= Decimal::ONE_HUNDRED {
            return wrong(CurveSays::AllLost);
        }
        Ok(Curve { row, points })
    }

    /// Its points.
    pub fn points(&self) -> &[(u32, Percent)] {
        &self.points
    }

    /// The loss to expect on a day. After the last point it stays what it was.
    pub fn loss_on(&self, day: u32) -> Percent {
        let after = self.points.partition_point(|(at, _)| *at <= day);
        let (from, low) = self.points[after - 1];
        let Some((to, high)) = self.points.get(after) else {
            return low;
        };
        let part = Decimal::from(day - from) / Decimal::from(to - from);
        Percent::new(low.number() + (high.number() - low.number()) * part)
    }

    /// When a loss is first reached, in days and parts of days; none if it never is.
    pub fn day_of(&self, wanted: Percent) -> Option<Decimal> {
        let after = self.points.iter().position(|(_, at)| *at >= wanted)?;
        let (to, high) = self.points[after];
        let Some((from, low)) = after.checked_sub(1).map(|before| self.points[before]) else {
            return Some(Decimal::from(to));
        };
        let part = (wanted.number() - low.number()) / (high.number() - low.number());
        Some(Decimal::from(from) + Decimal::from(to - from) * part)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn curve(points: &[(u32, i64)]) -> Result<Curve> {
        let points = points.iter().map(|(day, loss)| (*day, Percent::new(*loss)));
        Curve::new(None, points.collect())
    }

    #[test]
    fn a_curve_is_linear_between_its_points() {
        let curve = curve(&[(0, 0), (10, 5), (30, 10), (40, 10)]).unwrap();
        let check = |day, loss: i64| {
            assert_eq!(curve.loss_on(day).number().round_dp(6), loss.into());
        };
        check(0, 0);
        check(2, 1);
        check(10, 5);
        check(26, 9);
        check(90, 10);
        assert_eq!(curve.day_of(Percent::new(9)), Some(Decimal::from(26)));
        assert_eq!(curve.day_of(Percent::new(10)), Some(Decimal::from(30)));
        assert_eq!(curve.day_of(Percent::new(-1)), Some(Decimal::ZERO));
        assert_eq!(curve.day_of(Percent::new(11)), None);
    }

    #[test]
    fn what_is_no_curve_is_refused() {
        for points in [
            &[(0, 0)][..],
            &[(1, 0), (2, 3)],
            &[(0, 1), (2, 3)],
            &[(0, 0), (9, 8), (9, 9)],
            &[(0, 0), (9, 8), (10, 7)],
            &[(0, 0), (9, 100)],
        ] {
            assert!(curve(points).is_err(), "{points:?}");
        }
    }

    proptest! {
        #[test]
        fn loss_never_falls_and_reads_back(
            steps in prop::collection::vec((1u32..100, 0i64..8), 1..10), day in 0u32..1200, more in 0u32..50,
        ) {
            let mut points = vec![(0, 0)];
            for (days, loss) in steps {
                let last = points[points.len() - 1];
                points.push((last.0 + days, last.1 + loss));
            }
            let curve = curve(&points).unwrap();
            prop_assert!(curve.loss_on(day) <= curve.loss_on(day + more));
            let back = curve.day_of(curve.loss_on(day)).unwrap();
            prop_assert!(back <= Decimal::from(day) + Decimal::new(1, 6));
        }
    }
}
