//! What stands in the way of a lot or a pack: each with its cause, asked in one place by every deed
//! that draws on it, by the label for a customer and by the scan.

mod ask;
mod says;

pub use ask::{Act, Passed, ask, held, held_at_all, is_called_ready, of_label};
pub use says::StopSays;

use crate::claims::Untrue;
use crate::code::LotCode;
use crate::condition::Condition;
use crate::dates::{Because, earliest};
use crate::limits::CLOCK_SLACK_MINUTES;
use crate::lot::{Lot, Pack, PackId};
use crate::product::Product;
use crate::rows::RowId;
use crate::says::Says;
use crate::words::{ProductKind, State, StopKind, Topic};
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};

/// The key of a stop in the record.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StopId(pub i32);

/// The key of an incident in the record: that of the deed that began it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct IncidentId(pub i32);

/// A stop that a deed placed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Placed {
    /// Its key.
    pub id: StopId,
    /// The stop that it was inherited from; its own key where it is the first. What ends the first
    /// ends all that came from it.
    pub root: StopId,
    /// The pack that it is on; `None` for the whole lot.
    pub pack: Option<PackId>,
    /// What it says.
    pub cause: Cause,
    /// The incident that it is for, where it is a hold of one.
    pub incident: Option<IncidentId>,
    /// When it ended, if it has.
    pub ended: Option<DateTime<Utc>>,
}

impl Placed {
    /// Does it stand at a moment?
    pub fn stands(&self, at: DateTime<Utc>) -> bool {
        self.cause.since <= at && self.ended.is_none_or(|ended| at < ended)
    }

    /// Does it go on in whatever is made of what it stands on at a moment, without standing in the way of that:
    /// what waits for somebody's word, and a limit on what went in that begins later.
    pub fn goes_on(&self, at: DateTime<Utc>) -> bool {
        match self.cause.topic {
            Topic::Confirmation | Topic::Proof | Topic::Contents => self.stands(at),
            Topic::Cure => at < self.cause.since && self.ended.is_none(),
            _ => false,
        }
    }

    /// Is it about that pack, or about the whole lot?
    pub fn is_on(&self, pack: Option<PackId>) -> bool {
        self.pack.is_none() || pack.is_none() || self.pack == pack
    }
}

/// Why a stop is placed, and from when on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cause {
    /// Which sort of stop it is.
    pub kind: StopKind,
    /// What it is about.
    pub topic: Topic,
    /// What broke, with the numbers, and the rows that it broke.
    pub because: Because,
    /// From when on.
    pub since: DateTime<Utc>,
}

impl Cause {
    /// A limit that was broken, in a deed that was taken as it happened.
    pub fn failed(topic: Topic, because: Because, since: DateTime<Utc>) -> Cause {
        Cause {
            kind: StopKind::Failed,
            topic,
            because,
            since,
        }
    }
}

impl Cause {
    /// Which sort people are told: of what failed for want of a history, or of a confirmed limit, that.
    fn shown_kind(&self) -> StopKind {
        match (self.kind, self.topic) {
            (StopKind::Failed, Topic::History) => StopKind::UnknownHistory,
            (StopKind::Failed, Topic::Confirmation) => StopKind::NotConfirmed,
            (StopKind::Failed, Topic::Proof | Topic::Contents) => StopKind::NotProven,
            (StopKind::Failed, Topic::CameBack) => StopKind::CameBack,
            (kind, _) => kind,
        }
    }

    /// As it is told of what it stands on.
    pub fn told(&self) -> Stop {
        Stop {
            kind: self.shown_kind(),
            says: self.shown_says(),
            rows: self.because.rows().to_vec(),
            since: Some(self.since),
            topic: self.topic,
            root: None,
            incident: None,
        }
    }

    fn shown_says(&self) -> Says {
        let says = self.because.says.clone();
        match self.shown_kind() {
            StopKind::UnknownHistory => StopSays::UnknownHistory { says }.into(),
            _ => says,
        }
    }
}

