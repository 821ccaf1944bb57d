//! What a step's cure means: parts per million from the meat and the strength of the very lots of
//! curing salt that were used, held against the law.

use super::before;
use super::facts::Facts;
use super::happened::broken;
use super::mixture::{self, add, is_salt, water};
use super::says::CureDeedSays;
use super::{cure_later, cured_before};
use crate::error::Result;
use crate::lists::List;
use crate::wire::asked::StepAsked;
use crate::wire::cures::decimal;
use crate::wire::lists::PlaceEntry;
use chrono::{DateTime, Utc};
use domain::cure::{self, Assessed, Class, Cure, Method, as_sold};
use domain::dates::{Because, Rule};
use domain::deed::draw::{Choice, settle};
use domain::deed::output::Output;
use domain::grams::Grams;
use domain::lot::Lot;
use domain::measure::Percent;
use domain::plan::{Plan, Reason};
use domain::product::{CuredAs, Product};
use domain::rows::{Finding, Gravity};
use domain::says::{Says, Texts};
use domain::stop::{Cause, NewStop};
use domain::words::{ProductKind, Quantity, StepKind, Topic};
use rust_decimal::Decimal;
use std::sync::Arc;
use store::measurements::Measurement;

/// A cure that was looked at.
#[derive(Default)]
pub struct CureCheck {
    /// What it means, and what was found: the links to be kept with each lot.
    pub(super) because: Vec<Because>,
    /// The numbers, to be kept with each lot that was made.
    pub(super) measured: Vec<Measurement>,
    /// For the one who did it.
    pub(super) warnings: Vec<Says>,
    /// The limit that it broke, where it was done all the same; what waits for a limit that nobody has
    /// confirmed; what is not proven.
    pub(super) stops: Vec<NewStop>,
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

/// Looks at the cure of a step; nothing where none is. `grams` says how much of each lot went in.
///
/// # Errors
/// A product that does not say how it is cured, a mixture that cannot be, or more or less nitrite or nitrate
/// than the law allows: with the numbers.
pub fn look(
    facts: &mut Facts<'_, '_>,
    asked: &StepAsked,
    kind: StepKind,
    lots: &[Lot],
    grams: impl Fn(usize) -> Result<Grams>,
    outputs: &[Output],
    as_it_happened: bool,
) -> Result<Option<CureCheck>> {
    let products: Vec<Arc<Product>> = outputs.iter().map(|of| of.product.clone()).collect();
    let mut salts = false;
    for lot in lots {
        salts |= is_salt(facts, lot)?;
    }
    let meat = lots.iter().any(|lot| !lot.species.is_empty());
    let weighed: Grams = match kind {
        // What boils away leaves its salts behind.
        StepKind::Cook => outputs.iter().map(|of| of.grams).sum(),
        _ => {
            let mut all = water(asked);
            for nth in 0..lots.len() {
                all += grams(nth)?;
            }
            all
        }
    };
    if salts && !meat && products.iter().any(|of| of.curing_salt().is_some()) {
        return mixture::mixed(facts, asked, lots, grams, weighed).map(Some);
    }
    let says = products.iter().find_map(|product| product.cured.cure);
    let with_nitrite = says.is_some_and(|of| of.nitrite == Some(true));
    let alone = says.is_some() && meat && (kind == StepKind::Cure || makes(kind) && with_nitrite);
    if !salts && !alone {
        return match kind == StepKind::Cook && meat {
            true => cured_before::look(facts, lots, grams, as_it_happened),
            false => Ok(None),
        };
    }
    let before = before::Before::of(facts, lots)?;
    let mut check = CureCheck::default();
    let is_ground = kind == StepKind::Grind || before.is_ground;
    let listed = products.iter().find_map(|product| product.cured.cure);
    if listed.is_none() {
        check
            .stops
            .push(not_said_how(facts, &products, as_it_happened)?);
    }
    let cured = cured_as(asked, is_ground, listed);
    let sold = products.iter().find(|of| of.cured.cure.is_some());
    let cured = match sold {
        Some(product) => as_sold(cured, product, &facts.law().cures),
        None => cured,
    };
    let mut cure = Cure::new(cured.method, cured.class, Grams::ZERO, facts.moment.day);
    let mut unknown: Vec<Says> = Vec::new();
    for (nth, lot) in lots.iter().enumerate() {
        if !add(facts, &mut cure, lot, grams(nth)?)? {
            let lot = lot.code.clone();
            unknown.push(CureDeedSays::StrengthUnknown { lot }.into());
        }
    }
    let is_told = unknown.is_empty();
    cure.water += water(asked);
    cure.gained = Some(came_out(outputs) - cure.meat);
    cure.brought = before.brings(lots, &grams)?;
    tell_more(&mut cure, asked, &cured, &products);
    cure.scale = cure.scale.or(scale_at(facts, &asked.place.0)?);
    let has_salt = !cure.salt.is_none_left() || !cure.salts.is_empty();
    let cures = cure.salts.iter().any(|(strength, _)| strength.cures());
    let nitrite = cures || cure.brought.nitrite_ppm > Decimal::ZERO;
    let product = || {
        products
            .first()
            .map_or_else(|| Texts::from("?"), |of| of.named())
    };
    if with_nitrite && !nitrite && unknown.is_empty() {
        unknown.push(CureDeedSays::NoNitrite { product: product() }.into());
    } else if !has_salt && !cure.brought.is_any() && unknown.is_empty() {
        unknown.push(CureDeedSays::NoSalt { product: product() }.into());
    }
    if is_told || !cure.salts.is_empty() {
        let held = assessed(facts, &cure, as_it_happened, &mut check);
        // Where the list is silent, what was taken for it may not fit: it is stopped anyway.
        if listed.is_some() {
            held?;
        }
    }
    if !is_told {
        // What is known is the least of it: it breaks a limit, but is no number to be kept.
        (check.because, check.measured, check.warnings) = Default::default();
    }
    for says in unknown {
        check.unproven(says, facts.moment.at);
    }
    if salts {
        check.warnings.push(CureDeedSays::Caution.into());
    }
    Ok(Some(check))
}

/// What the meat weighs with what it took up: pickle that is left over, and waste, is no part of it.
fn came_out(outputs: &[Output]) -> Grams {
    let meat = outputs.iter().filter(|of| {
        let is_left = matches!(
            of.product.kind,
            ProductKind::Ingredient | ProductKind::Waste
        );
        of.product.cured.cure.is_some() || !is_left
    });
    meat.map(|of| of.grams).sum()
}

/// Does a step of that kind make something of its own?
fn makes(kind: StepKind) -> bool {
    matches!(kind, StepKind::Grind | StepKind::Mix)
}

/// A cure that was weighed, held against the law: what it means, and what follows.
fn assessed(
    facts: &Facts<'_, '_>,
    cure: &Cure,
    as_it_happened: bool,
    check: &mut CureCheck,
) -> Result<()> {
    let place = facts.kitchen.entry.profile.0;
    let laws = facts.app.laws(&facts.standing.confirmed);
    let assessed = match cure::assess(cure, place, laws) {
        Ok(assessed) => assessed,
        // Of salt alone no weight of a pickle was ever asked.
        Err(refusal) if cure.salts.is_empty() => {
            check.unproven(refusal.detail, facts.moment.at);
            return Ok(());
        }
        Err(refusal) => return Err(refusal.within("cure.").into()),
    };
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
        check
            .stops
            .push(broken(facts, "inputs", of, says, &found, as_it_happened)?);
    }
    check.because.push(Because {
        says: said(cure, &assessed),
        rule: Rule::Rows(assessed.rows.clone()),
    });
    if cure.brought.is_any() {
        let says = CureDeedSays::Brought {
            nitrite: cure.brought.nitrite_ppm.round_dp(1).normalize(),
            nitrate: cure.brought.nitrate_ppm.round_dp(1).normalize(),
        };
        let rule = Rule::Practice(CureDeedSays::Rule.into());
        check.because.push(Because {
            says: says.into(),
            rule,
        });
    }
    check
        .because
        .extend(assessed.findings.iter().map(Because::finding));
    let warned = assessed.findings.iter();
    let warned = warned.filter(|finding| finding.gravity == Gravity::Warn);
    check
        .warnings
        .extend(warned.map(|finding| finding.says.clone()));
    check.measured = measured(&assessed);
    cure_later::look(facts, cure, check)?;
    cure_later::waits(facts, cure, &assessed, check);
    Ok(())
}

