//! A step at the bench.

use super::facts::{Facts, choice, packing, place, wanted};
use super::measure::{self, Readings};
use super::mince::{self, MinceCheck};
use super::says::StepKindSays;
use super::{
    DeedHeader, Done, approval, cure, found_warm, happened, heat, heat_log, perform, stable,
};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::LoadedFamily;
use crate::wire::answers::DeedDone;
use crate::wire::asked::StepAsked;
use crate::wire::{Line, Weight};
use domain::code::LotCode;
use domain::condition::Stable;
use domain::deed::draw::{Choice, settle};
use domain::deed::output::Output;
use domain::deed::says::StepSays;
use domain::deed::step::Step;
use domain::family::{changes, yields};
use domain::grams::Grams;
use domain::heat::Span;
use domain::limits::{MOST_INPUTS, MOST_OUTPUTS};
use domain::lot::Lot;
use domain::lot::LotId;
use domain::origin::Origin;
use domain::product::{Product, YieldOf};
use domain::says::Says;
use domain::series::Series;
use domain::stop::held;
use domain::words::{Addition, Allergen, DeedKind, StepKind, Topic};
use domain::yields::Verdict;
use std::collections::hash_map::Entry;
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;
use store::family::{Ancestors, Extent};
use store::packs::PackChoice;

/// Records a step.
///
/// # Errors
/// Whatever the contract refuses of a step.
pub fn take(app: &Caller<'_>, asked: &StepAsked) -> Result<Done> {
    let kind = kind(&asked.kind)?;
    let header = DeedHeader {
        id: asked.id,
        kind: kind.into(),
        at: asked.at,
        began_at: asked.began_at,
        by: &asked.by,
        place: Some(&asked.place),
        note: asked.note.as_ref(),
    };
    let readings = Readings::of(asked.readings.as_ref(), "readings.")?;
    let happened = happened::as_it_happened(asked.as_it_happened, asked.note.as_ref())?;
    perform(app, header, asked, |facts| {
        let span = Span {
            began: facts.moment.began_at,
            ended: facts.moment.at,
            zone: facts.kitchen.zone,
        };
        heat_log::in_time(asked, &span)?;
        let (lots, choices) = inputs(facts, asked)?;
        let outputs = outputs(facts, asked)?;
        if !happened && !outputs.is_empty() {
            not_held(facts, &lots, &choices)?;
        }
        let products = outputs.iter().map(|output| output.product.clone());
        let products: Vec<Arc<Product>> = products.collect();
        let grams = |nth: usize| cure::grams_of(&lots, &choices, nth);
        let mut looked = Looked::at(facts, asked, kind, &lots, grams, outputs, happened)?;
        let inputs = lots.iter().zip(choices.iter().cloned()).collect();
        let step = looked.step(facts, asked, kind, inputs, happened);
        let codes = codes(facts, step.origin(), step.outputs.len())?;
        let mut plan = step.plan(&codes)?;
        let Looked {
            cure, heat, mince, ..
        } = looked;
        if let Some(cure) = &cure {
            cure.tell(&mut plan);
        }
        mince.add_to(&mut plan);
        plan.warnings.extend(approval::missing(facts, kind));
        heat.add_to(&mut plan);
        let mut done = facts.record(asked.id.0.to_string(), kind.into(), &plan)?;
        done.unexplained_grams = unexplained(&step.added);
        done.said.extend(news(facts, kind, &codes, &products)?);
        done.said.extend(cut_out(facts, kind, &step.inputs)?);
        let probe = asked.readings.as_ref().and_then(|of| of.probe.as_ref());
        let (probe, against) = measure::probe_of(facts, probe, "readings.probe")?;
        done.said.extend(against);
        measure::keep(facts, &readings, None, probe)?;
        done.said.extend(heat_log::keep(facts, asked)?);
        found_warm::of_step(facts, asked, (&lots, &codes), happened, &mut done)?;
        if let Some(cure) = &cure {
            measure::keep_of_each(facts, &cure.measured(), &codes)?;
        }
        Ok::<DeedDone, Error>(done)
    })
}

