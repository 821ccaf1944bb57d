//! Everything that the core can say, for the check of the catalogue.

use super::Keys;
use crate::deed::says as deeds;
use crate::{cure, cure_room, dates, family, lot, moment, refusal, rows, verdict, words};

/// What each area declares. An area that is left out here is found by the guard on messages.
pub const AREAS: &[Keys] = &[
    cure_room::AlarmSays::KEYS,
    cure_room::BasisSays::KEYS,
    cure_room::CurveSays::KEYS,
    cure_room::ForecastSays::KEYS,
    cure_room::ReleaseSays::KEYS,
    cure_room::RoomSays::KEYS,
    cure_room::SaltingSays::KEYS,
    cure_room::TaskSays::KEYS,
    dates::DateSays::KEYS,
    dates::EventSays::KEYS,
    dates::FirstDaySays::KEYS,
    family::CostSays::KEYS,
    family::NothingToCompare::KEYS,
    family::WhySays::KEYS,
    deeds::CorrectSays::KEYS,
    deeds::CountSays::KEYS,
    deeds::DepartSays::KEYS,
    deeds::DrawSays::KEYS,
    deeds::MoveSays::KEYS,
    deeds::ReceiveSays::KEYS,
    deeds::ReleaseDeedSays::KEYS,
    deeds::StepSays::KEYS,
    deeds::TakeBackSays::KEYS,
    deeds::VoidSays::KEYS,
    deeds::WeighSays::KEYS,
    lot::LotSays::KEYS,
    moment::MomentSays::KEYS,
    refusal::RefusalSays::KEYS,
    rows::FindingSays::KEYS,
    rows::SourceSays::KEYS,
    verdict::VerdictSays::KEYS,
];

/// The closed vocabularies whose words stand in messages.
pub const VOCABULARIES: &[Keys] = &[
    cure::Method::KEYS,
    words::Being::KEYS,
    words::DeedKind::KEYS,
    words::Packaging::KEYS,
    words::PrintState::KEYS,
    words::Side::KEYS,
    words::Species::KEYS,
    words::StepKind::KEYS,
];
