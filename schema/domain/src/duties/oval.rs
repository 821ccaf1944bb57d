//! The oval identification mark of approved establishments.

use super::says::OvalSays;
use crate::rows::{Finding, Gravity, RowId, Rows};
use crate::says::Arg;
use chrono::NaiveDate;

/// The rule of a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Oval {
    /// It holds the country and the approval number.
    pub row: RowId,
    /// It is not for retail without a number.
    pub retail_row: RowId,
    /// What is wrapped again or worked further carries the number of who did it.
    pub own_number_row: RowId,
    /// The letters that it may carry.
    pub letters: Vec<Letters>,
}

/// Letters on the mark.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Letters {
    /// Where they stand.
    pub row: RowId,
    /// The letters.
    pub letters: String,
    /// The last day on which they are allowed.
    pub until: Option<NaiveDate>,
}

/// A mark to be printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark<'a> {
    /// The approval number on it, if there is one.
    pub number: Option<&'a str>,
    /// The letters.
    pub letters: &'a str,
    /// The approval number of the house that prints it, if it has one.
    pub own_number: Option<&'a str>,
    /// Was it wrapped again or worked further here?
    pub worked_here: bool,
}

/// What stands against printing the mark on that day (`canada-eu-uk` 11).
pub fn check_oval(
    rules: &super::DutyRules,
    rows: &Rows,
    mark: Mark,
    day: NaiveDate,
) -> Vec<Finding> {
    let Some(oval) = &rules.oval else {
        return vec![Finding::new(Gravity::Refuse, OvalSays::None, [])];
    };
    let mut found = Vec::new();
    let Some(number) = mark.number.filter(|number| !number.trim().is_empty()) else {
        let mut refused = Finding::against(rows, &oval.row, OvalSays::NoNumber);
        refused.rows.push(oval.retail_row.clone());
        return vec![refused];
    };
    if mark.worked_here && mark.own_number != Some(number) {
        let number = number.to_owned();
        let says = OvalSays::NotOwn { number };
        found.push(Finding::against(rows, &oval.own_number_row, says));
    }
    match oval
        .letters
        .iter()
        .find(|known| known.letters == mark.letters)
    {
        Some(Letters {
            row,
            until: Some(until),
            ..
        }) if day > *until => {
            let says = OvalSays::LettersEnded {
                letters: mark.letters.to_owned(),
                until: *until,
            };
            found.push(Finding::against(rows, row, says));
        }
        Some(_) => {}
        None => {
            let known = oval.letters.iter().map(|known| Arg::from(&*known.letters));
            let says = OvalSays::OtherLetters {
                letters: mark.letters.to_owned(),
                known: Arg::All(known.collect()),
            };
            found.push(Finding::against(rows, &oval.row, says));
        }
    }
    found
}
