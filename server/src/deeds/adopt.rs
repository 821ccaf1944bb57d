//! A pot without a label is taken in.

use super::contents::{self, ListRecipe, contents};
use super::facts::Facts;
use super::says::DeedSays;
use super::step::codes;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::Weight;
use crate::wire::adopt::AdoptionAsked;
use crate::wire::answers::DeedDone;
use crate::wire::asked::DeclaresAsked;
use domain::deed::adopt::{self, Pot};
use domain::deed::receive::Bought;
use domain::deed::says::AdoptSays;
use domain::words::{Account, DeedKind};
use store::packs::PackChoice;
use store::sources::NewSource;

/// Records that a pot was found.
///
/// # Errors
/// No reason; a product or place that is not in the lists; a pack that is not missing, or of another
/// product; a weight that cannot be.
pub fn take(app: &Caller<'_>, asked: &AdoptionAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", DeedSays::WhyAdopted));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Adopt,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: Some(&asked.place),
        note: Some(&asked.why),
    };
    let declares = asked.declares.as_ref();
    only_contents(declares, "declares")?;
    if declares.is_some() && asked.is.is_some() {
        return Err(Error::cannot_be("declares", AdoptSays::NotTheContents));
    }
    perform(app, header, asked, |facts| match &asked.is {
        Some(is) => missing(facts, asked, &is.0),
        None => unknown(facts, asked),
    })
}

/// Of a pot nothing is told but what is in it.
///
/// # Errors
/// 422 where more is told, or ingredients in no language.
pub(super) fn only_contents(declares: Option<&DeclaresAsked>, field: &str) -> Result<()> {
    let more = declares.is_some_and(|of| {
        of.ready.is_some()
            || of.use_by_is.flatten().is_some()
            || of.days_once_opened.flatten().is_some()
            || of.strength.is_some()
    });
    if more {
        return Err(Error::cannot_be(field, AdoptSays::NotTheContents));
    }
    contents::can_be(declares)
}

/// The pack that was missing.
fn missing(facts: &mut Facts<'_, '_>, asked: &AdoptionAsked, is: &str) -> Result<DeedDone> {
    let named = facts.named(is, "is")?;
    let numbers = match named.pack {
        Some(pack) => PackChoice::Numbers(vec![i32::try_from(pack).unwrap_or(-1)]),
        None => PackChoice::All,
    };
    let lot = facts.lots(&[(named.code, numbers, "is".into())])?.remove(0);
    let number = match (named.pack, lot.pack_count) {
        (Some(number), _) => number,
        (None, 1) => 1,
        (None, _) => return Err(Error::cannot_be("is", DeedSays::WhichMissing)),
    };
    let (product, _) = facts.product(&asked.product.0, "product")?;
    let (moment, zone) = (facts.moment, facts.kitchen.zone);
    let pot = Pot {
        product: &product,
        grams: asked.grams.0,
        place: facts.place.expect("an adoption has a place"),
        moment: &moment,
    };
    let plan = adopt::missing(&pot, &lot, number, zone)?;
    let mut done = facts.record(asked.id.0.to_string(), DeedKind::Adopt, &plan)?;
    let found = plan.changes.iter();
    let found = found.filter(|change| change.account == Account::Unexplained);
    done.unexplained_grams = Some(Weight(found.map(|change| change.grams).sum()));
    // Its own label: with what stood on it before, marked as printed again.
    done.labels = Some(format!("/api/lots/{}/labels.pdf?packs={number}", lot.code));
    Ok(done)
}

/// A lot of which nobody knows the history.
fn unknown(facts: &mut Facts<'_, '_>, asked: &AdoptionAsked) -> Result<DeedDone> {
    let (product, product_key) = facts.product(&asked.product.0, "product")?;
    let list = ListRecipe::as_listed(facts, &product.code);
    let contents = contents(facts, asked.declares.as_ref(), list);
    let code = codes(facts, adopt::origin(&product), 1)?.remove(0);
    let moment = facts.moment;
    let pot = Pot {
        product: &product,
        grams: asked.grams.0,
        place: facts.place.expect("an adoption has a place"),
        moment: &moment,
    };
    let plan = adopt::unknown(&pot, product_key, code.clone(), &contents, &asked.why.0)?;
    let done = facts.record(asked.id.0.to_string(), DeedKind::Adopt, &plan)?;
    let lot = store::lots::by_code(facts.tx.conn, &code)?
        .expect("the lot was just made")
        .id;
    // It came from somewhere, and nobody knows whence.
    let nothing = Bought::default();
    store::sources::insert(facts.tx, lot, facts.deed, &NewSource::Bought(&nothing))?;
    Ok(done)
}
