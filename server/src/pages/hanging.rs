//! What hangs and can be broken down, and what can be cut up or packed, for whoever comes to the bench.

use super::bench_says::BenchSays;
use super::spoken::Words;
use super::{acts, break_down};
use crate::caller::Caller;
use crate::error::Result;
use crate::read::LoadedFamily;
use crate::read::brief::briefs;
use crate::read::names::Names;
use chrono::{DateTime, NaiveDate, Utc};
use domain::family::Relative;
use domain::lot::{Lot, LotId, Pack, brief};
use domain::moment::day_of;
use domain::product::Product;
use domain::stop::{self, Stop};
use domain::words::{ProductKind, StopKind, Topic};
use store::family::Extent;
use store::{Conn, list_lots};

/// The most of them that are shown.
const MOST: i64 = 12;

/// The most pieces and pots that are shown, and that are looked at, the newest first.
const MOST_PIECES: usize = 24;
const LOOKED_AT: i64 = 120;

/// What somebody at the bench has in mind before they have a piece in hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AtBench {
    /// A side, or a piece of it, is cut.
    Cut,
    /// Packs are made.
    Pack,
}

impl AtBench {
    /// By its word in an address.
    pub fn parse(text: &str) -> Option<AtBench> {
        match text {
            "cut" => Some(AtBench::Cut),
            "pack" => Some(AtBench::Pack),
            _ => None,
        }
    }

    /// What is asked first, and what is said where there is nothing.
    pub fn asks(self) -> (&'static str, &'static str) {
        match self {
            AtBench::Cut => ("page-make-cut", "page-make-cut-none"),
            AtBench::Pack => ("page-make-pack", "page-make-pack-none"),
        }
    }

    /// May a product be one of those?
    fn is_of(self, product: &Product) -> bool {
        use ProductKind::{Carcass, Cut, Ingredient, Waste};
        match self {
            AtBench::Cut => matches!(product.kind, Carcass | Cut) && product.raw,
            AtBench::Pack => !matches!(product.kind, Carcass | Ingredient | Waste),
        }
    }
}

/// What can be cut or packed, and what only could be if nothing stood in its way: where, what, how much or why.
#[derive(Default)]
pub struct Pieces {
    /// What can be.
    pub free: Vec<(String, String, String)>,
    /// What cannot be now, with the reason; it leads to the lot.
    pub apart: Vec<(String, String, String)>,
}

/// What can be cut or packed now, the newest first and whole sides before pieces: as [`lots`].
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn pieces(app: &Caller<'_>, conn: &mut Conn, names: &Names, wish: AtBench) -> Result<Pieces> {
    let words = Words::of(names);
    let standing = app.standing(conn)?;
    let products = standing.lists.products.values();
    let some = products.filter(|product| wish.is_of(product));
    let codes: Vec<&str> = some.map(|product| product.code.as_str()).collect();
    let keys = list_lots::on_hand_of(conn, &codes, LOOKED_AT)?;
    let reading = LoadedFamily::load(app.app(), conn, &keys, Extent::ALONE)?;
    let (now, today) = (app.now(), day_of(app.now(), reading.kitchen().zone));
    let can = |of: &&Relative| match wish {
        AtBench::Cut => break_down::is_for(&of.lot),
        AtBench::Pack => acts::may_be_packed(of, today),
    };
    let lots = keys
        .iter()
        .filter_map(|key| reading.family.get(LotId(*key)));
    let mut lots: Vec<&Relative> = lots.filter(can).collect();
    lots.sort_by_key(|of| of.lot.product.kind != ProductKind::Carcass);
    let mut pieces = Pieces::default();
    let act = match wish {
        AtBench::Cut => "break-down",
        AtBench::Pack => "pack",
    };
    for of in lots {
        let lot = &of.lot;
        let name = names.product(&lot.product.code);
        match in_its_way(lot, wish == AtBench::Pack, now, today) {
            None => {
                let places = brief::places(&lot.packs).into_iter();
                let places: Vec<String> = places
                    .map(|place| standing.lists.place_code(place).to_owned())
                    .collect();
                let more = [
                    Some(lot.code.shown()),
                    of.note.clone(),
                    Some(words.grams(of.went.on_hand)),
                    names.placed(&places),
                ];
                let more: Vec<String> = more.into_iter().flatten().collect();
                let path = format!("/lots/{}/{act}", lot.code);
                pieces.free.push((path, name, more.join(", ")));
            }
            // What is in its cure is the cure room's affair.
            Some(stop) if stop.kind == StopKind::NotReleased => {}
            Some(stop) => {
                let why = format!("{}. {}", lot.code.shown(), words.say(stop.says));
                pieces
                    .apart
                    .push((format!("/lots/{}", lot.code), name, why));
            }
        }
    }
    pieces.free.truncate(MOST_PIECES);
    pieces.apart.truncate(MOST_PIECES);
    Ok(pieces)
}

