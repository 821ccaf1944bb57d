//! The next acts on a lot, the likeliest first.

use super::break_down;
use super::spoken::Words;
use crate::who::Who;
use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use domain::counter::of_pack;
use domain::family::Relative;
use domain::lot::{Lot, Pack, brief};
use domain::right::Right;
use domain::stop::{self, Act, Stop};
use domain::words::{Being, DeedKind, ProductKind, State, StopKind, Verdict};

/// An act that has a page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ActKind {
    /// Packs are made of it.
    Pack,
    /// It goes elsewhere.
    Move,
    /// It is frozen.
    Freeze,
    /// It is thawed.
    Thaw,
    /// It is thrown away.
    Discard,
    /// It is served.
    Serve,
    /// It is counted.
    Count,
    /// It is supplied to somebody who sells or cooks it.
    Ship,
    /// It goes back to the supplier.
    Return,
    /// A customer brings it back.
    TakeBack,
}

impl ActKind {
    /// As it stands in an address.
    pub fn as_str(self) -> &'static str {
        match self {
            ActKind::Pack => "pack",
            ActKind::Move => "move",
            ActKind::Freeze => "freeze",
            ActKind::Thaw => "thaw",
            ActKind::Discard => "discard",
            ActKind::Serve => "serve",
            ActKind::Count => "count",
            ActKind::Ship => "ship",
            ActKind::Return => "return",
            ActKind::TakeBack => "take-back",
        }
    }

    /// What it would do, where a stop may forbid it.
    fn asks(self) -> Option<Act> {
        match self {
            ActKind::Pack => Some(USE),
            ActKind::Serve => Some(Act::Leave { labelled: false }),
            ActKind::Ship => Some(Act::Leave { labelled: true }),
            _ => None,
        }
    }

    /// The act of an address.
    pub fn parse(text: &str) -> Option<ActKind> {
        use ActKind::*;
        let all = [
            Pack, Move, Freeze, Thaw, Discard, Serve, Count, Ship, Return, TakeBack,
        ];
        all.into_iter().find(|kind| kind.as_str() == text)
    }

    /// The key of its button.
    pub fn name(self) -> &'static str {
        match self {
            ActKind::Pack => "page-act-pack",
            ActKind::Move => "page-act-move",
            ActKind::Freeze => "page-act-freeze",
            ActKind::Thaw => "page-act-thaw",
            ActKind::Discard => "page-act-discard",
            ActKind::Serve => "page-act-serve",
            ActKind::Count => "page-act-count",
            ActKind::Ship => "page-act-ship",
            ActKind::Return => "page-act-return",
            ActKind::TakeBack => "page-act-take-back",
        }
    }

    /// The call of the API that it is.
    pub fn call(self) -> &'static str {
        match self {
            ActKind::Pack => "/api/steps",
            ActKind::Move | ActKind::Freeze | ActKind::Thaw => "/api/moves",
            ActKind::Discard | ActKind::Serve | ActKind::Ship | ActKind::Return => {
                "/api/departures"
            }
            ActKind::TakeBack => "/api/take-backs",
            ActKind::Count => "/api/counts",
        }
    }

    /// Can it be done with a pack as it is?
    pub fn is_for(self, pack: &Pack) -> bool {
        let frozen = pack.now.state == State::Frozen;
        let being = pack.now.being;
        if self == ActKind::TakeBack {
            return matches!(being, Being::Sold | Being::Shipped);
        }
        if pack.now.left.is_none_left() {
            return false;
        }
        match self {
            ActKind::Freeze | ActKind::Pack => !frozen,
            ActKind::Thaw => frozen,
            _ => true,
        }
    }
}

/// May somebody do that?
pub fn may(who: &Who, kind: ActKind) -> bool {
    who.may(kind.right())
}

/// A button of a lot's page.
pub struct Button {
    /// Its words.
    pub says: String,
    /// Where it leads.
    pub path: String,
    /// Is it the likeliest?
    pub first: bool,
    /// What it would do with the lot, where a stop may forbid it.
    asks: Option<Act>,
}

