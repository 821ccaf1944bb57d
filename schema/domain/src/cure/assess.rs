//! What a cure that was used means: parts per million, salt, and whether the place allows it.

use super::says::{CureSays, LimitSays};
use super::weighing::grams;
use super::{
    Basis, Brought, Class, CureLevel, CureRules, Here, Ingoing, Method, Mix, Stage, Strength,
    brine, ceiling, check, weighing, wrong_salt,
};
use crate::grams::Grams;
use crate::law::Laws;
use crate::limits::HEAVIEST;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, RowId};
use crate::words::Profile;
use chrono::NaiveDate;
use rust_decimal::Decimal;

/// A cure as it was weighed out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cure {
    /// How it was done.
    pub method: Method,
    /// To what.
    pub class: Class,
    /// The green meat.
    pub meat: Grams,
    /// Water: in the bag with the meat, or in the pickle.
    pub water: Grams,
    /// Plain salt.
    pub salt: Grams,
    /// Sugar.
    pub sugar: Grams,
    /// Sodium ascorbate.
    pub ascorbate: Grams,
    /// Sodium erythorbate.
    pub erythorbate: Grams,
    /// What the meat brings that was cured before.
    pub brought: Brought,
    /// Each lot of curing salt: how strong, how much.
    pub salts: Vec<(Strength, Grams)>,
    /// Is a lactic starter in it?
    pub starter: bool,
    /// Is the rind on?
    pub skin_on: bool,
    /// The whole pickle, where it was weighed; else it is the sum of its parts.
    pub pickle: Option<Grams>,
    /// How much was pumped, of the meat's weight.
    pub pump: Option<Percent>,
    /// How much pickle the meat took up in the tub, of its weight.
    pub pickup: Option<Percent>,
    /// The day on which the salt goes on: it says which law holds.
    pub day: NaiveDate,
    /// The step of the scale that the curing salt was weighed on.
    pub scale: Option<Grams>,
    /// What else is weighed with the pickle: spices, herbs. It brings no salt, and counts in the pickle's weight.
    pub other: Grams,
    /// How much more the meat weighs with what it took up, where it was weighed.
    pub gained: Option<Grams>,
    /// Will the label say that it must be kept refrigerated? Not so only if it is shelf-stable.
    pub keep_refrigerated: bool,
    /// Will the label call it cured?
    pub called_cured: bool,
    /// Will it be cooked? Nothing where nobody has said.
    pub heated: Option<bool>,
    /// Will it age for months?
    pub long_aged: bool,
}

impl Cure {
    /// A cure with nothing on the meat yet.
    pub fn new(method: Method, class: Class, meat: Grams, day: NaiveDate) -> Cure {
        Cure {
            method,
            class,
            meat,
            water: Grams::ZERO,
            salt: Grams::ZERO,
            sugar: Grams::ZERO,
            ascorbate: Grams::ZERO,
            erythorbate: Grams::ZERO,
            brought: Brought::default(),
            salts: Vec::new(),
            starter: false,
            skin_on: false,
            pickle: None,
            pump: None,
            pickup: None,
            day,
            scale: None,
            other: Grams::ZERO,
            gained: None,
            keep_refrigerated: true,
            called_cured: false,
            heated: None,
            long_aged: false,
        }
    }

    /// Ascorbate and erythorbate: the limits count them together.
    pub(super) fn accelerator(&self) -> Grams {
        self.ascorbate + self.erythorbate
    }

