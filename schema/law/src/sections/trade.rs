//! How `trade.json` is written: what the trade expects of animals, pots and the cure room.

use crate::Bad;
use crate::entry::{BoundEntry, Number, all_known, known};
use crate::file::Subject;
use domain::cure_room::{Curve, Hung, Method, SaltTime, Span, Spread, Target, Weighings};
use domain::law::{Bound, Rows};
use domain::measure::Percent;
use domain::words::Species;
use domain::yields::{Band, Measure, PieceRule, StepRule, Style};
use domain::{cure_room, trade, yields};
use schemars::JsonSchema;
use serde::Deserialize;

/// What the trade expects. None of it is law.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct TradeEntry {
    /// What comes off an animal, and what is left after a cook.
    yields: YieldsEntry,
    /// Curves, targets and ways of salting.
    cure_room: CureRoomEntry,
}

/// Yields.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct YieldsEntry {
    /// How far the parts of a table may sum beside its printed total, in percent of the total.
    sum_within_percent: BoundEntry,
    /// How far a column of percents may sum beside a hundred, in points.
    percents_within_points: BoundEntry,
    /// How far a printed percent may lie beside the worked out one, in points.
    percent_within_points: BoundEntry,
    /// Styles of cutting.
    styles: Vec<StyleEntry>,
    /// Cooking, smoking, rendering, stock.
    steps: Vec<StepEntry>,
}

/// A style of cutting one kind of animal.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct StyleEntry {
    /// Its key: `pig-side`.
    key: String,
    /// As a cook calls it, with how the animal hangs.
    name: String,
    /// The animal, as everywhere in the record: `pig`.
    species: String,
    /// The row of the percents.
    row: String,
    /// The row of the bands, where pieces have any.
    band_row: Option<String>,
    /// Its pieces.
    pieces: Vec<PieceEntry>,
    /// How much may be left unweighed, in percent of the hanging weight.
    loss: Option<BandEntry>,
}

/// A piece of a style.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PieceEntry {
    /// Its key: `ham`.
    key: String,
    /// As a cook calls it.
    name: String,
    /// Its part of the hanging weight, in percent.
    percent: Number,
    /// What is usual, from and to, in percent of the hanging weight.
    usual: Option<[Number; 2]>,
}

/// What is usual.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BandEntry {
    /// The row that it stands in.
    row: String,
    /// The low end, within it.
    low: Number,
    /// The high end, within it.
    high: Number,
}

/// The yield of a process.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct StepEntry {
    /// Its key: `pulled-pork-bone-in`.
    key: String,
    /// As a cook calls it.
    name: String,
    /// What it is counted from: `raw shoulder with its bone`.
    of: String,
    /// How it is counted.
    measure: MeasureEntry,
    /// The published number.
    published: Option<Number>,
    /// The row of the published number, or of the band where nothing is published.
    row: String,
    /// What is usual.
    usual: Option<BandEntry>,
}

/// How a yield is counted.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum MeasureEntry {
    /// In percent.
    Percent,
    /// In litres for each kilogram.
    LitresPerKilogram,
}

/// The cure room.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CureRoomEntry {
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
    name: String,
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
    name: String,
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

impl Subject for TradeEntry {
    type Rules = trade::Rules;

    fn rules(self, rows: &Rows) -> Result<trade::Rules, Bad> {
        Ok(trade::Rules {
            yields: self.yields.rules(rows)?,
            cure_room: self.cure_room.rules(rows)?,
        })
    }
}

impl YieldsEntry {
    fn rules(self, rows: &Rows) -> Result<yields::Rules, Bad> {
        let styles: Result<Vec<Style>, Bad> = self
            .styles
            .into_iter()
            .map(|style| style.style(rows))
            .collect();
        let steps: Result<Vec<StepRule>, Bad> =
            self.steps.into_iter().map(|step| step.step(rows)).collect();
        let rules = yields::Rules {
            styles: styles?,
            steps: steps?,
            sum_within: Some(self.sum_within_percent.bound(rows)?),
            percents_within: Some(self.percents_within_points.bound(rows)?),
            percent_within: Some(self.percent_within_points.bound(rows)?),
        };
        once("style", rules.styles.iter().map(|style| &style.key))?;
        once("step", rules.steps.iter().map(|step| &step.key))?;
        for style in &rules.styles {
            once(&style.key, style.pieces.iter().map(|piece| &piece.key))?;
        }
        Ok(rules)
    }
}

