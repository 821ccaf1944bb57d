//! Everything that some deeds wrote down.

use super::upon;
use crate::conn::Conn;
use crate::corrections::{self, CorrectionRow};
use crate::deeds::{self, DeedRow};
use crate::error::{Error, Result};
use crate::measurements::quantity;
use crate::reasons;
use crate::stops::StopRow;
use crate::tables::{
    core_readings, entries, lots, measurements, pack_events, packs, probe_checks, steps, stop_ends,
    stops, voids,
};
use chrono::NaiveDateTime;
use diesel::prelude::*;
use domain::grams::Grams;
use domain::heat::Bath;
use domain::log::{CorePoint, CorrectedBy, Doing, Drawn, Ended, ProbeShown, Read, UndoneBy};
use domain::lot::{DeedId, LotId, PlaceId};
use domain::measure::Temperature;
use domain::plan::Reason;
use domain::words::{Account, Addition, Disposal};
use std::collections::{HashMap, HashSet};

/// Some deeds as a log takes them; what they told in fields of their request is not read here.
pub struct Loaded {
    /// The deeds, in the order in which they were given.
    pub doings: Vec<Doing>,
    /// What is known to be wrong of them, in the order in which it was recorded.
    pub corrections: Vec<CorrectionRow>,
}

/// Loads what some deeds wrote down.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn load(conn: &mut Conn, rows: &[DeedRow]) -> Result<Loaded> {
    let keys: Vec<i32> = rows.iter().map(|row| row.id).collect();
    let corrections = corrections::of_deeds(conn, &keys)?;
    let mut doings: Vec<Doing> = rows.iter().map(bare).collect::<Result<_>>()?;
    let place: HashMap<i32, usize> = keys
        .iter()
        .enumerate()
        .map(|(nth, key)| (*key, nth))
        .collect();
    let mut of = |deed: i32, put: &mut dyn FnMut(&mut Doing)| {
        if let Some(nth) = place.get(&deed) {
            put(&mut doings[*nth]);
        }
    };
    let made: Vec<(i32, i32)> = lots::table
        .filter(lots::deed_id.eq_any(&keys))
        .order(lots::id)
        .select((lots::deed_id, lots::id))
        .load(conn)?;
    for (deed, lot) in made {
        of(deed, &mut |doing| doing.made.push(LotId(lot)));
    }
    for (deed, drawn) in drawn(conn, &keys)? {
        of(deed, &mut |doing| doing.drew.push(drawn.clone()));
    }
    for (deed, read) in readings(conn, &keys, &corrections)? {
        of(deed, &mut |doing| doing.read.push(read.clone()));
    }
    for (deed, point) in points(conn, &keys, &corrections)? {
        of(deed, &mut |doing| doing.points.push(point.clone()));
    }
    for row in reasons::of_deeds(conn, &keys)? {
        let reason = Reason {
            topic: row.topic()?,
            because: row.because()?,
        };
        let lot = LotId(row.lot_id);
        of(row.deed_id, &mut |doing| {
            doing.reasons.push((lot, reason.clone()))
        });
    }
    let placed: Vec<StopRow> = stops::table
        .filter(
            stops::deed_id
                .eq_any(&keys)
                .and(stops::root_id.eq(stops::id)),
        )
        .order(stops::id)
        .select(StopRow::as_select())
        .load(conn)?;
    for row in placed {
        let cause = row.placed(None)?.cause;
        let lot = LotId(row.lot_id);
        of(row.deed_id, &mut |doing| {
            doing.stops.push((lot, cause.clone()))
        });
    }
    for (deed, ended) in ended(conn, &keys)? {
        of(deed, &mut |doing| doing.ended.push(ended.clone()));
    }
    for (deed, what, mg) in deeds::additions(conn, &keys)? {
        let what = Addition::parse(&what);
        let what = what.ok_or_else(|| Error::bad_row("additions", deed, "unknown addition"))?;
        of(deed, &mut |doing| {
            doing.added.push((what, Grams::from_milligrams(mg)))
        });
    }
    let losses: Vec<(i32, i64)> = steps::table
        .filter(steps::id.eq_any(&keys))
        .select((steps::id, steps::loss_mg))
        .load(conn)?;
    for (deed, mg) in losses {
        of(deed, &mut |doing| {
            doing.loss = Some(Grams::from_milligrams(mg))
        });
    }
    for (deed, undone) in undone(conn, &keys)? {
        of(deed, &mut |doing| doing.undone = Some(undone.clone()));
    }
    for (deed, shown) in probes_shown(conn, &keys)? {
        of(deed, &mut |doing| doing.probe = Some(shown.clone()));
    }
    for correction in &corrections {
        let by = CorrectedBy {
            by: correction.person.clone(),
            at: correction.at.and_utc(),
        };
        of(correction.deed_id, &mut |doing| {
            doing.corrected.push(by.clone())
        });
    }
    for (deed, upon) in upon::of(conn, rows)? {
        of(deed, &mut |doing| doing.upon = Some(upon.clone()));
    }
    Ok(Loaded {
        doings,
        corrections,
    })
}

