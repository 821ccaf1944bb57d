//! A carcass on the bench: its cuts in the order of the knife, where each stands on the drawing, and what
//! it usually weighs.

use super::{CuttingStyle, PieceRule, YieldRules};
use crate::grams::Grams;
use crate::rows::RowId;
use crate::says::Texts;
use crate::words::Species;
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// How a style is cut on the bench.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Knife {
    /// Which drawing shows it.
    pub drawing: Drawing,
    /// The row that tells the order.
    pub row: RowId,
    /// The cuts, in the order of the knife: each piece of the style once.
    pub cuts: Vec<KnifeCut>,
}

/// A drawing of a carcass.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Drawing {
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
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnifeCut {
    /// The piece of the style.
    pub piece: String,
    /// The parts of the drawing that it is; the first bears its name. None where the drawing has no such part.
    pub regions: Vec<String>,
    /// Its name, short enough for the drawing.
    pub short: Texts,
    /// What it is cut from, and where the knife goes.
    pub from: Option<Texts>,
}

/// A cut of one carcass, with what it usually weighs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UsualCut<'a> {
    /// Where it stands on the drawing.
    pub cut: &'a KnifeCut,
    /// What is usual of it.
    pub rule: &'a PieceRule,
    /// The template's part of what hung.
    pub usual: Grams,
    /// From this to that, where somebody has said so.
    pub band: Option<(Grams, Grams)>,
}

impl YieldRules {
    /// The style in which a carcass lies on the bench: the one that it is listed with, else the first of
    /// its animal.
    pub fn on_the_bench(&self, species: Species, listed: Option<&str>) -> Option<&CuttingStyle> {
        let mut of_it = self
            .styles
            .iter()
            .filter(|style| style.species == species && style.knife.is_some());
        let named = of_it
            .clone()
            .find(|style| Some(style.key.as_str()) == listed);
        named.or_else(|| of_it.next())
    }
}

impl CuttingStyle {
    /// Its cuts in the order of the knife, with what each usually weighs of a carcass that hung so much.
    pub fn usual_cuts(&self, hung: Grams) -> Vec<UsualCut<'_>> {
        let cuts = self.knife.iter().flat_map(|knife| &knife.cuts);
        cuts.filter_map(|cut| {
            let rule = self.pieces.iter().find(|piece| piece.key == cut.piece)?;
            let band = rule.band.as_ref();
            Some(UsualCut {
                cut,
                rule,
                usual: part(hung, rule.expected.number()),
                band: band.map(|band| (part(hung, band.low), part(hung, band.high))),
            })
        })
        .collect()
    }

    /// How much of a carcass that hung so much may be left unweighed, from this to that.
    pub fn usual_loss(&self, hung: Grams) -> Option<(Grams, Grams)> {
        let loss = self.loss.as_ref()?;
        Some((part(hung, loss.low), part(hung, loss.high)))
    }
}

/// So many percent of a weight, to the gram.
fn part(whole: Grams, percent: Decimal) -> Grams {
    let grams = Decimal::from(whole.milligrams()) * percent / Decimal::from(100_000);
    let grams = grams.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
    Grams::whole(grams.to_i64().unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Percent;
    use crate::yields::Band;

    fn style(key: &str, species: Species, knife: Option<Knife>) -> CuttingStyle {
        let piece = |key: &str, expected: Decimal, band| PieceRule {
            key: key.into(),
            name: key.into(),
            expected: Percent::new(expected),
            band,
        };
        CuttingStyle {
            key: key.into(),
            name: key.into(),
            species,
            row: RowId::new("trade-1.2-template"),
            pieces: vec![
                piece("fat", Decimal::new(123, 1), None),
                piece(
                    "picnic",
                    9.into(),
                    Some(Band::new("trade-1.2-bands", 7, 11)),
                ),
            ],
            loss: Some(Band::new(
                "trade-1.2-loss",
                Decimal::new(-3, 1),
                Decimal::new(25, 1),
            )),
            knife,
        }
    }

    fn knife() -> Knife {
        let cut = |piece: &str| KnifeCut {
            piece: piece.into(),
            regions: vec![piece.into()],
            short: piece.into(),
            from: None,
        };
        Knife {
            drawing: Drawing::Pork,
            row: RowId::new("trade-knife-pork"),
            cuts: vec![cut("picnic"), cut("fat")],
        }
    }

    #[test]
    fn cuts_come_in_the_order_of_the_knife_with_what_they_weigh() {
        let style = style("pig-side", Species::Pig, Some(knife()));
        let cuts = style.usual_cuts(Grams::whole(45_000));
        let told: Vec<_> = cuts
            .iter()
            .map(|cut| (cut.cut.piece.as_str(), cut.usual, cut.band))
            .collect();
        let band = (Grams::whole(3_150), Grams::whole(4_950));
        let picnic = ("picnic", Grams::whole(4_050), Some(band));
        assert_eq!(told, [picnic, ("fat", Grams::whole(5_535), None)]);
        let loss = style.usual_loss(Grams::whole(45_000));
        assert_eq!(loss, Some((Grams::whole(-135), Grams::whole(1_125))));
    }

    #[test]
    fn a_carcass_lies_there_as_listed_or_as_its_animal_is_usually_cut() {
        let rules = YieldRules {
            styles: vec![
                style("in-secret", Species::Pig, None),
                style("side", Species::Pig, Some(knife())),
                style("retail", Species::Pig, Some(knife())),
            ],
            ..YieldRules::default()
        };
        let chosen = |species, listed| {
            let style = rules.on_the_bench(species, listed);
            style.map(|style| style.key.as_str())
        };
        assert_eq!(chosen(Species::Pig, Some("retail")), Some("retail"));
        assert_eq!(chosen(Species::Pig, Some("in-secret")), Some("side"));
        assert_eq!(chosen(Species::Pig, None), Some("side"));
        assert_eq!(chosen(Species::Cattle, Some("side")), None);
    }
}
