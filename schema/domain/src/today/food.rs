//! Food that needs a hand: stopped, past its day, or on its last one.

use super::failed;
use super::{About, DoSays, Frozen, Hand, Known, OpenRecall, Sort, TodaySays, When};
use crate::dates::earliest;
use crate::grams::Grams;
use crate::lot::{Lot, Pack};
use crate::says::{Arg, Says};
use crate::stop::{self, Stop};
use crate::words::{State, StopKind};
use chrono::NaiveDate;
use std::collections::BTreeMap;

/// What is told of some packs of a lot together.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Matter {
    Stopped(&'static str, String),
    WrongLabel,
    Past(NaiveDate),
    LastDay,
}

/// Packs of one lot with the same matter.
pub(super) struct Group<'a> {
    pub(super) lot: &'a Lot,
    pub(super) packs: Vec<&'a Pack>,
    pub(super) stop: Option<Stop>,
}

pub(super) fn hands(known: &Known<'_>) -> Vec<Hand> {
    let mut groups: BTreeMap<(Matter, i32), Group<'_>> = BTreeMap::new();
    let started = known.family.starts.iter();
    for of in started.filter_map(|lot| known.family.get(*lot)) {
        let lot = &of.lot;
        if lot.voided {
            continue;
        }
        for pack in lot.on_hand() {
            for (matter, stop) in matters(known, lot, pack) {
                let group = groups.entry((matter, lot.id.0)).or_insert(Group {
                    lot,
                    packs: Vec::new(),
                    stop,
                });
                group.packs.push(pack);
            }
        }
    }
    let mut told = failed::told(known, &mut groups);
    let mut stopped: BTreeMap<(i32, Vec<u32>), usize> = BTreeMap::new();
    for ((matter, lot), group) in groups {
        let mut hand = hand(known, &matter, &group);
        // What stands in the way of the same packs for several reasons is one thing to look at.
        if matches!(matter, Matter::Stopped(..)) {
            let packs = group.packs.iter().map(|pack| pack.number).collect();
            let nth = *stopped.entry((lot, packs)).or_insert(told.len());
            if let Some(first) = told.get_mut(nth) {
                // How much it is and where was told.
                first.more.extend(hand.more.drain(1..));
                continue;
            }
        }
        told.push(hand);
    }
    told
}

/// What lies frozen and may be thawed: a stop keeps out of the kitchen what it is on.
pub(super) fn may_thaw(known: &Known<'_>, frozen: &Frozen) -> Option<Frozen> {
    let mut free = frozen.clone();
    let started = known.family.starts.iter();
    for of in started.filter_map(|lot| known.family.get(*lot)) {
        let there = of.lot.on_hand().filter(|pack| {
            let place = known.places.get(&pack.now.place);
            pack.now.state == State::Frozen && place == Some(&frozen.name)
        });
        for pack in there {
            let stops = stop::on(&of.lot, Some(pack), known.now, known.today);
            let bars = |stop: &Stop| matches!(stop.kind, StopKind::Held | StopKind::Failed);
            if stops.iter().any(bars) {
                free.packs = free.packs.saturating_sub(1);
                free.grams -= pack.now.left;
            }
        }
    }
    (free.packs > 0).then_some(free)
}

