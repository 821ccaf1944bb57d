//! Facts of the lots of an incident, made of what was loaded: each lot, what was sold, what became of it.

use super::facts::{
    DisposalFacts, InEach, InputFacts, LotFacts, PackFacts, PlaceFacts, ShippedFacts, SoldFacts,
    SumsFacts, WentFacts,
};
use super::gather::in_each;
use super::told::Told;
use crate::error::Result;
use crate::lists::standing::Standing;
use crate::read::scope::Found;
use crate::wire::Weight;
use crate::wire::answers::instant;
use chrono::{NaiveDateTime, Timelike};
use domain::grams::Grams;
use domain::incident::{LotReckoned, PackEvent, PackTold, Reckoned};
use domain::lot::{DeedId, LotId, PackId, PlaceId};
use domain::scope::{ByKey, How, InScope, When};
use domain::words::{Account, DeedKind, StepKind};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::Arc;
use store::Conn;
use store::incident_life::{self as life, LotLife, ToldOf};

/// So many reasons are told of a lot.
const REASONS: usize = 3;
/// Of more sales than that nobody reads who left a way to be told.
const MOST_SALES: usize = 20_000;

/// What was loaded, while facts are made of it.
pub(super) struct Gathered {
    pub standing: Arc<Standing>,
    pub began: DeedId,
    pub reckoned: Reckoned,
    pub life: BTreeMap<i32, LotLife>,
    /// Which of the reckoned lots a lot is.
    pub nth: HashMap<LotId, usize>,
    /// The code of each lot for the eye, and its product.
    pub codes: HashMap<LotId, (String, String)>,
}

/// The deeds that told more than their events, by key.
pub(super) type TellingDeeds = HashMap<i32, (ToldOf, Told)>;
/// What went into each deed.
pub(super) type WentInto = HashMap<i32, Vec<InputFacts>>;

impl Gathered {
    fn place(&self, place: PlaceId) -> String {
        self.standing.lists.place_code(place).to_owned()
    }

    fn names(&self, product: &str) -> InEach {
        match self.standing.lists.products.get(product) {
            Some(product) => (*product.names).clone(),
            None => InEach::from([("en".to_owned(), product.to_owned())]),
        }
    }

    fn moment(&self, at: NaiveDateTime) -> String {
        instant(at, self.standing.kitchen.zone)
    }