    /// What its doses are spread over, in grams; the rind's share of a belly counts for nothing, and neither does
    /// what the meat took up in a cure before.
    ///
    /// # Errors
    /// A weight is below nothing or heavier than can be, a percent looks like a fraction, or the
    /// pickle weighs less than its parts.
    pub fn mix(&self, rules: &CureRules) -> Result<Mix> {
        let weights = [
            ("meat", self.meat),
            ("water", self.water),
            ("salt", self.salt),
            ("sugar", self.sugar),
            ("ascorbate", self.ascorbate),
            ("erythorbate", self.erythorbate),
            ("pickle", self.pickle.unwrap_or_default()),
            ("scale", self.scale.unwrap_or_default()),
        ];
        let salts = self.salts.iter().map(|(_, weight)| ("salts", *weight));
        for (field, weight) in weights.into_iter().chain(salts) {
            if weight < Grams::ZERO || weight > HEAVIEST {
                let says = CureSays::WeightCannotBe {
                    grams: weight,
                    none: Grams::ZERO,
                    most: HEAVIEST,
                };
                return Err(Refusal::cannot_be(field, says));
            }
        }
        if self.meat.is_none_left() {
            return Err(Refusal::cannot_be("meat", CureSays::NoMeat));
        }
        if self.class.is_ground() != (self.method == Method::Comminuted) && !self.class.is_either()
        {
            let says = CureSays::ClassAndMethod {
                class: self.class,
                method: self.method,
            };
            return Err(Refusal::cannot_be("method", says));
        }
        if self.method.is_dry() && self.water > Grams::ZERO {
            return Err(Refusal::cannot_be("water", CureSays::WaterInDry));
        }
        let (taken, field) = match self.method {
            Method::ImmersionPickUp => (self.pickup, "pickup"),
            _ => (self.pump, "pump"),
        };
        let taken = taken.unwrap_or_default();
        rules.plausible.taken(taken, field)?;
        let parts = self.parts();
        let pickle = self.pickle.unwrap_or(parts);
        if self.method.has_pickle() && pickle < parts {
            let says = CureSays::PickleParts { pickle, parts };
            return Err(Refusal::cannot_be("pickle", says));
        }
        let (pickle, taken) = self.on_record(pickle, taken);
        let skin = match (&rules.skin, self.skin_on && self.class.is_bacon()) {
            (Some(skin), true) => skin.value,
            _ => Decimal::ZERO,
        };
        let flesh = Percent::new(Decimal::ONE_HUNDRED - skin).fraction();
        if flesh <= Decimal::ZERO {
            return Err(Refusal::cannot_be("skin_on", CureSays::RindOnly));
        }
        let counts = flesh * (Decimal::ONE - self.brought.taken_up.fraction());
        if counts <= Decimal::ZERO {
            return Err(Refusal::cannot_be("meat", CureSays::NoMeat));
        }
        Ok(Mix {
            meat: grams(self.meat) * counts,
            water: grams(self.water),
            pickle: grams(pickle),
            taken: Percent::new(taken.number() / counts),
        })
    }
}

/// What a cure means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Assessed {
    /// How it was done.
    pub method: Method,
    /// Each salt in ppm of the weight that the method counts.
    pub ingoing: Ingoing,
    /// All nitrite as sodium nitrite, in ppm.
    pub nitrite_ppm: Decimal,
    /// All nitrate as sodium nitrate, in ppm.
    pub nitrate_ppm: Decimal,
    /// All nitrite as the ion, in ppm.
    pub nitrite_ion_ppm: Decimal,
    /// All nitrate as the ion, in ppm.
    pub nitrate_ion_ppm: Decimal,
    /// Curing salt of every lot together.
    pub curing_salt: Grams,
    /// Common salt, plain and in the curing salts.
    pub salt: Grams,
    /// Common salt in per cent of the weight that the method counts, the rind included.
    pub salt_percent: Percent,
    /// The same of sugar.
    pub sugar_percent: Percent,
    /// How strong the brine or pickle is before the meat goes in, where there is one.
    pub brine_percent: Option<Percent>,
    /// What to look at; the gravest first.
    pub findings: Vec<Finding>,
    /// Every row that was asked.
    pub rows: Vec<RowId>,
}

impl Assessed {
    /// Does anything stop it?
    pub fn is_refused(&self) -> bool {
        self.findings.iter().any(Finding::refuses)
    }
}

