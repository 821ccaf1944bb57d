//! Loading what lots are judged again by, in a number of statements that does not grow with that of the lots.

use super::{Everything, Happened};
use crate::conditions::ConditionRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::deeds::DeedRow;
use crate::error::{Error, Result};
use crate::keyed::among;
use crate::lots::{self, LotRow};
use crate::on_each;
use crate::record::PackEventRow;
use crate::stops::StopRow;
use crate::tables::{
    conditions, deeds, judged_again, lots as lots_table, measurements, pack_events, prints,
    stop_ends, stops, voids,
};
use crate::trace::with_reach;
use crate::{corrections, measurements as readings, packs, sources, voids as undone};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Integer;
use domain::condition::Condition;
use domain::words::{Account, DeedKind, Disposal, StepKind};
use std::collections::BTreeSet;

/// Keys in one statement: SQLite binds some thirty thousand.
const AT_ONCE: usize = 10_000;

#[derive(QueryableByName)]
struct Key {
    #[diesel(sql_type = Integer)]
    id: i32,
}

/// The lots that a deed made; where it made none, those that it touched or read.
///
/// # Errors
/// The database is away.
pub fn roots(conn: &mut Conn, deed: i32) -> Result<Vec<i32>> {
    let made: Vec<i32> = lots_table::table
        .filter(
            lots_table::deed_id
                .eq(deed)
                .and(lots_table::voided.eq(false)),
        )
        .order(lots_table::id)
        .select(lots_table::id)
        .load(conn)?;
    if !made.is_empty() {
        return Ok(made);
    }
    let mut touched: Vec<i32> = pack_events::table
        .inner_join(lots_table::table.on(lots_table::id.eq(pack_events::lot_id)))
        .filter(
            pack_events::deed_id
                .eq(deed)
                .and(lots_table::voided.eq(false)),
        )
        .select(lots_table::id)
        .load(conn)?;
    let read: Vec<i32> = measurements::table
        .inner_join(lots_table::table.on(measurements::lot_id.eq(lots_table::id.nullable())))
        .filter(
            measurements::deed_id
                .eq(deed)
                .and(lots_table::voided.eq(false)),
        )
        .select(lots_table::id)
        .load(conn)?;
    touched.extend(read);
    touched.sort_unstable();
    touched.dedup();
    Ok(touched)
}

/// The lots that a deed made something else of, by judging them again.
///
/// # Errors
/// The database is away.
pub fn judged_by(conn: &mut Conn, deed: i32) -> Result<Vec<i32>> {
    Ok(judged_again::table
        .filter(judged_again::deed_id.eq(deed))
        .select(judged_again::lot_id)
        .load(conn)?)
}

/// Locks some lots with all that was made of them, and loads everything that they are judged again by.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn load(tx: &mut Tx<'_>, roots: &[i32]) -> Result<Everything> {
    let mut all = Everything::default();
    // What is made of them while they are locked one after the other is met in the next round.
    loop {
        let reached = reach(tx.conn, roots)?;
        if reached == all.family {
            break;
        }
        let keys: Vec<i32> = reached.iter().copied().collect();
        lots::lock_keys(tx, &keys)?;
        all.family = reached;
    }
    let family: Vec<i32> = all.family.iter().copied().collect();
    all.rows(tx.conn, &family)?;
    let makers: BTreeSet<i32> = all.lots.values().map(|row| row.deed_id).collect();
    all.uses(tx.conn, &makers.iter().copied().collect::<Vec<_>>())?;
    let drawn = all.drawn.values().flatten().map(|event| event.lot_id);
    let parts: BTreeSet<i32> = drawn.filter(|lot| !all.family.contains(lot)).collect();
    let parts: Vec<i32> = parts.into_iter().collect();
    all.rows(tx.conn, &parts)?;
    let everything: Vec<i32> = all.lots.keys().copied().collect();
    for some in everything.chunks(AT_ONCE) {
        all.life(tx.conn, some)?;
    }
    all.deeds(tx.conn, makers)?;
    Ok(all)
}

