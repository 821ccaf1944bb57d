//! When will a piece be ready? From its own weighings and its curve, always as a range.

use super::alarm::counted;
use super::{Piece, Rules, Weighing, loss};
use crate::measure::Percent;
use chrono::{Days, NaiveDate};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, MathematicalOps};

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
pub fn forecast(piece: &Piece, today: NaiveDate, rules: &Rules) -> Forecast {
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

fn by_curve(piece: &Piece, enough: Percent, of_age: NaiveDate, rules: &Rules) -> Forecast {
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
    weighed: &[Weighing],
    last: Weighing,
    enough: Percent,
    of_age: NaiveDate,
    rules: &Rules,
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
            let times = (enough.number() / lost).checked_powd(Decimal::TWO)?;
            Some(age.checked_mul(times)? - age)
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
fn recent(piece: &Piece, weighed: &[Weighing]) -> Option<(Decimal, Decimal)> {
    let (last, before) = weighed.split_last()?;
    let from = before.iter().rfind(|one| one.day < last.day)?;
    let lost = loss(piece.green, piece.green - (from.grams - last.grams));
    Some((
        Decimal::from((last.day - from.day).num_days()),
        lost.number(),
    ))
}

fn range(of_age: NaiveDate, earliest: NaiveDate, latest: Option<NaiveDate>, basis: Basis) -> Forecast {
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
    pub fn says(&self) -> String {
        let on = |basis: &Basis| match basis {
            Basis::Curve => "by the curve alone, it was never weighed",
            Basis::OneWeighing => "by one weighing",
            Basis::Weighings => "by its weighings",
        };
        match self {
            Forecast::WeightMet { ready } => {
                format!("It has lost enough, and is old enough from {ready}.")
            }
            Forecast::Between { earliest, latest, basis } if earliest == latest => {
                format!("Ready about {earliest}, {}.", on(basis))
            }
            Forecast::Between { earliest, latest, basis } => {
                format!("Ready between {earliest} and {latest}, {}.", on(basis))
            }
            Forecast::NotBefore { earliest, basis } => {
                format!("Not before {earliest}, {}.", on(basis))
            }
            Forecast::Unknown => "Nobody can say yet. Weigh it.".into(),
        }
    }
}
