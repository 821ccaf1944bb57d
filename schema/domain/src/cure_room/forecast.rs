//! When will a piece be ready? From its own weighings and its curve, always as a range.

use super::alarm::counted;
use super::says::ForecastSays;
use super::{CureRoomRules, Piece, PieceWeighing, loss};
use crate::measure::Percent;
use crate::says::Says;
use chrono::{Days, NaiveDate};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// What a forecast rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// The curve alone: it was never weighed.
    Curve,
    /// One weighing.
    OneWeighing,
    /// Its own weighings.
    Weighings,
}

/// When a piece is likely to be ready. Whether it is, only the scale says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Forecast {
    /// Weight asks for no more; this is the first day on which it is old enough too.
    WeightMet {
        /// That day.
        ready: NaiveDate,
    },
    /// Some day between.
    Between {
        /// Not before.
        earliest: NaiveDate,
        /// Most likely by then.
        latest: NaiveDate,
        /// What it rests on.
        basis: Basis,
    },
    /// Nobody can say until when.
    NotBefore {
        /// Not before.
        earliest: NaiveDate,
        /// What it rests on.
        basis: Basis,
    },
    /// There is nothing to go by: weigh it.
    Unknown,
}

/// The day on which a piece is likely to meet its loss and its days.
///
/// With weighings there are two estimates of the days to go: along the curve from the loss that it
/// has, and at the rate of its own last weighings. Drying slows down, so the second is early. Where
/// no curve reaches the target, the late one takes loss to go with the square root of time. The
/// range spans both and is wider the fewer weighings there are. Without weighings it is the curve,
/// ahead and behind by the usual points.
pub fn forecast(piece: &Piece, today: NaiveDate, rules: &CureRoomRules) -> Forecast {
    let of_age = day_after(piece.in_salt, piece.rule.days.unwrap_or(0).into());
    let Some(of_age) = of_age.filter(|_| piece.rule.check().is_ok()) else {
        return Forecast::Unknown;
    };
    let Some(enough) = piece.rule.enough() else {
        return match piece.rule.days {
            Some(_) => Forecast::WeightMet { ready: of_age },
            None => Forecast::Unknown,
        };
    };
    let weighed = counted(piece, today, rules);
    match weighed.last() {
        None => by_curve(piece, enough, of_age, rules),
        Some(last) if loss(piece.green, last.grams) >= enough => Forecast::WeightMet {
            ready: of_age.max(last.day),
        },
        Some(last) => by_weight(piece, &weighed, *last, enough, of_age, rules),
    }
}

fn by_curve(piece: &Piece, enough: Percent, of_age: NaiveDate, rules: &CureRoomRules) -> Forecast {
    let (Some(curve), Some(band)) = (&piece.curve, &rules.band) else {
        return Forecast::Unknown;
    };
    let crossed = |points: Decimal| {
        let day = curve.day_of(Percent::new(enough.number() + points))?;
        day_after(piece.in_salt, whole_days(day)?)
    };
    let Some(earliest) = crossed(-band.value) else {
        return Forecast::Unknown;
    };
    let basis = Basis::Curve;
    range(of_age, earliest, crossed(band.value), basis)
}

