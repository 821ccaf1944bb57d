//! What on hand ends today or has ended already.

use super::names::Names;
use crate::caller::Caller;
use crate::error::Result;
use chrono::{Days, NaiveDate};
use domain::grams::Grams;
use std::collections::{BTreeMap, BTreeSet};
use store::list_lots::{self, LotSearch};
use store::{Conn, packs};

/// The most lots looked at.
pub const MOST: i64 = 200;

/// Packs of one lot with the same last day.
pub struct DuePacks {
    /// The lot's code.
    pub code: String,
    /// Its code as people read it.
    pub shown: String,
    /// Its product's name.
    pub name: String,
    /// The last day of these packs.
    pub last_day: NaiveDate,
    /// How many they are.
    pub packs: usize,
    /// What is left in them.
    pub left: Grams,
    /// Where they are.
    pub places: Vec<String>,
}

/// What ends on `today` or before, the longest past first; and whether there may be more.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn by(app: &Caller<'_>, conn: &mut Conn, today: NaiveDate) -> Result<(Vec<DuePacks>, bool)> {
    let names = Names::load(app, conn)?;
    let sought = LotSearch {
        use_by_before: today.checked_add_days(Days::new(1)),
        on_hand: true,
        ..LotSearch::default()
    };
    let mut found = list_lots::list(conn, &sought, MOST + 1)?;
    let more = found.len() as i64 > MOST;
    found.truncate(MOST as usize);
    let keys: Vec<i32> = found.iter().map(|(lot, _)| lot.id).collect();
    let mut left: BTreeMap<(NaiveDate, i32), (usize, i64, BTreeSet<String>)> = BTreeMap::new();
    for pack in packs::of_lots(conn, &keys)? {
        let Some(day) = pack.use_by.filter(|day| *day <= today && pack.left_mg > 0) else {
            continue;
        };
        let sum = left.entry((day, pack.lot_id)).or_default();
        sum.0 += 1;
        sum.1 += pack.left_mg;
        sum.2.insert(names.place_of_key(pack.place_id));
    }
    let mut due = Vec::with_capacity(left.len());
    for ((last_day, key), (packs, mg, places)) in left {
        let Some((lot, code)) = found.iter().find(|(lot, _)| lot.id == key) else {
            continue;
        };
        due.push(DuePacks {
            code: lot.code.clone(),
            shown: lot.code()?.shown(),
            name: names.product(code),
            last_day,
            packs,
            left: Grams::from_milligrams(mg),
            places: places.into_iter().collect(),
        });
    }
    Ok((due, more))
}
