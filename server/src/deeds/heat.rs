//! Was it cooked, and cooled, as the law of the place asks? What a date that begins with a cook rests on.

use super::facts::Facts;
use super::happened::broken;
use super::heat_asked::HeatAsked;
use super::heat_log;
use super::pierced;
use super::says::HeatDeedSays;
use super::trichinae;
use crate::error::Result;
use crate::wire::asked::StepAsked;
use domain::condition::HeatProof;
use domain::dates::Because;
use domain::grams::Grams;
use domain::heat::{Answer, Judgement, Log, stood_warm};
use domain::lot::{Lot, LotId, PackId};
use domain::plan::{Plan, Reason};
use domain::product::Product;
use domain::rows::Gravity;
use domain::says::Says;
use domain::stop::NewStop;
use domain::words::{ProvedBy, StepKind, Topic};
use std::collections::HashMap;
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
/// Too little heat for what the product claims to be, or a cooling that was too slow: with the
/// numbers. A reading that cannot be, a table or a way to cool that is not there.
pub fn look(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    products: &[Arc<Product>],
    as_it_happened: bool,
) -> Result<HeatCheck> {
    let mut of = HeatAsked {
        asked,
        kind,
        lots,
        products,
        found: pierced::Found::default(),
    };
    let log = heat_log::read(facts, asked)?;
    let mut looked = HeatCheck::default();
    if of.is_measured() && of.has_raw() {
        of.found = pierced::of(facts, lots, grams, of.may_be_pierced(), asked.stuffed)?;
    }
    if of.is_a_cook() {
        if facts.past.is_none() {
            of.is_possible(facts, log.as_ref())?;
        }
        if let Some(log) = log.as_ref().filter(|_| of.may_not_stand_warm()) {
            looked.ask_warm(facts, log, as_it_happened)?;
        }
        for product in of.judged() {
            looked.judge(facts, &of, product, log.as_ref(), as_it_happened)?;
        }
    }
    if of.is_a_cook() && (of.claims_ready() || !looked.proofs.is_empty()) {
        looked.ask_tested(facts, lots);
    }
    let falling = log
        .as_ref()
        .filter(|log| log.last().core < log.first().core);
    match falling.filter(|_| of.cools()) {
        Some(log) => {
            if let Some(judged) = of.cooled(facts, log)? {
                looked.tell(facts, &judged, Topic::Cooling, "log", as_it_happened)?;
            }
        }
        None if asked.cooling_plan.is_some() => {
            looked.warnings.push(HeatDeedSays::NotChosen.into());
        }
        // One reading is kept, and the next one goes on from it.
        None if of.kind == StepKind::Chill && log.is_some() => {
            looked.warnings.push(HeatDeedSays::CoolingBegun.into());
        }
        None if of.has_to_cool() && !facts.law().heat.cooling.is_empty() => {
            looked.warnings.push(HeatDeedSays::NoCooling.into());
        }
        None => {}
    }
    Ok(looked)
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

    /// What stood warm for hours is not made good by heat: the stop is one of cold.
    fn ask_warm(&mut self, facts: &Facts<'_, '_>, log: &Log, as_it_happened: bool) -> Result<()> {
        let law = facts.law();
        if let Some(found) = stood_warm(log, &law.heat) {
            let findings = vec![found.with_sources(&law.rows)];
            let says = HeatDeedSays::Warm { findings };
            let stop = broken(facts, "log", Topic::Cold, says, &[found], as_it_happened)?;
            self.stops.push(stop);
        }
        Ok(())
    }

    /// Meat for which only the test of its carcass speaks: told at once, and stopped until somebody has it
    /// where the row was read.
    fn ask_tested(&mut self, facts: &Facts<'_, '_>, lots: &[Lot]) {
        if let Some((says, cause)) = trichinae::untested(facts, lots) {
            self.warnings.push(says);
            self.stops.extend(cause.map(NewStop::from));
        }
    }

    /// Judges the cook of one product. Where everything was ready before, too little heat breaks
    /// nothing: it proves nothing either.
    fn judge(
        &mut self,
        facts: &Facts<'_, '_>,
        of: &HeatAsked<'_>,
        product: &Product,
        log: Option<&Log>,
        as_it_happened: bool,
    ) -> Result<()> {
        let Some((verdict, field)) = of.cooked(facts, product, log)? else {
            let says = Says::from(HeatDeedSays::NoCore);
            if of.has_raw() && !self.warnings.contains(&says) {
                self.warnings.push(says);
            }
            return Ok(());
        };
        let judged = &verdict.judgement;
        if of.asks_nothing_of(product) && verdict.proof.is_none() {
            let short = judged.findings.iter().map(|finding| finding.says.clone());
            self.warnings.extend(short);
            return Ok(());
        }
        match (verdict.proof, judged.findings.first()) {
            (Some(proof), Some(finding)) => {
                let by = match proof.has_boiled {
                    true => ProvedBy::Boiled,
                    false => ProvedBy::Heat,
                };
                let (says, rows) = (finding.says.clone(), proof.rows);
                let proof = HeatProof { by, says, rows };
                self.proofs.insert(product.code.clone(), proof);
            }
            _ if !of.has_raw() => return Ok(()),
            _ => {}
        }
        self.tell(facts, judged, Topic::Heat, &field, as_it_happened)
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
        let short = judged.answer == Answer::Short && judged.refuses();
        if short || judged.untold {
            let rows = &facts.law().rows;
            let findings = judged.findings.iter();
            let findings = findings.map(|finding| finding.with_sources(rows)).collect();
            let says = match short {
                true => HeatDeedSays::Short { findings },
                false => HeatDeedSays::Untold { findings },
            };
            let found = &judged.findings;
            let stop = broken(facts, field, topic, says, found, as_it_happened)?;
            self.stops.push(stop);
        }
        // What is enough may still need a look: a row that nobody has read, another place's table.
        let enough = judged.answer == Answer::Enough;
        let findings = judged.findings.iter();
        let looked_at = findings.filter(|of| !enough || of.gravity == Gravity::Warn);
        self.warnings
            .extend(looked_at.map(|finding| finding.says.clone()));
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
