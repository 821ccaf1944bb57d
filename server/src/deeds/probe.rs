//! Probes: a check of one, and what is said of a reading that one showed.

use super::facts::Facts;
use super::says::MeasureSays;
use super::{DeedHeader, Done, degrees, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::wire::Code;
use crate::wire::readings::ProbeCheckAsked;
use domain::heat::{self, ProbeCheck};
use domain::measure::Temperature;
use domain::plan::Plan;
use domain::rows::{Finding, Gravity};
use domain::says::Says;
use domain::words::{DeedKind, Quantity};
use rust_decimal::Decimal;
use store::{entries, probes};

/// Records the check of a probe. What it means is said; nothing is refused for it.
///
/// # Errors
/// 422 for a probe that is not in the list, or a reading that cannot be.
pub fn check(app: &Caller<'_>, asked: &ProbeCheckAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::CheckProbe,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    let read = degrees::temperature(asked.celsius, asked.fahrenheit, degrees::BATH, "")?;
    let read = read.ok_or_else(|| Error::cannot_be("celsius", MeasureSays::Empty))?;
    perform(app, header, asked, |facts| {
        let probe = key(facts, &asked.probe, "probe")?;
        let kept = degrees::kept(read, Quantity::Celsius, Quantity::Fahrenheit);
        probes::insert_check(facts.tx, facts.deed, probe, asked.bath.0, &kept)?;
        let id = asked.id.0.to_string();
        let mut done = facts.record(id, DeedKind::CheckProbe, &Plan::default())?;
        done.said
            .extend(looked(facts, probe, &asked.probe)?.map(|finding| finding.says));
        Ok(done)
    })
}

/// The key of a probe.
///
/// # Errors
/// 422 where it is not in the list.
pub fn key(facts: &mut Facts<'_, '_>, probe: &Code, field: &str) -> Result<i32> {
    let known = entries::get(facts.tx.conn, List::Probes.as_str(), &probe.0)?;
    let lacks = || Error::cannot_be(field, List::Probes.lacks_or_another(&probe.0));
    known.map(|row| row.id).ok_or_else(lacks)
}

/// What speaks against the probes that a deed names, and the key of each, in the same order. Each is
/// said once.
///
/// # Errors
/// 422 for one that is not in the list.
pub fn named(
    facts: &mut Facts<'_, '_>,
    named: &[(&Code, String)],
) -> Result<(Vec<i32>, Vec<Says>)> {
    let mut keys = Vec::with_capacity(named.len());
    let mut said: Vec<Says> = Vec::new();
    for (probe, field) in named {
        let key = key(facts, probe, field)?;
        if !keys.contains(&key) {
            let found = looked(facts, key, probe)?;
            let warns = found.filter(|finding| finding.gravity == Gravity::Warn);
            said.extend(warns.map(|finding| finding.says));
        }
        keys.push(key);
    }
    Ok((keys, said))
}

fn looked(facts: &mut Facts<'_, '_>, key: i32, probe: &Code) -> Result<Option<Finding>> {
    let law = facts.law();
    let Some(rules) = &law.heat.probes else {
        return Ok(None);
    };
    let rows = probes::checks(facts.tx.conn, key)?;
    let checks = rows.iter().map(|row| {
        let degrees = Decimal::new(row.millionths, 6);
        ProbeCheck {
            at: row.at,
            bath: row.bath,
            read: match row.quantity {
                Quantity::Fahrenheit => Temperature::fahrenheit(degrees),
                _ => Temperature::celsius(degrees),
            },
        }
    });
    let checks: Vec<ProbeCheck> = checks.collect();
    let (at, zone) = (facts.moment.at, facts.kitchen.zone);
    Ok(Some(heat::probed(&probe.0, &checks, at, zone, rules)))
}
