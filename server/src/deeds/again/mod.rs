//! What is on record is judged again, because a fact of it was wrong: the deeds that follow from it are
//! planned anew, each by its own rules, with what was right from the start; and what differs is written down.

mod asked;
mod kin;
mod left;
mod lists;
mod pot;
mod receipt;
mod step;
mod stops;
mod told;
mod write;

pub use asked::{effective, fields, request};
pub use told::{told, undone};
pub use write::write;

use super::facts::{Facts, Past};
use super::says::CorrectDeedSays;
use crate::error::Result;
use crate::wire::answers::DeedDone;
use chrono::{DateTime, Utc};
use domain::dates::Because;
use domain::lot::PlaceId;
use domain::moment::Moment;
use domain::rows::RowId;
use domain::words::{DeedKind, StepKind};
use kin::Kin;
use std::collections::HashSet;
use store::again::Happened;
use store::deeds::DeedRow;

/// Lots that were judged again.
pub struct Judged {
    kin: Kin,
    /// The lots that the corrected deed made, touched or read.
    pub roots: Vec<i32>,
}

/// Judges everything again that follows from a deed, of which more is known now. `undone` is the correction
/// that counts no longer, where one was voided: what was made in between of what it had changed was made of
/// something else.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn judge(
    facts: &mut Facts<'_, '_>,
    corrected: &DeedRow,
    undone: Option<i32>,
) -> Result<Judged> {
    let roots = store::again::roots(facts.tx.conn, corrected.id)?;
    let kind = corrected.kind()?;
    let makes = matches!(kind, DeedKind::Receive | DeedKind::Adopt)
        || StepKind::parse(kind.as_str()).is_some();
    let known = store::corrections::of_deeds(facts.tx.conn, &[corrected.id])?;
    let mut tells_stuffed = false;
    for correction in &known {
        tells_stuffed |= fields(&correction.now)?.contains_key("stuffed");
    }
    judged(facts, roots, undone, Some(corrected), |kin, roots| {
        if !makes {
            // A reading of the lots: their births stay, what was read of them since does not.
            kin.touch(roots);
        }
        if kin.is_of_an_animal(roots) {
            // When it was killed is no part of what a lot is, and asked through any number of cuts when
            // something of it is minced.
            kin.tell_all();
        }
        if tells_stuffed {
            // What it is made into is what asks whether the meat is stuffed.
            kin.tell_all();
        }
    })
}

/// Judges the cures again that waited for a row of the law, and all that was made of them, once it is confirmed:
/// what is over it has broken it, as if it had been confirmed when it was made.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn confirmed(
    facts: &mut Facts<'_, '_>,
    lots: Vec<i32>,
    row: &RowId,
    done: &mut DeedDone,
) -> Result<()> {
    let rows = store::lots::by_keys(facts.tx.conn, &lots)?;
    let stand = rows.into_iter().filter(|lot| !lot.voided);
    let (lots, makers): (Vec<i32>, HashSet<i32>) = stand.map(|lot| (lot.id, lot.deed_id)).unzip();
    if lots.is_empty() {
        return Ok(());
    }
    let judged = judged(facts, lots, None, None, |kin, _| kin.asked = makers)?;
    let (by, row) = (facts.by.clone(), row.clone());
    let because = Because::house(
        CorrectDeedSays::RowConfirmed { by, row },
        CorrectDeedSays::Rule,
    );
    write::write_into(facts, done, judged, &because)
}

/// Judges everything again that was made of some lots since a moment: something happened to them then that
/// was not known yet, or that counts no longer, where `undone` was voided.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn judge_since(
    facts: &mut Facts<'_, '_>,
    roots: Vec<i32>,
    since: DateTime<Utc>,
    undone: Option<i32>,
) -> Result<Judged> {
    judged(facts, roots, undone, None, |kin, roots| {
        kin.tell(roots, since.naive_utc());
    })
}

fn judged(
    facts: &mut Facts<'_, '_>,
    roots: Vec<i32>,
    undone: Option<i32>,
    corrected: Option<&DeedRow>,
    say: impl FnOnce(&mut Kin, &[i32]),
) -> Result<Judged> {
    let all = store::again::load(facts.tx, &roots)?;
    let (moment, place) = (facts.moment, facts.place);
    facts.past = Some(past(&all)?);
    let mut kin = Kin::of(facts, all)?;
    if let Some(undone) = undone {
        kin.touch(&store::again::judged_by(facts.tx.conn, undone)?);
    }
    say(&mut kin, &roots);
    let judged = every(facts, &mut kin, corrected);
    (facts.moment, facts.place, facts.past) = (moment, place, None);
    judged?;
    Ok(Judged { kin, roots })
}

/// Judges deed after deed, in the order in which they happened. What nothing that changed went into is as it
/// was.
fn every(facts: &mut Facts<'_, '_>, kin: &mut Kin, corrected: Option<&DeedRow>) -> Result<()> {
    let deeds: Vec<(Happened, DeedRow)> = kin.deeds();
    for (happened, deed) in deeds {
        let is_it = corrected.is_some_and(|corrected| deed.id == corrected.id);
        let kind = deed.kind()?;
        let step = StepKind::parse(kind.as_str());
        let is_asked = kin.asked.contains(&deed.id);
        let follows = step.is_some()
            && deed.id != facts.deed
            && (is_asked || kin.is_drawn_from_changed(deed.id, deed.at));
        if !is_it && !follows {
            continue;
        }
        facts.moment = Moment {
            at: deed.at.and_utc(),
            began_at: deed.began_at.map(|began| began.and_utc()),
            recorded_at: deed.recorded_at.and_utc(),
            day: deed.day,
            late: deed.late,
        };
        facts.place = deed.place_id.map(PlaceId);
        if let Some(past) = &mut facts.past {
            past.until = happened.1;
        }
        match (kind, step) {
            (DeedKind::Receive, _) => receipt::again(facts, kin, &deed)?,
            (DeedKind::Adopt, _) => pot::again(facts, kin, &deed)?,
            (_, Some(kind)) => step::again(facts, kin, happened, &deed, kind, is_it)?,
            _ => {}
        }
    }
    Ok(())
}

fn past(all: &store::again::Everything) -> Result<Past> {
    let mut past = Past::default();
    for (lot, readings) in &all.readings {
        let of = past.readings.entry(*lot).or_default();
        for reading in readings {
            let recorded = all.happened.get(&reading.deed_id).map(|(_, by)| *by);
            let quantity = store::measurements::quantity(&reading.quantity)?;
            let recorded = recorded.unwrap_or_default();
            of.push((recorded, reading.at, quantity, reading.millionths));
        }
    }
    Ok(past)
}
