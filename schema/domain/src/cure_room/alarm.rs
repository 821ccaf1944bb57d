//! Alarms: a piece that dries too fast or too slow, and a weighing that cannot be.

use super::says::AlarmSays;
use super::{CureRoomRules, Piece, PieceWeighing, loss};
use crate::rows::{Finding, Gravity, RowId};
use crate::says::{Arg, Says};
use chrono::NaiveDate;
use rust_decimal::Decimal;

/// What an alarm is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DryingAlarm {
    /// Ahead of its curve: a hard case may close it off.
    TooFast,
    /// Behind its curve: a humid room, or somebody else's tag.
    TooSlow,
    /// It has a weight that is not possible.
    Impossible,
}

/// An alarm about one weighing. It blocks the release until somebody signs that it was looked at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alarm {
    /// What it is about.
    pub drying: DryingAlarm,
    /// The weighing.
    pub weighing: PieceWeighing,
    /// Points of loss ahead of the curve, below nothing where behind.
    pub ahead: Option<Decimal>,
    /// For a tired cook.
    pub says: Says,
    /// The rows behind it.
    pub rows: Vec<RowId>,
}

impl Alarm {
    /// As a warning.
    pub fn finding(&self) -> Finding {
        Finding::new(Gravity::Warn, self.says.clone(), self.rows.clone())
    }
}

/// The alarms of a piece's weighings up to a day, the oldest first.
pub fn alarms(piece: &Piece, until: NaiveDate, rules: &CureRoomRules) -> Vec<Alarm> {
    let weighed = piece.weighed(until);
    let before = std::iter::once(None).chain(weighed.iter().map(Some));
    weighed
        .iter()
        .zip(before)
        .filter_map(|(weighing, before)| alarm(piece, weighing, before, rules))
        .collect()
}

/// The last alarm that nobody has signed for on its day or later.
pub fn unsigned(piece: &Piece, until: NaiveDate, rules: &CureRoomRules) -> Option<Alarm> {
    let signed = piece.alarm_signed.as_ref().map(|signed| signed.day);
    alarms(piece, until, rules)
        .pop()
        .filter(|alarm| signed.is_none_or(|signed| signed < alarm.weighing.day))
}

fn alarm(
    piece: &Piece,
    weighing: &PieceWeighing,
    before: Option<&PieceWeighing>,
    rules: &CureRoomRules,
) -> Option<Alarm> {
    if let Some((says, rows)) = impossible(piece, weighing, before, rules) {
        return Some(Alarm {
            drying: DryingAlarm::Impossible,
            weighing: *weighing,
            ahead: None,
            says,
            rows,
        });
    }
    let (curve, band) = (piece.curve.as_ref()?, rules.band.as_ref()?);
    let lost = loss(piece.green, weighing.grams);
    let expected = curve.loss_on(piece.age(weighing.day)?);
    let ahead = lost.number() - expected.number();
    let (tag, day) = (piece.tag.clone(), weighing.day);
    let [lost, expected] = [lost, expected].map(|loss| Arg::Tenths(loss.number().round_dp(1)));
    let points = band.value;
    let (drying, says) = match ahead {
        _ if band.allows(ahead.abs()) => return None,
        ahead if ahead > Decimal::ZERO => (
            DryingAlarm::TooFast,
            AlarmSays::TooFast {
                tag,
                lost,
                day,
                expected,
                points,
            },
        ),
        _ => (
            DryingAlarm::TooSlow,
            AlarmSays::TooSlow {
                tag,
                lost,
                day,
                expected,
                points,
            },
        ),
    };
    Some(Alarm {
        drying,
        weighing: *weighing,
        ahead: Some(ahead),
        says: says.into(),
        rows: curve.row.iter().chain([&band.row]).cloned().collect(),
    })
}

fn impossible(
    piece: &Piece,
    weighing: &PieceWeighing,
    before: Option<&PieceWeighing>,
    rules: &CureRoomRules,
) -> Option<(Says, Vec<RowId>)> {
    cannot_be(piece, weighing, rules).or_else(|| gained(piece, weighing, before?, rules))
}

/// The weighings up to a day that can be, the oldest first. The others never count for a release
/// or a forecast, signed or not.
pub(super) fn counted(
    piece: &Piece,
    until: NaiveDate,
    rules: &CureRoomRules,
) -> Vec<PieceWeighing> {
    let mut weighed = piece.weighed(until);
    weighed.retain(|weighing| cannot_be(piece, weighing, rules).is_none());
    weighed
}

