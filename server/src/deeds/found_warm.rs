//! A warm reading of a lot or a place, by whatever deed, held against the readings before and after it.

use super::facts::Facts;
use super::measure::held_right;
use super::says::HeatDeedSays;
use super::{again, happened, place, warm_before, warm_record};
use crate::error::Result;
use crate::wire::answers::DeedDone;
use crate::wire::asked::StepAsked;
use chrono::{DateTime, TimeDelta, Utc};
use domain::code::LotCode;
use domain::deed::found_warm::{self, Found};
use domain::deed::place_failure::{self, PlaceFailure};
use domain::lot::{DeedId, Lot, Pack, PackId};
use domain::measure::Temperature;
use domain::plan::Plan;
use domain::rows::Finding;
use domain::stop::Cause;
use domain::words::{DeedKind, PlaceKind, State, Topic};
use std::collections::HashSet;
use store::lots::{self, LotRow};
use store::packs::PackChoice;
use store::places::{self, PlaceRead};

/// Judges a reading that is on record now; it is never refused, as nothing that was read is: two warm ones too far apart
/// are a stop.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn judge(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    read: Temperature,
    plan: &mut Plan,
) -> Result<()> {
    let Some(mut all) = of_lot(facts, lot)? else {
        return Ok(());
    };
    let now = all.clone();
    let is = (facts.moment.at, is_warm(facts, lot, read)?);
    if let Some(nth) = all.iter().rposition(|of| *of == is) {
        all.remove(nth);
    }
    if let Some((finding, cause)) = told(facts, lot, &all, &now) {
        plan.warnings.push(finding.with_sources(&facts.law().rows));
        plan.stops.push((lot.id, None, cause.into()));
    }
    Ok(())
}

/// Judges what a step, which is on record now, read of what it made, or of what it is about where it made nothing: two warm
/// readings too far apart are a limit that was broken.
///
/// # Errors
/// 422 `limit` where it is not taken as it happened.
pub fn of_step(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    (inputs, made): (&[Lot], &[LotCode]),
    as_it_happened: bool,
    done: &mut DeedDone,
) -> Result<()> {
    let (log, readings) = (asked.log.as_ref(), asked.readings.as_ref());
    let read = readings.is_some_and(|of| of.celsius.is_some() || of.fahrenheit.is_some());
    if !read && log.is_none_or(Vec::is_empty) {
        return Ok(());
    }
    let made = made.iter();
    let made = made.map(|code| (code.clone(), PackChoice::OnHand, "outputs".to_owned()));
    let made = facts.lots(&made.collect::<Vec<_>>())?;
    let about = if made.is_empty() { inputs } else { &made };
    let mut found = Plan::default();
    for lot in about {
        let Some(now) = of_lot(facts, lot)? else {
            continue;
        };
        let at = facts.moment.at;
        let mut before = now.clone();
        for (at, read) in warm_record::of_step(facts, asked, at, lot.product.kind)? {
            let is = (at, is_warm(facts, lot, read)?);
            if let Some(nth) = before.iter().rposition(|of| *of == is) {
                before.remove(nth);
            }
        }
        let Some((finding, cause)) = told(facts, lot, &before, &now) else {
            continue;
        };
        let field = match log.is_some_and(|log| !log.is_empty()) {
            true => "log",
            false => "readings",
        };
        if !as_it_happened {
            let findings = vec![finding.with_sources(&facts.law().rows)];
            let says = HeatDeedSays::Warm { findings };
            happened::broken(facts, field, Topic::Cold, says, &[finding], false)?;
            continue;
        }
        found.warnings.push(finding.with_sources(&facts.law().rows));
        found.stops.push((lot.id, None, cause.into()));
    }
    write(facts, &found, done)
}

/// Judges lots of which something that was read counts no longer, or otherwise: `before` it did, by lot.
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub fn since(facts: &mut Facts<'_, '_>, before: &[Known], done: &mut DeedDone) -> Result<()> {
    let mut found = Plan::default();
    for (lot, before) in before {
        let now = of_lot(facts, lot)?.unwrap_or_default();
        if let Some((finding, cause)) = told(facts, lot, before, &now) {
            found.warnings.push(finding.with_sources(&facts.law().rows));
            found.stops.push((lot.id, None, cause.into()));
        }
    }
    write(facts, &found, done)
}

/// What is known of lots, before something that was read of them is said to be otherwise.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn known(facts: &mut Facts<'_, '_>, lots: &[i32]) -> Result<Vec<Known>> {
    let mut known = Vec::new();
    for row in lots::by_keys(facts.tx.conn, lots)? {
        let lot = facts.lot(&row.code()?, PackChoice::OnHand)?;
        if let Some(all) = of_lot(facts, &lot)? {
            known.push((lot, all));
        }
    }
    Ok(known)
}

/// A lot, and what was read of it.
pub type Known = (Lot, Vec<Found>);

fn write(facts: &mut Facts<'_, '_>, found: &Plan, done: &mut DeedDone) -> Result<()> {
    if found.stops.is_empty() {
        return Ok(());
    }
    store::record::plan(facts.tx, facts.deed, &facts.moment, found)?;
    done.said.extend(found.warnings.iter().cloned());
    again::told(facts, DeedKind::Measure, found, done)
}

