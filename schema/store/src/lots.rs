//! Lots, and how a row becomes the domain's lot.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::insert_rows;
use crate::on_each;
use crate::prepared::Prepared;
use crate::stops::is_stopped;
use crate::tables::{lots, versions, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Array, Integer, Text};
use domain::audit::Totals;
use domain::claims::WrongLabel;
use domain::code::LotCode;
use domain::condition::Condition;
use domain::dates::Later;
use domain::grams::Grams;
use domain::lot::{DeedId, Lot, LotId, Pack, PackNow, PlaceId};
use domain::origin::{AnimalId, Origin};
use domain::product::Product;
use domain::stop::Placed;
use domain::supplied::Supplied;
use domain::words::{Account, Allergen, Being, Packaging, Species, State};
use std::collections::BTreeSet;
use std::sync::Arc;

/// A lot as the record holds it.
#[derive(Debug, Clone, Queryable, QueryableByName, Selectable, Insertable, PartialEq)]
#[diesel(table_name = lots, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct LotRow {
    pub id: i32,
    pub code: String,
    pub deed_id: i32,
    pub version_id: i32,
    pub made_at: NaiveDateTime,
    pub made_mg: i64,
    pub pack_count: i32,
    pub origin: String,
    pub animal_id: Option<i32>,
    pub allergens: String,
    pub species: String,
    pub note: Option<String>,
    pub born_place_id: i32,
    pub born_state: String,
    pub born_use_by: Option<NaiveDate>,
    pub born_days_left: Option<i32>,
    pub voided: bool,
    pub seq: i32,
    pub on_hand_mg: i64,
    pub used_mg: i64,
    pub sold_mg: i64,
    pub sold_packs: i32,
    pub served_mg: i64,
    pub discarded_mg: i64,
    pub shipped_mg: i64,
    pub returned_mg: i64,
    pub lost_mg: i64,
    pub unexplained_mg: i64,
    pub taken_back_mg: i64,
    pub later: Option<String>,
    pub packaging: Option<String>,
    /// Is there anything to look for: a stop, or what the column notes, a condition or a label?
    #[diesel(select_expression = is_stopped())]
    pub stopped: bool,
}

/// What deeds have said of a lot since it was made.
#[derive(Debug, Default)]
pub struct Since {
    /// The stops that they placed.
    pub stops: Vec<Placed>,
    /// What it is now, where that changed.
    pub condition: Option<Condition>,
    /// The packs whose last label is no longer true.
    pub wrong_labels: Vec<WrongLabel>,
    /// Was it released?
    pub released: bool,
}

impl LotRow {
    fn bad(&self, what: &str) -> Error {
        Error::bad_row("lots", self.id, what)
    }

    /// Its code.
    pub fn code(&self) -> Result<LotCode> {
        LotCode::read(&self.code).map_err(|_| self.bad("malformed code"))
    }

    /// Where everything with a species in it comes from.
    pub fn origin(&self) -> Result<Origin> {
        read_origin(&self.origin, self.animal_id).ok_or_else(|| self.bad("unknown origin"))
    }

    /// Allergens by union.
    pub fn allergens(&self) -> Result<BTreeSet<Allergen>> {
        self.words(self.contents().0)
    }

    /// What may be in it unasked.
    pub fn may_contain(&self) -> Result<BTreeSet<Allergen>> {
        self.words(self.contents().1)
    }

    /// Of what it is made, where it was bought.
    pub fn supplied(&self) -> Result<Option<Supplied>> {
        let bad = || self.bad("does not say of what it is made");
        let parse = |text: &str| Supplied::parse(text).ok_or_else(bad);
        self.contents().2.map(parse).transpose()
    }

    /// The column that tells what is in it, in its three parts.
    fn contents(&self) -> (&str, &str, Option<&str>) {
        let (allergens, may_contain) = contains(&self.allergens);
        let supplied = self
            .allergens
            .split_once('\n')
            .map(|(_, supplied)| supplied);
        (allergens, may_contain, supplied)
    }

    fn words(&self, text: &str) -> Result<BTreeSet<Allergen>> {
        let words: Option<_> = text.split_whitespace().map(Allergen::parse).collect();
        words.ok_or_else(|| self.bad("unknown allergen"))
    }

    /// Species by union.
    pub fn species(&self) -> Result<BTreeSet<Species>> {
        let words: Option<_> = self
            .species
            .split_whitespace()
            .map(Species::parse)
            .collect();
        words.ok_or_else(|| self.bad("unknown species"))
    }

    /// How each of its packs was at birth; `left` is what `made` says.
    pub fn born(&self, made: Grams) -> Result<PackNow> {
        Ok(PackNow {
            left: made,
            being: Being::OnHand,
            place: PlaceId(self.born_place_id),
            state: State::parse(&self.born_state).ok_or_else(|| self.bad("unknown state"))?,
            use_by: self.born_use_by,
            days_left: self.born_days_left,
            taken_back: false,
        })
    }

