//! How times lie along the picture of a family, and what it says as a whole.

use super::family::Family;
use super::layout::CHART;
use super::rows::Row;
use super::says::PictureSays;
use chrono::{Datelike, NaiveDate, NaiveDateTime};
use domain::grams::Grams;
use words::Speech;

/// How times lie along the picture.
pub struct Chart {
    from: NaiveDateTime,
    until: NaiveDateTime,
}

impl Chart {
    /// From the first day of any of them to the end.
    pub fn of(family: &Family, rows: &[Row]) -> Chart {
        let from = rows.iter().map(|row| row.from).min();
        let from = from.unwrap_or(family.until);
        // The first bar begins with its day.
        let from = from.date().and_time(chrono::NaiveTime::MIN);
        let until = family.until.max(from + chrono::TimeDelta::days(1));
        Chart { from, until }
    }

    /// Where a time lies.
    pub fn x(&self, at: NaiveDateTime) -> i64 {
        let all = (self.until - self.from).num_seconds().max(1);
        let gone = (at - self.from).num_seconds().clamp(0, all);
        let wide = i128::from(CHART.1 - CHART.0);
        CHART.0 + i64::try_from(i128::from(gone) * wide / i128::from(all)).unwrap_or_default()
    }

    /// How many days it shows.
    pub fn days(&self) -> i64 {
        (self.until - self.from).num_days()
    }

    /// The days that are marked: of a few weeks each, of months their first, of many years theirs.
    pub fn marks(&self) -> Vec<NaiveDate> {
        let days = (self.until - self.from).num_days();
        let begins = |day: &NaiveDate| match days {
            ..=21 => true,
            22..=120 => day.weekday() == chrono::Weekday::Mon,
            121..=1_100 => day.day() == 1,
            _ => day.ordinal() == 1,
        };
        let all = self.from.date().iter_days();
        let all = all.take_while(|day| day.and_time(chrono::NaiveTime::MIN) < self.until);
        all.filter(begins).collect()
    }
}

/// What is seen, in a sentence.
pub fn summary(rows: &[Row], speech: &Speech) -> PictureSays {
    let sum = |of: fn(&Row) -> Grams| rows.iter().fold(Grams::ZERO, |sum, row| sum + of(row));
    let (first, last) = (
        rows.iter().map(|row| row.from).min(),
        rows.iter().map(|row| row.from).max(),
    );
    let Some((first, last)) = first.zip(last) else {
        return PictureSays::Nothing;
    };
    let lots = rows.iter().map(|row| row.lots).sum();
    let (from, to) = (speech.date(first.date()), speech.date(last.date()));
    let on_hand = rows.iter().map(|row| row.lots_on_hand).sum();
    let (weight, held) = (sum(|row| row.on_hand), sum(|row| row.held));
    match (on_hand, held) {
        (0, _) => PictureSays::Gone { lots, from, to },
        (_, Grams::ZERO) => PictureSays::Clear {
            lots,
            from,
            to,
            on_hand,
            weight,
        },
        _ => PictureSays::Held {
            lots,
            from,
            to,
            on_hand,
            weight,
            held,
        },
    }
}
