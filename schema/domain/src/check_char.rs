//! The check character of a lot code: ISO/IEC 7064 MOD 37-2 (`standards` 6).
//!
//! It catches every single wrong character and every swap of two, adjacent or not.

const ALPHABET: &[u8; 37] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

/// The check character over `0-9A-Z`, or `None` where another character is met.
///
/// The answer may be `*`.
pub fn check_character(text: &str) -> Option<char> {
    let mut sum = 0;
    for byte in text.bytes() {
        let value = ALPHABET[..36].iter().position(|known| *known == byte)?;
        sum = (sum + value) * 2 % 37;
    }
    Some(ALPHABET[(37 + 1 - sum) % 37] as char)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn check(text: &str, expected: char) {
        assert_eq!(check_character(text), Some(expected), "{text}");
    }

    #[test]
    fn published_vectors() {
        // standards 6, row MOD 37-2.
        check("G123498654321", 'H');
        check("G123489654321", 'Y');
    }

    #[test]
    fn vectors_two_implementations_agree_on() {
        // standards 6, "Own vectors".
        check("26P0718", '2');
        check("P26071801", '8');
        check("26P071801BEL", 'G');
        check("LOT20260718A", 'N');
    }

    #[test]
    fn refuses_what_it_has_no_value_for() {
        assert_eq!(check_character("AB-1"), None);
        assert_eq!(check_character("é"), None);
    }

    proptest! {
        #[test]
        fn catches_every_single_error_and_every_swap(
            text in "[0-9A-Z]{2,14}", at in any::<prop::sample::Index>(),
            other in any::<prop::sample::Index>(), wrong in "[0-9A-Z]",
        ) {
            let whole: Vec<char> = text.chars().chain(check_character(&text)).collect();
            let (at, other) = (at.index(text.len()), other.index(text.len()));
            let valid = |chars: &[char]| {
                let (check, body) = chars.split_last().unwrap();
                check_character(&body.iter().collect::<String>()) == Some(*check)
            };
            let mut substituted = whole.clone();
            substituted[at] = wrong.chars().next().unwrap();
            prop_assert_eq!(valid(&substituted), substituted == whole);
            let mut swapped = whole.clone();
            swapped.swap(at, other);
            prop_assert_eq!(valid(&swapped), swapped == whole);
        }
    }
}
