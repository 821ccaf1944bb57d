//! A guest's question, over everything on hand.

use super::LoadedFamily;
use super::says::{QuerySays, spelt};
use crate::app::App;
use crate::error::{Error, Result};
use crate::pulse;
use domain::ask::{Answered, Asker, Topic};
use domain::code::LotCode;
use domain::counter;
use domain::grams::Grams;
use domain::lot::{Lot, LotId, Pack, PlaceId};
use domain::moment::day_of;
use domain::stop;
use domain::words::Verdict;
use serde::Deserialize;
use std::collections::{BTreeSet, HashMap};
use store::family::{Extent, WalkStart};
use store::list_lots::{self, LotSearch};
use store::{Conn, packs};
use utoipa::IntoParams;

/// A guest's question. What is said of each field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct AskQuery {
    /// What the guest asks about, with commas between: animals (`pig`), allergens (`milk`; `fish`, `tree-nut`, `crustacean` and `mollusc` are the whole group), `gluten`, `alcohol`, `nitrite`, `raw`
    pub about: Option<String>,
    /// A place: only what lies there
    pub place: Option<String>,
    /// `true`: only what the counter sells
    pub for_sale: Option<bool>,
    /// The last code of the part before
    pub after: Option<String>,
    /// How many lots are looked into, at most 1000; 500 if left out
    pub limit: Option<String>,
}

/// The most lots that are looked into at once.
pub const MOST: i64 = 1_000;
/// How many, where nobody says.
const USUAL: i64 = 500;

/// The answers.
pub struct Asked<'a> {
    /// What was looked into.
    pub reading: LoadedFamily<'a>,
    /// What was asked about.
    pub topics: BTreeSet<Topic>,
    /// The lots, newest first.
    pub lines: Vec<AskedLine>,
    /// The lot after which the next part begins, if there is one.
    pub next: Option<LotCode>,
}

/// The answer for what is on hand of one lot.
pub struct AskedLine {
    /// The lot.
    pub lot: LotId,
    /// The answer.
    pub answer: Answered,
    /// The packs there.
    pub packs: Vec<u32>,
    /// What is in them.
    pub left: Grams,
    /// How many of them may be sold now.
    pub sellable: usize,
    /// What is in those.
    pub sellable_left: Grams,
}

impl Asked<'_> {
    /// A lot of it.
    pub fn lot(&self, line: &AskedLine) -> &Lot {
        &self.reading.family.lots[&line.lot].lot
    }
}

/// Everything on hand, with the answer for each lot: a handful of statements, however many lots there are.
///
/// # Errors
/// 422 for what is nothing that can be asked about, or no place; the database is away, or the record is damaged.
pub fn ask<'a>(app: &'a App, conn: &mut Conn, query: &AskQuery) -> Result<Asked<'a>> {
    let topics = topics(query.about.as_deref())?;
    let limit = limit(query.limit.as_deref())?;
    let standing = app.standing(conn)?;
    let place = given(query.place.as_deref());
    let place_key = place.map(|code| {
        let key = standing.lists.place_key(code);
        key.ok_or_else(|| {
            let place = code.to_owned();
            Error::cannot_be("place", QuerySays::NoPlace { place })
        })
    });
    let place_key = place_key.transpose()?;
    let mut sought = LotSearch {
        place: place.map(str::to_owned),
        on_hand: true,
        ..LotSearch::default()
    };
    if let Some(after) = given(query.after.as_deref()) {
        let named = crate::named::named(after, "after", &app.ours())?;
        sought.after = Some(super::row(conn, &named.code, "after")?.id);
    }
    let mut rows = list_lots::list(conn, &sought, limit + 1)?;
    let more = rows.len() as i64 > limit;
    rows.truncate(limit as usize);
    let last = rows.last().map(|(row, _)| row.code()).transpose()?;
    let mut keys = Vec::with_capacity(rows.len());
    for (row, _) in &rows {
        let product = app.product(conn, row.version_id)?;
        if query.for_sale != Some(true) || product.sale.offered {
            keys.push(row.id);
        }
    }
    // Of packs, those that something is left in are enough; they are read for all lots at once.
    let extent = Extent {
        packs: Some(&[]),
        ..Extent::ANCESTORS
    };
    let start = WalkStart::Keys(&keys);
    let zone = standing.kitchen.zone;
    let mut reading = LoadedFamily::load_with(app, conn, standing, start, extent)?;
    let mut left: HashMap<i32, Vec<Pack>> = HashMap::new();
    for row in packs::left_of_lots(conn, &keys)? {
        left.entry(row.lot_id).or_default().push(row.pack()?);
    }
    let mut lines = Vec::with_capacity(keys.len());
    for key in keys {
        let id = LotId(key);
        let Some(of) = reading.family.lots.get_mut(&id) else {
            continue;
        };
        of.lot.packs = left.remove(&key).unwrap_or_default();
        lines.extend(line(&of.lot, place_key, reading.now, zone));
    }
    let trade = &app.law.trade;
    let mut asker = Asker::new(&reading.family, &trade.ask, &reading.law.statements.species);
    for line in &mut lines {
        line.answer = asker.answer(line.lot, &topics);
    }
    Ok(Asked {
        reading,
        topics,
        lines,
        next: last.filter(|_| more),
    })
}

