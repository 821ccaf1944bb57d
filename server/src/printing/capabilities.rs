//! What a printer says of itself: its state, what it takes, and the sizes of label that it has.

use super::says::{PrinterSays, SizeSays};
use super::values::{first_number, member, span, texts, truth, values};
use domain::says::{Arg, Says};
use ipp::prelude::{IppAttributeGroup, IppValue, Operation, PrinterState};
use rust_decimal::Decimal;
use std::ops::RangeInclusive;

/// How far a roll may be off the label, in hundredths of a millimetre: 2 inches pass for 51 mm.
const CLOSE: u32 = 50;

/// A size that a printer has, in hundredths of a millimetre; both ends are one for a fixed size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Size {
    /// Across.
    pub x: RangeInclusive<i32>,
    /// Along.
    pub y: RangeInclusive<i32>,
}

/// What a printer said when it was asked.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Capabilities {
    /// 3 idle, 4 printing, 5 stopped (RFC 8011 5.4.11).
    pub state: Option<i32>,
    /// Why it is as it is: `media-empty`, `cover-open-error` …
    pub reasons: Vec<String>,
    /// Does it take jobs?
    pub accepting: Option<bool>,
    /// Seconds since it was started.
    pub up_time: Option<i32>,
    /// Formats that it takes.
    pub formats: Vec<String>,
    /// Label sizes that it has.
    pub sizes: Vec<Size>,
    /// Dots per inch that it prints.
    pub resolutions: Vec<i32>,
    /// The most copies of one job.
    pub copies: Option<i32>,
    /// Can a job be made first and filled afterwards? Then a lost answer costs nothing.
    pub creates_jobs: bool,
    /// Can it be told to leave the size of the label alone?
    pub scales_none: bool,
    /// Members that its `media-col` takes; empty if it does not say.
    pub media_members: Vec<String>,
}

impl Capabilities {
    /// What to ask for.
    pub const ASKED: [&'static str; 13] = [
        "printer-state",
        "printer-state-reasons",
        "printer-is-accepting-jobs",
        "printer-up-time",
        "document-format-supported",
        "media-size-supported",
        "media-col-database",
        "media-col-ready",
        "media-col-supported",
        "printer-resolution-supported",
        "copies-supported",
        "operations-supported",
        "print-scaling-supported",
    ];

    /// Reads the printer's answer.
    pub fn read(group: &IppAttributeGroup) -> Capabilities {
        let operations: Vec<i32> = values(group, "operations-supported")
            .into_iter()
            .filter_map(super::values::number)
            .collect();
        let knows = |operation: Operation| operations.contains(&(operation as i32));
        let mut sizes = Vec::new();
        let mut add = |size: Option<Size>| match size {
            Some(size) if !sizes.contains(&size) => sizes.push(size),
            _ => {}
        };
        for value in values(group, "media-size-supported") {
            add(size(value));
        }
        for name in ["media-col-ready", "media-col-database"] {
            for value in values(group, name) {
                add(member(value, "media-size").and_then(size));
            }
        }
        let resolutions = values(group, "printer-resolution-supported")
            .into_iter()
            .filter_map(|value| match value {
                // Units: 3 is dots per inch, 4 dots per centimetre (RFC 8011 5.1.16).
                IppValue::Resolution { feed, units: 3, .. } => Some(*feed),
                IppValue::Resolution { feed, units: 4, .. } => Some(feed * 254 / 100),
                _ => None,
            })
            .collect();
        let copies = values(group, "copies-supported");
        Capabilities {
            state: first_number(group, "printer-state"),
            reasons: texts(group, "printer-state-reasons")
                .into_iter()
                .filter(|reason| reason != "none")
                .collect(),
            accepting: truth(group, "printer-is-accepting-jobs"),
            up_time: first_number(group, "printer-up-time"),
            formats: texts(group, "document-format-supported"),
            sizes,
            resolutions,
            copies: copies.into_iter().find_map(span).map(|span| *span.end()),
            creates_jobs: knows(Operation::CreateJob) && knows(Operation::SendDocument),
            scales_none: texts(group, "print-scaling-supported")
                .iter()
                .any(|scaling| scaling == "none"),
            media_members: texts(group, "media-col-supported"),
        }
    }

    /// Has it stopped?
    pub fn stopped(&self) -> bool {
        self.state == Some(PrinterState::Stopped as i32)
    }

    /// The dots per inch to lay labels out for: whole dots of the printer. 600 is twice 300.
    pub fn dpi(&self) -> Option<u16> {
        let has = |dpi: i32| self.resolutions.iter().any(|has| has.abs_diff(dpi) <= 1);
        match (has(203), has(300) || has(600)) {
            (true, _) => Some(203),
            (_, true) => Some(300),
            _ => None,
        }
    }

    /// The printer's own measure of a label, in hundredths of a millimetre.
    ///
    /// # Errors
    /// The sizes that it has.
    pub fn size_for(&self, x: i32, y: i32) -> Result<(i32, i32), PrinterSays> {
        if self.sizes.is_empty() {
            return Ok((x, y)); // it does not say; it may refuse
        }
        let near = |span: &RangeInclusive<i32>, wanted: i32| {
            let nearest = wanted.clamp(*span.start(), *span.end());
            (nearest.abs_diff(wanted) <= CLOSE).then_some(nearest)
        };
        let fits = |size: &Size| Some((near(&size.x, x)?, near(&size.y, y)?));
        let fitting = self.sizes.iter().filter_map(fits);
        let nearest = fitting.min_by_key(|(has_x, has_y)| has_x.abs_diff(x) + has_y.abs_diff(y));
        nearest.ok_or_else(|| PrinterSays::OtherSize {
            label: Size { x: x..=x, y: y..=y }.says(),
            sizes: Arg::All(self.sizes().map(Arg::from).collect()),
        })
    }

