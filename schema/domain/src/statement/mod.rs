//! What a label says of a food under the law of a place: its ingredients, its allergens, the animals
//! in it, the words and form of its dates, how it is kept, and how high the letters are.
//!
//! [`write()`] makes the whole statement; [`changes`] tells two lots apart; [`date_mark`] puts a date
//! in words. It is no legal advice: local codes and licensed practice decide.

mod absence;
mod allergens;
mod changes;
mod contains;
mod date_mark;
mod due;
mod folded;
mod food;
mod food_words;
mod heights;
mod list;
mod matching;
mod net;
mod notices;
mod rules;
mod run;
mod says;
mod share;
mod species;
#[cfg(test)]
mod tests;
mod water;
mod wording;
mod write;

pub use absence::{AbsenceGroup, AbsenceRules};
pub use allergens::{AllergenName, AllergenRules, Declared, declared, printed};
pub use changes::{AllergenSource, FoodChange, changes};
pub use contains::{ContainsRules, check_contains, contains, may_contain};
pub use date_mark::{
    DateAsk, DateForm, DateKind, DateMark, DatePacking, DateRules, DateWords, DatesDue, Forbidden,
    LeastDate, Marks, Needed, Precision, Reader, check_words, date_mark, dates_due,
};
pub use due::{AllergenNotice, SaleDuty};
pub use food::{Food, Sale};
pub use food_words::{
    FoodOf, FoodWords, Named, WordsByLanguage, named_elsewhere, named_in, untold_by,
};
pub use heights::{Height, HeightStep, HeightUnit, Lettering, check_height, letter_height};
pub use list::{AdditiveName, LastRules, ListRules, TailRules, ingredients, share};
pub(crate) use matching::find as find_words;
pub use net::{MetricNet, NetRules, check_net_weight};
pub use notices::{Notice, NoticeKind, OriginRules, check_languages, notice, origin};
pub use rules::StatementRules;
pub use run::{Runs, TextRun};
pub use says::{ChangeSays, DateKindSays, LetteringSays, StatementSays};
pub use share::ShareRules;
pub use species::{SpeciesName, SpeciesRules, note as species_note};
pub use water::{WaterRules, says_water, solution_percent};
pub use wording::{UpTo, Wording};
pub use write::{Statement, WrittenStatement, write};

/// What a label may do and need not, where the place leaves a choice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StatementStyle {
    /// Dissolve compounds into the list, where the place allows it.
    pub merged: bool,
    /// Put small things last, where the place has a way of doing so.
    pub small_last: bool,
}

impl Default for StatementStyle {
    /// Compounds in brackets, small things last.
    fn default() -> StatementStyle {
        StatementStyle {
            merged: false,
            small_last: true,
        }
    }
}
