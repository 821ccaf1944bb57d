//! Curing salts: what was put on, how much of it is nitrite and nitrate in the meat, whether the
//! place allows it, and what the label must say of it.
//!
//! Reading order: [`Method`] and [`Class`] (what is done to what), [`Strength`] (what is in the
//! bag), [`Mix`] (the arithmetic, in any unit), [`CureLevel`] (parts per million with what they are
//! counted as), [`CureLimit`] (what a place allows), [`assess`] (a cure that was used), [`plan`] (one
//! to be weighed out), [`Salometer`] (brine), [`names`] and [`uncured`] (the label).
//!
//! No figure of a law stands here: they come with [`CureRules`], each with its row.

mod alternatives;
mod assess;
mod brine;
mod by_weight;
mod ceiling;
mod check;
mod cooked;
mod here;
mod ingoing;
mod level;
mod limit;
mod makeup;
mod mix;
mod mixture;
mod names;
mod plan;
mod residual;
mod rules;
mod says;
mod strength;
mod to_come;
mod unconfirmed;
mod uncured;
mod untested;
mod vocabulary;
mod weighing;
mod wrong_salt;

pub use alternatives::Alternative;
pub use assess::{Assessed, Cure, assess};
pub use brine::{BrineReading, brine_percent, grams_per_kilogram_of_water, read_salometer};
pub use ceiling::{Ceiling, ceiling};
pub use cooked::check_cooked;
pub use here::{Here, as_sold};
pub use ingoing::{Brought, Ingoing};
pub use level::{AtomicMasses, CureLevel};
pub use limit::{Counts, CureLimit, Potassium, When};
pub use makeup::Makeup;
pub use mix::Mix;
pub use mixture::Mixture;
pub use names::{ListedPart, NameOf, Part, names};
pub use plan::{CurePlan, Dose, Recipe, plan};
pub use residual::assess_residual;
pub use rules::{CureRules, KnownStrength, Plausible, SalometerScale, ScaleRule};
pub use says::{
    AllowedSays, BrineSays, ClaimSays, CountedSays, CureSays, DoseSays, FoodSays, LevelSays,
    LimitSays, RangeSays, SetSays,
};
pub use strength::Strength;
pub use to_come::to_come;
pub use unconfirmed::unconfirmed;
pub use uncured::{Beside, Claim, ClaimFacts, ClaimRules, ClaimWords, Exception, uncured};
pub use untested::untested;
pub use vocabulary::{Alkali, Basis, Class, Method, Salometer, ScaleClass, Stage};
pub use weighing::{error_ppm, least_load};
