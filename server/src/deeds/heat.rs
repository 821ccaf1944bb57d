//! Was it cooked, and cooled, as the law of the place asks? What a date that begins with a cook rests on.

use super::facts::Facts;
use super::happened::broken;
use super::says::HeatDeedSays;
use crate::error::Result;
use crate::wire::asked::StepAsked;
use crate::wire::cures::decimal;
use chrono::TimeDelta;
use domain::condition::HeatProof;
use domain::dates::Because;
use domain::heat::{self, Answer, Cook, Cooled, CoreReading, Food, Judgement, Log, Standard};
use domain::lot::{Lot, LotId, PackId};
use domain::measure::Temperature;
use domain::plan::{Plan, Reason};
use domain::product::Product;
use domain::refusal::Refusal;
use domain::says::Says;
use domain::stop::NewStop;
use domain::words::{ProvedBy, StepKind, Topic};
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;

/// What the times and temperatures of a step show.
#[derive(Default)]
pub struct HeatCheck {
    because: Vec<Because>,
    warnings: Vec<Says>,
    stops: Vec<NewStop>,
    proofs: HashMap<String, HeatProof>,
}

/// Looks at the times and temperatures of a step.
///
/// # Errors
/// Too little heat for what the product claims to be: with the numbers. A reading that cannot be.
pub fn look(
    facts: &Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
    products: &[Arc<Product>],
    as_it_happened: bool,
) -> Result<HeatCheck> {
    let log = log(facts, asked)?;
    let mut looked = HeatCheck::default();
    if matches!(kind, StepKind::Cook | StepKind::Smoke | StepKind::Render) {
        let mut codes = BTreeSet::new();
        for product in products {
            if codes.insert(product.code.as_str()) {
                looked.look_at(facts, asked, lots, product, log.as_ref(), as_it_happened)?;
            }
        }
    }
    let cooled =
        kind == StepKind::Chill || products.iter().any(|product| product.cooked_as.is_some());
    if let Some(log) = log
        .as_ref()
        .filter(|log| cooled && log.last().core < log.first().core)
        && let Some(plan) = &facts.law().heat.after_cooking
    {
        let cooled = Cooled {
            log,
            nitrite_ppm: None,
            is_approved: false,
        };
        let law = facts.law();
        let judged = heat::cooled(&cooled, plan, &law.heat, &law.rows)
            .map_err(|refusal| refusal.within("log."))?;
        looked.tell(facts, &judged, Topic::Cooling, "log", as_it_happened)?;
    }
    Ok(looked)
}

fn log(facts: &Facts<'_, '_>, asked: &StepAsked) -> Result<Option<Log>> {
    let Some(readings) = asked.log.as_ref().filter(|readings| !readings.is_empty()) else {
        return Ok(None);
    };
    let readings = readings.iter().map(|reading| CoreReading {
        at: reading.at.0.to_utc(),
        core: Temperature::celsius(decimal(reading.celsius)),
    });
    let log = Log::new(readings.collect(), facts.kitchen.zone);
    Ok(Some(log.map_err(|refusal| refusal.within("log."))?))
}

fn cooked(
    facts: &Facts<'_, '_>,
    asked: &StepAsked,
    food: Food,
    log: Option<&Log>,
) -> Result<Option<Judgement>> {
    let law = facts.law();
    let code_year = facts.kitchen.entry.code_year;
    let of_place = law.heat.code_year.as_ref().map(|(year, _)| *year);
    let code_year = code_year.or(of_place).unwrap_or_default();
    let standard = Standard::Kitchen { food, code_year };
    if let Some(log) = log {
        return Ok(Some(heat::enough_by_log(
            log, &standard, &law.heat, &law.rows,
        )));
    }
    let readings = asked.readings.as_ref();
    let Some(celsius) = readings.and_then(|readings| readings.celsius) else {
        return Ok(None);
    };
    let held = readings.and_then(|readings| readings.hold_minutes);
    let cook = Cook {
        core: Temperature::celsius(decimal(celsius)),
        held: TimeDelta::milliseconds(held.map_or(0, |minutes| minutes.0 * 60 / 1_000)),
    };
    let judged =
        heat::enough(&cook, &standard, &law.heat, &law.rows).map_err(|refusal| Refusal {
            field: Some(field_of(refusal.field.as_deref()).into()),
            ..refusal
        })?;
    Ok(Some(judged))
}

/// The field as the caller wrote it.
fn field_of(told: Option<&str>) -> &'static str {
    match told {
        Some("held") => "readings.hold_minutes",
        _ => "readings.celsius",
    }
}