fn cannot_be(
    piece: &Piece,
    weighing: &PieceWeighing,
    rules: &CureRoomRules,
) -> Option<(Says, Vec<RowId>)> {
    let (tag, grams, green) = (piece.tag.clone(), weighing.grams, piece.green);
    if grams.is_none_left() || green.is_none_left() {
        let says = AlarmSays::CannotWeigh { tag, grams, green };
        return Some((says.into(), vec![]));
    }
    if piece.age(weighing.day).is_none() {
        let says = AlarmSays::BeforeSalt {
            tag,
            day: weighing.day,
            salted: piece.in_salt,
        };
        return Some((says.into(), vec![]));
    }
    let lost = loss(green, grams).number();
    if let Some(gain) = rules.gain.as_ref().filter(|gain| !gain.allows(-lost)) {
        let says = AlarmSays::AboveGreen { tag, grams, green };
        return Some((says.into(), vec![gain.row.clone()]));
    }
    let water = rules.water_in_lean.as_ref()?;
    let says = AlarmSays::PastWater {
        tag,
        lost: Arg::Tenths(lost.round_dp(1)),
    };
    (lost > water.value).then(|| (says.into(), vec![water.row.clone()]))
}

fn gained(
    piece: &Piece,
    weighing: &PieceWeighing,
    before: &PieceWeighing,
    rules: &CureRoomRules,
) -> Option<(Says, Vec<RowId>)> {
    let regain = rules.regain.as_ref()?;
    let more = -loss(piece.green, weighing.grams - before.grams + piece.green).number();
    let says = AlarmSays::Gained {
        tag: piece.tag.clone(),
        grams: weighing.grams,
        before: before.grams,
        day: before.day,
    };
    (!regain.allows(more)).then(|| (says.into(), vec![regain.row.clone()]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure_room::{Curve, PieceStage, Signed, likely_tag};
    use crate::grams::Grams;
    use crate::measure::Percent;
    use crate::rows::Bound;

    fn day(nth: u64) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 1).unwrap() + chrono::Days::new(nth)
    }

    fn rules() -> CureRoomRules {
        CureRoomRules {
            band: Some(Bound::at_most("trade-2.1-band", 4)),
            gain: Some(Bound::at_most("trade-2.1-gain", 4)),
            regain: Some(Bound::at_most("trade-2.1-regain", 1)),
            water_in_lean: Some(Bound::at_most("trade-2.2-lean", 75)),
            ..CureRoomRules::default()
        }
    }

    fn piece(tag: &str, green: i64, weighings: &[(u64, i64)]) -> Piece {
        let mut piece = Piece::hung(tag, Grams::whole(green), day(0));
        let points = vec![(0, Percent::new(0)), (100, Percent::new(20))];
        piece.curve = Some(Curve::new(None, points).unwrap());
        piece.weighings = weighings
            .iter()
            .map(|(nth, grams)| PieceWeighing {
                day: day(*nth),
                grams: Grams::whole(*grams),
            })
            .collect();
        piece
    }

    fn check(weighings: &[(u64, i64)], expected: Option<DryingAlarm>) {
        let alarm = unsigned(&piece("a", 1000, weighings), day(100), &rules());
        assert_eq!(alarm.map(|alarm| alarm.drying), expected, "{weighings:?}");
    }

    #[test]
    fn a_weighing_off_the_curve_is_an_alarm() {
        check(&[], None);
        check(&[(50, 900)], None);
        check(&[(50, 860)], None); // four points ahead is within
        check(&[(50, 859)], Some(DryingAlarm::TooFast));
        check(&[(50, 940)], None);
        check(&[(50, 941)], Some(DryingAlarm::TooSlow));
        check(&[(1, 1040)], Some(DryingAlarm::TooSlow)); // 4.2 points behind
        check(&[(0, 1040)], None);
        check(&[(0, 1041)], Some(DryingAlarm::Impossible));
        check(&[(50, 249)], Some(DryingAlarm::Impossible));
        check(&[(50, 0)], Some(DryingAlarm::Impossible));
        check(&[(50, 900), (51, 910)], None);
        check(&[(50, 900), (51, 911)], Some(DryingAlarm::Impossible));
        check(&[(50, 850), (70, 860)], Some(DryingAlarm::TooFast)); // the first still stands
    }

    #[test]
    fn a_signature_answers_what_came_before_it() {
        let mut piece = piece("a", 1000, &[(50, 850)]);
        let mut check = |signed: u64, stands: bool| {
            piece.alarm_signed = Some(Signed {
                day: day(signed),
                by: "the cook".into(),
            });
            assert_eq!(unsigned(&piece, day(100), &rules()).is_some(), stands);
        };
        check(49, true);
        check(50, false);
        check(60, false);
    }

    #[test]
    fn a_weight_that_does_not_fit_may_fit_another() {
        let read = PieceWeighing {
            day: day(50),
            grams: Grams::whole(950),
        };
        let mut others = vec![
            piece("a", 1000, &[]),
            piece("b", 1060, &[]),
            piece("c", 1500, &[]),
        ];
        let likely = |others: &[Piece]| likely_tag(&others[0], read, others, &rules());
        let found = likely(&others).unwrap();
        assert_eq!(
            (found.tag.as_str(), found.expected),
            ("b", Grams::whole(954))
        );
        others[1].product = "coppa".into();
        assert_eq!(likely(&others), None);
        others[1].product = String::new();
        others[1].stage = PieceStage::InSalt;
        assert_eq!(likely(&others), None);
    }
}
