//! May a piece come down? Yes, or every number that is not met.

use super::alarm::counted;
use super::{Piece, Rules, loss, unsigned};
use crate::code::LotCode;
use crate::grams::Grams;
use crate::measure::Percent;
use crate::messages;
use crate::refusal::{Refusal, Result};
use crate::rows::{Finding, Gravity, RowId};
use crate::says::Says;
use chrono::{Days, NaiveDate};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;

messages! {
    /// What is said of a release.
    ReleaseSays in "release" {
        Unmet "unmet" { unmet: Vec<Says> },
        Alarm "alarm" { alarm: Says },
        NotReady "not-ready" { lot: LotCode, unmet: Vec<Says> },
    }
}

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
    /// large as the target, a water activity that is none.
    pub fn check(&self) -> Result<()> {
        let wrong = |field: &str, says: String| Err(Refusal::cannot_be(field, says));
        if self.loss.is_none()
            && self.days.is_none()
            && self.water_activity.is_none()
            && !self.signature
        {
            return wrong("release", "A release rule that asks for nothing releases everything. Give a loss, days, a water activity or a signature.".into());
        }
        if let Some(target) = self.loss {
            let number = target.number();
            if number > Decimal::ZERO && number < Decimal::ONE {
                return wrong(
                    "release.loss",
                    format!("{target} loss is next to nothing. For a quarter type 25."),
                );
            }
            if number <= Decimal::ZERO || number >= Decimal::ONE_HUNDRED {
                return wrong(
                    "release.loss",
                    format!("{target} loss cannot be. Give the percent of green weight, as 30."),
                );
            }
            if self.tolerance.number() < Decimal::ZERO || self.tolerance >= target {
                return wrong(
                    "release.tolerance",
                    format!(
                        "{} points under a target of {target} cannot be.",
                        self.tolerance.number()
                    ),
                );
            }
        }
        match self.water_activity {
            Some(limit) if limit <= Decimal::ZERO || limit >= Decimal::ONE => wrong(
                "release.water_activity",
                format!("A water activity lies between 0 and 1, as 0.90; {limit} does not."),
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

    /// Nothing, or a refusal with every number that is not met.
    ///
    /// # Errors
    /// It may not come down yet.
    pub fn or_refuse(&self) -> Result<()> {
        let says: Vec<Says> = self.unmet.iter().map(|unmet| unmet.says.clone()).collect();
        match says.is_empty() {
            true => Ok(()),
            false => Err(Refusal::cannot_be(
                "release",
                ReleaseSays::Unmet { unmet: says },
            )),
        }
    }
}

/// May a piece come down on a day? The house's own rule refuses, whatever its row is marked.
pub fn release(piece: &Piece, on: NaiveDate, rules: &Rules) -> Release {
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
        let from = piece.in_salt.checked_add_days(Days::new(needed.into()));
        let from = from.map_or_else(String::new, |from| format!(" It is old enough on {from}."));
        refuse(
            format!("{days} days so far, {needed} needed.{from}").into(),
            &rule.rows,
        );
    }
    if let (Some(target), Some(enough)) = (rule.loss, rule.enough()) {
        match (last, lost) {
            (Some(last), Some(lost)) if lost < enough => refuse(
                short_of(piece.green, last.grams, lost, target, rule.tolerance).into(),
                &rule.rows,
            ),
            (Some(_), Some(_)) => {}
            _ => refuse(
                format!("It was never weighed, {target} loss is needed. Weigh it.").into(),
                &rule.rows,
            ),
        }
    }
    if let Some(limit) = rule.water_activity {
        match piece.water_activity {
            None => refuse(
                format!(
                    "There is no reading of its water activity, {limit} or less is needed. Measure it."
                ).into(),
                &rule.rows,
            ),
            Some(reading) if reading <= Decimal::ZERO || reading > Decimal::ONE => refuse(
                format!("A water activity of {reading} cannot be. Measure it again.").into(),
                &rule.rows,
            ),
            Some(reading) if reading > limit => refuse(
                format!(
                    "Its water activity is {reading}, {limit} or less is needed. Let it hang and measure again."
                ).into(),
                &rule.rows,
            ),
            Some(_) => {}
        }
    }
    if rule.signature && piece.signed.as_ref().is_none_or(|signed| signed.day > on) {
        refuse(
            "Nobody has signed. Whoever answers for the cure room tests it and signs.".into(),
            &rule.rows,
        );
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

fn short_of(
    green: Grams,
    now: Grams,
    lost: Percent,
    target: Percent,
    tolerance: Percent,
) -> String {
    let enough = Decimal::ONE - target.fraction() + tolerance.fraction();
    let milligrams = Decimal::from(green.milligrams()) * enough;
    // Down to a whole gram where there are many: what the scale must show.
    let ready = (milligrams / Decimal::ONE_THOUSAND).floor();
    let tolerance = match tolerance.number().is_zero() {
        true => String::new(),
        false => format!(" less {}", tolerance.number()),
    };
    format!(
        "{} % lost, {} %{tolerance} needed: it weighs {now} of {green} green and is ready at {}.",
        lost.number().round_dp(2).normalize(),
        target.number(),
        Grams::whole(ready.to_i64().unwrap_or(0)),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cure_room::{Signed, Weighing};
    use proptest::prelude::*;

    fn day(nth: u64) -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 1, 1).unwrap() + Days::new(nth)
    }

    fn piece(grams: i64, rule: ReleaseRule) -> Piece {
        let mut piece = Piece::hung("a", Grams::whole(1000), day(0));
        piece.weighings.push(Weighing {
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
        let release = release(piece, day(20), &Rules::default());
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
            &["29.9 % lost, 30 % needed: it weighs 701 g of 1 000 g green and is ready at 700 g"],
        );
        check(&piece(710, rule(30, 1)), &[]);
        check(&piece(711, rule(30, 1)), &["30 % less 1 needed"]);
        check(&piece(0, rule(30, 0)), &["never weighed", "alarm"]); // a weight of nothing is no weighing
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
                "20 days so far, 21 needed",
                "29.9",
                "no reading",
                "Nobody has signed",
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
            &["29.9", "is 0.91, 0.90 or less", "Nobody has signed"],
        );
        one.water_activity = Some(Decimal::new(90, 2));
        one.signed = Some(Signed {
            day: day(20),
            by: "the cook".into(),
        });
        check(&one, &["29.9"]);
        one.weighings.clear();
        check(&one, &["never weighed"]);
    }

    #[test]
    fn a_rule_that_cannot_be_releases_nothing() {
        check(&piece(700, ReleaseRule::default()), &["asks for nothing"]);
        let quarter = ReleaseRule {
            loss: Some(Percent::new(Decimal::new(25, 2))),
            ..ReleaseRule::default()
        };
        check(&piece(700, quarter), &["For a quarter type 25"]);
        check(&piece(700, rule(30, 30)), &["30 points under"]);
        check(&piece(700, rule(-1, 0)), &["cannot be"]);
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
                release(&piece, day(on), &Rules::default()).is_allowed()
            };
            prop_assert!(!may(strict) || may(lax));
        }
    }
}
