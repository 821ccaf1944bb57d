//! The logs on deeds without a record: which fields are wanted, and what is a hole.

use super::*;
use crate::duties::DutyRules;
use crate::duties::fields::Field;
use crate::duties::keeping::Record;
use crate::duties::step_records::{Asks, Occasion};
use crate::family::{Family, Lists};
use crate::heat::Bath;
use crate::law::Law;
use crate::lot::{DeedId, PlaceId};
use crate::measure::Temperature;
use crate::quantity::Quantity;
use crate::rows::RowId;
use crate::words::DeedKind;
use chrono::{DateTime, Utc};
use std::collections::{BTreeMap, HashMap};

fn at(text: &str) -> DateTime<Utc> {
    format!("2026-06-10T{text}:00Z").parse().unwrap()
}

fn doing(kind: DeedKind, when: &str) -> Doing {
    let day = at(when).date_naive();
    Doing {
        uid: vec![1; 16],
        place: Some(PlaceId(3)),
        ..Doing::bare(DeedId(1), kind, at(when), day, "Oda Marsh".into())
    }
}

fn law(record: Record, on: Occasion, names: &[&str]) -> Law {
    let field = |name: &&str| Field {
        row: RowId::new("x-1"),
        records: vec![record],
        field: (*name).to_owned(),
        says: (*name).into(),
    };
    Law {
        duties: DutyRules {
            fields: names.iter().map(field).collect(),
            step_records: vec![Asks {
                row: RowId::new("x-2"),
                on,
                record,
            }],
            ..DutyRules::default()
        },
        ..Law::default()
    }
}

fn told(kind: LogKind, doings: &[Doing], law: &Law, cleaned: &[Cleaned]) -> Log {
    let known = Known {
        family: &Family::default(),
        lists: &Lists::default(),
        law,
        kitchen: &Party {
            name: "Kitchen".into(),
            ..Party::default()
        },
        bought: &HashMap::new(),
        cleaned,
        ground: &[],
        checked: &BTreeMap::from([("T1".to_owned(), vec![at("06:00")])]),
        zone: chrono_tz::Tz::UTC,
    };
    log(kind, doings, &known)
}

fn holes(log: &Log) -> Vec<(Column, &str)> {
    let cells = log.entries.iter().flat_map(|entry| &entry.cells);
    let of = |cell: &'_ Cell| cell.column;
    let mut found = Vec::new();
    for cell in cells {
        for hole in &cell.holes {
            found.push((of(cell), hole.field.as_str()));
        }
    }
    found
}

fn values(log: &Log, column: Column) -> &[Value] {
    let mut cells = log.entries[0].cells.iter();
    &cells.find(|cell| cell.column == column).unwrap().values
}

#[test]
fn what_a_rule_wants_of_a_shipping_and_nobody_wrote_down_is_a_hole() {
    let fields = ["receiver", "receiver-telephone", "carrier"];
    let law = law(Record::OneUpOneDown, Occasion::SellToBusiness, &fields);
    let mut shipped = doing(DeedKind::Ship, "09:00");
    let lacks = |doing: &Doing| {
        let log = told(LogKind::Departures, std::slice::from_ref(doing), &law, &[]);
        holes(&log)
            .iter()
            .map(|(column, _)| *column)
            .collect::<Vec<_>>()
    };
    assert_eq!(
        lacks(&shipped),
        [Column::To, Column::ToTelephone, Column::Carrier]
    );
    shipped.told.to = Some("The Inn".into());
    assert_eq!(lacks(&shipped), [Column::ToTelephone, Column::Carrier]);
    // A sale over the counter is another occasion; what was voided lacks nothing.
    assert!(lacks(&doing(DeedKind::Sell, "09:00")).is_empty());
    shipped.undone = Some(UndoneBy {
        by: "Oda Marsh".into(),
        at: at("10:00"),
        why: "wrong pack".into(),
    });
    assert!(lacks(&shipped).is_empty());
}

#[test]
fn the_clean_downs_before_and_after_are_those_of_the_same_place() {
    let cleaned = |place: i32, when: &str| Cleaned {
        place: PlaceId(place),
        at: at(when),
    };
    let all = [
        cleaned(3, "06:00"),
        cleaned(3, "07:00"),
        cleaned(4, "08:30"),
        cleaned(3, "11:00"),
    ];
    let log = told(
        LogKind::Grinding,
        &[doing(DeedKind::Grind, "09:00")],
        &Law::default(),
        &all,
    );
    assert_eq!(
        values(&log, Column::CleanedBefore),
        [Value::Moment(at("07:00"))]
    );
    assert_eq!(
        values(&log, Column::CleanedAfter),
        [Value::Moment(at("11:00"))]
    );
    assert_eq!(
        values(&log, Column::CarriedOver),
        [Value::says(LogsSays::CarriedNothing)]
    );
}

