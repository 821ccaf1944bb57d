//! What is told later than it happened reaches what was made of the food in between: the stop that it places,
//! the pack that was open or thawed by then.

use super::{judge_since, write::write_into};
use crate::deeds::facts::Facts;
use crate::deeds::says::CorrectDeedSays;
use crate::error::Result;
use crate::wire::answers::DeedDone;
use chrono::{DateTime, Utc};
use domain::code::LotCode;
use domain::dates::Because;
use domain::grams::Grams;
use domain::lot::{LotId, PackId};
use domain::moment::on_clock;
use domain::plan::{Plan, Reason};
use domain::says::Says;
use domain::words::{DeedKind, Topic};
use std::collections::{BTreeSet, HashMap};
use store::deeds::DeedRow;

/// A stop on a lot, or on a pack of it, from a moment on.
type Since = (i32, LotCode, Option<PackId>, DateTime<Utc>);

/// Judges again what was made since, where a plan on record is about a time before other deeds.
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub fn told(
    facts: &mut Facts<'_, '_>,
    kind: DeedKind,
    plan: &Plan,
    done: &mut DeedDone,
) -> Result<()> {
    let judges = matches!(kind, DeedKind::Correct | DeedKind::Void);
    let holds = matches!(kind, DeedKind::Hold | DeedKind::HoldRelease);
    let moment = facts.moment;
    let stopped = plan.stops.iter().map(|(_, _, stop)| stop.cause.since).min();
    let since = stopped.map_or(moment.at, |since| since.min(moment.at));
    if judges || holds || since >= moment.recorded_at {
        return Ok(());
    }
    let touched = plan.changes.iter().map(|change| change.lot.0);
    let stopped = plan.stops.iter().map(|(lot, ..)| lot.0);
    let said = plan.conditions.iter().map(|(lot, _)| lot.0);
    let lots: BTreeSet<i32> = touched.chain(stopped).chain(said).collect();
    let lots: Vec<i32> = lots.into_iter().collect();
    flag_own(facts, plan, done)?;
    let at = since.naive_utc();
    if !store::again::is_overtaken(facts.tx.conn, facts.deed, &lots, at)? {
        return Ok(());
    }
    let judged = judge_since(facts, lots, since, None)?;
    let by = facts.by.clone();
    let because = Because::house(
        CorrectDeedSays::Told { by, kind },
        CorrectDeedSays::ToldRule,
    );
    write_into(facts, done, judged, &because)
}

/// Judges again what was made since a deed that counts no longer. Was anything?
///
/// # Errors
/// The database is away or full, or the record is damaged.
pub fn undone(
    facts: &mut Facts<'_, '_>,
    deed: &DeedRow,
    why: &str,
    done: &mut DeedDone,
) -> Result<()> {
    let (lots, since) = store::again::told_by(facts.tx.conn, deed.id, deed.at)?;
    if !store::again::is_overtaken(facts.tx.conn, deed.id, &lots, since)? {
        return Ok(());
    }
    let judged = judge_since(facts, lots, since.and_utc(), Some(deed.id))?;
    let (by, kind, why) = (facts.by.clone(), deed.kind()?, why.to_owned());
    let says = CorrectDeedSays::DeedUndone { by, kind, why };
    let because = Because::house(says, CorrectDeedSays::Rule);
    write_into(facts, done, judged, &because)
}

/// Flags what left of the very lots that a deed stops, since it stops them.
fn flag_own(facts: &mut Facts<'_, '_>, plan: &Plan, done: &mut DeedDone) -> Result<()> {
    if plan.stops.is_empty() {
        return Ok(());
    }
    let keys: Vec<i32> = plan.stops.iter().map(|(lot, ..)| lot.0).collect();
    let rows = store::lots::by_keys(facts.tx.conn, &keys)?;
    let mut stops: Vec<Since> = Vec::with_capacity(keys.len());
    for (lot, pack, stop) in &plan.stops {
        if let Some(row) = rows.iter().find(|row| row.id == lot.0) {
            stops.push((lot.0, row.code()?, *pack, stop.cause.since));
        }
    }
    let reasons = left_since(facts, &stops)?;
    let said = reasons
        .iter()
        .map(|(_, reason)| reason.because.says.clone());
    done.said.extend(said);
    let plan = Plan {
        reasons,
        ..Plan::default()
    };
    store::record::plan(facts.tx, facts.deed, &facts.moment, &plan)?;
    Ok(())
}

/// What left while stops stood that nobody knew of: the flag of each lot.
///
/// # Errors
/// The database is away.
pub fn left_since(facts: &mut Facts<'_, '_>, stops: &[Since]) -> Result<Vec<(LotId, Reason)>> {
    let mut keys: Vec<i32> = stops.iter().map(|(lot, ..)| *lot).collect();
    keys.dedup();
    let mut by_lot: HashMap<i32, Vec<&Since>> = HashMap::new();
    for stop in stops {
        by_lot.entry(stop.0).or_default().push(stop);
    }
    let mut reasons = Vec::new();
    for left in store::again::left(facts.tx.conn, facts.deed, &keys)? {
        let of = by_lot.get(&left.lot_id).into_iter().flatten();
        let stood = of.copied().find(|(_, _, pack, since)| {
            pack.is_none_or(|pack| pack.0 == left.pack_id) && *since <= left.at.and_utc()
        });
        let Some((lot, code, ..)) = stood else {
            continue;
        };
        let says = Says::from(CorrectDeedSays::LeftSince {
            lot: code.clone(),
            kind: DeedKind::parse(&left.kind).unwrap_or(DeedKind::Sell),
            grams: Grams::from_milligrams(left.mg),
            at: on_clock(left.at.and_utc(), facts.kitchen.zone),
        });
        let because = Because::house(says, CorrectDeedSays::ToldRule);
        let topic = Topic::Stop;
        reasons.push((LotId(*lot), Reason { topic, because }));
    }
    Ok(reasons)
}