/// Curing salt went in, and the list does not say how the product is cured: which limit holds is not known, and
/// so nothing of it is sold until a person disposes of it.
fn not_said_how(
    facts: &Facts<'_, '_>,
    products: &[Arc<Product>],
    as_it_happened: bool,
) -> Result<NewStop> {
    let product = products
        .first()
        .map_or_else(|| Texts::from("?"), |product| product.named());
    let unsaid = CureDeedSays::UnsaidHow {
        product: product.clone(),
    };
    let found = [Finding::new(Gravity::Warn, unsaid, [])];
    let says = CureDeedSays::NotSaidHow { product };
    let field = "outputs[0].product";
    broken(facts, field, Topic::Cure, says, &found, as_it_happened)
}

/// How the step cures: as the step says, else as its product does; ground meat is cured as such, whatever
/// the step is called. Where no list says it, a dry cure of whole muscle is the usual one.
fn cured_as(asked: &StepAsked, is_ground: bool, listed: Option<CuredAs>) -> CuredAs {
    let cured = listed.unwrap_or(CuredAs {
        class: Class::WholeMuscle,
        method: Method::Dry,
        heated: None,
        nitrite: None,
    });
    let ground = is_ground && !cured.class.is_ground();
    let told = asked
        .cure
        .as_ref()
        .and_then(|cure| cure.method)
        .map(|method| method.0);
    CuredAs {
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
    }
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
    if cure.salts.is_empty() {
        let salt = cure.salt;
        return CureDeedSays::SaltAlone {
            salt,
            meat,
            percent,
        }
        .into();
    }
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
    pub(super) fn unproven(&mut self, says: Says, at: DateTime<Utc>) {
        self.warnings.push(says.clone());
        let rule = Rule::Practice(CureDeedSays::Rule.into());
        let stop = Cause::failed(Topic::Proof, Because { says, rule }, at);
        self.stops.push(stop.into());
    }

    /// Adds what was found to the plan: a warning for the one who did it, a reason for each lot.
    pub fn tell(&self, plan: &mut Plan) {
        for birth in &mut plan.births {
            birth
                .reasons
                .extend(Reason::all(Topic::Cure, self.because.clone()));
            birth.stops.extend(self.stops.iter().cloned());
        }
        plan.warnings.extend(self.warnings.iter().cloned());
    }

    /// The numbers, to be kept with each lot that was made.
    pub fn measured(&self) -> Vec<Measurement> {
        self.measured.clone()
    }
}

fn of(quantity: Quantity, value: Decimal) -> Measurement {
    Measurement {
        quantity,
        millionths: crate::wire::cures::number(value).0,
    }
}

fn measured(assessed: &Assessed) -> Vec<Measurement> {
    vec![
        of(Quantity::NitritePpm, assessed.nitrite_ppm),
        of(Quantity::NitratePpm, assessed.nitrate_ppm),
        of(Quantity::SaltPercent, assessed.salt_percent.number()),
    ]
}
