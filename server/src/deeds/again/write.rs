//! Writing down what was judged again: what changed of each lot, why, and by whom.

use super::kin::{Kin, State};
use super::{Judged, left, lists, told};
use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::wire::answers::{ChangeRead, DeedDone, Turned};
use crate::wrong_labels;
use domain::condition::Condition;
use domain::dates::Because;
use domain::deed::again::{BornAs, stops_differ};
use domain::lot::{LotId, PackId, PackNow};
use domain::plan::{Plan, Reason};
use domain::stop::StopId;
use domain::words::{DeedKind, Disposal, Quantity, Topic};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use store::again::{JudgedLot, StopOf};

/// What is otherwise of one lot.
pub(super) struct Change {
    pub(super) lot: i32,
    condition: Option<Turned<Option<Condition>>>,
    dated: bool,
    new: Vec<StopOf>,
    ended: Vec<StopId>,
    told: ChangeRead,
}

impl Change {
    /// Was it taken for ready to eat, and is not?
    pub(super) fn is_ready_no_more(&self) -> bool {
        let ready = |of: &Option<Condition>| of.is_some_and(|of| of.is_ready());
        self.condition
            .as_ref()
            .is_some_and(|of| ready(&of.was) && !ready(&of.now))
    }
}

/// Writes everything down under the deed that asked for it; its answer comes back. `because` says on each lot
/// what was corrected, and by whom.
///
/// # Errors
/// The database is away or full.
pub fn write(
    facts: &mut Facts<'_, '_>,
    uid: String,
    kind: DeedKind,
    judged: Judged,
    because: &Because,
) -> Result<DeedDone> {
    let roots = judged.roots.clone();
    let mut done = facts.record(uid, kind, &Plan::default())?;
    write_into(facts, &mut done, judged, because)?;
    let rows = store::lots::by_keys(facts.tx.conn, &roots)?;
    done.lots.extend(facts.briefs(&rows)?);
    Ok(done)
}

/// Writes everything down under a deed that is on record, and tells it in its answer.
///
/// # Errors
/// The database is away or full.
pub fn write_into(
    facts: &mut Facts<'_, '_>,
    done: &mut DeedDone,
    judged: Judged,
    because: &Because,
) -> Result<()> {
    let Judged { mut kin, roots } = judged;
    let mut keys: Vec<i32> = kin.all.family.iter().copied().collect();
    keys.retain(|lot| kin.lots[lot].changed);
    let mut changes = Vec::with_capacity(keys.len());
    for lot in keys {
        changes.extend(change(facts, &kin, lot)?);
    }
    let mut plan = Plan::default();
    let mut packs: Vec<Vec<(PackId, PackNow)>> = Vec::with_capacity(changes.len());
    let ended: BTreeSet<StopId> = changes
        .iter()
        .flat_map(|of| of.ended.iter().copied())
        .collect();
    for of in &changes {
        reasons(&mut plan, &kin.lots[&of.lot], of, because);
        let now = of.condition.as_ref().and_then(|turned| turned.now);
        plan.conditions.extend(now.map(|now| (LotId(of.lot), now)));
        plan.ends.extend(ends(&kin, of, &ended));
        packs.push(match of.dated {
            true => packs_now(&mut kin, of.lot)?,
            false => Vec::new(),
        });
    }
    left_since(facts, done, &mut plan, &mut kin, &changes)?;
    // What a pack declares to be in it, and which salts a bag holds, stands on the label of everything made of it,
    // which is otherwise as it was.
    let retold = changes.iter().any(|of| of.told.ingredients.is_some())
        || changes.iter().any(|of| salts_differ(&kin, of.lot));
    let keys: Vec<i32> = match retold {
        true => kin.all.family.iter().copied().collect(),
        false => changes.iter().map(|of| of.lot).collect(),
    };
    let listed = match retold {
        true => lists::of_lots(facts, &keys)?,
        false => HashMap::new(),
    };
    store::record::plan(facts.tx, facts.deed, &facts.moment, &plan)?;
    let new = changes.iter().flat_map(|of| of.new.iter().cloned());
    store::again::place(facts.tx, facts.deed, new.collect())?;
    let lots = changes.iter().zip(packs).map(|(of, packs)| {
        let state = &kin.lots[&of.lot];
        JudgedLot {
            row: &kin.all.lots[&of.lot],
            born: &state.now,
            packs,
            measured: &state.measured,
        }
    });
    store::again::write(facts.tx, facts.deed, &lots.collect::<Vec<_>>())?;
    let at = facts.moment.at.naive_utc();
    // Where an animal lived and died stands on the label of everything made of it, too.
    let labelled: Vec<i32> = match kin.is_of_an_animal(&roots) {
        true => kin.all.family.iter().copied().collect(),
        false => keys.clone(),
    };
    let lists = &facts.standing.lists;
    wrong_labels::may_say_else(facts.app, facts.tx, lists, &labelled, at)?;
    let mut told: Vec<(i32, ChangeRead)> =
        changes.into_iter().map(|of| (of.lot, of.told)).collect();
    if retold {
        lists_differ(facts, &kin, &keys, &listed, &mut told)?;
    }
    done.changes = told.into_iter().map(|(_, of)| of).collect();
    Ok(())
}

