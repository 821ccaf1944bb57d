//! Heat and cold: was a cook enough, was it cooled in time, is it held hot or cold enough?
//!
//! The figures are the place's rules; here is what follows from them. A table is never read
//! between its rows, and what a log does not say is for a person to decide.

mod cook;
mod cooling;
mod due;
mod holding;
mod judgement;
mod log;
mod nowhere;
mod probe;
mod proof;
mod read_last;
mod receiving;
mod rules;
mod sane;
mod says;
mod span;
mod table;
mod there;
mod warm;
mod ways;
mod words;

pub use cook::{Cook, Standard, enough};
pub use cooling::{Cooled, CoolingPlan, CoolingStage, cooled, cooled_by};
pub use due::{CoolingDue, cooling_due};
pub use holding::{Hold, held};
pub use judgement::{Answer, Judgement};
pub use log::{CoreReading, Log, Silence};
pub use probe::{Bath, ProbeCheck, ProbeRules, ProbeSays, probed};
pub use proof::{HeatRecord, HeatVerdict, Heated, Pierced, Proof, prove};
pub use read_last::{Bounds, Broken, beyond};
pub use receiving::{at_door, class_at_door, class_kept, frozen_at_door, kept};
pub use rules::{
    Boiling, ComeUp, Cooking, Degrees, FailureRules, HeatRules, Lethality, LogRules, hours,
};
pub use sane::{plausible_core, plausible_store, plausible_time};
pub use says::{CookSays, CoolSays, HeatSays, HoldSays, StageSays};
pub use span::Span;
pub use table::{HeatTable, HoldStep};
pub use there::There;
pub use warm::stood_warm;
pub use words::{Food, Holding, PiercedBy};
