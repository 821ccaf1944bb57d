//! Finding lots: by product, place, farm, kill date, state, date, or a word.

use crate::conn::Conn;
use crate::error::Result;
use crate::keyed::among;
use crate::lots::LotRow;
use crate::tables::{animals, entries, lots, packs, sources, versions, voids};
use crate::trace::with_reach;
use chrono::NaiveDate;
use diesel::dsl::{exists, sql};
use diesel::prelude::*;
use diesel::sql_types::{Bool, Nullable, Text};

#[diesel::declare_sql_function]
extern "SQL" {
    /// The engines do not agree whether LIKE looks at case; in small letters both do the same.
    fn lower(text: Nullable<Text>) -> Nullable<Text>;
}

/// What to look for. Everything given must hold.
#[derive(Debug, Default, Clone)]
pub struct LotSearch {
    /// The product's code: one of these.
    pub products: Option<Vec<String>>,
    /// A place where some of it is.
    pub place: Option<String>,
    /// The farm of an animal in it.
    pub farm: Option<String>,
    /// The kill date of an animal in it.
    pub killed_on: Option<NaiveDate>,
    /// How some of it is kept.
    pub state: Option<String>,
    /// What has become of some of it.
    pub being: Option<String>,
    /// Something on hand must be used before this day.
    pub use_by_before: Option<NaiveDate>,
    /// A word in its code, note, or its product's name or code, or the supplier's lot whole; lower case.
    pub word: Option<String>,
    /// Only lots that something is left of.
    pub on_hand: bool,
    /// The last lot of the page before.
    pub after: Option<i32>,
}

/// What the code of a lot is like of which somebody typed a part. Two letters are the beginning of too many,
/// and stand in the middle of nearly all.
fn half_a_code(word: &str) -> String {
    let plain: String = word
        .to_uppercase()
        .chars()
        .filter(|letter| !matches!(letter, '-' | ' ' | '%' | '_' | '\\'))
        .map(|letter| match letter {
            'O' => '0',
            'I' | 'L' => '1',
            other => other,
        })
        .collect();
    match plain.chars().count() {
        0..3 => format!("{plain}%"),
        _ => format!("%{plain}%"),
    }
}