/// What is held is refused before any limit is looked at.
fn not_held(facts: &Facts<'_, '_>, lots: &[Lot], choices: &[Choice]) -> Result<()> {
    for (nth, (lot, choice)) in lots.iter().zip(choices).enumerate() {
        // What is not there is refused where the step is planned.
        let draws = settle(lot, choice, "").unwrap_or_default();
        held(&draws, &facts.moment, |_| format!("inputs[{nth}].lot"))?;
    }
    Ok(())
}

/// What is found of a step before it is planned: its cure, its heat, what its outputs are by it.
pub(super) struct Looked {
    pub(super) cure: Option<cure::CureCheck>,
    pub(super) heat: heat::HeatCheck,
    pub(super) mince: MinceCheck,
    outputs: Vec<Output>,
    stable: Option<Stable>,
    puts_right: Option<Topic>,
}

impl Looked {
    /// Looks at a step that is done now, or at one that is judged again.
    ///
    /// # Errors
    /// A limit that it breaks, where it is not taken as it happened; what cannot be.
    pub(super) fn at(
        facts: &mut Facts<'_, '_>,
        asked: &StepAsked,
        kind: StepKind,
        lots: &[Lot],
        grams: impl Fn(usize) -> Result<Grams>,
        mut outputs: Vec<Output>,
        happened: bool,
    ) -> Result<Looked> {
        let products = outputs.iter().map(|output| output.product.clone());
        let products: Vec<Arc<Product>> = products.collect();
        let cure = cure::look(facts, asked, kind, lots, &grams, &outputs, happened)?;
        let heat = heat::look(facts, asked, kind, lots, &grams, &products, happened)?;
        let mince = mince::look(facts, asked, kind, lots, &products, happened)?;
        let stable = stable::shown(facts, asked, kind, lots)?;
        for output in &mut outputs {
            output.heat = heat.proof(&output.product);
        }
        approval::of_outputs(facts, lots, &mut outputs)?;
        Ok(Looked {
            puts_right: heat.proves(&products).then_some(Topic::Heat),
            cure,
            heat,
            mince,
            outputs,
            stable,
        })
    }

    /// The step, to be planned or judged again: once.
    pub(super) fn step<'a>(
        &mut self,
        facts: &Facts<'a, '_>,
        asked: &StepAsked,
        kind: StepKind,
        inputs: Vec<(&'a Lot, Choice)>,
        happened: bool,
    ) -> Step<'a> {
        let added = asked.added.iter().flatten();
        let vacuum = facts.kitchen.approval("vacuum", facts.moment.day);
        Step {
            kind,
            moment: facts.moment,
            zone: facts.kitchen.zone,
            place: facts.place.expect("a step has a place"),
            inputs,
            outputs: std::mem::take(&mut self.outputs),
            added: added.map(|of| (of.what.0, of.grams.0)).collect(),
            stable: self.stable.take(),
            approved_vacuum: vacuum.map(str::to_owned),
            law: facts.law(),
            ready_keeps_its_day: facts.kitchen.entry.ready_keeps_its_day.unwrap_or(false),
            puts_right: self.puts_right,
            as_it_happened: happened,
        }
    }
}

/// A step's kind, or the call that takes it.
fn kind(asked: &Line) -> Result<StepKind> {
    let text = asked.0.as_str();
    if let Some(kind) = StepKind::parse(text) {
        return Ok(kind);
    }
    let kind = text.to_owned();
    let detail = match text {
        "receive" => StepKindSays::Receipts,
        "move" | "freeze" | "thaw" => StepKindSays::Moves,
        "sell" | "serve" | "discard" | "ship" | "return" => StepKindSays::Departures { kind },
        "take-back" => StepKindSays::TakeBacks,
        "weigh" | "measure" => StepKindSays::Readings,
        "count" => StepKindSays::Counts,
        "clean-down" => StepKindSays::CleanDowns,
        "void" => StepKindSays::Voids,
        "correct" => StepKindSays::Corrections,
        _ => StepKindSays::NoStep {
            kind,
            steps: StepKind::SPELT.join(", "),
        },
    };
    Err(Error::cannot_be("kind", detail))
}

