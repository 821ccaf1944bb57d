//! What a step's cure means: parts per million from the meat and the strength of the very lots of
//! curing salt that were used, held against the law.

use super::facts::Facts;
use super::happened::broken;
use super::says::CureDeedSays;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::wire::asked::StepAsked;
use crate::wire::cures::decimal;
use crate::wire::lists::PlaceEntry;
use domain::cure::{self, Assessed, Class, Cure, Method};
use domain::dates::{Because, Rule};
use domain::deed::draw::{Choice, settle};
use domain::family::strength_read as strength;
use domain::grams::Grams;
use domain::lot::Lot;
use domain::measure::Percent;
use domain::plan::{Plan, Reason};
use domain::product::{CuredAs, InCure, Product};
use domain::rows::{Finding, Gravity};
use domain::says::{Says, Texts};
use domain::stop::{Cause, NewStop, StopSays};
use domain::words::{Addition, CurePart, Quantity, StepKind, Topic};
use rust_decimal::Decimal;
use std::sync::Arc;
use store::measurements::Measurement;

/// A cure that was looked at.
pub struct CureCheck {
    /// What it means.
    pub assessed: Assessed,
    /// In a sentence.
    pub says: Says,
    /// The limit that it broke, where it was done all the same.
    pub stop: Option<NewStop>,
    /// What waits for a limit that nobody has confirmed.
    pub unconfirmed: Vec<NewStop>,
}

/// How much of its lot an input takes.
///
/// # Errors
/// Whatever speaks against the choice.
pub fn grams_of(lots: &[Lot], choices: &[Choice], nth: usize) -> Result<Grams> {
    let field = format!("inputs[{nth}].");
    let draws = settle(&lots[nth], &choices[nth], &field)?;
    Ok(draws.iter().map(|draw| draw.grams).sum())
}

/// Looks at the cure of a step; nothing where no curing salt goes in. `grams` says how much of each lot
/// went in.
///
/// # Errors
/// A strength that is not known, a product that does not say how it is cured, or more or less
/// nitrite or nitrate than the law allows: with the numbers.
pub fn look(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    products: &[Arc<Product>],
    as_it_happened: bool,
) -> Result<Option<CureCheck>> {
    if !lots.iter().any(|lot| lot.product.curing_salt().is_some()) {
        return Ok(None);
    }
    let cured = cured_as(asked, kind, products)?;
    let mut cure = Cure::new(cured.method, cured.class, Grams::ZERO, facts.moment.day);
    for (nth, lot) in lots.iter().enumerate() {
        add(facts, &mut cure, lot, grams(nth)?)?;
    }
    let water = asked.added.iter().flatten();
    cure.water = water
        .filter(|added| added.what.0 != Addition::ScaleDifference)
        .map(|added| added.grams.0)
        .sum();
    tell_more(&mut cure, asked, &cured, products);
    cure.scale = cure.scale.or(scale_at(facts, &asked.place.0)?);
    let place = facts.kitchen.entry.profile.0;
    let laws = facts.app.laws(&facts.standing.confirmed);
    let assessed = cure::assess(&cure, place, laws).map_err(|refusal| refusal.within("cure."))?;
    let mut stop = None;
    if assessed.is_refused() {
        let refused = assessed.findings.iter().filter(|finding| finding.refuses());
        let found: Vec<Finding> = refused.cloned().collect();
        let rows = &laws.of(place).rows;
        let findings = found
            .iter()
            .map(|finding| finding.with_sources(rows))
            .collect();
        let says = CureDeedSays::Refused { findings };
        let of = Topic::Cure;
        stop = Some(broken(facts, "inputs", of, says, &found, as_it_happened)?);
    }
    let says = said(&cure, &assessed);
    let law = laws.of(place);
    let waits = cure::unconfirmed(&cure, &assessed.ingoing, &law.cures, &law.rows);
    let waits = waits.into_iter().filter_map(|row| {
        let text = Says::named(&law.rows.get(&row)?.says);
        let because = Because::law(
            StopSays::NotConfirmed {
                row: row.clone(),
                text,
            },
            &row,
        );
        let stop = Cause::failed(Topic::Confirmation, because, facts.moment.at);
        Some(NewStop::from(stop))
    });
    let unconfirmed = waits.collect();
    Ok(Some(CureCheck {
        unconfirmed,
        assessed,
        says,
        stop,
    }))
}

/// How the step cures: as the step says, else as its product does; ground meat is cured as such.
fn cured_as(asked: &StepAsked, kind: StepKind, products: &[Arc<Product>]) -> Result<CuredAs> {
    let of_product = products.iter().find_map(|product| product.cured.cure);
    let cured = of_product.ok_or_else(|| {
        let product = products
            .first()
            .map_or_else(|| Texts::from("?"), |product| product.named());
        let detail = CureDeedSays::NotSaidHow { product };
        Error::cannot_be("outputs[0].product", detail)
    })?;
    let ground = kind == StepKind::Grind && !cured.class.is_ground();
    let told = asked
        .cure
        .as_ref()
        .and_then(|cure| cure.method)
        .map(|method| method.0);
    Ok(CuredAs {
        method: told.unwrap_or(if ground {
            Method::Comminuted
        } else {
            cured.method
        }),
        class: if ground && !cured.class.is_either() {
            Class::Comminuted
        } else {
            cured.class
        },
        ..cured
    })
}