fn reach(conn: &mut Conn, roots: &[i32]) -> Result<BTreeSet<i32>> {
    if roots.is_empty() {
        return Ok(BTreeSet::new());
    }
    let sql = format!("{} SELECT id FROM reach", with_reach(&among(roots)));
    let keys: Vec<Key> = on_each!(conn, c => sql_query(sql).load(c)?);
    Ok(keys.into_iter().map(|key| key.id).collect())
}

impl Everything {
    fn rows(&mut self, conn: &mut Conn, keys: &[i32]) -> Result<()> {
        for some in keys.chunks(AT_ONCE) {
            let rows: Vec<LotRow> = lots::by_keys(conn, some)?;
            self.lots.extend(rows.into_iter().map(|row| (row.id, row)));
        }
        Ok(())
    }

    /// What the makers drew on.
    fn uses(&mut self, conn: &mut Conn, makers: &[i32]) -> Result<()> {
        for some in makers.chunks(AT_ONCE) {
            let rows: Vec<PackEventRow> = pack_events::table
                .filter(pack_events::deed_id.eq_any(some))
                .filter(pack_events::account.eq(Account::Used.as_str()))
                .order(pack_events::id)
                .select(PackEventRow::as_select())
                .load(conn)?;
            for row in rows {
                self.drawn.entry(row.deed_id).or_default().push(row);
            }
            for (deed, what, mg) in crate::deeds::additions(conn, some)? {
                self.added.entry(deed).or_default().push((what, mg));
            }
        }
        Ok(())
    }

    /// What happened to some lots, and what was said of them.
    fn life(&mut self, conn: &mut Conn, some: &[i32]) -> Result<()> {
        for event in undone::live_events(conn, some)? {
            let of = self.events.entry(event.row.lot_id).or_default();
            of.push(event);
        }
        for pack in packs::of_lots(conn, some)? {
            self.packs.insert(pack.id, pack);
        }
        for reading in readings::of_lots(conn, some)? {
            let of = self.readings.entry(reading.lot_id).or_default();
            of.push(reading);
        }
        let said: Vec<ConditionRow> = conditions::table
            .left_join(voids::table.on(voids::deed_id.eq(conditions::deed_id)))
            .filter(conditions::lot_id.eq_any(some).and(voids::id.is_null()))
            .order(conditions::id)
            .select(ConditionRow::as_select())
            .load(conn)?;
        for row in said {
            self.conditions.entry(row.lot_id).or_default().push(row);
        }
        let judged: Vec<(i32, i32, Option<String>)> = judged_again::table
            .left_join(voids::table.on(voids::deed_id.eq(judged_again::deed_id)))
            .filter(judged_again::lot_id.eq_any(some).and(voids::id.is_null()))
            .order(judged_again::id)
            .select((
                judged_again::deed_id,
                judged_again::lot_id,
                judged_again::condition,
            ))
            .load(conn)?;
        for (deed, lot, condition) in judged {
            self.judgements.insert((deed, lot));
            let bad = || Error::bad_row("judged_again", lot, "unknown condition");
            let parse = |text: String| Condition::parse(&text).ok_or_else(bad);
            self.judged.insert(lot, condition.map(parse).transpose()?);
        }
        self.stops_of(conn, some)?;
        let printed: Vec<i32> = prints::table
            .filter(prints::lot_id.eq_any(some))
            .select(prints::lot_id)
            .distinct()
            .load(conn)?;
        self.printed.extend(printed);
        for source in sources::current(conn, some)? {
            self.sources.insert(source.lot_id, source);
        }
        Ok(())
    }

