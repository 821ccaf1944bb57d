//! Cutting up an animal: each piece as a part of the hanging weight, and what nobody weighed.

use super::says::CutOutSays;
use super::{Band, Knife, Verdict, YieldRules, YieldShown};
use crate::grams::Grams;
use crate::measure::Percent;
use crate::refusal::{Refusal, Result};
use crate::rows::RowId;
use crate::says::{Says, Texts};
use crate::words::Species;
use rust_decimal::Decimal;

/// A way of cutting up one kind of animal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CuttingStyle {
    /// Its name in the data: `pig-side`.
    pub key: String,
    /// As a cook calls it, with how it hangs (skin, head, feet).
    pub name: Texts,
    /// The animal.
    pub species: Species,
    /// Where its percents come from.
    pub row: RowId,
    /// Its pieces.
    pub pieces: Vec<PieceRule>,
    /// How much may be left unweighed, in percent of the hanging weight: cut and drip loss.
    pub loss: Option<Band>,
    /// How it is cut on the bench, where the data says so.
    pub knife: Option<Knife>,
}

/// A piece of a style.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PieceRule {
    /// Its name in the data: `ham`.
    pub key: String,
    /// As a cook calls it.
    pub name: Texts,
    /// Its part of the hanging weight.
    pub expected: Percent,
    /// What is usual, in percent of the hanging weight.
    pub band: Option<Band>,
}

/// An animal, or half of one, cut up.
#[derive(Debug, Clone, Copy)]
pub struct CutOut<'a> {
    /// The animal.
    pub species: Species,
    /// The style's key.
    pub style: &'a str,
    /// What hung.
    pub hanging: Grams,
    /// The pieces by key, as weighed. A key may come twice: a fat bagged in three bags.
    pub pieces: &'a [(&'a str, Grams)],
}

impl YieldRules {
    /// The style of that name for that animal.
    ///
    /// # Errors
    /// There is none.
    pub fn style(&self, species: Species, key: &str) -> Result<&CuttingStyle> {
        let mut of_it = self.styles.iter().filter(|style| style.species == species);
        of_it.clone().find(|style| style.key == key).ok_or_else(|| {
            let known: Vec<&str> = of_it.by_ref().map(|style| style.key.as_str()).collect();
            let says = match known.is_empty() {
                true => CutOutSays::NoStyles { species },
                false => CutOutSays::NoSuchStyle {
                    style: key.to_owned(),
                    species,
                    known: known.join(", "),
                },
            };
            Refusal::cannot_be("style", says)
        })
    }
}

/// Every piece against what is usual, the style's pieces first; the last line is what nobody
/// weighed (`loss`). Percents are of the hanging weight and sum to a hundred with it.
///
/// # Errors
/// Nothing hung, a piece weighs nothing or less, or there is no such style.
pub fn cut_out(cut: &CutOut<'_>, rules: &YieldRules) -> Result<Vec<YieldShown>> {
    let style = rules.style(cut.species, cut.style)?;
    if cut.hanging.is_none_left() {
        return Err(Refusal::cannot_be("hanging", CutOutSays::NoHanging));
    }
    for (nth, (piece, grams)) in cut.pieces.iter().enumerate() {
        if grams.is_none_left() {
            return Err(Refusal::cannot_be(
                format!("pieces[{nth}].grams"),
                CutOutSays::PieceWeight {
                    piece: (*piece).to_owned(),
                    grams: *grams,
                },
            ));
        }
    }
    let weighed = |key: &str| -> Option<Grams> {
        let mut of_it = cut.pieces.iter().filter(|(piece, _)| *piece == key);
        let first = of_it.next()?.1;
        Some(first + of_it.map(|(_, grams)| *grams).sum())
    };
    let mut lines: Vec<YieldShown> = style
        .pieces
        .iter()
        .map(|piece| of_the_style(piece, weighed(&piece.key), cut, style))
        .collect();
    for (key, _) in cut.pieces {
        if !lines.iter().any(|line| line.key == *key) {
            lines.push(beside_the_style(
                key,
                weighed(key).unwrap_or_default(),
                cut,
                style,
            ));
        }
    }
    lines.push(loss(cut, style));
    Ok(lines)
}

fn of_the_style(
    piece: &PieceRule,
    weighed: Option<Grams>,
    cut: &CutOut<'_>,
    style: &CuttingStyle,
) -> YieldShown {
    let grams = weighed.unwrap_or_default();
    let part = part(grams, cut.hanging);
    let verdict = match weighed {
        None => Verdict::NotWeighed,
        Some(_) => Verdict::of(part.number(), piece.band.as_ref()),
    };
    let (name, expected) = (piece.name.clone(), piece.expected);
    let says = match (verdict, &piece.band) {
        (Verdict::NotWeighed, _) => CutOutSays::NotWeighed {
            piece: name,
            expected,
        },
        (_, None) => CutOutSays::Plain { piece: name, part },
        (Verdict::Low | Verdict::High, Some(band)) => CutOutSays::Unusual {
            piece: name,
            part,
            low: band.low,
            high: band.high,
        },
        (_, Some(band)) => CutOutSays::Usual {
            piece: name,
            part,
            low: band.low,
            high: band.high,
        },
    };
    YieldShown {
        key: piece.key.clone(),
        name: Says::named(&piece.name),
        grams,
        amount: part.number(),
        expected: Some(piece.expected.number()),
        band: piece.band.clone(),
        verdict,
        says: says.into(),
        row: style.row.clone(),
    }
}

