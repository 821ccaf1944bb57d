//! The lots that are judged again, and what went into them: each as it was at any moment, with the facts
//! that are right now.

use super::stops::StopAgain;
use crate::deeds::facts::Facts;
use crate::deeds::stable;
use crate::error::Result;
use chrono::NaiveDateTime;
use domain::condition::Condition;
use domain::dates::Because;
use domain::deed::again::{BornAs, Since, condition_since};
use domain::grams::Grams;
use domain::lot::{Event, Lot, Pack, PackNow, as_it_happened, refold, told_in_order};
use domain::plan::Reason;
use domain::product::Product;
use domain::words::{DeedKind, Quantity};
use rust_decimal::Decimal;
use std::collections::{HashMap, HashSet};
use std::sync::Arc;
use store::again::{Everything, Happened};
use store::deeds::DeedRow;
use store::lots::{LotRow, Since as RowSince};
use store::measurements::Measurement;

/// A lot as it is judged.
pub struct State {
    /// What it is.
    pub product: Arc<Product>,
    /// What it was born as, as far as the record knew.
    pub was: BornAs,
    /// What it was born as.
    pub now: BornAs,
    /// What was said of its condition since, by which deed.
    life: Vec<(Happened, Since)>,
    /// When it was released.
    released: Vec<Happened>,
    /// The stops that follow from the deeds that were judged again.
    pub stops: Vec<StopAgain>,
    /// Which deeds those are.
    pub judged: HashSet<i32>,
    /// Is anything of it otherwise?
    pub changed: bool,
    /// From when on something is otherwise that happened to it, and not what it was born as.
    pub told: Option<NaiveDateTime>,
    /// Why it is as it is, where it was judged again.
    pub reasons: Vec<Reason>,
    /// What its cure brought, or what its receipt read, where that is otherwise.
    pub measured: Vec<Measurement>,
}

impl State {
    /// What it is after all that was said of it since.
    pub fn condition(&self) -> Option<Condition> {
        let since = self.life.iter().map(|(_, since)| since);
        condition_since(self.now.condition, &self.product, since)
    }

    /// What its readings since its birth show.
    pub fn shown(&self) -> impl Iterator<Item = &Because> {
        self.life.iter().filter_map(|(_, since)| match since {
            Since::Read(shown) => shown.as_ref().map(|stable| &stable.because),
            Since::LetGo => None,
        })
    }
}

/// All of them.
pub struct Kin {
    /// What the record holds.
    pub all: Everything,
    /// Each lot.
    pub lots: HashMap<i32, State>,
    /// How each pack was before each of its events, and after the last.
    before: HashMap<i32, Vec<(i32, PackNow)>>,
    /// The events of each pack, by their places among those of its lot.
    lived_by: HashMap<i32, Vec<usize>>,
    packs: HashMap<i32, Vec<i32>>,
    made: HashMap<i32, Vec<i32>>,
    pub(super) next_stop: i32,
    /// Deeds that are judged again whatever went in: the rules that they were judged by are others.
    pub(super) asked: HashSet<i32>,
}