    fn stops_of(&mut self, conn: &mut Conn, some: &[i32]) -> Result<()> {
        let rows: Vec<StopRow> = stops::table
            .left_join(voids::table.on(voids::deed_id.eq(stops::deed_id)))
            .filter(stops::lot_id.eq_any(some).and(voids::id.is_null()))
            .order(stops::id)
            .select(StopRow::as_select())
            .load(conn)?;
        let ids: BTreeSet<i32> = rows.iter().flat_map(|row| [row.id, row.root_id]).collect();
        for row in rows {
            self.stops.entry(row.lot_id).or_default().push(row);
        }
        for ids in ids.into_iter().collect::<Vec<_>>().chunks(AT_ONCE) {
            let ended: Vec<(i32, i32, NaiveDateTime, String)> = stop_ends::table
                .inner_join(deeds::table.on(deeds::id.eq(stop_ends::deed_id)))
                .left_join(voids::table.on(voids::deed_id.eq(stop_ends::deed_id)))
                .filter(stop_ends::stop_id.eq_any(ids).and(voids::id.is_null()))
                .select((
                    stop_ends::stop_id,
                    stop_ends::deed_id,
                    deeds::at,
                    stop_ends::what,
                ))
                .load(conn)?;
            for (stop, deed, at, what) in ended {
                let bad = || Error::bad_row("stop_ends", stop, "unknown disposal");
                let what = Disposal::parse(&what).ok_or_else(bad)?;
                self.ends.entry(stop).or_default().push((deed, at, what));
            }
        }
        Ok(())
    }

    /// The deeds that made the lots, worked on them without making anything, read them, released them or
    /// let them go; and what is known to be wrong of each.
    fn deeds(&mut self, conn: &mut Conn, makers: BTreeSet<i32>) -> Result<()> {
        let mut keys: BTreeSet<i32> = makers;
        let events = self.events.values().flatten();
        let noted = events.filter(|of| {
            matches!(
                Account::parse(&of.row.account),
                Some(Account::Moved | Account::Noted)
            )
        });
        keys.extend(noted.map(|event| event.row.deed_id));
        let read = self.readings.values().flatten();
        keys.extend(read.map(|reading| reading.deed_id));
        keys.extend(self.conditions.values().flatten().map(|row| row.deed_id));
        keys.extend(self.stops.values().flatten().map(|row| row.deed_id));
        keys.extend(self.ends.values().flatten().map(|(deed, ..)| *deed));
        let keys: Vec<i32> = keys.into_iter().collect();
        let mut kinds = vec![
            DeedKind::Receive,
            DeedKind::Adopt,
            DeedKind::Measure,
            DeedKind::Release,
            DeedKind::Dispose,
        ];
        kinds.extend(StepKind::ALL.iter().map(|kind| DeedKind::from(*kind)));
        let kinds: Vec<&str> = kinds.into_iter().map(DeedKind::as_str).collect();
        let judging = [DeedKind::Correct.as_str(), DeedKind::Void.as_str()];
        for some in keys.chunks(AT_ONCE) {
            let found: Vec<DeedRow> = deeds::table
                .filter(deeds::id.eq_any(some).and(deeds::kind.eq_any(&kinds)))
                .select(DeedRow::as_select())
                .load(conn)?;
            for row in found {
                let happened: Happened = (row.at, (row.recorded_at, row.id));
                self.happened.insert(row.id, happened);
                self.deeds.insert(happened, row);
            }
            let others: Vec<(i32, String, NaiveDateTime, NaiveDateTime)> = deeds::table
                .filter(deeds::id.eq_any(some).and(deeds::kind.ne_all(&kinds)))
                .select((deeds::id, deeds::kind, deeds::at, deeds::recorded_at))
                .load(conn)?;
            for (deed, kind, at, recorded) in others {
                self.happened.insert(deed, (at, (recorded, deed)));
                if judging.contains(&kind.as_str()) {
                    self.judging.insert(deed);
                }
            }
            for row in corrections::of_deeds(conn, some)? {
                self.corrections.entry(row.deed_id).or_default().push(row);
            }
        }
        // What a deed without outputs noted with packs, it was done with.
        for event in self.events.values().flatten() {
            let is_step = self.happened.get(&event.row.deed_id);
            let is_step = is_step.is_some_and(|at| self.deeds.contains_key(at));
            if is_step && event.row.account != Account::Used.as_str() {
                let of = self.drawn.entry(event.row.deed_id).or_default();
                of.push(event.row.clone());
            }
        }
        Ok(())
    }
}