fn by_weight(
    piece: &Piece,
    weighed: &[PieceWeighing],
    last: PieceWeighing,
    enough: Percent,
    of_age: NaiveDate,
    rules: &CureRoomRules,
) -> Forecast {
    let lost = loss(piece.green, last.grams).number();
    let to_go = enough.number() - lost;
    let age = Decimal::from(piece.age(last.day).unwrap_or(0));
    let along_curve = piece.curve.as_ref().and_then(|curve| {
        let here = curve.day_of(Percent::new(lost))?;
        Some(curve.day_of(enough)? - here)
    });
    // From the salt on where it was weighed once.
    let (rate_days, rate_loss) = recent(piece, weighed).unwrap_or((age, lost));
    let at_rate = (rate_loss > Decimal::ZERO)
        .then(|| to_go.checked_mul(rate_days)?.checked_div(rate_loss))
        .flatten();
    let slowing = (lost > Decimal::ZERO)
        .then(|| {
            let times = enough.number().checked_div(lost)?;
            Some(age.checked_mul(times.checked_mul(times)?)? - age)
        })
        .flatten();
    let late = along_curve.or(slowing);
    let estimates = [at_rate, late];
    let (Some(soonest), latest) = (
        estimates.iter().flatten().min(),
        late.and(estimates.iter().flatten().max()),
    ) else {
        return Forecast::Unknown;
    };
    let (basis, spread) = match weighed.len() {
        1 => (Basis::OneWeighing, &rules.spread.one),
        2..4 => (Basis::Weighings, &rules.spread.few),
        _ => (Basis::Weighings, &rules.spread.many),
    };
    let wider = spread
        .as_ref()
        .map_or(Decimal::ZERO, |spread| spread.value / Decimal::ONE_HUNDRED);
    let early = (soonest * (Decimal::ONE - wider))
        .max(Decimal::ONE)
        .floor()
        .to_u64()
        .and_then(|days| day_after(last.day, days));
    let late = latest
        .and_then(|latest| whole_days(latest.checked_mul(Decimal::ONE + wider)?.max(Decimal::ONE)))
        .and_then(|days| day_after(last.day, days));
    match early {
        None => Forecast::Unknown,
        Some(early) => range(of_age, early, late, basis),
    }
}

/// Days and loss between the last weighing and the one before it, or an earlier one where the last
/// two are of one day.
fn recent(piece: &Piece, weighed: &[PieceWeighing]) -> Option<(Decimal, Decimal)> {
    let (last, before) = weighed.split_last()?;
    let from = before.iter().rfind(|one| one.day < last.day)?;
    let lost = loss(piece.green, piece.green - (from.grams - last.grams));
    Some((
        Decimal::from((last.day - from.day).num_days()),
        lost.number(),
    ))
}

fn range(
    of_age: NaiveDate,
    earliest: NaiveDate,
    latest: Option<NaiveDate>,
    basis: Basis,
) -> Forecast {
    let earliest = earliest.max(of_age);
    match latest {
        Some(latest) => Forecast::Between {
            earliest,
            latest: latest.max(earliest),
            basis,
        },
        None => Forecast::NotBefore { earliest, basis },
    }
}

fn whole_days(days: Decimal) -> Option<u64> {
    days.ceil().to_u64()
}

/// None where the calendar or a cook's life ends: a hundred years are not a forecast.
fn day_after(day: NaiveDate, days: u64) -> Option<NaiveDate> {
    match days {
        0..36_525 => day.checked_add_days(Days::new(days)),
        _ => None,
    }
}

impl Forecast {
    /// The first day on which it may be ready.
    pub fn earliest(&self) -> Option<NaiveDate> {
        match self {
            Forecast::WeightMet { ready } => Some(*ready),
            Forecast::Between { earliest, .. } | Forecast::NotBefore { earliest, .. } => {
                Some(*earliest)
            }
            Forecast::Unknown => None,
        }
    }