/// A key that stands twice would hide one of the two.
fn once<'a>(what: &str, keys: impl Iterator<Item = &'a String>) -> Result<(), Bad> {
    let mut keys: Vec<&String> = keys.collect();
    keys.sort();
    match keys.windows(2).find(|pair| pair[0] == pair[1]) {
        Some(pair) => Err(Bad::new(format!(
            "{what}: {:?} stands in it twice",
            pair[0]
        ))),
        None => Ok(()),
    }
}

impl BandEntry {
    fn band(&self, rows: &Rows) -> Result<Band, Bad> {
        band(rows, &self.row, self.low, self.high)
    }
}

fn band(rows: &Rows, row: &str, low: Number, high: Number) -> Result<Band, Bad> {
    match low.0 <= high.0 {
        true => Ok(Band {
            row: known(rows, row)?,
            low: low.0,
            high: high.0,
        }),
        false => Err(Bad::new(format!(
            "{row}: the low end {} lies over the high end {}",
            low.0, high.0
        ))),
    }
}

impl StyleEntry {
    fn style(self, rows: &Rows) -> Result<Style, Bad> {
        let species = Species::parse(&self.species)
            .ok_or_else(|| Bad::new(format!("{}: no animal {:?}", self.key, self.species)))?;
        let band_row = self.band_row.as_deref();
        let pieces = self.pieces.into_iter().map(|piece| {
            let usual = match (piece.usual, band_row) {
                (None, _) => None,
                (Some([low, high]), Some(row)) => Some(band(rows, row, low, high)?),
                (Some(_), None) => {
                    return Err(Bad::new(format!("{}: its bands need a band_row", self.key)));
                }
            };
            Ok(PieceRule {
                key: piece.key,
                name: piece.name,
                expected: piece.percent.percent(),
                band: usual,
            })
        });
        Ok(Style {
            pieces: pieces.collect::<Result<_, Bad>>()?,
            loss: self.loss.map(|loss| loss.band(rows)).transpose()?,
            row: known(rows, &self.row)?,
            key: self.key,
            name: self.name,
            species,
        })
    }
}

impl StepEntry {
    fn step(self, rows: &Rows) -> Result<StepRule, Bad> {
        Ok(StepRule {
            measure: match self.measure {
                MeasureEntry::Percent => Measure::Percent,
                MeasureEntry::LitresPerKilogram => Measure::LitresPerKilogram,
            },
            published: self.published.map(|published| published.0),
            band: self.usual.map(|usual| usual.band(rows)).transpose()?,
            row: known(rows, &self.row)?,
            key: self.key,
            name: self.name,
            of: self.of,
        })
    }
}

impl CureRoomEntry {
    fn rules(self, rows: &Rows) -> Result<cure_room::Rules, Bad> {
        let curves: Result<Vec<(String, Curve)>, Bad> = self
            .curves
            .into_iter()
            .map(|curve| curve.curve(rows))
            .collect();
        let targets: Result<Vec<Target>, Bad> = self
            .targets
            .into_iter()
            .map(|target| target.target(rows))
            .collect();
        let methods: Result<Vec<Method>, Bad> = self
            .methods
            .into_iter()
            .map(|method| method.method(rows))
            .collect();
        let bound =
            |entry: &BoundEntry| -> Result<Option<Bound>, Bad> { entry.bound(rows).map(Some) };
        let rules = cure_room::Rules {
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
    fn target(self, rows: &Rows) -> Result<Target, Bad> {
        let bound = |entry: Option<BoundEntry>| entry.map(|entry| entry.bound(rows)).transpose();
        let target = Target {
            loss: bound(self.loss)?,
            tolerance: self
                .tolerance
                .map_or_else(Percent::default, Number::percent),
            days: bound(self.days)?,
            water_activity: bound(self.water_activity)?,
            signature: self.signature,
            curve: self.curve,
            name: self.name,
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
    fn method(self, rows: &Rows) -> Result<Method, Bad> {
        Ok(Method {
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
            name: self.name,
        })
    }
}
