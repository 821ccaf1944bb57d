//! What has left already and is otherwise than was believed then: past its day, not ready, with more in it.

use super::kin::Kin;
use super::write::Change;
use crate::deeds::facts::Facts;
use crate::deeds::says::CorrectDeedSays;
use crate::error::Result;
use domain::dates::{Because, earliest};
use domain::deed::again::now_past;
use domain::grams::Grams;
use domain::lot::LotId;
use domain::moment::{day_of, on_clock};
use domain::plan::Reason;
use domain::says::{Arg, Says};
use domain::words::{Allergen, DeedKind, Topic};
use std::collections::HashMap;
use store::again::Left;

/// The flags of what left of lots that were judged again.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn otherwise(
    facts: &mut Facts<'_, '_>,
    kin: &mut Kin,
    changes: &[Change],
) -> Result<Vec<(LotId, Reason)>> {
    let keys: Vec<i32> = changes.iter().map(|of| of.lot).collect();
    let by_lot: HashMap<i32, &Change> = changes.iter().map(|of| (of.lot, of)).collect();
    let mut reasons = Vec::new();
    for left in store::again::left(facts.tx.conn, facts.deed, &keys)? {
        let Some(of) = by_lot.get(&left.lot_id).copied() else {
            continue;
        };
        for says in of_one(facts, kin, of, &left)? {
            let because = Because::house(says, CorrectDeedSays::ToldRule);
            let topic = Topic::Stop;
            reasons.push((LotId(of.lot), Reason { topic, because }));
        }
    }
    Ok(reasons)
}

fn of_one(facts: &Facts<'_, '_>, kin: &mut Kin, of: &Change, left: &Left) -> Result<Vec<Says>> {
    let zone = facts.kitchen.zone;
    let kind = DeedKind::parse(&left.kind).unwrap_or(DeedKind::Sell);
    let grams = Grams::from_milligrams(left.mg);
    let at = on_clock(left.at.and_utc(), zone);
    let row = &kin.all.lots[&of.lot];
    let number = kin.all.packs[&left.pack_id].number;
    let pack = match row.pack_count {
        1 => row.code()?.shown(),
        _ => format!("{}/{number}", row.code()?.shown()),
    };
    let (was_cap, now_cap) = {
        let state = &kin.lots[&of.lot];
        (state.was.later.cap, state.now.later.cap)
    };
    let was = earliest(kin.all.packs[&left.pack_id].pack()?.now.use_by, was_cap);
    let now = kin.pack_before(of.lot, left.pack_id, i32::MAX)?.use_by;
    let today = day_of(facts.moment.recorded_at, zone);
    let mut said: Vec<Says> = Vec::new();
    if let Some(date) = now_past(was, earliest(now, now_cap), today) {
        let pack = pack.clone();
        said.push(
            CorrectDeedSays::LeftPast {
                pack,
                kind,
                grams,
                at,
                date,
            }
            .into(),
        );
    }
    let state = &kin.lots[&of.lot];
    if !state.product.raw && of.is_ready_no_more() {
        let pack = pack.clone();
        said.push(
            CorrectDeedSays::LeftNotReady {
                pack,
                kind,
                grams,
                at,
            }
            .into(),
        );
    }
    let more = state.now.allergens.difference(&state.was.allergens);
    let more: Vec<Allergen> = more.copied().collect();
    if !more.is_empty() {
        let allergens = Arg::All(more.into_iter().map(Arg::from).collect());
        said.push(
            CorrectDeedSays::LeftWithAllergens {
                pack,
                kind,
                grams,
                at,
                allergens,
            }
            .into(),
        );
    }
    Ok(said)
}
