//! Bringing a database up to this version, and refusing one that is not ours to touch.

use crate::conn::Conn;
use crate::error::{Error, Result};
use diesel::connection::SimpleConnection;
use diesel::sql_types::Text;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use diesel_migrations::{EmbeddedMigrations, MigrationHarness, embed_migrations};
use std::path::Path;

const MIGRATIONS: EmbeddedMigrations = embed_migrations!("../../migrations");

#[derive(QueryableByName)]
struct Applied {
    #[diesel(sql_type = Text)]
    version: String,
}

#[derive(QueryableByName)]
struct MigrationName {
    #[diesel(sql_type = Text)]
    name: String,
}

/// Looks at a SQLite file read-only, before anything could change it.
pub(crate) fn refuse_what_is_not_ours(path: &Path) -> Result<()> {
    let shown = path.display().to_string();
    if std::fs::metadata(path).is_ok_and(|file| file.len() == 0) {
        return Err(Error::Address(empty(&shown)));
    }
    let mut conn = match Conn::to_read(path) {
        Ok(conn) => conn,
        Err(Error::Away(says)) => return Err(Error::Address(says)),
        Err(error) => return Err(error),
    };
    let Conn::Sqlite(conn) = &mut conn else {
        return Ok(());
    };
    let tables: Vec<MigrationName> = sql_query(
        "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'",
    )
    .load(conn)
    .map_err(|error| Error::Address(format!("{shown} is not a database: {error}")))?;
    if tables.is_empty() {
        return Err(Error::Address(empty(&shown)));
    }
    if !tables
        .iter()
        .any(|table| table.name == "__diesel_schema_migrations")
    {
        return Err(Error::Address(format!(
            "{shown} is a database of another program. Nothing was changed."
        )));
    }
    let applied = sql_query("SELECT version FROM __diesel_schema_migrations").load(conn)?;
    refuse_newer(&applied)
}

/// An emptied record is no new kitchen: nothing is made where something was.
fn empty(path: &str) -> String {
    format!(
        "{path} is empty: a record was there, or its making was cut short. Restore the record, or remove the file to begin a new kitchen."
    )
}

/// The versions of the migrations that this program has.
fn known() -> Result<Vec<String>> {
    use diesel::migration::MigrationSource;
    let all = MigrationSource::<diesel::sqlite::Sqlite>::migrations(&MIGRATIONS);
    let all = all.map_err(|error| Error::Broken(error.to_string()))?;
    let versions = all.iter().map(|one| one.name().version().to_string());
    Ok(versions.collect())
}

#[derive(QueryableByName)]
struct Answer {
    #[diesel(sql_type = diesel::sql_types::Bool)]
    yes: bool,
}

fn is_there(conn: &mut diesel::PgConnection, sql: &str) -> Result<bool> {
    let answers: Vec<Answer> = sql_query(sql).load(conn)?;
    Ok(answers.first().is_some_and(|answer| answer.yes))
}

fn refuse_newer(applied: &[Applied]) -> Result<()> {
    let known = known()?;
    match applied
        .iter()
        .find(|applied| !known.contains(&applied.version))
    {
        Some(newer) => Err(Error::Newer(format!(
            "the database was written by a newer version of this program (it knows {}). Nothing was changed. Use that version; or restore the copy that was made before the upgrade, without what was recorded since.",
            newer.version
        ))),
        None => Ok(()),
    }
}

/// Was it written by an earlier version?
pub(crate) fn is_older(conn: &mut Conn) -> Result<bool> {
    let failed = |error: Box<dyn std::error::Error + Send + Sync>| Error::Broken(error.to_string());
    match conn {
        Conn::Sqlite(conn) => conn.has_pending_migration(MIGRATIONS),
        Conn::Pg(conn) => conn.has_pending_migration(MIGRATIONS),
    }
    .map_err(failed)
}

/// Runs what is pending. Several processes may start at once: one runs, the others wait.
pub(crate) fn run(conn: &mut Conn) -> Result<()> {
    let failed = |error: Box<dyn std::error::Error + Send + Sync>| {
        Error::Broken(format!("the migrations failed: {error}"))
    };
    match conn {
        Conn::Sqlite(conn) => {
            conn.run_pending_migrations(MIGRATIONS).map_err(failed)?;
        }
        Conn::Pg(conn) => {
            // A change of a large record takes as long as it takes.
            conn.batch_execute("SET statement_timeout TO 0; SET lock_timeout TO 0")?;
            conn.batch_execute("SELECT pg_advisory_lock(7020)")?;
            let done = migrate_postgres(conn);
            conn.batch_execute("SELECT pg_advisory_unlock(7020)")?;
            done?;
        }
    }
    Ok(())
}

fn migrate_postgres(conn: &mut diesel::PgConnection) -> Result<()> {
    let schema = "SELECT table_name::text AS name FROM information_schema.tables
                  WHERE table_schema = current_schema() AND table_name = '__diesel_schema_migrations'";
    if !sql_query(schema).load::<MigrationName>(conn)?.is_empty() {
        let applied = sql_query("SELECT version::text AS version FROM __diesel_schema_migrations")
            .load(conn)?;
        refuse_newer(&applied)?;
        if applied.len() == known()?.len()
            && is_there(conn, "SELECT to_regclass('keys') IS NOT NULL AS yes")?
        {
            return Ok(()); // the role of the service may do no more than look
        }
    }
    if !is_there(
        conn,
        "SELECT has_schema_privilege(current_schema(), 'CREATE') AS yes",
    )? {
        return Err(Error::Address(
            "the record is not there yet, or of an earlier version of this program, and the role that was given may not change its tables. Run `gambrel upgrade --database … --service-role …` once as the role that owns them.".into(),
        ));
    }
    conn.run_pending_migrations(MIGRATIONS)
        .map_err(|error| Error::Broken(format!("the migrations failed: {error}")))?;
    // What the portable tree cannot say. The foreign keys of stops were looked up row by row, which took twice as long
    // as to write them: they are asked once for all of them as they are written (`stops::place`), and by `check`. Pages
    // of lots keep room, for their totals change with every deed.
    Ok(conn.batch_execute(
        "CREATE SEQUENCE IF NOT EXISTS keys MINVALUE 1;
         ALTER TABLE stops DROP CONSTRAINT IF EXISTS stops_deed_id_fkey;
         ALTER TABLE stops DROP CONSTRAINT IF EXISTS stops_lot_id_fkey;
         ALTER TABLE lots SET (fillfactor = 85)",
    )?)
}
