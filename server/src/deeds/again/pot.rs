//! A pot that nobody knew, judged again: somebody has said what is in it.

use super::kin::Kin;
use super::stops::on_lot;
use super::{effective, request};
use crate::deeds::contents::{ListRecipe, contents};
use crate::deeds::facts::Facts;
use crate::error::Result;
use crate::wire::adopt::AdoptionAsked;
use domain::deed::adopt::{self, Pot};
use domain::deed::again::BornAs;
use domain::grams::Grams;
use domain::lot::PlaceId;
use store::deeds::DeedRow;

/// Judges an adoption again.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn again(facts: &mut Facts<'_, '_>, kin: &mut Kin, deed: &DeedRow) -> Result<()> {
    let of = kin.all.corrections.get(&deed.id);
    let of = of.map_or(&[][..], Vec::as_slice);
    let asked: AdoptionAsked = request(&effective(deed, of)?)?;
    let Some(row) = kin.made_by(deed.id).into_iter().next() else {
        return Ok(());
    };
    let product = kin.lots[&row.id].product.clone();
    let kept = kin.lots[&row.id].was.supplied.clone();
    let list = ListRecipe::as_kept(facts, &product, kept.as_ref())?;
    let contents = contents(facts, asked.declares.as_ref(), list);
    let moment = facts.moment;
    let pot = Pot {
        product: &product,
        grams: Grams::from_milligrams(row.made_mg),
        place: PlaceId(row.born_place_id),
        moment: &moment,
    };
    let (key, code) = (row.version_id, row.code()?);
    let mut plan = adopt::unknown(&pot, key, code, &contents, &asked.why.0)?;
    let birth = plan.births.remove(0);
    kin.born(row.id, BornAs::of(&birth));
    let stops = birth.stops.into_iter().map(on_lot).collect();
    kin.judge_stops(row.id, deed, stops)?;
    if let Some(state) = kin.lots.get_mut(&row.id) {
        state.reasons = birth.reasons;
    }
    Ok(())
}
