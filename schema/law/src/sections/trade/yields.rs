//! How yields are written.

use super::knife::KnifeEntry;
use super::once;
use crate::Bad;
use crate::entry::{BenchTextEntry, BoundEntry, Number, TextEntry, known};
use domain::rows::Rows;
use domain::words::Species;
use domain::yields::{Band, CuttingStyle, PieceRule, StepRule, YieldMeasure, YieldRules};
use schemars::JsonSchema;
use serde::Deserialize;

/// Yields.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct YieldsEntry {
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
    name: TextEntry,
    /// The animal, as everywhere in the record: `pig`.
    species: String,
    /// The row of the percents.
    row: String,
    /// The row of the bands, where pieces have any.
    band_row: Option<String>,
    /// How it is cut on the bench.
    knife: Option<KnifeEntry>,
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
    name: BenchTextEntry,
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
    name: TextEntry,
    /// What it is counted from: `raw shoulder with its bone`.
    of: TextEntry,
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

impl YieldsEntry {
    pub(super) fn rules(self, rows: &Rows) -> Result<YieldRules, Bad> {
        let styles: Result<Vec<CuttingStyle>, Bad> = self
            .styles
            .into_iter()
            .map(|style| style.style(rows))
            .collect();
        let steps: Result<Vec<StepRule>, Bad> =
            self.steps.into_iter().map(|step| step.step(rows)).collect();
        let rules = YieldRules {
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
    fn style(self, rows: &Rows) -> Result<CuttingStyle, Bad> {
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
                name: piece.name.into(),
                expected: piece.percent.percent(),
                band: usual,
            })
        });
        let pieces = pieces.collect::<Result<Vec<PieceRule>, Bad>>()?;
        let keys: Vec<&str> = pieces.iter().map(|piece| piece.key.as_str()).collect();
        let knife = self.knife.map(|knife| knife.knife(rows, &self.key, &keys));
        Ok(CuttingStyle {
            knife: knife.transpose()?,
            pieces,
            loss: self.loss.map(|loss| loss.band(rows)).transpose()?,
            row: known(rows, &self.row)?,
            key: self.key,
            name: self.name.into(),
            species,
        })
    }
}

impl StepEntry {
    fn step(self, rows: &Rows) -> Result<StepRule, Bad> {
        Ok(StepRule {
            measure: match self.measure {
                MeasureEntry::Percent => YieldMeasure::Percent,
                MeasureEntry::LitresPerKilogram => YieldMeasure::LitresPerKilogram,
            },
            published: self.published.map(|published| published.0),
            band: self.usual.map(|usual| usual.band(rows)).transpose()?,
            row: known(rows, &self.row)?,
            key: self.key,
            name: self.name.into(),
            of: self.of.into(),
        })
    }
}
