//! What stands on the tag of a piece that lies in salt or hangs.

use super::kitchen::allergens;
use super::phrases::LabelWords;
use super::writer::{Said, Writer};
use chrono::{Days, NaiveDate};
use domain::cure_room::{Piece, Task};
use domain::family::lying;
use domain::grams::Grams;
use domain::moment::day_of;
use domain::words::State;
use labels::Field;
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use words::Mass;

/// The most days of turning that the tag names one by one.
const MOST_TURNS: usize = 3;

/// The days on which a piece is still to be turned, as a tag can say them. Who reads three days takes them for all:
/// where there are more, it says so.
#[derive(Debug, PartialEq, Eq)]
enum Turning<'a> {
    Never,
    /// On these days, and no others.
    On(&'a [NaiveDate]),
    /// So many days apart, from the first to the last.
    Every(i64, NaiveDate, NaiveDate),
    /// On these days first; the calendar of the cure room has the rest.
    OnAndMore(&'a [NaiveDate]),
}

impl Turning<'_> {
    fn of(days: &[NaiveDate]) -> Turning<'_> {
        let (Some(first), Some(last)) = (days.first(), days.last()) else {
            return Turning::Never;
        };
        if days.len() <= MOST_TURNS {
            return Turning::On(days);
        }
        let between = |pair: &[NaiveDate]| (pair[1] - pair[0]).num_days();
        let apart = between(days);
        match days.windows(2).all(|pair| between(pair) == apart) {
            true => Turning::Every(apart, *first, *last),
            false => Turning::OnAndMore(&days[..MOST_TURNS]),
        }
    }
}

/// What the tag says. Without a piece on record (the label was asked for by name), its weight stands
/// for the green weight.
pub fn of_lot(writer: &Writer<'_>, said: &mut Said) {
    let piece = writer.piece();
    let first = writer.first;
    said.say(Field::Heading, first.text("label-not-released"));
    // Before its release nothing is ready to eat.
    if !writer.product.raw {
        said.0.remove(&Field::Kind);
    }
    said.say(Field::ColumnDay, first.text("label-column-day"));
    let unit = match writer.kitchen.mass() {
        Mass::Metric => "kg",
        Mass::Pounds => "lb",
    };
    said.say(Field::ColumnWeight, unit);
    said.say(Field::ColumnWho, first.text("label-column-who"));
    allergens(writer, said);
    said.0.remove(&Field::SecondAllergens);
    let green = piece
        .as_ref()
        .map_or(writer.view.of.made(), |piece| piece.green);
    let weight = writer.scale_weight(green);
    said.say(Field::Green, first.say(LabelWords::Green { weight }));
    if let Some(piece) = &piece {
        let day = first.short_date(piece.in_salt);
        said.say(Field::Salted, first.say(LabelWords::Salted { day }));
        said.say(Field::Turns, turns(writer, piece));
        said.say(Field::Release, release(writer, piece, green));
    }
    if let Some(animal) = writer.animal() {
        let farm = writer.lists().farm(&animal.farm).to_owned();
        let day = first.short_date(animal.killed_on);
        said.say(Field::From, first.say(LabelWords::FarmKilled { farm, day }));
    }
}

/// What differs from piece to piece of a lot that hangs as several: each has its own green weight and its own target, by
/// its share of what went into the salt.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32) {
    let of = writer.lot.pack_count;
    let (Some(piece), true) = (writer.piece(), of > 1) else {
        return;
    };
    let whole = i128::from(writer.view.of.made().milligrams().max(1));
    let own = i128::from(writer.pack(number).made.milligrams());
    let green = i128::from(piece.green.milligrams()) * own / whole;
    let green = Grams::from_milligrams(i64::try_from(green).unwrap_or(i64::MAX));
    let weight = writer.scale_weight(green);
    let line = LabelWords::GreenOf {
        weight,
        nth: number,
        of,
    };
    said.say(Field::Green, writer.first.say(line));
    said.say(Field::Release, release(writer, &piece, green));
}

/// One tag for all pieces of a lot: what they weigh together, and what they must weigh together.
pub fn together(writer: &Writer<'_>, said: &mut Said) {
    let first = &writer.first;
    let piece = writer.piece();
    let green = piece
        .as_ref()
        .map_or(writer.view.of.made(), |piece| piece.green);
    let weight = writer.scale_weight(green);
    let pieces = writer.lot.pack_count;
    let line = LabelWords::GreenTogether { weight, pieces };
    said.say(Field::Green, first.say(line));
    if let Some(piece) = &piece {
        said.say(Field::Release, release(writer, piece, green));
    }
}

