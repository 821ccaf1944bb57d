//! The key of copies: 32 bytes that nobody can guess, written so that they can be typed in again from paper.

use crate::given::{self, why};
use crate::world;
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::fs::OpenOptions;
use std::io::Write as _;
use std::path::Path;

/// What the line of a key begins with.
const WORDS: &str = "GAMBREL-KEY";
/// How many digits stand together.
const GROUP: usize = 8;
/// What a key file says besides.
const ABOUT: &str = "\
# The key of a kitchen's copies. Without it no copy that it locked can be opened, by anybody.
# Keep it in two places away from the copies: on paper in the safe, and with somebody you trust.
";

/// A key.
#[derive(Clone)]
pub struct Key(pub(super) [u8; 32]);

impl Key {
    /// A new one.
    ///
    /// # Errors
    /// The machine has no source of chance.
    pub fn make() -> Result<Key, String> {
        world::chance().map(Key)
    }

    /// The key of a file.
    ///
    /// # Errors
    /// In words: the file cannot be read, holds no key, or a digit of it was mistyped.
    pub fn read(path: &Path) -> Result<Key, String> {
        let text = given::text(path)?;
        Key::parse(&text).map_err(|says| format!("{} {says}", path.display()))
    }

    /// A key as it was printed: groups of digits, the last of which says whether the others are right.
    fn parse(text: &str) -> Result<Key, String> {
        let line = text.lines().find_map(|line| {
            let line = line.trim();
            line.get(..WORDS.len())
                .filter(|words| words.eq_ignore_ascii_case(WORDS))
                .and(line.get(WORDS.len()..))
        });
        let line = line.ok_or_else(|| {
            format!("holds no key: a line that begins with {WORDS}, as `gambrel key` prints it")
        })?;
        let digits: String = line.split_whitespace().collect();
        let wrong = || {
            "holds a key with a wrong digit: compare it with the paper, group by group".to_owned()
        };
        let byte = |nth: usize| -> Option<u8> {
            u8::from_str_radix(digits.get(2 * nth..2 * nth + 2)?, 16).ok()
        };
        let bytes: Option<Vec<u8>> = (0..digits.len().div_ceil(2)).map(byte).collect();
        let bytes = bytes.ok_or_else(wrong)?;
        let key = bytes
            .first_chunk::<32>()
            .copied()
            .map(Key)
            .ok_or_else(wrong)?;
        match bytes[32..] == key.mark() {
            true => Ok(key),
            false => Err(wrong()),
        }
    }

    /// What tells it from other keys, and says nothing about it: a copy names the key that locked it by this.
    pub fn mark(&self) -> [u8; 4] {
        let hash = Sha256::new()
            .chain_update(b"gambrel key of copies")
            .chain_update(self.0)
            .finalize();
        hash.first_chunk().copied().unwrap_or_default()
    }

    /// Its line.
    pub fn line(&self) -> String {
        let mut line = WORDS.to_owned();
        for group in self.0.chunks(GROUP / 2) {
            line.push(' ');
            line.push_str(&shown(group));
        }
        line + " " + &shown(&self.mark())
    }
}

impl std::fmt::Debug for Key {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "key {}", shown(&self.mark()))
    }
}

/// Bytes in digits.
pub fn shown(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02X}");
        text
    })
}

/// Makes a key and writes it into a new file that only its owner reads; what to tell: the key, this once.
///
/// # Errors
/// In words: the file is there already or cannot be written.
pub fn make(path: &Path) -> Result<String, String> {
    let key = Key::make()?;
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    let cannot = |error: std::io::Error| given::cannot_write(path, &error);
    let mut file = options.open(path).map_err(cannot)?;
    let text = format!("{ABOUT}{}\n", key.line());
    file.write_all(text.as_bytes())
        .and_then(|()| file.sync_all())
        .map_err(|error| format!("{}: {}", path.display(), why(&error)))?;
    Ok(format!(
        "{}\nThat is the key {}, printed this once; it stands in {}, which only you may read.\nCopy it onto paper now, for the safe, and give it to somebody you trust: never beside the copies.\nWithout it no copy that it locks can be opened, by anybody.",
        key.line(),
        shown(&key.mark()),
        path.display()
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_read_as_it_was_printed_and_a_wrong_digit_is_noticed() {
        let key = Key([0xa7; 32]);
        let line = key.line();
        let read = |text: &str| Key::parse(text).map(|key| key.0);
        assert_eq!(read(&line), Ok(key.0));
        assert_eq!(
            read(&format!("# about\n  {}\n", line.to_lowercase())),
            Ok(key.0)
        );
        assert_eq!(
            read(&line.replace("KEY A7A7A7A7 ", "KEY A7A7 A7A7 ")),
            Ok(key.0)
        );
        for wrong in [
            line.replacen("A7A7A7A7", "A7A7A7B7", 1),
            line[..line.len() - 1].to_owned(),
            line[..30].to_owned(),
            format!("{line}0"),
            line.replacen("A7", "é7", 1),
        ] {
            assert!(read(&wrong).unwrap_err().contains("wrong digit"), "{wrong}");
        }
        assert!(read("").unwrap_err().contains("holds no key"));
    }
}