impl Button {
    /// One that no stop can forbid.
    pub fn plain(words: &Words, key: &str, path: String, first: bool) -> Button {
        Button {
            first,
            ..Button::of(words, key, path, None)
        }
    }

    fn of(words: &Words, key: &str, path: String, asks: Option<Act>) -> Button {
        Button {
            says: words.t(key),
            path,
            first: false,
            asks,
        }
    }
}

/// What may be done with a lot, the likeliest first. What a stop forbids is never that: it comes last.
pub fn buttons(
    words: &Words,
    who: &Who,
    of: &Relative,
    now: DateTime<Utc>,
    today: NaiveDate,
) -> Vec<Button> {
    let lot = &of.lot;
    let stops = stop::on(lot, None, now, today);
    let kinds = likeliest(lot, today)
        .into_iter()
        .filter(|kind| may(who, *kind));
    let here = |act: &str| format!("/lots/{}/{act}", lot.code);
    let mut buttons: Vec<Button> = kinds
        .map(|kind| Button::of(words, kind.name(), here(kind.as_str()), kind.asks()))
        .collect();
    if break_down::is_for(lot) && may(who, ActKind::Pack) {
        // A carcass hangs to be broken down; of a cut that is one way, after the likeliest.
        let at = match lot.product.kind {
            ProductKind::Carcass => 0,
            _ => buttons.len().min(1),
        };
        let key = break_down::name_of(lot);
        buttons.insert(at, Button::of(words, key, here("break-down"), Some(USE)));
    }
    let left = brief::left(&lot.packs).next().is_some();
    if left && who.may(Right::Print) {
        let path = format!("/printing?lot={}", lot.code);
        buttons.push(Button::of(words, "page-act-labels", path, None));
    }
    // What is held pack by pack, frozen or past its day is not sold: it is as the counter's word says.
    let says = |pack: &Pack| of_pack(lot, pack, now, today).verdict;
    let free = |pack: &Pack| matches!(says(pack), Verdict::Sell | Verdict::SellToday);
    let sells = lot.product.sale.offered && who.may(Right::Sell) && !lot.voided;
    let sells = sells && lot.on_hand().any(free);
    // Who only sells does that first.
    let only_sells = sells && !who.may(Right::Work);
    if sells {
        let path = format!("/counter?code={}", lot.code);
        let leave = Some(Act::Leave { labelled: true });
        let at = if only_sells { 0 } else { buttons.len().min(2) };
        buttons.insert(at, Button::of(words, "page-act-sell", path, leave));
    }
    let (before, after) = of_kind(who, of, now);
    let link = |(name, path, asks): &Way| Button::of(words, name, path.clone(), *asks);
    buttons.splice(0..0, before.iter().map(link));
    let at = buttons.len().min(before.len() + 2);
    buttons.splice(at..at, after.iter().map(link));
    buttons.extend(seldom(who, lot).iter().map(link));
    let is_sure = !before.is_empty() || is_next(lot, today);
    lawful_first(&mut buttons, &stops, lot, is_sure || only_sells);
    buttons
}

/// Is one act truly next? Of packs that are neither on their last day nor past it, nobody knows: none is black.
fn is_next(lot: &Lot, today: NaiveDate) -> bool {
    let ends = brief::left(&lot.packs).filter_map(|pack| pack.now.use_by);
    lot.pack_count == 1 || ends.min().is_some_and(|day| day <= today)
}

/// Are packs made of it: is it a piece or a pot, and no pack itself?
pub fn may_be_packed(of: &Relative, today: NaiveDate) -> bool {
    likeliest(&of.lot, today).contains(&ActKind::Pack) && !came_packed(of)
}

/// Was it sliced, portioned or packed, if only into one bag?
fn came_packed(of: &Relative) -> bool {
    matches!(of.made_by.kind, DeedKind::Pack | DeedKind::Portion)
}

