//! Labels that somebody asked a printer for: what was asked, and what each label says.

use crate::chain;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::print_runs::{self, RunRow};
use crate::tables::{packs, print_runs as runs, prints};
use crate::{insert_rows, wrong_labels};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use domain::says::Says;
use domain::words::PrintState;

/// A print as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = prints, treat_none_as_default_value = false)]
pub struct PrintRow {
    /// Its key, which people see as its number.
    pub id: i32,
    /// The deed that asked for it.
    pub deed_id: i32,
    /// The printer's entry in the list.
    pub printer_id: i32,
    /// And how that entry stood then.
    pub version_id: i32,
    /// The lot.
    pub lot_id: i32,
    /// The pack.
    pub pack_id: i32,
    /// The pack's number in its lot.
    pub number: i32,
    /// The template's name.
    pub template: String,
    /// The template's file, kept.
    pub form_id: i32,
    /// The words that it shares with the other labels of its deed and lot, kept.
    pub base_id: i32,
    /// Its own words and codes.
    pub own: String,
    /// Dots per inch that it is laid out for.
    pub dpi: i32,
    /// The date that it shows.
    pub use_by: Option<NaiveDate>,
    /// 0 for the first print of its pack, from 1 on for reprints.
    pub ordinal: i32,
    /// The print that did not come out and that this one stands in for.
    pub instead_of: Option<i32>,
    /// What it claims, kept; none for labels of the time before.
    pub claims_id: Option<i32>,
    /// The net weight that it tells a customer, in milligrams.
    pub net_mg: Option<i64>,
}

/// A print and how far it has come.
#[derive(Debug, Clone)]
pub struct Print {
    /// What was asked.
    pub row: PrintRow,
    /// How far it has come.
    pub run: RunRow,
}

/// Which prints are wanted.
#[derive(Debug, Clone, Copy, Default)]
pub struct Filter<'a> {
    /// Of this printer.
    pub printer: Option<i32>,
    /// In this state.
    pub state: Option<PrintState>,
    /// Of this lot.
    pub lot: Option<i32>,
    /// Before this one.
    pub before: Option<i32>,
    /// Of these, if any are named.
    pub keys: Option<&'a [i32]>,
}

/// Adds prints, waiting. Keys are given here; `row` of each comes with key 0.
pub fn insert(tx: &mut Tx<'_>, rows: Vec<PrintRow>, at: NaiveDateTime) -> Result<Vec<Print>> {
    add(
        tx,
        rows,
        |row| RunRow::asked(row.id, row.printer_id, at),
        None,
    )
}

/// Adds prints that leave as a document. Their packs, locked, bear them from now on.
pub fn hand_out(
    tx: &mut Tx<'_>,
    rows: Vec<PrintRow>,
    says: &Says,
    at: NaiveDateTime,
) -> Result<Vec<Print>> {
    let packs: Vec<i32> = rows.iter().map(|row| row.pack_id).collect();
    let run = |row: &PrintRow| RunRow::handed_out(row.id, row.printer_id, at);
    let added = add(tx, rows, run, Some(says))?;
    wrong_labels::of_packs(tx, &packs, at)?;
    Ok(added)
}

fn add(
    tx: &mut Tx<'_>,
    mut rows: Vec<PrintRow>,
    run: impl Fn(&PrintRow) -> RunRow,
    says: Option<&Says>,
) -> Result<Vec<Print>> {
    let ids = tx.ids.take(tx.conn, rows.len())?;
    for (row, id) in rows.iter_mut().zip(ids) {
        row.id = id;
    }
    insert_rows!(tx.conn, prints::table, &rows);
    chain::seal_prints(tx, &rows)?;
    // What happens to these packs from now on may make a label wrong.
    let claim = rows.iter().filter(|row| row.claims_id.is_some());
    let claim: Vec<i32> = claim.map(|row| row.pack_id).collect();
    for some in claim.chunks(500) {
        diesel::update(packs::table.filter(packs::id.eq_any(some)))
            .set(packs::printed.eq(true))
            .execute(tx.conn)?;
    }
    let runs: Vec<RunRow> = rows.iter().map(run).collect();
    print_runs::insert(tx, &runs, says)?;
    let prints = rows.into_iter().zip(runs);
    Ok(prints.map(|(row, run)| Print { row, run }).collect())
}

