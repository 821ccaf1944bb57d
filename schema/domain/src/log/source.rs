//! Where the food of an entry came from: suppliers, farms and abattoirs, with what the lists know of them.

use super::says::LogsSays;
use super::value::Value;
use crate::family::{Family, Listed, Lists, Relative};
use crate::law::Law;
use crate::lot::{LotId, PlaceId};
use crate::says::{Arg, Texts};
use chrono::{DateTime, NaiveDate, Utc};
use chrono_tz::Tz;
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// Somebody who supplies, or the kitchen itself.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Party {
    /// The name.
    pub name: String,
    /// The address, where the lists have it.
    pub address: Option<String>,
    /// The establishment number, where they have one.
    pub number: Option<String>,
}

/// What is known of a bought lot besides who sold it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Bought {
    /// When it was packed.
    pub packed_on: Option<NaiveDate>,
    /// The supplier's last day.
    pub use_by: Option<NaiveDate>,
}

/// A clean-down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cleaned {
    /// Of which place.
    pub place: PlaceId,
    /// When.
    pub at: DateTime<Utc>,
}

/// Something that was made at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ground {
    /// Where.
    pub place: PlaceId,
    /// When.
    pub at: DateTime<Utc>,
    /// What.
    pub lot: LotId,
}

/// Everything that the logs are built of besides the deeds.
#[derive(Clone, Copy)]
pub struct Known<'a> {
    /// The lots of the deeds, with everything that went into them.
    pub family: &'a Family,
    /// The lists as they stand.
    pub lists: &'a Lists,
    /// The law of the place, as the kitchen has confirmed it.
    pub law: &'a Law,
    /// The kitchen.
    pub kitchen: &'a Party,
    /// What was told of bought lots.
    pub bought: &'a HashMap<LotId, Bought>,
    /// The clean-downs of the time of the log, and the last before it, in the order of their times.
    pub cleaned: &'a [Cleaned],
    /// What was made at benches and machines in the time of the log and since the clean-down before it.
    pub ground: &'a [Ground],
    /// When each probe was checked, by its code.
    pub checked: &'a BTreeMap<String, Vec<DateTime<Utc>>>,
    /// The kitchen's time zone.
    pub zone: Tz,
}

impl<'a> Known<'a> {
    /// The lot, if it was loaded.
    pub fn lot(&self, lot: LotId) -> Option<&'a Relative> {
        self.family.get(lot)
    }

    /// The name of a place.
    pub fn place(&self, place: Option<PlaceId>) -> Option<Value> {
        let name = self.lists.place_name(place?);
        (!name.is_empty()).then(|| Value::Text(name.to_owned()))
    }

    /// The received lots that went into some lots; a received one is its own. Each once, the oldest first.
    pub fn received(&self, lots: &[LotId]) -> Vec<&'a Relative> {
        let reached = lots.iter().flat_map(|lot| self.family.youngest_first(*lot));
        let mut received: BTreeMap<LotId, &Relative> = BTreeMap::new();
        for of in reached.filter(|of| of.source.is_some()) {
            received.insert(of.lot.id, of);
        }
        received.into_values().collect()
    }

    /// Who supplied a received lot: the supplier, or the abattoir that sent the carcass, else its farm. None
    /// where nobody is known.
    pub fn supplier(&self, of: &Relative) -> Option<Party> {
        let source = of.source.as_ref()?;
        let named = |list: &BTreeMap<String, Listed>, code: &str| {
            let listed = list.get(code);
            Party {
                name: listed.map_or_else(|| code.to_owned(), |listed| listed.name.clone()),
                address: listed.and_then(|listed| listed.address.clone()),
                number: listed.and_then(|listed| listed.number.clone()),
            }
        };
        if let Some(animal) = &source.animal {
            return Some(match &animal.abattoir {
                Some(number) => Party {
                    number: Some(number.clone()),
                    ..named(&self.lists.abattoirs, number)
                },
                None => named(&self.lists.farms, &animal.farm),
            });
        }
        let code = source.supplier.as_deref();
        code.map(|code| named(&self.lists.suppliers, code))
    }

    /// The clean-down of a place before a moment.
    pub fn cleaned_before(
        &self,
        place: Option<PlaceId>,
        at: DateTime<Utc>,
    ) -> Option<DateTime<Utc>> {
        let of = self.cleaned.iter().filter(|of| Some(of.place) == place);
        of.map(|of| of.at).filter(|cleaned| *cleaned < at).max()
    }

    /// The clean-down of a place at a moment or after it.
    pub fn cleaned_after(
        &self,
        place: Option<PlaceId>,
        at: DateTime<Utc>,
    ) -> Option<DateTime<Utc>> {
        let of = self.cleaned.iter().filter(|of| Some(of.place) == place);
        of.map(|of| of.at).filter(|cleaned| *cleaned >= at).min()
    }

    /// The probes of a deed, each with its last check before.
    pub fn probes(&self, probes: &[&str], at: DateTime<Utc>) -> Vec<Value> {
        let told = |probe: &&str| {
            let probe = (*probe).to_owned();
            let checks = self.checked.get(&probe).into_iter().flatten();
            Value::says(match checks.filter(|checked| **checked <= at).max() {
                Some(checked) => LogsSays::WithProbe {
                    probe,
                    checked: crate::moment::on_clock(*checked, self.zone),
                },
                None => LogsSays::ProbeUnchecked { probe },
            })
        };
        probes.iter().map(told).collect()
    }
}