/// What there is to a pack. What a person has stopped is not told of as past its day as well.
fn matters(known: &Known<'_>, lot: &Lot, pack: &Pack) -> Vec<(Matter, Option<Stop>)> {
    let mut found = Vec::new();
    let mut is_recalled = false;
    for stop in stop::on(lot, Some(pack), known.now, known.today) {
        let matter = match stop.kind {
            StopKind::WrongLabel => Matter::WrongLabel,
            // The maker's day counts in the freezer too, where a pack has no other.
            StopKind::PastDay => match earliest(pack.now.use_by, lot.later.cap) {
                Some(day) => Matter::Past(day),
                None => continue,
            },
            // The cure room tells of a piece that is not released yet, and nobody has to hurry; what waits in
            // the bin is no food.
            StopKind::Voided | StopKind::NotReleased | StopKind::Waste => continue,
            // An open recall is one thing, and tells of all that it holds.
            StopKind::Held if known.recalls.iter().any(|of| is_held_by(&stop, of)) => {
                is_recalled = true;
                continue;
            }
            kind => Matter::Stopped(kind.as_str(), format!("{:?}", stop.topic)),
        };
        found.push((matter, Some(stop)));
    }
    let ends = pack.now.use_by == Some(known.today) && pack.now.state != State::Frozen;
    if ends && found.is_empty() && !is_recalled {
        found.push((Matter::LastDay, None));
    }
    let is_stopped = found
        .iter()
        .any(|(matter, _)| matches!(matter, Matter::Stopped(..)));
    if is_stopped || is_recalled {
        found.retain(|(matter, _)| !matches!(matter, Matter::Past(_)));
    }
    found
}

/// Is it the hold of that recall? A hold says the number.
fn is_held_by(stop: &Stop, recall: &OpenRecall) -> bool {
    let says = |arg: &Arg| matches!(arg, Arg::Text(text) if *text == recall.number);
    stop.incident.is_some() && stop.says.args().any(|(_, arg)| says(arg))
}

fn hand(known: &Known<'_>, matter: &Matter, group: &Group<'_>) -> Hand {
    let (lot, packs) = (group.lot, group.packs.len());
    let name = lot.product.named();
    let numbers: Vec<u32> = group.packs.iter().map(|pack| pack.number).collect();
    let mut more = vec![lies(known, group)];
    let (when, sort, says, act): (When, Sort, Says, DoSays) = match matter {
        Matter::WrongLabel => (
            When::Now,
            Sort::WrongLabel,
            TodaySays::WrongLabel { name, packs }.into(),
            DoSays::PrintAnew { packs },
        ),
        Matter::Stopped(..) => (
            When::Now,
            Sort::Stop,
            TodaySays::Stopped { name, packs }.into(),
            DoSays::See,
        ),
        Matter::Past(day) => (
            When::Now,
            Sort::Past,
            TodaySays::Past {
                name,
                packs,
                day: *day,
            }
            .into(),
            DoSays::Discard { packs },
        ),
        Matter::LastDay => {
            more.push(may(lot).into());
            let says = TodaySays::LastDay { name, packs }.into();
            let act = match may_be_frozen(group) {
                true => DoSays::Freeze { packs },
                false => DoSays::See,
            };
            (When::Now, Sort::LastDay, says, act)
        }
    };
    if matches!(matter, Matter::Stopped(..) | Matter::WrongLabel) {
        more.extend(group.stop.iter().map(|stop| stop.says.clone()));
    }
    Hand {
        when,
        sort,
        about: About::Lot(lot.code.clone(), numbers),
        says,
        more,
        act: act.into(),
    }
}

/// What may still lawfully be done with food on its last day.
fn may(lot: &Lot) -> TodaySays {
    match (lot.product.raw, lot.product.sale.offered) {
        (true, true) => TodaySays::MayRaw,
        (true, false) => TodaySays::MayRawHere,
        (false, true) => TodaySays::MayReady,
        (false, false) => TodaySays::MayReadyHere,
    }
}

/// Freezing stops the clock of what is not frozen yet.
fn may_be_frozen(group: &Group<'_>) -> bool {
    group
        .packs
        .iter()
        .all(|pack| pack.now.state == State::Chilled)
}

/// How much it is, and where.
fn lies(known: &Known<'_>, group: &Group<'_>) -> Says {
    let mg = group
        .packs
        .iter()
        .map(|pack| pack.now.left.milligrams())
        .sum();
    let mut places: Vec<String> = Vec::new();
    for pack in &group.packs {
        let name = known
            .places
            .get(&pack.now.place)
            .cloned()
            .unwrap_or_default();
        if !name.is_empty() && !places.contains(&name) {
            places.push(name);
        }
    }
    TodaySays::Lies {
        weight: Grams::from_milligrams(mg),
        places: places.join(", "),
    }
    .into()
}