    /// What can still change its packs' dates; for lots of the time before that was kept, what the
    /// product's own rule says.
    pub fn later(&self, product: &Product) -> Result<Later> {
        let Some(text) = &self.later else {
            return Ok(Later {
                freezes_once: false,
                by_moment: false,
                ..Later::of(product.keeping.usual)
            });
        };
        let rules = text
            .split_once(BETWEEN)
            .map_or(text.as_str(), |(_, rules)| rules);
        Later::parse(rules).ok_or_else(|| self.bad("unknown rule of its later life"))
    }

    /// What it is by what happened to it; none for lots of the time before that was asked.
    pub fn condition(&self) -> Result<Option<Condition>> {
        let kept = self
            .later
            .as_ref()
            .and_then(|text| text.split_once(BETWEEN));
        let parse = |(text, _)| Condition::parse(text).ok_or_else(|| self.bad("unknown condition"));
        kept.map(parse).transpose()
    }

    /// How it is packed, where air was taken out.
    pub fn packaging(&self) -> Result<Option<Packaging>> {
        let parse =
            |word: &String| Packaging::parse(word).ok_or_else(|| self.bad("unknown packaging"));
        self.packaging.as_ref().map(parse).transpose()
    }

    /// The totals that are kept beside the events.
    pub fn totals(&self) -> Totals {
        [
            (Account::Used, self.used_mg),
            (Account::Sold, self.sold_mg),
            (Account::Served, self.served_mg),
            (Account::Discarded, self.discarded_mg),
            (Account::Shipped, self.shipped_mg),
            (Account::Returned, self.returned_mg),
            (Account::Lost, self.lost_mg),
            (Account::Unexplained, self.unexplained_mg),
            (Account::TakenBack, self.taken_back_mg),
        ]
        .map(|(account, mg)| (account, Grams::from_milligrams(mg)))
        .into()
    }

    /// The domain's lot, with its product and what was loaded of it.
    pub fn into_lot(self, product: Arc<Product>, packs: Vec<Pack>, since: Since) -> Result<Lot> {
        let later = self.later(&product)?;
        Ok(Lot {
            later,
            condition: since.condition.or(self.condition()?),
            packaging: self.packaging()?,
            released: since.released || later.released,
            stops: since.stops,
            wrong_labels: since.wrong_labels,
            code: self.code()?,
            origin: self.origin()?,
            allergens: self.allergens()?,
            may_contain: self.may_contain()?,
            supplied: self.supplied()?,
            species: self.species()?,
            id: LotId(self.id),
            product,
            made_at: self.made_at.and_utc(),
            made_by: DeedId(self.deed_id),
            voided: self.voided,
            pack_count: u32::try_from(self.pack_count).map_err(|_| self.bad("pack count"))?,
            packs,
        })
    }
}

/// What is in a lot, and what may be in it unasked, as its column has the two: words parted by blanks.
pub fn contains(column: &str) -> (&str, &str) {
    let words = column.split('\n').next().unwrap_or_default();
    words.split_once(BETWEEN).unwrap_or((words, ""))
}

/// Stands between two things in the one column that holds both: the condition and the rules of the later
/// life; what is in it and what may be.
const BETWEEN: &str = "; ";

/// A lot's condition and the rules of its later life, as one column holds them.
pub(crate) fn life(condition: Condition, later: &Later) -> String {
    format!("{condition}{BETWEEN}{later}")
}

/// What is in a lot, as one column holds it: its allergens; after them those that may be in it unasked, where
/// there are any; and of what it was bought in as, on the lines below.
pub(crate) fn contents(
    allergens: &BTreeSet<Allergen>,
    may_contain: &BTreeSet<Allergen>,
    supplied: Option<&Supplied>,
) -> String {
    let mut text = joined(allergens.iter().map(|word| word.as_str()));
    if !may_contain.is_empty() {
        text += BETWEEN;
        text += &joined(may_contain.iter().map(|word| word.as_str()));
    }
    if let Some(supplied) = supplied {
        text += &format!("\n{supplied}");
    }
    text
}

/// How an origin is kept: a word, and the animal where there is one.
pub(crate) fn write_origin(origin: Origin) -> (&'static str, Option<i32>) {
    match origin {
        Origin::NoSpecies => ("none", None),
        Origin::One(AnimalId(animal)) => ("one", Some(animal)),
        Origin::Mixed { animals: true } => ("mixed", None),
        Origin::Mixed { animals: false } => ("bought", None),
    }
}

fn read_origin(word: &str, animal: Option<i32>) -> Option<Origin> {
    match (word, animal) {
        ("none", None) => Some(Origin::NoSpecies),
        ("one", Some(animal)) => Some(Origin::One(AnimalId(animal))),
        ("mixed", None) => Some(Origin::Mixed { animals: true }),
        ("bought", None) => Some(Origin::BOUGHT_MEAT),
        _ => None,
    }
}

/// Words of a closed vocabulary, as kept in one column.
pub(crate) fn joined<'a>(words: impl Iterator<Item = &'a str>) -> String {
    words.collect::<Vec<_>>().join(" ")
}

