//! The log of a step: read, and kept point by point as it was read.

use super::facts::Facts;
use super::says::HeatDeedSays;
use super::{degrees, probe};
use crate::error::{Error, Result};
use crate::wire::asked::StepAsked;
use domain::heat::{CoreReading, Log, Span};
use domain::says::Says;
use domain::words::Quantity;
use store::probes::{self, CorePoint};

/// The points that have a temperature, each with its place in the request.
pub(super) fn points(asked: &StepAsked) -> Result<Vec<(usize, CoreReading)>> {
    let mut read = Vec::new();
    for (nth, reading) in asked.log.iter().flatten().enumerate() {
        let (celsius, fahrenheit) = (reading.celsius, reading.fahrenheit);
        let field = format!("log[{nth}].");
        match degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, &field)? {
            Some(core) => read.push((
                nth,
                CoreReading {
                    at: reading.at.0.to_utc(),
                    core,
                },
            )),
            None if reading.boiled_minutes.is_some() => {}
            None => {
                let says = HeatDeedSays::NoReading;
                return Err(Error::cannot_be(format!("{field}celsius"), says));
            }
        }
    }
    Ok(read)
}

/// Refuses readings that are of another time than their step.
///
/// # Errors
/// 422 for the first of them.
pub fn in_time(asked: &StepAsked, span: &Span) -> Result<()> {
    let times = asked.log.iter().flatten();
    let times: Vec<_> = times.map(|reading| reading.at.0.to_utc()).collect();
    span.holds(&times)
        .map_err(|refusal| refusal.within("log").into())
}

/// The log; nothing where no temperature was entered.
///
/// # Errors
/// 422 for a point that cannot be.
pub fn read(facts: &Facts<'_, '_>, asked: &StepAsked) -> Result<Option<Log>> {
    let read: Vec<CoreReading> = points(asked)?.into_iter().map(|(_, of)| of).collect();
    if read.is_empty() {
        return Ok(None);
    }
    let log = Log::new(read, facts.kitchen.zone);
    Ok(Some(log.map_err(|refusal| refusal.within("log."))?))
}

/// Keeps the points of a log; what speaks against their probes comes back.
///
/// # Errors
/// 422 for a probe that is not in the list.
pub fn keep(facts: &mut Facts<'_, '_>, asked: &StepAsked) -> Result<Vec<Says>> {
    let points = points(asked)?;
    let all = asked.log.iter().flatten().enumerate();
    let of_point = all.filter_map(|(nth, point)| Some((nth, point.probe.as_ref()?)));
    let (places, named): (Vec<usize>, Vec<_>) = of_point
        .map(|(nth, probe)| (nth, (probe, format!("log[{nth}].probe"))))
        .unzip();
    let (keys, said) = probe::named(facts, &named)?;
    let probe = |nth: usize| {
        let place = places.iter().position(|place| *place == nth);
        place.map(|place| keys[place])
    };
    let kept = points.into_iter().map(|(nth, reading)| CorePoint {
        at: reading.at,
        read: degrees::kept(reading.core, Quantity::Celsius, Quantity::Fahrenheit),
        probe: probe(nth),
    });
    probes::insert_log(facts.tx, facts.deed, &kept.collect::<Vec<_>>())?;
    Ok(said)
}
