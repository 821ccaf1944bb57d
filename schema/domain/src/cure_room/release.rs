//! May a piece come down? Yes, or every number that is not met.

use super::alarm::counted;
use super::says::ReleaseSays;
use super::{CureRoomRules, Piece, loss, unsigned};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, RowId};
use crate::says::Says;
use chrono::{Days, NaiveDate};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

/// What a product is released by. What is not given is not asked for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ReleaseRule {
    /// At least so much lost, of green weight.
    pub loss: Option<Percent>,
    /// So far under it may a piece be, in points.
    pub tolerance: Percent,
    /// At least so many days from the first salt.
    pub days: Option<u32>,
    /// At most this water activity.
    pub water_activity: Option<Decimal>,
    /// Does somebody sign?
    pub signature: bool,
    /// Where it comes from.
    pub rows: Vec<RowId>,
}

impl ReleaseRule {
    /// The loss that is enough: the target less the tolerance.
    pub fn enough(&self) -> Option<Percent> {
        self.loss
            .map(|loss| Percent::new(loss.number() - self.tolerance.number()))
    }

    /// Is it a rule at all?
    ///
    /// # Errors
    /// It asks for nothing, or for what cannot be: a fraction typed for a percent, a tolerance as
    /// large as the target, a water activity that cannot be.
    pub fn check(&self) -> Result<()> {
        let wrong = |field: &str, says: ReleaseSays| Err(Refusal::cannot_be(field, says));
        if self.loss.is_none()
            && self.days.is_none()
            && self.water_activity.is_none()
            && !self.signature
        {
            return wrong("release", ReleaseSays::AsksNothing);
        }
        if let Some(target) = self.loss {
            let number = target.number();
            if number > Decimal::ZERO && number < Decimal::ONE {
                return wrong("release.loss", ReleaseSays::LossFraction { loss: target });
            }
            if number <= Decimal::ZERO || number >= Decimal::ONE_HUNDRED {
                return wrong("release.loss", ReleaseSays::LossCannotBe { loss: target });
            }
            if self.tolerance.number() < Decimal::ZERO || self.tolerance >= target {
                let points = self.tolerance;
                return wrong(
                    "release.tolerance",
                    ReleaseSays::ToleranceCannotBe { points, target },
                );
            }
        }
        match self.water_activity {
            Some(limit) if limit <= Decimal::ZERO || limit >= Decimal::ONE => wrong(
                "release.water_activity",
                ReleaseSays::WaterActivityCannotBe { limit },
            ),
            _ => Ok(()),
        }
    }
}

/// Whether a piece may come down.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Release {
    /// Days so far.
    pub days: u32,
    /// Loss at the last weighing; none where it was never weighed.
    pub loss: Option<Percent>,
    /// Every number that is not met. None: it may come down.
    pub unmet: Vec<Finding>,
}

impl Release {
    /// May it come down?
    pub fn is_allowed(&self) -> bool {
        self.unmet.is_empty()
    }
}

/// May a piece come down on a day? The house's own rule refuses, whatever its row is marked.
pub fn release(piece: &Piece, on: NaiveDate, rules: &CureRoomRules) -> Release {
    let rule = &piece.rule;
    let days = piece.age(on).unwrap_or(0);
    let last = counted(piece, on, rules).pop();
    let lost = last.map(|last| loss(piece.green, last.grams));
    let mut unmet = Vec::new();
    let mut refuse = |says: Says, rows: &[RowId]| {
        unmet.push(Finding::new(Gravity::Refuse, says, rows.to_vec()));
    };
    if let Err(refusal) = rule.check() {
        refuse(refusal.detail, &rule.rows);
        return Release {
            days,
            loss: lost,
            unmet,
        };
    }
    if let Some(needed) = rule.days.filter(|needed| days < *needed) {
        let says = match piece.in_salt.checked_add_days(Days::new(needed.into())) {
            Some(from) => ReleaseSays::TooYoungUntil { days, needed, from },
            None => ReleaseSays::TooYoung { days, needed },
        };
        refuse(says.into(), &rule.rows);
    }
    if let (Some(target), Some(enough)) = (rule.loss, rule.enough()) {
        match (last, lost) {
            (Some(last), Some(lost)) if lost < enough => refuse(
                too_heavy(piece.green, last.grams, lost, target, rule.tolerance).into(),
                &rule.rows,
            ),
            (Some(_), Some(_)) => {}
            _ => refuse(ReleaseSays::NeverWeighed { target }.into(), &rule.rows),
        }
    }
    if let Some(limit) = rule.water_activity {
        match piece.water_activity {
            None => refuse(ReleaseSays::NotRead { limit }.into(), &rule.rows),
            Some(reading) if reading <= Decimal::ZERO || reading > Decimal::ONE => {
                refuse(ReleaseSays::MisreadWater { reading }.into(), &rule.rows)
            }
            Some(reading) if reading > limit => {
                refuse(ReleaseSays::TooWet { reading, limit }.into(), &rule.rows)
            }
            Some(_) => {}
        }
    }
    if rule.signature && piece.signed.as_ref().is_none_or(|signed| signed.day > on) {
        refuse(ReleaseSays::NotSigned.into(), &rule.rows);
    }
    if let Some(alarm) = unsigned(piece, on, rules) {
        refuse(ReleaseSays::Alarm { alarm: alarm.says }.into(), &alarm.rows);
    }
    Release {
        days,
        loss: lost,
        unmet,
    }
}

