//! How long each record is kept.

use super::says::RecordSays;
use crate::refusal::{Refusal, Result};
use crate::rows::{Bound, RowId};
use crate::words::words;
use chrono::{Datelike, Days, Months, NaiveDate, NaiveDateTime, TimeDelta};

words! {
    /// The records that somebody may ask for.
    Record {
        GroundBeefLog = "ground-beef-log", FarmDirect = "farm-direct", OneOffPurchase = "one-off-purchase",
        ListedFood = "listed-food", ListedReceiving = "listed-receiving",
        ListedReceivingExempt = "listed-receiving-exempt", ListedInputs = "listed-inputs",
        ListedOutput = "listed-output", ListedShipping = "listed-shipping",
        OneUpOneDown = "one-up-one-down", ReducedOxygenLog = "reduced-oxygen-log",
        TraceToBusiness = "trace-to-business", TraceRetail = "trace-retail",
        PigReport = "pig-report", RecallDrill = "recall-drill", Recall = "recall",
        Complaint = "complaint", TrichinaeTreatment = "trichinae-treatment",
        OntarioMeat = "ontario-meat", OntarioPurchase = "ontario-purchase",
        AnimalProduct = "animal-product", FreezeLog = "freeze-log",
        MeatTransaction = "meat-transaction", BeefLabel = "beef-label",
        MeatOrigin = "meat-origin",
    }
}

words! {
    /// Units of time.
    Unit { Hours = "hours", Days = "days", Months = "months", Years = "years", }
}

/// A number of hours, days, months or years with its row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeepingSpan {
    /// How many.
    pub number: Bound,
    /// Of what.
    pub unit: Unit,
}

impl KeepingSpan {
    /// The last day, counted from one. A month or a year later there may be no such day (29
    /// February): then the next day is meant, so that nothing goes too soon.
    pub fn after(&self, day: NaiveDate) -> NaiveDate {
        let number = self.number.whole();
        let months = |months: u32| {
            let later = day.checked_add_months(Months::new(months))?;
            match later.day() == day.day() {
                true => Some(later),
                false => later.succ_opt(),
            }
        };
        match self.unit {
            Unit::Hours => day.checked_add_days(Days::new(u64::from(number.div_ceil(24)))),
            Unit::Days => day.checked_add_days(Days::new(number.into())),
            Unit::Months => months(number),
            Unit::Years => number.checked_mul(12).and_then(months),
        }
        .unwrap_or(NaiveDate::MAX)
    }

    /// The last moment, counted from one.
    pub fn after_moment(&self, moment: NaiveDateTime) -> NaiveDateTime {
        match self.unit {
            Unit::Hours => moment
                .checked_add_signed(TimeDelta::hours(self.number.whole().into()))
                .unwrap_or(NaiveDateTime::MAX),
            _ => self.after(moment.date()).and_time(moment.time()),
        }
    }
}

/// How long a record is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Keeping {
    /// Where it stands.
    pub row: RowId,
    /// The record.
    pub record: Record,
    /// How long, from the day that [`Keeping::from`] names. None: as long as the food may be eaten.
    pub span: Option<KeepingSpan>,
    /// Counted from what: `the day it was made`.
    pub from: String,
    /// Is the span counted from the last day of that year?
    pub from_year_end: bool,
    /// Also kept as long as the food itself keeps.
    pub or_shelf_life: bool,
}

/// Until when a record is kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeptUntil {
    /// The last day.
    pub until: NaiveDate,
    /// The rows behind it.
    pub rows: Vec<RowId>,
}

/// Until when a record is kept, counted from `day`; `eaten_by` is the last day on which somebody may
/// reasonably eat the food. Of several rules the longest wins. `None`: no rule here.
///
/// # Errors
/// Every rule wants the food's last day, and it is not given.
pub fn keep_until(
    rules: &super::DutyRules,
    record: Record,
    day: NaiveDate,
    eaten_by: Option<NaiveDate>,
) -> Result<Option<KeptUntil>> {
    let of_it: Vec<&Keeping> = rules
        .keeping
        .iter()
        .filter(|keeping| keeping.record == record)
        .collect();
    let days = of_it.iter().flat_map(|keeping| {
        let from = match keeping.from_year_end {
            true => year_end(day),
            false => day,
        };
        let span = keeping.span.as_ref().map(|span| span.after(from));
        let food = eaten_by.filter(|_| keeping.or_shelf_life);
        span.into_iter()
            .chain(food)
            .map(|until| (until, &keeping.row))
    });
    let longest = days.max_by_key(|(until, _)| *until);
    match longest {
        Some((until, row)) => Ok(Some(KeptUntil {
            until,
            rows: vec![row.clone()],
        })),
        None if of_it.is_empty() => Ok(None),
        None => Err(Refusal::cannot_be("eaten_by", RecordSays::GiveLastDay)),
    }
}

