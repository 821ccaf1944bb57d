//! How the cure room is written.

use super::once;
use crate::Bad;
use crate::entry::{BoundEntry, Number, TextEntry, all_known, known};
use domain::cure_room::{
    CureRoomRules, Curve, Hung, ReleaseTarget, SaltTime, SaltingMethod, Span, Spread, Weighings,
};
use domain::measure::Percent;
use domain::rows::{Bound, Rows};
use schemars::JsonSchema;
use serde::Deserialize;

/// The cure room.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CureRoomEntry {
    /// Drying curves.
    curves: Vec<CurveEntry>,
    /// What each product is released at.
    targets: Vec<TargetEntry>,
    /// Ways of salting.
    methods: Vec<MethodEntry>,
    /// How often a hanging piece is weighed.
    weighings: WeighingsEntry,
    /// How far from its curve a piece may be, in points of loss.
    band_points: BoundEntry,
    /// How much heavier than green a piece can be, in percent.
    gain_percent: BoundEntry,
    /// How much heavier than last time a piece can be, in percent of green.
    regain_percent: BoundEntry,
    /// The water in lean meat, in percent of it.
    water_in_lean_percent: BoundEntry,
    /// The water in fat, in percent of it.
    water_in_fat_percent: BoundEntry,
    /// The most days in salt for a pound.
    days_per_pound: BoundEntry,
    /// The most days in salt for an inch of thickness.
    days_per_inch: BoundEntry,
    /// The most days in salt.
    days_in_salt: BoundEntry,
    /// How much wider a forecast is than its estimates, in percent of the time to go.
    spread_percent: SpreadEntry,
}

/// How much wider a forecast is, by the number of weighings.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SpreadEntry {
    /// With one weighing.
    one: BoundEntry,
    /// With two or three.
    few: BoundEntry,
    /// With four or more.
    many: BoundEntry,
}

/// A drying curve.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CurveEntry {
    /// Its key: `ham`.
    key: String,
    /// Its row.
    row: String,
    /// Its points: day from the first salt, loss in percent of green.
    points: Vec<PointEntry>,
}

/// A point of a curve.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PointEntry {
    /// Days from the first salt.
    day: u32,
    /// Loss in percent of green weight.
    loss: Number,
}

/// What a product is released at.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TargetEntry {
    /// Its key: `pancetta`.
    key: String,
    /// As a cook calls it.
    name: TextEntry,
    /// Loss in percent of green weight, at least.
    loss: Option<BoundEntry>,
    /// So many points under it are enough.
    tolerance: Option<Number>,
    /// Days from the first salt, at least.
    days: Option<BoundEntry>,
    /// Water activity, at most.
    water_activity: Option<BoundEntry>,
    /// Does somebody sign?
    #[serde(default)]
    signature: bool,
    /// The key of the curve that it dries along.
    curve: Option<String>,
}

/// A way of salting.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MethodEntry {
    /// Its key: `covered-in-salt`.
    key: String,
    /// As a cook calls it.
    name: TextEntry,
    /// How long it lies in salt.
    salt: SaltEntry,
    /// Days from the first salt on which more is rubbed in.
    #[serde(default)]
    overhaul_on: Vec<u32>,
    /// It is turned every so many days.
    turn_every: Option<u32>,
    /// It is rinsed or soaked when it comes out.
    #[serde(default)]
    rinse: bool,
    /// How long it equalises.
    equalise: Option<SpanEntry>,
    /// How long it hangs, where the product does not say.
    hang: Option<HungEntry>,
    /// The rows that it stands in.
    rows: Vec<String>,
}

/// How long a piece lies in salt.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum SaltEntry {
    /// So many days.
    Days(u32),
    /// So many months.
    Months(u32),
    /// So many days for each pound of green weight.
    DaysPerPound(Number),
    /// So many days for each inch at the thickest place.
    DaysPerInch(Number),
}

/// A length of time.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum SpanEntry {
    /// So many days.
    Days(u32),
    /// So many months of the calendar.
    Months(u32),
}

/// How long a piece hangs, from the day it is hung.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct HungEntry {
    /// At least.
    least: SpanEntry,
    /// At most.
    most: SpanEntry,
}

/// How often a hanging piece is weighed.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WeighingsEntry {
    /// Its row.
    row: String,
    /// At first every so many days,
    at_first_every: u32,
    /// for so many days from the day it came out of the salt,
    for_days: u32,
    /// and then every so many.
    later_every: u32,
}

