//! A place that did not stay cold: all that it stopped is one thing to decide, not one for every lot.

use super::food::Group;
use super::{About, DoSays, Hand, Known, Sort, TodaySays, When};
use crate::deed::place_failure::FailureSays;
use crate::grams::Grams;
use crate::lot::Lot;
use crate::says::{Arg, Says};
use std::collections::BTreeMap;

/// How many lots are told as one event; one alone is told as itself.
const AN_EVENT: usize = 2;

/// The most names that are told.
const MOST_NAMES: usize = 6;

/// Takes out of what was found all that one failure of a place stopped, and tells it as one.
pub(super) fn told<K: Ord + Clone>(
    known: &Known<'_>,
    groups: &mut BTreeMap<K, Group<'_>>,
) -> Vec<Hand> {
    let mut events: BTreeMap<String, Vec<K>> = BTreeMap::new();
    for (key, group) in groups.iter() {
        let stop = group.stop.as_ref();
        if let Some(place) = stop.and_then(|stop| place_of(&stop.says)) {
            events.entry(place).or_default().push(key.clone());
        }
    }
    let many = events
        .into_iter()
        .filter(|(_, keys)| keys.len() >= AN_EVENT);
    many.filter_map(|(place, keys)| {
        let code = known
            .days
            .iter()
            .find(|day| day.name == place)?
            .code
            .clone();
        let taken = keys.iter().filter_map(|key| groups.remove(key));
        Some(hand(place, code, &taken.collect::<Vec<_>>()))
    })
    .collect()
}

fn hand(place: String, code: String, groups: &[Group<'_>]) -> Hand {
    let packs = || groups.iter().flat_map(|group| &group.packs);
    let (names, more) = some_names(groups.iter().map(|of| of.lot));
    let weight: Grams = packs().map(|pack| pack.now.left).sum();
    let said = match more {
        0 => TodaySays::FailedNames { weight, names },
        more => TodaySays::FailedNamesMore {
            weight,
            names,
            more,
        },
    };
    Hand {
        when: When::Now,
        sort: Sort::Stop,
        about: About::Place(code),
        says: TodaySays::Failed {
            place,
            lots: groups.len(),
            packs: packs().count(),
        }
        .into(),
        more: vec![said.into(), TodaySays::FailedDo.into()],
        act: DoSays::Sort.into(),
    }
}

/// What lots are of, each once, and how many sorts more there are than are named.
pub(super) fn some_names<'a>(lots: impl Iterator<Item = &'a Lot>) -> (Arg, usize) {
    let mut names = Vec::new();
    for name in lots.map(|lot| lot.product.named()) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let more = names.len().saturating_sub(MOST_NAMES);
    names.truncate(MOST_NAMES);
    (Arg::All(names.into_iter().map(Arg::Texts).collect()), more)
}

/// The place of whose failure a message tells, or one within it.
fn place_of(says: &Says) -> Option<String> {
    let mut keys = FailureSays::KEYS.iter();
    if keys.any(|(key, _)| *key == says.key()) {
        return match says.arg("place") {
            Some(Arg::Text(place)) => Some(place.clone()),
            _ => None,
        };
    }
    says.args().find_map(|(_, arg)| within(arg))
}

fn within(arg: &Arg) -> Option<String> {
    match arg {
        Arg::Said(says) => place_of(says),
        Arg::Sentences(all) | Arg::Series(all) => all.iter().find_map(place_of),
        Arg::All(all) | Arg::Any(all) => all.iter().find_map(within),
        _ => None,
    }
}
