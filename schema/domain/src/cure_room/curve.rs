//! A drying curve: how much of its green weight a piece has lost, day by day from the first salt.

use super::says::CurveSays;
use super::{Piece, loss};
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use rust_decimal::Decimal;
use std::collections::BTreeMap;

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

    /// The house's own curve from the weighings of pieces that hung before: the mean loss of each
    /// day, smoothed so that it never falls.
    ///
    /// # Errors
    /// Weighings of fewer than three days: that is no curve.
    pub fn from_pieces(pieces: &[Piece]) -> Result<Curve> {
        let mut by_day: BTreeMap<u32, Vec<Decimal>> = BTreeMap::new();
        for piece in pieces {
            for weighing in &piece.weighings {
                if let Some(day) = piece.age(weighing.day).filter(|day| *day > 0) {
                    let lost = loss(piece.green, weighing.grams)
                        .number()
                        .max(Decimal::ZERO);
                    by_day.entry(day).or_default().push(lost);
                }
            }
        }
        if by_day.len() < 3 {
            return Err(Refusal::cannot_be("curve", CurveSays::FewDays));
        }
        let days: Vec<u32> = by_day.keys().copied().collect();
        let means = by_day
            .into_values()
            .map(|losses| (average(&losses), losses.len()));
        let mut points = vec![(0, Percent::default())];
        points.extend(
            days.into_iter()
                .zip(never_falling(means).into_iter().map(Percent::new)),
        );
        Curve::new(None, points)
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

/// The mean of some numbers; of none it is nothing.
pub fn average(numbers: &[Decimal]) -> Decimal {
    match numbers.is_empty() {
        true => Decimal::ZERO,
        false => numbers.iter().sum::<Decimal>() / Decimal::from(numbers.len()),
    }
}

/// Neighbours that fall are put together at their mean, until nothing falls.
fn never_falling(means: impl Iterator<Item = (Decimal, usize)>) -> Vec<Decimal> {
    let mut pools: Vec<(Decimal, usize, usize)> = Vec::new();
    for (mean, weight) in means {
        let mut pool = (mean, weight, 1);
        while let Some(&(last, heavy, days)) = pools.last().filter(|last| last.0 > pool.0) {
            let both = heavy + pool.1;
            let sum = last * Decimal::from(heavy) + pool.0 * Decimal::from(pool.1);
            pool = (sum / Decimal::from(both), both, days + pool.2);
            pools.pop();
        }
        pools.push(pool);
    }
    pools
        .into_iter()
        .flat_map(|(mean, _, days)| std::iter::repeat_n(mean, days))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure_room::PieceWeighing;
    use crate::grams::Grams;
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

    #[test]
    fn own_weighings_make_a_curve() {
        let mut piece = Piece::hung("a", Grams::whole(1000), "2026-01-01".parse().unwrap());
        for (day, grams) in [
            ("2026-01-11", 950),
            ("2026-01-21", 960),
            ("2026-01-31", 880),
        ] {
            piece.weighings.push(PieceWeighing {
                day: day.parse().unwrap(),
                grams: Grams::whole(grams),
            });
        }
        let curve = Curve::from_pieces(std::slice::from_ref(&piece)).unwrap();
        let half = Percent::new(Decimal::new(45, 1)); // 5 then 4: both 4.5
        assert_eq!(curve.points()[1..3], [(10, half), (20, half)]);
        assert_eq!(curve.points()[3], (30, Percent::new(12)));
        piece.weighings.pop();
        assert!(Curve::from_pieces(&[piece]).is_err());
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
