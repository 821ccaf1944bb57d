//! What somebody on the phone might mean as well, and is not meant: the other animals of the same day.

use crate::error::Result;
use chrono::Days;
use domain::family::Lists;
use domain::lot::LotId;
use domain::scope::{Outside, Scope, ScopeSays, SourceFact};
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::scope::{FactFilter, facts};

/// More days of kill than this are a time, not an animal: nobody asks which others there were.
const MOST_DAYS: usize = 31;

/// Of the animals that named lots are of: the others that were killed on the same day in the same
/// abattoir, or came from the same farm, and of which nothing that came in is in scope.
pub fn of(conn: &mut Conn, lists: &Lists, named: &[LotId], scope: &Scope) -> Result<Vec<Outside>> {
    let keys: Vec<i32> = named.iter().map(|lot| lot.0).collect();
    let mut meant: BTreeSet<i32> = BTreeSet::new();
    for some in keys.chunks(10_000) {
        let known = store::sources::current(conn, some)?;
        meant.extend(known.iter().filter_map(|source| source.animal_id));
    }
    let mut days: BTreeMap<_, Vec<SourceFact>> = BTreeMap::new();
    for animal in meant.iter().take(MOST_DAYS + 1) {
        let row = store::animals::by_key(conn, *animal)?;
        days.entry(row.killed_on).or_default();
    }
    if days.len() > MOST_DAYS {
        return Ok(Vec::new());
    }
    let reached: BTreeSet<i32> = scope.lots.iter().map(|lot| lot.id.0).collect();
    let mut twins = Vec::new();
    for (day, known) in &mut days {
        *known = facts(
            conn,
            FactFilter::Killed {
                farm: None,
                from: Some(*day),
                until: day.checked_add_days(Days::new(1)),
            },
        )?;
        known.retain(|fact| fact.is_current && !fact.is_voided);
        let is_meant = |fact: &&SourceFact| fact.animal.is_some_and(|of| meant.contains(&of));
        let ours: Vec<&SourceFact> = known.iter().filter(is_meant).collect();
        let near = |fact: &SourceFact| {
            let same = |of: &SourceFact| {
                of.farm == fact.farm || of.abattoir.is_some() && of.abattoir == fact.abattoir
            };
            ours.iter().any(|of| same(of))
        };
        let others: BTreeSet<i32> = known
            .iter()
            .filter(|fact| !is_meant(fact) && near(fact))
            .filter_map(|fact| fact.animal)
            .collect();
        for other in others {
            let of: Vec<&SourceFact> = known
                .iter()
                .filter(|fact| fact.animal == Some(other))
                .collect();
            if of.iter().any(|fact| reached.contains(&fact.lot)) {
                continue;
            }
            let fact = of[0];
            let farm = fact.farm.as_deref().unwrap_or_default();
            let number = fact.carcass.clone().or(fact.tag.clone());
            twins.push(Outside {
                lot: None,
                animal: Some(fact.uid.clone()),
                why: ScopeSays::Twin {
                    number: number.unwrap_or_else(|| "—".to_owned()),
                    killed: *day,
                    farm: lists.farm(farm).to_owned(),
                }
                .into(),
            });
        }
    }
    Ok(twins)
}
