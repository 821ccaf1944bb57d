//! What an ingredient is in the list, where a place treats some apart.

use crate::words::words;

words! {
    /// What an ingredient is in the list.
    Nature {
        /// A food like any other.
        Food = "food",
        /// A fat or oil: its animal or plant is said.
        Fat = "fat",
        /// A mix that cures: every part of it is said by name.
        Cure = "cure",
        /// A spice, a herb or a mix of them.
        Spice = "spice",
        /// A flavouring, smoke among them.
        Flavouring = "flavouring",
        /// An additive.
        Additive = "additive",
        /// Water or ice that stays in.
        Water = "water",
        /// Water that is taken out again in the making: a soak, a brine that is poured off.
        RemovedWater = "removed-water",
        /// A sausage casing.
        Casing = "casing",
    }
}

/// A food like any other, unless it is said otherwise.
#[allow(clippy::derivable_impls, reason = "the vocabulary declares the type")]
impl Default for Nature {
    fn default() -> Nature {
        Nature::Food
    }
}
