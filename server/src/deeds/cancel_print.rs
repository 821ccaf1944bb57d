//! Labels that still wait are wanted no more.

use super::says::PrintDeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::prints as read;
use crate::wire::prints::{CancellationAsked, PrintsDone};
use domain::print::Heard;
use domain::words::DeedKind;
use store::{print_runs, prints};

/// Takes labels out of the queue.
///
/// # Errors
/// 404 for a print that never was; 409 for one that is on its way, or was printed.
pub fn take(app: &Caller<'_>, asked: &CancellationAsked) -> Result<Done> {
    let mut numbers = asked.prints.clone();
    numbers.sort_unstable();
    numbers.dedup();
    if numbers.is_empty() || numbers.len() > super::print::MOST {
        return Err(Error::cannot_be("prints", PrintDeedSays::NameWaiting));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::CancelPrint,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    perform(app, header, asked, |facts| {
        let by = facts.by.clone();
        let says = PrintDeedSays::CancelledBy { by }.into();
        let at = facts.moment.recorded_at.naive_utc();
        let mut cancelled = Vec::with_capacity(numbers.len());
        for number in &numbers {
            let found = prints::by_key(facts.tx.conn, *number)?;
            let mut print = found.ok_or_else(|| {
                let print = number.to_string();
                Error::not_found(PrintDeedSays::Unknown { print })
            })?;
            let known = print.run.known()?;
            let next = known.after(Heard::Cancelled);
            if next == known {
                let detail = PrintDeedSays::WaitsNoMore {
                    print: *number,
                    state: known.state,
                };
                return Err(Error::clash("prints", detail));
            }
            let run = print.run.with(next);
            let changed = print_runs::change(facts.tx, &print.run, &run, Some(&says), at)?;
            print.run =
                changed.ok_or_else(|| store::Error::Conflict("a print has moved on".into()))?;
            cancelled.push(print);
        }
        Ok(PrintsDone {
            id: asked.id.0.to_string(),
            kind: DeedKind::CancelPrint.as_str().into(),
            late: false,
            prints: read::read(app, facts.tx.conn, &cancelled)?,
            document: None,
            warnings: Vec::new(),
            warning_keys: Vec::new(),
            said: Vec::new(),
        })
    })
}
