//! The stops of lots that are judged again: those that deeds met, those that are on record, those that follow
//! now.

use super::kin::Kin;
use crate::error::Result;
use chrono::{DateTime, Utc};
use domain::deed::again::{JudgedStop, stops_differ};
use domain::stop::{NewStop, Placed, StopId};
use store::again::Recorded;
use store::deeds::DeedRow;
use store::stops::StopRow;

/// A stop of a lot as it is judged again.
pub struct StopAgain {
    /// Where the deed that it follows from stands in the order.
    pub by: Recorded,
    /// The stop.
    pub stop: JudgedStop,
    /// Its key in the record; below zero where it has none yet.
    pub id: StopId,
}

impl Kin {
    /// The stops of a lot that a deed met.
    pub(super) fn stops_at(&self, lot: i32, at: Recorded) -> Result<Vec<Placed>> {
        let state = &self.lots[&lot];
        let mut met = Vec::new();
        for row in self.all.stops.get(&lot).into_iter().flatten() {
            let judged = state
                .judged
                .iter()
                .any(|deed| self.follows_from(row, *deed));
            let known = self.all.judging.contains(&row.deed_id)
                || self
                    .all
                    .recorded
                    .get(&row.deed_id)
                    .is_some_and(|by| *by < at);
            if known && !judged && !self.is_judged_away(row.id, row.root_id) {
                let ended = self.ended(row.id, row.root_id, at);
                met.push(row.placed(ended)?);
            }
        }
        for again in state.stops.iter().filter(|of| of.by < at) {
            let (pack, stop) = &again.stop;
            let root = stop.root.unwrap_or(again.id);
            met.push(Placed {
                id: again.id,
                root,
                pack: *pack,
                cause: stop.cause.clone(),
                ended: self.ended(again.id.0, root.0, at),
            });
        }
        Ok(met)
    }

    /// When a person ended a stop, as far as it was known.
    fn ended(&self, stop: i32, root: i32, at: Recorded) -> Option<DateTime<Utc>> {
        let ends = [stop, root].into_iter();
        let ends = ends.filter_map(|stop| self.all.ends.get(&stop)).flatten();
        let known = |deed: i32| self.all.recorded.get(&deed).is_some_and(|by| *by < at);
        let ends = ends.filter(|(deed, ..)| known(*deed));
        ends.map(|(_, at, _)| at.and_utc()).min()
    }

    /// Was it found before that it should never have stood?
    pub fn is_judged_away(&self, stop: i32, root: i32) -> bool {
        let ends = [stop, root].into_iter();
        let mut ends = ends.filter_map(|stop| self.all.ends.get(&stop)).flatten();
        ends.any(|(deed, ..)| self.all.judging.contains(deed))
    }

    /// Did a person end it?
    pub fn is_ended(&self, stop: i32, root: i32) -> bool {
        let mut ends = [stop, root].into_iter();
        ends.any(|stop| self.all.ends.contains_key(&stop))
    }

    /// Does a stop on record follow from a deed: placed by it, or by a judgement of it?
    fn follows_from(&self, row: &StopRow, deed: i32) -> bool {
        let of = self.all.recorded.get(&deed);
        let at = of.and_then(|at| self.all.deeds.get(at)).map(|of| of.at);
        row.deed_id == deed || self.all.judging.contains(&row.deed_id) && Some(row.since) == at
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
        let standing = of.filter(|row| !self.is_judged_away(row.id, row.root_id));
        Ok(standing
            .map(|row| row.placed(None))
            .collect::<store::Result<_>>()?)
    }

    /// Takes in the stops that a deed places on a lot, judged again; those that are on record keep their keys.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn judge_stops(
        &mut self,
        lot: i32,
        deed: &DeedRow,
        by: Recorded,
        stops: Vec<JudgedStop>,
    ) -> Result<()> {
        self.lots
            .get_mut(&lot)
            .expect("a lot that is judged")
            .judged
            .insert(deed.id);
        let rows = self.all.stops.get(&lot).into_iter().flatten();
        let of = rows.filter(|row| self.follows_from(row, deed.id));
        let of = of.filter(|row| !self.is_judged_away(row.id, row.root_id));
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
            known.push(StopAgain { by, stop, id });
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
