//! The rows of deeds, read back from the record and digested as they were when they were sealed.

use super::born::{self, Order};
use super::line::Written;
use super::link::Part;
use super::rows::{
    AdditionRow, AnswerRow, CoreReadingRow, CorrectedRow, EntryLine, HouseCodeRow, JudgedRow,
    MeasurementRow, ProbeCheckRow, StepRow, StopEndRow, ThinningRow, VersionLine, VoidRow,
};
use super::seal::Parts;
use super::{line_of, texts_of};
use crate::animals::AnimalRow;
use crate::clock::ClockWord;
use crate::conditions::ConditionRow;
use crate::conn::Conn;
use crate::deeds::DeedRow;
use crate::error::Result;
use crate::incident_reports::ReportRow;
use crate::incidents::{ActRow, IncidentRow, ScopeRow};
use crate::kept;
use crate::lots::LotRow;
use crate::packs::PackRow;
use crate::papers::PaperRow;
use crate::prints::PrintRow;
use crate::reasons::ReasonRow;
use crate::record::PackEventRow;
use crate::sources::SourceRow;
use crate::stops::StopRow;
use crate::tables::*;
use diesel::prelude::*;
use std::collections::{HashMap, HashSet};

/// Keys in one statement.
pub(crate) const AT_ONCE: usize = 4_000;

/// Rows that are in the chain by themselves: keys by table.
pub(crate) type Alone = HashMap<String, HashSet<i32>>;

/// What is read of some deeds.
struct Reading<'a> {
    alone: &'a Alone,
    parts: HashMap<i32, Parts>,
    line: String,
}

impl Reading<'_> {
    fn take<R: Written>(&mut self, deed: i32, row: &R) {
        let alone = self.alone.get(R::TABLE);
        if alone.is_some_and(|keys| keys.contains(&row.key())) {
            return;
        }
        self.line.clear();
        row.write(&mut self.line);
        self.line.push('\n');
        let parts = self.parts.entry(deed).or_default();
        parts.feed(R::TABLE, &self.line);
    }
}

/// Takes the rows of a table, which says in a column whose they are.
macro_rules! take {
    ($conn:ident, $to:ident, $deeds:ident, $row:ty, $table:ident, $by:ident) => {
        take!(
            $conn,
            $to,
            $table::table.filter($table::$by.eq_any($deeds)) => $row,
            $table,
            $by
        )
    };
    ($conn:ident, $to:ident, $of:expr => $row:ty, $table:ident, $by:ident) => {{
        let rows: Vec<$row> = $of
            .order($table::id)
            .select(<$row>::as_select())
            .load($conn)?;
        for row in &rows {
            $to.take(row.$by, row);
        }
    }};
}

/// The parts of some deeds, as their rows are now; a deed of which there is nothing is left out.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(crate) fn of_deeds(
    conn: &mut Conn,
    deeds: &[i32],
    alone: &Alone,
    order: &Order,
) -> Result<HashMap<i32, Vec<Part>>> {
    let mut to = Reading {
        alone,
        parts: HashMap::new(),
        line: String::new(),
    };
    take!(conn, to, deeds, AdditionRow, additions, deed_id);
    take!(conn, to, deeds, AnimalRow, animals, deed_id);
    take!(conn, to, deeds, AnswerRow, answers, id);
    take!(conn, to, deeds, ConditionRow, conditions, deed_id);
    take!(conn, to, deeds, CoreReadingRow, core_readings, deed_id);
    take!(conn, to, deeds, CorrectedRow, corrections, id);
    take!(conn, to, deeds, DeedRow, deeds, id);
    take!(conn, to, deeds, ActRow, incident_acts, id);
    take!(conn, to, deeds, ReportRow, incident_reports, id);
    take!(conn, to, deeds, ScopeRow, incident_scopes, id);
    take!(conn, to, deeds, IncidentRow, incidents, id);
    take!(conn, to, deeds, JudgedRow, judged_again, deed_id);
    take!(conn, to, deeds, MeasurementRow, measurements, deed_id);
    take!(conn, to, deeds, PackEventRow, pack_events, deed_id);
    take!(conn, to, deeds, PaperRow, papers, id);
    take!(conn, to, deeds, ProbeCheckRow, probe_checks, id);
    take!(conn, to, deeds, SourceRow, sources, deed_id);
    take!(conn, to, deeds, StepRow, steps, id);
    take!(conn, to, deeds, StopRow, stops, deed_id);
    take!(conn, to, deeds, ThinningRow, thinnings, deed_id);
    take!(conn, to, deeds, VoidRow, voids, id);
    // No index leads from a deed to these; no row has a lower key than its deed.
    let lowest = deeds.iter().min().copied().unwrap_or_default();
    let of = reasons::table.filter(reasons::deed_id.eq_any(deeds).and(reasons::id.gt(lowest)));
    take!(conn, to, of => ReasonRow, reasons, deed_id);
    let of = stop_ends::table.filter(
        stop_ends::deed_id
            .eq_any(deeds)
            .and(stop_ends::id.gt(lowest)),
    );
    take!(conn, to, of => StopEndRow, stop_ends, deed_id);
    lots_of(conn, &mut to, deeds, order)?;
    prints_of(conn, &mut to, deeds)?;
    let parts = to.parts.into_iter();
    Ok(parts.map(|(deed, parts)| (deed, parts.done())).collect())
}

