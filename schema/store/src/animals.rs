//! Source animals: found by farm, kill date, abattoir and carcass number, else by tag.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::{Error, Result};
use crate::on_each;
use crate::tables::{animals, deeds, lots, sources, voids};
use chrono::{NaiveDate, NaiveDateTime};
use diesel::dsl::exists;
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{Binary, Integer, Nullable, Text, Timestamp};
use domain::code::{HouseCode, LotCode};
use domain::deed::receive::{Animal, NumberKind};
use domain::family::{KnownOnce, SourceAnimal};
use domain::words::{Side, Species};
use std::collections::HashMap;

/// An animal as the record holds it.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, PartialEq)]
#[diesel(table_name = animals, treat_none_as_default_value = false)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct AnimalRow {
    pub id: i32,
    pub deed_id: i32,
    pub stem: Option<String>,
    pub farm: String,
    pub species: String,
    pub killed_on: NaiveDate,
    pub abattoir: Option<String>,
    pub carcass: Option<String>,
    pub tag: Option<String>,
    pub head: i32,
}

impl AnimalRow {
    /// The domain's animal.
    pub fn animal(&self) -> Result<Animal> {
        let bad = |what| Error::bad_row("animals", self.id, what);
        Ok(Animal {
            farm: HouseCode::parse(&self.farm).ok_or_else(|| bad("farm code"))?,
            species: Species::parse(&self.species).ok_or_else(|| bad("species"))?,
            killed_on: self.killed_on,
            abattoir: self.abattoir.clone(),
            carcass: self.carcass.clone(),
            tag: self.tag.clone(),
            head: u32::try_from(self.head).map_err(|_| bad("head"))?,
        })
    }
}

impl AnimalRow {
    /// The animal as it is shown, by the id of the deed that brought it in.
    pub fn source_animal(&self, uid: &[u8]) -> Result<SourceAnimal> {
        let species = Species::parse(&self.species);
        Ok(SourceAnimal {
            key: self.id,
            uid: uid.to_vec(),
            farm: self.farm.clone(),
            species: species.ok_or_else(|| Error::bad_row("animals", self.id, "species"))?,
            killed_on: self.killed_on,
            abattoir: self.abattoir.clone(),
            carcass: self.carcass.clone(),
            tag: self.tag.clone(),
            head: self.head.unsigned_abs(),
        })
    }
}

/// The animal on record that this one is, if that can be known. Lock the farm's day before.
pub fn matching(conn: &mut Conn, animal: &Animal) -> Result<Option<AnimalRow>> {
    let Some((kind, number)) = animal.number() else {
        return Ok(None);
    };
    let mut alike: Vec<AnimalRow> = of_day(conn, animal)?
        .into_iter()
        .filter(|row| is_numbered(row, animal, kind, number))
        .collect();
    // Of one whose species was told wrong there are two: lots are of the one that is right, the newest.
    for nth in (0..alike.len()).rev() {
        if alike.len() == 1 || !sides(conn, alike[nth].id)?.is_empty() {
            return Ok(Some(alike.swap_remove(nth)));
        }
    }
    Ok(alike.into_iter().next())
}

/// The animal on record that is known exactly so, told from others by its number. Lock the farm's day before.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn exactly(conn: &mut Conn, animal: &Animal) -> Result<Option<AnimalRow>> {
    if animal.number().is_none() {
        return Ok(None);
    }
    for row in of_day(conn, animal)? {
        if row.animal()? == *animal {
            return Ok(Some(row));
        }
    }
    Ok(None)
}

/// What a farm sent to be killed on the animal's day.
fn of_day(conn: &mut Conn, animal: &Animal) -> Result<Vec<AnimalRow>> {
    Ok(animals::table
        .filter(
            animals::farm
                .eq(animal.farm.as_str())
                .and(animals::killed_on.eq(animal.killed_on)),
        )
        .order(animals::id)
        .select(AnimalRow::as_select())
        .load(conn)?)
}

fn is_numbered(row: &AnimalRow, animal: &Animal, kind: NumberKind, number: &str) -> bool {
    let same_number = match kind {
        NumberKind::Carcass => row.carcass.as_deref() == Some(number),
        NumberKind::Tag => row.carcass.is_none() && row.tag.as_deref() == Some(number),
    };
    same_number && row.abattoir == animal.abattoir
}

