//! Hams and shoulders cured dry, whole: what may be called "country" or "dry cured".

use super::cured_pork::{Standards, yield_of};
use super::measured;
use super::standards_say::DryCuredSays;
use crate::grams::Grams;
use crate::measure::{Percent, Temperature};
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, Finding, Rows};
use crate::words::words;
use rust_decimal::Decimal;

words! {
    /// What a dry-cured piece calls itself.
    Claim { Country = "country", DryCured = "dry-cured", }
}

words! {
    /// The piece that is dry-cured whole.
    Piece { Ham = "ham", Shoulder = "shoulder", }
}

/// A ham or shoulder cured dry, whole.
#[derive(Debug, Clone, Copy)]
pub struct DryCured {
    /// What it is to be called.
    pub claim: Claim,
    /// What it is.
    pub piece: Piece,
    /// Fresh weight.
    pub fresh: Grams,
    /// Finished weight.
    pub finished: Grams,
    /// Was nitrite or nitrate used?
    pub nitrite: bool,
    /// Salt inside.
    pub salt: Option<Percent>,
    /// Water inside.
    pub water: Option<Percent>,
    /// Water activity.
    pub water_activity: Option<Decimal>,
    /// Days in cure and equalising.
    pub curing_days: Option<u32>,
    /// Days of the whole process.
    pub whole_days: Option<u32>,
    /// The warmest core while it dried or smoked, where the climate was controlled.
    pub core: Option<Temperature>,
}

/// What stands against calling it so (`us-C1` to `us-C8`): weight, salt, brine and water activity
/// are enforced, times and the core temperature are advice.
///
/// # Errors
/// Weights or percentages that cannot be.
pub fn check_dry_cured(
    standards: &Standards,
    rows: &Rows,
    piece: &DryCured,
) -> Result<Vec<Finding>> {
    let part = yield_of(piece.fresh, piece.finished)?;
    let mut found = Vec::new();
    if !standards.dry_yield.allows(part.number()) {
        let most = &standards.dry_yield;
        let says = DryCuredSays::Heavy {
            part,
            most: most.value,
        };
        found.push(Finding::against(rows, &most.row, says));
    }
    match piece.nitrite {
        true => found.extend(salt(standards, rows, piece.salt)?),
        false => found.extend(brine(standards, rows, piece)?),
    }
    found.extend(advice(standards, piece));
    Ok(found)
}

fn salt(standards: &Standards, rows: &Rows, salt: Option<Percent>) -> Result<Option<Finding>> {
    let least = &standards.salt;
    let says = match salt {
        Some(salt) if least.allows(percent_of(salt)?) => return Ok(None),
        Some(salt) => DryCuredSays::LittleSalt {
            salt,
            least: least.value,
        },
        None => DryCuredSays::MeasureSalt { least: least.value },
    };
    Ok(Some(Finding::against(rows, &least.row, says)))
}

fn percent_of(salt: Percent) -> Result<Decimal> {
    measured("salt", salt)
}

/// Brine in percent: salt of salt and water together (`us-U8`).
///
/// # Errors
/// Percentages that cannot be.
pub fn brine_of(salt: Percent, water: Percent) -> Result<Percent> {
    let (salt, water) = (measured("salt", salt)?, measured("water", water)?);
    if salt + water > Decimal::ONE_HUNDRED {
        return Err(Refusal::cannot_be(
            "water",
            DryCuredSays::MoreThanWhole { salt, water },
        ));
    }
    Ok(Percent::of(salt, salt + water))
}

fn brine(standards: &Standards, rows: &Rows, piece: &DryCured) -> Result<Option<Finding>> {
    let (least, most) = (&standards.brine, &standards.water_activity);
    if let Some(aw) = piece.water_activity {
        if aw <= Decimal::ZERO || aw > Decimal::ONE {
            return Err(Refusal::cannot_be(
                "water_activity",
                DryCuredSays::ActivityCannotBe { activity: aw },
            ));
        }
        if most.allows(aw) {
            return Ok(None);
        }
    }
    let brine = match (piece.salt, piece.water) {
        (Some(salt), Some(water)) => Some(brine_of(salt, water)?),
        _ => None,
    };
    if brine.is_some_and(|brine| least.allows(brine.number())) {
        return Ok(None);
    }
    let (needed, activity) = (least.value, most.value);
    let says = match (brine, piece.water_activity) {
        (None, None) => DryCuredSays::Unmeasured {
            brine: needed,
            activity,
        },
        (Some(is), None) => DryCuredSays::Brine {
            brine: needed,
            activity,
            is,
        },
        (None, Some(is)) => DryCuredSays::Activity {
            brine: needed,
            activity,
            is,
        },
        (Some(has), Some(is)) => DryCuredSays::Both {
            brine: needed,
            activity,
            has,
            is,
        },
    };
    let mut finding = Finding::against(rows, &least.row, says);
    if most.row != least.row {
        finding.rows.push(most.row.clone());
    }
    Ok(Some(finding))
}

/// Times and temperature of the standard that nobody enforces.
fn advice(standards: &Standards, piece: &DryCured) -> Vec<Finding> {
    let mut found = Vec::new();
    for time in standards
        .times
        .iter()
        .filter(|time| time.claim == piece.claim)
    {
        let least = match piece.piece {
            Piece::Ham => &time.ham,
            Piece::Shoulder => &time.shoulder,
        };
        let days = if time.whole {
            piece.whole_days
        } else {
            piece.curing_days
        };
        let Some(days) = days.filter(|&days| !least.allows(days.into())) else {
            continue;
        };
        let Bound { row, value, .. } = least;
        let says = match time.whole {
            true => DryCuredSays::WholeDays {
                days,
                least: *value,
            },
            false => DryCuredSays::CureDays {
                days,
                least: *value,
            },
        };
        found.push(Finding::note(says, [row.clone()]));
    }
    let most = &standards.country_core;
    if let Some(core) = piece
        .core
        .filter(|core| piece.claim == Claim::Country && !most.allows(core.in_fahrenheit()))
    {
        let says = DryCuredSays::Core {
            core,
            most: Temperature::fahrenheit(most.value),
        };
        found.push(Finding::note(says, [most.row.clone()]));
    }
    found
}
