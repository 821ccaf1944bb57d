//! What was measured of a food, and what is known of it.

use super::says::ReadingSays;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::words::words;
use rust_decimal::Decimal;

/// What was measured. What was not is `None`, never a guess.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct StabilityReadings {
    /// pH, 0 to 14.
    pub ph: Option<Decimal>,
    /// Water activity, 0 to 1.
    pub water_activity: Option<Decimal>,
    /// Salt in the water of the food (%).
    pub salt_in_water: Option<Percent>,
    /// Salt in the brine that it is packed in (%).
    pub brine: Option<Percent>,
    /// What else is known.
    pub facts: Vec<Fact>,
}

/// How it was treated.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Treated {
    /// Was it heated so that what grows from no spores is dead?
    pub is_heated: bool,
    /// Was it packed so that nothing gets in again, and then heated or heated and then packed?
    pub is_packed: bool,
}

words! {
    /// What may be known of a food.
    Fact {
        /// Commercially sterile in a hermetic pack.
        SterileHermetic = "sterile-hermetic",
        /// Packed in salt.
        PackedInSalt = "packed-in-salt",
        /// Packed in brine.
        PackedInBrine = "packed-in-brine",
        /// Fermented, the readings being those at its end.
        Fermented = "fermented",
        /// Cured at an inspected plant and received intact.
        PlantCured = "plant-cured",
        /// Raw meat, poultry or vegetables.
        RawMeat = "raw-meat",
    }
}

words! {
    /// What can be measured of a food's stability.
    Measure {
        /// pH.
        Ph = "ph",
        /// Water activity.
        WaterActivity = "water-activity",
        /// Salt in the water of the food (%).
        SaltInWater = "salt-in-water",
        /// Salt in the brine (%).
        Brine = "brine",
    }
}

impl StabilityReadings {
    /// The reading, if there is one.
    pub fn of(&self, measure: Measure) -> Option<Decimal> {
        match measure {
            Measure::Ph => self.ph,
            Measure::WaterActivity => self.water_activity,
            Measure::SaltInWater => self.salt_in_water.map(Percent::number),
            Measure::Brine => self.brine.map(Percent::number),
        }
    }

    /// Refuses what no meter shows.
    ///
    /// # Errors
    /// pH outside 0 to 14, water activity outside 0 to 1, salt outside 0 to 27 %.
    pub fn plausible(&self) -> Result<()> {
        if let Some(ph) = self
            .ph
            .filter(|ph| *ph < Decimal::ZERO || *ph > Decimal::from(14))
        {
            return Err(Refusal::cannot_be("ph", ReadingSays::Ph { ph }));
        }
        if let Some(activity) = self.water_activity {
            if activity > Decimal::ONE {
                let detail = match activity <= Decimal::ONE_HUNDRED {
                    true => ReadingSays::ActivityPercent {
                        activity,
                        meant: activity / Decimal::ONE_HUNDRED,
                    },
                    false => ReadingSays::ActivityHigh { activity },
                };
                return Err(Refusal::cannot_be("water_activity", detail));
            }
            if activity < Decimal::ZERO {
                let detail = ReadingSays::ActivityLow { activity };
                return Err(Refusal::cannot_be("water_activity", detail));
            }
        }
        // Water holds no more salt than about 26.4 % (`canada-eu-uk-6.9`).
        for (field, salt) in [("salt_in_water", self.salt_in_water), ("brine", self.brine)] {
            let salt = salt.map(Percent::number);
            if let Some(salt) =
                salt.filter(|salt| *salt < Decimal::ZERO || *salt > Decimal::from(27))
            {
                return Err(Refusal::cannot_be(field, ReadingSays::Salt { salt }));
            }
        }
        Ok(())
    }
}
