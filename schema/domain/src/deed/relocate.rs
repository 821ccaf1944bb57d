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
use crate::says::Says;
use crate::stop::{Act, Cause, NewStop, Passed, ask};
use crate::words::{ProductKind, State, Topic};
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
            .map(|draw| moved(draw, place, state, moment))
            .collect();
        let mut warnings = passed.warnings;
        warnings.extend(self.cools_unseen(&draws));
        Ok(Plan {
            changes,
            stops: self.too_warm(&draws)?,
            warnings,
            reasons: passed.reasons,
            ..Plan::default()
        })
    }

    /// What has to be kept cold comes out of the cold, and nothing shows that it does without: what is ready to
    /// eat, and what is raw, in which some bacteria leave poisons that no heat undoes. A piece in its cure or drying
    /// is watched there.
    fn too_warm(&self, draws: &[Draw<'_>]) -> Result<Vec<(LotId, Option<PackId>, NewStop)>> {
        let lot = self.lot;
        let is_cold_food = !lot.waits_for_release() && lot.is_controlled() && lot.is_perishable();
        let is_food = lot.product.kind != ProductKind::Waste;
        let warms = |draw: &&Draw<'_>| draw.pack.now.state != State::Ambient;
        let stands = self.state == Some(State::Ambient) && draws.iter().any(|of| warms(&of));
        let rules = self.law.heat.failure.as_ref();
        let is_ready = lot.condition().is_ready();
        let leaves_out = rules.and_then(|rules| rules.leaves_raw_out.as_ref());
        let is_exempt = !is_ready && leaves_out.is_some();
        if !stands || !is_cold_food || !is_food || is_exempt {
            return Ok(Vec::new());
        }
        let (code, product) = (lot.code.clone(), lot.product.named());
        let because = Because {
            says: match is_ready {
                true => MoveSays::TooWarm { lot: code, product }.into(),
                false => MoveSays::RawTooWarm { lot: code, product }.into(),
            },
            rule: match rules {
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

    /// It comes from the heat into the cold, and no log goes with a move (`us-T4`, `confirmed-X-UK-5`).
    fn cools_unseen(&self, draws: &[Draw<'_>]) -> Option<Says> {
        let is_cold = matches!(self.state, Some(State::Chilled | State::Frozen));
        let was_hot = draws.iter().any(|of| of.pack.now.state == State::Hot);
        let asks = self.lot.is_controlled() && self.lot.is_perishable();
        (is_cold && was_hot && asks).then(|| MoveSays::CoolsUnseen.into())
    }
}
