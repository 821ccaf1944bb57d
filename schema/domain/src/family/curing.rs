//! How a lot was cured, and how strong a curing salt is.

use super::why::links;
use super::{Family, Relative};
use crate::cure::{Alkali, Basis, Brought, Mixture, Strength};
use crate::dates::Because;
use crate::lot::{DeedId, LotId};
use crate::measure::Percent;
use crate::product::Product;
use crate::words::{Quantity, Topic};
use rust_decimal::Decimal;
use std::collections::HashMap;

/// The strength that was read off the bag of a lot of curing salt, else that of the list.
pub fn strength(salt: &Relative) -> Strength {
    mixture_read(&salt.lot.product, |quantity| salt.last_reading(quantity)).strength
}

/// How strong a curing salt, a cure mix or a brine is, by the last readings of its lot, in millionths of
/// their units; by the list, where nobody has read it.
pub fn mixture_read(product: &Product, last: impl Fn(Quantity) -> Option<i64>) -> Mixture {
    let listed = product.curing_salt().unwrap_or(Strength::unknown());
    let percent = |quantity: Quantity| {
        let read = last(quantity);
        read.map(|millionths| Percent::new(Decimal::new(millionths, 6)))
    };
    let (nitrite, nitrate) = (
        percent(Quantity::NitritePercent),
        percent(Quantity::NitratePercent),
    );
    if nitrite.is_none() && nitrate.is_none() {
        return Mixture::bag(listed);
    }
    let alkali = |read: Option<Percent>, listed: Alkali| match read {
        Some(percent) if percent > Percent::default() => Alkali::Potassium,
        Some(_) => Alkali::Sodium,
        None => listed,
    };
    let of_nitrite = percent(Quantity::PotassiumNitritePercent);
    let of_nitrate = percent(Quantity::PotassiumNitratePercent);
    // Lots of the time before the metal was kept have it from the list, and their salt too.
    let whole = of_nitrite.is_some() || of_nitrate.is_some();
    let salt = percent(Quantity::CureSaltPercent);
    Mixture {
        strength: Strength {
            nitrite,
            nitrite_of: alkali(of_nitrite, listed.nitrite_of),
            nitrate,
            nitrate_of: alkali(of_nitrate, listed.nitrate_of),
            salt: if whole { salt } else { salt.or(listed.salt) },
            weighed: percent(Quantity::CureWaterPercent).is_some(),
        },
        sugar: percent(Quantity::CureSugarPercent).unwrap_or_default(),
        water: percent(Quantity::CureWaterPercent).unwrap_or_default(),
    }
}

/// What is kept of a strength with its lot: the percentages that are known, and which metal each salt has.
pub fn mixture_kept(mixture: &Mixture) -> Vec<(Quantity, Decimal)> {
    let Strength {
        nitrite,
        nitrite_of,
        nitrate,
        nitrate_of,
        salt,
        weighed,
    } = mixture.strength;
    let number = |percent: Percent| percent.number();
    let mut kept = Vec::new();
    for (percent, alkali, own, metal) in [
        (
            nitrite,
            nitrite_of,
            Quantity::NitritePercent,
            Quantity::PotassiumNitritePercent,
        ),
        (
            nitrate,
            nitrate_of,
            Quantity::NitratePercent,
            Quantity::PotassiumNitratePercent,
        ),
    ] {
        let Some(percent) = percent else { continue };
        let of_potassium = match alkali {
            Alkali::Potassium => number(percent),
            Alkali::Sodium => Decimal::ZERO,
        };
        kept.extend([(own, number(percent)), (metal, of_potassium)]);
    }
    kept.extend(salt.map(|salt| (Quantity::CureSaltPercent, number(salt))));
    let rest = [
        (Quantity::CureSugarPercent, mixture.sugar),
        (Quantity::CureWaterPercent, mixture.water),
    ];
    // Of what was weighed here they are always kept: that tells it from a bag.
    let rest = rest.into_iter().filter(|_| weighed);
    kept.extend(rest.map(|(of, percent)| (of, number(percent))));
    kept
}

/// What a lot brings by its own cure, or by those of what went into it: of several, by their weights. `last`
/// gives the last reading of a lot of the family, in millionths.
pub fn brought(
    family: &Family,
    lot: LotId,
    last: impl Fn(LotId, Quantity) -> Option<i64>,
) -> Brought {
    let mut known: HashMap<LotId, Brought> = HashMap::new();
    for of in family.youngest_first(lot).into_iter().rev() {
        let id = of.lot.id;
        let read = |quantity| last(id, quantity).map(|millionths| Decimal::new(millionths, 6));
        let own = read(Quantity::SaltPercent).map(|salt| Brought {
            nitrite_ppm: read(Quantity::NitritePpm).unwrap_or_default(),
            nitrate_ppm: read(Quantity::NitratePpm).unwrap_or_default(),
            salt: Percent::new(salt),
            ..Brought::default()
        });
        let of_parts = || {
            let meat = family
                .ancestry
                .uses_of(id)
                .iter()
                .filter(|used| family.get(used.lot).is_some_and(Relative::has_species));
            let meat: Vec<_> = meat.collect();
            let whole: i64 = meat.iter().map(|used| used.milligrams).sum();
            let sum = |field: fn(&Brought) -> Decimal| -> Decimal {
                let parts = meat.iter().map(|used| {
                    let of = known.get(&used.lot).copied().unwrap_or_default();
                    field(&of) * Decimal::from(used.milligrams)
                });
                parts.sum::<Decimal>() / Decimal::from(whole.max(1))
            };
            Brought {
                nitrite_ppm: sum(|of| of.nitrite_ppm),
                nitrate_ppm: sum(|of| of.nitrate_ppm),
                salt: Percent::new(sum(|of| of.salt.number())),
                ..Brought::default()
            }
        };
        let brings = own.unwrap_or_else(of_parts);
        known.insert(id, brings);
    }
    known.remove(&lot).unwrap_or_default()
}

