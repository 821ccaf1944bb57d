//! Where a question begins.

use super::When;
use super::walk::{Because, How};
use super::world::{PackLife, World, WorldLot};
use crate::grams::Grams;
use crate::lot::{LotId, PackId, PlaceId};
use chrono::{DateTime, Utc};

/// What a question begins with. Times: `from` is in, `until` is out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Start {
    /// Lots that are named, whether by their code, their animal, their supplier's lot or their product.
    Lots(Vec<LotId>),
    /// A place over a time.
    Place {
        /// The place.
        place: PlaceId,
        /// From when on.
        from: DateTime<Utc>,
        /// Until when.
        until: DateTime<Utc>,
    },
    /// A person's work over a time.
    By {
        /// Who.
        person: String,
        /// From when on.
        from: DateTime<Utc>,
        /// Until when.
        until: DateTime<Utc>,
    },
}

/// What is affected at first: all of a lot, or a pack from a moment on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Onto {
    /// A lot since its birth.
    Lot(LotId),
    /// A pack.
    Pack(PackId, When),
}

/// Something with which a walk begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seed {
    /// What.
    pub onto: Onto,
    /// Why.
    pub because: Because,
}

/// What a question begins with, found among what was loaded.
pub fn starts(world: &World, all: &[Start]) -> Vec<Seed> {
    let mut seeds = Vec::new();
    for start in all {
        match start {
            Start::Lots(lots) => seeds.extend(lots.iter().map(|lot| Seed {
                onto: Onto::Lot(*lot),
                because: Because::of(How::Named),
            })),
            Start::Place { place, from, until } => {
                let because = Because {
                    place: Some(*place),
                    from: Some(*from),
                    until: Some(*until),
                    ..Because::of(How::WasThere)
                };
                lay_there(world, *place, (*from, *until), because, &mut seeds);
                let there = |lot: &WorldLot| world.deeds[&lot.made_by].place == Some(*place);
                done(world, (*from, *until), because, there, &mut seeds);
                drawn_on(world, (*from, *until), because, &mut seeds, |of| {
                    world.deeds[&of.deed].place == Some(*place)
                });
            }
            Start::By {
                person,
                from,
                until,
            } => {
                let because = Because::of(How::DoneBy);
                let by = |lot: &WorldLot| world.deeds[&lot.made_by].person == *person;
                done(world, (*from, *until), because, by, &mut seeds);
                drawn_on(world, (*from, *until), because, &mut seeds, |of| {
                    world.deeds[&of.deed].person == *person
                });
            }
        }
    }
    seeds
}

type Time = (DateTime<Utc>, DateTime<Utc>);

/// Every lot that a step made in a time.
fn done(
    world: &World,
    (from, until): Time,
    because: Because,
    is_meant: impl Fn(&WorldLot) -> bool,
    seeds: &mut Vec<Seed>,
) {
    for lot in world.lots.values() {
        let deed = &world.deeds[&lot.made_by];
        if deed.is_step() && deed.is_within(from, until) && is_meant(lot) {
            seeds.push(Seed {
                onto: Onto::Lot(lot.id),
                because: Because {
                    deed: Some(deed.id),
                    ..because
                },
            });
        }
    }
}

/// Every pack that a step drew on, or worked on, in a time, and of which something was left.
fn drawn_on(
    world: &World,
    (from, until): Time,
    because: Because,
    seeds: &mut Vec<Seed>,
    is_meant: impl Fn(&super::Happened) -> bool,
) {
    let packs = world.lots.values().flat_map(|lot| &lot.packs);
    for pack in packs {
        for of in pack.happened.iter().filter(|of| is_meant(of)) {
            let deed = &world.deeds[&of.deed];
            let is_left = world.left_after(pack, deed.when()) > Grams::ZERO;
            if deed.is_step() && deed.is_within(from, until) && is_left {
                seeds.push(Seed {
                    onto: Onto::Pack(pack.id, deed.when()),
                    because: Because {
                        deed: Some(deed.id),
                        ..because
                    },
                });
            }
        }
    }
}

/// Every pack that lay in a place at any moment of a time, from then on.
fn lay_there(
    world: &World,
    place: PlaceId,
    (from, until): Time,
    because: Because,
    seeds: &mut Vec<Seed>,
) {
    for lot in world.lots.values() {
        for pack in &lot.packs {
            if let Some(since) = since_there(world, lot, pack, place, from, until) {
                seeds.push(Seed {
                    onto: Onto::Pack(pack.id, since),
                    because,
                });
            }
        }
    }
}

/// From when on a pack lay in a place with something in it, if it did in that time.
fn since_there(
    world: &World,
    lot: &WorldLot,
    pack: &PackLife,
    place: PlaceId,
    from: DateTime<Utc>,
    until: DateTime<Utc>,
) -> Option<When> {
    let (mut at, mut left) = (lot.born, pack.made);
    let mut since = world.deeds[&lot.made_by].when();
    let mut events = pack.happened.iter();
    loop {
        let next = events.next();
        let ends = next.map(|of| world.when(of));
        // It lies there until what happened next, and at that moment no longer; what comes and goes at one
        // moment was there at that moment.
        let was_in_time = match ends {
            Some(ends) => ends.at > from || since.at == ends.at && since.at >= from,
            None => true,
        };
        if at == place && left > Grams::ZERO && since.at < until && was_in_time {
            // At birth it is the whole pack that lay there from the first on.
            return Some(since.max(When::from(from)));
        }
        let of = next?;
        at = of.to.unwrap_or(at);
        left -= of.took();
        since = world.when(of);
    }
}
