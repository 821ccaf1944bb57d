//! The kitchen's lists. An entry has a code and versions; each version's body is kept as it was
//! written, because a lot stays what its product was when it was made.

use crate::chain::rows::{EntryLine, HouseCodeRow, VersionLine};
use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::on_each;
use crate::tables::{deeds, entries, house_codes, incidents, versions};
use chrono::NaiveDateTime;
use diesel::dsl::{count_star, max};
use diesel::prelude::*;
use diesel::sql_query;
use diesel::sql_types::{BigInt, Integer, Text};

/// An entry with its current version.
#[derive(Debug, Clone, Queryable)]
pub struct EntryRow {
    /// The entry's key; it stays when the entry changes.
    pub id: i32,
    /// The entry's code.
    pub code: String,
    /// The current version's key.
    pub version_id: i32,
    /// The current version's number, from 1.
    pub number: i32,
    /// The current version's body.
    pub body: String,
}

/// What is written of an entry.
#[derive(Debug, Clone, Copy)]
pub struct EntryBody<'a> {
    /// The entry, as canonical text.
    pub text: &'a str,
    /// What a search finds it by, in lower case.
    pub search: &'a str,
    /// When it was written.
    pub at: NaiveDateTime,
}

/// One entry of a list.
pub fn get(conn: &mut Conn, list: &str, code: &str) -> Result<Option<EntryRow>> {
    Ok(entries::table
        .inner_join(versions::table.on(versions::id.eq(entries::version_id)))
        .filter(entries::list.eq(list).and(entries::code.eq(code)))
        .select((
            entries::id,
            entries::code,
            versions::id,
            versions::number,
            versions::body,
        ))
        .get_result(conn)
        .optional()?)
}

/// All entries of a list, by code.
pub fn all(conn: &mut Conn, list: &str) -> Result<Vec<EntryRow>> {
    Ok(entries::table
        .inner_join(versions::table.on(versions::id.eq(entries::version_id)))
        .filter(entries::list.eq(list))
        .order(entries::code)
        .select((
            entries::id,
            entries::code,
            versions::id,
            versions::number,
            versions::body,
        ))
        .load(conn)?)
}

/// How the lists stand: it differs whenever an entry was added or changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    versions: i64,
    last: Option<i32>,
}

/// What is asked at the beginning of a request, in one statement.
#[derive(Debug, Clone, Copy)]
pub struct FirstLook {
    /// How the lists stand.
    pub stamp: Stamp,
    /// When the last deed was recorded.
    pub last_recorded_at: Option<NaiveDateTime>,
    /// The key of the last incident.
    pub incident: Option<i32>,
}

/// How the lists stand now, and when the last deed was recorded.
pub fn seen(conn: &mut Conn) -> Result<FirstLook> {
    // The count too: of two writers, the later key may be there first.
    let recorded = deeds::table.select(max(deeds::recorded_at)).single_value();
    let incident = incidents::table.select(max(incidents::id)).single_value();
    let (versions, last, last_recorded_at, incident) = versions::table
        .select((count_star(), max(versions::id), recorded, incident))
        .get_result(conn)?;
    Ok(FirstLook {
        stamp: Stamp { versions, last },
        last_recorded_at,
        incident,
    })
}

/// Every entry of every list with its current version: the list's name, then the entry.
pub fn current(conn: &mut Conn) -> Result<Vec<(String, EntryRow)>> {
    Ok(entries::table
        .inner_join(versions::table.on(versions::id.eq(entries::version_id)))
        .order((entries::list, entries::code))
        .select((
            entries::list,
            (
                entries::id,
                entries::code,
                versions::id,
                versions::number,
                versions::body,
            ),
        ))
        .load(conn)?)
}

/// The body of a version, which never changes.
pub fn version(conn: &mut Conn, version_id: i32) -> Result<String> {
    Ok(versions::table
        .find(version_id)
        .select(versions::body)
        .get_result(conn)?)
}

/// The bodies of versions, which never change.
pub fn versions(conn: &mut Conn, ids: &[i32]) -> Result<Vec<(i32, String)>> {
    Ok(versions::table
        .filter(versions::id.eq_any(ids))
        .select((versions::id, versions::body))
        .load(conn)?)
}

/// The bodies of every version that an entry has had, the oldest first.
pub fn all_bodies(conn: &mut Conn, list: &str, code: &str) -> Result<Vec<String>> {
    Ok(versions::table
        .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
        .filter(entries::list.eq(list).and(entries::code.eq(code)))
        .order(versions::number)
        .select(versions::body)
        .load(conn)?)
}

