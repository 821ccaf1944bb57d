//! Secrets and how they are kept: what a machine remembers is long and hashed fast, what a person remembers
//! is short and hashed slowly.

use super::says::WhoSays;
use crate::world;
use argon2::{Algorithm, Argon2, Params, Version};
use sha2::{Digest, Sha256};

/// The hash of a long secret, as it is kept.
pub type Hash = [u8; 32];

/// Letters that nobody mistakes for another; of each there are 5 bits.
const LETTERS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";
/// What a token begins with, so that it is known for one wherever it turns up.
pub const TOKEN: &str = "gambrel_";
/// Memory in KiB, passes, lanes: the least that the OWASP cheat sheet gives for argon2id.
const COST: (u32, u32, u32) = (19_456, 2, 1);

/// A new secret for a session or a token, and its hash.
///
/// # Errors
/// In words: the machine has no source of chance.
pub fn secret() -> Result<(String, Hash), String> {
    let bytes: [u8; 25] = world::chance()?;
    let text: String = bytes
        .iter()
        .flat_map(|byte| [byte >> 3, byte & 7])
        .map(letter)
        .collect();
    let hash = hash(&text);
    Ok((text, hash))
}

/// A word that signs somebody in once, as people can read it out: `7K2M-9QXT-4HNB`; and its hash.
///
/// # Errors
/// In words: the machine has no source of chance.
pub fn word() -> Result<(String, Hash), String> {
    let bytes: [u8; 12] = world::chance()?;
    let letters: Vec<char> = bytes.iter().map(|byte| letter(*byte)).collect();
    let parts: Vec<String> = letters
        .chunks(4)
        .map(|part| part.iter().collect())
        .collect();
    let word = parts.join("-");
    let hash = hash_of_word(&word);
    Ok((word, hash))
}

fn letter(byte: u8) -> char {
    char::from(LETTERS[usize::from(byte % 32)])
}

/// The hash of a long secret.
pub fn hash(text: &str) -> Hash {
    Sha256::digest(text.as_bytes()).into()
}

/// The hash of a word, however it was typed.
pub fn hash_of_word(text: &str) -> Hash {
    let typed = text.chars().filter(char::is_ascii_alphanumeric);
    let read = typed.map(|letter| match letter.to_ascii_uppercase() {
        'O' => '0',
        'I' | 'L' => '1',
        letter => letter,
    });
    hash(&read.collect::<String>())
}

/// A PIN as it may be: four to twelve digits, not all the same, not counted up or down.
///
/// # Errors
/// What is wrong with it.
pub fn check_pin(pin: &str) -> Result<(), WhoSays> {
    let digits: Vec<u8> = pin.bytes().collect();
    if !(4..=12).contains(&digits.len()) || !digits.iter().all(u8::is_ascii_digit) {
        return Err(WhoSays::PinDigits);
    }
    let steps: Vec<i16> = digits
        .windows(2)
        .map(|two| i16::from(two[1]) - i16::from(two[0]))
        .collect();
    match steps.iter().all(|step| *step == steps[0]) && steps[0].abs() <= 1 {
        true => Err(WhoSays::PinTooEasy),
        false => Ok(()),
    }
}

/// A PIN as it is kept: the way, its cost, salt and hash.
///
/// # Errors
/// In words: the machine has no source of chance.
pub fn keep_pin(pin: &str) -> Result<String, String> {
    let salt: [u8; 16] = world::chance()?;
    let hash = slowly(pin, &salt, COST).ok_or("a PIN cannot be hashed")?;
    let (memory, passes, lanes) = COST;
    Ok(format!(
        "argon2id {memory} {passes} {lanes} {} {}",
        hex(&salt),
        hex(&hash)
    ))
}

/// Is it the PIN that was kept so?
pub fn is_pin(pin: &str, kept: &str) -> bool {
    let parts: Vec<&str> = kept.split(' ').collect();
    let ["argon2id", memory, passes, lanes, salt, hash] = parts[..] else {
        return false;
    };
    let cost = (memory.parse(), passes.parse(), lanes.parse());
    let (Ok(memory), Ok(passes), Ok(lanes)) = cost else {
        return false;
    };
    let (Some(salt), Some(hash)) = (bytes(salt), bytes(hash)) else {
        return false;
    };
    slowly(pin, &salt, (memory, passes, lanes)).is_some_and(|found| same(&found, &hash))
}

fn slowly(pin: &str, salt: &[u8], (memory, passes, lanes): (u32, u32, u32)) -> Option<Hash> {
    let params = Params::new(memory, passes, lanes, Some(32)).ok()?;
    let mut hash = [0; 32];
    Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
        .hash_password_into(pin.as_bytes(), salt, &mut hash)
        .ok()?;
    Some(hash)
}

/// Compares in a time that does not tell where they differ.
fn same(one: &[u8], other: &[u8]) -> bool {
    one.len() == other.len() && one.iter().zip(other).fold(0, |all, (a, b)| all | (a ^ b)) == 0
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn bytes(hex: &str) -> Option<Vec<u8>> {
    let digits = hex.as_bytes().chunks(2);
    let byte = |two: &[u8]| u8::from_str_radix(std::str::from_utf8(two).ok()?, 16).ok();
    digits.map(byte).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_pin_is_known_again_and_no_other_is() {
        let kept = keep_pin("2580").unwrap();
        assert!(is_pin("2580", &kept) && !is_pin("2581", &kept) && !is_pin("2580", "argon2id"));
        assert_ne!(kept, keep_pin("2580").unwrap(), "salted");
    }

    #[test]
    fn pins_that_anybody_would_try_are_refused() {
        for bad in [
            "123",
            "1111",
            "1234",
            "9876",
            "12345678",
            "12a4",
            "1234567890123",
            "",
            "０１２３",
        ] {
            assert!(check_pin(bad).is_err(), "{bad}");
        }
        for good in ["2580", "1357", "0070", "192837"] {
            assert!(check_pin(good).is_ok(), "{good}");
        }
    }

    #[test]
    fn a_word_is_known_however_it_is_typed() {
        let (word, hash) = word().unwrap();
        assert_eq!(word.len(), 14);
        assert_eq!(hash_of_word(&word.to_lowercase().replace('-', " ")), hash);
        assert_eq!(hash_of_word("O0il"), hash_of_word("0011"));
    }
}