/// Are there other salts in a bag than was believed, so that other names stand in the list?
fn salts_differ(kin: &Kin, lot: i32) -> bool {
    const SALTS: [Quantity; 4] = [
        Quantity::NitritePercent,
        Quantity::NitratePercent,
        Quantity::PotassiumNitritePercent,
        Quantity::PotassiumNitratePercent,
    ];
    let now = &kin.lots[&lot].measured;
    let was = kin.all.readings.get(&lot).into_iter().flatten();
    let was: Vec<(&str, i64)> = was
        .map(|of| (of.quantity.as_str(), of.millionths))
        .collect();
    let holds = |quantity: &Quantity| {
        let before = was.iter().rev().find(|(of, _)| *of == quantity.as_str());
        let after = now.iter().find(|of| of.quantity == *quantity);
        let after = after.map(|of| of.millionths > 0);
        (before.is_some_and(|(_, of)| *of > 0), after)
    };
    let differs = |(before, after): (bool, Option<bool>)| after.unwrap_or(false) != before;
    let is_told = now.iter().any(|of| SALTS.contains(&of.quantity));
    is_told && SALTS.iter().map(holds).any(differs)
}

/// Tells of every lot whose own ingredient list is another one now.
fn lists_differ(
    facts: &mut Facts<'_, '_>,
    kin: &Kin,
    keys: &[i32],
    before: &HashMap<i32, lists::Texts>,
    told: &mut Vec<(i32, ChangeRead)>,
) -> Result<()> {
    let mut now = lists::of_lots(facts, keys)?;
    let nth = told.iter().enumerate();
    let nth: HashMap<i32, usize> = nth.map(|(nth, (lot, _))| (*lot, nth)).collect();
    for lot in keys {
        let (Some(was), Some(now)) = (before.get(lot), now.remove(lot)) else {
            continue;
        };
        let Some(differs) = Turned::between(was.clone(), now) else {
            continue;
        };
        match nth.get(lot).map(|nth| &mut told[*nth].1.ingredients) {
            Some(known) if known.is_some() => {}
            Some(known) => *known = Some(differs),
            None => told.push((
                *lot,
                ChangeRead {
                    lot: kin.all.lots[lot].code.clone(),
                    product: kin.lots[lot].product.code.clone(),
                    ingredients: Some(differs),
                    ..ChangeRead::default()
                },
            )),
        }
    }
    Ok(())
}

/// Flags what left of lots while a stop stood that nobody knew of, or as something else than it is.
fn left_since(
    facts: &mut Facts<'_, '_>,
    done: &mut DeedDone,
    plan: &mut Plan,
    kin: &mut Kin,
    changes: &[Change],
) -> Result<()> {
    let stops = changes.iter().flat_map(|of| &of.new);
    let stops = stops.map(|of| {
        let code = kin.all.lots[&of.lot].code()?;
        Ok((of.lot, code, of.pack, of.stop.cause.since))
    });
    let stops = stops.collect::<Result<Vec<_>>>()?;
    let mut reasons = told::left_since(facts, &stops)?;
    reasons.extend(left::otherwise(facts, kin, changes)?);
    let said = reasons
        .iter()
        .map(|(_, reason)| reason.because.says.clone());
    done.said.extend(said);
    plan.reasons.extend(reasons);
    Ok(())
}

