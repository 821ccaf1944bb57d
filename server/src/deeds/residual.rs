//! What a laboratory found of nitrite and nitrate in a cured piece, against what a place allows to be left.

use super::facts::Facts;
use crate::error::Result;
use crate::wire::cures::{ResidualAsked, decimal, number};
use domain::cure::{Basis, CureLevel, assess_residual};
use domain::dates::Because;
use domain::lot::Lot;
use domain::plan::{Plan, Reason};
use domain::refusal::Refusal;
use domain::rows::Gravity;
use domain::words::{Quantity, Topic};
use store::measurements::Measurement;

/// Holds what was found against the limits on what is left; what is to be kept with the lot comes back.
///
/// # Errors
/// 422 where it cannot be, and `limit` where more is left than a row that was read allows.
pub fn look(
    facts: &Facts<'_, '_>,
    asked: Option<&ResidualAsked>,
    lot: &Lot,
    plan: &mut Plan,
) -> Result<Vec<Measurement>> {
    let Some((asked, cured)) = asked.zip(lot.product.cured.cure) else {
        return Ok(Vec::new());
    };
    let (law, day) = (facts.law(), facts.moment.day);
    let salts = asked.as_sodium_salt.unwrap_or(false);
    let told = [
        (
            asked.nitrite_ppm,
            "residual.nitrite_ppm",
            [Basis::NitriteIon, Basis::SodiumNitrite],
            Quantity::ResidualNitritePpm,
        ),
        (
            asked.nitrate_ppm,
            "residual.nitrate_ppm",
            [Basis::NitrateIon, Basis::SodiumNitrate],
            Quantity::ResidualNitratePpm,
        ),
    ];
    let mut kept = Vec::new();
    for (ppm, field, [ion, salt], quantity) in told {
        let Some(ppm) = ppm.map(decimal) else {
            continue;
        };
        let named = |refusal: Refusal| Refusal {
            field: Some(field.to_owned()),
            ..refusal
        };
        let level = CureLevel::residual(ppm, if salts { salt } else { ion });
        let found = assess_residual(level, cured.method, cured.class, day, law).map_err(named)?;
        for finding in found {
            let because = Because::finding(&finding);
            if finding.refuses() {
                return Err(Refusal::limit(field, &because).into());
            }
            if finding.gravity == Gravity::Warn {
                plan.warnings.push(finding.says.clone());
            }
            let topic = Topic::Cure;
            plan.reasons.push((lot.id, Reason { topic, because }));
        }
        let as_salt = level.on(salt, &law.cures.masses).map_err(named)?;
        kept.push(Measurement {
            quantity,
            millionths: number(as_salt.ppm).0,
        });
    }
    Ok(kept)
}
