//! Loading what a scope is asked of. Voided deeds and the lots that they made are left out.

use super::rows::{DeedFound, EventFound, Key, LotFound, PackFound};
use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::keyed::{self, AT_ONCE};
use crate::on_each;
use crate::tables::{deeds, voids};
use crate::trace::with_reach;
use chrono::{DateTime, NaiveDate, NaiveDateTime, TimeDelta, Utc};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::Timestamp;
use domain::code::LotCode;
use domain::grams::Grams;
use domain::lot::{DeedId, LotId, PackId, PlaceId};
use domain::scope::{Doing, Happened, PackLife, Window, World, WorldLot};
use domain::words::{Account, DeedKind, StepKind};
use std::collections::{BTreeSet, HashMap, HashSet};

/// Loads into a world.
pub(super) struct Loader<'a> {
    conn: &'a mut Conn,
    /// What is loaded.
    pub world: World,
    /// Lots that were asked for, there or not.
    asked: HashSet<i32>,
    used: BTreeSet<DeedId>,
}

/// Long before and long after everything that a kitchen records.
fn ever() -> (NaiveDateTime, NaiveDateTime) {
    let midnight = |year| {
        let day = NaiveDate::from_ymd_opt(year, 1, 1);
        day.and_then(|day| day.and_hms_opt(0, 0, 0))
            .unwrap_or_default()
    };
    (midnight(1900), midnight(9990))
}

/// The kinds of deed that are done at a place, as a list of SQL.
fn kinds_done_there() -> String {
    let steps = StepKind::SPELT.iter().copied();
    let all = steps.chain([DeedKind::Receive.as_str(), DeedKind::Adopt.as_str()]);
    let all: Vec<String> = all.map(|kind| format!("'{kind}'")).collect();
    all.join(", ")
}

const NOT_VOIDED: &str = "NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = deeds.id)";