/// What stands in the way of all its packs; nothing where one of them is free. What is packed goes out as what it is:
/// what nothing shows to be cooked is none of it, though it may be cut and cooked.
fn in_its_way(lot: &Lot, is_packed: bool, now: DateTime<Utc>, today: NaiveDate) -> Option<Stop> {
    let stands = |stop: &Stop| {
        let unproven = stop.kind == StopKind::NotProven && stop.topic == Topic::Condition;
        acts::USE.is_blocked_by(stop.kind, stop.topic) || is_packed && unproven
    };
    let first = |pack: &Pack| {
        let mut stops = stop::on(lot, Some(pack), now, today).into_iter();
        stops.find(stands)
    };
    let each: Option<Vec<Stop>> = lot.on_hand().map(first).collect();
    each.and_then(|stops| stops.into_iter().next())
}

/// Each: where it is broken down, what it is, how much of it there is and where.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn lots(
    app: &Caller<'_>,
    conn: &mut Conn,
    names: &Names,
) -> Result<Vec<(String, String, String)>> {
    let words = Words::of(names);
    let standing = app.standing(conn)?;
    let products = standing.lists.products.values();
    let carcasses = products.filter(|of| of.kind == ProductKind::Carcass);
    let codes: Vec<&str> = carcasses.map(|of| of.code.as_str()).collect();
    let rows = list_lots::latest_of(conn, &codes, MOST)?;
    let told = briefs(app.app(), conn, &rows)?.into_iter().map(|lot| {
        let place = names.placed(&lot.places);
        let more = [
            Some(lot.code.shown()),
            Some(words.grams(lot.on_hand)),
            place,
        ];
        let more: Vec<String> = more.into_iter().flatten().collect();
        (
            format!("/lots/{}/break-down", lot.code),
            names.product(&lot.product),
            more.join(", "),
        )
    });
    Ok(told.collect())
}

/// What is in the room: pieces in salt or on their hooks, and what lies in a cure and does not hang afterwards.
pub fn counted(words: &Words, pieces: usize, lots: usize) -> String {
    let hangs = (pieces > 0).then(|| words.say(BenchSays::RoomQuiet { pieces }));
    let lies = (lots > 0).then(|| words.say(BenchSays::RoomLies { lots }));
    let told: Vec<String> = hangs.into_iter().chain(lies).collect();
    match told.is_empty() {
        true => words.t("page-cure-room-empty"),
        false => told.join(" "),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use words::{Language, Speech};

    #[test]
    fn a_room_with_something_in_a_cure_is_not_called_empty() {
        let words = Words(Speech::in_language(Language::English));
        let empty = words.t("page-cure-room-empty");
        assert_eq!(counted(&words, 0, 0), empty);
        assert_eq!(counted(&words, 0, 1), "1 lot lies in its cure.");
        let both = "2 pieces lie in salt or hang. 3 lots lie in their cure.";
        assert_eq!(counted(&words, 2, 3), both);
    }
}
