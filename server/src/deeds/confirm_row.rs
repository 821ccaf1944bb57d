//! A named person has read a row of the law and confirms it for this kitchen.

use super::again;
use super::facts::Facts;
use super::says::DeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::entry::lock;
use crate::lists::standing::{CONFIRMED, IS_CONFIRMED};
use crate::wire::rows::RowConfirmationAsked;
use domain::plan::Plan;
use domain::rows::RowId;
use domain::words::{DeedKind, Disposal};
use std::sync::Arc;
use store::deeds::DeedRow;
use store::entries::{self, EntryBody};

/// Records a confirmation. What waited for it is judged by the row from then on: it is free where it keeps to it,
/// and failed where it is over it.
/// Somebody may confirm it once more: then the second word stands beside the first.
///
/// # Errors
/// 422 for a row that the place does not have, or has confirmed; where nothing says what was read, or where.
pub fn take(app: &Caller<'_>, asked: &RowConfirmationAsked) -> Result<Done> {
    if asked.text.0.is_empty() {
        return Err(Error::cannot_be("text", DeedSays::WhatWasRead));
    }
    if asked.read_in.0.is_empty() {
        return Err(Error::cannot_be("read_in", DeedSays::WhereRead));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::ConfirmRow,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: Some(&asked.read_in),
    };
    perform(app, header, asked, |facts| {
        let row = RowId::new(&asked.row.0);
        let place = facts.kitchen.entry.profile.0;
        let known = facts.app.law.laws.of(place).rows.get(&row);
        let known = known.ok_or_else(|| {
            let row = row.clone();
            Error::cannot_be(
                "row",
                DeedSays::NoSuchRow {
                    row,
                    place: place.to_string(),
                },
            )
        })?;
        if known.is_confirmed() {
            return Err(Error::cannot_be("row", DeedSays::RowConfirmed { row }));
        }
        keep(facts, &row, IS_CONFIRMED)?;
        Arc::make_mut(&mut facts.standing)
            .confirmed
            .insert(row.clone());
        let (waiting, lots) = store::stops::waiting_for(facts.tx.conn, &row)?;
        let waiting = waiting.into_iter();
        let plan = Plan {
            ends: waiting.map(|stop| (stop, Disposal::PutRight)).collect(),
            ..Plan::default()
        };
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::ConfirmRow, &plan)?;
        again::confirmed(facts, lots, &row, &mut done)?;
        Ok(done)
    })
}

/// Writes down how a row stands; everybody who reads the lists sees it.
fn keep(facts: &mut Facts<'_, '_>, row: &RowId, text: &str) -> Result<()> {
    lock(facts.tx)?;
    let body = EntryBody {
        text,
        search: "",
        at: facts.moment.recorded_at.naive_utc(),
    };
    match entries::get(facts.tx.conn, CONFIRMED, row.as_str())? {
        Some(known) => entries::replace(facts.tx, &known, body)?,
        None => entries::insert(facts.tx, CONFIRMED, row.as_str(), body)?,
    }
    Ok(())
}

/// A confirmation is voided: the row only warns again, and what waited for it waits again.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn take_back(facts: &mut Facts<'_, '_>, deed: &DeedRow) -> Result<()> {
    let asked: RowConfirmationAsked =
        serde_json::from_str(&deed.request).map_err(|error| crate::app::damaged(&error))?;
    let row = RowId::new(&asked.row.0);
    keep(facts, &row, "taken back")?;
    Arc::make_mut(&mut facts.standing).confirmed.remove(&row);
    Ok(())
}
