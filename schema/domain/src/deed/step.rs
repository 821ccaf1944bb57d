//! A step at the bench: packs go in, lots come out, and the weights close.

use super::change::{moved, taken};
use super::draw::{Choice, Draw, settle, weight};
use super::output::Output;
use super::says::StepSays;
use super::went_in::WentIn;
use crate::code::LotCode;
use crate::condition::{Born, Stable};
use crate::dates::{Because, Making};
use crate::grams::Grams;
use crate::law::Law;
use crate::limits::{MOST_INPUTS, MOST_OUTPUTS, MOST_PACKS, SCALE_DIFFERENCE_THOUSANDTHS};
use crate::lot::{BirthDate, Lot, PackNow, PlaceId};
use crate::moment::Moment;
use crate::origin::Origin;
use crate::plan::{Balance, Birth, PackChange, Plan, Reason};
use crate::refusal::{Refusal, Result};
use crate::says::Says;
use crate::stop::{self, Act, Cause, NewStop, Passed, Placed, ask};
use crate::words::{Account, Addition, ProductKind, State, StepKind, Topic};
use chrono_tz::Tz;
use rust_decimal::Decimal;

/// What was done, with the facts it touches.
#[derive(Debug)]
pub struct Step<'a> {
    /// Which step.
    pub kind: StepKind,
    /// When.
    pub moment: Moment,
    /// The kitchen's time zone.
    pub zone: Tz,
    /// Where; outputs are there unless they say otherwise.
    pub place: PlaceId,
    /// What goes in: the lot as it is now, and which of its packs.
    pub inputs: Vec<(&'a Lot, Choice)>,
    /// What comes out.
    pub outputs: Vec<Output>,
    /// What was added without a lot of its own.
    pub added: Vec<(Addition, Grams)>,
    /// Readings that show that everything in it keeps without time and temperature control.
    pub stable: Option<Stable>,
    /// The number of the approval for vacuum packs that holds on that day, if one does.
    pub approved_vacuum: Option<String>,
    /// The law of the place.
    pub law: &'a Law,
    /// Does the house let ready food keep its own day where it is cooked anew with raw food?
    pub ready_keeps_its_day: bool,
    /// What the step proves, and so puts right where it had failed.
    pub puts_right: Option<Topic>,
    /// Was it done all the same, whatever stood in its way?
    pub as_it_happened: bool,
}

