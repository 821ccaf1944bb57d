//! The rows of a family's picture: one for each lot while they are few, else one for each kind of step of a day,
//! a week, a month or a year.

use super::family::Drawn;
use chrono::{Datelike, Days, NaiveDate, NaiveDateTime};
use domain::grams::Grams;
use domain::words::{Account, DeedKind};
use std::collections::{BTreeMap, BTreeSet};

/// So many rows are read at a glance.
pub const MOST: usize = 60;

/// Of months there may be more: rows of whole years would tell too little.
const MOST_MONTHS: usize = 90;

/// So many names are told of lots that share a row.
const NAMES: usize = 8;

/// What one row stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Span {
    /// A lot.
    Lot,
    /// All lots of a kind of step of a day.
    Day,
    /// Of a week, from Monday on.
    Week,
    /// Of a month.
    Month,
    /// Of a year.
    Year,
}

/// A row.
#[derive(Debug, Clone)]
pub struct Row {
    /// The first day that it stands for.
    pub day: NaiveDate,
    /// The kind of step.
    pub step: DeedKind,
    /// The deed, where it stands for one lot.
    pub made_by: Option<i32>,
    /// Is it the first row of its step?
    pub is_first: bool,
    /// Is it of the lots that the picture begins with?
    pub is_start: bool,
    /// The code, where it is one lot.
    pub code: Option<String>,
    /// What they are, the heaviest first.
    pub names: Vec<String>,
    /// How many lots.
    pub lots: usize,
    /// How many of them have something on hand.
    pub lots_on_hand: usize,
    /// Their weight at birth.
    pub made: Grams,
    /// What is left.
    pub on_hand: Grams,
    /// Of that, what may not leave.
    pub held: Grams,
    /// When the first was made.
    pub from: NaiveDateTime,
    /// When the last went; none where something is left.
    pub to: Option<NaiveDateTime>,
    /// Where what is left is.
    pub places: Vec<String>,
    /// Where the rest went.
    pub went: Vec<Account>,
    /// The steps that it went into, where it stands for one lot.
    pub used_in: Vec<i32>,
}

/// The rows of some lots, by day and step, and what each stands for.
pub fn rows(lots: &[Drawn]) -> (Span, Vec<Row>) {
    if lots.len() <= MOST {
        return (Span::Lot, each(lots));
    }
    // Only those that are drawn are put together: what they are is worth more work than how many.
    let fits = |span: &Span| {
        let most = if *span == Span::Month {
            MOST_MONTHS
        } else {
            MOST
        };
        are_at_most(most, lots, *span)
    };
    let mut spans = [Span::Day, Span::Week, Span::Month].into_iter();
    let span = spans.find(fits).unwrap_or(Span::Year);
    (span, together(lots, span))
}

/// Do lots make so many rows at the most?
fn are_at_most(most: usize, lots: &[Drawn], span: Span) -> bool {
    let mut rows = BTreeSet::new();
    lots.iter().all(|lot| {
        rows.insert((begins(lot.made_at.date(), span), lot.step));
        rows.len() <= most
    })
}

/// By day and step; within a step what is at one place stands together, and what is gone comes last.
fn each(lots: &[Drawn]) -> Vec<Row> {
    let mut lots: Vec<&Drawn> = lots.iter().collect();
    let place = |lot: &Drawn| lot.places.first().map(|(place, _)| place.clone());
    lots.sort_by_cached_key(|lot| {
        let place = place(lot);
        (
            lot.made_at,
            lot.made_by,
            place.is_none(),
            place,
            lot.code.clone(),
        )
    });
    let mut last = None;
    let rows = lots.into_iter().map(|lot| Row {
        is_first: last.replace(lot.made_by) != Some(lot.made_by),
        made_by: Some(lot.made_by),
        code: Some(lot.code.clone()),
        used_in: lot.used_in.clone(),
        ..row(lot.made_at.date(), &[lot])
    });
    rows.collect()
}

fn together(lots: &[Drawn], span: Span) -> Vec<Row> {
    let mut found: BTreeMap<(NaiveDate, DeedKind), Vec<&Drawn>> = BTreeMap::new();
    for lot in lots {
        let key = (begins(lot.made_at.date(), span), lot.step);
        found.entry(key).or_default().push(lot);
    }
    // In whatever order: of what a row says none depends on it.
    let rows = found.into_iter().map(|((day, _), lots)| row(day, &lots));
    rows.collect()
}

/// The first day of the span that a day lies in.
fn begins(day: NaiveDate, span: Span) -> NaiveDate {
    let since_monday = Days::new(u64::from(day.weekday().num_days_from_monday()));
    let first = match span {
        Span::Lot | Span::Day => Some(day),
        Span::Week => day.checked_sub_days(since_monday),
        Span::Month => day.with_day(1),
        Span::Year => NaiveDate::from_ymd_opt(day.year(), 1, 1),
    };
    first.unwrap_or(day)
}

/// A row of lots, of which there is one at least.
fn row(day: NaiveDate, lots: &[&Drawn]) -> Row {
    let sum = |of: fn(&Drawn) -> Grams| {
        let all = lots.iter().map(|lot| of(lot));
        all.fold(Grams::ZERO, |sum, one| sum + one)
    };
    let mut weights: BTreeMap<&str, Grams> = BTreeMap::new();
    let mut places: BTreeMap<&str, Grams> = BTreeMap::new();
    for lot in lots {
        *weights.entry(&lot.name).or_default() += lot.made;
        for (place, left) in &lot.places {
            *places.entry(place).or_default() += *left;
        }
    }
    let went: BTreeSet<Account> = lots.iter().flat_map(|lot| &lot.went).copied().collect();
    let lots_on_hand = lots.iter().filter(|lot| lot.on_hand > Grams::ZERO).count();
    let from = lots.iter().map(|lot| lot.made_at).min().unwrap_or_default();
    let gone = lots.iter().map(|lot| lot.gone_at.unwrap_or(lot.made_at));
    Row {
        day,
        step: lots.first().map_or(DeedKind::Receive, |lot| lot.step),
        made_by: None,
        is_first: true,
        is_start: lots.iter().all(|lot| lot.is_start),
        code: None,
        names: heaviest_first(weights).into_iter().take(NAMES).collect(),
        lots: lots.len(),
        lots_on_hand,
        made: sum(|lot| lot.made),
        on_hand: sum(|lot| lot.on_hand),
        held: sum(|lot| lot.held),
        from,
        to: (lots_on_hand == 0).then(|| gone.max().unwrap_or(from)),
        places: heaviest_first(places),
        went: went.into_iter().collect(),
        used_in: Vec::new(),
    }
}

fn heaviest_first(weights: BTreeMap<&str, Grams>) -> Vec<String> {
    let mut weights: Vec<(&str, Grams)> = weights.into_iter().collect();
    weights.sort_by_key(|(name, weight)| (std::cmp::Reverse(*weight), *name));
    weights
        .into_iter()
        .map(|(name, _)| name.to_owned())
        .collect()
}