/// The day before which nothing has to be kept any more for a rule; nothing where the food's own last day counts.
pub fn over_before(keeping: &Keeping, today: NaiveDate) -> Option<NaiveDate> {
    let span = keeping.span.as_ref().filter(|_| !keeping.or_shelf_life)?;
    let until = |day: NaiveDate| {
        span.after(if keeping.from_year_end {
            year_end(day)
        } else {
            day
        })
    };
    // What was made later is kept no shorter: the first day that is kept is found by halves.
    let (mut over, mut kept) = (today - Days::new(LONGEST), today);
    while let Some(half) = Some((kept - over).num_days() / 2).filter(|half| *half > 0) {
        let day = over + TimeDelta::days(half);
        *(if until(day) < today {
            &mut over
        } else {
            &mut kept
        }) = day;
    }
    Some(kept)
}

/// No rule asks for more than a hundred years.
const LONGEST: u64 = 36_525;

fn year_end(day: NaiveDate) -> NaiveDate {
    NaiveDate::from_ymd_opt(day.year(), 12, 31).unwrap_or(day)
}

/// May the record be let go on a day? What has no rule here may.
///
/// # Errors
/// As [`keep_until`].
pub fn may_drop(
    rules: &super::DutyRules,
    record: Record,
    made: NaiveDate,
    eaten_by: Option<NaiveDate>,
    on: NaiveDate,
) -> Result<bool> {
    Ok(keep_until(rules, record, made, eaten_by)?.is_none_or(|kept| on > kept.until))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn check(number: u32, unit: Unit, from: &str, expected: &str) {
        let number = Bound::at_least("x-1", number);
        let span = KeepingSpan { number, unit };
        assert_eq!(span.after(from.parse().unwrap()), expected.parse().unwrap());
    }

    #[test]
    fn years_days_and_leap_days() {
        check(2, Unit::Years, "2026-05-01", "2028-05-01");
        check(180, Unit::Days, "2026-01-01", "2026-06-30");
        check(2, Unit::Years, "2028-02-29", "2030-03-01");
        check(4, Unit::Years, "2028-02-29", "2032-02-29");
        check(1, Unit::Months, "2027-01-31", "2027-03-01");
        check(24, Unit::Hours, "2026-05-01", "2026-05-02");
    }

    proptest! {
        #[test]
        fn what_is_older_is_over_and_nothing_else(day in 0u64..20_000, years in 1u32..10, from_year_end: bool) {
            let today = NaiveDate::from_ymd_opt(1990, 1, 1).unwrap() + Days::new(day);
            let rule = Keeping {
                row: RowId::new("x-1"),
                record: Record::Recall,
                span: Some(KeepingSpan { number: Bound::at_least("x-1", years), unit: Unit::Years }),
                from: String::new(),
                from_year_end,
                or_shelf_life: false,
            };
            let rules = crate::duties::DutyRules { keeping: vec![rule.clone()], ..Default::default() };
            let before = over_before(&rule, today).unwrap();
            let may = |made| may_drop(&rules, Record::Recall, made, None, today).unwrap();
            prop_assert!(may(before - Days::new(1)));
            prop_assert!(!may(before));
        }

        #[test]
        fn a_year_never_ends_before_365_days(day in 0u64..20_000, years in 1u32..10) {
            let from = NaiveDate::from_ymd_opt(1990, 1, 1).unwrap() + Days::new(day);
            let span = KeepingSpan { number: Bound::at_least("x-1", years), unit: Unit::Years };
            prop_assert!((span.after(from) - from).num_days() >= 365 * i64::from(years));
            prop_assert!(span.after(from) <= span.after(from + Days::new(1)), "later made, kept no shorter");
        }
    }
}