impl Step<'_> {
    /// Where everything with a species in the outputs comes from.
    pub fn origin(&self) -> Origin {
        self.inputs
            .iter()
            .fold(Origin::NoSpecies, |origin, (lot, _)| {
                origin.with(lot.origin)
            })
    }

    /// What the step adds to the record. `codes` are the outputs' codes, in order.
    ///
    /// # Errors
    /// Whatever the contract refuses of a step: see [`Refusal`].
    pub fn plan(&self, codes: &[LotCode]) -> Result<Plan> {
        self.counts_fit()?;
        let draws = self.draws()?;
        let passed = self.stops(&draws)?;
        let loss = self.balance(&draws)?;
        let with_animal = draws
            .iter()
            .filter(|draw| draw.lot.origin.has_animal())
            .map(|draw| draw.grams)
            .sum();
        let balance = Balance {
            added: self.added.clone(),
            loss,
            with_animal,
        };
        let mut plan = Plan {
            balance: Some(balance),
            warnings: self.warnings(&draws),
            reasons: passed.reasons.clone(),
            ..Plan::default()
        };
        plan.warnings.extend(passed.warnings.iter().cloned());
        plan.changes = if self.outputs.is_empty() {
            self.notes(&draws)
        } else {
            self.uses(&draws)?
        };
        let (births, warnings) = self.births(&draws, codes, &passed)?;
        (plan.births, plan.warnings) = (births, [plan.warnings, warnings].concat());
        Ok(plan)
    }

    /// What the step makes of packs as they were then, and what stood in its way: the same judgement as
    /// [`Step::plan`] makes, of a step that is on record. Its weights were held then.
    ///
    /// # Errors
    /// A stop stands in the way, or a limit is broken, and the step is not taken as it happened.
    pub fn again(&self, draws: &[Draw<'_>], codes: &[LotCode]) -> Result<Plan> {
        let passed = self.stops(draws)?;
        let changes = match self.outputs.is_empty() {
            true => self.notes(draws),
            false => Vec::new(),
        };
        let (births, _) = self.births(draws, codes, &passed)?;
        Ok(Plan {
            births,
            changes,
            ..Plan::default()
        })
    }

    fn births(
        &self,
        draws: &[Draw<'_>],
        codes: &[LotCode],
        passed: &Passed,
    ) -> Result<(Vec<Birth>, Vec<Says>)> {
        let went_in = WentIn::of(draws, &self.moment);
        let (mut births, mut warnings) = (Vec::with_capacity(codes.len()), Vec::new());
        let unconfirmed = self.unconfirmed();
        let mut packs_made = 0;
        for (nth, (output, code)) in self.outputs.iter().zip(codes).enumerate() {
            let (mut birth, warned) =
                self.birth(output, code, &went_in, &format!("outputs[{nth}]."))?;
            warnings.extend(warned);
            warnings.extend(output.dried_as_raw(self.kind, &birth.species));
            birth.stops.extend(passed.inherited.iter().cloned());
            birth.stops.extend(unconfirmed.iter().cloned());
            packs_made += birth.packs.len();
            if packs_made > MOST_PACKS as usize {
                let detail = StepSays::TooManyPacks { most: MOST_PACKS };
                return Err(Refusal::cannot_be(format!("outputs[{nth}]"), detail));
            }
            births.push(birth);
        }
        Ok((births, warnings))
    }

    /// What was cured under a limit that nobody has confirmed stays so, whatever it is made into, and so does
    /// what nothing shows to be cured, and that of which nobody has said what is in it: each of these stops once.
    fn unconfirmed(&self) -> Vec<NewStop> {
        let mut found: Vec<NewStop> = Vec::new();
        for (lot, _) in &self.inputs {
            let goes_on = |placed: &&Placed| placed.goes_on(self.moment.at);
            for placed in lot.stops.iter().filter(goes_on) {
                if !found.iter().any(|of| of.root == Some(placed.root)) {
                    found.push(NewStop {
                        cause: Cause {
                            since: placed.cause.since.max(self.moment.at),
                            ..placed.cause.clone()
                        },
                        root: Some(placed.root),
                        incident: None,
                    });
                }
            }
        }
        found
    }

    fn counts_fit(&self) -> Result<()> {
        let (inputs, outputs) = (self.inputs.len(), self.outputs.len());
        if inputs == 0 {
            return Err(Refusal::cannot_be("inputs", StepSays::NothingIn));
        }
        if inputs > MOST_INPUTS {
            let most = MOST_INPUTS;
            let detail = StepSays::TooManyInputs { inputs, most };
            return Err(Refusal::cannot_be("inputs", detail));
        }
        if outputs > MOST_OUTPUTS {
            let most = MOST_OUTPUTS;
            let detail = StepSays::TooManyOutputs { outputs, most };
            return Err(Refusal::cannot_be("outputs", detail));
        }
        if outputs == 0 && !self.kind.may_make_nothing() {
            let detail = StepSays::MakesSomething { kind: self.kind };
            return Err(Refusal::cannot_be("outputs", detail));
        }
        Ok(())
    }

    fn draws(&self) -> Result<Vec<Draw<'_>>> {
        let mut draws: Vec<Draw<'_>> = Vec::with_capacity(self.inputs.len());
        for (nth, (lot, choice)) in self.inputs.iter().enumerate() {
            let field = format!("inputs[{nth}].");
            self.moment.not_before(lot.made_at, &lot.code, self.zone)?;
            for draw in settle(lot, choice, &field)? {
                if draws.iter().any(|other| other.pack.id == draw.pack.id) {
                    let pack = lot.shown(draw.pack.number);
                    let detail = StepSays::NamedTwice { pack };
                    return Err(Refusal::cannot_be(format!("{field}pack"), detail));
                }
                draws.push(draw);
            }
        }
        Ok(draws)
    }

    /// In + added - out, which is never less than nothing.
    fn balance(&self, draws: &[Draw<'_>]) -> Result<Grams> {
        if self.outputs.is_empty() {
            return Ok(Grams::ZERO);
        }
        for (nth, output) in self.outputs.iter().enumerate() {
            weight(output.grams, &format!("outputs[{nth}].grams"))?;
        }
        let inputs: Grams = draws.iter().map(|draw| draw.grams).sum();
        for (nth, (what, grams)) in self.added.iter().enumerate() {
            let field = format!("added[{nth}].grams");
            weight(*grams, &field)?;
            let bound = inputs.thousandths(SCALE_DIFFERENCE_THOUSANDTHS);
            if *what == Addition::ScaleDifference && self.scale_difference() > bound {
                let detail = StepSays::TwoScalesApart {
                    percent: Decimal::new(SCALE_DIFFERENCE_THOUSANDTHS, 1),
                    bound,
                    inputs,
                    grams: *grams,
                };
                return Err(Refusal::cannot_be(field, detail));
            }
        }
        let added: Grams = self.added.iter().map(|(_, grams)| *grams).sum();
        let out: Grams = self.outputs.iter().map(|output| output.grams).sum();
        if out > inputs + added {
            let inputs = inputs + added;
            let detail = StepSays::MoreOut { out, inputs };
            return Err(Refusal::cannot_be("outputs", detail));
        }
        Ok(inputs + added - out)
    }

    fn scale_difference(&self) -> Grams {
        let added = self
            .added
            .iter()
            .filter(|(what, _)| *what == Addition::ScaleDifference);
        added.map(|(_, grams)| *grams).sum()
    }

    fn warnings(&self, draws: &[Draw<'_>]) -> Vec<Says> {
        let mut warnings = Vec::new();
        for draw in draws {
            let pack = draw.lot.shown(draw.pack.number);
            if draw.pack.now.state == State::Frozen {
                warnings.push(StepSays::Frozen { pack }.into());
            }
        }
        let grams = self.scale_difference();
        if grams > Grams::ZERO {
            warnings.push(StepSays::TwoScales { grams }.into());
        }
        warnings
    }

    fn uses(&self, draws: &[Draw<'_>]) -> Result<Vec<PackChange>> {
        let take = |draw: &Draw<'_>| taken(draw, Account::Used, &self.moment);
        draws.iter().map(take).collect()
    }

    /// A turn, a rinse, a hanging: the piece stays the lot that it was, and hangs where the step is.
    fn notes(&self, draws: &[Draw<'_>]) -> Vec<PackChange> {
        let note = |draw: &Draw<'_>| moved(draw, Some(self.place), None, &self.moment);
        draws.iter().map(note).collect()
    }

    /// What stands in the way of what goes in. A cured piece goes on in its cure, or is cooked; a turn makes nothing.
    fn stops(&self, draws: &[Draw<'_>]) -> Result<Passed> {
        use StepKind::*;
        if self.outputs.is_empty() {
            return Ok(Passed::default());
        }
        let act = Act::Use {
            cure_goes_on: matches!(
                self.kind,
                Cure | Turn | Rinse | Equalise | Hang | Smoke | Chill | Cook | Render
            ),
            puts_right: self.puts_right,
            to_waste: { self.outputs.iter() }.all(|of| of.product.kind == ProductKind::Waste),
        };
        let field = |draw: &Draw<'_>| {
            let of = |(lot, _): &(&Lot, Choice)| lot.id == draw.lot.id;
            let nth = self.inputs.iter().position(of).unwrap_or(0);
            format!("inputs[{nth}].lot")
        };
        ask(draws, act, &self.moment, self.as_it_happened, field)
    }

    /// Is it parted from pieces that were released, and nothing else is done to them? Then their release holds on.
    fn is_of_released(&self) -> bool {
        let lots = self.inputs.iter().map(|(lot, _)| lot);
        let mut meat = lots.filter(|lot| !lot.species.is_empty()).peekable();
        let parts = self.kind.parts_only() && meat.peek().is_some();
        parts && meat.all(|lot| lot.product.is_hung() && lot.released)
    }

    fn failed(&self, because: Option<Because>) -> Vec<NewStop> {
        let stop = |because| Cause::failed(Topic::Date, because, self.moment.at).into();
        because.into_iter().map(stop).collect()
    }

    fn birth(
        &self,
        output: &Output,
        code: &LotCode,
        went_in: &WentIn,
        field: &str,
    ) -> Result<(Birth, Vec<Says>)> {
        let packs = output.packing.packs(output.grams, field)?;
        let lots = || self.inputs.iter().map(|(lot, _)| lot);
        let product = &output.product;
        let own = product.allergens.iter().chain(&output.recipe_allergens);
        let stable = output.approved_stable.as_ref().or(self.stable.as_ref());
        let proven = Born {
            kind: self.kind,
            product,
            parts: &went_in.parts,
            watered: { self.added.iter() }.any(|(what, _)| *what != Addition::ScaleDifference),
            heat: output.heat.as_ref(),
            approved: output.approved_ready.as_deref(),
            freed: output.freed.as_deref(),
            stable,
        }
        .condition();
        let dated = Making {
            product,
            kind: self.kind.into(),
            day: self.moment.day,
            parts: &went_in.dates,
            supplier: None,
            once_opened: None,
            packaging: output.packaging,
            is_controlled: proven.condition.stable.is_none(),
            stable: stable.map(|stable| stable.because.clone()),
            is_killed: output.heat.is_some() && !product.raw,
            approved: self.approved_vacuum.as_deref(),
            law: self.law,
            ready_keeps_its_day: self.ready_keeps_its_day,
            as_it_happened: self.as_it_happened,
            is_released: self.is_of_released(),
            is_unfrozen_fish: !proven.condition.is_ready()
                && went_in.thaws_fish(output.state.unwrap_or(product.storage)),
        }
        .date()
        .map_err(|refusal| refusal.within(field))?;
        let half = stop::half_cooked(code, product, proven.condition).map(Says::from);
        let warnings = dated.warnings.into_iter().chain(half).collect();
        let birth = Birth {
            code: code.clone(),
            product: output.product_key,
            grams: output.grams,
            origin: self.origin(),
            allergens: lots()
                .flat_map(|lot| &lot.allergens)
                .chain(own)
                .copied()
                .collect(),
            may_contain: lots()
                .flat_map(|lot| lot.may_contain.iter().copied())
                .collect(),
            supplied: None,
            species: lots()
                .flat_map(|lot| lot.species.iter().copied())
                .chain(product.species)
                .collect(),
            born: PackNow::new(
                output.grams,
                output.place.unwrap_or(self.place),
                output.state.unwrap_or(product.storage),
                BirthDate {
                    use_by: dated.use_by,
                    later: dated.later,
                    was_frozen: dated.was_frozen,
                },
                self.moment.day,
            ),
            later: dated.later,
            condition: proven.condition,
            packaging: output.packaging,
            reasons: [
                Reason::all(Topic::Condition, proven.because),
                Reason::all(Topic::Date, dated.because),
            ]
            .concat(),
            stops: self.failed(dated.failed),
            packs,
            note: output.note.clone(),
        };
        Ok((birth, warnings))
    }
}