/// The lot with that code.
pub fn by_code(conn: &mut Conn, code: &LotCode) -> Result<Option<LotRow>> {
    // On the engine itself, whose prepared statement is found by the query's type.
    Ok(on_each!(conn, c => lots::table
        .filter(lots::code.eq(code.as_str()))
        .select(LotRow::as_select())
        .get_result(c)
        .optional()?))
}

/// Lots whose code has that part, the newest first; those that were voided are none.
pub fn with_part(conn: &mut Conn, part: &str, limit: i64) -> Result<Vec<LotRow>> {
    let voided = voids::table.filter(voids::deed_id.eq(lots::deed_id));
    Ok(lots::table
        .filter(lots::code.like(format!("%{part}%")))
        .filter(diesel::dsl::not(diesel::dsl::exists(voided)))
        .order(lots::id.desc())
        .limit(limit)
        .select(LotRow::as_select())
        .load(conn)?)
}

/// Lots by their keys, in the order of the keys.
pub fn by_keys(conn: &mut Conn, keys: &[i32]) -> Result<Vec<LotRow>> {
    Ok(lots::table
        .filter(lots::id.eq_any(keys))
        .order(lots::id)
        .select(LotRow::as_select())
        .load(conn)?)
}

/// The last lot of the same product that another deed made before it, voided ones left out. Each
/// version of the product is asked on its own, by its index, so that it costs the same in a long record.
pub fn last_before(conn: &mut Conn, row: &LotRow) -> Result<Option<LotRow>> {
    let entry: i32 = versions::table
        .find(row.version_id)
        .select(versions::entry_id)
        .get_result(conn)?;
    let of_product: Vec<i32> = versions::table
        .filter(versions::entry_id.eq(entry))
        .order(versions::number.desc())
        .select(versions::id)
        .load(conn)?;
    let mut last: Option<LotRow> = None;
    for version in of_product {
        let found: Vec<LotRow> = lots::table
            .filter(lots::version_id.eq(version).and(lots::voided.eq(false)))
            .filter(
                lots::made_at
                    .lt(row.made_at)
                    .and(lots::deed_id.ne(row.deed_id)),
            )
            .order(lots::id.desc())
            .limit(1)
            .select(LotRow::as_select())
            .load(conn)?;
        let newer = |found: &LotRow| {
            last.as_ref()
                .is_none_or(|last| last.made_at < found.made_at)
        };
        if let Some(found) = found.into_iter().next().filter(newer) {
            last = Some(found);
        }
    }
    Ok(last)
}

/// The lots that a deed made, in the order in which it was asked.
pub fn of_deed(conn: &mut Conn, deed: i32) -> Result<Vec<LotRow>> {
    Ok(lots::table
        .filter(lots::deed_id.eq(deed))
        .order(lots::id)
        .select(LotRow::as_select())
        .load(conn)?)
}

/// The lots with those codes, locked in the order of their keys until the transaction ends, then
/// read. Codes never given out are simply not among them.
pub fn lock(tx: &mut Tx<'_>, codes: &[&str]) -> Result<Vec<LotRow>> {
    if let Conn::Pg(conn) = tx.conn {
        let sql = "SELECT pg_advisory_xact_lock_shared(7023, 0), pg_advisory_xact_lock(7022, id)
                   FROM (SELECT id FROM lots WHERE code = ANY($1) ORDER BY id) AS keys";
        Prepared(sql_query(sql).bind::<Array<Text>, _>(codes)).execute(conn)?;
    }
    let query = lots::table.order(lots::id).select(LotRow::as_select());
    Ok(match codes {
        // One lot is the usual case, and its prepared statement is kept.
        [code] => query.filter(lots::code.eq(*code)).load(tx.conn)?,
        _ => query.filter(lots::code.eq_any(codes)).load(tx.conn)?,
    })
}

/// Locks lots in the order of their keys. SQLite has one writer and needs no lock.
///
/// On PostgreSQL an advisory lock for each lot: its queue is first come, first served, where writers
/// waiting for a row that is updated again and again may be passed over for long. Every deed that
/// changes a lot comes through here, and reads the lot afterwards.
pub fn lock_keys(tx: &mut Tx<'_>, keys: &[i32]) -> Result<()> {
    if let Conn::Pg(conn) = tx.conn {
        let sql = "SELECT pg_advisory_xact_lock_shared(7023, 0), pg_advisory_xact_lock(7022, key)
                   FROM (SELECT DISTINCT unnest($1) AS key ORDER BY key) AS keys";
        Prepared(sql_query(sql).bind::<Array<Integer>, _>(keys)).execute(conn)?;
    }
    Ok(())
}

/// Adds lots.
pub(crate) fn insert(tx: &mut Tx<'_>, deed: i32, rows: &[LotRow]) -> Result<()> {
    insert_rows!(tx.conn, lots::table, rows);
    tx.seal_all(deed, rows);
    Ok(())
}
