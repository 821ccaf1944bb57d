//! A piece of the cure room, as it is answered.

use super::because::finding_read;
use crate::wire::cure_room::{CurvePoint, PieceRead, PlannedRead, WeighingRead};
use crate::wire::cures::number;
use crate::wire::{Day, Number, Weight};
use chrono::NaiveDate;
use domain::cure_room::{self, Stage};
use domain::family::{Family, PieceView};
use domain::measure::Percent;
use domain::rows::Rows;
use words::Speech;

/// A piece, for a reader; nothing where its lot is not in the family.
pub fn piece_read(
    view: &PieceView,
    family: &Family,
    rows: &Rows,
    today: NaiveDate,
    speech: &Speech,
) -> Option<PieceRead> {
    let (of, piece) = (family.get(view.lot)?, &view.piece);
    let released = view.is_released();
    let curve = piece.curve.as_ref();
    let points = curve
        .map(|curve| curve.points().to_vec())
        .unwrap_or_default();
    let unmet = view.release.unmet.iter();
    Some(PieceRead {
        lot: of.lot.code.to_string(),
        shown: of.lot.code.shown(),
        tag: piece.tag.clone(),
        name: of.lot.product.name(speech.language.tag()).to_owned(),
        stage: stage(piece.stage).to_owned(),
        green_grams: Weight(piece.green),
        in_salt: Day(piece.in_salt),
        days: piece.age(today).unwrap_or(0),
        loss_percent: view.loss.map(percent),
        expected_loss_percent: view.expected.map(percent),
        weighings: piece
            .weighed(today)
            .into_iter()
            .map(|weighing| WeighingRead {
                day: Day(weighing.day),
                grams: Weight(weighing.grams),
                loss_percent: percent(cure_room::loss(piece.green, weighing.grams)),
            })
            .collect(),
        curve: points
            .into_iter()
            .map(|(day, loss)| CurvePoint {
                day,
                loss_percent: percent(loss),
            })
            .collect(),
        alarms: view
            .alarm
            .iter()
            .map(|alarm| finding_read(&alarm.finding(), rows, speech))
            .collect(),
        likely_tag: view.likely.as_ref().map(|likely| speech.say(&likely.says)),
        forecast: match released {
            true => speech.say(&cure_room::ForecastSays::Released.into()),
            false => speech.say(&view.forecast.says()),
        },
        earliest: view.forecast.earliest().filter(|_| !released).map(Day),
        may_be_released: !released && view.release.is_allowed(),
        missing: match released {
            true => Vec::new(),
            false => unmet.map(|unmet| speech.say(&unmet.says)).collect(),
        },
        due: view
            .due
            .iter()
            .map(|due| speech.say(&due.without_tag()))
            .collect(),
        plan: piece
            .plan
            .iter()
            .map(|planned| PlannedRead {
                day: Day(planned.day),
                task: speech.say(&planned.task.says()),
            })
            .collect(),
    })
}

fn percent(percent: Percent) -> Number {
    number(percent.number().round_dp(2))
}

fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::InSalt => "in-salt",
        Stage::Equalising => "equalising",
        Stage::Smoking => "smoking",
        Stage::Hanging => "hanging",
        Stage::Released => "released",
    }
}
