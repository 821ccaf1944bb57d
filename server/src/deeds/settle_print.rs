//! Somebody looked which labels came out, and says so pack by pack.

use super::facts::Facts;
use super::says::PrintDeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::read::prints as read;
use crate::wire::prints::{PrintsDone, SettledAsked, SettlementAsked};
use domain::print::Heard;
use domain::says::Says;
use domain::words::{DeedKind, PrintState};
use std::collections::BTreeSet;
use store::prints::{self, Print, PrintRow};
use store::{lots, print_runs};

/// Records what was seen. What did not come out is printed once more, unless told otherwise: that is
/// no reprint, since there is no first.
///
/// # Errors
/// 404 for a print that never was; 409 for one that the printer has still to do with.
pub fn take(app: &Caller<'_>, asked: &SettlementAsked) -> Result<Done> {
    if asked.prints.is_empty() || asked.prints.len() > super::print::MOST {
        return Err(Error::cannot_be("prints", PrintDeedSays::NameSeen));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::SettlePrint,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref(),
    };
    let done = perform(app, header, asked, |facts| {
        let mut seen = BTreeSet::new();
        let mut warnings = Vec::new();
        let mut settled = Vec::new();
        let mut anew = Vec::new();
        for (nth, one) in asked.prints.iter().enumerate() {
            let field = format!("prints[{nth}].print");
            if !seen.insert(one.print) {
                return Err(Error::cannot_be(field, PrintDeedSays::NamedTwice));
            }
            let by = facts.by.clone();
            let print = settle(facts, *one, &by, &field)?;
            // A document is asked for anew: no printer waits for it.
            let again = asked.again != Some(false) && !print.run.is_document();
            if !one.came_out && again {
                match once_more(facts, &print)? {
                    Ok(row) => anew.push(row),
                    Err(warning) => warnings.push(warning),
                }
            }
            settled.push(print);
        }
        let at = facts.moment.recorded_at.naive_utc();
        settled.extend(prints::insert(facts.tx, anew, at)?);
        Ok(PrintsDone {
            id: asked.id.0.to_string(),
            kind: DeedKind::SettlePrint.as_str().into(),
            late: false,
            prints: read::read(app, facts.tx.conn, &settled)?,
            document: None,
            warnings: Vec::new(),
            warning_keys: Vec::new(),
            said: warnings.into_iter().map(Says::from).collect(),
        })
    })?;
    app.bell.ring();
    Ok(done)
}

fn settle(facts: &mut Facts<'_, '_>, one: SettledAsked, by: &str, field: &str) -> Result<Print> {
    let print = prints::by_key(facts.tx.conn, one.print)?;
    let Some(mut print) = print else {
        let print = one.print.to_string();
        return Err(Error::not_found(PrintDeedSays::Unknown { print }));
    };
    // Those who ask for the same pack at the same time are one after the other.
    lots::lock_keys(facts.tx, &[print.row.lot_id])?;
    let known = print.run.known()?;
    let heard = match one.came_out {
        true => Heard::CameOut,
        false => Heard::DidNotComeOut,
    };
    let next = known.after(heard);
    if next == known {
        let print = one.print;
        let detail = match (known.state, one.came_out) {
            (PrintState::Printed, true) => PrintDeedSays::PrintedAlready { print },
            (state, _) => PrintDeedSays::NotSettled { print, state },
        };
        return Err(Error::clash(field, detail));
    }
    let mut run = print.run.with(next);
    run.trouble = None;
    let by = by.to_owned();
    let says = match one.came_out {
        true => PrintDeedSays::SeenOut { by },
        false => PrintDeedSays::SeenMissing { by },
    }
    .into();
    let at = facts.moment.recorded_at.naive_utc();
    let changed = print_runs::change(facts.tx, &print.run, &run, Some(&says), at)?;
    // Somebody else was faster: looked at anew.
    print.run = changed.ok_or_else(|| store::Error::Conflict("a print was settled".into()))?;
    Ok(print)
}

/// The same label under the same number; or why it is not printed.
fn once_more(
    facts: &mut Facts<'_, '_>,
    print: &Print,
) -> Result<std::result::Result<PrintRow, PrintDeedSays>> {
    let lot = lots::by_keys(facts.tx.conn, &[print.row.lot_id])?.remove(0);
    let pack = format!("{} / {}", lot.code()?.shown(), print.row.number);
    if lot.voided {
        return Ok(Err(PrintDeedSays::LotVoided { pack }));
    }
    for other in prints::of_lot(facts.tx.conn, lot.id)? {
        if other.row.pack_id == print.row.pack_id && other.run.known()?.state.counts() {
            let print = other.row.id;
            return Ok(Err(PrintDeedSays::AnotherLabel { pack, print }));
        }
    }
    Ok(Ok(PrintRow {
        id: 0,
        deed_id: facts.deed,
        instead_of: Some(print.row.id),
        ..print.row.clone()
    }))
}
