//! The cure room: every piece with its loss, its alarms, when it may be ready, what is due.

use super::{Family, piece};
use crate::cure_room::{
    self, Alarm, CureRoomRules, Curve, Forecast, ForecastSays, Likely, Piece, PieceStage,
    PieceWeighing, Release, RoomTask, Signed, Task,
};
use crate::lot::LotId;
use crate::measure::Percent;
use crate::says::Says;
use chrono::NaiveDate;
use chrono_tz::Tz;

/// A piece as it is shown on a day.
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
    /// When it may be ready; `None` once it is released.
    pub forecast: Forecast,
    /// Whether it may be released, were it signed for on that day.
    pub release: Release,
    /// What is to be done.
    pub due: Vec<RoomTask>,
    /// The day for which it is shown.
    pub today: NaiveDate,
}

impl PieceView {
    /// Is it released already?
    pub fn is_released(&self) -> bool {
        self.piece.stage == PieceStage::Released
    }

    /// Days since it went in salt.
    pub fn days(&self) -> u32 {
        self.piece.age(self.today).unwrap_or(0)
    }

    /// Its weighings so far, the oldest first, each with what it had lost by then.
    pub fn weighed(&self) -> Vec<(PieceWeighing, Percent)> {
        let weighed = self.piece.weighed(self.today).into_iter();
        weighed
            .map(|of| (of, cure_room::loss(self.piece.green, of.grams)))
            .collect()
    }

    /// The points of its curve: days from the first salt, and what is lost by then.
    pub fn curve(&self) -> &[(u32, Percent)] {
        self.piece.curve.as_ref().map_or(&[], Curve::points)
    }

    /// When it may be ready, in words.
    pub fn forecast_says(&self) -> Says {
        match self.is_released() {
            true => ForecastSays::Released.into(),
            false => self.forecast.says(),
        }
    }

    /// Not before this day; nothing of what is released.
    pub fn earliest(&self) -> Option<NaiveDate> {
        self.forecast.earliest().filter(|_| !self.is_released())
    }

    /// May somebody sign its release on that day?
    pub fn may_be_released(&self) -> bool {
        !self.is_released() && self.release.is_allowed()
    }

    /// Every number of its rule that is not met; nothing of what is released.
    pub fn missing(&self) -> impl Iterator<Item = &Says> {
        let unmet = self.release.unmet.iter().map(|unmet| &unmet.says);
        unmet.filter(|_| !self.is_released())
    }
}

/// Some lots as pieces of the cure room, the longest in salt first; those that are none are left out.
/// The family has to be loaded with the ancestors of these lots.
pub fn room(
    family: &Family,
    lots: impl IntoIterator<Item = LotId>,
    zone: Tz,
    today: NaiveDate,
    rules: &CureRoomRules,
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
        .map(|(lot, piece)| piece_view(lot, piece, &all, today, rules))
        .collect()
}

fn piece_view(
    lot: LotId,
    piece: Piece,
    all: &[Piece],
    today: NaiveDate,
    rules: &CureRoomRules,
) -> PieceView {
    let last = piece.last(today);
    let released = piece.stage == PieceStage::Released;
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
        today,
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::grams::Grams;

    #[test]
    fn of_what_is_released_nothing_is_missing() {
        let day = |text: &str| -> NaiveDate { text.parse().unwrap() };
        let today = day("2026-06-26");
        let mut piece = Piece::hung("H-04", Grams::whole(1_000), day("2026-06-16"));
        piece.rule.loss = Some(Percent::new(30));
        piece.weighings.push(PieceWeighing {
            day: day("2026-06-20"),
            grams: Grams::whole(900),
        });
        let mut view = PieceView {
            lot: LotId(1),
            loss: None,
            expected: None,
            alarm: None,
            likely: None,
            forecast: cure_room::forecast(&piece, today, &CureRoomRules::default()),
            release: cure_room::release(&piece, today, &CureRoomRules::default()),
            due: Vec::new(),
            today,
            piece,
        };
        assert_eq!(view.days(), 10);
        let weighed = view.weighed();
        assert_eq!(weighed[0].1, Percent::new(10));
        assert!(view.missing().next().is_some());
        assert!(!view.may_be_released());
        view.piece.stage = PieceStage::Released;
        assert!(view.missing().next().is_none());
        assert!(!view.may_be_released());
        assert_eq!(view.earliest(), None);
    }
}