/// Is there a stop that forbids it?
fn is_forbidden(stops: &[Stop], act: Act) -> bool {
    let mut stops = stops.iter();
    stops.any(|stop| act.is_blocked_by(stop.kind, stop.topic))
}

/// What is forbidden goes to the end; what a stop asks for comes first: a limit that was broken sends it back or
/// throws it away, what is held is counted.
fn lawful_first(buttons: &mut [Button], stops: &[Stop], lot: &Lot, is_sure: bool) {
    let forbidden = |button: &Button| button.asks.is_some_and(|act| is_forbidden(stops, act));
    let of = |kind: ActKind| format!("/lots/{}/{}", lot.code, kind.as_str());
    let asked = stops.iter().find_map(|stop| match stop.kind {
        // A tub of which nobody knows anything came from nobody whom it could go back to.
        StopKind::Failed if lot.supplied.is_some() => Some(of(ActKind::Return)),
        StopKind::Failed | StopKind::UnknownHistory => Some(of(ActKind::Discard)),
        StopKind::Held => Some(of(ActKind::Count)),
        _ => None,
    });
    buttons.sort_by_key(|button| match &asked {
        Some(path) if *path == button.path => 0,
        _ => 1 + u8::from(forbidden(button)),
    });
    let is_asked = |button: &Button| asked.as_ref() == Some(&button.path);
    let next = buttons.first_mut().filter(|first| !forbidden(first));
    if let Some(first) = next.filter(|first| is_sure || is_asked(first)) {
        first.first = true;
    }
}