/// The classes of food that a cook is judged by: what the list says of the product, and poultry where
/// raw poultry is in it, whatever the list says. What no list gives a class is judged as ground meat.
fn foods(product: &Product, lots: &[Lot]) -> Vec<Food> {
    let raw = lots.iter().filter(|lot| !lot.condition().is_ready());
    let poultry = raw
        .flat_map(|lot| &lot.species)
        .any(|species| species.is_poultry());
    let listed = product.cooked_as.unwrap_or(Food::Ground);
    match poultry && listed != Food::Poultry {
        true => vec![listed, Food::Poultry],
        false => vec![listed],
    }
}

impl HeatCheck {
    /// Did it prove that all the food was cooked as its products claim?
    pub fn proves(&self, products: &[Arc<Product>]) -> bool {
        let proven = |product: &Arc<Product>| self.proofs.contains_key(&product.code);
        !products.is_empty() && products.iter().all(proven)
    }

    /// The proof that it gives of a product, if it does.
    pub fn proof(&self, product: &Product) -> Option<HeatProof> {
        self.proofs.get(&product.code).cloned()
    }

    /// Judges the cook of one product. What is ready already needs no kill: there too little heat is
    /// nobody's fault, and proves nothing.
    fn look_at(
        &mut self,
        facts: &Facts<'_, '_>,
        asked: &StepAsked,
        lots: &[Lot],
        product: &Product,
        log: Option<&Log>,
        as_it_happened: bool,
    ) -> Result<()> {
        if product.cooked_as.is_none() && product.raw {
            return Ok(());
        }
        let mut all: Option<Judgement> = None;
        for food in foods(product, lots) {
            let Some(judged) = cooked(facts, asked, food, log)? else {
                let raw = lots.iter().any(|lot| !lot.condition().is_ready());
                if raw && self.warnings.is_empty() {
                    self.warnings.push(HeatDeedSays::NoCore.into());
                }
                return Ok(());
            };
            all = Some(match all {
                Some(before) => before.and(judged),
                None => judged,
            });
        }
        let Some(judged) = all else { return Ok(()) };
        let needs_none = lots.iter().all(|lot| lot.condition().is_ready());
        if judged.answer == Answer::Enough {
            let finding = judged.findings.first();
            let proof = HeatProof {
                by: ProvedBy::Heat,
                says: finding.map_or_else(|| HeatDeedSays::NoCore.into(), |of| of.says.clone()),
                rows: judged
                    .findings
                    .iter()
                    .flat_map(|of| of.rows.clone())
                    .collect(),
            };
            self.proofs.insert(product.code.clone(), proof);
        } else if needs_none {
            return Ok(());
        }
        self.tell(
            facts,
            &judged,
            Topic::Heat,
            "readings.celsius",
            as_it_happened,
        )
    }

    fn tell(
        &mut self,
        facts: &Facts<'_, '_>,
        judged: &Judgement,
        topic: Topic,
        field: &str,
        as_it_happened: bool,
    ) -> Result<()> {
        let chain: Vec<Because> = judged.findings.iter().map(Because::finding).collect();
        if judged.answer == Answer::Short && judged.refuses() {
            let rows = &facts.law().rows;
            let findings = judged.findings.iter();
            let findings = findings.map(|finding| finding.with_sources(rows)).collect();
            let says = HeatDeedSays::Short { findings };
            let found = &judged.findings;
            let stop = broken(facts, field, topic, says, found, as_it_happened)?;
            self.stops.push(stop);
        }
        if judged.answer != Answer::Enough {
            self.warnings
                .extend(judged.findings.iter().map(|finding| finding.says.clone()));
        }
        self.because.extend(chain);
        Ok(())
    }

    /// Adds what was found to the plan.
    pub fn add_to(self, plan: &mut Plan) {
        for birth in &mut plan.births {
            birth
                .reasons
                .extend(Reason::all(Topic::Heat, self.because.clone()));
            birth.stops.extend(self.stops.iter().cloned());
        }
        if plan.births.is_empty() {
            let lots: Vec<_> = plan.changes.iter().map(|change| change.lot).collect();
            let links = Reason::all(Topic::Heat, self.because);
            let each = lots
                .into_iter()
                .flat_map(|lot| links.iter().map(move |link| (lot, link.clone())));
            plan.reasons.extend(each);
            let touched: Vec<_> = plan.changes.iter().map(|of| (of.lot, of.pack)).collect();
            for stop in self.stops {
                let on = |(lot, pack): &(LotId, PackId)| (*lot, Some(*pack), stop.clone());
                plan.stops.extend(touched.iter().map(on));
            }
        }
        plan.warnings.extend(self.warnings);
    }
}
