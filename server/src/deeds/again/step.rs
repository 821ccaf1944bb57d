//! A step that is judged again: planned as it would have been, with what went in as it was.

use super::kin::Kin;
use super::stops::on_lot;
use super::{effective, request};
use crate::deeds::facts::Facts;
use crate::deeds::step::Looked;
use crate::error::{Error, Result};
use crate::wire::asked::{OutputAsked, StepAsked};
use domain::code::LotCode;
use domain::deed::again::{BornAs, JudgedStop};
use domain::deed::draw::{Choice, Draw};
use domain::deed::output::Output;
use domain::deed::packing::Packing;
use domain::grams::Grams;
use domain::lot::{Lot, PlaceId};
use domain::plan::Plan;
use domain::words::{Account, Allergen, State, StepKind};
use std::collections::{BTreeMap, BTreeSet};
use store::again::{Happened, Recorded};
use store::deeds::DeedRow;
use store::lots::LotRow;
use store::measurements::Measurement;

/// What went in: lots as they were, and how much of which of their packs.
struct WentIn {
    lots: Vec<Lot>,
    /// The place of each lot, its pack's key and the grams.
    draws: Vec<(usize, i32, Grams)>,
}

/// Judges a step again. `is_it` is true of the step that was corrected.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn again(
    facts: &mut Facts<'_, '_>,
    kin: &mut Kin,
    at: Happened,
    deed: &DeedRow,
    kind: StepKind,
    is_it: bool,
) -> Result<()> {
    let of = kin.all.corrections.get(&deed.id);
    let of = of.map_or(&[][..], Vec::as_slice);
    let asked: StepAsked = request(&effective(deed, of)?)?;
    let made = kin.made_by(deed.id);
    let went_in = went_in(kin, at, deed.id, made.is_empty())?;
    let outputs = outputs(facts, kin, &made, &asked.outputs, &went_in)?;
    let planned = match planned(facts, &asked, kind, &went_in, outputs.clone(), &made) {
        // Of the step that is corrected, whatever is wrong is said.
        Err(error) if is_it => return Err(error),
        // A table, a plan or a way to cure that the rules of today do not know: what they do know is asked.
        Err(Error::Refused(_) | Error::Problem(_)) => {
            let asked = StepAsked {
                heat_standard: None,
                cooling_plan: None,
                ..asked
            };
            planned(facts, &asked, kind, &went_in, outputs, &made)
        }
        planned => planned,
    };
    match planned {
        Ok((plan, numbers)) => take_in(facts, kin, deed, &made, plan, &numbers),
        // What the rules of today cannot judge stays as it was judged, but for what is in it.
        Err(Error::Refused(_) | Error::Problem(_)) => {
            unite(kin, &made, &went_in);
            Ok(())
        }
        Err(error) => Err(error),
    }
}

fn went_in(kin: &mut Kin, at: Happened, deed: i32, noted: bool) -> Result<WentIn> {
    let events = kin.all.drawn.get(&deed).cloned().unwrap_or_default();
    let used = Account::Used.as_str();
    let events: Vec<_> = events
        .into_iter()
        .filter(|event| noted || event.account == used)
        .collect();
    let mut places: Vec<i32> = Vec::new();
    let mut packs: BTreeMap<i32, Vec<(i32, i32)>> = BTreeMap::new();
    for event in &events {
        if !places.contains(&event.lot_id) {
            places.push(event.lot_id);
        }
        let of = packs.entry(event.lot_id).or_default();
        of.push((event.pack_id, event.seq));
    }
    let mut lots = Vec::with_capacity(places.len());
    for lot in &places {
        lots.push(kin.lot_at(*lot, at, &packs[lot])?);
    }
    let place = |lot: i32| places.iter().position(|of| *of == lot).unwrap_or(0);
    let draws = events.iter().map(|event| {
        let grams = Grams::from_milligrams(event.mg);
        (place(event.lot_id), event.pack_id, grams)
    });
    Ok(WentIn {
        draws: draws.collect(),
        lots,
    })
}

impl WentIn {
    fn draws(&self) -> Vec<Draw<'_>> {
        let draw = |(lot, pack, grams): &(usize, i32, Grams)| {
            let lot = &self.lots[*lot];
            let pack = lot.packs.iter().find(|of| of.id.0 == *pack)?;
            let grams = *grams;
            Some(Draw { lot, pack, grams })
        };
        self.draws.iter().filter_map(draw).collect()
    }

    fn grams(&self, nth: usize) -> Grams {
        let of = self.draws.iter().filter(|(lot, ..)| *lot == nth);
        of.map(|(.., grams)| *grams).sum()
    }
}

fn outputs(
    facts: &Facts<'_, '_>,
    kin: &Kin,
    made: &[LotRow],
    asked: &[OutputAsked],
    went_in: &WentIn,
) -> Result<Vec<Output>> {
    let mut outputs = Vec::with_capacity(made.len());
    for row in made {
        let state = &kin.lots[&row.id];
        outputs.push(Output {
            recipe_allergens: of_recipe(facts, kin, row, went_in),
            product: state.product.clone(),
            product_key: row.version_id,
            grams: Grams::from_milligrams(row.made_mg),
            packing: Packing::One,
            place: Some(PlaceId(row.born_place_id)),
            state: State::parse(&row.born_state),
            packaging: row.packaging()?,
            heat: None,
            approved_ready: None,
            freed: None,
            approved_stable: None,
            note: None,
        });
    }
    if !made.is_empty() && made.len() != asked.len() {
        let deed = made[0].deed_id;
        return Err(store::Error::bad_row("deeds", deed, "made other lots than it asked").into());
    }
    Ok(outputs)
}