fn too_heavy(
    green: Grams,
    now: Grams,
    lost: Percent,
    target: Percent,
    less: Percent,
) -> ReleaseSays {
    let enough = Decimal::ONE - target.fraction() + less.fraction();
    let milligrams = Decimal::from(green.milligrams()) * enough;
    // Down to a whole gram where there are many: what the scale must show.
    let ready = (milligrams / Decimal::ONE_THOUSAND).floor();
    let ready = Grams::whole(ready.to_i64().unwrap_or(0));
    match less.number().is_zero() {
        true => ReleaseSays::TooHeavy {
            lost,
            target,
            now,
            green,
            ready,
        },
        false => ReleaseSays::TooHeavyStill {
            lost,
            target,
            less,
            now,
            green,
            ready,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure_room::{PieceWeighing, Signed};
    use proptest::prelude::*;

    fn day(nth: u64) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 1).unwrap() + Days::new(nth)
    }

    fn piece(grams: i64, rule: ReleaseRule) -> Piece {
        let mut piece = Piece::hung("a", Grams::whole(1000), day(0));
        piece.weighings.push(PieceWeighing {
            day: day(10),
            grams: Grams::whole(grams),
        });
        piece.rule = rule;
        piece
    }

    fn rule(loss: i64, tolerance: i64) -> ReleaseRule {
        ReleaseRule {
            loss: Some(Percent::new(loss)),
            tolerance: Percent::new(tolerance),
            ..ReleaseRule::default()
        }
    }

    fn check(piece: &Piece, expected: &[&str]) {
        let release = release(piece, day(20), &CureRoomRules::default());
        let unmet: Vec<String> = release
            .unmet
            .iter()
            .map(|unmet| unmet.says.to_string())
            .collect();
        assert_eq!(unmet.len(), expected.len(), "{unmet:?}");
        for (unmet, begins) in unmet.iter().zip(expected) {
            assert!(unmet.contains(begins), "{unmet:?} lacks {begins:?}");
        }
    }

    #[test]
    fn each_number_that_is_not_met_is_said() {
        check(&piece(700, rule(30, 0)), &[]);
        check(
            &piece(701, rule(30, 0)),
            &[
                "release-too-heavy lost=29.9 target=30 now=701000 mg green=1000000 mg ready=700000 mg",
            ],
        );
        check(&piece(710, rule(30, 1)), &[]);
        check(
            &piece(711, rule(30, 1)),
            &["release-too-heavy-still lost=28.9 target=30 less=1"],
        );
        check(
            &piece(0, rule(30, 0)),
            &["release-never-weighed", "release-alarm"],
        ); // a weight of nothing is no weighing
        let all = ReleaseRule {
            days: Some(21),
            water_activity: Some(Decimal::new(90, 2)),
            signature: true,
            ..rule(30, 0)
        };
        let mut one = piece(701, all);
        check(
            &one,
            &[
                "release-too-young-until days=20 needed=21 from=2026-01-22",
                "lost=29.9",
                "release-not-read limit=0.9",
                "release-not-signed",
            ],
        );
        one.rule.days = Some(20);
        one.water_activity = Some(Decimal::new(91, 2));
        one.signed = Some(Signed {
            day: day(21),
            by: "the cook".into(),
        });
        check(
            &one,
            &[
                "lost=29.9",
                "release-too-wet reading=0.91 limit=0.9",
                "release-not-signed",
            ],
        );
        one.water_activity = Some(Decimal::new(90, 2));
        one.signed = Some(Signed {
            day: day(20),
            by: "the cook".into(),
        });
        check(&one, &["lost=29.9"]);
        one.weighings.clear();
        check(&one, &["release-never-weighed"]);
    }

    #[test]
    fn a_rule_that_cannot_be_releases_nothing() {
        check(
            &piece(700, ReleaseRule::default()),
            &["release-asks-nothing"],
        );
        let quarter = ReleaseRule {
            loss: Some(Percent::new(Decimal::new(25, 2))),
            ..ReleaseRule::default()
        };
        check(&piece(700, quarter), &["release-loss-fraction loss=0.25"]);
        check(
            &piece(700, rule(30, 30)),
            &["release-tolerance-cannot-be points=30"],
        );
        check(
            &piece(700, rule(-1, 0)),
            &["release-loss-cannot-be loss=-1"],
        );
    }

    proptest! {
        #[test]
        fn a_stricter_rule_never_releases_earlier(
            grams in 1i64..1050, target in 2i64..60, more in 0i64..30, tolerance in 0i64..2,
            less in 0i64..2, days in 0u32..40, later in 0u32..40, on in 0u64..60,
            reading in 1i64..100, limit in 50i64..99, lower in 0i64..40, signature: bool,
        ) {
            let lax = ReleaseRule {
                loss: Some(Percent::new(target)), tolerance: Percent::new(tolerance), days: Some(days),
                water_activity: Some(Decimal::new(limit, 2)), signature: false, rows: vec![],
            };
            let strict = ReleaseRule {
                loss: Some(Percent::new(target + more)), tolerance: Percent::new((tolerance - less).max(0)),
                days: Some(days + later), water_activity: Some(Decimal::new(limit - lower, 2)), signature,
                rows: vec![],
            };
            let may = |rule: ReleaseRule| {
                let mut piece = piece(grams, rule);
                piece.water_activity = Some(Decimal::new(reading, 2));
                release(&piece, day(on), &CureRoomRules::default()).is_allowed()
            };
            prop_assert!(!may(strict) || may(lax));
        }
    }
}