/// What a cure that was used means in a place.
///
/// # Errors
/// A value is missing or cannot be: no weight, a strength not given, 600 % salt, a fraction typed
/// for a percent. What is against the law is not an error but a finding.
pub fn assess(cure: &Cure, place: Profile, laws: &Laws) -> Result<Assessed> {
    let law = laws.of(place);
    let rules = &law.cures;
    let mix = cure.mix(rules)?;
    let with_rind = Cure {
        skin_on: false,
        ..cure.clone()
    }
    .mix(rules)?;
    let mut ingoing = Ingoing::default();
    let (mut makeups, mut doses) = (Vec::new(), Vec::new());
    let mut salt = grams(cure.salt);
    for (nth, (strength, weight)) in cure.salts.iter().enumerate() {
        let makeup = strength.makeup(rules, &format!("salts[{nth}]"))?;
        salt += grams(*weight) * makeup.salt.fraction();
        for basis in [Basis::SodiumNitrite, Basis::SodiumNitrate] {
            let (share, own) = makeup.share(basis);
            let ppm = mix.ppm(cure.method, grams(*weight) * share.fraction())?;
            ingoing.add(own, ppm, &rules.masses);
        }
        makeups.push(makeup);
        doses.push((makeup.nitrite.max(makeup.nitrate), *weight));
    }
    // Two cures on one piece add up.
    ingoing.add(
        Basis::SodiumNitrite,
        cure.brought.nitrite_ppm,
        &rules.masses,
    );
    ingoing.add(
        Basis::SodiumNitrate,
        cure.brought.nitrate_ppm,
        &rules.masses,
    );
    ingoing.ascorbate = mix.ppm(cure.method, grams(cure.accelerator()))?;
    let percent = |dose: Decimal| -> Result<Percent> {
        let ppm = with_rind.ppm(cure.method, dose)?;
        Ok(Percent::new(ppm / Decimal::from(10_000)))
    };
    let salt_percent = percent(salt)?;
    let salt_percent = Percent::new(salt_percent.number() + cure.brought.salt.number());
    if salt_percent.number() > Decimal::ONE_HUNDRED {
        let says = CureSays::SaltCannotBe { salt: salt_percent };
        return Err(Refusal::cannot_be("salt", says));
    }
    let water = match cure.method.has_pickle() {
        true => mix.pickle - salt,
        false => mix.water,
    };
    let brine_percent =
        (water > Decimal::ZERO && !cure.method.is_dry() && cure.method != Method::Comminuted)
            .then(|| brine::brine_percent(salt, water));
    let mut done = Assessed {
        method: cure.method,
        nitrite_ppm: ingoing.level(Basis::SodiumNitrite, &rules.masses).ppm,
        nitrate_ppm: ingoing.level(Basis::SodiumNitrate, &rules.masses).ppm,
        nitrite_ion_ppm: ingoing.level(Basis::NitriteIon, &rules.masses).ppm,
        nitrate_ion_ppm: ingoing.level(Basis::NitrateIon, &rules.masses).ppm,
        ingoing,
        curing_salt: cure.salts.iter().map(|(_, weight)| *weight).sum(),
        salt: milligrams(salt),
        salt_percent,
        sugar_percent: percent(grams(cure.sugar))?,
        brine_percent,
        findings: Vec::new(),
        rows: Vec::new(),
    };
    let formulas = rules.formulas.iter();
    let mut rows: Vec<RowId> = formulas
        .filter(|(method, _)| *method == cure.method)
        .map(|(_, row)| row.clone())
        .collect();
    let mut findings = check::check(cure, &done, rules, &law.rows, &mut rows);
    let what = (cure.method, cure.class, cure.day);
    let stands = |nitrite| check::has_own_limit(cure, &done.ingoing, law, nitrite);
    for finding in ceiling::check(&done.ingoing, &rules.masses, laws, what, stands) {
        // The place's own refusal by the same row says it better.
        if !findings
            .iter()
            .any(|own| own.refuses() && own.rows == finding.rows)
        {
            findings.push(finding);
        }
    }
    findings.extend(cure.against_the_weights());
    findings.extend(wrong_salt::check(cure, &makeups, &done.ingoing, rules));
    findings.extend(weighing::check(cure, &doses, &mix, rules, &law.rows)?);
    findings.extend(brine_percent.and_then(|percent| brine::check_saturation(percent, rules)));
    findings.extend(note_residual(cure, &done.ingoing, rules, &law.rows));
    if cure.skin_on && cure.class.is_bacon() {
        rows.extend(rules.skin.as_ref().map(|skin| skin.row.clone()));
    }
    rows.extend(findings.iter().flat_map(|finding| finding.rows.clone()));
    rows.sort();
    rows.dedup();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.gravity));
    (done.findings, done.rows) = (findings, rows);
    Ok(done)
}

/// Where the place also limits what is left at the end, a word of it: both hold.
fn note_residual(
    cure: &Cure,
    ingoing: &Ingoing,
    rules: &CureRules,
    rows: &crate::rows::Rows,
) -> Vec<Finding> {
    let here = Here::of(rules, cure.method, cure.class, cure.day, rows);
    let limits = rules.limits.iter().filter(|limit| {
        limit.stage == Stage::Residual
            && !limit.doubt
            && limit.is_for(cure.method, &here, cure.day, rows)
    });
    limits
        .filter(|limit| limit.measure(ingoing, &rules.masses) > limit.bound.value)
        .map(|limit| {
            let says = LimitSays::FinishedMost {
                most: limit.bound.value,
                what: limit.said(),
            };
            Finding::note(says, [limit.bound.row.clone()])
        })
        .collect()
}

/// Decimal grams as whole milligrams, rounded down: never more than was asked for.
pub(super) fn milligrams(grams: Decimal) -> Grams {
    use rust_decimal::prelude::ToPrimitive;
    let whole = (grams * Decimal::ONE_THOUSAND).floor();
    Grams::from_milligrams(whole.to_i64().unwrap_or(i64::MAX))
}

impl Assessed {
    /// The nitrite as sodium nitrite, with basis and stage.
    pub fn nitrite(&self) -> CureLevel {
        CureLevel::ingoing(self.nitrite_ppm, Basis::SodiumNitrite)
    }

    /// The nitrate as sodium nitrate, with basis and stage.
    pub fn nitrate(&self) -> CureLevel {
        CureLevel::ingoing(self.nitrate_ppm, Basis::SodiumNitrate)
    }
}
