//! A piece of the cure room, as it is answered.

use super::because::finding_read;
use crate::read::cure_room::Room;
use crate::wire::cure_room::{
    CureRoomRead, CurvePoint, LyingRead, PieceRead, PlannedRead, WeighingRead,
};
use crate::wire::cures::number;
use crate::wire::{Day, Number, Weight};
use domain::cure_room::{PieceStage, Planned, RoomTask};
use domain::family::{Family, LyingView, PieceView};
use domain::measure::Percent;
use domain::rows::Rows;
use words::Speech;

/// Every piece on hand, for a reader.
pub fn room_read(room: &Room<'_>, rows: &Rows, speech: &Speech) -> CureRoomRead {
    let pieces = room.pieces.iter();
    CureRoomRead {
        pieces: pieces
            .filter_map(|piece| piece_read(piece, &room.reading.family, rows, speech))
            .collect(),
        lying: room
            .lying
            .iter()
            .filter_map(|view| lying_read(view, &room.reading.family, speech))
            .collect(),
    }
}

/// What lies in its cure, for a reader; nothing where its lot is not in the family.
fn lying_read(view: &LyingView, family: &Family, speech: &Speech) -> Option<LyingRead> {
    let (of, piece) = (family.get(view.lot)?, &view.piece);
    Some(LyingRead {
        lot: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        tag: piece.tag.clone(),
        name: of.lot.product.name(speech.language.tag()).to_owned(),
        in_salt: Day(piece.in_salt),
        days: view.days(),
        is_out: view.is_out(),
        ready: view.ready().map(Day),
        due: due(&view.due, speech),
        plan: plan(&piece.plan, speech),
    })
}

fn due(due: &[RoomTask], speech: &Speech) -> Vec<String> {
    due.iter()
        .map(|due| speech.say(&due.without_tag()))
        .collect()
}

fn plan(plan: &[Planned], speech: &Speech) -> Vec<PlannedRead> {
    plan.iter()
        .map(|planned| PlannedRead {
            day: Day(planned.day),
            task: speech.say(&planned.task.says()),
        })
        .collect()
}

/// A piece, for a reader; nothing where its lot is not in the family.
fn piece_read(
    view: &PieceView,
    family: &Family,
    rows: &Rows,
    speech: &Speech,
) -> Option<PieceRead> {
    let (of, piece) = (family.get(view.lot)?, &view.piece);
    Some(PieceRead {
        lot: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        tag: piece.tag.clone(),
        name: of.lot.product.name(speech.language.tag()).to_owned(),
        stage: stage(piece.stage).to_owned(),
        green_grams: Weight(piece.green),
        in_salt: Day(piece.in_salt),
        days: view.days(),
        loss_percent: view.loss.map(percent),
        expected_loss_percent: view.expected.map(percent),
        weighings: view
            .weighed()
            .into_iter()
            .map(|(weighing, lost)| WeighingRead {
                day: Day(weighing.day),
                grams: Weight(weighing.grams),
                loss_percent: percent(lost),
            })
            .collect(),
        curve: view
            .curve()
            .iter()
            .map(|(day, loss)| CurvePoint {
                day: *day,
                loss_percent: percent(*loss),
            })
            .collect(),
        alarms: view
            .alarm
            .iter()
            .map(|alarm| finding_read(&alarm.finding(), rows, speech))
            .collect(),
        likely_tag: view.likely.as_ref().map(|likely| speech.say(&likely.says)),
        forecast: speech.say(&view.forecast_says()),
        earliest: view.earliest().map(Day),
        may_be_released: view.may_be_released(),
        missing: view.missing().map(|says| speech.say(says)).collect(),
        due: due(&view.due, speech),
        plan: plan(&piece.plan, speech),
    })
}

fn percent(percent: Percent) -> Number {
    number(percent.to_hundredths())
}

fn stage(stage: PieceStage) -> &'static str {
    match stage {
        PieceStage::InSalt => "in-salt",
        PieceStage::Equalising => "equalising",
        PieceStage::Smoking => "smoking",
        PieceStage::Hanging => "hanging",
        PieceStage::Released => "released",
    }
}
