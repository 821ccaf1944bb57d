//! Where a pig counts as reared: the months, or the weight, from which its life is looked at.

use super::says::OriginSays;
use crate::grams::Grams;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use chrono::{Months, NaiveDate};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// The ages and weights of the rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ages {
    /// Where they stand.
    pub row: RowId,
    /// Killed older than so many months.
    pub months: u32,
    /// The last so many months count.
    pub last_months: u32,
    /// Killed younger, but at so many kilograms or more.
    pub kilograms: Decimal,
    /// From so many kilograms on counts.
    pub from_kilograms: Decimal,
}

/// The part of its life that counts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reared {
    /// From this day to the kill.
    Since(NaiveDate),
    /// From the day on which it weighed so many kilograms to the kill.
    FromKilograms(Decimal),
    /// From birth to the kill.
    WholeLife,
}

/// The part of a pig's life that "reared in" speaks of (`canada-eu-uk-10.3`). One killed on the very
/// day it is so many months old is read as not older.
///
/// # Errors
/// Killed before its birth; younger, and its live weight not given.
pub fn reared(
    ages: &Ages,
    born: NaiveDate,
    killed: NaiveDate,
    kilograms: Option<Decimal>,
) -> Result<Reared> {
    if killed < born {
        return Err(Refusal::cannot_be(
            "killed",
            OriginSays::KilledFirst { born, killed },
        ));
    }
    let older_from = born
        .checked_add_months(Months::new(ages.months))
        .unwrap_or(NaiveDate::MAX);
    if killed > older_from {
        let since = killed
            .checked_sub_months(Months::new(ages.last_months))
            .unwrap_or(NaiveDate::MIN);
        return Ok(Reared::Since(since));
    }
    match kilograms {
        Some(kilograms) if kilograms <= Decimal::ZERO => {
            let milligrams = (kilograms * Decimal::from(1_000_000)).trunc().to_i64();
            let weight = Grams::from_milligrams(milligrams.unwrap_or(i64::MIN));
            let detail = OriginSays::LiveWeight { weight };
            Err(Refusal::cannot_be("kilograms", detail))
        }
        Some(kilograms) if kilograms >= ages.kilograms => {
            Ok(Reared::FromKilograms(ages.from_kilograms))
        }
        Some(_) => Ok(Reared::WholeLife),
        None => Err(Refusal::cannot_be(
            "kilograms",
            OriginSays::GiveLiveWeight {
                months: ages.months,
            },
        )),
    }
}