/// A product's names.
pub fn named(of: &Relative) -> Texts {
    Texts::new(of.lot.product.names.as_ref().clone())
}

/// The name of somebody, with their establishment number where they have one.
pub fn party(of: &Party) -> Value {
    match &of.number {
        Some(number) => Value::says(LogsSays::NamedWith {
            name: of.name.clone(),
            number: number.clone(),
        }),
        None => Value::Text(of.name.clone()),
    }
}

/// The animal that a received lot is of.
pub fn animal(of: &Relative) -> Option<Value> {
    let animal = of.source.as_ref()?.animal.as_ref()?;
    let (species, killed) = (animal.species, animal.killed_on);
    let numbers: Vec<Arg> = [&animal.carcass, &animal.tag]
        .into_iter()
        .flatten()
        .map(|number| Arg::Text(number.clone()))
        .collect();
    Some(Value::says(match numbers.is_empty() {
        true => LogsSays::AnimalUnnumbered { species, killed },
        false => LogsSays::Animal {
            species,
            killed,
            number: Arg::All(numbers),
        },
    }))
}

/// What the supplier's own papers call it: the supplier's lot, the carcass, the tag.
pub fn reference(of: &Relative) -> Option<Value> {
    let source = of.source.as_ref()?;
    let animal = source.animal.as_ref();
    let own = animal.and_then(|animal| animal.carcass.as_ref().or(animal.tag.as_ref()));
    Value::text(source.supplier_lot.as_ref().or(own))
}

/// Each source of some lots, one a line: what, from whom, at which address, on which day. None stands for one
/// of which the supplier or the address is not known.
pub fn sources(known: &Known<'_>, lots: &[LotId]) -> (Vec<Value>, bool) {
    let mut whole = true;
    let mut told = Vec::new();
    for of in known.received(lots) {
        let party = known.supplier(of);
        let from = party
            .as_ref()
            .map_or_else(|| Arg::from(LogsSays::Nobody), party_arg);
        let (product, lot, day) = (named(of), of.lot.code.clone(), of.made_by.day);
        let address = party.and_then(|party| party.address);
        whole &= address.is_some();
        told.push(Value::says(match address {
            Some(address) => LogsSays::SourceAt {
                product,
                lot,
                from,
                address,
                day,
            },
            None => LogsSays::Source {
                product,
                lot,
                from,
                day,
            },
        }));
    }
    (told, whole)
}

fn party_arg(of: &Party) -> Arg {
    match &of.number {
        Some(number) => LogsSays::NamedWith {
            name: of.name.clone(),
            number: number.clone(),
        }
        .into(),
        None => Arg::Text(of.name.clone()),
    }
}

/// Each value once, in the order in which they come.
pub fn once(values: impl IntoIterator<Item = Value>) -> Vec<Value> {
    let mut kept: Vec<Value> = Vec::new();
    for value in values {
        if !kept.contains(&value) {
            kept.push(value);
        }
    }
    kept
}

/// Is any of some lots, or of what went into them, of that animal?
pub fn has_species(known: &Known<'_>, lots: &[LotId], species: crate::words::Species) -> bool {
    let of: BTreeSet<LotId> = lots.iter().copied().collect();
    let mut of = of.iter().filter_map(|lot| known.lot(*lot));
    of.any(|of| of.lot.species.contains(&species))
}
