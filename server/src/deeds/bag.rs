//! How strong a bag of curing salt is that comes in: told off the bag, else by the list.

use super::facts::Facts;
use super::says::ReceiveDeedSays;
use super::{happened, mixture};
use crate::error::{Error, Result};
use crate::wire::asked::{BoughtAsked, ReceiptAsked};
use crate::wire::cures::CuringSalt;
use domain::cure::Mixture;
use domain::plan::Plan;
use domain::product::Product;
use domain::says::Says;
use domain::words::Topic;
use store::measurements::Measurement;

/// The strength of this bag of curing salt, to be kept with the lot.
///
/// # Errors
/// 422 where it is a curing salt and nobody says how strong, unless it is recorded as it happened.
pub(super) fn strength(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    product: &Product,
    happened: bool,
) -> Result<(Vec<Measurement>, Option<Says>)> {
    let (told, field) = told_strength(asked);
    // Where the list learned after it had come in that it is a curing salt, its strength can be told since.
    let now = facts.standing.lists.products.get(&product.code);
    let since = told.and(now).and_then(|now| now.curing_salt());
    let Some(listed) = product.curing_salt().or(since) else {
        return match told {
            Some(_) => {
                let product = product.code.clone();
                let detail = ReceiveDeedSays::NoCuringSalt { product };
                Err(Error::cannot_be(field, detail))
            }
            None => Ok((Vec::new(), None)),
        };
    };
    let strength = told.map_or(listed, CuringSalt::strength);
    // A bag of the time before it was asked stays as little known as it is, whatever else of it is corrected.
    if facts.past.is_some() && !strength.is_told() {
        return Ok((Vec::new(), None));
    }
    if !strength.is_told() {
        // A bag that nobody can read is taken in all the same: what is cured with it is not proven.
        let says = ReceiveDeedSays::HowStrong;
        happened::broken(facts, field, Topic::Cure, says, &[], happened)?;
        return Ok((Vec::new(), Some(ReceiveDeedSays::StrengthUnread.into())));
    }
    let from_list = told.is_none();
    let from_list = from_list.then(|| ReceiveDeedSays::StrengthFromList.into());
    let law = facts.law();
    // What turned out to be common salt cures nothing, and what was made with it is judged by that.
    match facts.past.is_some() {
        true => strength.makeup(&law.cures, field)?,
        false => strength.of_bag(&law.cures, field)?,
    };
    Ok((mixture::kept(&Mixture::bag(strength)), from_list))
}

/// Is a bag of curing salt stronger than any that is sold?
///
/// # Errors
/// 422 `limit` where it is, and it is not recorded as it happened.
pub(super) fn strong_as_sold(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    product: &Product,
    plan: &mut Plan,
    happened: bool,
) -> Result<()> {
    let (told, field) = told_strength(asked);
    if product.curing_salt().is_none() && told.is_none() {
        return Ok(());
    }
    let strength = told.map_or_else(|| product.curing_salt(), |told| Some(told.strength()));
    let law = facts.law();
    let found = strength.and_then(|strength| law.cures.stronger_than_sold(&strength));
    if let Some(found) = found {
        let says = found.says.clone();
        let stop = happened::broken(facts, field, Topic::Cure, says, &[found], happened)?;
        for birth in &mut plan.births {
            birth.stops.push(stop.clone());
        }
    }
    Ok(())
}

/// Refuses a bag that is told twice, and each time otherwise. What is on record so stays as it was judged.
///
/// # Errors
/// 422 naming the second of the two fields.
pub(super) fn told_once(bought: Option<&BoughtAsked>) -> Result<()> {
    let bag = bought.and_then(|of| of.curing_salt.as_ref());
    let pack = bought.and_then(|of| of.declares.as_ref()?.strength.as_ref());
    match bag.zip(pack) {
        Some((bag, pack)) if bag.contradicts(pack) => Err(Error::cannot_be(
            "bought.declares.strength",
            ReceiveDeedSays::TwoStrengths,
        )),
        _ => Ok(()),
    }
}

/// What the receipt tells of a strength, and in which field.
fn told_strength(asked: &ReceiptAsked) -> (Option<&CuringSalt>, &'static str) {
    let bought = asked.bought.as_ref();
    let declared = bought.and_then(|bought| bought.declares.as_ref()?.strength.as_ref());
    match declared {
        Some(told) => (Some(told), "bought.declares.strength"),
        None => (
            bought.and_then(|bought| bought.curing_salt.as_ref()),
            "bought.curing_salt",
        ),
    }
}
