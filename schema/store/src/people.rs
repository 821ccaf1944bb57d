//! People, their roles, sessions and tokens: small tables that are read whole, and kept in memory by who
//! asks. Their keys count up by themselves, so that nothing of the record of deeds changes with them.

use crate::conn::Conn;
use crate::db::Tx;
use crate::error::Result;
use crate::tables::{people, person_roles, sessions, tokens};
use chrono::NaiveDateTime;
use diesel::dsl::max;
use diesel::prelude::*;

/// The kitchen that roles are held at, while a record holds only one.
pub const HERE: &str = "";

/// A person.
#[derive(Debug, Clone, Queryable, Selectable, Insertable, AsChangeset)]
#[diesel(table_name = people)]
#[diesel(treat_none_as_null = true)]
pub struct PersonRow {
    /// Their key.
    pub id: i32,
    /// Their id outside.
    pub uid: Vec<u8>,
    /// Their name, as deeds have it.
    pub name: String,
    /// Their PIN, hashed.
    pub pin: Option<String>,
    /// A word that signs them in once, hashed.
    pub word: Option<Vec<u8>>,
    /// The language they read.
    pub language: Option<String>,
    /// May they sign in?
    pub active: bool,
    /// Which version of the person this is, from 1.
    pub number: i32,
    /// When they were added.
    pub made_at: NaiveDateTime,
    /// In which units they read weights, if not in the kitchen's.
    pub weights: Option<String>,
    /// In which units they read temperatures, if not in the kitchen's.
    pub temperatures: Option<String>,
}

/// A session.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = sessions)]
pub struct SessionRow {
    /// Its key.
    pub id: i32,
    /// Whose.
    pub person_id: i32,
    /// Its secret, hashed.
    pub hash: Vec<u8>,
    /// On which device.
    pub device: String,
    /// From when.
    pub began_at: NaiveDateTime,
    /// To when.
    pub ends_at: NaiveDateTime,
}

/// A token.
#[derive(Debug, Clone, Queryable, Selectable, Insertable)]
#[diesel(table_name = tokens)]
pub struct TokenRow {
    /// Its key.
    pub id: i32,
    /// What it is called, as deeds have it.
    pub name: String,
    /// The kitchen that it is good for.
    pub kitchen: String,
    /// What it may do.
    pub role: String,
    /// Its secret, hashed.
    pub hash: Vec<u8>,
    /// When it was made.
    pub made_at: NaiveDateTime,
    /// By whom.
    pub made_by: String,
    /// When it ends, if it does.
    pub ends_at: Option<NaiveDateTime>,
    /// May it speak for others?
    pub speaks: bool,
}

/// All of it, as it is kept in memory.
#[derive(Debug, Clone, Default)]
pub struct Everybody {
    /// People, by name.
    pub people: Vec<PersonRow>,
    /// Their roles here: person and role.
    pub roles: Vec<(i32, String)>,
    /// Sessions that have not ended long ago.
    pub sessions: Vec<SessionRow>,
    /// Tokens.
    pub tokens: Vec<TokenRow>,
}

/// Reads all of it; of the sessions, those that ended after a moment.
///
/// # Errors
/// The database is away.
pub fn everybody(conn: &mut Conn, after: NaiveDateTime) -> Result<Everybody> {
    Ok(Everybody {
        people: people::table
            .order(people::name)
            .select(PersonRow::as_select())
            .load(conn)?,
        roles: person_roles::table
            .filter(person_roles::kitchen.eq(HERE))
            .order(person_roles::id)
            .select((person_roles::person_id, person_roles::role))
            .load(conn)?,
        sessions: sessions::table
            .filter(sessions::ends_at.gt(after))
            .order(sessions::id)
            .select(SessionRow::as_select())
            .load(conn)?,
        tokens: tokens::table
            .filter(tokens::kitchen.eq(HERE))
            .order(tokens::id)
            .select(TokenRow::as_select())
            .load(conn)?,
    })
}

