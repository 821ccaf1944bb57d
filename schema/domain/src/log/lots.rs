//! The cells that most logs share: when, who, where, and the lots.

use super::doing::Doing;
use super::entry::Filled;
use super::kind::Column;
use super::source::{Known, named, once};
use super::value::Value;
use crate::dates::Because;
use crate::grams::Grams;
use crate::lot::LotId;
use crate::words::Topic;

/// When, where, who, what was done, and a word about it.
pub fn done(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    vec![
        Filled::whole(Column::At, [Value::Moment(doing.at)]),
        Filled::whole(Column::Began, doing.began_at.map(Value::Moment)),
        Filled::whole(Column::Step, [Value::says(doing.kind.says())]),
        Filled::whole(Column::Place, known.place(doing.place)),
        Filled::whole(Column::By, Value::text(Some(&doing.by))),
        Filled::whole(Column::Note, Value::text(doing.note.as_ref())),
    ]
}

/// The lots, what they are called, what they weighed when they were made, their packs and their date.
pub fn lots(lots: &[LotId], known: &Known<'_>) -> Vec<Filled> {
    let all: Vec<_> = lots.iter().filter_map(|lot| known.lot(*lot)).collect();
    let weights = all.iter().map(|of| Value::Weight(of.made()));
    let packs: u32 = all.iter().map(|of| of.lot.pack_count).sum();
    let dates = all.iter().filter_map(|of| of.born_use_by.map(Value::Day));
    vec![
        codes(lots, known),
        Filled::whole(
            Column::Product,
            once(all.iter().map(|of| Value::Named(named(of)))),
        ),
        Filled::whole(Column::Weight, weights),
        Filled::whole(Column::Packs, (packs > 0).then_some(Value::Count(packs))),
        Filled::whole(Column::UseBy, once(dates)),
    ]
}

/// The codes of lots.
pub fn codes(lots: &[LotId], known: &Known<'_>) -> Filled {
    let all = lots.iter().filter_map(|lot| known.lot(*lot));
    Filled::whole(
        Column::Lot,
        all.map(|of| Value::Lot(of.lot.code.clone(), None)),
    )
}

/// What went into a deed, lot by lot.
pub fn materials(doing: &Doing, known: &Known<'_>) -> Filled {
    let used = doing.used();
    Filled::of_each(
        Column::Materials,
        used.iter()
            .map(|(lot, grams)| material(*lot, *grams, known)),
    )
}

fn material(lot: LotId, grams: Grams, known: &Known<'_>) -> Option<Value> {
    let of = known.lot(lot)?;
    Some(Value::Material {
        lot: of.lot.code.clone(),
        product: named(of),
        grams,
    })
}

/// What was found about some topics, each link once; the rows behind each stand with it.
pub fn found(doing: &Doing, topics: &[Topic]) -> Filled {
    let reasons = doing.reasons.iter().map(|(_, reason)| reason);
    let reasons = reasons.filter(|reason| topics.contains(&reason.topic));
    let stops = doing.stops.iter().map(|(_, cause)| cause);
    let stops = stops.filter(|cause| topics.contains(&cause.topic));
    let all = reasons
        .map(|reason| &reason.because)
        .chain(stops.map(|cause| &cause.because));
    Filled::whole(Column::Found, once(all.map(because)))
}

/// A link, with the rows that it rests on.
pub fn because(of: &Because) -> Value {
    Value::Said {
        says: of.says.clone(),
        rows: of.rows().to_vec(),
    }
}

/// The temperature that was read once, and with which probe.
pub fn temperature(doing: &Doing, known: &Known<'_>) -> Vec<Filled> {
    let read = doing.temperatures().into_iter().map(Value::Temperature);
    vec![
        Filled::whole(Column::Temperature, read),
        Filled::whole(Column::Probe, known.probes(&doing.probes(), doing.at)),
    ]
}

/// The points of its log.
pub fn chart(doing: &Doing) -> Filled {
    let points = doing.points.iter();
    Filled::whole(
        Column::Chart,
        points.map(|point| Value::Point {
            at: point.at,
            read: point.read,
        }),
    )
}
