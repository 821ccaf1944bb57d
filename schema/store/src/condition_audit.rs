//! Does what lots are follow from what they were made of? Nothing is ready without a proof in its ancestry.

use crate::conn::Conn;
use crate::error::Result;
use crate::lots::LotRow;
use crate::tables::{conditions, deeds, lots, pack_events, reasons};
use diesel::prelude::*;
use domain::audit::{AuditFinding, condition_follows};
use domain::condition::Condition;
use domain::words::{Account, DeedKind, Topic};
use std::collections::{HashMap, HashSet};

/// What of every lot its condition is checked by.
struct Checked {
    code: String,
    deed: i32,
    born: Option<Condition>,
    of_animal: bool,
}

/// What is wrong with the conditions on record.
pub(crate) fn check(conn: &mut Conn) -> Result<Vec<AuditFinding>> {
    let mut all: HashMap<i32, Checked> = HashMap::new();
    let rows: Vec<LotRow> = lots::table
        .filter(lots::voided.eq(false))
        .select(LotRow::as_select())
        .load(conn)?;
    for row in &rows {
        let checked = Checked {
            code: row.code.clone(),
            deed: row.deed_id,
            born: row.condition()?,
            of_animal: !row.species.is_empty(),
        };
        all.insert(row.id, checked);
    }
    let proven = proven_since(conn)?;
    let links: HashSet<i32> = reasons::table
        .filter(reasons::topic.eq(Topic::Condition.as_str()))
        .select(reasons::lot_id)
        .load(conn)?
        .into_iter()
        .collect();
    let uses: Vec<(i32, i32)> = pack_events::table
        .filter(pack_events::account.eq(Account::Used.as_str()))
        .select((pack_events::deed_id, pack_events::lot_id))
        .load(conn)?;
    let mut parts: HashMap<i32, Vec<i32>> = HashMap::new();
    for (deed, lot) in uses {
        parts.entry(deed).or_default().push(lot);
    }
    let was_ready = |lot: &i32| {
        let Some(of) = all.get(lot) else { return true };
        let judged_before = of.born.is_none() && !of.of_animal;
        judged_before || of.born.is_some_and(Condition::is_ready) || proven.contains(lot)
    };
    let mut findings = Vec::new();
    for (id, of) in &all {
        let Some(born) = of.born else { continue };
        let made_of = parts.get(&of.deed).map_or(&[][..], Vec::as_slice);
        let ready: Vec<bool> = made_of.iter().map(was_ready).collect();
        findings.extend(condition_follows(
            &of.code,
            born,
            &ready,
            links.contains(id),
        ));
    }
    Ok(findings)
}

/// Lots that were proven, let go or released after they were made, by whatever deed.
fn proven_since(conn: &mut Conn) -> Result<HashSet<i32>> {
    let changed: Vec<(i32, String)> = conditions::table
        .select((conditions::lot_id, conditions::condition))
        .load(conn)?;
    let ready = |text: &str| Condition::parse(text).is_some_and(Condition::is_ready);
    let changed = changed.into_iter().filter(|(_, text)| ready(text));
    let mut proven: HashSet<i32> = changed.map(|(lot, _)| lot).collect();
    // Also by a release that was voided since: what was cut meanwhile was made of what was ready then.
    let released: Vec<i32> = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .filter(deeds::kind.eq(DeedKind::Release.as_str()))
        .select(pack_events::lot_id)
        .load(conn)?;
    proven.extend(released);
    Ok(proven)
}
