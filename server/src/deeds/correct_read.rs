//! What instruments showed during a deed is corrected, or handed in later: readings, a heat log, a cooling log.

use super::again::request;
use super::correct::{Correcting, kept, over, unless_known};
use super::facts::Facts;
use super::heat_log;
use super::measure::{self, Readings};
use super::says::{CorrectDeedSays, FactSays};
use crate::error::{Error, Result};
use crate::wire::asked::{CorrectionAsked, StepAsked};
use crate::wire::readings::ReadingAsked;
use domain::heat::Span;
use domain::says::Says;
use serde_json::{Map, Value};
use store::deeds::DeedRow;
use store::measurements::Told;

/// Each scale of a temperature takes the place of the other.
const SCALES: [(&str, &str); 2] = [("celsius", "fahrenheit"), ("fahrenheit", "celsius")];

/// Readings with those that are right put over them.
pub fn read_over(was: Option<&Value>, now: Value) -> Value {
    let told: Vec<&str> = SCALES
        .iter()
        .filter(|(scale, _)| now.get(scale).is_some())
        .map(|(_, other)| *other)
        .collect();
    let mut both = over(was, now);
    if let Value::Object(fields) = &mut both {
        fields.retain(|field, _| !told.contains(&field.as_str()));
    }
    both
}

/// What is right of a step: its readings, its log, what it is held against.
pub fn of_step(
    facts: &mut Facts<'_, '_>,
    asked: &CorrectionAsked,
    wrong: &DeedRow,
    before: &Map<String, Value>,
) -> Result<(Correcting, Vec<Says>)> {
    let (mut correcting, mut as_known) = (Correcting::default(), None);
    let mut parts = Vec::new();
    if let Some(readings) = &asked.readings {
        let now = read_over(before.get("readings"), kept(readings)?);
        parts.push(("readings", now, FactSays::Readings));
    }
    if let Some(log) = &asked.log {
        parts.push(("log", kept(log)?, FactSays::Log));
    }
    let rows = [
        ("heat_standard", &asked.heat_standard),
        ("cooling_plan", &asked.cooling_plan),
    ];
    for (field, row) in rows {
        if let Some(row) = row {
            parts.push((field, kept(row)?, FactSays::Standard));
        }
    }
    if let Some(fat) = &asked.fat_percent {
        parts.push(("fat_percent", kept(fat)?, FactSays::Readings));
    }
    if let Some(stuffed) = asked.stuffed {
        parts.push(("stuffed", stuffed.into(), FactSays::Stuffed));
    }
    for (field, now, fact) in parts {
        let told = correcting.field(before, field, now, fact);
        unless_known(told, &mut as_known)?;
    }
    if let Some(error) = as_known.filter(|_| correcting.now.is_empty()) {
        return Err(error);
    }
    let right: StepAsked = request(&correcting.applied(before))?;
    let mut said = Vec::new();
    if correcting.now.contains_key("readings") {
        let readings = Readings::of(right.readings.as_ref(), "readings.")?.all();
        let probe = right.readings.as_ref().and_then(|of| of.probe.as_ref());
        let (probe, against) = measure::probe_of(facts, probe, "readings.probe")?;
        said.extend(against);
        let told = Told {
            of_deed: Some(wrong.id),
            lot: None,
            place: wrong.place_id,
            readings: &readings,
            probe,
        };
        store::measurements::insert_all(facts.tx, facts.deed, &[told])?;
    }
    if correcting.now.contains_key("log") {
        let span = Span {
            began: wrong.began_at.map(|began| began.and_utc()),
            ended: wrong.at.and_utc(),
            zone: facts.kitchen.zone,
        };
        end_stays(heat_log::in_time(&right, &span), &span)?;
        heat_log::read(facts, &right)?;
        said.extend(heat_log::keep(facts, &right)?);
    }
    Ok((correcting, said))
}

/// Says of readings that are of another time than their step what a correction can do about it: it moves no end.
fn end_stays(read: Result<()>, span: &Span) -> Result<()> {
    read.map_err(|error| match error {
        Error::Refused(mut refusal) => {
            let ended = span.ended.with_timezone(&span.zone).naive_local();
            refusal.detail = CorrectDeedSays::EndStays { ended }.into();
            refusal.into()
        }
        error => error,
    })
}

/// What is right of a reading of a lot or a place.
pub fn of_reading(
    facts: &mut Facts<'_, '_>,
    asked: &CorrectionAsked,
    wrong: &DeedRow,
    before: &Map<String, Value>,
) -> Result<(Correcting, Vec<Says>)> {
    let kind = wrong.kind()?;
    let readings = asked.readings.as_ref().map(kept).transpose()?;
    let Some(Value::Object(readings)) = readings else {
        return Err(Error::cannot_be("readings", CorrectDeedSays::Which));
    };
    let minutes = ["hold_minutes", "boiled_minutes"];
    if let Some(field) = minutes.iter().find(|field| readings.contains_key(**field)) {
        let field = format!("readings.{field}");
        return Err(Error::cannot_be(field, CorrectDeedSays::NotOf { kind }));
    }
    let (mut correcting, mut as_known) = (Correcting::default(), None);
    for (field, value) in readings {
        for (scale, other) in SCALES {
            if field == scale && before.contains_key(other) {
                correcting.field(before, other, Value::Null, FactSays::Readings)?;
            }
        }
        let told = correcting.field(before, &field, value, FactSays::Readings);
        unless_known(told, &mut as_known)?;
    }
    if let Some(error) = as_known.filter(|_| correcting.now.is_empty()) {
        return Err(error);
    }
    let mut right = correcting.applied(before);
    right.retain(|_, value| !value.is_null());
    let right: ReadingAsked = request(&right)?;
    let mut read = Readings::of_lot(&right)?.all();
    read.extend(right.grams.map(measure::weighed));
    let (probe, said) = measure::probe_of(facts, right.probe.as_ref(), "readings.probe")?;
    let lots = store::again::roots(facts.tx.conn, wrong.id)?;
    let told = Told {
        of_deed: Some(wrong.id),
        lot: lots.first().copied(),
        place: wrong.place_id,
        readings: &read,
        probe,
    };
    store::measurements::insert_all(facts.tx, facts.deed, &[told])?;
    Ok((correcting, said))
}
