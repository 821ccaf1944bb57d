//! The condition of what arrives.

use super::born::practice;
use super::{Condition, ConditionSays, Proven, Stable, by_nature};
use crate::dates::Because;
use crate::product::Product;
use crate::words::{Natural, ProvedBy};

/// What a pack or the supplier's paper says of a bought-in lot. What it does not say is `None`; then
/// the product list as it stood is the declaration, but not for food of animals that is eaten as it is.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Declared {
    /// Is it ready to eat?
    pub ready: Option<bool>,
}

/// What a received lot is, and why. `declared` is `None` for a carcass with its animal.
pub fn received(
    product: &Product,
    declared: Option<Declared>,
    approved: Option<&str>,
    measured: Option<&Stable>,
) -> Proven {
    let (condition, because) = is(product, declared, approved, measured.is_some());
    let mut because = vec![because];
    let nature = match declared {
        Some(_) if condition.is_ready() => by_nature(product),
        _ => None,
    };
    let stable = measured.cloned().or(nature);
    because.extend(stable.as_ref().map(|stable| stable.because.clone()));
    Proven {
        condition: condition.and_stable(stable.map(|stable| stable.by)),
        because,
    }
}

fn is(
    product: &Product,
    declared: Option<Declared>,
    approved: Option<&str>,
    is_measured: bool,
) -> (Condition, Because) {
    let name = || product.named();
    let Some(declared) = declared else {
        return (Condition::RAW, practice(ConditionSays::FromTheAnimal));
    };
    // Salt, sugar and the like are eaten as they are, whatever a list leaves out; flour and pulses are dry, and raw.
    let is_dry = product.keeping.stable_as == Some(Natural::DryGoods);
    let keeps = product.species.is_none() && !is_dry && by_nature(product).is_some();
    let list = |says| Because::house(says, ConditionSays::ListRule);
    // Fish, eggs and milk have no species on the list: what is kept cold, and brings them, is food of animals too.
    let brings = product.allergens.iter().any(|of| of.is_of_an_animal());
    let is_fresh_of_animals = product.is_controlled() && !is_measured && brings;
    // An approval speaks of the dish, and not of trichinae: of such meat the pack has to say that it is ready.
    let carries = { product.species }.is_some_and(|of| of.may_carry_trichinae());
    match (declared.ready, approved) {
        (Some(true), _) => {
            let says = ConditionSays::DeclaredReady { product: name() };
            (Condition::ready(ProvedBy::Declared), practice(says))
        }
        (Some(false), _) => (Condition::RAW, practice(ConditionSays::RawBought)),
        (None, Some(number)) if !carries => {
            let number = number.to_owned();
            let says = ConditionSays::Approved { number };
            let because = Because::house(says, ConditionSays::ApprovalRule);
            (Condition::ready(ProvedBy::Approved), because)
        }
        (None, _) if product.raw && !keeps => (Condition::RAW, list(ConditionSays::RawBought)),
        (None, _) if product.species.is_some() || is_fresh_of_animals => {
            let says = ConditionSays::NoDeclaration { product: name() };
            (Condition::TREATED, practice(says))
        }
        (None, _) => {
            let says = ConditionSays::Listed { product: name() };
            (Condition::ready(ProvedBy::Listed), list(says))
        }
    }
}
