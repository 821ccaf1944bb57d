//! The scope of a recall: which packs are affected, from when on and why, and what is deliberately outside.
//!
//! A question of what was loaded, and nothing else: [`World`] holds the deeds, lots and clean-downs that may
//! matter, [`starts`] finds where the question begins, [`walk`] goes on from there until nothing new is reached,
//! and [`tell`] sums it up. Where something that matters was not loaded, the walk says what it lacks.

mod reason;
mod says;
mod source;
mod start;
mod tell;
mod walk;
mod window;
mod world;

pub use reason::{ByKey, reason};
pub use says::{ReasonSays, ScopeSays};
pub use source::{KnownOnceAs, Sought, SourceFact, plain, sought};
pub use start::{Seed, Start, starts};
pub use tell::{InScope, Outside, Scope, ScopePack, ScopeSold, tell};
pub use walk::{Affected, Because, How, Lacks, Question, Reached, Spreads, walk};
pub use window::{Window, windows_of};
pub use world::{Doing, Happened, PackLife, World, WorldLot};

use crate::lot::DeedId;
use chrono::{DateTime, Utc};

/// A moment in the order of the record's days: by `at`; deeds of the same moment in the order of recording.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct When {
    /// The moment.
    pub at: DateTime<Utc>,
    /// The deed.
    pub deed: DeedId,
}

impl When {
    /// Since its birth: before everything that was ever done with it.
    pub const BIRTH: When = When {
        at: DateTime::<Utc>::MIN_UTC,
        deed: DeedId(i32::MIN),
    };

    /// Before every deed of that moment.
    pub const fn from(at: DateTime<Utc>) -> When {
        When {
            at,
            deed: DeedId(i32::MIN),
        }
    }
}

#[cfg(test)]
mod tests;
