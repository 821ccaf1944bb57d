//! A place that was not as it has to be when it was read last: until a good reading follows, somebody reads it again, or
//! sees to what lies there.

use super::failed::some_names;
use super::{About, DoSays, Hand, Known, PlaceDay, Sort, TodaySays, When};
use crate::grams::Grams;
use crate::heat::Broken;
use crate::lot::{Lot, Pack};
use crate::says::Says;
use crate::words::State;

/// The place; nothing where it has no limit of its own and nothing lies there that has to be kept cold.
pub(super) fn hand(known: &Known<'_>, place: &PlaceDay) -> Option<Hand> {
    let (broken, at) = place.beyond.as_ref()?;
    let there: Vec<(&Lot, &Pack)> = there(known, place, broken);
    if there.is_empty() && !broken.is_own {
        return None;
    }
    let mut more: Vec<Says> = vec![TodaySays::BeyondAt { at: *at }.into()];
    if !there.is_empty() {
        let (names, others) = some_names(there.iter().map(|(lot, _)| *lot));
        let (packs, weight) = (there.len(), there.iter().map(|(_, pack)| pack.now.left));
        let weight: Grams = weight.sum();
        more.push(match others {
            0 => TodaySays::BeyondThere {
                packs,
                weight,
                names,
            }
            .into(),
            more => TodaySays::BeyondThereMore {
                packs,
                weight,
                names,
                more,
            }
            .into(),
        });
        more.push(TodaySays::BeyondDo.into());
    }
    Some(Hand {
        when: When::Now,
        sort: Sort::Beyond,
        about: About::Place(place.code.clone()),
        says: TodaySays::Beyond {
            place: place.name.clone(),
            read: broken.read,
            limit: broken.limit.clone(),
        }
        .into(),
        more,
        act: DoSays::ReadAgain.into(),
    })
}

/// What lies there and suffers by it.
fn there<'a>(known: &Known<'a>, place: &PlaceDay, broken: &Broken) -> Vec<(&'a Lot, &'a Pack)> {
    let started = known.family.starts.iter();
    let lots = started.filter_map(|lot| known.family.get(*lot));
    let lots = lots.map(|of| &of.lot).filter(|lot| !lot.voided);
    let of = lots.flat_map(|lot| lot.on_hand().map(move |pack| (lot, pack)));
    of.filter(|(lot, pack)| {
        known.places.get(&pack.now.place) == Some(&place.name) && suffers(lot, pack, broken)
    })
    .collect()
}

/// Does a pack suffer where it is too warm? What hangs in the air does not, nor what stands without cold.
pub fn suffers(lot: &Lot, pack: &Pack, broken: &Broken) -> bool {
    let is_cold = matches!(pack.now.state, State::Chilled | State::Frozen);
    broken.is_warm && is_cold && lot.needs_cold() && !lot.product.is_hung()
}