/// Lots that fit, newest first, each with its product's code.
pub fn list(conn: &mut Conn, sought: &LotSearch, limit: i64) -> Result<Vec<(LotRow, String)>> {
    let mut query = lots::table
        .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
        .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
        .order(lots::id.desc())
        .limit(limit)
        .select((LotRow::as_select(), entries::code))
        .into_boxed();
    if let Some(products) = &sought.products {
        query = match products.as_slice() {
            [one] => query.filter(entries::code.eq(one)),
            several => query.filter(entries::code.eq_any(several)),
        };
    }
    if let Some(word) = &sought.word {
        let like = format!(
            "%{}%",
            word.replace('\\', "\\\\")
                .replace('%', "\\%")
                .replace('_', "\\_")
        );
        let code = half_a_code(word);
        let of_supplier: Vec<i32> = sources::table
            .left_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
            .filter(
                lower(sources::supplier_lot)
                    .eq(word)
                    .and(voids::id.is_null()),
            )
            .select(sources::lot_id)
            .load(conn)?;
        query = query.filter(
            versions::search
                .like(like.clone())
                .escape('\\')
                .or(lower(lots::note).like(like).escape('\\').assume_not_null())
                .or(lots::code.like(code))
                .or(lots::id.eq_any(of_supplier)),
        );
    }
    if sought.on_hand {
        query = query.filter(lots::on_hand_mg.gt(0));
    }
    if let Some(after) = sought.after {
        query = query.filter(lots::id.lt(after));
    }
    if let Some(place) = &sought.place {
        let here = entries::table
            .filter(entries::list.eq("places").and(entries::code.eq(place)))
            .select(entries::id);
        let place: Option<i32> = here.first(conn).optional()?;
        let some = packs::table.filter(
            packs::lot_id
                .eq(lots::id)
                .and(packs::place_id.eq(place.unwrap_or(0))),
        );
        query = query.filter(exists(some.filter(packs::left_mg.gt(0))));
    }
    if let Some(state) = &sought.state {
        let some = packs::table.filter(packs::lot_id.eq(lots::id).and(packs::state.eq(state)));
        query = query.filter(exists(some.filter(packs::left_mg.gt(0))));
    }
    if let Some(being) = &sought.being {
        query = query.filter(exists(
            packs::table.filter(packs::lot_id.eq(lots::id).and(packs::being.eq(being))),
        ));
    }
    if let Some(day) = sought.use_by_before {
        let some = packs::table.filter(packs::lot_id.eq(lots::id).and(packs::use_by.lt(day)));
        query = query.filter(exists(some.filter(packs::left_mg.gt(0))));
    }
    if sought.farm.is_some() || sought.killed_on.is_some() {
        let mut of = sources::table
            .inner_join(animals::table.on(animals::id.nullable().eq(sources::animal_id)))
            // What it was known as until that was corrected leads to it as well.
            .left_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
            .filter(voids::id.is_null())
            .select(sources::lot_id)
            .into_boxed();
        if let Some(farm) = &sought.farm {
            of = of.filter(animals::farm.eq(farm));
        }
        if let Some(day) = sought.killed_on {
            of = of.filter(animals::killed_on.eq(day));
        }
        let of: Vec<i32> = of.load(conn)?;
        // All that was made of them is of that farm and day as well.
        query = match of.is_empty() {
            true => query.filter(lots::id.eq(0)),
            false => query.filter(sql::<Bool>(&format!(
                "lots.id IN ({} SELECT id FROM reach)",
                with_reach(&among(&of))
            ))),
        };
    }
    Ok(query.load(conn)?)
}

/// The lots of some products, whatever version of each they were made by, that something is left of; newest first.
macro_rules! left_of {
    ($products:expr) => {
        lots::table
            .inner_join(versions::table.on(versions::id.eq(lots::version_id)))
            .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
            .filter(
                entries::list
                    .eq("products")
                    .and(entries::code.eq_any($products)),
            )
            .filter(lots::on_hand_mg.gt(0).and(lots::voided.eq(false)))
            .order(lots::id.desc())
    };
}

/// The keys of the latest lots of some products that something is left of.
///
/// # Errors
/// The database is away.
pub fn on_hand_of(conn: &mut Conn, products: &[&str], limit: i64) -> Result<Vec<i32>> {
    let keys = left_of!(products).limit(limit).select(lots::id);
    Ok(keys.load(conn)?)
}

/// The keys of lots of some products with packs whose last day is that one or later, the soonest first: read along the
/// index of what is on hand, so that what was ever made costs nothing. So many days of lots at the most.
///
/// # Errors
/// The database is away.
pub fn soonest_of(
    conn: &mut Conn,
    products: &[&str],
    from: NaiveDate,
    limit: i64,
) -> Result<Vec<i32>> {
    let of = left_of!(products).filter(lots::id.eq(packs::lot_id));
    let days: Vec<(Option<NaiveDate>, i32)> = packs::table
        .filter(packs::left_mg.gt(0).and(packs::use_by.ge(from)))
        .filter(exists(of))
        .order((packs::use_by, packs::lot_id))
        .select((packs::use_by, packs::lot_id))
        .distinct()
        .limit(limit)
        .load(conn)?;
    Ok(days.into_iter().map(|(_, lot)| lot).collect())
}

/// Those lots themselves.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn latest_of(conn: &mut Conn, products: &[&str], limit: i64) -> Result<Vec<LotRow>> {
    let rows = left_of!(products).limit(limit).select(LotRow::as_select());
    Ok(rows.load(conn)?)
}