fn bare(row: &DeedRow) -> Result<Doing> {
    let (deed, kind, at) = (DeedId(row.id), row.kind()?, row.at.and_utc());
    Ok(Doing {
        uid: row.uid.clone(),
        began_at: row.began_at.map(|began| began.and_utc()),
        entered: row.late.then(|| row.recorded_at.and_utc()),
        place: row.place_id.map(PlaceId),
        note: row.note.clone(),
        ..Doing::bare(deed, kind, at, row.day, row.person.clone())
    })
}

fn drawn(conn: &mut Conn, keys: &[i32]) -> Result<Vec<(i32, Drawn)>> {
    let rows: Vec<(i32, i32, i32, String, i64)> = pack_events::table
        .inner_join(packs::table.on(packs::id.eq(pack_events::pack_id)))
        .filter(pack_events::deed_id.eq_any(keys))
        .order(pack_events::id)
        .select((
            pack_events::deed_id,
            pack_events::lot_id,
            packs::number,
            pack_events::account,
            pack_events::mg,
        ))
        .load(conn)?;
    let drawn = rows.into_iter().map(|(deed, lot, pack, account, mg)| {
        let account = Account::parse(&account);
        Ok((
            deed,
            Drawn {
                lot: LotId(lot),
                pack: pack.unsigned_abs(),
                account: account
                    .ok_or_else(|| Error::bad_row("pack_events", deed, "unknown account"))?,
                grams: Grams::from_milligrams(mg),
            },
        ))
    });
    drawn.collect()
}

/// The readings of deeds; where a correction said them anew, what it said last counts.
fn readings(
    conn: &mut Conn,
    keys: &[i32],
    corrections: &[CorrectionRow],
) -> Result<Vec<(i32, Read)>> {
    type Row = (i32, Option<i32>, Option<i32>, String, i64, Option<String>);
    let by: HashSet<i32> = corrections.iter().map(|of| of.id).collect();
    let rows: Vec<Row> = measurements::table
        .left_join(entries::table.on(entries::id.nullable().eq(measurements::probe_id)))
        .filter(
            measurements::deed_id
                .eq_any(keys)
                .or(measurements::of_deed_id.eq_any(keys).assume_not_null()),
        )
        .order(measurements::id)
        .select((
            measurements::deed_id,
            measurements::of_deed_id,
            measurements::lot_id,
            measurements::quantity,
            measurements::millionths,
            entries::code.nullable(),
        ))
        .load(conn)?;
    // The last that spoke of a deed's readings of a lot.
    let mut last: HashMap<(i32, Option<i32>), i32> = HashMap::new();
    for (deed, of, lot, ..) in &rows {
        if of.is_none() || by.contains(deed) {
            last.insert((of.unwrap_or(*deed), *lot), *deed);
        }
    }
    let mut read = Vec::new();
    for (deed, of, lot, what, millionths, probe) in rows {
        let upon = of.unwrap_or(deed);
        if last.get(&(upon, lot)) == Some(&deed) {
            let lot = lot.map(LotId);
            let quantity = quantity(&what)?;
            read.push((
                upon,
                Read {
                    lot,
                    quantity,
                    millionths,
                    probe,
                },
            ));
        }
    }
    Ok(read)
}

