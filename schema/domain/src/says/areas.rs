//! Everything that the core can say, for the check of the catalogue.

use super::Keys;
use crate::{cure_room, family, rows, words};

/// What each area declares. An area that is left out here is found by the guard on messages.
pub const AREAS: &[Keys] = &[
    cure_room::ReleaseSays::KEYS,
    family::CostSays::KEYS,
    family::NothingToCompare::KEYS,
    family::WhySays::KEYS,
    rows::FindingSays::KEYS,
    rows::SourceSays::KEYS,
];

/// The closed vocabularies whose words stand in messages.
pub const VOCABULARIES: &[Keys] = &[words::Being::KEYS];
