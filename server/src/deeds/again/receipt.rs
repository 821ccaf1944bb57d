//! A receipt that is judged again, with what is known of it now.

use super::kin::Kin;
use super::stops::on_lot;
use super::{effective, request};
use crate::deeds::contents::ListRecipe;
use crate::deeds::facts::Facts;
use crate::deeds::measure::Readings;
use crate::deeds::{approval, bag, receive};
use crate::error::Result;
use crate::wire::asked::ReceiptAsked;
use domain::deed::again::BornAs;
use domain::deed::packing::Packing;
use domain::deed::receive::{Receipt, Source};
use domain::grams::Grams;
use domain::lot::PlaceId;
use domain::origin::AnimalId;
use domain::plan::Plan;
use domain::supplied::Supplied;
use domain::words::{State, Topic};
use store::deeds::DeedRow;

/// Judges a receipt again.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn again(facts: &mut Facts<'_, '_>, kin: &mut Kin, deed: &DeedRow) -> Result<()> {
    let of = kin.all.corrections.get(&deed.id);
    let of = of.map_or(&[][..], Vec::as_slice);
    let asked: ReceiptAsked = request(&effective(deed, of)?)?;
    let Some(row) = kin.made_by(deed.id).into_iter().next() else {
        return Ok(());
    };
    let product = kin.lots[&row.id].product.clone();
    let known = kin.all.sources.get(&row.id);
    let source = match known.and_then(|known| known.animal_id) {
        Some(animal) => Source::Animal {
            id: AnimalId(animal),
            species: store::animals::by_key(facts.tx.conn, animal)?
                .animal()?
                .species,
            side: None,
            before: Vec::new(),
            numbered: true,
        },
        None => {
            let use_by = known.and_then(|known| known.use_by);
            let kept = kin.lots[&row.id].was.supplied.clone();
            let list = ListRecipe::as_kept(facts, &product, kept.as_ref())?;
            receive::declared(facts, &asked, use_by, list)
        }
    };
    let receipt = Receipt {
        moment: facts.moment,
        place: PlaceId(row.born_place_id),
        product: &product,
        product_key: row.version_id,
        grams: Grams::from_milligrams(row.made_mg),
        packing: Packing::One,
        state: State::parse(&row.born_state),
        source,
        stable: receive::stable_at_door(facts, &asked, &product)?,
        approved_ready: approval::of_product(facts, "ready", &product),
        law: facts.law(),
        note: None,
    };
    let mut plan = Plan::default();
    let grams = vec![receipt.grams];
    plan.births.push(receipt.birth(row.code()?, grams)?);
    receive::cold_enough(facts, &asked, &product, &mut plan, true)?;
    bag::strong_as_sold(facts, &asked, &product, &mut plan, true)?;
    let mut birth = plan.births.remove(0);
    let (before, was) = (kin.lots[&row.id].was.clone(), row.id);
    // A lot of the time before its recipe was kept stays with the list, until its pack is told.
    let untold = |of: &Supplied| of.ingredients.is_empty();
    if before.supplied.is_none() && birth.supplied.as_ref().is_some_and(untold) {
        birth.supplied = None;
        birth
            .stops
            .retain(|stop| stop.cause.topic != Topic::Contents);
    }
    kin.born(was, BornAs::of(&birth));
    if before.condition.is_some() {
        let stops = birth.stops.into_iter().map(on_lot).collect();
        kin.judge_stops(row.id, deed, stops)?;
    }
    let mut read = Readings::of(asked.readings.as_ref(), "readings.")?.all();
    read.extend(receive::numbers(facts, &asked, &product, true)?.0);
    let known = kin.all.readings.get(&row.id).into_iter().flatten();
    let known = known.filter(|of| of.deed_id == deed.id);
    let known: Vec<(&str, i64)> = known
        .map(|of| (of.quantity.as_str(), of.millionths))
        .collect();
    let told: Vec<(&str, i64)> = read
        .iter()
        .map(|of| (of.quantity.as_str(), of.millionths))
        .collect();
    let recorded = (deed.recorded_at, deed.id);
    if let (Some(past), true) = (&mut facts.past, known != told) {
        let of = past.readings.entry(row.id).or_default();
        of.retain(|(by, ..)| *by != recorded);
        of.extend(
            read.iter()
                .map(|of| (recorded, deed.at, of.quantity, of.millionths)),
        );
        of.sort_by_key(|(_, at, ..)| *at);
    }
    let differs = known != told;
    if let Some(state) = kin.lots.get_mut(&row.id) {
        state.reasons = birth.reasons;
        if differs {
            (state.measured, state.changed) = (read, true);
        }
    }
    Ok(())
}
