//! Grown records that are kept, and copied from the next time: a million lots take minutes to grow.
//!
//! `BENCH_GROWN` names the folder of those on SQLite; on PostgreSQL each is a database of its own beside the test's. They
//! are as old as the migrations and the family that they were grown with: thrown away by hand where those change.

use super::{App, Clock, Family, Grown, furnished, grow, open};
use std::path::{Path, PathBuf};
use std::process::Command;
use store::Address;
use stories::Engine;
use stories::house::fresh_database;

/// A service over a record with about that many lots.
pub fn grown(engine: Engine, folder: &Path, lots: usize) -> (App, Grown) {
    let Some(keep) = std::env::var_os("BENCH_GROWN").map(PathBuf::from) else {
        let app = furnished(engine, folder);
        let grown = grow(&app, lots);
        return (app, grown);
    };
    let address = match engine {
        Engine::Sqlite => {
            let kept = keep.join(format!("{lots}.db"));
            let path = folder.join("kitchen.db");
            if !kept.exists() {
                grow(&furnished(engine, folder), lots);
                store::copies::as_one_file(&path).expect("nobody has it open");
                std::fs::rename(&path, &kept).expect("the folder is there, on the same disk");
            }
            std::fs::copy(&kept, &path).expect("it is copied");
            path.display().to_string()
        }
        Engine::Postgres => {
            let kept = format!("grown_{lots}");
            if ask(&format!(
                "SELECT 1 FROM pg_database WHERE datname = '{kept}'"
            ))
            .is_empty()
            {
                let app = furnished(engine, folder);
                grow(&app, lots);
                let Address::Postgres(url) = app.store.address().clone() else {
                    unreachable!("it was opened there");
                };
                drop(app);
                ask(&format!("ALTER DATABASE {} RENAME TO {kept}", name(&url)));
            }
            let url = fresh_database(engine, folder);
            let copy = name(&url);
            ask(&format!("DROP DATABASE {copy}"));
            ask(&format!(
                "CREATE DATABASE {copy} TEMPLATE {kept} STRATEGY file_copy"
            ));
            url
        }
    };
    let address = Address::parse(&address).expect("an address");
    (open(&address, Clock::Machine), Grown::of(&Family::of(lots)))
}

fn name(url: &str) -> &str {
    url.rsplit('/').next().expect("the URL ends in a database")
}

/// Asks the server of the tests.
fn ask(sql: &str) -> String {
    let server = std::env::var("TEST_DATABASE_URL").expect("a PostgreSQL server");
    let done = Command::new("psql")
        .args([&server, "-qAt", "-c", sql])
        .output()
        .expect("psql is there");
    let error = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{sql}: {error}");
    String::from_utf8_lossy(&done.stdout).trim().to_owned()
}
