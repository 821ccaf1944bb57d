//! How the cuts of a style are written in the order of the knife.

use super::once;
use crate::Bad;
use crate::entry::{BenchTextEntry, known};
use domain::rows::Rows;
use domain::yields::{Drawing, Knife, KnifeCut};
use schemars::JsonSchema;
use serde::Deserialize;

/// How a style is cut on the bench.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct KnifeEntry {
    /// Which drawing shows it.
    drawing: DrawingEntry,
    /// The row that tells the order.
    row: String,
    /// The cuts, in the order of the knife: each piece of the style once.
    cuts: Vec<CutEntry>,
}

/// A drawing of a carcass.
#[derive(Debug, Clone, Copy, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum DrawingEntry {
    /// A side of pork.
    Pork,
    /// A side of lamb or goat.
    Lamb,
    /// A side of beef in two quarters.
    Beef,
    /// A bird.
    Bird,
}

/// One cut on the bench.
#[derive(Debug, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CutEntry {
    /// The key of the piece.
    piece: String,
    /// The parts of the drawing that it is; the first bears its name.
    regions: Vec<String>,
    /// Its name, short enough for the drawing.
    short: BenchTextEntry,
    /// What it is cut from, and where the knife goes.
    from: Option<BenchTextEntry>,
}

impl KnifeEntry {
    pub(super) fn knife(self, rows: &Rows, style: &str, pieces: &[&str]) -> Result<Knife, Bad> {
        once(style, self.cuts.iter().map(|cut| &cut.piece))?;
        once(style, self.cuts.iter().flat_map(|cut| &cut.regions))?;
        let is_cut = |piece: &&&str| self.cuts.iter().any(|cut| cut.piece == **piece);
        if let Some(left) = pieces.iter().find(|piece| !is_cut(piece)) {
            return Err(Bad::new(format!("{style}: the knife leaves {left:?} out")));
        }
        if let Some(cut) = self
            .cuts
            .iter()
            .find(|cut| !pieces.contains(&cut.piece.as_str()))
        {
            let piece = &cut.piece;
            return Err(Bad::new(format!(
                "{style}: it has no piece {piece:?} to cut"
            )));
        }
        let cut = |cut: CutEntry| KnifeCut {
            piece: cut.piece,
            regions: cut.regions,
            short: cut.short.into(),
            from: cut.from.map(Into::into),
        };
        Ok(Knife {
            drawing: match self.drawing {
                DrawingEntry::Pork => Drawing::Pork,
                DrawingEntry::Lamb => Drawing::Lamb,
                DrawingEntry::Beef => Drawing::Beef,
                DrawingEntry::Bird => Drawing::Bird,
            },
            row: known(rows, &self.row)?,
            cuts: self.cuts.into_iter().map(cut).collect(),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn refused(cuts: &str) -> String {
        let cut = |piece: &str| {
            format!(
                r#"{{ "piece": "{piece}", "regions": ["{piece}"], "short": {{ "en": "x", "fr": "x" }} }}"#
            )
        };
        let cuts: Vec<String> = cuts.split(' ').map(cut).collect();
        let text = format!(
            r#"{{ "drawing": "pork", "row": "none", "cuts": [{}] }}"#,
            cuts.join(", ")
        );
        let entry: KnifeEntry = serde_json::from_str(&text).unwrap();
        let bad = entry.knife(&Rows::default(), "side", &["ham", "loin"]);
        bad.unwrap_err().to_string()
    }

    #[test]
    fn the_knife_cuts_each_piece_once_and_no_other() {
        assert!(refused("ham").contains("leaves \"loin\" out"));
        assert!(refused("ham loin ham").contains("twice"));
        assert!(refused("ham loin jowl").contains("no piece \"jowl\""));
        assert!(refused("loin ham").contains("none"), "its row is unknown");
    }
}