impl Kin {
    /// Everything as it is on record.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn of(facts: &mut Facts<'_, '_>, all: Everything) -> Result<Kin> {
        let mut lots = HashMap::with_capacity(all.lots.len());
        for (key, row) in &all.lots {
            let product = facts.app.product(facts.tx.conn, row.version_id)?;
            let judged = all.judged.get(key).copied().flatten();
            let was = row.born_as(&product, judged)?;
            let life = match was.condition {
                Some(_) => life(facts, &all, *key)?,
                None => Vec::new(),
            };
            let kind_of = |deed: i32| {
                let row = all.happened.get(&deed).and_then(|at| all.deeds.get(at));
                row.map(|row| row.kind.as_str())
            };
            let events = all.events.get(key).into_iter().flatten();
            let released = events
                .filter(|event| kind_of(event.row.deed_id) == Some(DeedKind::Release.as_str()))
                .map(|event| all.happened[&event.row.deed_id]);
            let state = State {
                now: was.clone(),
                was,
                life,
                released: released.collect(),
                stops: Vec::new(),
                judged: HashSet::new(),
                changed: false,
                told: None,
                reasons: Vec::new(),
                measured: Vec::new(),
                product,
            };
            lots.insert(*key, state);
        }
        let mut lived_by: HashMap<i32, Vec<usize>> = HashMap::new();
        for (nth, event) in all.events.values().flat_map(|of| of.iter().enumerate()) {
            lived_by.entry(event.row.pack_id).or_default().push(nth);
        }
        let (mut packs, mut made): (HashMap<i32, Vec<i32>>, HashMap<i32, Vec<i32>>) =
            Default::default();
        for pack in all.packs.values() {
            packs.entry(pack.lot_id).or_default().push(pack.id);
        }
        for row in all.lots.values() {
            made.entry(row.deed_id).or_default().push(row.id);
        }
        Ok(Kin {
            all,
            lots,
            before: HashMap::new(),
            lived_by,
            packs,
            made,
            next_stop: 0,
            asked: HashSet::new(),
        })
    }

    /// The packs of a lot.
    pub fn packs_of(&self, lot: i32) -> Vec<i32> {
        self.packs.get(&lot).cloned().unwrap_or_default()
    }

    /// The lots that a deed made, in the order in which they were asked.
    pub fn made_by(&self, deed: i32) -> Vec<LotRow> {
        let made = self.made.get(&deed).into_iter().flatten();
        let mut made: Vec<LotRow> = made.map(|lot| self.all.lots[lot].clone()).collect();
        made.sort_by_key(|row| row.id);
        made
    }

    /// Says of lots that something of them is otherwise.
    pub fn touch(&mut self, lots: &[i32]) {
        for lot in lots {
            if let Some(state) = self.lots.get_mut(lot) {
                state.changed = true;
            }
        }
    }

    /// Did one of these lots come in as an animal, or a part of one?
    pub fn is_of_an_animal(&self, lots: &[i32]) -> bool {
        let sources = lots.iter().filter_map(|lot| self.all.sources.get(lot));
        sources.into_iter().any(|source| source.animal_id.is_some())
    }

    /// Says of all lots that something of what they come from is otherwise, and always was.
    pub fn tell_all(&mut self) {
        for state in self.lots.values_mut() {
            state.told = Some(NaiveDateTime::MIN);
        }
    }

    /// Says of lots that something happened to them, from a moment on, that was not known when it did.
    pub fn tell(&mut self, lots: &[i32], since: NaiveDateTime) {
        for lot in lots {
            if let Some(state) = self.lots.get_mut(lot) {
                state.told = Some(state.told.map_or(since, |told| told.min(since)));
            }
        }
    }

    /// The deeds that can be judged, in the order in which they happened.
    pub fn deeds(&self) -> Vec<(Happened, DeedRow)> {
        let all = self.all.deeds.iter();
        all.map(|(at, deed)| (*at, deed.clone())).collect()
    }

    /// Did a deed of that moment draw on a lot that is otherwise now?
    pub fn is_drawn_from_changed(&self, deed: i32, at: NaiveDateTime) -> bool {
        let drawn = self.all.drawn.get(&deed).into_iter().flatten();
        let mut lots = drawn.filter_map(|event| self.lots.get(&event.lot_id));
        lots.any(|of| of.changed || of.told.is_some_and(|told| told <= at))
    }

    /// A lot as it was when a deed happened, with some packs as they were before an event: by all that is known
    /// now, also where it was told later.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn lot_at(&mut self, lot: i32, at: Happened, packs: &[(i32, i32)]) -> Result<Lot> {
        let mut loaded = Vec::with_capacity(packs.len());
        for (pack, seq) in packs {
            let mut of = self.all.packs[pack].pack()?;
            of.now = self.pack_before(lot, *pack, *seq)?;
            loaded.push(Pack { past: None, ..of });
        }
        let stops = self.stops_at(lot, at)?;
        let state = &self.lots[&lot];
        let said = state.life.iter().filter(|(by, _)| *by < at);
        let since = said.map(|(_, since)| since);
        let condition = condition_since(state.now.condition, &state.product, since);
        let released = state.product.is_hung() && state.released.iter().any(|by| *by < at);
        let row = self.all.lots[&lot].clone();
        let known = RowSince {
            // What a label said changes nothing of the food, and is judged when all else is.
            wrong_labels: Vec::new(),
            stops,
            condition,
            released,
        };
        let of = row.into_lot(state.product.clone(), loaded, known)?;
        Ok(Lot {
            condition,
            later: state.now.later,
            released: released || state.now.later.released,
            allergens: state.now.allergens.clone(),
            may_contain: state.now.may_contain.clone(),
            supplied: state.now.supplied.clone(),
            species: state.now.species.clone(),
            origin: state.now.origin,
            ..of
        })
    }

    /// How a pack was before an event; `i32::MAX` asks how it is now. Grams follow the order of recording,
    /// dates that of the days.
    ///
    /// # Errors
    /// The record is damaged.
    pub fn pack_before(&mut self, lot: i32, pack: i32, seq: i32) -> Result<PackNow> {
        if !self.before.contains_key(&pack) {
            let all = self.lived(lot, pack)?;
            self.before.insert(pack, all);
        }
        let lived = &self.before[&pack];
        let nth = lived.partition_point(|(of, _)| *of < seq);
        Ok(lived[nth.min(lived.len() - 1)].1)
    }

    fn lived(&self, lot: i32, pack: i32) -> Result<Vec<(i32, PackNow)>> {
        let state = &self.lots[&lot];
        let made = Grams::from_milligrams(self.all.packs[&pack].made_mg);
        let (later, born) = (state.now.later, state.now.born);
        let born = PackNow { left: made, ..born };
        let all = self.all.events.get(&lot).map_or(&[][..], Vec::as_slice);
        let of = self.lived_by.get(&pack).into_iter().flatten();
        let rows: Vec<_> = of.map(|nth| &all[*nth]).collect();
        let events = rows.iter().map(|row| row.event());
        let events = events.collect::<store::Result<Vec<Event>>>()?;
        let mut now = born;
        let mut lived = Vec::with_capacity(rows.len() + 1);
        for (row, event) in rows.iter().zip(&events) {
            lived.push((row.row.seq, now));
            now = now.after(event, made, later).unwrap_or(now);
        }
        if told_in_order(&events, later) {
            lived.push((i32::MAX, now));
            return Ok(lived);
        }
        // It happened in another order than that of recording, and the dates follow it.
        let mut then = born;
        for nth in as_it_happened(&events, later) {
            let before = &mut lived[nth].1;
            (before.use_by, before.days_left, before.state) =
                (then.use_by, then.days_left, then.state);
            if then.is_on_hand() {
                (before.left, before.being) = (then.left, then.being);
            }
            then = then.after(&events[nth], made, later).unwrap_or(then);
        }
        let now = refold(born, made, later, &events).unwrap_or(now);
        lived.push((i32::MAX, now));
        Ok(lived)
    }

    /// What is known now of a lot's birth.
    pub fn born(&mut self, lot: i32, again: BornAs) {
        let printed = self.all.printed.contains(&lot);
        let state = self.lots.get_mut(&lot).expect("a lot that is judged");
        state.now = state.was.judged(again, printed);
        state.changed |= state.now != state.was;
    }
}

