//! Dates: how a lot is dated when it is made, and what opening, freezing and thawing do to it.

use super::Input;
use chrono::NaiveDate;
use domain::dates::{Because, Count, KeepingRule, Later, MakersDate, Making, PartDate};
use domain::product::{Keeping, Product};
use domain::rows::RowId;
use domain::says::Says;
use domain::words::{DeedKind, KeepFrom, Packaging, ProductKind, Profile, State};
use law::Shipped;

pub fn run(task: &str, input: &Input, shipped: &Shipped) -> String {
    match task {
        "made" => shown(made(input, shipped)),
        "thawed" => {
            let later = Later {
                thawed: input.try_get("thawed_days").map(|days| Count {
                    days,
                    day_one_counts: true,
                }),
                freeze_day_counts: input.get("freeze_day_counts"),
                ..Later::default()
            };
            let use_by = made(input, shipped).expect("a date before it was frozen");
            let left = later.days_left(use_by, input.get("frozen"));
            shown(later.date_thawed(Some(left), input.get("thawed")))
        }
        "opened" => {
            let law = shipped.laws.of(place(input));
            let dated = making(input, law, DeedKind::Receive).date().unwrap();
            shown(dated.later.date_opened(input.get("opened"), dated.use_by))
        }
        "cold" => {
            let vacuum = shipped.laws.of(place(input)).dates.vacuum.as_ref();
            let cold = vacuum.and_then(|vacuum| vacuum.cold.as_ref());
            cold.map_or("none".into(), |cold| cold.degrees.to_string())
        }
        _ => panic!("no task {task}"),
    }
}

fn place(input: &Input) -> Profile {
    Profile::parse(input.maybe("place").unwrap_or("us")).expect("a place")
}

fn made(input: &Input, shipped: &Shipped) -> Option<NaiveDate> {
    let law = shipped.laws.of(place(input));
    let kind = DeedKind::parse(input.maybe("by").unwrap_or("pack")).expect("a kind of deed");
    match making(input, law, kind).date() {
        Ok(dated) => dated.use_by,
        Err(_) => Some(NaiveDate::MIN),
    }
}

fn making<'a>(input: &Input, law: &'a domain::law::Law, kind: DeedKind) -> Making<'a> {
    let parts = input
        .maybe("parts")
        .unwrap_or("")
        .split(' ')
        .filter(|part| !part.is_empty());
    let parts: Vec<PartDate> = parts
        .map(|date| PartDate {
            shown: domain::says::Says::as_written(date),
            date: Some(date.parse().unwrap()),
            cap: None,
            is_raw_animal: !input.try_get("parts_ready").unwrap_or(false),
            was_frozen: false,
            is_undated: false,
        })
        .collect();
    let product = product(input);
    let stable = input
        .maybe("shown_stable")
        .map(|says| Because::law(Says::as_written(says), &RowId::new("us-D10")));
    Making {
        is_controlled: product.is_controlled() && stable.is_none(),
        product: Box::leak(Box::new(product)),
        kind,
        day: input.get("day"),
        parts: Box::leak(parts.into_boxed_slice()),
        supplier: input.try_get("supplier").map(|day| MakersDate {
            day,
            is_frozen: input.try_get("supplier_frozen").unwrap_or(false),
        }),
        once_opened: input.try_get("once_opened"),
        packaging: input
            .maybe("packaging")
            .map(|word| Packaging::parse(word).unwrap()),
        stable,
        is_killed: input.try_get("killed").unwrap_or(false),
        approved: input
            .maybe("approved")
            .map(|number| &*Box::leak(number.to_owned().into_boxed_str())),
        law,
        ready_keeps_its_day: false,
        as_it_happened: false,
        is_released: false,
        is_unfrozen_fish: input.maybe("fish") == Some("chilled"),
    }
}

fn product(input: &Input) -> Product {
    let keep = |key: &str| {
        input.try_get(key).map(|days| KeepingRule {
            days,
            from: KeepFrom::Made,
            day_one_counts: input.try_get("day_one_counts").unwrap_or(true),
            freeze_day_counts: true,
        })
    };
    Product {
        code: "x".into(),
        kind: ProductKind::parse(input.maybe("kind").unwrap_or("cooked"))
            .expect("a kind of product"),
        raw: input.try_get("raw").unwrap_or(false),
        storage: State::Chilled,
        keeping: Keeping {
            usual: keep("keep"),
            if_stable: keep("keep_if_stable"),
            controlled: input.try_get("controlled"),
            stable_as: None,
        },
        ..Product::unnamed()
    }
}

fn shown(date: Option<NaiveDate>) -> String {
    match date {
        Some(NaiveDate::MIN) => "refused".into(),
        Some(date) => date.to_string(),
        None => "no date".into(),
    }
}
