//! The temperatures that are on record of a lot, by whatever deed: its readings, what steps read of it, their logs, and
//! what was read of what it was made of.

use super::again::{effective, request};
use super::degrees;
use super::facts::Facts;
use super::heat_log;
use crate::error::Result;
use crate::wire::asked::StepAsked;
use chrono::{DateTime, Utc};
use domain::heat::CoreReading;
use domain::lot::Lot;
use domain::measure::Temperature;
use domain::words::{ProductKind, StepKind};
use store::lots::LotRow;
use store::{measurements, occupants};

/// A temperature: when, and how warm.
pub type Read = (DateTime<Utc>, Temperature);

/// What is made in a kitchen goes through fewer steps before heat makes it something else.
const STEPS_BACK: usize = 12;

/// What was read of a lot itself, the earliest first.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(facts: &mut Facts<'_, '_>, lot: &LotRow, kind: ProductKind) -> Result<Vec<Read>> {
    let mut all = Vec::new();
    for (at, quantity, millionths) in measurements::of_lot(facts.tx.conn, lot.id)? {
        all.extend(Temperature::read(quantity, millionths).map(|read| (at.and_utc(), read)));
    }
    let steps = store::deeds::that_read(facts.tx.conn, lot.id, lot.deed_id)?;
    let keys: Vec<i32> = steps.iter().map(|deed| deed.id).collect();
    let corrections = store::corrections::of_deeds(facts.tx.conn, &keys)?;
    for deed in &steps {
        if StepKind::parse(&deed.kind).is_none() {
            continue;
        }
        let asked: StepAsked = request(&effective(deed, &corrections)?)?;
        all.extend(of_step(facts, &asked, deed.at.and_utc(), kind)?);
    }
    all.sort_by_key(|(at, _)| *at);
    Ok(all)
}

/// What a step read of what it is about.
pub fn of_step(
    facts: &Facts<'_, '_>,
    asked: &StepAsked,
    at: DateTime<Utc>,
    kind: ProductKind,
) -> Result<Vec<Read>> {
    let log: Vec<CoreReading> = { heat_log::points(asked)?.into_iter() }
        .map(|(_, point)| point)
        .collect();
    let hot = facts.law().heat.come_up.as_ref();
    let is_hot = |read: &CoreReading| hot.is_some_and(|hot| read.core.reaches(&hot.to));
    let mut all: Vec<Read> = match (log.first(), log.last()) {
        // How it cools from its heat, or from the warmth of the animal, is judged as a cooling.
        (Some(first), Some(last))
            if last.core < first.core && (is_hot(first) || kind == ProductKind::Carcass) =>
        {
            vec![(last.at, last.core)]
        }
        _ => log.iter().map(|point| (point.at, point.core)).collect(),
    };
    if let Some(read) = &asked.readings {
        let (celsius, fahrenheit) = (read.celsius, read.fahrenheit);
        let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, "readings.")?;
        all.extend(read.map(|read| (at, read)));
    }
    Ok(all)
}

/// Since when what a lot was made of had been read warm and not cold again, where it went in so; what is made with heat
/// begins anew.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn warm_before(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    is_warm: &dyn Fn(&Facts<'_, '_>, Temperature) -> Result<bool>,
) -> Result<Option<DateTime<Utc>>> {
    let kind = lot.product.kind;
    let is_ready = lot.condition().is_ready();
    let mut earliest: Option<DateTime<Utc>> = None;
    let mut seen = vec![lot.id.0];
    // A lot, and when the first of its readings after which nothing cold was read is known further on.
    let mut open: Vec<(i32, Option<DateTime<Utc>>)> = vec![(lot.id.0, None)];
    for _ in 0..STEPS_BACK {
        for (key, after) in std::mem::take(&mut open) {
            let row = store::lots::by_keys(facts.tx.conn, &[key])?.remove(0);
            if made_with_heat(facts, &row)? {
                continue;
            }
            for (part, _, used) in occupants::parts_of(facts.tx.conn, key)? {
                let of_kind = part.condition()?.is_some_and(|of| of.is_ready());
                if of_kind != is_ready || seen.contains(&part.id) {
                    continue;
                }
                seen.push(part.id);
                let read = of_lot(facts, &part, kind)?;
                let mut since = after;
                let mut was_cold = false;
                for (at, read) in read.iter().rev() {
                    if *at > used.and_utc() {
                        continue;
                    }
                    if !is_warm(facts, *read)? {
                        was_cold = true;
                        break;
                    }
                    since = Some(*at);
                }
                earliest = match (earliest, since) {
                    (Some(one), Some(other)) => Some(one.min(other)),
                    (one, other) => one.or(other),
                };
                if !was_cold {
                    open.push((part.id, since));
                }
            }
        }
    }
    Ok(earliest)
}

/// Was it made with heat?
///
/// # Errors
/// The database is away.
pub fn made_with_heat(facts: &mut Facts<'_, '_>, lot: &LotRow) -> Result<bool> {
    let makers = store::deeds::by_keys(facts.tx.conn, &[lot.deed_id])?;
    let of_heat = |kind| matches!(kind, StepKind::Cook | StepKind::Render | StepKind::Smoke);
    let mut makers = makers.iter();
    Ok(makers.any(|deed| StepKind::parse(&deed.kind).is_some_and(of_heat)))
}
