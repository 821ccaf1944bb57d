//! What an ingredient is in the list, where a place treats some apart.

/// What an ingredient is in the list.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Nature {
    /// A food like any other.
    #[default]
    Food,
    /// A fat or oil: its animal or plant is said.
    Fat,
    /// A mix that cures: every part of it is said by name.
    Cure,
    /// A spice, a herb or a mix of them.
    Spice,
    /// A flavouring, smoke among them.
    Flavouring,
    /// An additive.
    Additive,
    /// Water or ice that stays in.
    Water,
    /// Water that is taken out again in the making: a soak, a brine that is poured off.
    RemovedWater,
    /// A sausage casing.
    Casing,
}

impl Nature {
    /// Every one, with its spelling.
    pub const ALL: [(Nature, &'static str); 9] = [
        (Nature::Food, "food"),
        (Nature::Fat, "fat"),
        (Nature::Cure, "cure"),
        (Nature::Spice, "spice"),
        (Nature::Flavouring, "flavouring"),
        (Nature::Additive, "additive"),
        (Nature::Water, "water"),
        (Nature::RemovedWater, "removed-water"),
        (Nature::Casing, "casing"),
    ];

    /// As it is spelt everywhere.
    pub fn as_str(self) -> &'static str {
        let spelt = Nature::ALL.iter().find(|(nature, _)| *nature == self);
        spelt.map_or("", |(_, text)| text)
    }

    /// The one so spelt.
    pub fn parse(text: &str) -> Option<Nature> {
        let found = Nature::ALL.iter().find(|(_, spelt)| *spelt == text);
        found.map(|(nature, _)| *nature)
    }
}
