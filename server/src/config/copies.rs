//! Options of copies: made by the timetable of the service, by hand, restored and tried.

use super::{DatabaseArgs, File, file};
use crate::copies::Key;
use crate::copies::keep::Keeping;
use crate::copies::timetable::Timetable;
use chrono::TimeDelta;
use clap::Args;
use std::path::PathBuf;

/// How many copies are kept where nobody says otherwise: one of each of so many days, weeks and months.
const KEPT: (usize, usize, usize) = (7, 5, 12);

/// The timetable of copies.
#[derive(Debug, Clone, Default, Args)]
pub struct CopiesArgs {
    /// Make copies of the record by itself, into this folder: on another disk.
    #[arg(long, env = "GAMBREL_COPIES", value_name = "FOLDER")]
    pub copies: Option<PathBuf>,
    /// How often: 30m, 12h, 1d. [default: 1d]
    #[arg(long, env = "GAMBREL_COPIES_EVERY", value_name = "TIME")]
    pub copies_every: Option<String>,
    /// Lock them with the key in this file (`gambrel key` makes one).
    #[arg(long, env = "GAMBREL_COPIES_KEY", value_name = "FILE")]
    pub copies_key: Option<PathBuf>,
    /// Keep the last copy of each of so many days. [default: 7]
    #[arg(long, env = "GAMBREL_COPIES_DAILY", value_name = "N")]
    pub copies_daily: Option<usize>,
    /// Keep the last copy of each of so many weeks. [default: 5]
    #[arg(long, env = "GAMBREL_COPIES_WEEKLY", value_name = "N")]
    pub copies_weekly: Option<usize>,
    /// Keep the last copy of each of so many months. [default: 12]
    #[arg(long, env = "GAMBREL_COPIES_MONTHLY", value_name = "N")]
    pub copies_monthly: Option<usize>,
}

impl CopiesArgs {
    /// The timetable, if a folder is named.
    ///
    /// # Errors
    /// In words: a time that is none, or a key that does not read.
    pub(super) fn resolve(&self, file: &File) -> Result<Option<Timetable>, String> {
        let Some(folder) = self.copies.clone().or_else(|| file.copies.clone()) else {
            return Ok(None);
        };
        let every = self.copies_every.as_ref().or(file.copies_every.as_ref());
        let key = self.copies_key.as_ref().or(file.copies_key.as_ref());
        let (daily, weekly, monthly) = KEPT;
        Ok(Some(Timetable {
            folder,
            every: match every {
                Some(text) => length(text)?,
                None => TimeDelta::days(1),
            },
            key: key.map(|path| Key::read(path)).transpose()?,
            keeping: Keeping {
                keep_daily: Some(self.copies_daily.or(file.copies_daily).unwrap_or(daily)),
                keep_weekly: Some(self.copies_weekly.or(file.copies_weekly).unwrap_or(weekly)),
                keep_monthly: Some(
                    self.copies_monthly
                        .or(file.copies_monthly)
                        .unwrap_or(monthly),
                ),
                ..Keeping::default()
            },
        }))
    }
}

/// A length of time: `30m`, `12h`, `1d`.
fn length(text: &str) -> Result<TimeDelta, String> {
    let digits = text.trim_end_matches(|letter: char| letter.is_ascii_alphabetic());
    let number: Option<i64> = digits
        .parse()
        .ok()
        .filter(|number| (1..=9_999).contains(number));
    let length = number.and_then(|number| match &text[digits.len()..] {
        "m" => Some(TimeDelta::minutes(number)),
        "h" => Some(TimeDelta::hours(number)),
        "d" => Some(TimeDelta::days(number)),
        _ => None,
    });
    length.ok_or_else(|| format!("{text:?} says no length of time; write it like 30m, 12h or 1d"))
}

/// Where copies go.
#[derive(Debug, Clone, Args)]
pub struct BackupArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// The folder that copies go into: on another disk.
    #[arg(long, value_name = "FOLDER")]
    pub to: PathBuf,
    /// Lock the copy with the key in this file (`gambrel key` makes one).
    #[arg(long, value_name = "FILE")]
    pub key: Option<PathBuf>,
    #[command(flatten)]
    #[allow(missing_docs, reason = "see Keeping")]
    pub keeping: Keeping,
}

/// What is restored, and where.
#[derive(Debug, Clone, Args)]
pub struct RestoreArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// The copy.
    #[arg(value_name = "FILE.db")]
    pub from: PathBuf,
    /// The file with the key that the copy was locked with.
    #[arg(long, value_name = "FILE")]
    pub key: Option<PathBuf>,
    /// Prove it whole, as `gambrel check` does, also where it is the same to the last byte as when it was proven.
    #[arg(long)]
    pub prove: bool,
}

/// Which copies are tried.
#[derive(Debug, Clone, Args)]
pub struct DrillArgs {
    #[command(flatten)]
    #[allow(missing_docs, reason = "see DatabaseArgs")]
    pub database: DatabaseArgs,
    /// The folder that copies are in; the newest one is tried.
    #[arg(long, env = "GAMBREL_COPIES", value_name = "FOLDER")]
    pub copies: Option<PathBuf>,
    /// The file with the key that they are locked with.
    #[arg(long, env = "GAMBREL_COPIES_KEY", value_name = "FILE")]
    pub key: Option<PathBuf>,
}

/// Where copies are, and their key.
pub struct CopiesAt {
    /// The folder.
    pub folder: Option<PathBuf>,
    /// The key's file.
    pub key: Option<PathBuf>,
}

impl DrillArgs {
    /// Where the copies are, also where only the file of options says it.
    ///
    /// # Errors
    /// In words: the file of options does not read.
    pub fn copies(&self) -> Result<CopiesAt, String> {
        let file = file(self.database.config.as_ref())?;
        Ok(CopiesAt {
            folder: self.copies.clone().or(file.copies),
            key: self.key.clone().or(file.copies_key),
        })
    }
}

/// Where a new key goes.
#[derive(Debug, Clone, Args)]
pub struct KeyArgs {
    /// A file that is not there yet: not beside the copies.
    #[arg(long, value_name = "FILE")]
    pub to: PathBuf,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_of_time_is_read_or_refused() {
        assert_eq!(length("30m"), Ok(TimeDelta::minutes(30)));
        assert_eq!(length("12h"), Ok(TimeDelta::hours(12)));
        assert_eq!(length("1d"), Ok(TimeDelta::days(1)));
        for wrong in ["", "h", "0h", "-1d", "12", "1 d", "1w", "10000d", "1é"] {
            assert!(length(wrong).is_err(), "{wrong}");
        }
    }
}
