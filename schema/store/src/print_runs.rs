//! How far each label has come. A change names the step it has seen; what came between undoes it.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::tables::{print_events, print_runs, prints};
use crate::{on_each, said, wrong_labels};
use chrono::NaiveDateTime;
use diesel::dsl::count_star;
use diesel::prelude::*;
use domain::print::KnownPrint;
use domain::says::Says;
use domain::words::PrintState;

/// How far a label has come, as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, AsChangeset, PartialEq)]
#[diesel(table_name = print_runs, treat_none_as_default_value = false, treat_none_as_null = true)]
pub struct RunRow {
    /// The print.
    pub id: i32,
    /// The printer.
    pub printer_id: i32,
    /// The state.
    pub state: String,
    /// How often it has changed.
    pub step: i32,
    /// How often its turn has come.
    pub attempt: i32,
    /// May the printer hold its document?
    pub perhaps_out: bool,
    /// How often the printer broke it off with nothing printed.
    pub broken_off: i32,
    /// The job's name at the printer, in this attempt.
    pub token: Option<String>,
    /// The printer's own number of the job.
    pub job_id: Option<i32>,
    /// How long the printer had been up when the document went out, in seconds.
    pub printer_up: Option<i32>,
    /// When the document went out, UTC.
    pub out_at: Option<NaiveDateTime>,
    /// What it was sent as.
    pub format: Option<String>,
    /// SHA-256 of what was sent.
    pub document_hash: Option<String>,
    /// What is wrong with it, as a kept message.
    pub trouble: Option<String>,
    /// When it last changed, UTC.
    pub changed_at: NaiveDateTime,
}

/// A change of a label's state.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = print_events, treat_none_as_default_value = false)]
pub struct EventRow {
    /// The print.
    pub print_id: i32,
    /// The how manieth change.
    pub step: i32,
    /// The state from then on.
    pub state: String,
    /// Why, as a kept message.
    pub says: Option<String>,
    /// When, UTC.
    pub at: NaiveDateTime,
}

impl EventRow {
    /// Why.
    pub fn said(&self) -> Option<Says> {
        self.says.as_deref().map(said::recalled)
    }
}

impl RunRow {
    /// A label that was just asked for.
    pub(crate) fn asked(id: i32, printer_id: i32, at: NaiveDateTime) -> RunRow {
        RunRow {
            id,
            printer_id,
            state: KnownPrint::ASKED.state.as_str().to_owned(),
            step: 0,
            attempt: 0,
            perhaps_out: false,
            broken_off: 0,
            token: None,
            job_id: None,
            printer_up: None,
            out_at: None,
            format: None,
            document_hash: None,
            trouble: None,
            changed_at: at,
        }
    }

    /// A label that left as a document: nobody tells what becomes of it, so it counts as printed.
    pub(crate) fn handed_out(id: i32, printer_id: i32, at: NaiveDateTime) -> RunRow {
        let out = KnownPrint {
            state: PrintState::Printed,
            perhaps_out: true,
            ..KnownPrint::ASKED
        };
        RunRow {
            out_at: Some(at),
            ..RunRow::asked(id, printer_id, at).with(out)
        }
    }

    /// Did it leave as a document? Then its turn at a printer never came, and it is out all the same.
    pub fn is_document(&self) -> bool {
        self.attempt == 0 && self.out_at.is_some()
    }

    /// What is known of it.
    pub fn known(&self) -> Result<KnownPrint> {
        let state = PrintState::parse(&self.state);
        Ok(KnownPrint {
            state: state.ok_or_else(|| Error::bad_row("print_runs", self.id, "unknown state"))?,
            perhaps_out: self.perhaps_out,
            broken_off: self.broken_off.unsigned_abs(),
        })
    }

    /// What is wrong with it.
    pub fn said(&self) -> Option<Says> {
        self.trouble.as_deref().map(said::recalled)
    }

    /// The same with other knowledge of it.
    pub fn with(&self, known: KnownPrint) -> RunRow {
        RunRow {
            state: known.state.as_str().to_owned(),
            perhaps_out: known.perhaps_out,
            broken_off: i32::try_from(known.broken_off).unwrap_or(i32::MAX),
            ..self.clone()
        }
    }
}

pub(crate) fn insert(tx: &mut Tx<'_>, runs: &[RunRow], says: Option<&Says>) -> Result<()> {
    let event = |run: &RunRow| EventRow {
        print_id: run.id,
        step: run.step,
        state: run.state.clone(),
        says: says.map(said::kept),
        at: run.changed_at,
    };
    for runs in runs.chunks(500) {
        let events: Vec<EventRow> = runs.iter().map(event).collect();
        on_each!(&mut *tx.conn, c => {
            diesel::insert_into(print_runs::table).values(runs).execute(c)?;
            diesel::insert_into(print_events::table).values(events).execute(c)?;
        });
    }
    Ok(())
}

