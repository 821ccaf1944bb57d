//! The words of this room, and how a length of time is said.

use chrono::TimeDelta;

/// The classes of food that a kitchen's cooking rule tells apart (`us-1.8`).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Food {
    /// Whole muscle that was neither pierced nor pumped.
    Intact,
    /// Ground, injected or mechanically tenderised meat.
    Ground,
    /// Poultry, stuffed meat, and stuffing with meat in it.
    Poultry,
    /// A whole roast of beef or pork, a cured one such as a ham among them.
    Roast,
    /// Raw animal food cooked by microwaves.
    Microwaved,
}

impl Food {
    /// Every class.
    pub const ALL: &'static [Food] = &[
        Food::Intact,
        Food::Ground,
        Food::Poultry,
        Food::Roast,
        Food::Microwaved,
    ];

    /// As it is spelt everywhere.
    pub const fn as_str(self) -> &'static str {
        match self {
            Food::Intact => "intact",
            Food::Ground => "ground",
            Food::Poultry => "poultry",
            Food::Roast => "roast",
            Food::Microwaved => "microwaved",
        }
    }

    /// The class so spelt.
    pub fn parse(text: &str) -> Option<Food> {
        Food::ALL.iter().copied().find(|food| food.as_str() == text)
    }
}

/// What is held, thawed or received at a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Holding {
    /// Cold food.
    Cold,
    /// Hot food.
    Hot,
    /// A roast that was properly cooked, held hot.
    HotRoast,
    /// Barbecued, roasted or broiled meat that is ready to eat, held cold.
    BarbecuedCold,
    /// The same, held hot.
    BarbecuedHot,
    /// What is called refrigerated.
    Refrigerated,
    /// Shell eggs that were not treated.
    Eggs,
    /// Food as it comes in at the door.
    Receiving,
    /// The water in which food thaws.
    ThawWater,
    /// Ready-to-eat food while it thaws.
    ThawReadyToEat,
    /// Fresh mince.
    Mince,
    /// Frozen mince.
    FrozenMince,
    /// A bath for cooking under vacuum.
    Bath,
    /// The same for chicken.
    ChickenBath,
    /// What was cooked under vacuum, stored.
    SousVideStore,
}

impl Holding {
    /// Every word.
    pub const ALL: &'static [Holding] = &[
        Holding::Cold,
        Holding::Hot,
        Holding::HotRoast,
        Holding::BarbecuedCold,
        Holding::BarbecuedHot,
        Holding::Refrigerated,
        Holding::Eggs,
        Holding::Receiving,
        Holding::ThawWater,
        Holding::ThawReadyToEat,
        Holding::Mince,
        Holding::FrozenMince,
        Holding::Bath,
        Holding::ChickenBath,
        Holding::SousVideStore,
    ];

    /// As it is spelt everywhere.
    pub const fn as_str(self) -> &'static str {
        match self {
            Holding::Cold => "cold",
            Holding::Hot => "hot",
            Holding::HotRoast => "hot-roast",
            Holding::BarbecuedCold => "barbecued-cold",
            Holding::BarbecuedHot => "barbecued-hot",
            Holding::Refrigerated => "refrigerated",
            Holding::Eggs => "eggs",
            Holding::Receiving => "receiving",
            Holding::ThawWater => "thaw-water",
            Holding::ThawReadyToEat => "thaw-ready-to-eat",
            Holding::Mince => "mince",
            Holding::FrozenMince => "frozen-mince",
            Holding::Bath => "bath",
            Holding::ChickenBath => "chicken-bath",
            Holding::SousVideStore => "sous-vide-store",
        }
    }

    /// The word so spelt.
    pub fn parse(text: &str) -> Option<Holding> {
        Holding::ALL
            .iter()
            .copied()
            .find(|word| word.as_str() == text)
    }
}

/// A length of time as a cook says it: `1 h 52 min`, `34 s`, `20 d 4 h`.
pub fn shown(time: TimeDelta) -> String {
    let seconds = time.num_seconds();
    let parts = [
        (seconds / 86_400, "d"),
        (seconds / 3_600 % 24, "h"),
        (seconds / 60 % 60, "min"),
        (seconds % 60, "s"),
    ];
    let said: Vec<String> = parts
        .iter()
        .filter(|(count, _)| *count != 0)
        .map(|(count, unit)| format!("{count} {unit}"))
        .collect();
    match said.is_empty() {
        true => "0 s".to_owned(),
        false => said.join(" "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_read_back_and_times_are_said() {
        assert!(
            Food::ALL
                .iter()
                .all(|food| Food::parse(food.as_str()) == Some(*food))
        );
        assert!(
            Holding::ALL
                .iter()
                .all(|word| Holding::parse(word.as_str()) == Some(*word))
        );
        assert_eq!(shown(TimeDelta::minutes(112)), "1 h 52 min");
        assert_eq!(shown(TimeDelta::seconds(134)), "2 min 14 s");
        assert_eq!(shown(TimeDelta::zero()), "0 s");
        assert_eq!(shown(TimeDelta::hours(484)), "20 d 4 h");
    }
}
