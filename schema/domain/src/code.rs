//! Lot codes: short, speakable, typed with wet fingers, safe in every barcode.
//!
//! `BRC-26159-A16-R` is farm (or kitchen), year and day of the year, the animal's letter, a running
//! number in two base-32 digits, and a check character. Hyphens are only for people to read.

use crate::check_char::check_character;
use chrono::{Datelike, NaiveDate};
use std::fmt;

/// Digits and capital letters without the look-alikes I, L, O, U (`standards` 6, Crockford).
const BASE_32: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// How many running numbers two base-32 digits hold.
pub const NUMBERS: u32 = 32 * 32;

/// The letters of a series, then the digits: the order in which animals of a day are lettered.
pub const LETTERS: &[u8; 32] = b"ABCDEFGHJKMNPQRSTVWXYZ0123456789";

/// Two or three letters that begin a lot code: a farm's or the kitchen's own. No look-alikes.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HouseCode(String);

impl HouseCode {
    /// Reads a code as it must be written: 2 or 3 capital letters without I, L, O, U.
    pub fn parse(text: &str) -> Option<HouseCode> {
        let fits = matches!(text.len(), 2 | 3)
            && text
                .bytes()
                .all(|byte| byte.is_ascii_uppercase() && BASE_32.contains(&byte));
        fits.then(|| HouseCode(text.to_owned()))
    }

    /// The letters.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for HouseCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A lot's code, whole and with a right check character. It cannot be made in any other way.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LotCode(String);

/// Why a text is not a lot code.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NotACode {
    /// It does not look like one of our codes at all.
    Pattern,
    /// It looks like one, but the check character says that something was misread.
    CheckCharacter,
}

impl LotCode {
    /// The code number `number` (0 to 1023) under `stem` (house code, year, day, letter), or `None`
    /// where its check character would be a look-alike: that number is skipped.
    pub(crate) fn assign(stem: &str, number: u32) -> Option<LotCode> {
        let (high, low) = (
            BASE_32[(number / 32) as usize],
            BASE_32[(number % 32) as usize],
        );
        let body = format!("{stem}{}{}", high as char, low as char);
        let check = check_character(&body)?;
        BASE_32
            .contains(&(check as u8))
            .then(|| LotCode(format!("{body}{check}")))
    }

    /// Reads a code as people type and say it: any case, spaces and hyphens anywhere, O for 0,
    /// I and L for 1. This mapping is for our codes only.
    pub fn read(text: &str) -> Result<LotCode, NotACode> {
        let code: String = text
            .trim()
            .chars()
            .filter(|letter| !letter.is_whitespace() && *letter != '-')
            .map(|letter| match letter.to_ascii_uppercase() {
                'O' => '0',
                'I' | 'L' => '1',
                other => other,
            })
            .collect();
        if !matches_pattern(&code) {
            return Err(NotACode::Pattern);
        }
        let (body, check) = code.split_at(code.len() - 1);
        match check_character(body) {
            Some(right) if check.starts_with(right) => Ok(LotCode(code)),
            _ => Err(NotACode::CheckCharacter),
        }
    }

    /// Without hyphens, as in codes and addresses: `BRC26159A16R`.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// With hyphens, for people to read: `BRC-26159-A16-R`.
    pub fn shown(&self) -> String {
        let house = self.0.len() - 9;
        let (day, number) = (house + 5, house + 8);
        format!(
            "{}-{}-{}-{}",
            &self.0[..house],
            &self.0[house..day],
            &self.0[day..number],
            &self.0[number..]
        )
    }
}

impl fmt::Display for LotCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

fn matches_pattern(code: &str) -> bool {
    let bytes = code.as_bytes();
    if !matches!(bytes.len(), 11 | 12) || !code.is_ascii() {
        return false;
    }
    let (house, rest) = bytes.split_at(bytes.len() - 9);
    let letter_ok = |byte: &u8| byte.is_ascii_uppercase() && BASE_32.contains(byte);
    let day = code[house.len() + 2..house.len() + 5]
        .parse::<u32>()
        .unwrap_or(0);
    house.iter().all(letter_ok)
        && rest[..5].iter().all(u8::is_ascii_digit)
        && (1..=366).contains(&day)
        && rest[5..].iter().all(|byte| BASE_32.contains(byte))
}

/// House code, year and day of the year: `BRC26159`. The century is not on the label.
pub fn day_stem(house: &HouseCode, day: NaiveDate) -> String {
    format!(
        "{house}{:02}{:03}",
        day.year().rem_euclid(100),
        day.ordinal()
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn code(stem: &str, number: u32) -> String {
        LotCode::assign(stem, number).map_or("skipped".into(), |code| code.shown())
    }

    #[test]
    fn codes_of_the_contract() {
        // The examples of the contract page.
        assert_eq!(code("BRC26159A", 0), "BRC-26159-A00-6");
        assert_eq!(code("BRC26159A", 3), "BRC-26159-A03-0");
        assert_eq!(code("BRC26159A", 38), "BRC-26159-A16-R");
    }

    #[test]
    fn reads_what_people_type() {
        let whole = LotCode::read("BRC-26159-A00-6").unwrap();
        for typed in [
            "brc26159a006",
            " BRC 26159 A00 6 ",
            "BRC-26159-AOO-6",
            "b-r-c-26i59-aOo6",
            "BRC-26L59-A00-6",
        ] {
            assert_eq!(LotCode::read(typed).as_ref(), Ok(&whole), "{typed}");
        }
    }

    #[test]
    fn refuses_what_it_must() {
        assert_eq!(
            LotCode::read("BRC-26159-A00-7"),
            Err(NotACode::CheckCharacter)
        );
        for text in [
            "",
            "BRC",
            "BRC-26159-A00",
            "BRC-26400-A00-6",
            "1RC-26159-A00-6",
            "BRC-26159-A00-66",
            "ÀRC26159A006",
        ] {
            assert_eq!(LotCode::read(text), Err(NotACode::Pattern), "{text}");
        }
    }

    proptest! {
        #[test]
        fn assigned_codes_are_well_formed_and_read_back(
            house in "[A-HJKMNP-TV-Z]{2,3}", day in 1u32..=366, letter in 0usize..32, number in 0..NUMBERS,
        ) {
            let stem = format!("{house}26{day:03}{}", LETTERS[letter] as char);
            if let Some(code) = LotCode::assign(&stem, number) {
                prop_assert!(!code.as_str().contains(['I', 'L', 'O', 'U', '*', '-']));
                prop_assert!(matches!(code.as_str().len(), 11 | 12));
                prop_assert_eq!(&LotCode::read(&code.shown().to_lowercase()).unwrap(), &code);
            }
        }

        #[test]
        fn reading_never_panics(text in "\\PC{0,40}") {
            let _ = LotCode::read(&text);
        }
    }
}
