//! What a manager said of the clock: that it is right, whatever was recorded with a wrong one.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::clock_words;
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;

/// A manager's word about the clock.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = clock_words)]
pub struct ClockWord {
    /// Its key.
    pub id: i32,
    /// When it was given, by the clock that is right.
    pub at: NaiveDateTime,
    /// The latest time on record that was recorded ahead, if any was.
    pub ahead_until: Option<NaiveDateTime>,
    /// Who gave it.
    pub person: String,
    /// Why it was doubted, or what was wrong.
    pub why: String,
    /// The last deed on record then.
    pub last_deed: Option<i32>,
}

/// What deeds tell of the time.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Recorded {
    /// The latest time at which any deed was recorded.
    pub latest: Option<NaiveDateTime>,
    /// The deed that came last, and when it was recorded: earlier, where the clock was ahead before.
    pub newest: Option<(i32, NaiveDateTime)>,
}

impl Recorded {
    /// What the record says of a time, as its columns are read.
    pub(crate) fn of(
        latest: Option<NaiveDateTime>,
        newest: Option<i32>,
        at: Option<NaiveDateTime>,
    ) -> Recorded {
        let newest = newest.zip(at);
        Recorded { latest, newest }
    }

    /// The latest time that was on a clock nobody doubts, given what a manager said last.
    pub fn sure(&self, word: Option<&ClockWord>) -> Option<NaiveDateTime> {
        let Some(word) = word else {
            return self.latest;
        };
        let ahead = word.ahead_until;
        let latest = self
            .latest
            .filter(|at| ahead.is_none_or(|ahead| *at > ahead));
        // What came after the word is of the clock that the word is about.
        let later = |deed: i32| word.last_deed.is_some_and(|last| deed > last);
        let newest = self.newest.filter(|(deed, _)| later(*deed));
        [latest, newest.map(|(_, at)| at), Some(word.at)]
            .into_iter()
            .flatten()
            .max()
    }
}

/// The last one.
///
/// # Errors
/// The database is away.
pub fn last(conn: &mut Conn) -> Result<Option<ClockWord>> {
    let words = clock_words::table.order(clock_words::id.desc());
    let last = words.select(ClockWord::as_select()).first(conn);
    Ok(last.optional()?)
}

/// Keeps one; its key is given here.
///
/// # Errors
/// The database is away.
pub fn keep(tx: &mut Tx<'_>, word: &ClockWord) -> Result<()> {
    let last: Option<i32> = clock_words::table
        .select(max(clock_words::id))
        .get_result(tx.conn)?;
    let word = ClockWord {
        id: last.unwrap_or(0) + 1,
        ..word.clone()
    };
    diesel::insert_into(clock_words::table)
        .values(&word)
        .execute(tx.conn)?;
    tx.seal_alone(&word);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(day: u32) -> NaiveDateTime {
        let day = chrono::NaiveDate::from_ymd_opt(2026, 6, day).unwrap();
        day.and_hms_opt(12, 0, 0).unwrap()
    }

    fn check(latest: u32, newest: (i32, u32), word: Option<(u32, u32)>, sure: u32) {
        let recorded = Recorded {
            latest: Some(at(latest)),
            newest: Some((newest.0, at(newest.1))),
        };
        let word = word.map(|(given, ahead)| ClockWord {
            id: 1,
            at: at(given),
            ahead_until: Some(at(ahead)),
            person: "Oda".into(),
            why: String::new(),
            last_deed: Some(7),
        });
        assert_eq!(recorded.sure(word.as_ref()), Some(at(sure)));
    }

    #[test]
    fn what_was_recorded_ahead_says_nothing_and_what_came_since_does() {
        check(20, (7, 20), None, 20);
        check(20, (7, 20), Some((1, 20)), 1);
        check(20, (9, 5), Some((1, 20)), 5);
        check(25, (9, 25), Some((1, 20)), 25);
        assert_eq!(Recorded::default().sure(None), None);
    }
}