/// Writes a change down, with the reason. Nothing where the label was changed since it was `seen`:
/// another process, or a person, was faster.
pub fn change(
    tx: &mut Tx<'_>,
    seen: &RunRow,
    next: &RunRow,
    says: Option<&Says>,
    at: NaiveDateTime,
) -> Result<Option<RunRow>> {
    let next = RunRow {
        step: seen.step + 1,
        changed_at: at,
        ..next.clone()
    };
    let event = EventRow {
        print_id: next.id,
        step: next.step,
        state: next.state.clone(),
        says: says.map(said::kept),
        at,
    };
    // Does a pack bear this label from now on, perhaps, or no more? A deed that changes the pack at the
    // same time is before or after this one, so that one of both sees what the other did.
    let settled = [PrintState::Printed, PrintState::Unsure, PrintState::Spoilt];
    let settled = settled.iter().any(|state| state.as_str() == next.state);
    let borne = match settled && seen.state != next.state {
        true => Some(wrong_labels::lock_pack(tx, next.id)?),
        false => None,
    };
    let same = print_runs::table.filter(
        print_runs::id
            .eq(seen.id)
            .and(print_runs::step.eq(seen.step)),
    );
    on_each!(&mut *tx.conn, c => {
        if diesel::update(same).set(&next).execute(c)? == 0 {
            return Ok(None);
        }
        diesel::insert_into(print_events::table).values(&event).execute(c)?;
    });
    if let Some(pack) = borne {
        wrong_labels::of_packs(tx, &[pack], at)?;
    }
    Ok(Some(next))
}

/// Labels of a printer in these states, the oldest first.
pub fn of_printer(
    conn: &mut Conn,
    printer: i32,
    states: &[PrintState],
    limit: i64,
) -> Result<Vec<RunRow>> {
    let states: Vec<&str> = states.iter().map(|state| state.as_str()).collect();
    Ok(print_runs::table
        .filter(
            print_runs::printer_id
                .eq(printer)
                .and(print_runs::state.eq_any(states)),
        )
        .order(print_runs::id)
        .limit(limit)
        .select(RunRow::as_select())
        .load(conn)?)
}

/// Labels by their keys, in order.
pub fn by_keys(conn: &mut Conn, keys: &[i32]) -> Result<Vec<RunRow>> {
    Ok(print_runs::table
        .filter(print_runs::id.eq_any(keys))
        .order(print_runs::id)
        .select(RunRow::as_select())
        .load(conn)?)
}

/// The printers that have something to do.
pub fn busy_printers(conn: &mut Conn) -> Result<Vec<i32>> {
    // As the partial index has it, word for word.
    let open = ["waiting", "sending", "sent"];
    Ok(print_runs::table
        .filter(print_runs::state.eq_any(open))
        .select(print_runs::printer_id)
        .distinct()
        .order(print_runs::printer_id)
        .load(conn)?)
}

/// How many labels of a printer are in each state.
pub fn counts(conn: &mut Conn, printer: i32) -> Result<Vec<(String, i64)>> {
    Ok(print_runs::table
        .filter(print_runs::printer_id.eq(printer))
        .group_by(print_runs::state)
        .order(print_runs::state)
        .select((print_runs::state, count_star()))
        .load(conn)?)
}

/// How many labels were refused since then of which no later one of the same pack was asked for.
///
/// # Errors
/// The database is away.
pub fn refused_since(conn: &mut Conn, since: NaiveDateTime) -> Result<usize> {
    let later = diesel::alias!(prints as later);
    let again = later
        .filter(later.field(prints::pack_id).eq(prints::pack_id))
        .filter(later.field(prints::id).gt(prints::id));
    let refused = print_runs::table
        .inner_join(prints::table.on(prints::id.eq(print_runs::id)))
        .filter(print_runs::state.eq(PrintState::Refused.as_str()))
        .filter(print_runs::changed_at.ge(since))
        .filter(diesel::dsl::not(diesel::dsl::exists(again)))
        .select(count_star());
    Ok(usize::try_from(refused.first::<i64>(conn)?).unwrap_or(0))
}

/// What happened to a label, in order.
pub fn events(conn: &mut Conn, print: i32) -> Result<Vec<EventRow>> {
    Ok(print_events::table
        .filter(print_events::print_id.eq(print))
        .order(print_events::step)
        .select(EventRow::as_select())
        .load(conn)?)
}
