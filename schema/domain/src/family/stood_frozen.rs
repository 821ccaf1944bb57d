//! For how long the meat in a lot stood frozen, and how hot it was, by what is on record of it and of what it came from.

use super::{Family, Relative};
use crate::lot::{DeedId, LotId};
use crate::measure::Temperature;
use crate::words::{Account, DeedKind, State};
use chrono::{DateTime, TimeDelta, Utc};
use std::collections::{BTreeSet, HashMap};

/// For how long at the most all the meat in a lot that may carry trichinae stood frozen until then: of several
/// packs of one lot the one that did longest counts, of several meats the one that did shortest. The family was
/// loaded with the packs and the history of all of them.
pub fn stood_frozen(family: &Family, lot: LotId, until: DateTime<Utc>) -> TimeDelta {
    let mut known = HashMap::new();
    stood(family, lot, until, &mut known)
}

/// The meat that a lot is made of and that may carry trichinae, itself among it; what was ready when it went in is
/// left out.
pub fn carrying(family: &Family, lot: LotId) -> Vec<&Relative> {
    let mut open = vec![lot];
    let mut seen: BTreeSet<LotId> = BTreeSet::new();
    let mut found = Vec::new();
    while let Some(lot) = open.pop() {
        let Some(of) = family.get(lot).filter(|_| seen.insert(lot)) else {
            continue;
        };
        found.push(of);
        open.extend(raw_meat(family, lot).map(|part| part.lot.id));
    }
    found
}

/// What heat a lot and what it came from saw.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HeatOnRecord {
    /// No step with heat in it.
    Never,
    /// No hotter than this, by the logs of all of its hot steps.
    UpTo(Temperature),
    /// A hot step without a log tells nothing of how hot it was.
    Untold,
}

/// What heat a lot saw, by its steps and those of its meat.
pub fn heat_on_record(family: &Family, lot: LotId) -> HeatOnRecord {
    use DeedKind::{Cook, Render, Smoke};
    let mut steps: BTreeSet<DeedId> = BTreeSet::new();
    let is_hot = |kind: DeedKind| matches!(kind, Cook | Smoke | Render);
    let line = carrying(family, lot).into_iter();
    for of in line {
        if is_hot(of.made_by.kind) {
            steps.insert(of.lot.made_by);
        }
        // What a step made is asked of that; a smoking that made nothing is told of the piece itself.
        let did = of.history.iter().filter(|did| !did.voided);
        let noted = did.filter(|did| is_hot(did.kind) && did.account != Account::Used);
        steps.extend(noted.map(|did| did.deed));
    }
    let cores: Option<Vec<Temperature>> = { steps.iter() }
        .map(|step| family.cores.get(step).copied())
        .collect();
    match (steps.is_empty(), cores) {
        (true, _) => HeatOnRecord::Never,
        (false, Some(cores)) => {
            let hottest = cores.into_iter().max();
            hottest.map_or(HeatOnRecord::Untold, HeatOnRecord::UpTo)
        }
        (false, None) => HeatOnRecord::Untold,
    }
}

fn raw_meat(family: &Family, lot: LotId) -> impl Iterator<Item = &Relative> {
    let uses = family.ancestry.uses_of(lot).iter();
    let parts = uses.filter_map(|part| family.get(part.lot));
    parts.filter(|of| {
        let mut species = of.lot.species.iter();
        species.any(|of| of.may_carry_trichinae()) && !of.lot.condition().is_ready()
    })
}

fn stood(
    family: &Family,
    lot: LotId,
    until: DateTime<Utc>,
    known: &mut HashMap<(LotId, DateTime<Utc>), TimeDelta>,
) -> TimeDelta {
    if let Some(known) = known.get(&(lot, until)) {
        return *known;
    }
    let Some(of) = family.get(lot) else {
        return TimeDelta::zero();
    };
    let parts: Vec<LotId> = raw_meat(family, lot).map(|part| part.lot.id).collect();
    let before = parts.into_iter();
    let before = before.map(|part| stood(family, part, of.lot.made_at, known));
    let stood = own(of, until) + before.min().unwrap_or(TimeDelta::zero());
    known.insert((lot, until), stood);
    stood
}

/// How long the pack of a lot that was frozen longest was so, until then.
fn own(of: &Relative, until: DateTime<Utc>) -> TimeDelta {
    let mut packs: BTreeSet<u32> = of.history.iter().map(|did| did.pack).collect();
    packs.extend(of.lot.packs.iter().map(|pack| pack.number));
    packs.insert(1);
    let each = packs.into_iter().map(|pack| {
        let changes = of
            .history
            .iter()
            .filter(|did| did.pack == pack && !did.voided);
        let changes = changes.filter(|did| did.at <= until);
        let mut changes: Vec<(DateTime<Utc>, State)> = changes
            .filter_map(|did| Some((did.at, did.state?)))
            .collect();
        changes.sort_by_key(|(at, _)| *at);
        let mut frozen = TimeDelta::zero();
        let (mut since, mut state) = (of.lot.made_at, of.born_state);
        for (at, next) in changes.into_iter().chain([(until, of.born_state)]) {
            if state == State::Frozen {
                frozen += (at - since).max(TimeDelta::zero());
            }
            (since, state) = (at, next);
        }
        frozen
    });
    each.max().unwrap_or(TimeDelta::zero())
}