fn inputs(facts: &mut Facts<'_, '_>, asked: &StepAsked) -> Result<(Vec<Lot>, Vec<Choice>)> {
    if asked.inputs.len() > MOST_INPUTS {
        let detail = StepSays::TooManyInputs {
            inputs: asked.inputs.len(),
            most: MOST_INPUTS,
        };
        return Err(Error::cannot_be("inputs", detail));
    }
    let mut choices = Vec::with_capacity(asked.inputs.len());
    let mut sought: Vec<(LotCode, PackChoice, String)> = Vec::with_capacity(asked.inputs.len());
    for (nth, input) in asked.inputs.iter().enumerate() {
        let field = format!("inputs[{nth}].");
        let named = facts.named(&input.lot.0, &format!("{field}lot"))?;
        let choice = choice(
            &named,
            input.pack,
            input.packs.as_deref(),
            input.grams,
            &field,
        )?;
        sought.push((named.code, wanted(&choice), format!("{field}lot")));
        choices.push(choice);
    }
    Ok((facts.lots(&sought)?, choices))
}

/// A product, its key, and the allergens of its recipe.
type OfProduct = (Arc<Product>, i32, BTreeSet<Allergen>);

fn outputs(facts: &mut Facts<'_, '_>, asked: &StepAsked) -> Result<Vec<Output>> {
    if asked.outputs.len() > MOST_OUTPUTS {
        let detail = StepSays::TooManyOutputs {
            outputs: asked.outputs.len(),
            most: MOST_OUTPUTS,
        };
        return Err(Error::cannot_be("outputs", detail));
    }
    let mut outputs = Vec::with_capacity(asked.outputs.len());
    let mut known: HashMap<&str, OfProduct> = HashMap::new();
    for (nth, output) in asked.outputs.iter().enumerate() {
        let field = format!("outputs[{nth}].");
        let code = output.product.0.as_str();
        // Sixty tubs of one thing are looked up once.
        let (product, product_key, recipe_allergens) = match known.entry(code) {
            Entry::Occupied(known) => known.get().clone(),
            Entry::Vacant(free) => {
                let (product, key) = facts.product(code, &format!("{field}product"))?;
                let allergens = facts.recipe_allergens(code);
                free.insert((product, key, allergens)).clone()
            }
        };
        let to = output.place.as_ref();
        outputs.push(Output {
            recipe_allergens,
            product,
            product_key,
            grams: output.grams.0,
            packing: packing(output.pack_count, output.pack_grams.as_deref(), &field)?,
            place: to
                .map(|to| place(&facts.standing.lists, &to.0, &format!("{field}place")))
                .transpose()?,
            state: output.state.map(|state| state.0),
            packaging: output.packaging.map(|packaging| packaging.0),
            heat: None,
            approved_ready: None,
            freed: None,
            approved_stable: None,
            note: output.note.as_ref().map(|note| note.0.clone()),
        });
    }
    Ok(outputs)
}

/// Codes for lots of an origin, from the animal's series where it is all of one animal.
pub(super) fn codes(
    facts: &mut Facts<'_, '_>,
    origin: Origin,
    count: usize,
) -> Result<Vec<LotCode>> {
    if count == 0 {
        return Ok(Vec::new());
    }
    let stem = match origin {
        Origin::One(animal) => store::animals::by_key(facts.tx.conn, animal.0)?.stem,
        _ => None,
    };
    let series = Series::for_lots(&origin, stem, &facts.kitchen.house, facts.moment.day);
    Ok(store::series::codes(facts.tx, &series, count)?)
}