fn told(
    facts: &Facts<'_, '_>,
    lot: &Lot,
    before: &[Found],
    now: &[Found],
) -> Option<(Finding, Cause)> {
    let rules = facts.law().heat.failure.as_ref()?;
    found_warm::judge(lot, before, now, rules, &facts.law().rows)
}

/// Whether a lot was too warm each time that it, or what it was made of, was read; nothing where that says nothing of it.
fn of_lot(facts: &mut Facts<'_, '_>, lot: &Lot) -> Result<Option<Vec<Found>>> {
    if facts.law().heat.failure.is_none() || !lot.needs_cold() {
        return Ok(None);
    }
    let row = lots::by_keys(facts.tx.conn, &[lot.id.0])?.remove(0);
    let cooled = cooled_by(facts, &row)?;
    let mut all = Vec::new();
    let warm = |facts: &Facts<'_, '_>, read| is_warm(facts, lot, read);
    all.extend(warm_record::warm_before(facts, lot, &warm)?.map(|since| (since, true)));
    for (at, read) in warm_record::of_lot(facts, &row, lot.product.kind)? {
        if at >= cooled {
            all.push((at, is_warm(facts, lot, read)?));
        }
    }
    Ok(Some(all))
}

/// What a warm reading of a place, which is on record now, does to what has stood there since an earlier one with nothing
/// cold read in between: the place did not stay cold all that time, as far as anybody knows.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_place(facts: &mut Facts<'_, '_>, place: &str) -> Result<Plan> {
    let heat = facts.law().heat.clone();
    let (Some(rules), Some(stands)) = (heat.failure.as_ref(), facts.place) else {
        return Ok(Plan::default());
    };
    let entry = place::entry(facts, place)?;
    if !matches!(entry.kind.0, PlaceKind::Storage | PlaceKind::Counter) {
        return Ok(Plan::default());
    }
    let told = places::read_of(facts.tx.conn, stands.0)?.into_iter();
    let degrees = |of: PlaceRead| {
        Some((
            of.at.and_utc(),
            Temperature::read(of.quantity, of.millionths)?,
        ))
    };
    let read: Vec<(DateTime<Utc>, Temperature)> = told.filter_map(degrees).collect();
    let warm = |(at, read): &(DateTime<Utc>, Temperature)| (*at, !rules.cold.allows(*read));
    let all: Vec<Found> = read.iter().map(warm).collect();
    let nth = all.iter().rposition(|(at, _)| *at == facts.moment.at);
    let run = nth.and_then(|nth| found_warm::run(&all, nth));
    let Some((from, until)) = run.filter(|(from, until)| from < until) else {
        return Ok(Plan::default());
    };
    let within = |(at, _): &(DateTime<Utc>, Temperature)| (from..=until).contains(at);
    let failure = PlaceFailure {
        place: entry.name.0,
        from,
        until,
        readings: read.into_iter().filter(within).collect(),
    };
    // What came in meanwhile did not stand there so long.
    let first = place::stood(facts, stands, &[from])?;
    let packs = first.iter().flat_map(|lot| &lot.packs);
    let there: HashSet<PackId> = packs.map(|pack| pack.id).collect();
    let mut lots = place::stood(facts, stands, &place::moments(&failure, &heat))?;
    for lot in &mut lots {
        lot.packs.retain(|pack| there.contains(&pack.id));
    }
    lots.retain(|lot| !lot.packs.is_empty());
    if lots.is_empty() {
        return Ok(Plan::default());
    }
    let others = warm_before::spells(facts, &lots, DeedId(facts.deed))?;
    let plan = place_failure::plan(&failure, &lots, &others, &heat, &facts.law().rows);
    Ok(match plan.stops.is_empty() {
        true => Plan::default(),
        false => plan,
    })
}

/// Too warm for what it is, and not hot: what is kept hot is kept right. What stands in the warm, or is gone, is held
/// against what food in a place that failed is.
fn is_warm(facts: &Facts<'_, '_>, lot: &Lot, read: Temperature) -> Result<bool> {
    let heat = &facts.law().heat;
    let is_hot = heat.come_up.as_ref();
    if is_hot.is_some_and(|hot| read.reaches(&hot.to)) || !lot.needs_cold() {
        return Ok(false);
    }
    let kept_cold = |pack: &Pack| pack.now.state == State::Chilled;
    if lot.on_hand().any(kept_cold) || lot.product.is_hung() {
        return Ok(!held_right(facts, read, lot)?.is_empty());
    }
    let rules = heat.failure.as_ref();
    Ok(rules.is_some_and(|rules| !rules.cold.allows(read)))
}

/// When what was made with heat is cold at the latest: how it cools is judged by its log.
fn cooled_by(facts: &mut Facts<'_, '_>, lot: &LotRow) -> Result<DateTime<Utc>> {
    let cooling = match warm_record::made_with_heat(facts, lot)? {
        true => facts.law().heat.cooled_within(),
        false => TimeDelta::zero(),
    };
    Ok(lot.made_at.and_utc() + cooling)
}