/// The allergens that the recipe brought: of those that the record united, what no input brought, and what
/// the recipe of today names.
fn of_recipe(
    facts: &Facts<'_, '_>,
    kin: &Kin,
    row: &LotRow,
    went_in: &WentIn,
) -> BTreeSet<Allergen> {
    let state = &kin.lots[&row.id];
    let inputs = went_in.lots.iter().map(|lot| &kin.lots[&lot.id.0]);
    let brought: BTreeSet<Allergen> = inputs
        .flat_map(|of| of.was.allergens.iter())
        .copied()
        .collect();
    let listed = facts.recipe_allergens(&state.product.code);
    let united = state.was.allergens.iter().copied();
    united
        .filter(|of| !brought.contains(of) || listed.contains(of))
        .collect()
}

fn planned(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    went_in: &WentIn,
    outputs: Vec<Output>,
    made: &[LotRow],
) -> Result<(Plan, Vec<Measurement>)> {
    let grams = |nth: usize| Ok(went_in.grams(nth));
    let mut looked = Looked::at(facts, asked, kind, &went_in.lots, grams, outputs, true)?;
    let lots = went_in.lots.iter();
    let inputs = lots.map(|lot| (lot, Choice::All)).collect();
    let step = looked.step(facts, asked, kind, inputs, true);
    let codes: Vec<LotCode> = made
        .iter()
        .map(LotRow::code)
        .collect::<store::Result<_>>()?;
    let mut plan = step.again(&went_in.draws(), &codes)?;
    let Looked {
        cure, heat, mince, ..
    } = looked;
    mince.add_to(&mut plan);
    if let Some(cure) = &cure {
        cure.tell(&mut plan);
    }
    heat.add_to(&mut plan);
    Ok((plan, cure.map_or(Vec::new(), |cure| cure.measured())))
}

fn take_in(
    facts: &mut Facts<'_, '_>,
    kin: &mut Kin,
    deed: &DeedRow,
    made: &[LotRow],
    plan: Plan,
    numbers: &[Measurement],
) -> Result<()> {
    for (row, birth) in made.iter().zip(plan.births) {
        kin.born(row.id, BornAs::of(&birth));
        let stops = birth.stops.into_iter().map(on_lot).collect();
        if kin.lots[&row.id].was.condition.is_some() {
            kin.judge_stops(row.id, deed, stops)?;
        }
        measured(facts, kin, row, (deed.recorded_at, deed.id), numbers);
        if let Some(state) = kin.lots.get_mut(&row.id) {
            state.reasons = birth.reasons;
        }
    }
    if !made.is_empty() {
        return Ok(());
    }
    let mut by_lot: BTreeMap<i32, Vec<JudgedStop>> = BTreeMap::new();
    for change in &plan.changes {
        by_lot.entry(change.lot.0).or_default();
    }
    for (lot, pack, stop) in plan.stops {
        by_lot.entry(lot.0).or_default().push((pack, stop));
    }
    for (lot, stops) in by_lot {
        kin.judge_stops(lot, deed, stops)?;
    }
    for (lot, reason) in plan.reasons {
        if let Some(state) = kin
            .lots
            .get_mut(&lot.0)
            .filter(|of| of.judged.contains(&deed.id))
        {
            state.reasons.push(reason);
        }
    }
    Ok(())
}

/// What its cure brought, where that is otherwise than the record has it.
fn measured(
    facts: &mut Facts<'_, '_>,
    kin: &mut Kin,
    row: &LotRow,
    recorded: Recorded,
    numbers: &[Measurement],
) {
    let known = kin.all.readings.get(&row.id).into_iter().flatten();
    let known: Vec<_> = known.filter(|of| of.deed_id == row.deed_id).collect();
    let as_known = numbers.iter().all(|number| {
        let same = |of: &&&store::measurements::LotReadingRow| {
            of.quantity == number.quantity.as_str() && of.millionths == number.millionths
        };
        known.iter().find(same).is_some()
    });
    if as_known {
        return;
    }
    // A cure that nobody could weigh before has no number yet.
    let first = known
        .first()
        .map_or(facts.moment.at.naive_utc(), |first| first.at);
    if let Some(past) = &mut facts.past {
        let of = past.readings.entry(row.id).or_default();
        of.retain(|(by, ..)| *by != recorded);
        let read = numbers.iter();
        of.extend(read.map(|of| (recorded, first, of.quantity, of.millionths)));
        of.sort_by_key(|(_, at, ..)| *at);
    }
    if let Some(state) = kin.lots.get_mut(&row.id) {
        state.measured = numbers.to_vec();
        state.changed = true;
    }
}

/// What is in lots that cannot be judged: by union, as ever.
fn unite(kin: &mut Kin, made: &[LotRow], went_in: &WentIn) {
    for row in made {
        let mut again = kin.lots[&row.id].was.clone();
        let lots = went_in.lots.iter();
        again
            .allergens
            .extend(lots.clone().flat_map(|lot| lot.allergens.iter()));
        again
            .may_contain
            .extend(lots.clone().flat_map(|lot| lot.may_contain.iter()));
        again
            .species
            .extend(lots.clone().flat_map(|lot| lot.species.iter()));
        let origin = lots.map(|lot| lot.origin);
        again.origin = origin.fold(domain::origin::Origin::NoSpecies, |all, of| all.with(of));
        kin.born(row.id, again);
    }
}