    /// The affected packs of a lot, each with the moment from which it is affected.
    fn affected<'a>(&'a self, lot: &'a InScope) -> impl Iterator<Item = (&'a PackTold, When)> + 'a {
        let packs = self.life.get(&lot.id.0).map(|of| of.packs.as_slice());
        let since: HashMap<PackId, When> = lot.reached.iter().copied().collect();
        let of = packs.unwrap_or_default().iter();
        of.filter_map(move |pack| Some((pack, *since.get(&pack.id)?)))
    }

    /// What the deeds told that shipped, sold, threw away, sent back, let go or reworked any of it, and those by
    /// which it was received.
    pub fn told(&self, conn: &mut Conn, lots: &[&InScope]) -> Result<TellingDeeds> {
        let mut keys: BTreeSet<i32> = BTreeSet::new();
        let mut sales: BTreeSet<i32> = BTreeSet::new();
        for lot in lots {
            for (pack, since) in self.affected(lot) {
                for event in pack.events.iter().filter(|event| event.at >= since.at) {
                    match event.account {
                        Account::Shipped => drop(keys.insert(event.deed.0)),
                        Account::Sold => drop(sales.insert(event.deed.0)),
                        _ if self.disposes(event) => drop(keys.insert(event.deed.0)),
                        _ => {}
                    }
                }
            }
        }
        let received = self.life.values();
        let received = received.filter(|of| of.made_kind == DeedKind::Receive);
        keys.extend(received.map(|of| of.made_by));
        if sales.len() <= MOST_SALES {
            keys.extend(sales);
        }
        let keys: Vec<i32> = keys.into_iter().collect();
        let mut told = HashMap::new();
        for deed in life::deeds_told(conn, &keys)? {
            let read = Told::read(&deed.request)?;
            told.insert(deed.id, (deed, read));
        }
        Ok(told)
    }

    /// Does an event dispose of what is held, or rework it by permission?
    fn disposes(&self, event: &PackEvent) -> bool {
        use DeedKind::{Discard, Dispose, HoldRelease, Return};
        let disposes = matches!(event.kind, Discard | Dispose | HoldRelease | Return);
        let reworks =
            event.account == Account::Used && StepKind::parse(event.kind.as_str()).is_some();
        event.deed > self.began && (disposes || reworks)
    }

    pub fn went_in(&self, conn: &mut Conn, until: NaiveDateTime) -> Result<WentInto> {
        let made = self.life.values().map(|of| of.made_by);
        let made: Vec<i32> = made.collect::<BTreeSet<_>>().into_iter().collect();
        let mut all: WentInto = HashMap::new();
        for of in life::went_in(conn, &made, until)? {
            let code = domain::code::LotCode::read(&of.code);
            all.entry(of.deed_id).or_default().push(InputFacts {
                lot: code.map_or(of.code, |code| code.shown()),
                names: self.names(&of.product),
                grams: Weight(Grams::from_milligrams(of.mg)),
            });
        }
        Ok(all)
    }

    pub fn lot(
        &self,
        lot: &InScope,
        found: Option<(&Found, &ByKey<'_>)>,
        told: &TellingDeeds,
        went_in: &WentInto,
    ) -> Option<LotFacts> {
        let life = self.life.get(&lot.id.0)?;
        let (mut went, mut gone_at) = (WentFacts::default(), None);
        let mut used_in = BTreeSet::new();
        let mut places: BTreeMap<PlaceId, Grams> = BTreeMap::new();
        let mut shipped = Vec::new();
        for (pack, since) in self.affected(lot) {
            let left = went.pack(pack);
            let mut place = pack.born;
            for event in &pack.events {
                place = event.to.unwrap_or(place);
                if event.took() > Grams::ZERO {
                    gone_at = gone_at.max(Some(event.at.naive_utc()));
                }
                if event.account == Account::Used {
                    used_in.insert(event.deed.0);
                }
                if event.account == Account::Shipped && event.at >= since.at {
                    let to = told
                        .get(&event.deed.0)
                        .and_then(|(_, told)| told.to.clone());
                    shipped.push(ShippedFacts {
                        to: to.unwrap_or_default(),
                        at: self.moment(event.at.naive_utc()),
                        grams: Weight(event.grams),
                    });
                }
            }
            if left > Grams::ZERO {
                *places.entry(place).or_default() += left;
            }
        }
        let reckoned = self.nth.get(&lot.id).map(|nth| &self.reckoned.lots[*nth]);
        let mut places: Vec<(PlaceId, Grams)> = places.into_iter().collect();
        places.sort_by_key(|(place, left)| (std::cmp::Reverse(*left), *place));
        let placed = places.into_iter();
        let is_gone = went.on_hand.0 == Grams::ZERO;
        Some(LotFacts {
            code: lot.code.to_string(),
            shown: lot.code.shown(),
            product: lot.product.clone(),
            names: self.names(&lot.product),
            note: lot.note.clone(),
            made_at: self.moment(life.made_at),
            made_kind: life.made_kind.as_str().to_owned(),
            made_by: life.made_by,
            made_place: life.made_place.map(|place| self.place(PlaceId(place))),
            is_start: lot.because.iter().any(|of| of.how == How::Named),
            because: found.map_or_else(Vec::new, |(found, lots)| because(lot, found, lots)),
            went,
            sums: reckoned.map_or_else(SumsFacts::default, |of| of.sums.into()),
            packs: reckoned.map_or_else(Vec::new, |of| self.packs(of)),
            places: placed
                .map(|(place, left)| (self.place(place), Weight(left)))
                .collect(),
            gone_at: gone_at.filter(|_| is_gone).map(|at| self.moment(at)),
            used_in: used_in.into_iter().collect(),
            from: None,
            of: went_in.get(&life.made_by).cloned().unwrap_or_default(),
            shipped,
        })
    }

    fn packs(&self, of: &LotReckoned) -> Vec<PackFacts> {
        let packs = of.packs.iter();
        let pack = |of: &domain::incident::PackReckoned| PackFacts {
            pack: of.number,
            place: self.place(of.place),
            found_at: of.found_at.map(|place| self.place(place)),
            state: of.state.as_str().to_owned(),
            opened: of.opened,
            sums: of.sums.into(),
        };
        packs.map(pack).collect()
    }

    /// Where there is something to count: places stand in the order in which the kitchen listed them, which is that in
    /// which one walks; but where guests can reach it comes first.
    pub fn places(&self) -> Vec<PlaceFacts> {
        let mut all: BTreeMap<PlaceId, PlaceFacts> = BTreeMap::new();
        let packs = self.reckoned.lots.iter().flat_map(|lot| &lot.packs);
        for pack in packs.filter(|pack| pack.sums.book > Grams::ZERO) {
            let place = all.entry(pack.place).or_insert_with(|| PlaceFacts {
                place: self.place(pack.place),
                name: self.standing.lists.place_name(pack.place).to_owned(),
                packs: 0,
                book_grams: Weight::default(),
                uncounted: 0,
            });
            place.packs += 1;
            place.book_grams.0 += pack.sums.book;
            place.uncounted += usize::from(pack.counted.is_none());
        }
        let mut all: Vec<PlaceFacts> = all.into_values().collect();
        let listed = &self.standing.lists.places;
        all.sort_by_key(|of| !listed.get(&of.place).is_some_and(|place| place.is_counter));
        all
    }

    pub fn sold(&self, lots: &[&InScope], told: &TellingDeeds) -> Vec<SoldFacts> {
        let zone = self.standing.kitchen.zone;
        let mut all: BTreeMap<(chrono::NaiveDate, u32, LotId), SoldFacts> = BTreeMap::new();
        for lot in lots {
            let of = self.life.get(&lot.id.0);
            let several = of.is_some_and(|of| of.packs.len() > 1);
            for (pack, since) in self.affected(lot) {
                let sold = pack
                    .events
                    .iter()
                    .filter(|event| event.account == Account::Sold && event.at >= since.at);
                for event in sold {
                    let local = event.at.with_timezone(&zone).naive_local();
                    let key = (local.date(), local.hour(), lot.id);
                    let hour = all.entry(key).or_insert_with(|| SoldFacts {
                        day: local.date().to_string(),
                        hour: local.hour(),
                        lot: lot.code.shown(),
                        names: self.names(&lot.product),
                        packs: 0,
                        numbers: Vec::new(),
                        grams: Weight::default(),
                        to: Vec::new(),
                    });
                    if several && !hour.numbers.contains(&pack.number) {
                        hour.numbers.push(pack.number);
                    }
                    hour.packs += usize::from(event.whole_pack);
                    hour.grams.0 += event.grams;
                    let to = told
                        .get(&event.deed.0)
                        .and_then(|(_, told)| told.to.clone());
                    if let Some(to) = to.filter(|to| !hour.to.contains(to)) {
                        hour.to.push(to);
                    }
                }
            }
        }
        all.into_values().collect()
    }

    pub fn disposals(&self, told: &TellingDeeds, began: NaiveDateTime) -> Vec<DisposalFacts> {
        let mut all: BTreeMap<(NaiveDateTime, i32, String), DisposalFacts> = BTreeMap::new();
        for lot in &self.reckoned.lots {
            let Some(life) = self.life.get(&lot.id.0) else {
                continue;
            };
            for pack in &life.packs {
                for event in pack.events.iter().filter(|event| self.disposes(event)) {
                    let Some((deed, said)) = told.get(&event.deed.0) else {
                        continue;
                    };
                    let (code, product) = self.codes.get(&lot.id).cloned().unwrap_or_default();
                    let key = (deed.at.max(began), deed.id, code.clone());
                    let one = all.entry(key).or_insert_with(|| DisposalFacts {
                        at: self.moment(deed.at),
                        by: deed.person.clone(),
                        lot: code,
                        names: self.names(&product),
                        packs: Vec::new(),
                        what: what(event, said),
                        grams: Weight::default(),
                        place: deed.place_id.map(|place| self.place(PlaceId(place))),
                        witness: said.witness.clone(),
                        document: said.document.clone(),
                        why: said.why.clone().or(deed.note.clone()).unwrap_or_default(),
                    });
                    one.packs.push(pack.number);
                    if event.took() > Grams::ZERO {
                        one.grams.0 += event.grams;
                    }
                }
            }
        }
        all.into_values().collect()
    }
}

