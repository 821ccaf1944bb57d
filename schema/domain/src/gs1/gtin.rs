//! Trade item numbers that GS1 gave to somebody.

use std::fmt;

use super::check_digit::check_digit_is_right;
use super::says::NotAGtin;

/// A global trade item number: always fourteen digits, leading zeros included.
///
/// It is a number for trade: one that is kept for use within a shop, a firm or a region does not count.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Gtin(String);

impl Gtin {
    /// Reads 8, 12, 13 or 14 digits.
    ///
    /// # Errors
    /// What keeps it from being a GTIN.
    pub fn parse(text: &str) -> Result<Gtin, NotAGtin> {
        let text = text.trim();
        if !text.bytes().all(|byte| byte.is_ascii_digit()) {
            return Err(NotAGtin::Digits);
        }
        if !matches!(text.len(), 8 | 12..=14) {
            return Err(NotAGtin::Length { length: text.len() });
        }
        if !check_digit_is_right(text) {
            return Err(NotAGtin::CheckDigit);
        }
        let digits = format!("{text:0>14}");
        if is_restricted(&digits) {
            return Err(NotAGtin::Restricted);
        }
        Ok(Gtin(digits))
    }

    /// The fourteen digits.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether it stands for goods of which no two weigh the same: it begins with 9, and its weight
    /// must be given beside it.
    pub fn is_by_weight(&self) -> bool {
        self.0.starts_with('9')
    }
}

impl fmt::Display for Gtin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// By what follows the first digit, which only gives the size of the case (`standards` 1.4).
fn is_restricted(digits: &str) -> bool {
    let item = &digits[1..];
    // A GTIN-8 within fourteen digits: five zeros more, then its own first digit.
    let short = item.strip_prefix("00000");
    match short.and_then(|eight| eight.chars().next()) {
        Some('0' | '2') => true,
        Some(_) => false,
        None => ["02", "04", "2"].iter().any(|kept| item.starts_with(kept)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gs1::check_digit;

    #[test]
    fn always_fourteen_digits() {
        for (text, digits) in [
            ("95012346", "00000095012346"),
            ("9501101531000", "09501101531000"),
            (" 09521234543213 ", "09521234543213"),
            ("99521234543216", "99521234543216"),
            ("614141000036", "00614141000036"),
        ] {
            assert_eq!(Gtin::parse(text).unwrap().as_str(), digits);
        }
    }

    #[test]
    fn what_is_none() {
        for (text, why) in [
            ("", NotAGtin::Length { length: 0 }),
            ("950123456", NotAGtin::Length { length: 9 }),
            ("952123454321x", NotAGtin::Digits),
            ("９501101531000", NotAGtin::Digits),
            ("9501101531001", NotAGtin::CheckDigit),
            ("00000000000000", NotAGtin::Restricted),
            // standards 1.4: the in-store numbers of the vectors.
            ("2000042212995", NotAGtin::Restricted),
            ("2847117012506", NotAGtin::Restricted),
        ] {
            assert_eq!(Gtin::parse(text), Err(why), "{text}");
        }
    }

    #[test]
    fn numbers_for_use_inside_a_shop() {
        // standards 1.4. A twelve-digit number is one of thirteen with a zero before it.
        for body in [
            "020000000001",
            "021234567890",
            "040000000001",
            "201234567890",
            "291234567890",
            "000000000001",
            "0123456",
            "2123456",
            "21234567890",
            "41234567890",
            "1201234567890",
            "9041234567890",
        ] {
            let number = format!("{body}{}", check_digit(body).unwrap());
            assert_eq!(Gtin::parse(&number), Err(NotAGtin::Restricted), "{number}");
        }
        for body in [
            "012345678901",
            "030000000001",
            "300000000001",
            "1952123454321",
        ] {
            let number = format!("{body}{}", check_digit(body).unwrap());
            assert!(Gtin::parse(&number).is_ok(), "{number}");
        }
    }
}
