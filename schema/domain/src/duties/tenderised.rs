//! The words due on beef that was tenderised by machine.

use crate::rows::RowId;

/// Mandated words; one entry a language.
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

/// The lines for the label, language after language: beside the name, how to cook, how to turn.
pub fn lines(wording: &TenderisedWording, steak: bool) -> Vec<&str> {
    let turn = wording.turn.iter().filter(|_| steak);
    let all = wording.name.iter().chain(&wording.cook).chain(turn);
    all.map(String::as_str).collect()
}