    /// Does it cut paper from a roll of that width anywhere between two lengths? One that does not say
    /// does not.
    pub fn cuts(&self, x: i32, shortest: i32, longest: i32) -> bool {
        let near =
            |span: &RangeInclusive<i32>| x.clamp(*span.start(), *span.end()).abs_diff(x) <= CLOSE;
        let cuts =
            |size: &Size| near(&size.x) && *size.y.start() <= shortest && longest <= *size.y.end();
        self.sizes.iter().any(cuts)
    }

    /// Does it keep to itself which sizes it has?
    pub fn is_mute_on_sizes(&self) -> bool {
        self.sizes.is_empty()
    }

    /// The sizes in millimetres, for the eye: `62 x 100`.
    pub fn sizes(&self) -> impl Iterator<Item = Says> {
        self.sizes.iter().map(Size::says)
    }
}

impl Size {
    /// In millimetres.
    pub fn says(&self) -> Says {
        let millimetres = |hundredths: &i32| Decimal::new(i64::from(*hundredths), 2);
        let one = |span: &RangeInclusive<i32>| {
            let (least, most) = (millimetres(span.start()), millimetres(span.end()));
            match least == most {
                true => Arg::from(least),
                false => Arg::from(SizeSays::Span { least, most }),
            }
        };
        SizeSays::Is {
            across: one(&self.x),
            along: one(&self.y),
        }
        .into()
    }
}

/// None where an end is not above nothing, or the range runs backwards: no label has such a size.
fn size(value: &IppValue) -> Option<Size> {
    let side = |name: &str| {
        member(value, name)
            .and_then(span)
            .filter(|span| *span.start() > 0 && !span.is_empty())
    };
    Some(Size {
        x: side("x-dimension")?,
        y: side("y-dimension")?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn having(sizes: &[(RangeInclusive<i32>, RangeInclusive<i32>)]) -> Capabilities {
        let size = |(x, y): &(RangeInclusive<i32>, RangeInclusive<i32>)| Size {
            x: x.clone(),
            y: y.clone(),
        };
        Capabilities {
            sizes: sizes.iter().map(size).collect(),
            ..Capabilities::default()
        }
    }

    #[test]
    fn two_inches_pass_for_51_mm_and_62_does_not() {
        let rolls = having(&[(6200..=6200, 10000..=10000), (5080..=5080, 5080..=5080)]);
        assert_eq!(rolls.size_for(5100, 5100), Ok((5080, 5080)));
        let told = |printer: &Capabilities, x, y| {
            let says = Says::from(printer.size_for(x, y).unwrap_err());
            words::Speech::default().say(&says)
        };
        let any = having(&[(2000..=10800, 1000..=30000)]);
        assert_eq!(any.size_for(5100, 5100), Ok((5100, 5100)));
        assert!(told(&any, 12000, 5100).contains("20 to 108 x 10 to 300"));
        assert_eq!(having(&[]).size_for(5100, 5100), Ok((5100, 5100)));
    }

    #[test]
    fn a_label_without_paper_says_its_size_those_that_are_there_and_what_to_do() {
        let rolls = having(&[(6200..=6200, 10000..=10000), (5080..=5080, 5080..=5080)]);
        let says = Says::from(rolls.size_for(7600, 5100).unwrap_err());
        let told = |language| words::Speech::in_language(language).say(&says);
        assert_eq!(
            told(words::Language::English),
            "The printer has no paper for this label: it needs 76 x 51 mm, and the printer says that it holds 62 x 100 and \
             50.8 x 50.8 mm. Put in a roll of 76 x 51 mm, or choose another printer or another label."
        );
        assert_eq!(
            told(words::Language::French),
            "L’imprimante n’a pas de papier pour cette étiquette\u{a0}: il lui faut 76\u{a0}×\u{a0}51\u{a0}mm, et l’imprimante dit \
             contenir 62\u{a0}×\u{a0}100 et 50,8\u{a0}×\u{a0}50,8\u{a0}mm. Mettez un rouleau de 76\u{a0}×\u{a0}51\u{a0}mm, ou choisissez une autre \
             imprimante ou une autre étiquette."
        );
    }

    #[test]
    fn a_size_that_no_label_can_have_is_not_read() {
        let of = |x: IppValue| {
            let y = IppValue::Integer(5100);
            let members = [("x-dimension", x), ("y-dimension", y)];
            size(&IppValue::Collection(
                members
                    .into_iter()
                    .map(|(name, value)| (name.try_into().unwrap(), value))
                    .collect(),
            ))
        };
        let range = |min, max| IppValue::RangeOfInteger { min, max };
        assert!(of(range(2000, 10800)).is_some());
        assert_eq!(of(range(10_879_976, 30_000)), None, "it runs backwards");
        assert_eq!(of(range(0, 10800)), None);
        assert_eq!(of(IppValue::Integer(i32::MIN)), None);
    }

    #[test]
    fn labels_are_laid_out_on_the_printers_own_dots() {
        let of = |resolutions: &[i32]| {
            Capabilities {
                resolutions: resolutions.to_vec(),
                ..Capabilities::default()
            }
            .dpi()
        };
        assert_eq!(of(&[203]), Some(203));
        assert_eq!(of(&[300]), Some(300));
        assert_eq!(of(&[600]), Some(300));
        assert_eq!(of(&[180]), None);
    }
}
