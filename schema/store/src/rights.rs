//! What the role of the service may do in PostgreSQL: add to the record, and change what changes. It owns no table, so it
//! can neither alter nor drop one; deeds, events and the chain it can only add to.

use crate::address::Address;
use crate::carry;
use crate::conn::Conn;
use crate::db::Store;
use crate::error::{Error, Result};
use diesel::connection::SimpleConnection;

/// Tables of which rows are changed: what is left of a lot, how far a label has come, who is signed in.
const CHANGED: [&str; 12] = [
    "counters",
    "entries",
    "lots",
    "packs",
    "people",
    "print_runs",
    "printer_leases",
    "record_leases",
    "series",
    "sessions",
    "sources",
    "tokens",
];
/// Tables of which rows are taken away: marks that are judged anew, what papers held that nobody has to keep, and
/// what is told of copies long ago.
const TAKEN_AWAY: [&str; 6] = [
    "chain_due",
    "copies",
    "label_truths",
    "paper_parts",
    "person_roles",
    "wrong_labels",
];

/// Brings a record up to this version, as the role that owns it, and gives a role the rights of the service.
///
/// # Errors
/// It is no record on PostgreSQL, the role does not exist, or the database is away.
pub fn upgrade(address: &Address, service: Option<&str>) -> Result<()> {
    let store = Store::open(address, false, 1)?;
    let Some(role) = service else { return Ok(()) };
    if !matches!(address, Address::Postgres(_)) {
        let says = "only a record on PostgreSQL has roles: leave --service-role out";
        return Err(Error::Address(says.into()));
    }
    drop(store);
    let mut conn = Conn::open(address)?;
    Ok(conn.batch_execute(&statements(role))?)
}

/// The rights, as one transaction.
fn statements(role: &str) -> String {
    let role = format!("\"{}\"", role.replace('"', "\"\""));
    let mut sql = format!(
        "BEGIN;
         REVOKE ALL ON ALL TABLES IN SCHEMA public FROM {role};
         REVOKE ALL ON SCHEMA public FROM {role};
         REVOKE CREATE ON SCHEMA public FROM PUBLIC;
         GRANT USAGE ON SCHEMA public TO {role};
         GRANT SELECT ON __diesel_schema_migrations TO {role};
         GRANT USAGE, SELECT ON SEQUENCE keys TO {role};\n"
    );
    for table in carry::every() {
        let mut rights = String::from("SELECT, INSERT");
        if CHANGED.contains(&table.name) {
            rights += ", UPDATE";
        }
        if TAKEN_AWAY.contains(&table.name) {
            rights += ", DELETE";
        }
        sql += &format!("GRANT {rights} ON {} TO {role};\n", table.name);
    }
    sql + "COMMIT"
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_table_that_is_named_is_one_and_the_chain_only_grows() {
        let known: Vec<&str> = carry::every().map(|table| table.name).collect();
        for table in CHANGED.iter().chain(&TAKEN_AWAY) {
            assert!(known.contains(table), "{table}");
        }
        let sql = statements("ser\"vice");
        assert!(sql.contains("GRANT SELECT, INSERT ON chain TO \"ser\"\"vice\";"));
        assert!(sql.contains("GRANT SELECT, INSERT ON deeds TO"));
        assert!(sql.contains("GRANT SELECT, INSERT ON pack_events TO"));
    }
}