/// How much of a lot's weight is green meat, in parts of one: the rest it took up in a cure, or was mixed with.
/// `made` has all that came out of a step, where it may weigh more than the meat that went in. What dried away is not
/// counted back: what was cut off unseen is no moisture.
pub fn green_share(family: &Family, lot: LotId, made: &HashMap<DeedId, i64>) -> Decimal {
    let mut known: HashMap<LotId, Decimal> = HashMap::new();
    for of in family.youngest_first(lot).into_iter().rev() {
        let id = of.lot.id;
        let (mut went_in, mut green) = (0, Decimal::ZERO);
        for used in family.ancestry.uses_of(id) {
            if family.get(used.lot).is_some_and(Relative::has_species) {
                let share = known.get(&used.lot).copied().unwrap_or(Decimal::ONE);
                went_in += used.milligrams;
                green += share * Decimal::from(used.milligrams);
            }
        }
        let step = family.ancestry.made_by.get(&id);
        let came_out = step.and_then(|step| made.get(step)).copied();
        let whole = came_out.map_or(went_in, |came_out| came_out.max(went_in));
        let share = green.checked_div(Decimal::from(whole));
        known.insert(id, share.unwrap_or(Decimal::ONE));
    }
    known.remove(&lot).unwrap_or(Decimal::ONE)
}

/// How a lot was cured: by its own deed, or that of the nearest lot that it came from.
#[derive(Debug, Clone, PartialEq)]
pub struct Cured {
    /// The lot that was cured.
    pub lot: LotId,
    /// Nitrite that went in, as sodium nitrite, in millionths of a part per million.
    pub nitrite_ppm: i64,
    /// Nitrate that went in, as sodium nitrate, in millionths of a part per million.
    pub nitrate_ppm: i64,
    /// Salt, in millionths of a per cent.
    pub salt_percent: i64,
    /// The nitrite and nitrate that went in, by the metal of their salts (`us-I6`), nitrite first.
    pub with: Vec<Basis>,
    /// Why.
    pub because: Vec<Because>,
}

/// How a lot was cured, if it was.
pub fn cured(family: &Family, lot: LotId) -> Option<Cured> {
    let line = family.youngest_first(lot);
    let of = line
        .into_iter()
        .find(|of| of.last_reading(Quantity::NitritePpm).is_some())?;
    let last = |quantity| of.last_reading(quantity).unwrap_or(0);
    let (nitrite_ppm, nitrate_ppm) = (last(Quantity::NitritePpm), last(Quantity::NitratePpm));
    let used = family.ancestry.uses_of(of.lot.id).iter();
    let salts: Vec<Strength> = used
        .filter_map(|used| family.get(used.lot))
        .map(strength)
        .collect();
    let mut with = Vec::new();
    for (ppm, sodium, potassium, of) in [
        (
            nitrite_ppm,
            Basis::SodiumNitrite,
            Basis::PotassiumNitrite,
            nitrite_of as Told,
        ),
        (
            nitrate_ppm,
            Basis::SodiumNitrate,
            Basis::PotassiumNitrate,
            nitrate_of,
        ),
    ] {
        let has = |alkali| salts.iter().any(|salt| of(salt) == Some(alkali));
        let is_potassium = has(Alkali::Potassium);
        // What came with meat that was cured before is named by the metal that all but a few bags hold.
        with.extend((ppm > 0 && (has(Alkali::Sodium) || !is_potassium)).then_some(sodium));
        with.extend((ppm > 0 && is_potassium).then_some(potassium));
    }
    Some(Cured {
        lot: of.lot.id,
        nitrite_ppm,
        nitrate_ppm,
        salt_percent: last(Quantity::SaltPercent),
        with,
        because: links(of, Topic::Cure),
    })
}

/// Which metal a salt's nitrite or nitrate has, if it holds any.
type Told = fn(&Strength) -> Option<Alkali>;

fn nitrite_of(salt: &Strength) -> Option<Alkali> {
    let holds = salt.nitrite.is_some_and(|of| of > Percent::default());
    holds.then_some(salt.nitrite_of)
}

fn nitrate_of(salt: &Strength) -> Option<Alkali> {
    let holds = salt.nitrate.is_some_and(|of| of > Percent::default());
    holds.then_some(salt.nitrate_of)
}
