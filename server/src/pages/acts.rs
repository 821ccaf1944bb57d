//! The next acts on a lot, the likeliest first.

use super::break_down;
use super::spoken::Words;
use crate::who::Who;
use chrono::NaiveDate;
use domain::lot::{Lot, Pack, brief};
use domain::right::Right;
use domain::words::{Being, ProductKind, State};

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
}

/// What may be done with a lot, the likeliest first.
pub fn buttons(words: &Words, who: &Who, lot: &Lot, today: NaiveDate) -> Vec<Button> {
    let kinds = likeliest(lot, today)
        .into_iter()
        .filter(|kind| may(who, *kind));
    let cut_up = Button {
        says: words.t("page-act-break-down"),
        path: format!("/lots/{}/break-down", lot.code),
        first: false,
    };
    let is_cut_up = break_down::is_for(lot) && may(who, ActKind::Pack);
    let mut buttons: Vec<Button> = is_cut_up.then_some(cut_up).into_iter().collect();
    buttons.extend(kinds.map(|kind| Button {
        says: words.t(kind.name()),
        path: format!("/lots/{}/{}", lot.code, kind.as_str()),
        first: false,
    }));
    if brief::left(&lot.packs).next().is_some() && who.may(Right::Print) {
        buttons.push(Button {
            says: words.t("page-act-labels"),
            path: format!("/printing?lot={}", lot.code),
            first: false,
        });
    }
    let sells = lot.product.sale.offered && who.may(Right::Sell) && !who.may(Right::Work);
    if sells && brief::left(&lot.packs).next().is_some() {
        buttons.insert(
            0,
            Button {
                says: words.t("page-act-sell"),
                path: format!("/counter?code={}", lot.code),
                first: false,
            },
        );
    }
    let (before, after) = of_kind(who, lot);
    let link = |(name, path): &(&str, String)| Button {
        says: words.t(name),
        path: path.clone(),
        first: false,
    };
    buttons.splice(0..0, before.iter().map(link));
    let at = buttons.len().min(before.len() + 2);
    buttons.splice(at..at, after.iter().map(link));
    buttons.extend(seldom(who, lot).iter().map(link));
    if let Some(first) = buttons.first_mut() {
        first.first = true;
    }
    buttons
}

/// An act that has a page of its own: the key of its words, and where it is.
type Way = (&'static str, String);

/// What is done with a lot of its kind: before all else, and after the likeliest two. A piece is weighed and
/// released; raw meat is cooked, cured, ground; what comes out of the heat is cooled.
fn of_kind(who: &Who, lot: &Lot) -> (Vec<Way>, Vec<Way>) {
    use ProductKind::{Cooked, Cut, Fat, Offal, Rendered, Stock, Trim};
    let (mut before, mut after) = (Vec::new(), Vec::new());
    if lot.voided || brief::left(&lot.packs).next().is_none() || !who.may(Right::Work) {
        return (before, after);
    }
    let here = |act: &str| format!("/lots/{}/{act}", lot.code);
    let make = |kind: &str| format!("/make/{kind}?lot={}", lot.code);
    if lot.waits_for_release() && lot.pack_count == 1 {
        before.push(("page-act-weigh", here("weigh")));
        if who.may(Right::Release) {
            before.push(("page-act-release", here("release")));
        }
        after.push(("page-act-tend", here("tend")));
    }
    let raw = lot.product.raw && !lot.species.is_empty() && !lot.waits_for_release();
    let kind = lot.product.kind;
    if raw && matches!(kind, Cut | Offal | Trim | Fat) {
        after.push(("page-act-cook", make("cook")));
        after.push(("page-act-grind", make("grind")));
    }
    if raw && kind == Cut {
        after.push(("page-act-cure", make("cure")));
    }
    if kind == ProductKind::Cured && raw {
        // In its cure it is turned, then smoked or cooked; it is not packed as it is.
        if lot.product.cured.cure.is_some() {
            before.push(("page-act-tend", here("tend")));
        }
        before.push(("page-act-smoke", make("smoke")));
        before.push(("page-act-cook", make("cook")));
    }
    if matches!(kind, Cooked | Stock | Rendered) {
        // What is frozen has no way down any more.
        if brief::left(&lot.packs).any(|pack| pack.now.state != State::Frozen) {
            after.push(("page-act-cool", here("cool")));
        }
        after.push(("page-act-mix", make("mix")));
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
    can.map(|kind| (kind.name(), format!("/lots/{}/{}", lot.code, kind.as_str())))
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