/// What a deed did with what was held.
fn what(event: &PackEvent, said: &Told) -> String {
    match event.kind {
        DeedKind::Discard => "discarded".to_owned(),
        DeedKind::Return => "returned".to_owned(),
        DeedKind::HoldRelease => "released".to_owned(),
        DeedKind::Dispose => said.what.clone().unwrap_or_default(),
        _ => "reworked".to_owned(),
    }
}

fn because(lot: &InScope, found: &Found, lots: &ByKey<'_>) -> Vec<InEach> {
    let of = lot.because.iter().take(REASONS);
    let say = |because| {
        in_each(|speech| {
            let says = found.because(because, lots, speech.language.tag());
            says.map_or_else(String::new, |says| speech.say(&says))
        })
    };
    of.map(say).collect()
}

impl WentFacts {
    /// Adds another.
    pub fn add(&mut self, other: &WentFacts) {
        self.made.0 += other.made.0;
        self.taken_back.0 += other.taken_back.0;
        self.used.0 += other.used.0;
        self.sold.0 += other.sold.0;
        self.sold_packs += other.sold_packs;
        self.served.0 += other.served.0;
        self.discarded.0 += other.discarded.0;
        self.shipped.0 += other.shipped.0;
        self.returned.0 += other.returned.0;
        self.lost.0 += other.lost.0;
        self.unexplained.0 += other.unexplained.0;
        self.on_hand.0 += other.on_hand.0;
    }

    /// Adds a pack; what is left of it.
    fn pack(&mut self, pack: &PackTold) -> Grams {
        let mut left = pack.made;
        self.made.0 += pack.made;
        for event in &pack.events {
            left -= event.took();
            let account = match event.account {
                Account::Used => &mut self.used,
                Account::Sold => &mut self.sold,
                Account::Served => &mut self.served,
                Account::Discarded => &mut self.discarded,
                Account::Shipped => &mut self.shipped,
                Account::Returned => &mut self.returned,
                Account::Lost => &mut self.lost,
                Account::Unexplained => &mut self.unexplained,
                Account::TakenBack => &mut self.taken_back,
                Account::Moved | Account::Noted => continue,
            };
            account.0 += event.grams;
            let sold = event.account == Account::Sold && event.whole_pack;
            self.sold_packs += usize::from(sold);
        }
        self.on_hand.0 += left;
        left
    }
}
