//! The labels of what was undone: those that still wait are wanted no more, those that may be out are to be taken off.

use super::facts::Facts;
use super::says::{DeedSays, PrintDeedSays};
use crate::error::Result;
use domain::code::LotCode;
use domain::lot::numbers::in_runs;
use domain::print::Heard;
use domain::says::Says;
use std::collections::HashMap;
use store::deeds::DeedRow;
use store::prints::Print;
use store::voids::Hanging;
use store::{print_runs, prints};

/// Cancels what still waits of the labels of a deed that is being voided, and says so; and says which labels may be
/// out, so that somebody takes them off. One that the printer has already is followed to its end.
///
/// # Errors
/// The database is away; a conflict, where a label has moved on meanwhile.
pub(super) fn labels(
    facts: &mut Facts<'_, '_>,
    deed: &DeedRow,
    hanging: &Hanging,
) -> Result<Vec<Says>> {
    let born: Vec<i32> = hanging.births.iter().map(|lot| lot.id).collect();
    let touched: Vec<i32> = hanging.touched.iter().map(|(_, pack, _)| pack.id).collect();
    let by = facts.by.clone();
    let why = PrintDeedSays::UndoneBy { by }.into();
    let at = facts.moment.recorded_at.naive_utc();
    let mut cancelled = 0;
    let mut out: HashMap<i32, Vec<u32>> = HashMap::new();
    for Print { row, run } in prints::since(facts.tx.conn, deed.id, &born, &touched)? {
        let known = run.known()?;
        let next = known.after(Heard::Undone);
        if next != known {
            let changed = print_runs::change(facts.tx, &run, &run.with(next), Some(&why), at)?;
            changed.ok_or_else(|| store::Error::Conflict("a print has moved on".into()))?;
            cancelled += 1;
        } else if known.may_be_out() {
            let number = row.number.unsigned_abs();
            out.entry(row.lot_id).or_default().push(number);
        }
    }
    let mut said = Vec::new();
    if cancelled > 0 {
        said.push(DeedSays::LabelsCancelled { labels: cancelled }.into());
    }
    // Of a pack that was only touched, the label that is out is judged by what it says.
    let mut off = Vec::new();
    for lot in &hanging.births {
        if let Some(numbers) = out.remove(&lot.id) {
            off.push(named(&lot.code()?, lot.pack_count, numbers));
        }
    }
    if !off.is_empty() {
        let lots = off.join("; ");
        said.push(DeedSays::TakeOff { lots }.into());
    }
    Ok(said)
}

/// The labels of a lot by their packs, as they stand on the labels.
fn named(code: &LotCode, packs: i32, mut numbers: Vec<u32>) -> String {
    numbers.sort_unstable();
    numbers.dedup();
    match packs {
        1 => code.shown(),
        _ => format!("{} / {}", code.shown(), in_runs(&numbers)),
    }
}