/// The body of an entry as it was at a moment; the first one, where it was written later.
pub fn body_at(
    conn: &mut Conn,
    list: &str,
    code: &str,
    at: NaiveDateTime,
) -> Result<Option<String>> {
    let of_entry = || {
        versions::table
            .inner_join(entries::table.on(entries::id.eq(versions::entry_id)))
            .filter(entries::list.eq(list).and(entries::code.eq(code)))
            .select(versions::body)
    };
    let then = of_entry().filter(versions::recorded_at.le(at));
    let then = then.order(versions::number.desc());
    let then: Option<String> = then.first(conn).optional()?;
    if then.is_some() {
        return Ok(then);
    }
    let first = of_entry().order(versions::number);
    Ok(first.first(conn).optional()?)
}

/// The body of an entry's current version, by the entry's key.
pub fn by_key(conn: &mut Conn, entry_id: i32) -> Result<String> {
    Ok(entries::table
        .inner_join(versions::table.on(versions::id.eq(entries::version_id)))
        .filter(entries::id.eq(entry_id))
        .select(versions::body)
        .get_result(conn)?)
}

/// The code of an entry, which never changes.
pub fn code(conn: &mut Conn, entry_id: i32) -> Result<String> {
    Ok(entries::table
        .find(entry_id)
        .select(entries::code)
        .get_result(conn)?)
}

/// Adds an entry. The caller has seen that the code is free and holds the lists' lock.
pub fn insert(tx: &mut Tx<'_>, list: &str, code: &str, body: EntryBody<'_>) -> Result<()> {
    let ids = tx.ids.take(tx.conn, 2)?;
    let (entry, version) = (ids[0], ids[1]);
    let row = EntryLine {
        id: entry,
        list: list.to_owned(),
        code: code.to_owned(),
    };
    diesel::insert_into(entries::table)
        .values((&row, entries::version_id.eq(version)))
        .execute(tx.conn)?;
    tx.seal_alone(&row);
    insert_version(tx, version, entry, 1, body)
}

/// Adds a version to an entry and makes it the current one.
pub fn replace(tx: &mut Tx<'_>, entry: &EntryRow, body: EntryBody<'_>) -> Result<()> {
    let version = tx.ids.one(tx.conn)?;
    insert_version(tx, version, entry.id, entry.number + 1, body)?;
    diesel::update(entries::table.find(entry.id))
        .set(entries::version_id.eq(version))
        .execute(tx.conn)?;
    Ok(())
}

fn insert_version(
    tx: &mut Tx<'_>,
    id: i32,
    entry_id: i32,
    number: i32,
    body: EntryBody<'_>,
) -> Result<()> {
    let row = VersionLine {
        id,
        entry_id,
        number,
        body: body.text.to_owned(),
        search: body.search.to_owned(),
        recorded_at: body.at,
    };
    diesel::insert_into(versions::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal_alone(&row);
    Ok(())
}

/// Who has a house code, if anybody: `farm BRC`, `kitchen`.
pub fn house_code_owner(conn: &mut Conn, code: &str) -> Result<Option<String>> {
    let owner = house_codes::table
        .filter(house_codes::code.eq(code))
        .select(house_codes::owner);
    Ok(owner.get_result(conn).optional()?)
}

/// Takes a house code for ever.
pub fn take_house_code(tx: &mut Tx<'_>, code: &str, owner: &str) -> Result<()> {
    let id = tx.ids.one(tx.conn)?;
    let row = HouseCodeRow {
        id,
        code: code.to_owned(),
        owner: owner.to_owned(),
    };
    diesel::insert_into(house_codes::table)
        .values(&row)
        .execute(tx.conn)?;
    tx.seal_alone(&row);
    Ok(())
}

/// Packs on hand of one version of an entry.
#[derive(Debug, QueryableByName)]
pub struct VersionPacks {
    /// The version, by its key.
    #[diesel(sql_type = Integer)]
    pub version_id: i32,
    /// What it says.
    #[diesel(sql_type = Text)]
    pub body: String,
    /// How many packs.
    #[diesel(sql_type = BigInt)]
    pub packs: i64,
}

/// The packs on hand of each version of an entry.
///
/// # Errors
/// The database is away.
pub fn packs_on_hand(conn: &mut Conn, list: &str, code: &str) -> Result<Vec<VersionPacks>> {
    let sql =
        "SELECT versions.id AS version_id, versions.body AS body, COUNT(*) AS packs FROM packs
        JOIN lots ON lots.id = packs.lot_id
        JOIN versions ON versions.id = lots.version_id
        JOIN entries ON entries.id = versions.entry_id
        WHERE packs.left_mg > 0 AND NOT lots.voided AND entries.list = $1 AND entries.code = $2
        GROUP BY versions.id, versions.body ORDER BY versions.id";
    Ok(on_each!(conn, c => sql_query(sql)
        .bind::<Text, _>(list)
        .bind::<Text, _>(code)
        .load(c)?))
}
