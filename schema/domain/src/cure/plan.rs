//! A cure to be weighed out: from the meat and a recipe to the weights to put on.

use super::assess::milligrams;
use super::says::CureSays;
use super::weighing::grams;
use super::{Assessed, Cure, CureLevel, Makeup, Method, Mix, Stage, Strength, assess};
use crate::grams::Grams;
use crate::law::Laws;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::words::Profile;
use rust_decimal::Decimal;

/// How much curing salt the recipe wants.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dose {
    /// So much curing salt, in per cent of the weight that the method counts.
    CuringSalt(Percent),
    /// So many parts per million, ingoing.
    Target(CureLevel),
}

/// A recipe of a cure. Percents are of the weight that the method counts: of the meat for a dry
/// cure or ground meat, of meat and water for an equilibrium brine, of the pickle for a pickle.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Recipe {
    /// All salt, that in the curing salt included.
    pub salt: Percent,
    /// Sugar.
    pub sugar: Percent,
    /// The curing salt of the lot that will be used.
    pub strength: Strength,
    /// How much of it.
    pub dose: Dose,
}

/// What to put on the scale.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CurePlan {
    /// Curing salt: rounded down to the scale's step, never up.
    pub curing_salt: Grams,
    /// Plain salt: what the curing salt does not bring.
    pub plain_salt: Grams,
    /// Sugar.
    pub sugar: Grams,
    /// Water: as it was given, or what fills up the pickle.
    pub water: Grams,
    /// The cure so weighed.
    pub cure: Cure,
    /// What it means.
    pub assessed: Assessed,
}

/// Works out the weights. `cure` brings method, product, meat, water or pickle, day and scale;
/// its own salt, sugar and curing salts are replaced.
///
/// # Errors
/// As [`assess`]; and a target that is a residual one, that asks for what this curing salt does
/// not hold, or a recipe whose curing salt alone brings more salt than it wants.
pub fn plan(recipe: &Recipe, cure: &Cure, place: Profile, laws: &Laws) -> Result<CurePlan> {
    let rules = &laws.of(place).cures;
    rules.plausible.salt(recipe.salt)?;
    rules.plausible.salt(recipe.sugar)?;
    let makeup = recipe.strength.makeup(rules, "strength")?;
    let mut cure = Cure {
        salt: Grams::ZERO,
        sugar: Grams::ZERO,
        salts: Vec::new(),
        ..cure.clone()
    };
    if cure.method.has_pickle() && cure.pickle.is_none() {
        return Err(Refusal::cannot_be("pickle", CureSays::PickleWeight));
    }
    if cure.method.has_pickle() {
        cure.water = Grams::ZERO;
    }
    let mix = cure.mix(rules)?;
    let over = weight_that_counts(&cure, &mix);
    let curing_salt = match recipe.dose {
        Dose::CuringSalt(percent) => {
            rules.plausible.curing_salt(percent)?;
            over * percent.fraction()
        }
        Dose::Target(level) => aimed_at(level, &makeup, &cure, &mix, laws, place)?,
    };
    let step = cure.scale.filter(|step| !step.is_none_left());
    let curing_salt = rounded_down(milligrams(curing_salt), step);
    let whole = match cure.method.has_pickle() {
        true => mix.pickle,
        false => grams(cure.meat) + grams(cure.water),
    };
    let brought = grams(curing_salt) * makeup.salt.fraction();
    let plain = whole * recipe.salt.fraction() - brought;
    if plain < Decimal::ZERO {
        let says = CureSays::SaltBrought {
            brought: milligrams(brought),
            salt: recipe.salt,
        };
        return Err(Refusal::cannot_be("salt", says));
    }
    cure.salt = milligrams(plain);
    cure.sugar = milligrams(whole * recipe.sugar.fraction());
    cure.salts = vec![(recipe.strength, curing_salt)];
    if let (true, Some(pickle)) = (cure.method.has_pickle(), cure.pickle) {
        cure.water = pickle - cure.salt - cure.sugar - cure.accelerator() - curing_salt;
        if cure.water.is_none_left() {
            return Err(Refusal::cannot_be("pickle", CureSays::NoRoomForWater));
        }
    }
    let assessed = assess(&cure, place, laws)?;
    Ok(CurePlan {
        curing_salt,
        plain_salt: cure.salt,
        sugar: cure.sugar,
        water: cure.water,
        cure,
        assessed,
    })
}

/// The weight that a percent of curing salt is of: the flesh only, where there is a rind.
fn weight_that_counts(cure: &Cure, mix: &Mix) -> Decimal {
    match cure.method {
        Method::Dry | Method::EquilibriumDry | Method::Comminuted => mix.meat,
        Method::EquilibriumBrine => mix.meat + mix.water,
        Method::ImmersionPickUp | Method::ImmersionEquilibrium | Method::Pumped => mix.pickle,
    }
}

/// The grams of curing salt that give the target.
fn aimed_at(
    level: CureLevel,
    makeup: &Makeup,
    cure: &Cure,
    mix: &Mix,
    laws: &Laws,
    place: Profile,
) -> Result<Decimal> {
    let level = level.checked()?;
    if level.stage != Stage::Ingoing {
        let says = CureSays::AimIngoing {
            level: level.says(),
        };
        return Err(Refusal::cannot_be("target", says));
    }
    let (share, own) = makeup.share(level.basis);
    if share.number().is_zero() {
        let says = CureSays::NotInSalt { basis: level.basis };
        return Err(Refusal::cannot_be("strength", says));
    }
    let level = level.on(own, &laws.of(place).cures.masses)?;
    Ok(mix.dose(cure.method, level.ppm)? / share.fraction())
}

fn rounded_down(weight: Grams, step: Option<Grams>) -> Grams {
    let step = step.map_or(1, Grams::milligrams);
    Grams::from_milligrams(weight.milligrams() / step * step)
}