    /// For a tired cook.
    pub fn says(&self) -> Says {
        match *self {
            Forecast::WeightMet { ready } => ForecastSays::WeightMet { ready },
            Forecast::Between {
                earliest,
                latest,
                basis,
            } if earliest == latest => ForecastSays::About {
                day: earliest,
                basis: basis.into(),
            },
            Forecast::Between {
                earliest,
                latest,
                basis,
            } => ForecastSays::Between {
                earliest,
                latest,
                basis: basis.into(),
            },
            Forecast::NotBefore { earliest, basis } => ForecastSays::NotBefore {
                earliest,
                basis: basis.into(),
            },
            Forecast::Unknown => ForecastSays::Unknown,
        }
        .into()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure_room::{Curve, ReleaseRule, Spread};
    use crate::grams::Grams;
    use crate::rows::Bound;
    use proptest::prelude::*;

    fn day(nth: u64) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 1).unwrap() + Days::new(nth)
    }

    fn rules() -> CureRoomRules {
        CureRoomRules {
            band: Some(Bound::at_most("trade-2.1-band", 4)),
            water_in_lean: Some(Bound::at_most("trade-2.2-lean", 75)),
            spread: Spread {
                one: Some(Bound::at_most("one", 50)),
                few: Some(Bound::at_most("few", 25)),
                many: Some(Bound::at_most("many", 10)),
            },
            ..CureRoomRules::default()
        }
    }

    /// Loses 10 % in 50 days and 10 % more in the next 100; its rule is 16 %.
    fn piece(weighings: &[(u64, i64)], on_curve: bool) -> Piece {
        let mut piece = Piece::hung("a", Grams::whole(1000), day(0));
        let points = [(0, 0), (50, 10), (150, 20)];
        let points = points.map(|(day, loss)| (day, Percent::new(loss)));
        piece.curve = on_curve.then(|| Curve::new(None, points.to_vec()).unwrap());
        piece.rule = ReleaseRule {
            loss: Some(Percent::new(16)),
            ..ReleaseRule::default()
        };
        piece.weighings = weighings
            .iter()
            .map(|(nth, grams)| PieceWeighing {
                day: day(*nth),
                grams: Grams::whole(*grams),
            })
            .collect();
        piece
    }

    fn check(piece: &Piece, earliest: u64, latest: Option<u64>) {
        let expected = (Some(day(earliest)), latest.map(day));
        let forecast = forecast(piece, day(400), &rules());
        let latest = match forecast {
            Forecast::Between { latest, .. } => Some(latest),
            _ => None,
        };
        assert_eq!(
            (forecast.earliest(), latest),
            expected,
            "{}",
            forecast.says()
        );
    }

    #[test]
    fn a_forecast_is_a_range() {
        // By the curve 12 % (day 70) at the earliest, 20 % (day 150) at the latest.
        check(&piece(&[], true), 70, Some(150));
        // 10 % on day 50: 30 days at that rate, 60 along the curve, half as wide again.
        check(&piece(&[(50, 900)], true), 65, Some(140));
        // 2 % in ten days: 30 to go at that rate and by the curve; a quarter wider.
        check(&piece(&[(40, 920), (50, 900)], true), 72, Some(125));
        // No curve: 10 % on day 50 makes 16 % on day 128 by the square root.
        check(&piece(&[(50, 900)], false), 65, Some(167));
        // It has stopped: along the curve only.
        check(&piece(&[(40, 900), (50, 900)], true), 95, Some(125));
        // It has lost enough.
        check(&piece(&[(50, 840)], true), 50, None);
        // Heavier than green: the curve, from the start.
        check(&piece(&[(4, 1010)], true), 59, Some(169));
    }

    #[test]
    fn there_may_be_nothing_to_go_by() {
        let unknown = |piece: &Piece| {
            assert_eq!(forecast(piece, day(9), &rules()), Forecast::Unknown);
        };
        unknown(&piece(&[], false));
        unknown(&piece(&[(4, 1010)], false));
        let mut past_the_curve = piece(&[], true);
        past_the_curve.rule.loss = Some(Percent::new(30));
        unknown(&past_the_curve);
        past_the_curve.rule.loss = Some(Percent::new(18));
        let forecast = forecast(&past_the_curve, day(9), &rules());
        let (earliest, basis) = (day(90), Basis::Curve);
        assert_eq!(forecast, Forecast::NotBefore { earliest, basis });
    }

    proptest! {
        #[test]
        fn a_stricter_rule_is_never_ready_earlier(
            weighings in prop::collection::vec((0u64..200, 750i64..1020), 0..6),
            target in 2i64..40, more in 0i64..20, days in 0u32..300, later in 0u32..300, on_curve: bool,
        ) {
            let mut piece = piece(&weighings, on_curve);
            let mut when = |loss: i64, days: u32| {
                piece.rule.loss = Some(Percent::new(loss));
                piece.rule.days = Some(days);
                forecast(&piece, day(400), &rules()).earliest()
            };
            let (lax, strict) = (when(target, days), when(target + more, days + later));
            prop_assert!(lax.is_none() || strict.is_none() || lax <= strict);
        }

        #[test]
        fn a_range_never_runs_backwards(
            weighings in prop::collection::vec((0u64..200, 750i64..1020), 0..6), on_curve: bool,
        ) {
            if let Forecast::Between { earliest, latest, .. } = forecast(&piece(&weighings, on_curve), day(400), &rules()) {
                prop_assert!(earliest <= latest);
            }
        }
    }
}