/// A stop that a plan places.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NewStop {
    /// Why.
    pub cause: Cause,
    /// The first of its line, where it is inherited.
    pub root: Option<StopId>,
    /// The incident that it is for.
    pub incident: Option<IncidentId>,
}

impl From<Cause> for NewStop {
    fn from(cause: Cause) -> NewStop {
        NewStop {
            cause,
            root: None,
            incident: None,
        }
    }
}

/// A stop that stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stop {
    /// Which sort it is.
    pub kind: StopKind,
    /// What it says: why, and what to do.
    pub says: Says,
    /// The rows behind it.
    pub rows: Vec<RowId>,
    /// From when on, where a deed placed it.
    pub since: Option<DateTime<Utc>>,
    /// What it is about.
    pub topic: Topic,
    /// The first of its line, where a deed placed it.
    pub root: Option<StopId>,
    /// The incident that it is for.
    pub incident: Option<IncidentId>,
}

impl Stop {
    fn computed(kind: StopKind, topic: Topic, says: impl Into<Says>) -> Stop {
        Stop {
            kind,
            says: says.into(),
            rows: Vec::new(),
            since: None,
            topic,
            root: None,
            incident: None,
        }
    }
}

/// The stops that stand on a pack at a moment of one of the kitchen's days, the gravest first; without
/// a pack, those on the lot and on any of its packs that deeds placed.
pub fn on(lot: &Lot, pack: Option<&Pack>, at: DateTime<Utc>, day: NaiveDate) -> Vec<Stop> {
    let mut stops = Vec::new();
    if lot.voided {
        let lot = lot.code.clone();
        stops.push(Stop::computed(
            StopKind::Voided,
            Topic::Stop,
            StopSays::Voided { lot },
        ));
    }
    let of = pack.map(|pack| pack.id);
    let placed = lot
        .stops
        .iter()
        .filter(|placed| placed.stands(at) && placed.is_on(of));
    let mut placed: Vec<&Placed> = placed.collect();
    placed.sort_by_key(|placed| (placed.cause.shown_kind(), placed.id));
    stops.extend(placed.into_iter().map(|placed| Stop {
        root: Some(placed.root),
        incident: placed.incident,
        ..placed.cause.told()
    }));
    if let Some(says) = unproven(lot, pack) {
        let topic = match says {
            StopSays::NotProven { .. } | StopSays::PartlyCooked { .. } => Topic::Condition,
            StopSays::RoomNotProven { .. } => Topic::Cold,
            _ => Topic::Date,
        };
        stops.push(Stop::computed(StopKind::NotProven, topic, says));
    }
    if lot.waits_for_release() {
        let (lot, product) = (lot.code.clone(), lot.product.named());
        let says = StopSays::NotReleased { lot, product };
        stops.push(Stop::computed(StopKind::NotReleased, Topic::Release, says));
    }
    let date = pack.filter(|pack| pack.now.is_on_hand());
    let last = |pack: &Pack| earliest(pack.now.use_by, lot.later.cap);
    let date = date.and_then(|pack| Some((pack, last(pack)?)));
    if let Some((pack, date)) = date.filter(|(_, date)| *date < day) {
        let pack = lot.shown(pack.number);
        let says = StopSays::PastDay { pack, date };
        stops.push(Stop::computed(StopKind::PastDay, Topic::Date, says));
    }
    if lot.product.kind == ProductKind::Waste {
        let (lot, product) = (lot.code.clone(), lot.product.named());
        let says = StopSays::Waste { lot, product };
        stops.push(Stop::computed(StopKind::Waste, Topic::Stop, says));
    }
    if let Some(pack) = pack.filter(|pack| pack.now.is_on_hand()) {
        stops.extend(wrong_label(lot, pack, at));
    }
    stops
}