/// What lies in its cure to be smoked or cooked afterwards has no last day yet: its label says the day it comes out in
/// that place, and the next days on which it is turned. A day that is no last day never stands under those words.
pub fn lies(writer: &Writer<'_>, said: &mut Said, number: u32) {
    let now = &writer.pack(number).now;
    if writer.product.cured.lies.is_none() || now.use_by.is_some() || now.state == State::Frozen {
        return;
    }
    let (zone, rules) = (writer.kitchen.zone, &writer.app.law.trade.cure_room);
    let today = day_of(writer.reading.now, zone);
    let found = lying(&writer.reading.family, [writer.lot.id], zone, today, rules);
    let view = found.into_iter().find(|view| !view.is_out());
    let Some((out, mut piece)) = view.and_then(|view| Some((view.ready()?, view.piece))) else {
        return;
    };
    let first = &writer.first;
    said.say(Field::UseByHeading, first.text("label-out-of-cure"));
    said.say(Field::UseBy, first.date(out));
    said.say(Field::UseByShort, first.day_label(out));
    if let Some(second) = &writer.second {
        let day = second.short_date(out);
        said.say(
            Field::SecondUseBy,
            second.say(LabelWords::OutOfCureOn { day }),
        );
    }
    let day = first.short_date(piece.in_salt);
    let salted = first.say(LabelWords::Salted { day });
    piece.plan.retain(|planned| planned.day > today);
    let turns = turns(writer, &piece);
    said.say(
        Field::Made,
        [salted, turns].join(". ").trim_end_matches(". "),
    );
}

/// The days on which it is still to be turned in its salt.
fn turns(writer: &Writer<'_>, piece: &Piece) -> String {
    let first = &writer.first;
    let days: Vec<NaiveDate> = piece
        .plan
        .iter()
        .filter(|planned| matches!(planned.task, Task::Turn | Task::Overhaul))
        .map(|planned| planned.day)
        .collect();
    let listed = |days: &[NaiveDate]| {
        let days = days.iter().map(|day| first.day_of_month(*day));
        days.collect::<Vec<_>>().join(", ")
    };
    match Turning::of(&days) {
        Turning::Never => String::new(),
        Turning::On(days) => first.say(LabelWords::Turns { days: listed(days) }),
        Turning::Every(apart, from, until) => first.say(LabelWords::TurnsEvery {
            apart,
            from: first.day_of_month(from),
            until: first.day_of_month(until),
        }),
        Turning::OnAndMore(days) => first.say(LabelWords::TurnsAndMore { days: listed(days) }),
    }
}

/// What must be met before it is released: the target weight and the first day.
fn release(writer: &Writer<'_>, piece: &Piece, green: Grams) -> String {
    let first = &writer.first;
    let target = piece.rule.loss.and_then(|loss| {
        let kept = Decimal::ONE_HUNDRED - loss.number();
        let milligrams = Decimal::from(green.milligrams()) * kept / Decimal::ONE_HUNDRED;
        let grams = Grams::from_milligrams(milligrams.floor().to_i64()?);
        Some(first.say(LabelWords::ReleaseTarget {
            weight: writer.scale_weight(grams),
            loss: loss.number(),
        }))
    });
    let day = piece
        .rule
        .days
        .and_then(|days| piece.in_salt.checked_add_days(Days::new(days.into())))
        .map(|day| first.short_date(day));
    match (target, day) {
        (None, None) => String::new(),
        (Some(target), None) => first.say(LabelWords::Release { target }),
        (None, Some(day)) => first.say(LabelWords::ReleaseFrom { day }),
        (Some(target), Some(day)) => first.say(LabelWords::ReleaseBoth { target, day }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn days(of_june: &[u32]) -> Vec<NaiveDate> {
        let day = |day: &u32| NaiveDate::from_ymd_opt(2026, 6, *day).expect("a day of June");
        of_june.iter().map(day).collect()
    }

    #[test]
    fn a_tag_never_names_some_of_the_days_as_if_they_were_all() {
        assert_eq!(Turning::of(&[]), Turning::Never);
        let few = days(&[1, 3, 9]);
        assert_eq!(Turning::of(&few), Turning::On(&few));
        let daily = days(&[1, 2, 3, 4]);
        assert_eq!(Turning::of(&daily), Turning::Every(1, daily[0], daily[3]));
        let weekly = days(&[1, 8, 15, 22, 29]);
        let every = Turning::Every(7, weekly[0], weekly[4]);
        assert_eq!(Turning::of(&weekly), every);
        let odd = days(&[1, 8, 15, 20]);
        assert_eq!(Turning::of(&odd), Turning::OnAndMore(&odd[..3]));
    }
}
