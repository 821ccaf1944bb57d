//! A table of pH against water activity.

use crate::rows::RowId;
use rust_decimal::Decimal;

/// What a cell says, the better first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StabilityCell {
    /// Needs no time and temperature control.
    Stable,
    /// Needs it until an assessment of the product proves otherwise.
    Assess,
}

/// A table: bands of water activity down, bands of pH across, each named by its upper edge; the last
/// band of each has none.
#[derive(Debug, Clone, PartialEq)]
pub struct StabilityGrid {
    row: RowId,
    water_activity: Vec<Edge>,
    ph: Vec<Edge>,
    cells: Vec<Vec<StabilityCell>>,
}

/// The upper edge of a band.
pub type Edge = super::limit::StabilityLimit;

impl StabilityGrid {
    /// A table, its bands rising and its cells never better to the right or further down.
    ///
    /// # Errors
    /// In words, for whoever keeps the file.
    pub fn new(
        row: RowId,
        water_activity: Vec<Edge>,
        ph: Vec<Edge>,
        cells: Vec<Vec<StabilityCell>>,
    ) -> Result<StabilityGrid, String> {
        let rises = |edges: &[Edge]| {
            edges
                .windows(2)
                .all(|pair| pair[0].bound.value < pair[1].bound.value)
        };
        let is_full = cells.len() == water_activity.len() + 1
            && cells.iter().all(|line| line.len() == ph.len() + 1);
        if !rises(&water_activity) || !rises(&ph) || !is_full {
            return Err(format!(
                "the table {row} needs rising edges and one cell for each band"
            ));
        }
        let worsens = cells.iter().all(|line| line.is_sorted())
            && (0..=ph.len()).all(|column| cells.iter().map(|line| line[column]).is_sorted());
        match worsens {
            true => Ok(StabilityGrid {
                row,
                water_activity,
                ph,
                cells,
            }),
            false => Err(format!(
                "in the table {row} a wetter or less sour food comes out better"
            )),
        }
    }

    /// Where it stands.
    pub fn row(&self) -> &RowId {
        &self.row
    }

    /// The edges, for a house to tighten.
    pub(super) fn edges_mut(&mut self) -> impl Iterator<Item = &mut Edge> {
        self.water_activity.iter_mut().chain(&mut self.ph)
    }

    /// The cell; what was not measured is taken at its worst. With `is_strict` a reading that lies on
    /// an edge falls into the worse band, however the text has it.
    pub fn cell(
        &self,
        water_activity: Option<Decimal>,
        ph: Option<Decimal>,
        is_strict: bool,
    ) -> StabilityCell {
        let line = band(&self.water_activity, water_activity, is_strict);
        let column = band(&self.ph, ph, is_strict);
        self.cells[line][column]
    }
}

fn band(edges: &[Edge], value: Option<Decimal>, is_strict: bool) -> usize {
    let within = |edge: &Edge| {
        value.is_some_and(|value| edge.allows(value) && !(is_strict && value == edge.bound.value))
    };
    edges.iter().position(within).unwrap_or(edges.len())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rows::Bound;

    fn grid(cells: [[StabilityCell; 2]; 2]) -> Result<StabilityGrid, String> {
        let edge = |value: Decimal| Edge {
            bound: Bound::at_most("us-0", value),
            open: false,
        };
        StabilityGrid::new(
            RowId::new("us-0"),
            vec![edge(Decimal::new(90, 2))],
            vec![edge(Decimal::new(50, 1))],
            cells.map(|line| line.to_vec()).to_vec(),
        )
    }

    #[test]
    fn an_edge_falls_on_the_strict_side() {
        use StabilityCell::*;
        let grid = grid([[Stable, Stable], [Stable, Assess]]).unwrap();
        let check = |activity: Option<i64>, ph: i64, is_strict: bool, cell: StabilityCell| {
            let activity = activity.map(|activity| Decimal::new(activity, 2));
            assert_eq!(
                grid.cell(activity, Some(Decimal::new(ph, 1)), is_strict),
                cell
            );
        };
        check(Some(90), 51, false, Stable);
        check(Some(90), 51, true, Assess);
        check(Some(89), 51, true, Stable);
        check(None, 51, false, Assess);
        check(None, 49, true, Stable);
    }

    #[test]
    fn a_table_in_which_the_wetter_is_better_is_refused() {
        use StabilityCell::*;
        assert!(grid([[Assess, Assess], [Stable, Assess]]).is_err());
        assert!(grid([[Assess, Stable], [Assess, Assess]]).is_err());
    }
}