impl CureRoomEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<CureRoomRules, Bad> {
        let curves: Result<Vec<(String, Curve)>, Bad> = self
            .curves
            .into_iter()
            .map(|curve| curve.curve(rows))
            .collect();
        let targets: Result<Vec<ReleaseTarget>, Bad> = self
            .targets
            .into_iter()
            .map(|target| target.target(rows))
            .collect();
        let methods: Result<Vec<SaltingMethod>, Bad> = self
            .methods
            .into_iter()
            .map(|method| method.method(rows))
            .collect();
        let bound =
            |entry: &BoundEntry| -> Result<Option<Bound>, Bad> { entry.bound(rows).map(Some) };
        let rules = CureRoomRules {
            curves: curves?,
            targets: targets?,
            methods: methods?,
            weighings: Some(Weighings {
                at_first: self.weighings.at_first_every,
                for_days: self.weighings.for_days,
                later: self.weighings.later_every,
                row: known(rows, &self.weighings.row)?,
            }),
            band: bound(&self.band_points)?,
            gain: bound(&self.gain_percent)?,
            regain: bound(&self.regain_percent)?,
            water_in_lean: bound(&self.water_in_lean_percent)?,
            water_in_fat: bound(&self.water_in_fat_percent)?,
            days_per_pound: bound(&self.days_per_pound)?,
            days_per_inch: bound(&self.days_per_inch)?,
            days_in_salt: bound(&self.days_in_salt)?,
            spread: Spread {
                one: bound(&self.spread_percent.one)?,
                few: bound(&self.spread_percent.few)?,
                many: bound(&self.spread_percent.many)?,
            },
        };
        once("curve", rules.curves.iter().map(|(key, _)| key))?;
        once("target", rules.targets.iter().map(|target| &target.key))?;
        once("method", rules.methods.iter().map(|method| &method.key))?;
        for target in &rules.targets {
            let curve = target.curve.as_deref();
            if let Some(curve) = curve.filter(|curve| rules.curve(curve).is_none()) {
                return Err(Bad::new(format!("{}: no curve {curve:?}", target.key)));
            }
        }
        Ok(rules)
    }
}

impl CurveEntry {
    fn curve(self, rows: &Rows) -> Result<(String, Curve), Bad> {
        let row = known(rows, &self.row)?;
        let points = self
            .points
            .iter()
            .map(|point| (point.day, point.loss.percent()));
        let curve = Curve::new(Some(row), points.collect())
            .map_err(|refusal| Bad::new(format!("{}: {}", self.key, refusal.detail)))?;
        Ok((self.key, curve))
    }
}

impl TargetEntry {
    fn target(self, rows: &Rows) -> Result<ReleaseTarget, Bad> {
        let bound = |entry: Option<BoundEntry>| entry.map(|entry| entry.bound(rows)).transpose();
        let target = ReleaseTarget {
            loss: bound(self.loss)?,
            tolerance: self
                .tolerance
                .map_or_else(Percent::default, Number::percent),
            days: bound(self.days)?,
            water_activity: bound(self.water_activity)?,
            signature: self.signature,
            curve: self.curve,
            name: self.name.into(),
            key: self.key,
        };
        let rule = target.rule().check();
        rule.map_err(|refusal| Bad::new(format!("{}: {}", target.key, refusal.detail)))?;
        Ok(target)
    }
}

impl SpanEntry {
    fn span(self) -> Span {
        match self {
            SpanEntry::Days(days) => Span::Days(days),
            SpanEntry::Months(months) => Span::Months(months),
        }
    }
}

impl MethodEntry {
    fn method(self, rows: &Rows) -> Result<SaltingMethod, Bad> {
        Ok(SaltingMethod {
            salt: match self.salt {
                SaltEntry::Days(days) => SaltTime::For(Span::Days(days)),
                SaltEntry::Months(months) => SaltTime::For(Span::Months(months)),
                SaltEntry::DaysPerPound(Number(days)) => SaltTime::DaysPerPound(days),
                SaltEntry::DaysPerInch(Number(days)) => SaltTime::DaysPerInch(days),
            },
            overhaul: self.overhaul_on,
            turn_every: self.turn_every,
            rinse: self.rinse,
            equalise: self.equalise.map(SpanEntry::span),
            hang: self.hang.map(|hang| Hung {
                least: hang.least.span(),
                most: hang.most.span(),
            }),
            rows: all_known(rows, &self.rows)?,
            key: self.key,
            name: self.name.into(),
        })
    }
}
