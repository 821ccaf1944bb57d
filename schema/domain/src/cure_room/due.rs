//! What is to be done in the cure room today.

use super::says::{RoomSays, TaskSays};
use super::{CureRoomRules, Forecast, Piece, PieceStage, Task, forecast};
use crate::says::Says;
use chrono::NaiveDate;

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoomTask {
    /// The piece.
    pub tag: String,
    /// What.
    pub task: Task,
    /// Since when.
    pub since: NaiveDate,
    /// For a tired cook.
    pub says: Says,
}

/// What is due on a day, for each piece in turn. A turn or weighing that was missed is due once,
/// not as often as it was missed.
pub fn due(pieces: &[Piece], on: NaiveDate, rules: &CureRoomRules) -> Vec<RoomTask> {
    pieces
        .iter()
        .flat_map(|piece| {
            [
                salted(piece, on),
                moved(piece, on),
                weighed(piece, on),
                ready(piece, on, rules),
            ]
            .into_iter()
            .flatten()
            .map(|(task, since)| RoomTask {
                tag: piece.tag.clone(),
                task,
                since,
                says: RoomSays::Due {
                    tag: piece.tag.clone(),
                    task: task.into(),
                    since,
                }
                .into(),
            })
            .collect::<Vec<_>>()
        })
        .collect()
}

type DueSince = Option<(Task, NaiveDate)>;

/// In the salt: turn or overhaul, unless it was done since the last planned day.
fn salted(piece: &Piece, on: NaiveDate) -> DueSince {
    // What comes out today is not turned once more.
    if piece.stage != PieceStage::InSalt || moved(piece, on).is_some() {
        return None;
    }
    let planned = piece
        .plan
        .iter()
        .filter(|planned| matches!(planned.task, Task::Turn | Task::Overhaul))
        .filter(|planned| planned.day <= on)
        .max()?;
    let done = piece
        .turned
        .iter()
        .any(|day| (planned.day..=on).contains(day));
    (!done).then_some((planned.task, planned.day))
}

/// The next place: out of the salt, to equalise, to hang.
fn moved(piece: &Piece, on: NaiveDate) -> DueSince {
    let wanted = match piece.stage {
        PieceStage::InSalt => [Task::Rinse, Task::Equalise, Task::Hang].as_slice(),
        PieceStage::Equalising => &[Task::Hang],
        PieceStage::Smoking | PieceStage::Hanging | PieceStage::Released => return None,
    };
    piece
        .plan
        .iter()
        .filter(|planned| wanted.contains(&planned.task) && planned.day <= on)
        .min()
        .map(|planned| (planned.task, planned.day))
}

/// Out of the salt: on the scale, unless it was there since the last planned day.
fn weighed(piece: &Piece, on: NaiveDate) -> DueSince {
    if !matches!(piece.stage, PieceStage::Equalising | PieceStage::Hanging) {
        return None;
    }
    let planned = piece
        .plan
        .iter()
        .filter(|planned| planned.task == Task::Weigh && planned.day <= on)
        .max()?;
    let last = piece.last(on);
    last.is_none_or(|last| last.day < planned.day)
        .then_some((Task::Weigh, planned.day))
}

/// Hanging, and the first day on which it may be ready has come.
fn ready(piece: &Piece, on: NaiveDate, rules: &CureRoomRules) -> DueSince {
    if piece.stage != PieceStage::Hanging {
        return None;
    }
    let from = match forecast(piece, on, rules) {
        Forecast::Unknown => {
            let mut planned = piece.plan.iter();
            planned.find(|planned| planned.task == Task::ReadyFrom)?.day
        }
        forecast => forecast.earliest()?,
    };
    (from <= on).then_some((Task::ReadyFrom, from))
}

impl RoomTask {
    /// Is it only that it may be ready?
    pub fn is_ready(&self) -> bool {
        matches!(self.task, Task::ReadyFrom | Task::ReadyBy)
    }

    /// The same where the piece is known already.
    pub fn without_tag(&self) -> Says {
        RoomSays::TaskSince {
            task: self.task.into(),
            since: self.since,
        }
        .into()
    }
}

impl Task {
    /// As a cook says it.
    pub fn says(self) -> Says {
        TaskSays::from(self).into()
    }
}