/// Lets a session last longer.
///
/// # Errors
/// The database is away.
pub fn prolong(tx: &mut Tx<'_>, id: i32, ends_at: NaiveDateTime) -> Result<()> {
    diesel::update(sessions::table.find(id))
        .set(sessions::ends_at.eq(ends_at))
        .execute(tx.conn)?;
    Ok(())
}

/// Adds a person with their roles; the key and number are given here.
///
/// # Errors
/// The database is away; somebody has the name.
pub fn add(tx: &mut Tx<'_>, person: &PersonRow, roles: &[&str]) -> Result<i32> {
    let last: Option<i32> = people::table.select(max(people::id)).get_result(tx.conn)?;
    let person = PersonRow {
        id: last.unwrap_or(0) + 1,
        ..person.clone()
    };
    diesel::insert_into(people::table)
        .values(&person)
        .execute(tx.conn)?;
    set_roles(tx, person.id, roles)?;
    Ok(person.id)
}

/// Changes a person, who has one version more then.
///
/// # Errors
/// The database is away; somebody has the name.
pub fn change(tx: &mut Tx<'_>, person: &PersonRow, roles: Option<&[&str]>) -> Result<()> {
    let next = PersonRow {
        number: person.number + 1,
        ..person.clone()
    };
    diesel::update(people::table.find(person.id))
        .set(&next)
        .execute(tx.conn)?;
    if let Some(roles) = roles {
        diesel::delete(person_roles::table.filter(person_roles::person_id.eq(person.id)))
            .execute(tx.conn)?;
        set_roles(tx, person.id, roles)?;
    }
    Ok(())
}

fn set_roles(tx: &mut Tx<'_>, person: i32, roles: &[&str]) -> Result<()> {
    let last: Option<i32> = person_roles::table
        .select(max(person_roles::id))
        .get_result(tx.conn)?;
    for (nth, role) in (last.unwrap_or(0) + 1..).zip(roles) {
        diesel::insert_into(person_roles::table)
            .values((
                person_roles::id.eq(nth),
                person_roles::person_id.eq(person),
                person_roles::kitchen.eq(HERE),
                person_roles::role.eq(*role),
            ))
            .execute(tx.conn)?;
    }
    Ok(())
}

/// Begins a session; its key is given here.
///
/// # Errors
/// The database is away.
pub fn begin(tx: &mut Tx<'_>, session: &SessionRow) -> Result<()> {
    let last: Option<i32> = sessions::table
        .select(max(sessions::id))
        .get_result(tx.conn)?;
    let id = last.unwrap_or(0) + 1;
    diesel::insert_into(sessions::table)
        .values(SessionRow {
            id,
            ..session.clone()
        })
        .execute(tx.conn)?;
    Ok(())
}

/// Ends the sessions of a person, or of one device, that are still open.
///
/// # Errors
/// The database is away.
pub fn end_sessions(
    tx: &mut Tx<'_>,
    person: Option<i32>,
    device: Option<&str>,
    at: NaiveDateTime,
) -> Result<()> {
    let mut open = diesel::update(sessions::table)
        .filter(sessions::ends_at.gt(at))
        .set(sessions::ends_at.eq(at))
        .into_boxed();
    if let Some(person) = person {
        open = open.filter(sessions::person_id.eq(person));
    }
    if let Some(device) = device {
        open = open.filter(sessions::device.eq(device));
    }
    open.execute(tx.conn)?;
    Ok(())
}

/// Keeps a token; its key is given here.
///
/// # Errors
/// The database is away.
pub fn add_token(tx: &mut Tx<'_>, token: &TokenRow) -> Result<i32> {
    let last: Option<i32> = tokens::table.select(max(tokens::id)).get_result(tx.conn)?;
    let id = last.unwrap_or(0) + 1;
    diesel::insert_into(tokens::table)
        .values(TokenRow {
            id,
            ..token.clone()
        })
        .execute(tx.conn)?;
    Ok(id)
}

/// Ends a token.
///
/// # Errors
/// The database is away.
pub fn end_token(tx: &mut Tx<'_>, id: i32, at: NaiveDateTime) -> Result<()> {
    diesel::update(tokens::table.find(id))
        .set(tokens::ends_at.eq(at))
        .execute(tx.conn)?;
    Ok(())
}