/// The points of logs; where a correction brought another log, that one.
fn points(
    conn: &mut Conn,
    keys: &[i32],
    corrections: &[CorrectionRow],
) -> Result<Vec<(i32, CorePoint)>> {
    type Row = (i32, NaiveDateTime, String, i64, Option<String>);
    let by: HashMap<i32, i32> = corrections.iter().map(|of| (of.id, of.deed_id)).collect();
    let all: Vec<i32> = keys.iter().chain(by.keys()).copied().collect();
    let rows: Vec<Row> = core_readings::table
        .left_join(entries::table.on(entries::id.nullable().eq(core_readings::probe_id)))
        .filter(core_readings::deed_id.eq_any(&all))
        .order((core_readings::at, core_readings::id))
        .select((
            core_readings::deed_id,
            core_readings::at,
            core_readings::quantity,
            core_readings::millionths,
            entries::code.nullable(),
        ))
        .load(conn)?;
    let mut last: HashMap<i32, i32> = HashMap::new();
    for (deed, ..) in &rows {
        let upon = by.get(deed).copied().unwrap_or(*deed);
        let known = last.entry(upon).or_insert(*deed);
        *known = (*known).max(*deed);
    }
    let mut points = Vec::new();
    for (deed, at, what, millionths, probe) in rows {
        let upon = by.get(&deed).copied().unwrap_or(deed);
        if last.get(&upon) == Some(&deed) {
            let at = at.and_utc();
            let read = temperature(&what, millionths)?;
            points.push((upon, CorePoint { at, read, probe }));
        }
    }
    Ok(points)
}

fn temperature(what: &str, millionths: i64) -> Result<Temperature> {
    let read = Read {
        lot: None,
        quantity: quantity(what)?,
        millionths,
        probe: None,
    };
    let no_warmth = || Error::Broken(format!("a log of temperatures holds {what:?}"));
    read.temperature().ok_or_else(no_warmth)
}

fn ended(conn: &mut Conn, keys: &[i32]) -> Result<Vec<(i32, Ended)>> {
    let rows: Vec<(i32, String, StopRow)> = stop_ends::table
        .inner_join(stops::table.on(stops::id.eq(stop_ends::stop_id)))
        .filter(stop_ends::deed_id.eq_any(keys))
        .order(stop_ends::id)
        .select((stop_ends::deed_id, stop_ends::what, StopRow::as_select()))
        .load(conn)?;
    let ended = rows.into_iter().map(|(deed, how, row)| {
        let how = Disposal::parse(&how);
        Ok((
            deed,
            Ended {
                lot: LotId(row.lot_id),
                cause: row.placed(None)?.cause,
                how: how.ok_or_else(|| Error::bad_row("stop_ends", deed, "unknown end"))?,
            },
        ))
    });
    ended.collect()
}

fn undone(conn: &mut Conn, keys: &[i32]) -> Result<Vec<(i32, UndoneBy)>> {
    use crate::tables::deeds;
    let rows: Vec<(i32, String, NaiveDateTime, String)> = voids::table
        .inner_join(deeds::table.on(deeds::id.eq(voids::id)))
        .filter(voids::deed_id.eq_any(keys))
        .select((
            voids::deed_id,
            deeds::person,
            deeds::recorded_at,
            voids::why,
        ))
        .load(conn)?;
    let undone = rows.into_iter().map(|(deed, by, at, why)| {
        let at = at.and_utc();
        (deed, UndoneBy { by, at, why })
    });
    Ok(undone.collect())
}

fn probes_shown(conn: &mut Conn, keys: &[i32]) -> Result<Vec<(i32, ProbeShown)>> {
    let rows: Vec<(i32, String, String, String, i64)> = probe_checks::table
        .inner_join(entries::table.on(entries::id.eq(probe_checks::probe_id)))
        .filter(probe_checks::id.eq_any(keys))
        .select((
            probe_checks::id,
            entries::code,
            probe_checks::bath,
            probe_checks::quantity,
            probe_checks::millionths,
        ))
        .load(conn)?;
    let shown = rows
        .into_iter()
        .map(|(deed, probe, bath, what, millionths)| {
            let bath = Bath::parse(&bath);
            let bath = bath.ok_or_else(|| Error::bad_row("probe_checks", deed, "unknown bath"))?;
            let read = temperature(&what, millionths)?;
            Ok((deed, ProbeShown { probe, bath, read }))
        });
    shown.collect()
}