#[test]
fn the_hottest_and_the_last_of_a_chart_are_told() {
    let point = |when: &str, celsius: i32| CorePoint {
        at: at(when),
        read: Temperature::celsius(celsius),
        probe: Some("T1".into()),
    };
    let mut cooked = doing(DeedKind::Cook, "12:00");
    cooked.points = vec![point("08:00", 4), point("09:00", 74), point("12:00", 5)];
    cooked.told.cooling_plan = Some("usual".into());
    let doings = [cooked];
    let cooking = told(LogKind::Cooking, &doings, &Law::default(), &[]);
    assert_eq!(
        values(&cooking, Column::Hottest),
        [Value::Temperature(Temperature::celsius(74))]
    );
    assert_eq!(values(&cooking, Column::Chart).len(), 3);
    let cooling = told(LogKind::Cooling, &doings, &Law::default(), &[]);
    let (from, to) = (point("09:00", 74), point("12:00", 5));
    assert_eq!(
        values(&cooling, Column::CooledFrom),
        [Value::Point {
            at: from.at,
            read: from.read
        }]
    );
    assert_eq!(
        values(&cooling, Column::CooledTo),
        [Value::Point {
            at: to.at,
            read: to.read
        }]
    );
    let probe = LogsSays::WithProbe {
        probe: "T1".into(),
        checked: at("06:00").naive_utc(),
    };
    assert_eq!(values(&cooling, Column::Probe), [Value::says(probe)]);
}

#[test]
fn only_what_was_read_stands_among_the_temperatures() {
    let mut weighed = doing(DeedKind::Measure, "09:00");
    let read = |quantity| Read {
        lot: None,
        quantity,
        millionths: 3_400_000,
        probe: None,
    };
    weighed.read = vec![read(Quantity::Ph)];
    let mut cold = doing(DeedKind::Measure, "10:00");
    cold.read = vec![read(Quantity::Celsius)];
    let mut probe = doing(DeedKind::CheckProbe, "11:00");
    probe.probe = Some(ProbeShown {
        probe: "T1".into(),
        bath: Bath::Ice,
        read: Temperature::celsius(0),
    });
    let log = told(
        LogKind::Temperatures,
        &[weighed, cold, probe],
        &Law::default(),
        &[],
    );
    let kinds: Vec<DeedKind> = log.entries.iter().map(|entry| entry.deed).collect();
    assert_eq!(kinds, [DeedKind::Measure, DeedKind::CheckProbe]);
}

#[test]
fn a_frozen_piece_needs_a_chart_and_a_certified_one_does_not() {
    let names = ["lot-code", "chart", "salt", "casing", "actual", "deviation"];
    let law = law(Record::TrichinaeTreatment, Occasion::TreatTrichinae, &names);
    let lacks = |treated: TreatedAs| {
        let mut released = doing(DeedKind::Release, "09:00");
        released.told.treated = vec![treated];
        let log = told(LogKind::Trichinae, &[released], &law, &[]);
        let found: Vec<String> = holes(&log)
            .iter()
            .map(|(_, field)| (*field).to_owned())
            .collect();
        found
    };
    let frozen = TreatedAs::Frozen {
        read: Temperature::celsius(-15),
        hours: 480,
        thickness: None,
    };
    assert_eq!(lacks(frozen), ["lot-code"]);
    let dried = TreatedAs::Dried {
        method: "sausage-1".into(),
        casing: None,
    };
    assert_eq!(
        lacks(dried),
        ["lot-code", "salt", "casing", "chart", "actual"]
    );
    let paper = TreatedAs::Certificate {
        way: "carcass-tested".into(),
        paper: "T-1".into(),
    };
    assert_eq!(lacks(paper), ["lot-code"]);
}

#[test]
fn a_log_is_due_by_the_record_that_stands_in_it() {
    let law = law(Record::GroundBeefLog, Occasion::GrindBeef, &["cleaned-at"]);
    let rows = |kind| {
        let due = due(&law.duties, kind);
        due.iter().map(|due| due.columns.len()).collect::<Vec<_>>()
    };
    assert_eq!(rows(LogKind::Grinding), [2], "before and after");
    assert_eq!(rows(LogKind::CleanDowns), [1]);
    assert!(rows(LogKind::Curing).is_empty());
}
