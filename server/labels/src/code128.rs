//! Code 128: the shortest spelling of a payload, and its bars on whole printer dots.

use barcoders::sym::code128::Code128;

use crate::length::{Area, Dpi, Length};
use crate::refusal::{CodeKind, Refusal};

/// White left and right of the bars, in modules (standards 1.3).
pub const QUIET: i64 = 10;

/// Longest payload (standards 1.3: the limit for GS1-128, kept here too).
const LONGEST: usize = 48;

/// Dots of the thinnest bar that still scans: 0.25 mm (trade 5, standards 1.3).
pub(crate) fn fewest_dots(dpi: Dpi) -> i64 {
    match dpi {
        Dpi::D203 => 2,
        Dpi::D300 => 3,
    }
}

const START_B: char = '\u{181}';
const START_C: char = '\u{106}';

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Set {
    B,
    C,
}

/// A step of the spelling: how many symbols from here to the end, and in which set to write on.
#[derive(Debug, Clone, Copy)]
struct Best {
    symbols: usize,
    next: Set,
}

/// The payload with the marks that `barcoders` takes for a change of code set, in as few symbols
/// as can be: set C writes two digits as one, but each change costs one.
fn spell(payload: &[u8]) -> String {
    let pair = |i: usize| {
        payload
            .get(i..i + 2)
            .is_some_and(|two| two.iter().all(u8::is_ascii_digit))
    };
    // best[i][set]: from character i on, standing in that set.
    let mut best = vec![
        [Best {
            symbols: 0,
            next: Set::B
        }; 2];
        payload.len() + 1
    ];
    for i in (0..payload.len()).rev() {
        let in_b = 1 + best[i + 1][Set::B as usize].symbols;
        let in_c = if pair(i) {
            1 + best[i + 2][Set::C as usize].symbols
        } else {
            usize::MAX / 2
        };
        let choose = |b: usize, c: usize| {
            if b <= c {
                Best {
                    symbols: b,
                    next: Set::B,
                }
            } else {
                Best {
                    symbols: c,
                    next: Set::C,
                }
            }
        };
        best[i] = [choose(in_b, in_c + 1), choose(in_b + 1, in_c)];
    }
    let (b, c) = (best[0][Set::B as usize], best[0][Set::C as usize]);
    let mut set = if b.symbols <= c.symbols {
        Set::B
    } else {
        Set::C
    };
    let mark = |set| if set == Set::B { START_B } else { START_C };
    let mut spelt = String::from(mark(set));
    let mut i = 0;
    while i < payload.len() {
        let next = best[i][set as usize].next;
        if next != set {
            set = next;
            spelt.push(mark(set));
        }
        let step = if set == Set::C { 2 } else { 1 };
        spelt.extend(payload[i..i + step].iter().map(|byte| char::from(*byte)));
        i += step;
    }
    spelt
}

/// Bars and gaps as ones and noughts, without the white border.
fn modules(payload: &str) -> Result<Vec<u8>, Refusal> {
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
    let too_long = || Refusal::CodeTooLong {
        code,
        payload: payload.into(),
    };
    if payload.len() > LONGEST {
        return Err(too_long());
    }
    let bars = Code128::new(spell(payload.as_bytes())).map_err(|_| too_long())?;
    Ok(bars.encode())
}

/// Places the code in the middle of its area, as wide as whole dots allow.
pub(crate) fn place(payload: &str, area: Area, dpi: Dpi) -> Result<crate::Code, Refusal> {
    let bars = modules(payload)?;
    let modules = bars.len() as i64;
    let across = modules + 2 * QUIET;
    let (left, top) = (dpi.first_dot(area.x), dpi.first_dot(area.y));
    let room = dpi.whole_dots(area.right()) - left;
    let dots = room / across;
    if dots < fewest_dots(dpi) {
        return Err(Refusal::CodeTooLarge {
            code: CodeKind::Code128,
            payload: payload.into(),
            needed: dpi.dots(across * fewest_dots(dpi)),
            had: area.w,
        });
    }
    let left = left + (room - across * dots) / 2;
    let (y, bottom) = (dpi.dots(top), dpi.dots(dpi.whole_dots(area.bottom())));
    let edge = |module: i64| dpi.dots(left + (QUIET + module) * dots);
    let mut dark = Vec::new();
    let mut at = 0;
    for run in bars.chunk_by(|a, b| a == b) {
        let from = at;
        at += run.len() as i64;
        if run[0] == 1 {
            dark.push(Area {
                x: edge(from),
                y,
                w: edge(at) - edge(from),
                h: bottom - y,
            });
        }
    }
    let x = dpi.dots(left);
    let w: Length = dpi.dots(left + across * dots) - x;
    let bounds = Area {
        x,
        y,
        w,
        h: bottom - y,
    };
    Ok(crate::Code {
        kind: CodeKind::Code128,
        payload: payload.into(),
        bounds,
        dots,
        modules,
        dark,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn readable(payload: &str) -> String {
        spell(payload.as_bytes())
            .replace(START_B, "<B>")
            .replace(START_C, "<C>")
    }

    #[test]
    fn spelling_is_the_shortest() {
        for (payload, spelt) in [
            ("BRC26159A006", "<B>BRC26159A006"),
            ("BRC26159A006/12", "<B>BRC26159A006/12"),
            ("123456", "<C>123456"),
            ("12345", "<B>1<C>2345"),
            ("AB123456", "<B>AB<C>123456"),
            ("1234AB", "<C>1234<B>AB"),
            ("12", "<C>12"),
            ("A12B", "<B>A12B"),
        ] {
            assert_eq!(readable(payload), spelt);
        }
    }

    #[test]
    fn eleven_modules_a_symbol_and_thirteen_for_the_stop() {
        // standards 1.3: 12 characters take 187 modules with the white border, 167 without.
        assert_eq!(modules("BRC26159A006").unwrap().len(), 167);
        assert_eq!(
            modules("26P0718-BEL7").unwrap().len() as i64 + 2 * QUIET,
            187
        );
        let all: String = (' '..='~').collect();
        for part in all.as_bytes().chunks(40) {
            assert!(
                modules(std::str::from_utf8(part).unwrap()).is_ok(),
                "{part:?}"
            );
        }
    }

    #[test]
    fn what_cannot_be_held_is_said() {
        assert!(matches!(modules(""), Err(Refusal::EmptyCode { .. })));
        assert!(matches!(
            modules("LOT é"),
            Err(Refusal::CodeCharacter {
                character: 'é', ..
            })
        ));
        assert!(matches!(
            modules(&"A".repeat(49)),
            Err(Refusal::CodeTooLong { .. })
        ));
    }
}