/// What is new in what was made, against the last time: a supplier's other lot changes what is in it.
fn news(
    facts: &mut Facts<'_, '_>,
    kind: StepKind,
    codes: &[LotCode],
    products: &[Arc<Product>],
) -> Result<Vec<Says>> {
    if matches!(
        kind,
        StepKind::Portion | StepKind::Pack | StepKind::Cut | StepKind::BreakDown
    ) {
        return Ok(Vec::new());
    }
    let mut pairs: Vec<(LotId, LotId)> = Vec::new();
    let mut told = BTreeSet::new();
    for (code, product) in codes.iter().zip(products) {
        // Twenty tubs of one thing have the same in them.
        if product.kind.has_parts()
            && told.insert(product.code.as_str())
            && let Some(row) = store::lots::by_code(facts.tx.conn, code)?
            && let Some(before) = store::lots::last_before(facts.tx.conn, &row)?
        {
            pairs.push((LotId(before.id), LotId(row.id)));
        }
    }
    if pairs.is_empty() {
        return Ok(Vec::new());
    }
    let lots: Vec<i32> = pairs
        .iter()
        .flat_map(|(one, other)| [one.0, other.0])
        .collect();
    let reading = LoadedFamily::load(facts.app, facts.tx.conn, &lots, NEAR)?;
    let changed = |pair: &(LotId, LotId)| {
        let (lists, cures) = (&reading.standing.lists, &reading.law.cures);
        let change = changes(&reading.family, *pair, lists, cures);
        change.map_or(Vec::new(), |change| change.says())
    };
    let mut news: Vec<_> = pairs.iter().flat_map(changed).collect();
    news.dedup();
    Ok(news)
}

/// A change deeper down was reported when it was made.
const NEAR: Extent = Extent {
    ancestors: Ancestors::Steps(2),
    ..Extent::ALONE
};

/// What is not as usual about a cut-out: a piece too light or too heavy, weight that nobody weighed.
/// A yield never stops anybody.
fn cut_out(
    facts: &mut Facts<'_, '_>,
    kind: StepKind,
    inputs: &[(&Lot, Choice)],
) -> Result<Vec<Says>> {
    let [(carcass, _)] = inputs else {
        return Ok(Vec::new());
    };
    let has_style = matches!(carcass.product.yields, Some(YieldOf::CutStyle(_)));
    if kind != StepKind::BreakDown || !has_style {
        return Ok(Vec::new());
    }
    let reading = LoadedFamily::load(facts.app, facts.tx.conn, &[carcass.id.0], CUT)?;
    // A side that is cut with pieces the style does not know has nothing to be compared with.
    let Ok((_, lines)) = yields(&reading.family, carcass.id, &facts.app.law.trade.yields) else {
        return Ok(Vec::new());
    };
    // As long as something hangs there a light piece may only be the first part of it.
    let of = reading.family.get(carcass.id);
    let hangs = of.is_some_and(|of| !of.went.on_hand.is_none_left());
    let odd = lines.into_iter().filter(|line| match line.verdict {
        // What hangs there still was not left out.
        Verdict::High => !hangs || line.says.key() != "cut-out-left-out",
        Verdict::Low => !hangs,
        _ => false,
    });
    Ok(odd.map(|line| line.says).collect())
}

/// A carcass and what was cut off it.
const CUT: Extent = Extent {
    children: true,
    ..Extent::ALONE
};

/// A difference of two scales is nobody's meat: it stays unexplained.
fn unexplained(added: &[(Addition, Grams)]) -> Option<Weight> {
    let differences = added
        .iter()
        .filter(|(what, _)| *what == Addition::ScaleDifference);
    let sum: Grams = differences.map(|(_, grams)| *grams).sum();
    (sum != Grams::ZERO).then_some(Weight(-sum))
}

/// The kinds of deed that are steps.
pub fn is_step(kind: DeedKind) -> bool {
    StepKind::parse(kind.as_str()).is_some()
}