/// Does what stood before stand no longer, and is lifting that a right of its own? A wrong label is put right by a
/// new one, and a piece goes back into its cure.
pub fn lifts(before: &[Stop], after: &[Stop]) -> bool {
    let counts = |stop: &&Stop| {
        !matches!(
            stop.kind,
            StopKind::WrongLabel | StopKind::NotReleased | StopKind::Voided | StopKind::Waste
        )
    };
    let stands =
        |of: &Stop| { after.iter() }.any(|stop| (stop.kind, stop.topic) == (of.kind, of.topic));
    before.iter().filter(counts).any(|stop| !stands(stop))
}

/// A lot that was made later than now was recorded by a clock that was ahead, and so no date of it is one.
/// `now` is the moment at which that is asked, whenever the deed was done.
pub fn made_ahead(lot: &Lot, now: DateTime<Utc>) -> Option<Stop> {
    let ahead = lot.made_at > now + TimeDelta::minutes(CLOCK_SLACK_MINUTES);
    let lot = lot.code.clone();
    ahead.then(|| {
        Stop::computed(
            StopKind::NotProven,
            Topic::Date,
            StopSays::MadeAhead { lot },
        )
    })
}

/// The last label of a pack says what is no longer true. It comes after everything that is wrong with
/// the food itself: who prints it anew has not made that good.
fn wrong_label(lot: &Lot, pack: &Pack, at: DateTime<Utc>) -> Option<Stop> {
    let mut wrong = lot.wrong_labels.iter();
    let wrong = wrong.find(|wrong| wrong.pack == pack.id && wrong.since <= at)?;
    let says = StopSays::WrongLabel {
        pack: lot.shown(pack.number),
        untrue: wrong.untrue.iter().map(Untrue::says).collect(),
    };
    Some(Stop {
        since: Some(wrong.since),
        ..Stop::computed(StopKind::WrongLabel, Topic::Stop, says)
    })
}

/// What a lot claims and nothing shows: that it is ready to eat, or how long it keeps. Lots made before
/// this was asked stay as they were judged.
fn unproven(lot: &Lot, pack: Option<&Pack>) -> Option<StopSays> {
    if lot.condition.is_none() || lot.waits_for_release() {
        return None;
    }
    let (code, product) = (lot.code.clone(), lot.product.named());
    let undated = |pack: &&Pack| {
        let now = &pack.now;
        now.is_on_hand() && now.state != State::Frozen && now.use_by.is_none()
    };
    let undated = pack.filter(undated).is_some();
    if let Some(says) = half_cooked(&lot.code, &lot.product, lot.condition()) {
        return Some(says);
    }
    if lot.product.raw {
        // As the scan answers it: for sale, with a rule of its days, and none of them known.
        let is_sold = lot.product.sale.offered && lot.product.keeping.usual.is_some();
        return (undated && is_sold).then_some(StopSays::NoDate { lot: code, product });
    }
    if lot.condition().lacks_proof(&lot.product) && lot.product.kind != ProductKind::Waste {
        return Some(StopSays::NotProven { lot: code, product });
    }
    if lot.lacks_proof_of_room(pack) {
        return Some(StopSays::RoomNotProven { lot: code, product });
    }
    // No rule of its days can date a whole piece from the cure room: they would begin before its release.
    let is_piece = lot.product.is_hung();
    if undated && lot.is_controlled() {
        return Some(match is_piece {
            true => StopSays::NoDatePiece { lot: code, product },
            false => StopSays::NoDate { lot: code, product },
        });
    }
    // It keeps, and yet it is sold with a last day: the scan and the sale answer alike.
    let is_sold = lot.product.sale.offered && lot.product.keeping.usual.is_some();
    (undated && is_sold).then_some(match is_piece {
        true => StopSays::UndatedPiece { lot: code, product },
        false => StopSays::Undated { lot: code, product },
    })
}

/// Is it listed as raw, and meat in it was warmed without a proof that it was enough?
pub fn half_cooked(lot: &LotCode, product: &Product, condition: Condition) -> Option<StopSays> {
    let half = product.raw && condition.lacks_proof(product) && product.kind != ProductKind::Waste;
    let (lot, product) = (lot.clone(), product.named());
    half.then_some(StopSays::PartlyCooked { lot, product })
}

#[cfg(test)]
mod tests;
