//! Voiding: what a deed touched, and how it is undone without being deleted.

use crate::chain::rows::VoidRow;
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::lots::{self, LotRow, lock_keys};
use crate::packs::{self, PackRow};
use crate::record::PackEventRow;
use crate::sources as source_rows;
use crate::tables::{deeds, lots as lots_table, pack_events, packs as packs_table, sources, voids};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::audit;
use domain::grams::Grams;
use domain::lot::{Event, Lot, PackId, PackNow, Past};
use domain::words::{Account, Being};
use std::collections::{BTreeMap, HashMap};

/// Everything that hangs on a deed, its lots locked.
#[derive(Debug)]
pub struct Hanging {
    /// The lots it made.
    pub births: Vec<LotRow>,
    /// Deeds that changed the grams of those lots, newest first.
    pub uses_of_births: Vec<i32>,
    /// The packs it touched, each with its lot and its events in order, voided ones left out.
    pub touched: Vec<(LotRow, PackRow, Vec<LiveEvent>)>,
    /// The lot whose source it recorded, if it is a receipt or a correction.
    pub source_of: Option<i32>,
    /// Corrections of the same lot that came after it, newest first.
    pub later_corrections: Vec<i32>,
}

/// Locks and loads what hangs on a deed.
pub fn hanging(tx: &mut Tx<'_>, deed: i32) -> Result<Hanging> {
    let born: Vec<i32> = lots_table::table
        .filter(lots_table::deed_id.eq(deed))
        .select(lots_table::id)
        .load(tx.conn)?;
    let own = pack_events::table
        .filter(pack_events::deed_id.eq(deed))
        .order(pack_events::id);
    let own: Vec<PackEventRow> = own.select(PackEventRow::as_select()).load(tx.conn)?;
    let mut keys: Vec<i32> = born
        .iter()
        .copied()
        .chain(own.iter().map(|event| event.lot_id))
        .collect();
    keys.sort_unstable();
    keys.dedup();
    lock_keys(tx, &keys)?;
    let rows: BTreeMap<i32, LotRow> = lots::by_keys(tx.conn, &keys)?
        .into_iter()
        .map(|row| (row.id, row))
        .collect();
    let mut pack_keys: Vec<i32> = own.iter().map(|event| event.pack_id).collect();
    pack_keys.sort_unstable();
    pack_keys.dedup();
    let mut histories: BTreeMap<i32, Vec<LiveEvent>> = BTreeMap::new();
    for event in live_events(tx.conn, &keys)? {
        histories.entry(event.row.pack_id).or_default().push(event);
    }
    let touched = packs::by_keys(tx.conn, &pack_keys)?
        .into_iter()
        // A lot that was voided since it was moved or counted holds nothing, and stays so.
        .filter(|pack| !rows[&pack.lot_id].voided)
        .map(|pack| {
            (
                rows[&pack.lot_id].clone(),
                pack.clone(),
                histories.remove(&pack.id).unwrap_or_default(),
            )
        })
        .collect();
    let source_of = sources::table
        .filter(sources::deed_id.eq(deed))
        .select(sources::lot_id)
        .first(tx.conn)
        .optional()?;
    Ok(Hanging {
        uses_of_births: uses_of(tx.conn, &born)?,
        births: born.iter().map(|key| rows[key].clone()).collect(),
        touched,
        later_corrections: match source_of {
            Some(lot) => later_corrections(tx.conn, lot, deed)?,
            None => Vec::new(),
        },
        source_of,
    })
}

/// Something that happened to a pack, and when.
#[derive(Debug, Clone, Queryable, Selectable)]
#[diesel(table_name = pack_events)]
pub struct LiveEvent {
    /// What the record holds of it.
    #[diesel(embed)]
    pub row: PackEventRow,
    /// When its deed was done.
    #[diesel(select_expression = deeds::at)]
    pub at: NaiveDateTime,
}

impl LiveEvent {
    /// The domain's event.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn event(&self) -> Result<Event> {
        self.row.event(self.at)
    }
}

/// Events of lots whose deeds were not voided, in order.
pub fn live_events(conn: &mut Conn, lots: &[i32]) -> Result<Vec<LiveEvent>> {
    Ok(pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .filter(pack_events::lot_id.eq_any(lots).and(voids::id.is_null()))
        .order((pack_events::lot_id, pack_events::seq))
        .select(LiveEvent::as_select())
        .load(conn)?)
}

/// So many later deeds are looked through; more of them are as a deed that is entered late.
const LOOKED_THROUGH: i64 = 100;

/// Was any of some lots moved, frozen or thawed later than a moment, as far as the record knows? For a deed that moves
/// them itself: did anything happen to them then?
///
/// # Errors
/// The database is away.
pub fn were_moved_since(
    conn: &mut Conn,
    at: NaiveDateTime,
    lots: &[i32],
    moves: bool,
) -> Result<bool> {
    let later: Vec<i32> = deeds::table
        .filter(deeds::at.gt(at))
        .limit(LOOKED_THROUGH)
        .select(deeds::id)
        .load(conn)?;
    if later.is_empty() || later.len() as i64 == LOOKED_THROUGH {
        return Ok(!later.is_empty());
    }
    let happened: Vec<String> = pack_events::table
        .filter(pack_events::deed_id.eq_any(&later))
        .filter(pack_events::lot_id.eq_any(lots))
        .select(pack_events::account)
        .distinct()
        .load(conn)?;
    let moved = |account: &String| account == Account::Moved.as_str();
    Ok(happened.iter().any(|account| moves || moved(account)))
}

