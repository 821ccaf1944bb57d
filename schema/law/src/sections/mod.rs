//! How each subject is written in its file.

mod cures;
mod cures_claim;
mod cures_limit;
mod dates;
mod duties;
mod food_words;
mod heat;
mod measures;
mod stability;
mod statements;
mod trade;
mod trichinae;

pub use cures::CuresEntry;
pub use dates::DatesEntry;
pub use duties::DutiesEntry;
pub use food_words::FoodWordsEntry;
pub use heat::HeatEntry;
pub use stability::StabilityEntry;
pub use statements::StatementsEntry;
pub use trade::TradeEntry;
pub use trichinae::TrichinaeEntry;

use crate::file::File;
use schemars::generate::SchemaSettings;

/// The schema of each subject's file.
pub fn schemas() -> Vec<(&'static str, serde_json::Value)> {
    macro_rules! of {
        ($($name:literal: $entry:ty,)+) => {
            vec![$(($name, SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<File<$entry>>().to_value()),)+]
        };
    }
    of! {
        "cures": CuresEntry,
        "dates": DatesEntry,
        "duties": DutiesEntry,
        "food-words": FoodWordsEntry,
        "heat": HeatEntry,
        "stability": StabilityEntry,
        "statements": StatementsEntry,
        "trade": TradeEntry,
        "trichinae": TrichinaeEntry,
    }
}
