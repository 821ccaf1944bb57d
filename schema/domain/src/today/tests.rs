//! What needs a hand, of a day that is made up.

use super::*;
use crate::measure::Temperature;
use crate::stability::LimitSays;

fn place(raw: Option<i64>, ready: Option<i64>) -> PlaceDay {
    let at = |seconds: i64| DateTime::from_timestamp(seconds, 0).unwrap();
    PlaceDay {
        code: "bench".into(),
        name: "Bench".into(),
        is_cleaned: true,
        raw: raw.map(at),
        ready: ready.map(at),
        ..PlaceDay::default()
    }
}

fn told_with(days: &[PlaceDay], printers: &[Printer], recalls: usize) -> Vec<(When, Sort, String)> {
    let open = [OpenRecall {
        number: "CHK-2026-1".into(),
        packs: 56,
        grams: Grams::whole(26_927),
    }];
    let family = Family::default();
    let known = Known {
        today: NaiveDate::from_ymd_opt(2026, 6, 26).unwrap(),
        now: DateTime::from_timestamp(1_782_484_800, 0).unwrap(),
        family: &family,
        pieces: &[],
        places: &BTreeMap::new(),
        lying: &[],
        cooling: &[],
        recalls: &open[..recalls],
        printers,
        days,
        drill: None,
        frozen: None,
        missing: &[],
        copies: &CopiesDay::default(),
    };
    let told = hands(&known).into_iter();
    told.map(|hand| (hand.when, hand.sort, hand.says.key().to_owned()))
        .collect()
}

fn told(days: &[PlaceDay], printers: &[Printer]) -> Vec<(When, Sort, String)> {
    told_with(days, printers, 0)
}

#[test]
fn an_open_recall_comes_before_all_else() {
    let printer = Printer {
        name: "Pass".into(),
        trouble: None,
        unsure: 1,
        waiting: 0,
    };
    let told = told_with(&[], &[printer], 1);
    let first = (When::Now, Sort::Recall, "today-recall".to_owned());
    assert_eq!(told.first(), Some(&first));
    assert_eq!(told.len(), 2);
}

#[test]
fn what_can_make_ill_comes_before_a_printer_in_trouble() {
    let printer = Printer {
        name: "Pass".into(),
        trouble: None,
        unsure: 1,
        waiting: 0,
    };
    let found = told(&[place(Some(1), Some(2))], &[printer]);
    let sorts: Vec<Sort> = found.iter().map(|(_, sort, _)| *sort).collect();
    assert_eq!(sorts[..2], [Sort::Crossed, Sort::Printer]);
    let danger = [Sort::Stop, Sort::WrongLabel, Sort::Past, Sort::LastDay];
    assert!(
        danger
            .iter()
            .all(|sort| *sort < Sort::Printer && *sort < Sort::Copies)
    );
}

#[test]
fn a_quiet_kitchen_needs_no_hand() {
    let printer = Printer {
        name: "Bench".into(),
        trouble: None,
        unsure: 0,
        waiting: 3,
    };
    assert!(told(&[place(None, None)], &[printer]).is_empty());
}

#[test]
fn raw_wants_a_clean_down_before_the_end_and_with_ready_at_once() {
    let found = told(&[place(Some(1), None), place(Some(1), Some(2))], &[]);
    assert_eq!(found[0].0, When::Now);
    assert_eq!(found[0].1, Sort::Crossed);
    assert_eq!(
        found[1],
        (When::Closing, Sort::CleanDown, "today-clean-down".into())
    );
}

#[test]
fn a_place_with_limits_is_read_once_a_day() {
    let read = |day| PlaceDay {
        has_limits: true,
        read: NaiveDate::from_ymd_opt(2026, 6, day),
        ..PlaceDay::default()
    };
    let found = told(&[read(26), read(25)], &[]);
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].1, Sort::Reading);
}

#[test]
fn a_place_beyond_its_own_limit_is_told_once_and_one_without_only_where_something_suffers() {
    let beyond = |is_own| {
        let read = Temperature::fahrenheit(46);
        let limit = LimitSays::AtMost {
            value: Temperature::fahrenheit(41).into(),
        };
        let broken = Broken {
            read,
            limit,
            is_warm: true,
            is_own,
        };
        let at = DateTime::from_timestamp(1_782_484_800, 0).unwrap();
        PlaceDay {
            has_limits: is_own,
            beyond: Some((broken, at.naive_utc())),
            ..PlaceDay::default()
        }
    };
    let found = told(&[beyond(true)], &[]);
    assert_eq!(
        found,
        [(When::Now, Sort::Beyond, "today-beyond".to_owned())]
    );
    assert!(told(&[beyond(false)], &[]).is_empty());
}