fn beside_the_style(key: &str, grams: Grams, cut: &CutOut<'_>, style: &CuttingStyle) -> YieldShown {
    let part = part(grams, cut.hanging);
    YieldShown {
        key: key.to_owned(),
        name: Says::as_written(key),
        grams,
        amount: part.number(),
        expected: None,
        band: None,
        verdict: Verdict::NoBand,
        says: CutOutSays::Beside {
            piece: key.to_owned(),
            part,
        }
        .into(),
        row: style.row.clone(),
    }
}

fn loss(cut: &CutOut<'_>, style: &CuttingStyle) -> YieldShown {
    let grams = cut.hanging - cut.pieces.iter().map(|(_, grams)| *grams).sum();
    let part = part(grams, cut.hanging);
    let verdict = Verdict::of(part.number(), style.loss.as_ref());
    let says = match verdict {
        Verdict::Low => CutOutSays::MoreThanHung {
            grams: -grams,
            part,
        },
        Verdict::High => CutOutSays::LeftOut { grams, part },
        _ => CutOutSays::Dripped { grams, part },
    };
    YieldShown {
        key: "loss".into(),
        name: CutOutSays::Loss.into(),
        grams,
        amount: part.number(),
        expected: None,
        band: style.loss.clone(),
        verdict,
        says: says.into(),
        row: style.row.clone(),
    }
}

fn part(grams: Grams, whole: Grams) -> Percent {
    Percent::of(
        Decimal::from(grams.milligrams()),
        Decimal::from(whole.milligrams()),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn rules() -> YieldRules {
        let piece = |key: &str, expected: i64, low: i64, high: i64| PieceRule {
            key: key.into(),
            name: key.into(),
            expected: Percent::new(expected),
            band: Some(Band::new("trade-1.2-bands", low, high)),
        };
        YieldRules {
            styles: vec![CuttingStyle {
                key: "halves".into(),
                name: "halves".into(),
                species: Species::Pig,
                row: RowId::new("trade-1.2-template"),
                pieces: vec![piece("fore", 48, 40, 60), piece("hind", 51, 40, 60)],
                loss: Some(Band::new(
                    "trade-1.2-loss",
                    Decimal::new(-3, 1),
                    Decimal::new(25, 1),
                )),
                knife: None,
            }],
            ..YieldRules::default()
        }
    }

    fn check(pieces: &[(&str, i64)], expected: &[Verdict]) {
        let pieces: Vec<_> = pieces.iter().map(|(k, g)| (*k, Grams::whole(*g))).collect();
        let cut = CutOut {
            species: Species::Pig,
            style: "halves",
            hanging: Grams::whole(1000),
            pieces: &pieces,
        };
        let lines = cut_out(&cut, &rules()).unwrap();
        let verdicts: Vec<Verdict> = lines.iter().map(|line| line.verdict).collect();
        assert_eq!(verdicts, expected);
    }

    #[test]
    fn each_piece_and_the_loss_are_judged() {
        use Verdict::*;
        check(&[("fore", 480), ("hind", 510)], &[Usual, Usual, Usual]);
        check(&[("fore", 480)], &[Usual, NotWeighed, High]);
        check(&[("fore", 495), ("hind", 510)], &[Usual, Usual, Low]); // -0.5 %
        check(&[("fore", 493), ("hind", 510)], &[Usual, Usual, Usual]); // -0.3 %
        check(
            &[("fore", 200), ("fore", 280), ("liver", 10), ("hind", 505)],
            &[Usual, Usual, NoBand, Usual],
        );
        check(&[("fore", 390), ("hind", 605)], &[Low, High, Usual]);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let try_it = |style, hanging, piece| {
            let cut = CutOut {
                species: Species::Pig,
                style,
                hanging: Grams::whole(hanging),
                pieces: &[("fore", Grams::whole(piece))],
            };
            cut_out(&cut, &rules()).unwrap_err().field.unwrap()
        };
        assert_eq!(try_it("halves", 0, 1), "hanging");
        assert_eq!(try_it("halves", 10, 0), "pieces[0].grams");
        assert_eq!(try_it("quarters", 10, 1), "style");
    }

    proptest! {
        #[test]
        fn the_percents_sum_to_a_hundred(
            hanging in 1i64..500_000_000, fore in 1i64..500_000_000, hind in 1i64..500_000_000,
        ) {
            let pieces = [("fore", Grams::from_milligrams(fore)), ("hind", Grams::from_milligrams(hind))];
            let cut = CutOut {
                species: Species::Pig, style: "halves",
                hanging: Grams::from_milligrams(hanging), pieces: &pieces,
            };
            let sum: Decimal = cut_out(&cut, &rules()).unwrap().iter().map(|line| line.amount).sum();
            prop_assert!((sum - Decimal::ONE_HUNDRED).abs() < Decimal::new(1, 9), "{sum}");
        }
    }
}
