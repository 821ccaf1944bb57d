//! How stability is written: `stability.json`.

use super::measures::{LimitEntry, bound_of};
use crate::Bad;
use crate::entry::{BoundEntry, known};
use crate::file::Subject;
use domain::rows::{RowId, Rows};
use domain::stability::{
    Fact, Measure, MoistureRule, StabilityCell, StabilityGrid, StabilityRules, Way,
};
use schemars::JsonSchema;
use serde::Deserialize;

/// The rules of stability.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct StabilityEntry {
    /// The table for food that was heated and then packed.
    heated_and_packed: Option<GridEntry>,
    /// The table for all other food.
    otherwise: Option<GridEntry>,
    /// Does a reading that lies on an edge of those tables fall into the worse band?
    #[serde(default)]
    is_strict: bool,
    /// Kinds that are stable, any one of them.
    #[serde(default)]
    stable: Vec<WayEntry>,
    /// What packing without air needs beside the cold, any one of them.
    #[serde(default)]
    barriers: Vec<WayEntry>,
    /// Moisture to protein: names on labels, no proof of safety.
    #[serde(default)]
    moisture: Vec<MoistureEntry>,
}

/// A table of water activity down and pH across.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GridEntry {
    /// The row that it stands in.
    row: String,
    /// The upper edges of the bands of water activity, rising; the last band has none.
    water_activity: Vec<LimitEntry>,
    /// The upper edges of the bands of pH, rising; the last band has none.
    ph: Vec<LimitEntry>,
    /// One line for each band of water activity, one cell for each band of pH.
    cells: Vec<Vec<CellEntry>>,
}

/// What a cell says.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum CellEntry {
    /// Needs no time and temperature control.
    Stable,
    /// Needs it until an assessment of the product proves otherwise.
    Assess,
}

/// One way of several: all its facts and all its limits.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WayEntry {
    /// Its name.
    name: String,
    /// The row that it stands in.
    row: String,
    /// What must be known of the food.
    #[serde(default)]
    facts: Vec<FactEntry>,
    /// pH.
    ph: Option<LimitEntry>,
    /// Water activity.
    water_activity: Option<LimitEntry>,
    /// Salt in the water of the food (%).
    salt_in_water: Option<LimitEntry>,
    /// Salt in the brine (%).
    brine: Option<LimitEntry>,
}

/// What may be known of a food.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum FactEntry {
    /// Commercially sterile in a hermetic pack.
    SterileHermetic,
    /// Packed in salt.
    PackedInSalt,
    /// Packed in brine.
    PackedInBrine,
    /// Fermented, the readings being those at its end.
    Fermented,
    /// Cured at an inspected plant and received intact.
    PlantCured,
    /// Raw meat, poultry or vegetables.
    RawMeat,
}

/// What one name asks for, in one text.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MoistureEntry {
    /// The name.
    name: String,
    /// Moisture to one part of protein.
    ratio: BoundEntry,
    /// pH, where it is asked for too.
    ph: Option<BoundEntry>,
    /// The row that says that it is no proof of safety.
    no_proof: Option<String>,
}

impl Subject for StabilityEntry {
    type Rules = StabilityRules;

    fn rules(self, rows: &Rows) -> Result<StabilityRules, Bad> {
        let grid = |entry: Option<GridEntry>| entry.map(|entry| entry.grid(rows)).transpose();
        Ok(StabilityRules {
            heated_and_packed: grid(self.heated_and_packed)?,
            otherwise: grid(self.otherwise)?,
            is_strict: self.is_strict,
            stable: ways(&self.stable, rows)?,
            barriers: ways(&self.barriers, rows)?,
            moisture: self
                .moisture
                .into_iter()
                .map(|entry| {
                    Ok(MoistureRule {
                        at_most: entry.ratio.bound(rows)?,
                        ph: bound_of(entry.ph.as_ref(), rows)?,
                        no_proof: row(entry.no_proof, rows)?,
                        name: entry.name,
                    })
                })
                .collect::<Result<_, Bad>>()?,
        })
    }
}

impl GridEntry {
    fn grid(&self, rows: &Rows) -> Result<StabilityGrid, Bad> {
        let edges = |entries: &[LimitEntry]| {
            entries
                .iter()
                .map(|entry| entry.limit(rows))
                .collect::<Result<Vec<_>, Bad>>()
        };
        let cell = |cell: &CellEntry| match cell {
            CellEntry::Stable => StabilityCell::Stable,
            CellEntry::Assess => StabilityCell::Assess,
        };
        let cells = self.cells.iter();
        let cells = cells.map(|line| line.iter().map(cell).collect()).collect();
        let row = known(rows, &self.row)?;
        StabilityGrid::new(row, edges(&self.water_activity)?, edges(&self.ph)?, cells)
            .map_err(Bad::new)
    }
}

impl WayEntry {
    fn way(&self, rows: &Rows) -> Result<Way, Bad> {
        let limits = [
            (Measure::Ph, &self.ph),
            (Measure::WaterActivity, &self.water_activity),
            (Measure::SaltInWater, &self.salt_in_water),
            (Measure::Brine, &self.brine),
        ];
        let limits = limits
            .into_iter()
            .filter_map(|(measure, entry)| Some((measure, entry.as_ref()?)))
            .map(|(measure, entry)| Ok((measure, entry.limit(rows)?)))
            .collect::<Result<Vec<_>, Bad>>()?;
        if limits.is_empty() && self.facts.is_empty() {
            return Err(Bad::new(format!("{} asks for nothing", self.name)));
        }
        Ok(Way {
            name: self.name.clone(),
            row: known(rows, &self.row)?,
            facts: self.facts.iter().map(|fact| fact.fact()).collect(),
            limits,
        })
    }
}

impl FactEntry {
    fn fact(self) -> Fact {
        match self {
            FactEntry::SterileHermetic => Fact::SterileHermetic,
            FactEntry::PackedInSalt => Fact::PackedInSalt,
            FactEntry::PackedInBrine => Fact::PackedInBrine,
            FactEntry::Fermented => Fact::Fermented,
            FactEntry::PlantCured => Fact::PlantCured,
            FactEntry::RawMeat => Fact::RawMeat,
        }
    }
}

fn ways(entries: &[WayEntry], rows: &Rows) -> Result<Vec<Way>, Bad> {
    entries.iter().map(|entry| entry.way(rows)).collect()
}

fn row(id: Option<String>, rows: &Rows) -> Result<Option<RowId>, Bad> {
    id.map(|id| known(rows, &id)).transpose()
}
