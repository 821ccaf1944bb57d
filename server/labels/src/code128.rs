//! Code 128, plain and as GS1-128.

use barcoders::sym::code128::Code128;
use domain::gs1::{GS, Message};

use crate::bars::Bars;
use crate::length::{Dpi, Length};
use crate::refusal::{CodeKind, Refusal};
use crate::spelling::spell;

/// White left and right of the bars, in modules (standards 1.3).
pub const QUIET: i64 = 10;

/// Longest payload (standards 1.3: the limit for GS1-128, kept here too).
const LONGEST: usize = 48;

/// Widest GS1-128, white border included (standards 1.3).
pub const WIDEST_GS1: Length = Length::from_um(165_100);

/// Dots of the thinnest bar that still scans: 0.25 mm (trade 5, standards 1.3).
///
/// For the kitchen's own shelves and counter. Cases that travel through other firms' sorting
/// machines need 0.495 mm (standards 1.3); no label of ours is for those.
fn fewest_dots(dpi: Dpi) -> i64 {
    match dpi {
        Dpi::D203 => 2,
        Dpi::D300 => 3,
    }
}

/// Dots of the thinnest bar that is still read when the label is worn: 0.375 and 0.339 mm, as of the square code
/// (trade 5). At two dots 6 of 33 worn labels were read.
pub(crate) fn dots_when_worn(dpi: Dpi) -> i64 {
    match dpi {
        Dpi::D203 => 3,
        Dpi::D300 => 4,
    }
}

/// Any printable text.
pub(crate) fn plain(payload: &str, dpi: Dpi) -> Result<Bars, Refusal> {
    let code = CodeKind::Code128;
    if payload.is_empty() {
        return Err(Refusal::EmptyCode { code });
    }
    if let Some(character) = payload.chars().find(|c| !matches!(c, ' '..='~')) {
        return Err(Refusal::CodeCharacter {
            code,
            character,
            payload: payload.into(),
        });
    }
    if payload.len() > LONGEST {
        return Err(Refusal::CodeTooLong {
            code,
            payload: payload.into(),
        });
    }
    bars(code, payload.to_owned(), payload, dpi)
}

/// A GS1 message: function 1 at its start tells scanners how to read it.
pub(crate) fn gs1(message: &Message, dpi: Dpi) -> Result<Bars, Refusal> {
    let payload = message.raw();
    let marked = format!("{GS}{payload}");
    let mut bars = bars(CodeKind::Gs1128, payload, &marked, dpi)?;
    bars.most_dots = Some(dpi.whole_dots(WIDEST_GS1) / bars.across());
    Ok(bars)
}

fn bars(kind: CodeKind, payload: String, text: &str, dpi: Dpi) -> Result<Bars, Refusal> {
    match Code128::new(spell(text.as_bytes())) {
        Ok(symbol) => Ok(Bars {
            kind,
            payload,
            modules: symbol.encode(),
            quiet: (QUIET, QUIET),
            fewest_dots: fewest_dots(dpi),
            most_dots: None,
        }),
        Err(_) => Err(Refusal::CodeTooLong {
            code: kind,
            payload,
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Area;

    fn across(payload: &str) -> i64 {
        plain(payload, Dpi::D203).unwrap().across()
    }

    #[test]
    fn eleven_modules_a_symbol_and_thirteen_for_the_stop() {
        // standards 1.3: 12 characters take 187 modules with the white border.
        assert_eq!(across("26P0718-BEL7"), 187);
        assert_eq!(across("BRC26159A006"), 187);
        let all: String = (' '..='~').collect();
        for part in all.as_bytes().chunks(40) {
            let part = std::str::from_utf8(part).unwrap();
            assert!(plain(part, Dpi::D203).is_ok(), "{part:?}");
        }
    }

    #[test]
    fn messages_are_as_long_as_elsewhere() {
        // standards 1.3, measured with another program's shortest spelling.
        for (message, modules) in [
            ("(01)09521234543213(10)26P0718-BEL7", 297),
            ("(01)09521234543213(17)260727(10)26P0718-BEL7", 341),
            (
                "(01)99521234543216(3103)001250(17)260727(10)26P0718-BEL7",
                396,
            ),
            ("(91)26P0718-01-BEL7K", 253),
        ] {
            let message = Message::parse(message).unwrap();
            assert_eq!(gs1(&message, Dpi::D300).unwrap().across(), modules);
        }
    }

    #[test]
    fn never_wider_than_the_standard_has_it() {
        let message = "(01)99521234543216(3103)001250(17)260727(10)26P0718-BEL7";
        let message = Message::parse(message).unwrap();
        let wall = Area {
            x: Length::ZERO,
            y: Length::ZERO,
            w: Length::mm(300.0),
            h: Length::mm(20.0),
        };
        for dpi in [Dpi::D203, Dpi::D300] {
            let code = gs1(&message, dpi).unwrap().place(wall, dpi).unwrap();
            assert!(code.bounds.w <= WIDEST_GS1, "{}", code.bounds.w);
            let next = dpi.dots((code.dots + 1) * (code.modules + 2 * QUIET));
            assert!(next > WIDEST_GS1, "could be wider");
            let bars = plain("26P0718-BEL7", dpi).unwrap();
            assert!(bars.place(wall, dpi).unwrap().bounds.w > WIDEST_GS1);
        }
    }

    #[test]
    fn what_cannot_be_held_is_said() {
        let refused = |payload: &str| plain(payload, Dpi::D203).unwrap_err();
        assert!(matches!(refused(""), Refusal::EmptyCode { .. }));
        assert!(matches!(
            refused("LOT é"),
            Refusal::CodeCharacter {
                character: 'é', ..
            }
        ));
        // A separator makes no sense in a plain code.
        assert!(matches!(refused("A\u{1d}B"), Refusal::CodeCharacter { .. }));
        assert!(matches!(
            refused(&"A".repeat(49)),
            Refusal::CodeTooLong { .. }
        ));
    }
}