/// Adds an animal.
pub fn insert(
    tx: &mut Tx<'_>,
    deed: i32,
    animal: &Animal,
    stem: Option<String>,
) -> Result<AnimalRow> {
    let row = AnimalRow {
        id: tx.ids.one(tx.conn)?,
        deed_id: deed,
        stem,
        farm: animal.farm.as_str().to_owned(),
        species: animal.species.as_str().to_owned(),
        killed_on: animal.killed_on,
        abattoir: animal.abattoir.clone(),
        carcass: animal.carcass.clone(),
        tag: animal.tag.clone(),
        head: i32::try_from(animal.head).unwrap_or(i32::MAX),
    };
    diesel::insert_into(animals::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal(deed, &row);
    Ok(row)
}

/// One animal by its key.
pub fn by_key(conn: &mut Conn, key: i32) -> Result<AnimalRow> {
    Ok(animals::table
        .find(key)
        .select(AnimalRow::as_select())
        .get_result(conn)?)
}

/// The animal that the deed with this id brought in; the deed's id is the animal's.
pub fn by_uid(conn: &mut Conn, uid: &[u8; 16]) -> Result<Option<AnimalRow>> {
    Ok(animals::table
        .inner_join(deeds::table.on(deeds::id.eq(animals::deed_id)))
        .filter(deeds::uid.eq(&uid[..]))
        .select(AnimalRow::as_select())
        .get_result(conn)
        .optional()?)
}

/// The lots that were received of an animal, by their keys.
pub fn received(conn: &mut Conn, animal: i32) -> Result<Vec<i32>> {
    let known = received_of(conn, &[animal])?;
    Ok(known.into_iter().map(|(_, lot, _)| lot).collect())
}

/// The lots that were received of some animals: animal, key and code, in the order of the lots.
pub fn received_of(conn: &mut Conn, animals: &[i32]) -> Result<Vec<(i32, i32, LotCode)>> {
    let found: Vec<(Option<i32>, i32, String)> = sources::table
        .inner_join(lots::table.on(lots::id.eq(sources::lot_id)))
        .filter(
            sources::animal_id
                .eq_any(animals)
                .and(sources::is_current.eq(true)),
        )
        .filter(lots::voided.eq(false))
        .order(lots::id)
        .select((sources::animal_id, lots::id, lots::code))
        .load(conn)?;
    let known = found.into_iter();
    known
        .filter_map(|(animal, lot, code)| Some((animal?, lot, code)))
        .map(|(animal, lot, code)| Ok((animal, lot, code_of(lot, &code)?)))
        .collect()
}

#[derive(Debug, QueryableByName)]
struct OnceRow {
    #[diesel(sql_type = Integer)]
    animal: i32,
    #[diesel(sql_type = Integer)]
    lot_id: i32,
    #[diesel(sql_type = Text)]
    code: String,
    #[diesel(sql_type = Binary)]
    now: Vec<u8>,
    #[diesel(sql_type = Text)]
    person: String,
    #[diesel(sql_type = Timestamp)]
    at: NaiveDateTime,
}

/// The lots that were known as received of some animals until that was corrected, by animal.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn once_of(conn: &mut Conn, animals: &[i32]) -> Result<HashMap<i32, Vec<KnownOnce>>> {
    if animals.is_empty() {
        return Ok(HashMap::new());
    }
    let keys: Vec<String> = animals.iter().map(i32::to_string).collect();
    let sql = format!(
        "SELECT sources.animal_id AS animal, lots.id AS lot_id, lots.code, brought.uid AS now,
             correcting.person, correcting.at
         FROM sources
         JOIN lots ON lots.id = sources.lot_id
         JOIN sources known ON known.lot_id = sources.lot_id AND known.is_current
         JOIN animals ON animals.id = known.animal_id
         JOIN deeds brought ON brought.id = animals.deed_id
         JOIN deeds correcting ON correcting.id = known.deed_id
         LEFT JOIN voids ON voids.deed_id = sources.deed_id
         WHERE sources.animal_id IN ({}) AND known.animal_id <> sources.animal_id
             AND voids.id IS NULL AND NOT lots.voided
         ORDER BY lots.id",
        keys.join(", ")
    );
    let rows: Vec<OnceRow> = on_each!(conn, c => sql_query(sql).load(c)?);
    let mut once: HashMap<i32, Vec<KnownOnce>> = HashMap::new();
    for row in rows {
        let known = KnownOnce {
            lot: code_of(row.lot_id, &row.code)?,
            now: row.now,
            by: row.person,
            at: row.at.and_utc(),
        };
        let of = once.entry(row.animal).or_default();
        if !of.contains(&known) {
            of.push(known);
        }
    }
    Ok(once)
}

