//! What was measured of a food, and what is known of it.

use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use rust_decimal::Decimal;

/// What was measured. What was not is `None`, never a guess.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Readings {
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

/// What may be known of a food.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fact {
    /// Commercially sterile in a hermetic pack.
    SterileHermetic,
    /// Packed in salt.
    PackedInSalt,
    /// Packed in brine.
    PackedInBrine,
    /// Fermented, the readings being those at its end.
    Fermented,
    /// Cured at an inspected plant and received intact.
    PlantCured,
    /// Raw meat, poultry or vegetables.
    RawMeat,
}

impl Fact {
    /// Every fact.
    pub const ALL: &'static [Fact] = &[
        Fact::SterileHermetic,
        Fact::PackedInSalt,
        Fact::PackedInBrine,
        Fact::Fermented,
        Fact::PlantCured,
        Fact::RawMeat,
    ];

    /// As it is spelt everywhere.
    pub const fn as_str(self) -> &'static str {
        match self {
            Fact::SterileHermetic => "sterile-hermetic",
            Fact::PackedInSalt => "packed-in-salt",
            Fact::PackedInBrine => "packed-in-brine",
            Fact::Fermented => "fermented",
            Fact::PlantCured => "plant-cured",
            Fact::RawMeat => "raw-meat",
        }
    }

    /// The fact so spelt.
    pub fn parse(text: &str) -> Option<Fact> {
        Fact::ALL.iter().copied().find(|fact| fact.as_str() == text)
    }
}

/// What can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Measure {
    /// pH.
    Ph,
    /// Water activity.
    WaterActivity,
    /// Salt in the water of the food (%).
    SaltInWater,
    /// Salt in the brine (%).
    Brine,
}

impl Measure {
    /// As it is said.
    pub const fn said(self) -> &'static str {
        match self {
            Measure::Ph => "pH",
            Measure::WaterActivity => "water activity",
            Measure::SaltInWater => "salt in the water of the food, %",
            Measure::Brine => "salt in the brine, %",
        }
    }
}

impl Readings {
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
            let detail = format!("A pH of {ph} cannot be; it lies between 0 and 14.");
            return Err(Refusal::cannot_be("ph", detail));
        }
        if let Some(activity) = self.water_activity {
            if activity > Decimal::ONE {
                let detail = match activity <= Decimal::ONE_HUNDRED {
                    true => format!(
                        "A water activity of {activity} cannot be; it is at most 1. Was a per cent \
                         typed? {activity} % is {}.",
                        (activity / Decimal::ONE_HUNDRED).normalize()
                    ),
                    false => format!("A water activity of {activity} cannot be; it is at most 1."),
                };
                return Err(Refusal::cannot_be("water_activity", detail));
            }
            if activity < Decimal::ZERO {
                let detail = format!("A water activity of {activity} cannot be; it is at least 0.");
                return Err(Refusal::cannot_be("water_activity", detail));
            }
        }
        // Water holds no more salt than about 26.4 % (`canada-eu-uk-6.9`).
        for (field, salt) in [("salt_in_water", self.salt_in_water), ("brine", self.brine)] {
            let salt = salt.map(Percent::number);
            if let Some(salt) =
                salt.filter(|salt| *salt < Decimal::ZERO || *salt > Decimal::from(27))
            {
                let detail = format!(
                    "{salt} % of salt in water cannot be; it holds no more than about 26 %."
                );
                return Err(Refusal::cannot_be(field, detail));
            }
        }
        Ok(())
    }
}