/// An act that has a page of its own: the key of its words, where it is, and what it would do with the lot.
type Way = (&'static str, String, Option<Act>);

/// Something is made of it.
pub(super) const USE: Act = Act::Use {
    cure_goes_on: false,
    puts_right: None,
    to_waste: false,
};

/// It goes on in its cure.
const GOES_ON: Act = Act::Use {
    cure_goes_on: true,
    puts_right: None,
    to_waste: false,
};

/// How long what came out of the heat is cooled first of all.
const COOLED_WITHIN: TimeDelta = TimeDelta::hours(12);

/// What is done with a lot of its kind: before all else, and after the likeliest two. A piece is weighed and
/// released; raw meat is cooked, cured, ground; what comes out of the heat is cooled.
fn of_kind(who: &Who, of: &Relative, now: DateTime<Utc>) -> (Vec<Way>, Vec<Way>) {
    let lot = &of.lot;
    use ProductKind::{Cooked, Cured, Cut, Fat, Mixed, Offal, Rendered, Stock, Trim};
    let (mut before, mut after) = (Vec::new(), Vec::new());
    if lot.voided || brief::left(&lot.packs).next().is_none() || !who.may(Right::Work) {
        return (before, after);
    }
    let here = |act: &str| format!("/lots/{}/{act}", lot.code);
    let make = |kind: &str| format!("/make/{kind}?lot={}", lot.code);
    if lot.waits_for_release() && lot.pack_count == 1 {
        before.push(("page-act-weigh", here("weigh"), None));
        if who.may(Right::Release) {
            before.push(("page-act-release", here("release"), None));
        }
        after.push(("page-act-tend", here("tend"), None));
    }
    let raw = lot.product.raw && !lot.species.is_empty() && !lot.waits_for_release();
    let kind = lot.product.kind;
    if raw && matches!(kind, Cut | Offal | Trim | Fat | Mixed) {
        after.push(("page-act-cook", make("cook"), Some(GOES_ON)));
    }
    if raw && matches!(kind, Cut | Offal | Trim | Fat) {
        after.push(("page-act-grind", make("grind"), Some(USE)));
    }
    if raw && kind == Cut {
        after.push(("page-act-cure", make("cure"), Some(GOES_ON)));
    }
    if kind == Cured && raw {
        // In its cure it is turned, then smoked or cooked; it is not packed as it is. What was sliced or packed is
        // smoked no more, also where all of it lies in one bag; and what is in packs for the counter is done.
        if lot.product.cured.cure.is_some() {
            before.push(("page-act-tend", here("tend"), None));
        }
        let is_packed = lot.pack_count > 1 || came_packed(of);
        let is_sold = lot.product.sale.offered;
        let heat = if is_packed || is_sold {
            &mut after
        } else {
            &mut before
        };
        if !is_packed {
            heat.push(("page-act-smoke", make("smoke"), Some(GOES_ON)));
        }
        if !(is_packed && is_sold) {
            heat.push(("page-act-cook", make("cook"), Some(GOES_ON)));
        }
    }
    // What is sold as ready and is not proven to be so is cooked through.
    let is_proven = lot.product.raw || lot.species.is_empty() || lot.condition().is_ready();
    if !is_proven && !lot.waits_for_release() && matches!(kind, Cooked | Mixed | Cured) {
        after.push(("page-act-cook", make("cook"), Some(GOES_ON)));
    }
    if matches!(kind, Cooked | Stock | Rendered) {
        // What is frozen has no way down any more.
        if brief::left(&lot.packs).any(|pack| pack.now.state != State::Frozen) {
            let hot = lot.pack_count == 1 && now - lot.made_at < COOLED_WITHIN;
            let cool = if hot { &mut before } else { &mut after };
            cool.push(("page-act-cool", here("cool"), None));
        }
        after.push(("page-act-mix", make("mix"), Some(USE)));
    }
    (before, after)
}

/// What is done seldom, after all else: supplied, sent back to who sold it, brought back by a customer.
fn seldom(who: &Who, lot: &Lot) -> Vec<Way> {
    let wanted = |kind: &ActKind| match kind {
        ActKind::Return => lot.supplied.is_some(),
        ActKind::Ship => !lot.waits_for_release(),
        _ => true,
    };
    let kinds = [ActKind::Ship, ActKind::Return, ActKind::TakeBack].into_iter();
    let kinds = kinds.filter(wanted).filter(|kind| may(who, *kind));
    let can = kinds.filter(|kind| !lot.voided && lot.packs.iter().any(|pack| kind.is_for(pack)));
    let path = |kind: ActKind| format!("/lots/{}/{}", lot.code, kind.as_str());
    can.map(|kind| (kind.name(), path(kind), kind.asks()))
        .collect()
}

/// The acts that can be done at all, in the order in which a cook is likely to want them.
fn likeliest(lot: &Lot, today: NaiveDate) -> Vec<ActKind> {
    use ActKind::*;
    let left: Vec<_> = brief::left(&lot.packs).collect();
    if left.is_empty() || lot.voided {
        return Vec::new();
    }
    let ends = left.iter().filter_map(|pack| pack.now.use_by).min();
    let order = match ends {
        _ if left.iter().all(|pack| pack.now.state == State::Frozen) => {
            [Thaw, Move, Count, Discard, Pack, Serve, Freeze]
        }
        Some(day) if day < today => [Discard, Count, Move, Serve, Pack, Freeze, Thaw],
        Some(day) if day == today => [Freeze, Serve, Pack, Discard, Move, Count, Thaw],
        _ if lot.pack_count == 1 => [Pack, Move, Serve, Freeze, Count, Discard, Thaw],
        _ => [Move, Serve, Freeze, Count, Discard, Thaw, Pack],
    };
    let can = |kind: &ActKind| left.iter().any(|pack| kind.is_for(pack));
    // Packs that were portioned already are not portioned again from here.
    let packs_again = |kind: &ActKind| *kind != Pack || lot.pack_count == 1;
    // Of a piece in its cure nothing is packed or served.
    let in_cure = |kind: &ActKind| !lot.waits_for_release() || !matches!(kind, Pack | Serve);
    let order = order.into_iter().filter(can).filter(packs_again);
    order.filter(in_cure).collect()
}
