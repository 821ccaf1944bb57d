//! The stops of lots that are judged again: those that deeds met, those that are on record, those that follow
//! now.

use super::kin::Kin;
use crate::error::Result;
use chrono::{DateTime, Utc};
use domain::deed::again::{JudgedStop, stops_differ};
use domain::stop::{NewStop, Placed, StopId};
use domain::words::StopKind;
use store::again::Happened;
use store::deeds::DeedRow;
use store::stops::StopRow;

/// A stop of a lot as it is judged again.
pub struct StopAgain {
    /// The stop.
    pub stop: JudgedStop,
    /// Its key in the record; below zero where it has none yet.
    pub id: StopId,
}

impl Kin {
    /// The stops of a lot that deeds meet: which of them stand at a deed's moment, they say themselves.
    pub(super) fn stops_at(&self, lot: i32, at: Happened) -> Result<Vec<Placed>> {
        let state = &self.lots[&lot];
        let mut met = Vec::new();
        for row in self.all.stops.get(&lot).into_iter().flatten() {
            let judged = state
                .judged
                .iter()
                .any(|deed| self.follows_from(row, *deed));
            // A hold begins when it is placed.
            let held_since = row.kind == StopKind::Held.as_str()
                && self
                    .all
                    .happened
                    .get(&row.deed_id)
                    .is_some_and(|by| by.1 > at.1);
            if !judged && !held_since && !self.is_judged_away(lot, row.id, row.root_id) {
                met.push(row.placed(self.ended(row.id, row.root_id))?);
            }
        }
        for again in &state.stops {
            let (pack, stop) = &again.stop;
            let root = stop.root.unwrap_or(again.id);
            met.push(Placed {
                id: again.id,
                root,
                pack: *pack,
                cause: stop.cause.clone(),
                incident: stop.incident,
                ended: self.ended(again.id.0, root.0),
            });
        }
        Ok(met)
    }

    /// When a person ended a stop.
    fn ended(&self, stop: i32, root: i32) -> Option<DateTime<Utc>> {
        let ends = [stop, root].into_iter();
        let ends = ends.filter_map(|stop| self.all.ends.get(&stop)).flatten();
        ends.map(|(_, at, _)| at.and_utc()).min()
    }

    /// Was it found before that it should never have stood?
    pub fn is_judged_away(&self, lot: i32, stop: i32, root: i32) -> bool {
        let ends = [stop, root].into_iter();
        let mut ends = ends.filter_map(|stop| self.all.ends.get(&stop)).flatten();
        ends.any(|(deed, ..)| self.all.is_judgement(*deed, lot))
    }

    /// Did a person end it?
    pub fn is_ended(&self, stop: i32, root: i32) -> bool {
        let mut ends = [stop, root].into_iter();
        ends.any(|stop| self.all.ends.contains_key(&stop))
    }

    /// Does a stop on record follow from a deed: placed by it, or by a judgement of it?
    fn follows_from(&self, row: &StopRow, deed: i32) -> bool {
        let at = self.all.happened.get(&deed).map(|(at, _)| *at);
        row.deed_id == deed
            || self.all.is_judgement(row.deed_id, row.lot_id) && Some(row.since) == at
    }

    /// The stops on record that follow from the deeds of a lot that were judged again.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn recorded_stops(&self, lot: i32) -> Result<Vec<Placed>> {
        let state = &self.lots[&lot];
        let rows = self.all.stops.get(&lot).into_iter().flatten();
        let of = rows.filter(|row| {
            state
                .judged
                .iter()
                .any(|deed| self.follows_from(row, *deed))
        });
        let standing = of.filter(|row| !self.is_judged_away(lot, row.id, row.root_id));
        Ok(standing
            .map(|row| row.placed(None))
            .collect::<store::Result<_>>()?)
    }

    /// Takes in the stops that a deed places on a lot, judged again; those that are on record keep their keys.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn judge_stops(&mut self, lot: i32, deed: &DeedRow, stops: Vec<JudgedStop>) -> Result<()> {
        self.lots
            .get_mut(&lot)
            .expect("a lot that is judged")
            .judged
            .insert(deed.id);
        let rows = self.all.stops.get(&lot).into_iter().flatten();
        let of = rows.filter(|row| self.follows_from(row, deed.id));
        let of = of.filter(|row| !self.is_judged_away(lot, row.id, row.root_id));
        let recorded: Vec<Placed> = of
            .map(|row| row.placed(None))
            .collect::<store::Result<_>>()?;
        let differ = stops_differ(&recorded, &stops);
        let mut known = Vec::with_capacity(stops.len());
        for (nth, stop) in stops.into_iter().enumerate() {
            let id = match differ.new.contains(&nth) {
                true => {
                    self.next_stop -= 1;
                    StopId(self.next_stop)
                }
                false => same(&recorded, &stop).unwrap_or(StopId(0)),
            };
            known.push(StopAgain { stop, id });
        }
        let state = self.lots.get_mut(&lot).expect("a lot that is judged");
        state.changed |= !differ.new.is_empty() || !differ.ended.is_empty();
        state.stops.extend(known);
        Ok(())
    }
}

fn same(recorded: &[Placed], stop: &JudgedStop) -> Option<StopId> {
    let alike = |placed: &&Placed| {
        let stops: &[JudgedStop] = std::slice::from_ref(stop);
        stops_differ(std::slice::from_ref(*placed), stops)
            .new
            .is_empty()
    };
    recorded.iter().find(alike).map(|placed| placed.id)
}

/// A stop on the whole of a lot.
pub fn on_lot(stop: NewStop) -> JudgedStop {
    (None, stop)
}
