//! What was done against trichinae: the way, its limit and what was reached. What the paper of the farm or of the
//! laboratory answers for has no treatment, and so no chart.

use super::doing::{Doing, TreatedAs};
use super::entry::{Filled, Holds};
use super::kind::Column;
use super::lots;
use super::says::LogsSays;
use super::source::{Known, once};
use super::value::Value;
use crate::measure::Percent;
use crate::plan::Reason;
use crate::quantity::Quantity;
use crate::says::Arg;
use crate::words::Topic;

/// The areas of messages in which a check against trichinae speaks.
const AREAS: [&str; 8] = [
    "trichinae-",
    "cold-",
    "drying-",
    "heated-",
    "method-",
    "process-",
    "proof-",
    "stage-on-record-",
];

/// Was anything told against trichinae, or found?
pub fn is_treatment(doing: &Doing) -> bool {
    !doing.told.treated.is_empty() || doing.reasons.iter().any(|(_, reason)| speaks(reason))
}

fn speaks(reason: &Reason) -> bool {
    let key = reason.because.says.key();
    reason.topic == Topic::Release && AREAS.iter().any(|area| key.starts_with(area))
}

pub fn cells(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let mut cells = lots::done(doing, known);
    let own = doing.lots();
    cells.extend(lots::lots(&own, known));
    let treated = &doing.told.treated;
    let dried = treated.iter().find_map(|of| match of {
        TreatedAs::Dried { method, casing } => Some((method, *casing)),
        _ => None,
    });
    let is_treated = treated
        .iter()
        .any(|of| !matches!(of, TreatedAs::Certificate { .. }));
    let idle = |filled: Filled, applies: bool| match applies {
        true => filled,
        false => filled.if_any(),
    };
    let salt = own.iter().find_map(|lot| {
        let reading = known.lot(*lot)?.last_reading(Quantity::SaltPercent)?;
        Some(Percent::new(rust_decimal::Decimal::new(reading, 6)))
    });
    let checked = doing.reasons.iter().map(|(_, reason)| reason);
    let checked: Vec<&Reason> = checked.filter(|reason| speaks(reason)).collect();
    let links = once(checked.iter().map(|reason| lots::because(&reason.because)));
    let stops = doing
        .ended
        .iter()
        .map(|ended| lots::because(&ended.cause.because));
    let deviations = once(stops);
    let corrected = !deviations.is_empty();
    let done = doing
        .ended
        .iter()
        .map(|ended| Value::says(LogsSays::Disposed { how: ended.how }));
    cells.extend([
        Filled::whole(Column::Method, ways(treated, checked.is_empty())),
        idle(
            Filled::whole(Column::Salt, salt.map(Value::Percent)),
            dried.is_some(),
        ),
        idle(
            Filled::whole(
                Column::Casing,
                dried.and_then(|(_, casing)| casing).map(Value::Millimetres),
            ),
            dried.is_some(),
        ),
        idle(chart(doing), is_treated),
        idle(Filled::whole(Column::Limit, links.clone()), is_treated),
        idle(Filled::whole(Column::Actual, reached(treated)), is_treated),
        Filled::whole(Column::Certificate, certificates(treated)),
        match corrected {
            true => Filled::whole(Column::Deviation, deviations),
            false => Filled::whole(Column::Deviation, [Value::says(LogsSays::NoneFound)]),
        },
        Filled {
            holds: if corrected { Holds::Whole } else { Holds::Idle },
            ..Filled::whole(Column::Correction, once(done))
        },
        Filled::whole(Column::Found, links),
    ]);
    cells
}

/// The ways that were told; where none was, the certificate of its farm answered.
fn ways(treated: &[TreatedAs], is_unchecked: bool) -> Vec<Value> {
    let way = |of: &TreatedAs| {
        Value::says(match of {
            TreatedAs::Frozen { .. } => LogsSays::Frozen,
            TreatedAs::Heated { .. } => LogsSays::Heated,
            TreatedAs::Dried { method, .. } => LogsSays::DriedBy {
                method: method.clone(),
            },
            TreatedAs::Certificate { .. } => LogsSays::Certified,
        })
    };
    match (treated.is_empty(), is_unchecked) {
        (true, false) => vec![Value::says(LogsSays::HerdCertified)],
        _ => treated.iter().map(way).collect(),
    }
}

/// Times and temperatures: as told, or the points of the deed's own log.
fn chart(doing: &Doing) -> Filled {
    let told = reached(&doing.told.treated);
    let own = lots::chart(doing);
    Filled::whole(Column::Chart, told.into_iter().chain(own.values))
}

fn reached(treated: &[TreatedAs]) -> Vec<Value> {
    let told = treated.iter().filter_map(|of| match of {
        TreatedAs::Frozen { read, hours, .. } => Some(LogsSays::FrozenAt {
            read: *read,
            hours: *hours,
        }),
        TreatedAs::Heated { read, minutes } => Some(LogsSays::HeatedTo {
            read: *read,
            minutes: *minutes,
        }),
        TreatedAs::Dried { .. } | TreatedAs::Certificate { .. } => None,
    });
    told.map(Value::says).collect()
}

fn certificates(treated: &[TreatedAs]) -> Vec<Value> {
    let papers = treated.iter().filter_map(|of| match of {
        TreatedAs::Certificate { way, paper } => Some(LogsSays::Certificate {
            way: crate::trichinae::Way::ALL
                .iter()
                .find(|word| word.as_str() == way)
                .map_or_else(|| Arg::Text(way.clone()), |word| Arg::from(*word)),
            paper: paper.clone(),
        }),
        _ => None,
    });
    papers.map(Value::says).collect()
}
