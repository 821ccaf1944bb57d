//! Code 128 knows several ways to write the same text: this finds the shortest.

use domain::gs1::GS;

/// Function 1: at the start it makes the code a GS1-128, inside it parts two elements.
const FUNCTION_1: char = '\u{179}';
const START_B: char = '\u{181}';
const START_C: char = '\u{106}';

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Set {
    /// Every printable character.
    B,
    /// Two digits as one symbol.
    C,
}

/// What to do at one place of the text.
#[derive(Debug, Clone, Copy)]
struct Best {
    /// How many symbols from here to the end.
    symbols: usize,
    /// In which set to write the next symbol.
    set: Set,
}

/// How many characters the next symbol takes in that set, if it can be written there at all.
///
/// Set C never takes a single digit, so a function 1 never falls between the two digits of a pair:
/// `barcoders` would take that, and print the two in another order.
fn step(text: &[u8], set: Set) -> Option<usize> {
    match (text, set) {
        ([first, ..], _) if char::from(*first) == GS => Some(1),
        ([b' '..=b'~', ..], Set::B) => Some(1),
        ([b'0'..=b'9', b'0'..=b'9', ..], Set::C) => Some(2),
        _ => None,
    }
}

/// A printable text with the marks that `barcoders` takes for a change of set and for function 1
/// ([`GS`] in the text), in as few symbols as can be. A change of set costs a symbol.
///
/// Set A is for control characters, which we never print: without them it is no shorter than B.
pub(crate) fn spell(text: &[u8]) -> String {
    const END: Best = Best {
        symbols: 0,
        set: Set::B,
    };
    // best[i][set]: from character i on, standing in that set.
    let mut best = vec![[END; 2]; text.len() + 1];
    for i in (0..text.len()).rev() {
        let symbols = |set: Set| {
            let rest = step(&text[i..], set).map(|step| best[i + step][set as usize].symbols);
            rest.map_or(usize::MAX / 2, |rest| 1 + rest)
        };
        let (b, c) = (symbols(Set::B), symbols(Set::C));
        best[i] = [choose(b, c + 1), choose(b + 1, c)];
    }
    let [b, c] = best[0];
    let mut set = if b.symbols <= c.symbols {
        Set::B
    } else {
        Set::C
    };
    let mut spelt = String::from(mark(set));
    let mut i = 0;
    while i < text.len() {
        let next = best[i][set as usize].set;
        if next != set {
            set = next;
            spelt.push(mark(set));
        }
        let step = step(&text[i..], set).unwrap_or(1);
        let written = text[i..i + step].iter().map(|byte| char::from(*byte));
        spelt.extend(written.map(|c| if c == GS { FUNCTION_1 } else { c }));
        i += step;
    }
    spelt
}

fn choose(b: usize, c: usize) -> Best {
    if b <= c {
        Best {
            symbols: b,
            set: Set::B,
        }
    } else {
        Best {
            symbols: c,
            set: Set::C,
        }
    }
}

fn mark(set: Set) -> char {
    match set {
        Set::B => START_B,
        Set::C => START_C,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn readable(text: &str) -> String {
        spell(text.as_bytes())
            .replace(START_B, "<B>")
            .replace(START_C, "<C>")
            .replace(FUNCTION_1, "<1>")
    }

    #[test]
    fn spellings() {
        for (text, spelt) in [
            ("BRC26159A006", "<B>BRC26159A006"),
            ("BRC26159A006/12", "<B>BRC26159A006/12"),
            ("123456", "<C>123456"),
            ("12345", "<B>1<C>2345"),
            ("AB123456", "<B>AB<C>123456"),
            ("1234AB", "<C>1234<B>AB"),
            ("12", "<C>12"),
            ("A12B", "<B>A12B"),
            // The odd digit before a separator is written in set B.
            ("\u{1d}1\u{1d}2", "<B><1>1<1>2"),
            ("\u{1d}1234\u{1d}56", "<C><1>1234<1>56"),
            ("\u{1d}10123\u{1d}1112", "<B><1>1<C>0123<1>1112"),
        ] {
            assert_eq!(readable(text), spelt);
        }
    }

    /// What a spelling says and how many symbols it takes, read as the standard has it: in set C
    /// digits go in pairs that nothing may part.
    fn understood(spelt: &str) -> (String, usize) {
        let (mut text, mut symbols, mut set) = (String::new(), 0, ' ');
        let mut rest = spelt.chars();
        while let Some(character) = rest.next() {
            symbols += 1;
            match character {
                START_B | START_C => set = character,
                FUNCTION_1 => text.push(GS),
                digit if set == START_C => {
                    let second = rest.next().unwrap();
                    assert!(digit.is_ascii_digit() && second.is_ascii_digit(), "{spelt}");
                    text.extend([digit, second]);
                }
                other => text.push(other),
            }
        }
        (text, symbols)
    }

    /// The fewest symbols by trying everything, set A included.
    fn fewest(text: &[u8], set: char, changed: bool) -> usize {
        if text.is_empty() {
            return 0;
        }
        let write = |step: usize| 1 + fewest(&text[step..], set, false);
        let separator = text[0] == 0x1d;
        let here = match set {
            'C' if separator => write(1),
            'C' if text.len() > 1 && text[..2].iter().all(u8::is_ascii_digit) => write(2),
            'A' if separator || !text[0].is_ascii_lowercase() => write(1),
            'B' => write(1),
            _ => 1_000,
        };
        let others = ['A', 'B', 'C'].into_iter().filter(|other| *other != set);
        let changes = others.map(|other| 1 + fewest(text, other, true));
        here.min(if changed {
            1_000
        } else {
            changes.min().unwrap()
        })
    }

    proptest! {
        #[test]
        fn none_is_shorter(text in "[Aa0-3\u{1d}]{1,9}") {
            let (says, symbols) = understood(&spell(text.as_bytes()));
            prop_assert_eq!(&says, &text);
            let best = ['A', 'B', 'C'].map(|start| 1 + fewest(text.as_bytes(), start, true));
            prop_assert_eq!(symbols, best.into_iter().min().unwrap());
        }

        #[test]
        fn nothing_is_lost(text in "[ -~\u{1d}]{1,48}") {
            prop_assert_eq!(understood(&spell(text.as_bytes())).0, text);
        }
    }
}
