//! What instruments show, and what the record keeps of it.

use crate::words::words;

words! {
    /// What is measured or read off. The record keeps it in millionths of its unit.
    Quantity {
        /// A weight, in grams.
        Grams = "grams",
        /// A core temperature, or that of a place, in degrees Celsius.
        Celsius = "celsius",
        /// The same, read in degrees Fahrenheit.
        Fahrenheit = "fahrenheit",
        /// How many minutes it was held there.
        HoldMinutes = "hold-minutes",
        /// How many minutes a pot boiled.
        BoiledMinutes = "boiled-minutes",
        /// pH.
        Ph = "ph",
        /// Water activity.
        WaterActivity = "water-activity",
        /// Degrees of a salometer whose scale is for 60 °F.
        Salometer60F = "salometer-60F",
        /// Degrees of a salometer whose scale is for 38 °F.
        Salometer38F = "salometer-38F",
        /// How warm the brine was in which it floated.
        BrineCelsius = "brine-celsius",
        /// The same, read in degrees Fahrenheit.
        BrineFahrenheit = "brine-fahrenheit",
        /// Nitrite in a curing salt, in per cent.
        NitritePercent = "nitrite-percent",
        /// Nitrate in a curing salt, in per cent.
        NitratePercent = "nitrate-percent",
        /// How much of that nitrite is of potassium: all or nothing, in per cent of the curing salt.
        PotassiumNitritePercent = "potassium-nitrite-percent",
        /// The same of the nitrate.
        PotassiumNitratePercent = "potassium-nitrate-percent",
        /// Common salt in a curing salt or brine, in per cent.
        CureSaltPercent = "cure-salt-percent",
        /// Sugar in it.
        CureSugarPercent = "cure-sugar-percent",
        /// Water in it.
        CureWaterPercent = "cure-water-percent",
        /// Nitrite that went into a cure, as sodium nitrite, in parts per million.
        NitritePpm = "nitrite-ppm",
        /// Nitrate that went into a cure, as sodium nitrate, in parts per million.
        NitratePpm = "nitrate-ppm",
        /// Nitrite that a laboratory found in the finished food, as the ion, in parts per million.
        ResidualNitritePpm = "residual-nitrite-ppm",
        /// Nitrate that it found, as the ion, in parts per million.
        ResidualNitratePpm = "residual-nitrate-ppm",
        /// Salt that went into a cure, in per cent.
        SaltPercent = "salt-percent",
        /// What was paid, in the smallest coins.
        PriceMinor = "price-minor",
    }
}

impl Quantity {
    /// Is it a temperature of food or of a place?
    pub const fn is_warmth(self) -> bool {
        matches!(self, Quantity::Celsius | Quantity::Fahrenheit)
    }
}
