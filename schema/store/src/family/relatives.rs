//! Lots with the deed that made each, and what is known of the source of those that were received.

use super::walk::WalkStart;
use crate::conn::Conn;
use crate::error::{Error, Result};
use crate::keyed;
use crate::lots::LotRow;
use chrono::{NaiveDate, NaiveDateTime};
use diesel::prelude::*;
use diesel::sql_types::{Binary, Bool, Date, Integer, Nullable, Text, Timestamp};
use domain::family::{KnownSource, MadeBy, SourceAnimal};
use domain::words::{DeedKind, Side, Species};

/// A lot, its deed and its source.
#[derive(Debug, QueryableByName)]
#[allow(missing_docs, reason = "the columns, described in the migration")]
pub struct RelativeRow {
    #[diesel(embed)]
    pub lot: LotRow,
    #[diesel(sql_type = Bool)]
    has_stops: bool,
    #[diesel(sql_type = Binary)]
    deed_uid: Vec<u8>,
    #[diesel(sql_type = Text)]
    deed_kind: String,
    #[diesel(sql_type = Timestamp)]
    deed_at: NaiveDateTime,
    #[diesel(sql_type = Date)]
    deed_day: NaiveDate,
    #[diesel(sql_type = Text)]
    deed_person: String,
    #[diesel(sql_type = Nullable<Integer>)]
    source_id: Option<i32>,
    #[diesel(sql_type = Nullable<Text>)]
    side: Option<String>,
    #[diesel(sql_type = Nullable<Text>)]
    supplier: Option<String>,
    #[diesel(sql_type = Nullable<Text>)]
    supplier_lot: Option<String>,
    #[diesel(sql_type = Nullable<Integer>)]
    of_animal: Option<i32>,
    #[diesel(sql_type = Nullable<Binary>)]
    animal_uid: Option<Vec<u8>>,
    #[diesel(sql_type = Nullable<Text>)]
    farm: Option<String>,
    #[diesel(sql_type = Nullable<Text>)]
    animal_species: Option<String>,
    #[diesel(sql_type = Nullable<Date>)]
    killed_on: Option<NaiveDate>,
    #[diesel(sql_type = Nullable<Text>)]
    abattoir: Option<String>,
    #[diesel(sql_type = Nullable<Text>)]
    carcass: Option<String>,
    #[diesel(sql_type = Nullable<Text>)]
    tag: Option<String>,
    #[diesel(sql_type = Nullable<Integer>)]
    head: Option<i32>,
}

impl RelativeRow {
    /// The deed that made it.
    pub fn made_by(&self) -> Result<MadeBy> {
        let kind = DeedKind::parse(&self.deed_kind);
        Ok(MadeBy {
            uid: self.deed_uid.clone(),
            kind: kind.ok_or_else(|| self.bad("was made by a deed of an unknown kind"))?,
            at: self.deed_at.and_utc(),
            day: self.deed_day,
            by: self.deed_person.clone(),
        })
    }

    /// What is known of its source, if it was received.
    pub fn source(&self) -> Result<Option<KnownSource>> {
        if self.source_id.is_none() {
            return Ok(None);
        }
        Ok(Some(KnownSource {
            animal: self.of_animal.map(|key| self.animal(key)).transpose()?,
            side: self.side.as_deref().and_then(Side::parse),
            supplier: self.supplier.clone(),
            supplier_lot: self.supplier_lot.clone(),
        }))
    }

    fn animal(&self, key: i32) -> Result<SourceAnimal> {
        let species = self.animal_species.as_deref().and_then(Species::parse);
        Ok(SourceAnimal {
            key,
            uid: self.animal_uid.clone().unwrap_or_default(),
            farm: self.farm.clone().unwrap_or_default(),
            species: species.ok_or_else(|| self.bad("is of an animal of an unknown species"))?,
            killed_on: self
                .killed_on
                .ok_or_else(|| self.bad("is of an animal without a kill date"))?,
            abattoir: self.abattoir.clone(),
            carcass: self.carcass.clone(),
            tag: self.tag.clone(),
            head: self.head.unwrap_or(1).unsigned_abs(),
        })
    }

    fn bad(&self, what: &str) -> Error {
        Error::bad_row("lots", self.lot.id, what)
    }
}

const COLUMNS: &str = "SELECT lots.*, EXISTS (SELECT 1 FROM stops WHERE stops.lot_id = lots.id) AS has_stops,
         deeds.uid AS deed_uid, deeds.kind AS deed_kind, deeds.at AS deed_at,
         deeds.day AS deed_day, deeds.person AS deed_person,
         sources.id AS source_id, sources.side, sources.supplier, sources.supplier_lot,
         animals.id AS of_animal, brought.uid AS animal_uid, animals.farm, animals.species AS animal_species,
         animals.killed_on, animals.abattoir, animals.carcass, animals.tag, animals.head
     FROM lots
     JOIN deeds ON deeds.id = lots.deed_id
     LEFT JOIN sources ON sources.lot_id = lots.id AND sources.is_current
     LEFT JOIN animals ON animals.id = sources.animal_id
     LEFT JOIN deeds brought ON brought.id = animals.deed_id";

/// The lots that a walk started from and those that it reached, in the order of their keys.
pub fn of_family(conn: &mut Conn, start: WalkStart<'_>, keys: &[i32]) -> Result<Vec<RelativeRow>> {
    match start {
        WalkStart::Keys(starts) => of(conn, "lots.id", &[starts, keys].concat()),
        WalkStart::Code(code) => {
            let found = keyed::of_code_or(conn, keys, code, |these, is| {
                format!("{COLUMNS} WHERE lots.id {these} OR lots.code {is} ORDER BY lots.id")
            });
            Ok(with_stops(found?))
        }
    }
}

/// The lots that some deeds made, in the order of their keys.
pub fn made_by(conn: &mut Conn, deeds: &[i32]) -> Result<Vec<RelativeRow>> {
    of(conn, "lots.deed_id", deeds)
}

fn of(conn: &mut Conn, column: &str, keys: &[i32]) -> Result<Vec<RelativeRow>> {
    if keys.is_empty() {
        return Ok(Vec::new());
    }
    let found = keyed::of(conn, keys, |these| {
        format!("{COLUMNS} WHERE {column} {these} ORDER BY lots.id")
    });
    Ok(with_stops(found?))
}

/// A row by name has only what the column notes: what lies beside it is put to it.
fn with_stops(mut rows: Vec<RelativeRow>) -> Vec<RelativeRow> {
    for row in &mut rows {
        row.lot.stopped |= row.has_stops;
    }
    rows
}
