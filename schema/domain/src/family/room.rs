//! The cure room: every piece with its loss, its alarms, when it may be ready, what is due.

use super::{Family, piece};
use crate::cure_room::{
    self, Alarm, Due, Forecast, Likely, Piece, Release, Rules, Signed, Stage, Task,
};
use crate::lot::LotId;
use crate::measure::Percent;
use chrono::NaiveDate;
use chrono_tz::Tz;

/// A piece as it is told on a day.
#[derive(Debug, Clone)]
pub struct PieceView {
    /// Its lot.
    pub lot: LotId,
    /// The piece.
    pub piece: Piece,
    /// What it has lost of its green weight at the last weighing.
    pub loss: Option<Percent>,
    /// What its curve expects it to have lost by then.
    pub expected: Option<Percent>,
    /// What looks wrong about its weighings and is not signed.
    pub alarm: Option<Alarm>,
    /// Whose tag it may be, where its weight fits another piece better.
    pub likely: Option<Likely>,
    /// When it may be ready; nothing to tell of what is released.
    pub forecast: Forecast,
    /// Whether it may be released, were it signed for on that day.
    pub release: Release,
    /// What is to be done.
    pub due: Vec<Due>,
}

impl PieceView {
    /// Is it released already?
    pub fn is_released(&self) -> bool {
        self.piece.stage == Stage::Released
    }
}

/// Some lots as pieces of the cure room, the longest in salt first; those that are none are left out.
/// The family has to be loaded with the ancestors of these lots.
pub fn room(
    family: &Family,
    lots: impl IntoIterator<Item = LotId>,
    zone: Tz,
    today: NaiveDate,
    rules: &Rules,
) -> Vec<PieceView> {
    let found = lots.into_iter().filter_map(|lot| {
        let piece = piece(family, lot, zone, rules)?;
        Some((lot, piece))
    });
    let mut found: Vec<(LotId, Piece)> = found.collect();
    found.sort_by_key(|(lot, piece)| (piece.in_salt, *lot));
    let all: Vec<Piece> = found.iter().map(|(_, piece)| piece.clone()).collect();
    found
        .into_iter()
        .map(|(lot, piece)| told(lot, piece, &all, today, rules))
        .collect()
}

fn told(lot: LotId, piece: Piece, all: &[Piece], today: NaiveDate, rules: &Rules) -> PieceView {
    let last = piece.last(today);
    let released = piece.stage == Stage::Released;
    let due = match released {
        true => Vec::new(),
        false => cure_room::due(std::slice::from_ref(&piece), today, rules),
    };
    PieceView {
        lot,
        loss: last.map(|last| cure_room::loss(piece.green, last.grams)),
        expected: last
            .and_then(|last| piece.curve.as_ref().zip(piece.age(last.day)))
            .map(|(curve, age)| curve.loss_on(age)),
        alarm: cure_room::unsigned(&piece, today, rules).filter(|_| !released),
        likely: last.and_then(|last| cure_room::likely_tag(&piece, last, all, rules)),
        forecast: cure_room::forecast(&piece, today, rules),
        release: cure_room::release(&signed(&piece, today), today, rules),
        due: due
            .into_iter()
            .filter(|due| due.task != Task::Salt)
            .collect(),
        piece,
    }
}

/// As it would be if the one who looks signed today: what else is missing is what matters.
fn signed(piece: &Piece, today: NaiveDate) -> Piece {
    Piece {
        signed: Some(Signed {
            day: today,
            by: String::new(),
        }),
        ..piece.clone()
    }
}
