//! What a scanner sent or a person typed, and which of our labels it names.

use crate::code::{LotCode, NotACode};
use crate::gs1;

/// What a text names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scanned {
    /// A lot of this kitchen, and perhaps one of its packs.
    Lot {
        /// The lot's code.
        code: LotCode,
        /// The pack's number, where it was given.
        pack: Option<u32>,
    },
    /// An address that is not this kitchen's: another kitchen's label.
    Elsewhere(String),
    /// Nothing of ours.
    Unreadable(NotACode),
}

/// Reads a bare code, `CODE/N`, an address of this kitchen, a GS1 Digital Link of this kitchen, or a
/// GS1 element string with our code as its lot. `ours` are the addresses that its labels hold, and once held.
pub fn read(text: &str, ours: &[impl AsRef<str>]) -> Scanned {
    let text = gs1::strip_symbology(text.trim());
    if let Some(rest) = address(text) {
        let mut found = Scanned::Elsewhere(text.to_owned());
        for public_url in ours {
            match read_address(rest, public_url.as_ref()) {
                Some(lot @ Scanned::Lot { .. }) => return lot,
                Some(read) => found = read,
                None => {}
            }
        }
        return found;
    }
    let element_string =
        text.starts_with('(') || text.starts_with(|first: char| first.is_ascii_digit());
    if let Some(elements) = gs1::read(text).ok().filter(|_| element_string) {
        // 91 is for a firm's own use: our code in GS1's form where there is no GTIN (standards 1.4).
        return match elements.lot().or_else(|| elements.value("91")) {
            Some(lot) => numbered(lot, elements.value("21")),
            None => Scanned::Unreadable(NotACode::Pattern),
        };
    }
    match text.split_once('/') {
        Some((code, pack)) => numbered(code, Some(pack)),
        None => match numbered(text, None) {
            Scanned::Unreadable(why) => with_pack(text).unwrap_or(Scanned::Unreadable(why)),
            lot => lot,
        },
    }
}

/// A phone keeps its slash on another page of keys: `CODE 3` and `CODE-3` are that pack, where the rest is a whole code.
fn with_pack(text: &str) -> Option<Scanned> {
    let (code, pack) = text.rsplit_once([' ', '-'])?;
    let is_number = pack.len() <= 4 && pack.bytes().all(|byte| byte.is_ascii_digit());
    let pack = pack.parse().ok().filter(|_| is_number)?;
    let code = LotCode::read(code).ok()?;
    let pack = Some(pack);
    Some(Scanned::Lot { code, pack })
}

/// A part of a code that was cut short, as codes are written; nothing where the text is none. A word without a figure
/// is the name of something, and what is as long as a code is one that was misread.
pub fn part(text: &str) -> Option<String> {
    let kept = text
        .trim()
        .chars()
        .filter(|letter| !matches!(letter, '-' | ' '));
    let written = kept.map(|letter| match letter.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        other => other,
    });
    let part: String = written.collect();
    let fits = part
        .bytes()
        .all(|byte| byte.is_ascii_digit() || byte.is_ascii_uppercase());
    let has_figure = part.bytes().any(|byte| byte.is_ascii_digit());
    (fits && has_figure && (SHORTEST_PART..LONGEST_PART).contains(&part.len())).then_some(part)
}

/// Fewer letters are in too many codes.
const SHORTEST_PART: usize = 3;

/// A whole code has as many, or one less where its farm has two letters.
const LONGEST_PART: usize = 12;

fn numbered(code: &str, pack: Option<&str>) -> Scanned {
    // Our own serial numbers repeat the lot: `LOT-12`.
    let own = |pack: &str| {
        let number = pack
            .strip_prefix(code)
            .and_then(|rest| rest.strip_prefix('-'));
        number.unwrap_or(pack).to_owned()
    };
    let pack = pack.map(own);
    let pack = match pack.map(|pack| pack.trim().parse::<u32>()) {
        None => None,
        Some(Ok(number)) => Some(number),
        Some(Err(_)) => return Scanned::Unreadable(NotACode::Pattern),
    };
    match LotCode::read(code) {
        Ok(code) => Scanned::Lot { code, pack },
        Err(reason) => Scanned::Unreadable(reason),
    }
}

/// What follows the scheme, if the text is a web address.
fn address(text: &str) -> Option<&str> {
    let (scheme, rest) = text.split_once("://")?;
    (scheme.eq_ignore_ascii_case("https") || scheme.eq_ignore_ascii_case("http")).then_some(rest)
}

