//! What was done with lots, pack by pack.

use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::tables::{deeds, pack_events, packs, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use domain::family::Did;
use domain::grams::Grams;
use domain::lot::DeedId;
use domain::words::{Account, DeedKind, State};
use std::collections::HashMap;

/// What was done with some lots after they were made, the oldest first.
pub fn of_lots(conn: &mut Conn, lots: &[i32]) -> Result<HashMap<i32, Vec<Did>>> {
    type Event = (
        (i32, i32, (i32, i64)),
        (Vec<u8>, String, NaiveDateTime, String, Option<i32>),
        (String, i64, NaiveDate, Option<String>),
    );
    let events = pack_events::table
        .inner_join(deeds::table.on(deeds::id.eq(pack_events::deed_id)))
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .left_join(voids::table.on(voids::deed_id.eq(pack_events::deed_id)))
        .order((pack_events::lot_id, pack_events::seq))
        .select((
            (
                pack_events::lot_id,
                pack_events::deed_id,
                (packs::number, packs::made_mg),
            ),
            (
                deeds::uid,
                deeds::kind,
                deeds::at,
                deeds::person,
                voids::id.nullable(),
            ),
            (
                pack_events::account,
                pack_events::mg,
                pack_events::day,
                pack_events::state,
            ),
        ))
        .into_boxed();
    // One is the usual case, and its prepared statement is kept.
    let events: Vec<Event> = match lots {
        [one] => events.filter(pack_events::lot_id.eq(*one)).load(conn)?,
        _ => events.filter(pack_events::lot_id.eq_any(lots)).load(conn)?,
    };
    let mut histories: HashMap<i32, Vec<Did>> = HashMap::new();
    for ((lot, deed, (pack, made)), (uid, kind, at, by, voided), (account, mg, day, state)) in
        events
    {
        let bad = |what: &str| Error::bad_row("pack_events", lot, what);
        let state = state.map(|state| State::parse(&state).ok_or_else(|| bad("unknown state")));
        histories.entry(lot).or_default().push(Did {
            deed: DeedId(deed),
            uid,
            kind: DeedKind::parse(&kind).ok_or_else(|| bad("unknown kind of deed"))?,
            at: at.and_utc(),
            day,
            by,
            voided: voided.is_some(),
            pack: pack.unsigned_abs(),
            pack_made: Grams::from_milligrams(made),
            account: Account::parse(&account).ok_or_else(|| bad("unknown account"))?,
            grams: Grams::from_milligrams(mg),
            state: state.transpose()?,
        });
    }
    Ok(histories)
}
