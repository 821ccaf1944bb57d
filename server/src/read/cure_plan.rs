//! A cure worked out before anybody weighs: how much of what, and whether it may be done.

use super::says::QuerySays;
use crate::caller::Caller;
use crate::deeds::says::CureDeedSays;
use crate::error::{Error, Result};
use crate::wire::answers::because::finding_read;
use crate::wire::cure_room::CurePlanRead;
use crate::wire::cures::{CurePlanAsked, decimal, number};
use crate::wire::{Number, Weight};
use domain::cure::{self, Basis, Cure, CureLevel, Dose, Recipe};
use domain::measure::Percent;
use domain::moment::day_of;

/// Works it out. Nothing is recorded.
///
/// # Errors
/// A value that is missing or cannot be, with what would do.
pub fn work_out(app: &Caller<'_>, asked: &CurePlanAsked) -> Result<CurePlanRead> {
    let kitchen = app.store.read(|conn| app.kitchen(conn))?;
    let speech = app.speech(&kitchen);
    let percent = |number: Option<Number>| number.map(|number| Percent::new(decimal(number)));
    let dose = match (asked.dose_percent, asked.target_ppm) {
        (Some(dose), None) => Dose::CuringSalt(Percent::new(decimal(dose))),
        (None, Some(ppm)) => Dose::Target(CureLevel::ingoing(decimal(ppm), Basis::SodiumNitrite)),
        _ => {
            return Err(Error::cannot_be("dose_percent", QuerySays::DoseOrTarget));
        }
    };
    let recipe = Recipe {
        salt: percent(asked.salt_percent).unwrap_or_default(),
        sugar: percent(asked.sugar_percent).unwrap_or_default(),
        strength: asked.curing_salt.strength(),
        dose,
    };
    let day = day_of(app.now(), kitchen.zone);
    let mut cure = Cure::new(asked.method.0, asked.class.0, asked.meat_grams.0, day);
    cure.water = asked.water_grams.map(|grams| grams.0).unwrap_or_default();
    cure.skin_on = asked.skin_on.unwrap_or(false);
    cure.pump = percent(asked.pump_percent);
    cure.pickup = percent(asked.pickup_percent);
    cure.pickle = asked.pickle_grams.map(|grams| grams.0);
    cure.scale = asked.scale_grams.map(|grams| grams.0);
    cure.heated = asked.heated;
    let place = kitchen.entry.profile.0;
    let plan = cure::plan(&recipe, &cure, place, &app.law.laws)?;
    let rows = &app.law.laws.of(place).rows;
    Ok(CurePlanRead {
        curing_salt_grams: Weight(plan.curing_salt),
        salt_grams: Weight(plan.plain_salt),
        sugar_grams: Weight(plan.sugar),
        water_grams: Weight(plan.water),
        nitrite_ppm: number(plan.assessed.nitrite_ppm.round_dp(2)),
        nitrate_ppm: number(plan.assessed.nitrate_ppm.round_dp(2)),
        salt_percent: number(plan.assessed.salt_percent.number().round_dp(3)),
        allowed: !plan.assessed.is_refused(),
        findings: plan
            .assessed
            .findings
            .iter()
            .map(|finding| finding_read(finding, rows, &speech))
            .collect(),
        caution: speech.say(&CureDeedSays::Caution.into()),
    })
}