fn add(facts: &mut Facts<'_, '_>, cure: &mut Cure, lot: &Lot, grams: Grams) -> Result<()> {
    match lot.product.part.in_cure {
        Some(InCure::CuringSalt(_)) => {
            let read = facts.readings(lot.id)?;
            let last = |quantity: Quantity| {
                let found = read.iter().rev().find(|(_, of, _)| *of == quantity);
                found.map(|(_, _, millionths)| *millionths)
            };
            cure.salts.push((strength(&lot.product, last), grams));
        }
        Some(InCure::Other(part)) => match part {
            CurePart::Salt => cure.salt += grams,
            CurePart::Sugar => cure.sugar += grams,
            CurePart::Ascorbate => cure.ascorbate += grams,
            CurePart::Erythorbate => cure.erythorbate += grams,
            CurePart::Starter => cure.starter = true,
        },
        None if !lot.species.is_empty() => cure.meat += grams,
        None => {}
    }
    Ok(())
}

fn tell_more(cure: &mut Cure, asked: &StepAsked, cured: &CuredAs, products: &[Arc<Product>]) {
    let ages = products.iter().any(|product| product.is_hung());
    cure.heated = cured.heated;
    cure.keep_refrigerated = !ages;
    cure.long_aged = cured.class.ages_long();
    if let Some(told) = &asked.cure {
        let percent = |number: crate::wire::Number| Percent::new(decimal(number));
        cure.skin_on = told.skin_on.unwrap_or(false);
        cure.pump = told.pump_percent.map(percent);
        cure.pickup = told.pickup_percent.map(percent);
        cure.pickle = told.pickle_grams.map(|grams| grams.0);
        cure.scale = told.scale_grams.map(|grams| grams.0);
    }
}

/// The step of the scale that stands at a place, if the list says.
fn scale_at(facts: &mut Facts<'_, '_>, place: &str) -> Result<Option<Grams>> {
    let known = facts.past.as_ref().and_then(|past| past.scales.get(place));
    if let Some(known) = known {
        return Ok(*known);
    }
    let row = store::entries::get(facts.tx.conn, List::Places.as_str(), place)?;
    let entry: Option<PlaceEntry> = row.and_then(|row| serde_json::from_str(&row.body).ok());
    let scale = entry.and_then(|entry| entry.scale_grams);
    let scale = scale.map(|grams| grams.0);
    if let Some(past) = &mut facts.past {
        past.scales.insert(place.to_owned(), scale);
    }
    Ok(scale)
}

fn said(cure: &Cure, assessed: &Assessed) -> Says {
    let ppm = |ppm: Decimal| ppm.round_dp(1).normalize();
    let (salt, meat, method) = (assessed.curing_salt, cure.meat, cure.method);
    let nitrite = ppm(assessed.nitrite_ppm);
    let percent = Percent::new(assessed.salt_percent.number().round_dp(2));
    match assessed.nitrate_ppm.is_zero() {
        true => CureDeedSays::GoingIn {
            salt,
            meat,
            method,
            nitrite,
            percent,
        },
        false => CureDeedSays::BothGoingIn {
            salt,
            meat,
            method,
            nitrite,
            nitrate: ppm(assessed.nitrate_ppm),
            percent,
        },
    }
    .into()
}

impl CureCheck {
    /// Adds what was found to the plan: a warning for the one who did it, a reason for each lot.
    pub fn tell(&self, plan: &mut Plan) {
        let mut chain = vec![Because {
            says: self.says.clone(),
            rule: Rule::Rows(self.assessed.rows.clone()),
        }];
        chain.extend(self.assessed.findings.iter().map(Because::finding));
        for birth in &mut plan.births {
            birth
                .reasons
                .extend(Reason::all(Topic::Cure, chain.clone()));
            birth.stops.extend(self.stop.clone());
            birth.stops.extend(self.unconfirmed.iter().cloned());
        }
        let warned = self
            .assessed
            .findings
            .iter()
            .filter(|finding| finding.gravity == Gravity::Warn);
        plan.warnings
            .extend(warned.map(|finding| finding.says.clone()));
        let waits = self.unconfirmed.iter();
        plan.warnings
            .extend(waits.map(|stop| stop.cause.because.says.clone()));
        plan.warnings.push(CureDeedSays::Caution.into());
    }

    /// The numbers, to be kept with each lot that was made.
    pub fn measured(&self) -> Vec<Measurement> {
        let of = |quantity: Quantity, value: Decimal| Measurement {
            quantity,
            millionths: crate::wire::cures::number(value).0,
        };
        vec![
            of(Quantity::NitritePpm, self.assessed.nitrite_ppm),
            of(Quantity::NitratePpm, self.assessed.nitrate_ppm),
            of(Quantity::SaltPercent, self.assessed.salt_percent.number()),
        ]
    }
}
