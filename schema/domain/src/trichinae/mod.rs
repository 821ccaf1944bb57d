//! Trichinae in pork that is eaten uncooked: what kills them, and what else may be shown instead.
//!
//! These treatments are for trichinae only. They say nothing of Salmonella, E. coli, Listeria or
//! Toxoplasma (`canada-eu-uk-6.4`), and local codes and licensed practice decide.

mod check;
mod drying;
mod freezing;
mod ham;
mod heating;
mod length;
mod method;
mod on_record;
mod process;
mod rules;
mod salt;
mod says;

pub use check::{Proof, Treatment, can_be, check};
pub use drying::{Cut, DryingDays, SausageDrying};
pub use freezing::{ColdStep, Freezing, FreezingTable, MeasuredAt};
pub use ham::{HamDrying, HamStep};
pub use heating::{Heating, HeatingRules, Unlogged};
pub use length::Length;
pub use method::{Climate, Drying, LeastOf, MostOf, SaltWay, TimedPart, TrichinaeMethod, Variant};
pub use on_record::{MixOnRecord, StageOnRecord};
pub use process::{Pickle, Process, Salting, StageKind, StageRun};
pub use rules::{OtherWay, TrichinaeRules, Way};
pub use salt::salt_of_wet_mix;
pub use says::{
    ColdSays, CureFigure, DryingSays, HeatedSays, LengthSays, MethodSays, PartSays, ProcessSays,
    ProofSays, StageOnRecordSays,
};
