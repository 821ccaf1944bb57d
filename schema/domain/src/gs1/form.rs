//! What may stand behind each application identifier (`standards` 1.1).

use chrono::NaiveDate;

use super::check_digit::check_digit_is_right;
use super::in_set_82;
use super::says::NotAnElement;

/// The form of an element.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Form {
    /// Digits of the identifier.
    pub identifier: usize,
    /// Fewest characters of the value.
    pub shortest: usize,
    /// Most characters of the value.
    pub longest: usize,
    kind: Kind,
    /// Of predefined length: no separator is needed after it.
    pub predefined: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Digits,
    /// Digits with a check digit at the end.
    Checked,
    /// YYMMDD, where day 00 is the month's last.
    Day,
    /// YYMMDD of a real day, then hours, minutes or a second day.
    Moment,
    /// The set of 82 characters.
    Text,
}

/// The form of the element whose identifier begins the text; `None` where none is known.
///
/// Identifiers of a known family that our kitchen has no use for are let through with its widest form.
pub(super) fn form_of(text: &str) -> Option<Form> {
    use Kind::{Checked, Day, Digits, Moment, Text};
    let fixed = |identifier, kind, length| Form {
        identifier,
        shortest: length,
        longest: length,
        kind,
        predefined: true,
    };
    let upto = |identifier, kind, shortest, longest| Form {
        identifier,
        shortest,
        longest,
        kind,
        predefined: false,
    };
    let digit = |at: usize| text.get(at..=at)?.parse::<u32>().ok();
    let (family, third) = (digit(0)? * 10 + digit(1)?, digit(2));
    Some(match (family, third) {
        (0, _) => fixed(2, Checked, 18),
        (1..=3, _) => fixed(2, Checked, 14),
        (11 | 12 | 13 | 15 | 16 | 17, _) => fixed(2, Day, 6),
        (20, _) => fixed(2, Digits, 2),
        // The last digit of the identifier is the number of decimals.
        (31..=36, _) if digit(3)? <= 5 => fixed(4, Digits, 6),
        (41, _) => fixed(3, Checked, 13),
        (10 | 21 | 22, _) => upto(2, Text, 1, 20),
        (30 | 37, _) => upto(2, Digits, 1, 8),
        (90, _) => upto(2, Text, 1, 30),
        (91..=99, _) => upto(2, Text, 1, 90),
        (24, Some(0 | 1)) | (25, Some(0 | 1)) | (40, Some(0 | 1 | 3)) => upto(3, Text, 1, 30),
        (40, Some(2)) => upto(3, Checked, 17, 17),
        (42, Some(2 | 4 | 6)) => upto(3, Digits, 3, 3),
        (42, Some(3 | 5)) => upto(3, Digits, 3, 15),
        (42, Some(7)) => upto(3, Text, 1, 3),
        (23..=25 | 40 | 42 | 71, _) => upto(3, Text, 1, 90),
        (39, _) => upto(4, Digits, 1, 18),
        (70, Some(0)) => match digit(3)? {
            3 => upto(4, Moment, 10, 10),
            6 => upto(4, Moment, 6, 6),
            7 => upto(4, Moment, 6, 12),
            _ => upto(4, Text, 1, 30),
        },
        (70, Some(3)) => upto(4, Text, 4, 30),
        (80, Some(0)) if digit(3)? == 5 => upto(4, Digits, 6, 6),
        (80, Some(0)) if digit(3)? == 8 => upto(4, Moment, 8, 12),
        (43 | 70 | 72 | 80..=82, _) => upto(4, Text, 1, 90),
        _ => return None,
    })
}

impl Form {
    /// Checks a value.
    ///
    /// # Errors
    /// What is wrong with it.
    pub(super) fn check(&self, identifier: &str, value: &str) -> Result<(), NotAnElement> {
        let (ai, told) = (identifier.to_owned(), value.to_owned());
        if !(self.shortest..=self.longest).contains(&value.len()) {
            return Err(NotAnElement::Length { ai, value: told });
        }
        if let Some(other) = value.chars().find(|character| !in_set_82(*character)) {
            return Err(NotAnElement::Character {
                ai,
                character: other.escape_debug().to_string(),
            });
        }
        if self.kind != Kind::Text && !value.bytes().all(|byte| byte.is_ascii_digit()) {
            return Err(NotAnElement::NotDigits { ai, value: told });
        }
        match self.kind {
            Kind::Checked if !check_digit_is_right(value) => {
                Err(NotAnElement::CheckDigit { ai, value: told })
            }
            Kind::Day if !is_day(value, true) => Err(NotAnElement::NoDay { ai, value: told }),
            Kind::Moment if !is_moment(identifier, value) => {
                Err(NotAnElement::NoTime { ai, value: told })
            }
            _ => Ok(()),
        }
    }
}

fn part(text: &str, from: usize) -> Option<u32> {
    text.get(from..from + 2)?.parse().ok()
}

/// Leap years are the same in every century that a two-digit year can mean here.
fn is_day(text: &str, may_end_month: bool) -> bool {
    let day = || {
        let (year, month, day) = (part(text, 0)?, part(text, 2)?, part(text, 4)?);
        let day = if day == 0 && may_end_month { 1 } else { day };
        NaiveDate::from_ymd_opt(2000 + year as i32, month, day)
    };
    day().is_some()
}

fn is_moment(identifier: &str, value: &str) -> bool {
    let Some((day, rest)) = value.split_at_checked(6) else {
        return false;
    };
    is_day(day, false)
        && match identifier {
            "7007" => rest.is_empty() || is_day(rest, false),
            _ => {
                let below = [24, 60, 60];
                let parts = (0..rest.len()).step_by(2).map(|from| part(rest, from));
                parts
                    .zip(below)
                    .all(|(part, below)| part.is_some_and(|part| part < below))
            }
        }
}
