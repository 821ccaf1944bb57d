//! What is said of a value that a field cannot have, and how it gets through the JSON reader.

use domain::messages;
use domain::says::Says;
use serde::de::Error;

messages! {
    /// What is said of a value.
    ValueSays in "value" {
        Empty "empty",
        TooLong "too-long" { most: usize },
        Unprintable "unprintable",
        Unseen "unseen" { code: String },
        NoDay "no-day" { text: String },
        NoTime "no-time" { text: String },
        NoCode "no-code" { text: String },
        NoneOf "none-of" { text: String, words: String },
        NoUuid "no-uuid" { text: String },
        TooMuch "too-much" { number: String },
        TooFine "too-fine" { number: String, places: u32 },
        NoMoney "no-money" { number: String },
        NoFingerprint "no-fingerprint" { text: String },
    }
}

/// Stands before a message in the text of an error: nobody types it.
const MARK: char = '\u{2}';

/// A message as an error of the JSON reader, which keeps nothing but text.
pub fn fault<E: Error>(says: impl Into<Says>) -> E {
    E::custom(format_args!("{MARK}{}", store::said::kept(&says.into())))
}

/// The message that such an error holds.
pub fn in_fault(text: &str) -> Option<Says> {
    let kept = text.strip_prefix(MARK)?;
    Some(store::said::recalled(kept))
}