/// The sides of an animal that are on record, each with the lot that it was received as.
pub fn sides(conn: &mut Conn, animal: i32) -> Result<Vec<(Option<Side>, LotCode)>> {
    let rows: Vec<(Option<String>, String, i32)> = sources::table
        .inner_join(lots::table.on(lots::id.eq(sources::lot_id)))
        .filter(
            sources::animal_id
                .eq(animal)
                .and(sources::is_current.eq(true))
                .and(lots::voided.eq(false)),
        )
        .order(lots::id)
        .select((sources::side, lots::code, lots::id))
        .load(conn)?;
    rows.into_iter()
        .map(|(side, code, lot)| {
            let code = code_of(lot, &code)?;
            Ok((side.as_deref().and_then(Side::parse), code))
        })
        .collect()
}

fn code_of(lot: i32, code: &str) -> Result<LotCode> {
    LotCode::read(code).map_err(|_| Error::bad_row("lots", lot, "malformed code"))
}

/// What to look for among the animals.
#[derive(Debug, Default, Clone)]
#[allow(missing_docs, reason = "the columns")]
pub struct AnimalSearch {
    pub farm: Option<String>,
    pub killed_on: Option<NaiveDate>,
    pub carcass: Option<String>,
    pub tag: Option<String>,
    pub after: Option<(NaiveDate, i32)>,
}

#[diesel::declare_sql_function]
extern "SQL" {
    /// A text with each of one text put in the place of another.
    fn replace(text: Nullable<Text>, what: Text, with: Text) -> Nullable<Text>;
    /// In capitals.
    fn upper(text: Nullable<Text>) -> Nullable<Text>;
}

/// Animals whose carcass number or tag ends in some letters and figures, whatever stands between them;
/// newest kill first. `ending` has capitals and figures only.
pub fn numbered(conn: &mut Conn, ending: &str, limit: i64) -> Result<Vec<(AnimalRow, Vec<u8>)>> {
    let like = format!("%{ending}");
    let of_a_lot = sources::table
        .inner_join(lots::table.on(lots::id.eq(sources::lot_id)))
        .left_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
        .filter(sources::animal_id.eq(animals::id.nullable()))
        .filter(voids::id.is_null().and(lots::voided.eq(false)));
    macro_rules! plain {
        ($column:expr) => {
            upper(replace(
                replace(replace(replace($column, "-", ""), " ", ""), ".", ""),
                "/",
                "",
            ))
        };
    }
    Ok(animals::table
        .inner_join(deeds::table.on(deeds::id.eq(animals::deed_id)))
        .filter(
            plain!(animals::carcass)
                .like(like.clone())
                .or(plain!(animals::tag).like(like))
                .assume_not_null(),
        )
        .filter(exists(of_a_lot))
        .order((animals::killed_on.desc(), animals::id.desc()))
        .select((AnimalRow::as_select(), deeds::uid))
        .limit(limit)
        .load(conn)?)
}

/// Animals that lots on record are of, or were known to be of until that was corrected; newest kill first.
pub fn list(
    conn: &mut Conn,
    sought: &AnimalSearch,
    limit: i64,
) -> Result<Vec<(AnimalRow, Vec<u8>)>> {
    // Asked of each animal of the page, not of all of them first: a page costs the same in a long record.
    let of_a_lot = sources::table
        .inner_join(lots::table.on(lots::id.eq(sources::lot_id)))
        .left_join(voids::table.on(voids::deed_id.eq(sources::deed_id)))
        .filter(sources::animal_id.eq(animals::id.nullable()))
        .filter(voids::id.is_null().and(lots::voided.eq(false)));
    let mut query = animals::table
        .inner_join(deeds::table.on(deeds::id.eq(animals::deed_id)))
        .filter(exists(of_a_lot))
        .order((animals::killed_on.desc(), animals::id.desc()))
        .select((AnimalRow::as_select(), deeds::uid))
        .limit(limit)
        .into_boxed();
    if let Some(farm) = &sought.farm {
        query = query.filter(animals::farm.eq(farm));
    }
    if let Some(day) = sought.killed_on {
        query = query.filter(animals::killed_on.eq(day));
    }
    if let Some(carcass) = &sought.carcass {
        query = query.filter(animals::carcass.eq(carcass));
    }
    if let Some(tag) = &sought.tag {
        query = query.filter(animals::tag.eq(tag));
    }
    if let Some((day, id)) = sought.after {
        let same_day = animals::killed_on.eq(day).and(animals::id.lt(id));
        query = query.filter(animals::killed_on.lt(day).or(same_day));
    }
    Ok(query.load(conn)?)
}