/// Gives the packs of some lots what they lived through, for a deed that is entered late.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn recall_past(conn: &mut Conn, rows: &[LotRow], lots: &mut [Lot]) -> Result<()> {
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let mut events: HashMap<i32, Vec<Event>> = HashMap::new();
    for event in live_events(conn, &keys)? {
        events
            .entry(event.row.pack_id)
            .or_default()
            .push(event.event()?);
    }
    for lot in lots {
        let Some(row) = rows.iter().find(|row| row.id == lot.id.0) else {
            continue;
        };
        for pack in &mut lot.packs {
            pack.past = Some(Past {
                born: row.born(pack.made)?,
                events: events.remove(&pack.id.0).unwrap_or_default(),
            });
        }
    }
    Ok(())
}

fn uses_of(conn: &mut Conn, lots: &[i32]) -> Result<Vec<i32>> {
    let changes_no_grams = [Account::Moved.as_str(), Account::Noted.as_str()];
    let mut uses: Vec<i32> = pack_events::table
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .filter(pack_events::lot_id.eq_any(lots).and(voids::id.is_null()))
        .filter(pack_events::account.ne_all(changes_no_grams))
        .order((deeds::recorded_at.desc(), deeds::id.desc()))
        .select(pack_events::deed_id)
        .load(conn)?;
    uses.dedup();
    Ok(uses)
}

fn later_corrections(conn: &mut Conn, lot: i32, deed: i32) -> Result<Vec<i32>> {
    let own: i32 = sources::table
        .filter(sources::deed_id.eq(deed))
        .select(sources::id)
        .first(conn)?;
    Ok(sources::table
        .left_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
        .filter(
            sources::lot_id
                .eq(lot)
                .and(sources::id.gt(own))
                .and(voids::id.is_null()),
        )
        .order(sources::id.desc())
        .select(sources::deed_id)
        .load(conn)?)
}

/// Records that `void` undoes `deed`, and sets everything to what it is without it.
pub fn record(
    tx: &mut Tx<'_>,
    void: i32,
    deed: i32,
    why: &str,
    hanging: &Hanging,
    packs_now: &[(PackId, PackNow)],
) -> Result<()> {
    let row = VoidRow {
        id: void,
        deed_id: deed,
        why: why.to_owned(),
    };
    diesel::insert_into(voids::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(void, &row);
    packs::set_all(tx.conn, packs_now)?;
    let mut lots: Vec<&LotRow> = hanging.touched.iter().map(|(lot, _, _)| lot).collect();
    lots.dedup_by_key(|lot| lot.id);
    for lot in lots {
        tell_totals_again(tx, lot)?;
    }
    for lot in &hanging.births {
        void_lot(tx, lot.id)?;
    }
    if let (Some(lot), true) = (hanging.source_of, hanging.births.is_empty()) {
        // What follows from it is judged again by the deed.
        source_rows::settle(tx, lot)?;
    }
    Ok(())
}

fn tell_totals_again(tx: &mut Tx<'_>, lot: &LotRow) -> Result<()> {
    use lots_table::dsl as l;
    let events = live_events(tx.conn, &[lot.id])?;
    let parsed: Result<Vec<_>> = events.iter().map(LiveEvent::event).collect();
    let totals = audit::totals(parsed?.into_iter());
    let of = |account: Account| totals.get(&account).copied().unwrap_or_default();
    let gone: Grams = totals
        .iter()
        .filter(|(account, _)| **account != Account::TakenBack)
        .map(|(_, grams)| *grams)
        .sum();
    let on_hand = Grams::from_milligrams(lot.made_mg) + of(Account::TakenBack) - gone;
    diesel::update(l::lots.find(lot.id))
        .set((
            l::seq.eq(l::seq + 1),
            l::on_hand_mg.eq(on_hand.milligrams()),
            l::used_mg.eq(of(Account::Used).milligrams()),
            l::sold_mg.eq(of(Account::Sold).milligrams()),
            l::sold_packs.eq(events.iter().filter(|event| event.row.whole_pack).count() as i32),
            l::served_mg.eq(of(Account::Served).milligrams()),
            l::discarded_mg.eq(of(Account::Discarded).milligrams()),
            l::shipped_mg.eq(of(Account::Shipped).milligrams()),
            l::returned_mg.eq(of(Account::Returned).milligrams()),
            l::lost_mg.eq(of(Account::Lost).milligrams()),
            l::unexplained_mg.eq(of(Account::Unexplained).milligrams()),
            l::taken_back_mg.eq(of(Account::TakenBack).milligrams()),
        ))
        .execute(tx.conn)?;
    Ok(())
}

/// The lot's code stays taken, and a label of it says "pull".
fn void_lot(tx: &mut Tx<'_>, lot: i32) -> Result<()> {
    diesel::update(lots_table::table.find(lot))
        .set((lots_table::voided.eq(true), lots_table::on_hand_mg.eq(0)))
        .execute(tx.conn)?;
    diesel::update(packs_table::table.filter(packs_table::lot_id.eq(lot)))
        .set((
            packs_table::being.eq(Being::Void.as_str()),
            packs_table::left_mg.eq(0),
        ))
        .execute(tx.conn)?;
    Ok(())
}