impl<'a> Loader<'a> {
    pub(super) fn new(conn: &'a mut Conn, world: World) -> Loader<'a> {
        Loader {
            conn,
            world,
            asked: HashSet::new(),
            used: BTreeSet::new(),
        }
    }

    /// The keys that a statement about some keys gives, many at a time.
    fn keys_of(&mut self, of: &[i32], sql: impl Fn(&str) -> String) -> Result<Vec<i32>> {
        let mut all = Vec::new();
        for some in of.chunks(AT_ONCE) {
            let found: Vec<Key> = keyed::of(self.conn, some, &sql)?;
            all.extend(found.into_iter().map(|key| key.id));
        }
        Ok(all)
    }

    fn keys_between(
        &mut self,
        sql: &str,
        from: NaiveDateTime,
        until: NaiveDateTime,
    ) -> Result<Vec<i32>> {
        let found: Vec<Key> = on_each!(&mut *self.conn, c => sql_query(sql)
            .bind::<Timestamp, _>(from)
            .bind::<Timestamp, _>(until)
            .load(c)?);
        Ok(found.into_iter().map(|key| key.id).collect())
    }

    /// The clean-downs of the places that spread.
    pub(super) fn clean_downs(
        &mut self,
        places: &[PlaceId],
        known: Option<NaiveDateTime>,
    ) -> Result<()> {
        for place in places {
            self.world.cleaned.insert(*place, Vec::new());
        }
        let keys: Vec<i32> = places.iter().map(|place| place.0).collect();
        let all: Vec<(Option<i32>, NaiveDateTime)> = deeds::table
            .left_join(voids::table.on(voids::deed_id.eq(deeds::id)))
            .filter(deeds::kind.eq(DeedKind::CleanDown.as_str()))
            .filter(deeds::place_id.eq_any(keys).and(voids::id.is_null()))
            .filter(deeds::recorded_at.le(known.unwrap_or(ever().1)))
            .order((deeds::at, deeds::id))
            .select((deeds::place_id, deeds::at))
            .load(self.conn)?;
        for (place, at) in all {
            if let Some(downs) = place.and_then(|key| self.world.cleaned.get_mut(&PlaceId(key))) {
                downs.push(at.and_utc());
            }
        }
        Ok(())
    }

    /// Some lots and all that is made of them: of each step that used any of it, all that it made is known then.
    pub(super) fn family(&mut self, starts: &[i32]) -> Result<()> {
        let mut reached = self.keys_of(starts, |these| {
            format!("{} SELECT id FROM reach", with_reach(these))
        })?;
        self.used.clear();
        reached.extend(starts);
        self.lots(&reached)?;
        let mut made: HashMap<DeedId, Vec<LotId>> = HashMap::new();
        for key in reached.iter().collect::<BTreeSet<_>>() {
            let Some(lot) = self.world.lots.get(&LotId(*key)) else {
                continue;
            };
            made.entry(lot.made_by).or_default().push(lot.id);
            let happened = lot.packs.iter().flat_map(|pack| &pack.happened);
            let used = happened.filter(|of| of.account == Account::Used);
            self.used.extend(used.map(|of| of.deed));
        }
        for deed in std::mem::take(&mut self.used) {
            let lots = made.remove(&deed).unwrap_or_default();
            self.world.made_by.entry(deed).or_insert(lots);
        }
        Ok(())
    }

    /// What some deeds made, with all that is made of it.
    pub(super) fn made_by(&mut self, by: &[i32]) -> Result<()> {
        let of = self.born_of(by)?;
        self.family(&of)?;
        self.note_births(by, &of);
        Ok(())
    }

    fn born_of(&mut self, by: &[i32]) -> Result<Vec<i32>> {
        self.keys_of(by, |these| {
            format!("SELECT id FROM lots WHERE deed_id {these} AND NOT voided ORDER BY id")
        })
    }

    fn note_births(&mut self, by: &[i32], lots: &[i32]) {
        let mut made: HashMap<DeedId, Vec<LotId>> = HashMap::new();
        for lot in lots
            .iter()
            .filter_map(|key| self.world.lots.get(&LotId(*key)))
        {
            made.entry(lot.made_by).or_default().push(lot.id);
        }
        for deed in by {
            let deed = DeedId(*deed);
            let lots = made.remove(&deed).unwrap_or_default();
            self.world.made_by.insert(deed, lots);
        }
    }

    /// Every doing in a window, with what it made and what it touched.
    pub(super) fn window(&mut self, window: Window) -> Result<()> {
        let (first, last) = ever();
        let (from, until) = window.bounds(&self.world.cleaned);
        let from = from.map_or(first, |from| from.naive_utc());
        let until = until.map_or(last, |until| until.naive_utc());
        let (place, kinds) = (window.place.0, kinds_done_there());
        // A doing that ended later than the next clean-down may have been under way during it.
        let sql = format!(
            "SELECT id FROM deeds WHERE place_id = {place} AND at > $1 AND at <= $2
                 AND kind IN ({kinds}) AND {NOT_VOIDED}
             UNION
             SELECT id FROM deeds WHERE place_id = {place} AND began_at IS NOT NULL AND began_at <= $2
                 AND at > $2 AND kind IN ({kinds}) AND {NOT_VOIDED}
             UNION
             SELECT deeds.id FROM pack_events CROSS JOIN deeds
             WHERE pack_events.place_id = {place} AND pack_events.account = 'moved'
                 AND deeds.id = pack_events.deed_id AND deeds.kind = 'move'
                 AND deeds.at > $1 AND deeds.at <= $2 AND {NOT_VOIDED}"
        );
        let mut doings = self.keys_between(&sql, from, until)?;
        doings.sort_unstable();
        self.deeds(&doings)?;
        let made = self.born_of(&doings)?;
        self.lots(&made)?;
        self.note_births(&doings, &made);
        let touched = self.touched_by(&doings)?;
        self.lots(&touched)?;
        let doings = doings.into_iter().map(DeedId).collect();
        self.world.windows.insert(window, doings);
        Ok(())
    }

    /// The lots with a species that some deeds touched: the others never matter for having been there.
    fn touched_by(&mut self, by: &[i32]) -> Result<Vec<i32>> {
        self.keys_of(by, |these| {
            format!(
                "SELECT DISTINCT lots.id FROM pack_events JOIN lots ON lots.id = pack_events.lot_id
                 WHERE pack_events.deed_id {these} AND lots.species <> ''"
            )
        })
    }

    /// What may have lain in a place since a moment, or was worked on there.
    pub(super) fn lay_in(&mut self, place: PlaceId, from: DateTime<Utc>) -> Result<()> {
        let here = self.keys_of(&[place.0], |this| {
            format!("SELECT DISTINCT lot_id AS id FROM packs WHERE place_id {this} AND left_mg > 0")
        })?;
        self.lots(&here)?;
        let since = self.since(from, "")?;
        self.lots(&since)
    }

    /// The lots that deeds made or touched since a moment, whose condition is a part of SQL about `deeds`.
    fn since(&mut self, from: DateTime<Utc>, also: &str) -> Result<Vec<i32>> {
        let recorded = (from - TimeDelta::minutes(10)).naive_utc();
        // Nothing is recorded before it was done, but for two minutes by which a device's clock may be ahead.
        let done = format!("deeds.recorded_at >= $1 AND deeds.at >= $2 {also} AND {NOT_VOIDED}");
        let sql = format!(
            "SELECT lots.id FROM deeds JOIN lots ON lots.deed_id = deeds.id WHERE {done}
             UNION
             SELECT pack_events.lot_id FROM deeds JOIN pack_events ON pack_events.deed_id = deeds.id WHERE {done}"
        );
        self.keys_between(&sql, recorded, from.naive_utc())
    }

    /// What a person's steps made and drew on in a time.
    pub(super) fn done_by(
        &mut self,
        person: &str,
        from: DateTime<Utc>,
        until: DateTime<Utc>,
    ) -> Result<()> {
        let recorded = (from - TimeDelta::minutes(10)).naive_utc();
        let by: Vec<i32> = deeds::table
            .filter(deeds::person.eq(person))
            .filter(deeds::recorded_at.ge(recorded))
            .filter(deeds::at.ge(from.naive_utc()))
            .filter(
                deeds::at
                    .lt(until.naive_utc())
                    .or(deeds::began_at.lt(until.naive_utc()).assume_not_null()),
            )
            .filter(deeds::kind.eq_any(StepKind::SPELT))
            .order(deeds::id)
            .select(deeds::id)
            .load(self.conn)?;
        let mut of = self.born_of(&by)?;
        of.extend(self.keys_of(&by, |these| {
            format!("SELECT DISTINCT lot_id AS id FROM pack_events WHERE deed_id {these}")
        })?);
        self.lots(&of)
    }

    /// Deeds that are not known yet.
    fn deeds(&mut self, keys: &[i32]) -> Result<()> {
        let mut lacking: Vec<i32> = keys
            .iter()
            .copied()
            .filter(|key| !self.world.deeds.contains_key(&DeedId(*key)))
            .collect();
        lacking.sort_unstable();
        lacking.dedup();
        for some in lacking.chunks(AT_ONCE) {
            let rows: Vec<DeedFound> = keyed::of(self.conn, some, |these| {
                format!(
                    "SELECT id, kind, at, began_at, place_id, person FROM deeds WHERE id {these}"
                )
            })?;
            for row in rows {
                let kind = DeedKind::parse(&row.kind);
                let doing = Doing {
                    id: DeedId(row.id),
                    kind: kind.ok_or_else(|| Error::bad_row("deeds", row.id, "unknown kind"))?,
                    at: row.at.and_utc(),
                    began: row.began_at.map(|began| began.and_utc()),
                    place: row.place_id.map(PlaceId),
                    person: row.person,
                };
                self.world.deeds.insert(doing.id, doing);
            }
        }
        Ok(())
    }

    /// Lots that are not known yet, with their packs and all that happened to them.
    pub(super) fn lots(&mut self, keys: &[i32]) -> Result<()> {
        let mut lacking: Vec<i32> = keys
            .iter()
            .copied()
            .filter(|key| self.asked.insert(*key))
            .collect();
        lacking.sort_unstable();
        for some in lacking.chunks(AT_ONCE) {
            self.some_lots(some)?;
        }
        Ok(())
    }

    fn some_lots(&mut self, some: &[i32]) -> Result<()> {
        let lots: Vec<LotFound> = keyed::of(self.conn, some, |these| {
            format!(
                "SELECT lots.id, lots.code, entries.code AS product, lots.note, lots.species, lots.deed_id,
                     lots.born_place_id
                 FROM lots JOIN versions ON versions.id = lots.version_id
                 JOIN entries ON entries.id = versions.entry_id
                 WHERE lots.id {these} AND NOT lots.voided ORDER BY lots.id"
            )
        })?;
        let packs: Vec<PackFound> = keyed::of(self.conn, some, |these| {
            format!(
                "SELECT id, lot_id, number, made_mg, left_mg, place_id FROM packs
                 WHERE lot_id {these} ORDER BY lot_id, number"
            )
        })?;
        let events: Vec<EventFound> = keyed::of(self.conn, some, |these| {
            format!(
                "SELECT id, deed_id, pack_id, account, mg, whole_pack, place_id FROM pack_events
                 WHERE lot_id {these}
                     AND NOT EXISTS (SELECT 1 FROM voids WHERE voids.deed_id = pack_events.deed_id)
                 ORDER BY lot_id, seq"
            )
        })?;
        let deeds = lots.iter().map(|lot| lot.deed_id);
        let deeds: Vec<i32> = deeds.chain(events.iter().map(|of| of.deed_id)).collect();
        self.deeds(&deeds)?;
        let mut happened: HashMap<i32, Vec<Happened>> = HashMap::new();
        for of in events {
            let account = Account::parse(&of.account);
            let account =
                account.ok_or_else(|| Error::bad_row("pack_events", of.id, "unknown account"))?;
            happened.entry(of.pack_id).or_default().push(Happened {
                deed: DeedId(of.deed_id),
                account,
                grams: Grams::from_milligrams(of.mg),
                whole_pack: of.whole_pack,
                to: of.place_id.map(PlaceId),
            });
        }
        let mut of_lot: HashMap<i32, Vec<PackLife>> = HashMap::new();
        for pack in packs {
            of_lot.entry(pack.lot_id).or_default().push(PackLife {
                id: PackId(pack.id),
                number: pack.number.unsigned_abs(),
                made: Grams::from_milligrams(pack.made_mg),
                left: Grams::from_milligrams(pack.left_mg),
                place: PlaceId(pack.place_id),
                happened: happened.remove(&pack.id).unwrap_or_default(),
            });
        }
        for lot in lots {
            let code = LotCode::read(&lot.code);
            self.world.add(WorldLot {
                id: LotId(lot.id),
                code: code.map_err(|_| Error::bad_row("lots", lot.id, "malformed code"))?,
                product: lot.product,
                note: lot.note,
                has_species: !lot.species.is_empty(),
                made_by: DeedId(lot.deed_id),
                born: PlaceId(lot.born_place_id),
                packs: of_lot.remove(&lot.id).unwrap_or_default(),
            });
        }
        Ok(())
    }
}
