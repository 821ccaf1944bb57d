//! The packs that an act is about: all that there are, or those that were named.

use super::acts::ActKind;
use super::says::PageSays;
use super::spoken::Words;
use crate::read::names::Names;
use domain::grams::Grams;
use domain::lot::numbers::in_runs;
use domain::lot::{Lot, Pack};
use domain::words::Being;
use std::collections::BTreeMap;

/// Those that were named, where they are there; else all.
pub(super) fn meant<'a>(packs: &[&'a Pack], named: Option<&[u32]>) -> Vec<&'a Pack> {
    let is_named = |pack: &&Pack| named.is_some_and(|named| named.contains(&pack.number));
    let meant: Vec<&Pack> = packs.iter().copied().filter(is_named).collect();
    match meant.is_empty() {
        true => packs.to_vec(),
        false => meant,
    }
}

/// What there is: how many packs, or which of several; how much, where, and until when.
pub(super) fn told(words: &Words, names: &Names, packs: &[&Pack], some: bool) -> String {
    let Some(first) = packs.first() else {
        return words.t("page-nothing-left");
    };
    let left: Grams = packs.iter().map(|pack| pack.now.left).sum();
    let last_day = first.now.use_by.map(|day| words.day(day));
    let told = [
        Some(match some {
            true => words.say(PageSays::Run {
                packs: packs.len(),
                numbers: runs(packs),
            }),
            false => words.packs(packs.len()),
        }),
        (!left.is_none_left()).then(|| words.grams(left)),
        Some(names.place_of(first.now.place)),
        last_day,
    ];
    let told: Vec<String> = told.into_iter().flatten().collect();
    told.join(", ")
}

/// Where the packs went whose numbers are not among those that are there: `3 (sold), 5–6 (discarded)`.
pub(super) fn gone(words: &Words, lot: &Lot) -> Option<String> {
    let mut went: BTreeMap<&'static str, (Being, Vec<u32>)> = BTreeMap::new();
    let packs = lot.packs.iter();
    for pack in packs.filter(|pack| !pack.now.is_on_hand()) {
        let being = pack.now.being;
        let of = went
            .entry(being.as_str())
            .or_insert_with(|| (being, Vec::new()));
        of.1.push(pack.number);
    }
    let mut went: Vec<(Being, Vec<u32>)> = went.into_values().collect();
    went.sort_by_key(|(_, numbers)| numbers.first().copied());
    let told: Vec<String> = went
        .iter()
        .map(|(being, numbers)| format!("{} ({})", in_runs(numbers), words.say(being.says())))
        .collect();
    let packs = told.join(", ");
    (!packs.is_empty()).then(|| words.say(PageSays::PacksGone { packs }))
}

/// Is it a missing pack that somebody found, or looks for, by its number?
pub(super) fn is_sought(kind: ActKind, named: Option<&[u32]>, pack: &Pack) -> bool {
    kind == ActKind::Count
        && pack.now.being == Being::Missing
        && named.is_some_and(|named| named.contains(&pack.number))
}

/// The numbers of an address: `13,14`.
pub(super) fn numbers(text: &str) -> Vec<u32> {
    let parts = text.split(',');
    parts.filter_map(|part| part.trim().parse().ok()).collect()
}

/// Numbers as they are typed: `1-4, 7`.
pub(super) fn runs(packs: &[&Pack]) -> String {
    let numbers: Vec<u32> = packs.iter().map(|pack| pack.number).collect();
    in_runs(&numbers).replace('–', "-")
}
