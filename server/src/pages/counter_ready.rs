//! What may be sold now, for whoever has no scanner: what must go first stands first, each under its own finger.

use super::says::PageSays;
use super::spoken::Words;
use crate::caller::Caller;
use crate::error::Result;
use crate::pulse;
use crate::read::LoadedFamily;
use chrono::NaiveDate;
use domain::counter::of_pack;
use domain::lot::{Lot, LotId, Pack};
use domain::moment::day_of;
use domain::stop;
use domain::words::Verdict;
use std::collections::BTreeSet;
use store::family::Extent;
use store::{Conn, list_lots};

/// The most lots that are shown: two screens of a phone. Who wants another one types its code.
const MOST: usize = 12;

/// The most lots that are looked at: so many that end first, and so many of the newest.
const LOOKED_AT: i64 = 40;

/// A lot of which the counter may sell something now.
pub struct Ready {
    /// What it is.
    pub name: String,
    /// Its code, and how much there is.
    pub more: String,
    /// Where its pack is told of, or asked for.
    pub path: String,
}

/// The lots of which something may be sold, the shortest date first and what has none last; what the guest has already is none of it.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn lots(app: &Caller<'_>, conn: &mut Conn, words: &Words, with: &str) -> Result<Vec<Ready>> {
    if pulse::clock_doubt().is_some() {
        return Ok(Vec::new());
    }
    let standing = app.standing(conn)?;
    let products = standing.lists.products.values();
    let offered = products.filter(|product| product.sale.offered);
    let codes: Vec<&str> = offered.map(|product| product.code.as_str()).collect();
    let today = day_of(app.now(), standing.kitchen.zone);
    let mut keys = list_lots::soonest_of(conn, &codes, today, LOOKED_AT)?;
    keys.extend(list_lots::on_hand_of(conn, &codes, LOOKED_AT)?);
    let mut seen = BTreeSet::new();
    keys.retain(|key| seen.insert(*key));
    let reading = LoadedFamily::load(app.app(), conn, &keys, Extent::ALONE)?;
    let lots = keys
        .iter()
        .filter_map(|key| reading.family.get(LotId(*key)));
    let mut ready: Vec<(Option<NaiveDate>, Ready)> = lots
        .filter_map(|of| ready(app, words, &of.lot, with, today))
        .collect();
    ready.sort_by_key(|(day, _)| (day.is_none(), *day));
    Ok(ready.into_iter().map(|(_, of)| of).take(MOST).collect())
}

fn ready(
    app: &Caller<'_>,
    words: &Words,
    lot: &Lot,
    with: &str,
    today: NaiveDate,
) -> Option<(Option<NaiveDate>, Ready)> {
    if lot.voided || stop::made_ahead(lot, app.now()).is_some() {
        return None;
    }
    let key = |pack: &Pack| format!("{}/{}", lot.code, pack.number);
    let taken = |pack: &&Pack| with.split(',').any(|one| one == key(pack));
    let packs: Vec<&Pack> = lot
        .on_hand()
        .filter(|pack| !taken(pack) && may_be_sold(lot, pack, app, today))
        .collect();
    let (code, much) = match packs[..] {
        [] => return None,
        [one] => (key(one), words.grams(one.now.left)),
        _ => (lot.code.to_string(), words.packs(packs.len())),
    };
    let shown = match packs[..] {
        [one] => lot.shown(one.number),
        _ => lot.code.shown(),
    };
    let day = packs.iter().filter_map(|pack| pack.now.use_by).min();
    let more = words.say(PageSays::CounterReady { lot: shown, much });
    let more = match day.map(|day| (day, words.standing(day, today))) {
        Some((_, Some(stands))) => format!("{more}. {stands}"),
        Some((day, None)) => format!("{more}, {}", words.say(PageSays::CounterUntil { day })),
        None => more,
    };
    let ready = Ready {
        name: lot.product.name(words.lang()).to_owned(),
        more,
        path: match with {
            "" => format!("/counter?code={code}"),
            with => format!("/counter?code={code}&with={with}"),
        },
    };
    Some((day, ready))
}

fn may_be_sold(lot: &Lot, pack: &Pack, app: &Caller<'_>, today: NaiveDate) -> bool {
    let answer = of_pack(lot, pack, app.now(), today);
    matches!(answer.verdict, Verdict::Sell | Verdict::SellToday)
}