/// What is otherwise of a lot; nothing where it is as it was after all.
fn change(facts: &Facts<'_, '_>, kin: &Kin, lot: i32) -> Result<Option<Change>> {
    let (state, row) = (&kin.lots[&lot], &kin.all.lots[&lot]);
    let said = kin.all.conditions.get(&lot).and_then(|all| all.last());
    let was = match said {
        Some(said) => Condition::parse(&said.condition),
        None => row.condition()?,
    };
    let condition = Turned::between(was, state.condition());
    let recorded = kin.recorded_stops(lot)?;
    let judged: Vec<_> = state.stops.iter().map(|of| of.stop.clone()).collect();
    let differ = stops_differ(&recorded, &judged);
    let new: Vec<StopOf> = differ
        .new
        .iter()
        .map(|nth| {
            let of = &state.stops[*nth];
            StopOf {
                lot,
                pack: of.stop.0,
                stop: of.stop.1.clone(),
                named: of.id,
            }
        })
        .collect();
    let standing = |id: &StopId| {
        let placed = recorded.iter().find(|placed| placed.id == *id);
        placed.filter(|placed| !kin.is_ended(placed.id.0, placed.root.0))
    };
    let gone: Vec<_> = differ.ended.iter().filter_map(standing).collect();
    let dated = !state.now.is_dated_as(&state.was);
    let is_same = condition.is_none()
        && new.is_empty()
        && gone.is_empty()
        && state.measured.is_empty()
        && state.now == state.was;
    if is_same {
        return Ok(None);
    }
    let say = |says| facts.speech.say(says);
    let kinds = |condition: Option<Condition>| {
        condition.map_or_else(String::new, |of| of.is.as_str().to_owned())
    };
    let told = ChangeRead {
        lot: row.code.clone(),
        product: state.product.code.clone(),
        condition: condition
            .as_ref()
            .and_then(|of| Turned::between(kinds(of.was), kinds(of.now))),
        allergens: Turned::between(words(&state.was.allergens), words(&state.now.allergens)),
        may_contain: Turned::between(words(&state.was.may_contain), words(&state.now.may_contain)),
        ingredients: Turned::between(listed(&state.was), listed(&state.now)),
        species: Turned::between(words(&state.was.species), words(&state.now.species)),
        use_by: Turned::between(
            state.was.born.use_by.map(|day| day.to_string()),
            state.now.born.use_by.map(|day| day.to_string()),
        ),
        stops: new
            .iter()
            .map(|of| say(&of.stop.cause.because.says))
            .collect(),
        ended: gone.iter().map(|of| say(&of.cause.because.says)).collect(),
        labels: (condition.is_some() || state.now != state.was)
            .then(|| format!("/api/lots/{}/labels.pdf", row.code)),
    };
    Ok(Some(Change {
        lot,
        condition,
        dated,
        new,
        ended: gone.iter().map(|of| of.id).collect(),
        told,
    }))
}

/// The ingredients as a pack declares them, by language.
fn listed(of: &BornAs) -> BTreeMap<String, String> {
    let supplied = of.supplied.as_ref();
    supplied.map_or(BTreeMap::new(), |of| of.ingredients.clone())
}

fn words<T: ToString>(all: &BTreeSet<T>) -> Vec<String> {
    all.iter().map(T::to_string).collect()
}

/// What was corrected, and the links of the judgement as it is now, by topic.
fn reasons(plan: &mut Plan, state: &State, of: &Change, because: &Because) {
    let mut add = |topic: Topic, because: &Because| {
        let because = because.clone();
        plan.reasons
            .push((LotId(of.lot), Reason { topic, because }));
    };
    add(Topic::Correction, because);
    for reason in &state.reasons {
        let told = match reason.topic {
            Topic::Condition => of.condition.is_some(),
            Topic::Date => of.dated || of.condition.is_some(),
            _ => true,
        };
        if told {
            add(reason.topic, &reason.because);
        }
    }
    if of.condition.is_some() {
        for link in state.shown() {
            add(Topic::Condition, link);
        }
    }
}

/// The stops that end; what ends with the first of its line needs no end of its own.
fn ends(kin: &Kin, of: &Change, ended: &BTreeSet<StopId>) -> Vec<(StopId, Disposal)> {
    let root = |stop: &StopId| {
        let rows = kin.all.stops.get(&of.lot).into_iter().flatten();
        let mut rows = rows.filter(|row| row.id == stop.0);
        rows.next().map_or(*stop, |row| StopId(row.root_id))
    };
    let own = of.ended.iter().filter(|stop| {
        let root = root(stop);
        root == **stop || !ended.contains(&root)
    });
    own.map(|stop| (*stop, Disposal::PutRight)).collect()
}

/// The packs of a lot that are otherwise once its birth is.
fn packs_now(kin: &mut Kin, lot: i32) -> Result<Vec<(PackId, PackNow)>> {
    let packs = kin.packs_of(lot);
    let mut changed = Vec::new();
    for pack in packs {
        let was = kin.all.packs[&pack].pack()?.now;
        let now = kin.pack_before(lot, pack, i32::MAX)?;
        if was != now {
            changed.push((PackId(pack), now));
        }
    }
    Ok(changed)
}
