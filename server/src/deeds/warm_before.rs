//! The other times at which what stood in a failed place was warm: food may be warm once, and so they are added up.
//! What was cut or packed of something brings along what that went through.

use super::facts::Facts;
use super::place_late;
use crate::error::Result;
use chrono::NaiveDateTime;
use domain::condition::Condition;
use domain::deed::place_failure::{PlaceFailure, Spells};
use domain::lot::{DeedId, Lot, PackId};
use std::collections::HashMap;
use store::occupants;

/// So many steps back: what is cut and packed in a kitchen goes through fewer.
const STEPS_BACK: usize = 12;

/// A pack whose warm times count for another, until it went into that.
struct Kin {
    of: PackId,
    until: Option<NaiveDateTime>,
}

/// The warm times of the packs of some lots, but for one failure.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn spells(facts: &mut Facts<'_, '_>, lots: &[Lot], but: DeedId) -> Result<Spells> {
    let mut spells = Spells::new();
    let Some(rules) = facts.law().heat.failure.clone() else {
        return Ok(spells);
    };
    let mut kin: HashMap<i32, Vec<Kin>> = HashMap::new();
    let mut since = facts.moment.at.naive_utc();
    for lot in lots {
        since = since.min(lot.made_at.naive_utc());
        for pack in &lot.packs {
            let of = pack.id;
            kin.entry(of.0).or_default().push(Kin { of, until: None });
        }
        since = since.min(went_in(facts, lot, &mut kin)?);
    }
    let packs: Vec<i32> = kin.keys().copied().collect();
    for failed in store::deeds::failures_anywhere(facts.tx.conn, since)? {
        let Some(at) = failed.place_id.filter(|_| failed.id != but.0) else {
            continue;
        };
        let failure: PlaceFailure = place_late::told(facts, &failed)?;
        if failure.warm_spell(&rules.cold).is_none() {
            continue;
        }
        // Each was warm as long as it stood there: what came in later, or was carried away, for less than it lasted.
        let time = (failure.from.naive_utc(), failure.until.naive_utc());
        for one in occupants::between(facts.tx.conn, at, time, Some(&packs))? {
            let stay = [(one.stay.0.and_utc(), one.stay.1.and_utc())];
            let part = failure.while_there(&stay);
            let Some((from, until)) = part.and_then(|part| part.warm_spell(&rules.cold)) else {
                continue;
            };
            for each in kin.get(&one.pack).into_iter().flatten() {
                let ends = each.until.map_or(until, |used| until.min(used.and_utc()));
                if from < ends {
                    spells.entry(each.of).or_default().push((from, ends));
                }
            }
        }
    }
    Ok(spells)
}

/// The packs that went into a lot and were then what it is, ready or not: heat begins anew. Tells when the first of
/// them was made.
fn went_in(
    facts: &mut Facts<'_, '_>,
    lot: &Lot,
    kin: &mut HashMap<i32, Vec<Kin>>,
) -> Result<NaiveDateTime> {
    let is_ready = lot.condition.is_some_and(Condition::is_ready);
    let mut first = lot.made_at.naive_utc();
    let mut seen = vec![lot.id.0];
    let mut open = vec![(lot.id.0, None)];
    for _ in 0..STEPS_BACK {
        for (key, until) in std::mem::take(&mut open) {
            for (part, pack, used) in occupants::parts_of(facts.tx.conn, key)? {
                if part.condition()?.is_some_and(Condition::is_ready) != is_ready {
                    continue;
                }
                first = first.min(part.made_at);
                let used = until.map_or(used, |until: NaiveDateTime| until.min(used));
                let each = kin.entry(pack).or_default();
                each.extend(lot.packs.iter().map(|of| Kin {
                    of: of.id,
                    until: Some(used),
                }));
                if !seen.contains(&part.id) {
                    seen.push(part.id);
                    open.push((part.id, Some(used)));
                }
            }
        }
    }
    Ok(first)
}
