//! A pack goes elsewhere, or is frozen or thawed. The lot stays what it was.

use super::change::moved;
use super::draw::{Choice, Draw, settle};
use super::says::MoveSays;
use crate::condition::ConditionSays;
use crate::dates::{Because, Rule};
use crate::law::Law;
use crate::lot::{Lot, LotId, PackId, PlaceId};
use crate::moment::Moment;
use crate::plan::Plan;
use crate::refusal::{Refusal, Result};
use crate::stop::{Act, Cause, NewStop, Passed, ask};
use crate::words::{State, Topic};
use chrono_tz::Tz;

/// Where a pack goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Whither {
    /// The place.
    pub place: PlaceId,
    /// Is it a counter, from which things are sold?
    pub is_counter: bool,
}

/// A move: which packs, where they go, and how they are kept there.
#[derive(Debug)]
pub struct Move<'a> {
    /// The lot.
    pub lot: &'a Lot,
    /// Which of its packs.
    pub choice: &'a Choice,
    /// Where they go, if elsewhere.
    pub to: Option<Whither>,
    /// How they are kept from now on, if otherwise.
    pub state: Option<State>,
    /// When.
    pub moment: Moment,
    /// The kitchen's time zone.
    pub zone: Tz,
    /// The law of the place.
    pub law: &'a Law,
    /// Was it done all the same, whatever stood in its way?
    pub as_it_happened: bool,
}

impl Move<'_> {
    /// What moves, or why it cannot.
    ///
    /// # Errors
    /// Neither a place nor a state is given, nothing is left to move, the lot was not made yet, a hold keeps it off
    /// the counter, or it has to stay cold.
    pub fn plan(&self) -> Result<Plan> {
        let (lot, state, moment) = (self.lot, self.state, &self.moment);
        if self.to.is_none() && state.is_none() {
            return Err(Refusal::cannot_be("to", MoveSays::Nowhere));
        }
        moment.not_before(lot.made_at, &lot.code, self.zone)?;
        let draws = settle(lot, self.choice, "")?;
        let passed = match self.to.is_some_and(|to| to.is_counter) {
            true => ask(&draws, Act::Counter, moment, self.as_it_happened, |_| {
                "to".into()
            })?,
            false => Passed::default(),
        };
        let place = self.to.map(|to| to.place);
        let changes = draws
            .iter()
            .map(|draw| moved(draw, place, state, moment.day))
            .collect();
        Ok(Plan {
            changes,
            stops: self.too_warm(&draws)?,
            warnings: passed.warnings,
            reasons: passed.reasons,
            ..Plan::default()
        })
    }

    /// What is ready to eat comes out of the cold, and nothing shows that it does without.
    fn too_warm(&self, draws: &[Draw<'_>]) -> Result<Vec<(LotId, Option<PackId>, NewStop)>> {
        let lot = self.lot;
        let is_ready = lot.condition().is_ready() && !lot.waits_for_release();
        let is_cold_food = is_ready && lot.is_controlled() && lot.is_perishable();
        let warms = |draw: &&Draw<'_>| draw.pack.now.state != State::Ambient;
        if self.state != Some(State::Ambient) || !is_cold_food || !draws.iter().any(|of| warms(&of))
        {
            return Ok(Vec::new());
        }
        let (code, product) = (lot.code.clone(), lot.product.named());
        let because = Because {
            says: MoveSays::TooWarm { lot: code, product }.into(),
            rule: match &self.law.heat.failure {
                Some(rules) => Rule::Rows(vec![rules.cold.limit.bound.row.clone()]),
                None => Rule::Practice(ConditionSays::ProofRule.into()),
            },
        };
        if !self.as_it_happened {
            return Err(Refusal::limit("state", &because));
        }
        let cause = Cause::failed(Topic::Cold, because, self.moment.at);
        let stop = |draw: &Draw<'_>| (lot.id, Some(draw.pack.id), cause.clone().into());
        Ok(draws.iter().filter(warms).map(stop).collect())
    }
}