fn lots_of(conn: &mut Conn, to: &mut Reading<'_>, deeds: &[i32], order: &Order) -> Result<()> {
    let rows: Vec<LotRow> = lots::table
        .filter(lots::deed_id.eq_any(deeds))
        .order(lots::id)
        .select(LotRow::as_select())
        .load(conn)?;
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let judged = born::judged(conn, &keys, order)?;
    for mut row in rows {
        if let Some(judged) = judged.get(&row.id) {
            born::put_back(&mut row, judged)?;
        }
        to.take(row.deed_id, &row);
    }
    let rows: Vec<(i32, PackRow)> = packs::table
        .inner_join(lots::table.on(lots::id.eq(packs::lot_id)))
        .filter(lots::deed_id.eq_any(deeds))
        .order(packs::id)
        .select((lots::deed_id, PackRow::as_select()))
        .load(conn)?;
    for (deed, row) in &rows {
        to.take(*deed, row);
    }
    Ok(())
}

fn prints_of(conn: &mut Conn, to: &mut Reading<'_>, deeds: &[i32]) -> Result<()> {
    let rows: Vec<PrintRow> = prints::table
        .filter(prints::deed_id.eq_any(deeds))
        .order(prints::id)
        .select(PrintRow::as_select())
        .load(conn)?;
    let mut texts: Vec<i32> = rows.iter().flat_map(texts_of).collect();
    texts.sort_unstable();
    texts.dedup();
    let texts = kept::hashes(conn, &texts)?;
    for row in &rows {
        to.take(row.deed_id, &line_of(row, &texts));
    }
    Ok(())
}

/// Takes rows that stand by themselves: all of their table, or those with some keys.
macro_rules! alone {
    ($conn:ident, $keys:ident, $found:ident, $row:ty, $table:ident) => {{
        let rows: Vec<$row> = match $keys {
            Some(keys) => $table::table
                .filter($table::id.eq_any(keys))
                .order($table::id)
                .select(<$row>::as_select())
                .load($conn)?,
            None => $table::table
                .order($table::id)
                .select(<$row>::as_select())
                .load($conn)?,
        };
        for row in &rows {
            let (mut line, mut parts) = (String::new(), Parts::default());
            row.write(&mut line);
            line.push('\n');
            parts.feed(<$row>::TABLE, &line);
            $found.push((row.id, parts.done()));
        }
    }};
}

/// The tables whose rows always stand by themselves.
pub(crate) const BY_THEMSELVES: [&str; 4] = ["entries", "versions", "house_codes", "clock_words"];

/// The parts of rows that stand by themselves, by their keys: of all of a table, or of some.
///
/// # Errors
/// The database is away.
pub(crate) fn alone(
    conn: &mut Conn,
    table: &str,
    keys: Option<&[i32]>,
) -> Result<Vec<(i32, Vec<Part>)>> {
    let mut found = Vec::new();
    match table {
        "entries" => alone!(conn, keys, found, EntryLine, entries),
        "versions" => alone!(conn, keys, found, VersionLine, versions),
        "house_codes" => alone!(conn, keys, found, HouseCodeRow, house_codes),
        "clock_words" => alone!(conn, keys, found, ClockWord, clock_words),
        "stops" => alone!(conn, keys, found, StopRow, stops),
        "stop_ends" => alone!(conn, keys, found, StopEndRow, stop_ends),
        "conditions" => alone!(conn, keys, found, ConditionRow, conditions),
        "reasons" => alone!(conn, keys, found, ReasonRow, reasons),
        "sources" => alone!(conn, keys, found, SourceRow, sources),
        "measurements" => alone!(conn, keys, found, MeasurementRow, measurements),
        _ => {}
    }
    Ok(found)
}