/// What an address names, if it is one of ours.
fn read_address(rest: &str, public_url: &str) -> Option<Scanned> {
    let ours = address(public_url)
        .unwrap_or(public_url)
        .trim_end_matches('/');
    let start = rest.get(..ours.len())?;
    let path = start
        .eq_ignore_ascii_case(ours)
        .then(|| &rest[ours.len()..])?;
    let path = path.split(['?', '#']).next().unwrap_or("");
    let mut parts = path.split('/');
    if parts.next() != Some("") {
        return None; // another host whose name merely begins like ours
    }
    let parts: Vec<&str> = parts.collect();
    Some(match parts.as_slice() {
        [l, code] if l.eq_ignore_ascii_case("l") => numbered(code, None),
        [l, code, pack] if l.eq_ignore_ascii_case("l") => numbered(code, Some(pack)),
        // GS1 Digital Link (standards 2): lot and serial qualify the GTIN, in this order.
        ["01", _, "10", code] | ["01", _, "22", _, "10", code] => numbered(code, None),
        ["01", _, "10", code, "21", pack] | ["01", _, "22", _, "10", code, "21", pack] => {
            numbered(code, Some(pack))
        }
        _ => Scanned::Unreadable(NotACode::Pattern),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn shown(text: &str) -> String {
        let ours = [
            "https://trace.cinderhook.example",
            "https://once.cinderhook.example/labels",
        ];
        match read(text, &ours) {
            Scanned::Lot { code, pack: None } => code.shown(),
            Scanned::Lot {
                code,
                pack: Some(pack),
            } => format!("{}/{pack}", code.shown()),
            Scanned::Elsewhere(_) => "elsewhere".into(),
            Scanned::Unreadable(reason) => format!("{reason:?}"),
        }
    }

    #[test]
    fn a_pack_is_named_without_a_slash_as_well() {
        for text in ["BRC26159A006 3", "brc-26159-a00-6-3", "brc 26159 a00 6 3"] {
            assert_eq!(shown(text), "BRC-26159-A00-6/3", "{text}");
        }
        // What follows has to be a number of a pack, and the rest a whole code.
        assert_eq!(shown("BRC26159A006 x"), "Pattern");
        assert_eq!(shown("BRC26159A00 7 3"), "Pattern");
    }

    #[test]
    fn every_spelling_names_the_same_lot() {
        for text in [
            "BRC26159A006",
            "brc-26159-a00-6",
            "]C0BRC26159A006",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/L/BRC26159A006",
            "https://trace.cinderhook.example/l/brc-26159-aoo-6?x=1",
            "https://trace.cinderhook.example/01/09521234543213/10/BRC26159A006?17=260727",
            "(01)09521234543213(17)260727(10)BRC26159A006",
            "]C101095212345432131726072710BRC26159A006",
            "01095212345432131726072710BRC26159A006\u{1d}",
            "]C191BRC26159A006",
            "HTTPS://ONCE.CINDERHOOK.EXAMPLE/LABELS/L/BRC26159A006",
            "HTTPS://TRACE.CINDERHOOK.EXAMPLE/01/09521234543213/10/BRC26159A006?17=260727",
        ] {
            assert_eq!(shown(text), "BRC-26159-A00-6", "{text}");
        }
    }

    #[test]
    fn packs() {
        for text in [
            "BRC26159A006/12",
            "brc-26159-a00-6 / 12",
            "https://TRACE.cinderhook.example/L/BRC26159A006/12",
            "https://trace.cinderhook.example/01/09521234543213/10/BRC26159A006/21/12",
            "(01)09521234543213(10)BRC26159A006(21)12",
        ] {
            assert_eq!(shown(text), "BRC-26159-A00-6/12", "{text}");
        }
        assert_eq!(shown("BRC26159A006/x"), "Pattern");
    }

    #[test]
    fn a_code_that_was_cut_short_is_a_part_of_one() {
        for (text, expected) in [
            ("brc-26159-aoo", Some("BRC26159A00")),
            (" a00-6 ", Some("A006")),
            ("BRC26159A006", None),
            ("ham", None),
            ("A0", None),
            ("100%", None),
            ("BRC26159A0\u{e9}", None),
        ] {
            assert_eq!(part(text).as_deref(), expected, "{text}");
        }
    }

    #[test]
    fn others() {
        assert_eq!(
            shown("https://trace.cinderhook.example.org/L/BRC26159A006"),
            "elsewhere"
        );
        for other in [
            "https://other.example/L/BRC26159A006",
            "https://once.cinderhook.example/L/BRC26159A006",
        ] {
            assert_eq!(shown(other), "elsewhere", "{other}");
        }
        assert_eq!(shown("BRC26159A007"), "CheckCharacter");
        assert_eq!(shown("ham"), "Pattern");
        assert_eq!(shown("https://trace.cinderhook.example/about"), "Pattern");
    }

    proptest! {
        #[test]
        fn nothing_scanned_panics(text in any::<String>()) {
            let _ = read(&text, &["https://trace.cinderhook.example"]);
        }
    }
}
