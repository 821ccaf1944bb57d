//! The picture of a family, from the record.

use super::LoadedFamily;
use super::names::Names;
use crate::caller::Caller;
use crate::error::Result;
use crate::pictures::{self, Drawn, Family};
use chrono::{Days, NaiveDateTime, NaiveTime};
use domain::family::Relative;
use domain::grams::Grams;
use domain::lot::{LotId, Pack};
use domain::moment::{day_of, on_clock};
use domain::stop;
use domain::words::{Account, StopKind};
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::family::Extent;
use store::trace;

/// How many lots are read at once: more than that no statement takes.
const MOST: usize = 5_000;

/// The picture of everything that was made of some lots, with these.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_family(app: &Caller<'_>, conn: &mut Conn, starts: &[i32]) -> Result<String> {
    let keys: Vec<i32> = match starts.is_empty() {
        true => Vec::new(),
        false => trace::forward(conn, starts)?
            .lots
            .iter()
            .map(|lot| lot.id)
            .collect(),
    };
    of_lots(app, conn, starts, &keys)
}

/// The picture of just some lots, those that it begins with among them: what a recall is about.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lots(app: &Caller<'_>, conn: &mut Conn, starts: &[i32], lots: &[i32]) -> Result<String> {
    let names = Names::load(app, conn)?;
    let keys: BTreeSet<i32> = starts.iter().chain(lots).copied().collect();
    let keys: Vec<i32> = keys.into_iter().collect();
    let today = day_of(app.now(), names.zone());
    let until = today.checked_add_days(Days::new(1)).unwrap_or(today);
    let mut family = Family {
        lots: Vec::with_capacity(keys.len()),
        until: until.and_time(NaiveTime::MIN),
    };
    for some in keys.chunks(MOST) {
        let reading = LoadedFamily::load(app.app(), conn, some, Extent::ALONE)?;
        let all = reading.family.lots.iter();
        let all = all.filter(|(_, of)| !of.lot.voided);
        family
            .lots
            .extend(all.map(|(key, of)| drawn(of, &reading, &names, is_of(starts, *key))));
    }
    Ok(pictures::family(&family, &names.speech))
}

fn is_of(starts: &[i32], lot: LotId) -> bool {
    starts.contains(&lot.0)
}

fn drawn(of: &Relative, reading: &LoadedFamily<'_>, names: &Names, is_start: bool) -> Drawn {
    let (lot, now, zone) = (&of.lot, reading.now, names.zone());
    let name = names
        .product_of(&lot.product.names)
        .unwrap_or_else(|| lot.product.code.clone());
    let today = day_of(now, zone);
    let is_held = |pack: &&Pack| {
        let stops = stop::on(lot, Some(pack), now, today);
        stops.iter().any(|stop| keeps_back(stop.kind))
    };
    let sum = |packs: &mut dyn Iterator<Item = &Pack>| {
        packs.fold(Grams::ZERO, |sum, pack| sum + pack.now.left)
    };
    let mut places: BTreeMap<String, Grams> = BTreeMap::new();
    for pack in lot.on_hand() {
        *places.entry(names.place_of(pack.now.place)).or_default() += pack.now.left;
    }
    let mut places: Vec<(String, Grams)> = places
        .into_iter()
        .filter(|(_, left)| *left > Grams::ZERO)
        .collect();
    places.sort_by_key(|(place, left)| (std::cmp::Reverse(*left), place.clone()));
    let done = || {
        of.history
            .iter()
            .filter(|did| !did.voided && takes(did.account))
    };
    let last: Option<NaiveDateTime> = done().map(|did| on_clock(did.at, zone)).max();
    let went: BTreeSet<Account> = done().map(|did| did.account).collect();
    let used = done().filter(|did| did.account == Account::Used);
    let used: BTreeSet<i32> = used.map(|did| did.deed.0).collect();
    Drawn {
        code: lot.code.shown(),
        name: match &of.note {
            Some(note) => format!("{name} ({note})"),
            None => name,
        },
        made_at: on_clock(lot.made_at, zone),
        step: of.made_by.kind,
        made_by: lot.made_by.0,
        is_start,
        made: of.made(),
        on_hand: sum(&mut lot.on_hand()),
        held: sum(&mut lot.on_hand().filter(is_held)),
        gone_at: match of.went.on_hand > Grams::ZERO {
            true => None,
            false => last,
        },
        places,
        went: went.into_iter().collect(),
        used_in: used.into_iter().collect(),
    }
}

/// Does an account take something out of a pack?
fn takes(account: Account) -> bool {
    !matches!(
        account,
        Account::TakenBack | Account::Moved | Account::Noted
    )
}

/// Is it a stop that somebody has to end, and no day that is over or a release that is to come?
fn keeps_back(kind: StopKind) -> bool {
    match kind {
        StopKind::Voided
        | StopKind::Held
        | StopKind::Failed
        | StopKind::UnknownHistory
        | StopKind::NotProven
        | StopKind::NotConfirmed
        | StopKind::CameBack => true,
        StopKind::NotReleased | StopKind::PastDay | StopKind::Waste | StopKind::WrongLabel => false,
    }
}