/// What is on hand of a lot, at a place or anywhere; nothing where none is.
fn line(
    lot: &Lot,
    place: Option<PlaceId>,
    now: chrono::DateTime<chrono::Utc>,
    zone: chrono_tz::Tz,
) -> Option<AskedLine> {
    let here = |pack: &&Pack| place.is_none_or(|place| pack.now.place == place);
    let there: Vec<&Pack> = lot.on_hand().filter(here).collect();
    let doubted = pulse::clock_doubt().is_some() || stop::made_ahead(lot, now).is_some();
    let may = |pack: &&Pack| {
        let verdict = counter::of_pack(lot, pack, now, day_of(now, zone)).verdict;
        !doubted && matches!(verdict, Verdict::Sell | Verdict::SellToday)
    };
    let free: Vec<&Pack> = there.iter().copied().filter(may).collect();
    (!there.is_empty()).then(|| AskedLine {
        lot: lot.id,
        answer: Answered::nobody_asked(),
        packs: there.iter().map(|pack| pack.number).collect(),
        left: there.iter().map(|pack| pack.now.left).sum(),
        sellable: free.len(),
        sellable_left: free.iter().map(|pack| pack.now.left).sum(),
    })
}

/// What is asked about.
fn topics(about: Option<&str>) -> Result<BTreeSet<Topic>> {
    let words = about.unwrap_or_default().split([',', ' ']);
    let words: Vec<&str> = words
        .map(str::trim)
        .filter(|word| !word.is_empty())
        .collect();
    if words.is_empty() {
        return Err(Error::cannot_be(
            "about",
            QuerySays::AskWhat { known: known() },
        ));
    }
    let read = |word: &str| {
        Topic::parse(word).ok_or_else(|| {
            let topic = word.to_owned();
            Error::cannot_be(
                "about",
                QuerySays::NotTopic {
                    topic,
                    known: known(),
                },
            )
        })
    };
    words.into_iter().map(read).collect()
}

fn known() -> domain::says::Arg {
    spelt(Topic::all().map(Topic::as_str))
}

fn given(text: Option<&str>) -> Option<&str> {
    text.map(str::trim).filter(|text| !text.is_empty())
}

fn limit(text: Option<&str>) -> Result<i64> {
    let Some(text) = given(text) else {
        return Ok(USUAL);
    };
    let number = text.parse::<i64>().ok();
    let number = number.filter(|number| (1..=MOST).contains(number));
    number.ok_or_else(|| {
        let limit = text.to_owned();
        Error::cannot_be("limit", QuerySays::NotLimit { limit, most: MOST })
    })
}