/// Prints that fit, newest first.
pub fn find(conn: &mut Conn, filter: Filter<'_>, limit: i64) -> Result<Vec<Print>> {
    let mut wanted = prints::table
        .inner_join(runs::table.on(runs::id.eq(prints::id)))
        .order(prints::id.desc())
        .limit(limit)
        .select((PrintRow::as_select(), RunRow::as_select()))
        .into_boxed();
    if let Some(printer) = filter.printer {
        wanted = wanted.filter(prints::printer_id.eq(printer));
    }
    if let Some(state) = filter.state {
        wanted = wanted.filter(runs::state.eq(state.as_str()));
    }
    if let Some(lot) = filter.lot {
        wanted = wanted.filter(prints::lot_id.eq(lot));
    }
    if let Some(before) = filter.before {
        wanted = wanted.filter(prints::id.lt(before));
    }
    if let Some(keys) = filter.keys {
        wanted = wanted.filter(prints::id.eq_any(keys));
    }
    let found: Vec<(PrintRow, RunRow)> = wanted.load(conn)?;
    Ok(found
        .into_iter()
        .map(|(row, run)| Print { row, run })
        .collect())
}

/// Every print of a lot's packs, the oldest first.
pub fn of_lot(conn: &mut Conn, lot: i32) -> Result<Vec<Print>> {
    let filter = Filter {
        lot: Some(lot),
        ..Filter::default()
    };
    let mut found = find(conn, filter, i64::MAX)?;
    found.reverse();
    Ok(found)
}

/// Every print that a deed asked for, in the order of asking.
pub fn of_deed(conn: &mut Conn, deed: i32) -> Result<Vec<Print>> {
    let found: Vec<(PrintRow, RunRow)> = prints::table
        .inner_join(runs::table.on(runs::id.eq(prints::id)))
        .filter(prints::deed_id.eq(deed))
        .order(prints::id)
        .select((PrintRow::as_select(), RunRow::as_select()))
        .load(conn)?;
    let print = |(row, run)| Print { row, run };
    Ok(found.into_iter().map(print).collect())
}

/// The labels of what a deed made, and those that were asked for since of packs that it touched.
pub fn since(conn: &mut Conn, deed: i32, born: &[i32], touched: &[i32]) -> Result<Vec<Print>> {
    let mut all = Vec::new();
    for some in born.chunks(500) {
        let of_born = prints::table
            .inner_join(runs::table.on(runs::id.eq(prints::id)))
            .filter(prints::lot_id.eq_any(some))
            .select((PrintRow::as_select(), RunRow::as_select()));
        all.extend(of_born.load::<(PrintRow, RunRow)>(conn)?);
    }
    for some in touched.chunks(500) {
        let of_touched = prints::table
            .inner_join(runs::table.on(runs::id.eq(prints::id)))
            .filter(prints::pack_id.eq_any(some).and(prints::deed_id.gt(deed)))
            .select((PrintRow::as_select(), RunRow::as_select()));
        all.extend(of_touched.load::<(PrintRow, RunRow)>(conn)?);
    }
    all.sort_by_key(|(row, _)| row.id);
    all.dedup_by_key(|(row, _)| row.id);
    let print = |(row, run)| Print { row, run };
    Ok(all.into_iter().map(print).collect())
}

/// One print.
pub fn by_key(conn: &mut Conn, key: i32) -> Result<Option<Print>> {
    let filter = Filter {
        keys: Some(&[key]),
        ..Filter::default()
    };
    Ok(find(conn, filter, 1)?.pop())
}
