//! Which process talks to a printer: one at a time, over all that share a record.
//!
//! The lease keeps two processes from asking a printer at once. What keeps a label from being sent
//! twice is [`crate::print_runs::change`], which a process that was too late finds undone.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::printer_leases;
use crate::{on_each, said};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::says::Says;
use std::collections::BTreeMap;

/// Who has the lease of a printer, or had it last.
pub fn owner(conn: &mut Conn, printer: i32) -> Result<Option<String>> {
    Ok(printer_leases::table
        .find(printer)
        .select(printer_leases::owner)
        .get_result(conn)
        .optional()?)
}

/// Takes or renews the lease of a printer; from `gone` also before its end. False where another
/// process has it.
pub fn take(
    tx: &mut Tx<'_>,
    printer: i32,
    owner: &str,
    gone: Option<&str>,
    now: NaiveDateTime,
    until: NaiveDateTime,
) -> Result<bool> {
    let owners = [owner, gone.unwrap_or(owner)];
    let free = printer_leases::table.filter(
        printer_leases::id.eq(printer).and(
            printer_leases::owner
                .eq_any(owners)
                .or(printer_leases::until.lt(now)),
        ),
    );
    let taken = diesel::update(free)
        .set((
            printer_leases::owner.eq(owner),
            printer_leases::until.eq(until),
        ))
        .execute(tx.conn)?;
    if taken == 1 {
        return Ok(true);
    }
    let known = printer_leases::table
        .find(printer)
        .select(printer_leases::id)
        .get_result::<i32>(tx.conn)
        .optional()?;
    if known.is_some() {
        return Ok(false);
    }
    diesel::insert_into(printer_leases::table)
        .values((
            printer_leases::id.eq(printer),
            printer_leases::owner.eq(owner),
            printer_leases::until.eq(until),
        ))
        .execute(tx.conn)?;
    Ok(true)
}

/// Gives the lease back, so that another process need not wait for its end.
pub fn give_back(tx: &mut Tx<'_>, printer: i32, owner: &str, now: NaiveDateTime) -> Result<()> {
    let own = printer_leases::table.filter(
        printer_leases::id
            .eq(printer)
            .and(printer_leases::owner.eq(owner)),
    );
    diesel::update(own)
        .set(printer_leases::until.eq(now))
        .execute(tx.conn)?;
    Ok(())
}

/// Notes what is wrong at a printer; nothing, if all is well.
pub fn note_trouble(
    tx: &mut Tx<'_>,
    printer: i32,
    owner: &str,
    trouble: Option<&Says>,
) -> Result<()> {
    let own = printer_leases::table.filter(
        printer_leases::id
            .eq(printer)
            .and(printer_leases::owner.eq(owner)),
    );
    let kept = trouble.map(said::kept);
    on_each!(&mut *tx.conn, c => diesel::update(own).set(printer_leases::trouble.eq(&kept)).execute(c)?);
    Ok(())
}

/// Notes what is wrong at a printer as a try showed it; nothing, if all is well: then it is known that it printed once.
/// Whoever has the lease keeps it, and writes over what is wrong when labels of the record go out.
pub fn note_tried(
    tx: &mut Tx<'_>,
    printer: i32,
    trouble: Option<&Says>,
    now: NaiveDateTime,
) -> Result<()> {
    let kept = trouble.map(said::kept);
    let known = || printer_leases::table.find(printer);
    let noted = on_each!(&mut *tx.conn, c => diesel::update(known()).set(printer_leases::trouble.eq(&kept)).execute(c)?);
    if noted == 0 {
        // Nobody has talked to it for the record yet: a lease that nobody holds.
        diesel::insert_into(printer_leases::table)
            .values((
                printer_leases::id.eq(printer),
                printer_leases::owner.eq(""),
                printer_leases::until.eq(now),
                printer_leases::trouble.eq(&kept),
            ))
            .execute(tx.conn)?;
    }
    if kept.is_none() {
        diesel::update(known())
            .set(printer_leases::tried_at.eq(now))
            .execute(tx.conn)?;
    }
    Ok(())
}

/// What is known of a printer that somebody talked to.
#[derive(Debug, Default)]
pub struct Talked {
    /// What is wrong there, if anything is.
    pub trouble: Option<Says>,
    /// Did a test label go out?
    pub tried: bool,
}

/// What is known of each printer that somebody talked to.
pub fn talked(conn: &mut Conn) -> Result<BTreeMap<i32, Talked>> {
    let all: Vec<(i32, Option<String>, Option<NaiveDateTime>)> = printer_leases::table
        .select((
            printer_leases::id,
            printer_leases::trouble,
            printer_leases::tried_at,
        ))
        .load(conn)?;
    let of = |(printer, trouble, tried_at): (i32, Option<String>, Option<NaiveDateTime>)| {
        let talked = Talked {
            trouble: trouble.map(|trouble| said::recalled(&trouble)),
            tried: tried_at.is_some(),
        };
        (printer, talked)
    };
    Ok(all.into_iter().map(of).collect())
}
