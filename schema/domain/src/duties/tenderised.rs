//! The words due on beef that was tenderised by machine.

use crate::rows::RowId;

/// Mandated words; one entry a language, English first, then French.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TenderisedWording {
    /// Where they stand.
    pub row: RowId,
    /// Beside the name.
    pub name: Vec<String>,
    /// How it is cooked.
    pub cook: Vec<String>,
    /// And how a steak is turned.
    pub turn: Vec<String>,
}

/// The languages that the words are mandated in.
const LANGUAGES: [&str; 2] = ["en", "fr"];

/// The lines for the label, each with its language: beside the name, how to cook, how to turn.
pub fn lines(wording: &TenderisedWording, steak: bool) -> Vec<(&'static str, &str)> {
    let turn: &[String] = if steak { &wording.turn } else { &[] };
    let all = [&wording.name[..], &wording.cook, turn];
    let tagged = |words| LANGUAGES.into_iter().zip(words);
    all.into_iter()
        .flat_map(|words: &[String]| tagged(words.iter().map(String::as_str)))
        .collect()
}