/// What was said of a lot's condition since its birth: readings, and people who let it go.
fn life(facts: &Facts<'_, '_>, all: &Everything, lot: i32) -> Result<Vec<(Happened, Since)>> {
    let mut life: Vec<(Happened, Since)> = Vec::new();
    let of_kind = |deed: i32, kind: DeedKind| {
        let at = all.happened.get(&deed)?;
        let row = all.deeds.get(at)?;
        (row.kind == kind.as_str()).then_some(*at)
    };
    let readings = all.readings.get(&lot).map_or(&[][..], Vec::as_slice);
    let code = all.lots[&lot].code()?;
    let tells = [Quantity::Ph.as_str(), Quantity::WaterActivity.as_str()];
    for reading in readings {
        let tells = tells.contains(&reading.quantity.as_str());
        let Some(at) = of_kind(reading.deed_id, DeedKind::Measure).filter(|_| tells) else {
            continue;
        };
        if life.iter().any(|(known, _)| *known == at) {
            continue;
        }
        let last = |quantity: Quantity| {
            let known = readings.iter().rev().filter(|of| {
                let by = all.happened.get(&of.deed_id);
                by.is_some_and(|by| *by <= at) && of.quantity == quantity.as_str()
            });
            let mut known = known.map(|of| Decimal::new(of.millionths, 6).normalize());
            known.next()
        };
        let (ph, water_activity) = (last(Quantity::Ph), last(Quantity::WaterActivity));
        let lot = code.clone();
        let shown = stable::of_lot(facts, lot, ph, water_activity)?;
        life.push((at, Since::Read(shown)));
    }
    for row in all.conditions.get(&lot).into_iter().flatten() {
        let let_go = of_kind(row.deed_id, DeedKind::Dispose);
        life.extend(let_go.map(|at| (at, Since::LetGo)));
    }
    life.sort_by_key(|(at, _)| *at);
    Ok(life)
}
