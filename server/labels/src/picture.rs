//! Small pictures that stand beside words, drawn by us cell by cell.

use schemars::JsonSchema;
use serde::Deserialize;

use crate::length::{Area, Length};
use crate::placed::Picture;

/// Cells on each side.
const CELLS: i64 = 32;

/// Which picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum PictureName {
    /// Keep it cold.
    Refrigerator,
    /// Wash hands and boards.
    Washing,
    /// Cook it.
    Pan,
    /// Mind the temperature.
    Thermometer,
}

impl PictureName {
    /// Every one.
    pub const ALL: [PictureName; 4] = [
        PictureName::Refrigerator,
        PictureName::Washing,
        PictureName::Pan,
        PictureName::Thermometer,
    ];

    /// Rows of `#` and `.`.
    fn cells(self) -> &'static str {
        match self {
            PictureName::Refrigerator => include_str!("../pictures/refrigerator.txt"),
            PictureName::Washing => include_str!("../pictures/washing.txt"),
            PictureName::Pan => include_str!("../pictures/pan.txt"),
            PictureName::Thermometer => include_str!("../pictures/thermometer.txt"),
        }
    }
}

/// Draws a picture with its top left corner there.
pub(crate) fn place(name: PictureName, x: Length, y: Length, side: Length) -> Picture {
    let edge = |cell: i64| side * cell / CELLS;
    let mut dark = Vec::new();
    for (row, cells) in (0..).zip(name.cells().lines()) {
        let mut column = 0;
        for run in cells.as_bytes().chunk_by(|a, b| a == b) {
            let from = column;
            column += run.len() as i64;
            if run[0] == b'#' {
                dark.push(Area {
                    x: x + edge(from),
                    y: y + edge(row),
                    w: edge(column) - edge(from),
                    h: edge(row + 1) - edge(row),
                });
            }
        }
    }
    let bounds = Area {
        x,
        y,
        w: side,
        h: side,
    };
    Picture { name, bounds, dark }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pictures_are_square_and_drawn() {
        for name in PictureName::ALL {
            let rows: Vec<&str> = name.cells().lines().collect();
            assert_eq!(rows.len() as i64, CELLS, "{name:?}");
            let sound = |row: &&str| {
                row.len() as i64 == CELLS && row.bytes().all(|cell| matches!(cell, b'#' | b'.'))
            };
            assert!(rows.iter().all(sound), "{name:?}");
            let picture = place(name, Length::mm(1.0), Length::mm(2.0), Length::mm(5.0));
            assert!(picture.dark.len() > 20, "{name:?}");
            assert!(picture.dark.iter().all(|area| picture.bounds.holds(area)));
        }
    }
}
