//! PostgreSQL with least rights: the service works all day as a role that owns nothing, and what it signs in with can
//! take nothing out of the record.

use serde_json::json;
use std::path::Path;
use std::process::{Command, Output};
use stories::call::fresh_id;
use stories::house::{binary, fresh_database};
use stories::{Engine, House};

fn psql(database: &str, sql: &str) -> Result<String, String> {
    let out = Command::new("psql")
        .args([
            database,
            "-q",
            "-A",
            "-t",
            "-v",
            "ON_ERROR_STOP=1",
            "-c",
            sql,
        ])
        .output()
        .expect("psql runs");
    match out.status.success() {
        true => Ok(String::from_utf8_lossy(&out.stdout).trim().to_owned()),
        false => Err(String::from_utf8_lossy(&out.stderr).into_owned()),
    }
}

fn gambrel(args: &[&str]) -> Output {
    Command::new(binary())
        .args(args)
        .output()
        .expect("the binary runs")
}

/// A database as `deploy/postgresql.sql` makes it, with names of its own: as its administrator, its owner, the service.
pub(super) fn made() -> [String; 3] {
    let name = format!("k{}", fresh_id().replace('-', ""));
    let scratch = fresh_database(Engine::Postgres, Path::new("."));
    let (front, _) = scratch.rsplit_once('/').unwrap();
    let script = include_str!("../../../deploy/postgresql.sql");
    let script = script.replace("gambrel_owner", &format!("{name}_owner"));
    let mut sql = String::new();
    for line in script.lines().filter(|line| !line.starts_with("--")) {
        // The words of the script that name the database and the service.
        let words = line
            .split(' ')
            .map(|word| match word.trim_end_matches(';') {
                "gambrel" => word.replace("gambrel", &name),
                _ => word.to_owned(),
            });
        sql += &words.collect::<Vec<_>>().join(" ");
        sql.push('\n');
    }
    let file = std::env::temp_dir().join(format!("{name}.sql"));
    std::fs::write(&file, sql).unwrap();
    let out = Command::new("psql")
        .args([
            &scratch,
            "-q",
            "-v",
            "ON_ERROR_STOP=1",
            "-v",
            "owner='o'",
            "-v",
            "service='s'",
            "-f",
        ])
        .arg(&file)
        .output()
        .unwrap();
    let _ = std::fs::remove_file(&file);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );
    let (scheme, host) = front.split_once("://").unwrap();
    let (admin, host) = host.split_once('@').unwrap();
    let role = |role: &str| format!("{scheme}://{role}@{host}/{name}");
    [
        role(admin),
        role(&format!("{name}_owner:o")),
        role(&format!("{name}:s")),
    ]
}

/// The role that an address signs in as.
pub(super) fn role_of(address: &str) -> &str {
    let (_, rest) = address.split_once("://").unwrap();
    rest.split([':', '@']).next().unwrap()
}

#[test]
fn the_service_works_as_a_role_that_owns_nothing() {
    let [admin, owner, service] = made();
    let role = role_of(&service);
    // Not before the owner has made the tables.
    let out = gambrel(&["check", "--database", &service]);
    let says = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(
        !out.status.success() && says.contains("gambrel upgrade"),
        "{says}"
    );
    let out = gambrel(&["upgrade", "--database", &owner, "--service-role", role]);
    assert!(
        out.status.success(),
        "{}",
        String::from_utf8_lossy(&out.stderr)
    );

    let mut house = House::at(Engine::Postgres, &service, &[]);
    house.furnish();
    let caller = house.caller();
    let pig = caller.half_pig("0608-17", 20_000);
    let receipt = caller.lot(&pig)["made_by_step"]
        .as_str()
        .unwrap()
        .to_owned();
    let cut = json!({ "kind": "cut", "place": "bench", "inputs": [{ "lot": pig, "grams": 2_000 }],
        "outputs": [{ "product": "pork-chop", "grams": 1_900, "pack_count": 4 }] });
    let chops = caller.deed("/api/steps", cut).expect(201).code(0);
    let document = json!({ "lot": chops });
    let given = caller.deed("/api/label-documents", document);
    assert!(given.status == 201 || given.status == 409, "{}", given.body);
    let held = json!({ "lots": [{ "lot": chops, "packs": [1] }], "why": "its seal leaks" });
    caller.deed("/api/holds", held.clone()).expect(201);
    caller.deed("/api/hold-releases", held).expect(201);
    let gone = json!({ "kind": "discard", "lot": chops, "pack": 2, "why": "fell" });
    let gone = caller.deed("/api/departures", gone).expect(201).body["id"].clone();
    let void = format!("/api/steps/{}/void", gone.as_str().unwrap());
    caller
        .deed(&void, json!({ "why": "the other one" }))
        .expect(201);
    let right = json!({ "step": receipt, "animal": { "carcass": "0608-18" }, "why": "misread" });
    caller.deed("/api/corrections", right).expect(201);
    let paper = format!(
        "/api/papers?id={}&of={receipt}&kind=certificate&by=Cook",
        fresh_id()
    );
    caller
        .post_bytes(&paper, "application/pdf", b"%PDF-1.4\n%%EOF\n")
        .expect(201);
    let person = json!({ "name": "Ada Fell", "roles": ["cook"], "pin": "4826" });
    let made = caller.post("/api/people", &person).expect(201).body["id"].clone();
    let signed = json!({ "person": "Ada Fell", "pin": "4826" });
    caller.post("/api/sessions", &signed).expect(201);
    let other = json!({ "name": "Ada Fell", "roles": ["counter"], "pin": "4826" });
    let path = format!("/api/people/{}", made.as_str().unwrap());
    caller.put_over(&path, "\"v1\"", &other).expect(200);
    house.check();

    // What the service signs in with takes nothing out, alters nothing and empties nothing.
    for sql in [
        "DROP TABLE lots",
        "ALTER TABLE deeds ADD COLUMN more TEXT",
        "CREATE TABLE mine (id INTEGER)",
        "TRUNCATE deeds CASCADE",
        "DELETE FROM deeds",
        "DELETE FROM lots",
        "DELETE FROM pack_events",
        "DELETE FROM papers",
        "UPDATE deeds SET person = 'Nobody'",
        "UPDATE answers SET body = ''",
        "UPDATE pack_events SET mg = 0",
        "UPDATE chain SET head = ''",
        "DELETE FROM chain",
        "ALTER TABLE chain DISABLE TRIGGER ALL",
    ] {
        let says = psql(&service, sql).expect_err(sql);
        assert!(
            says.contains("permission denied") || says.contains("must be owner"),
            "{sql}: {says}"
        );
    }

    // A newer program over an older record: the service says who has to upgrade it, and touches nothing.
    house.end();
    let last = "DELETE FROM __diesel_schema_migrations WHERE version = (SELECT MAX(version) FROM __diesel_schema_migrations)";
    let all = "SELECT COUNT(*) FROM __diesel_schema_migrations";
    let versions = psql(
        &admin,
        "SELECT MAX(version) FROM __diesel_schema_migrations",
    )
    .unwrap();
    psql(&admin, last).unwrap();
    let before = psql(&admin, all).unwrap();
    let out = gambrel(&["serve", "--listen", "127.0.0.1:0", "--database", &service]);
    let says = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(
        !out.status.success() && says.contains("gambrel upgrade"),
        "{says}"
    );
    assert_eq!(psql(&admin, all).unwrap(), before);
    psql(
        &admin,
        &format!("INSERT INTO __diesel_schema_migrations (version) VALUES ('{versions}')"),
    )
    .unwrap();
    // An older program over a newer record: refused too, with what to do.
    psql(
        &admin,
        "INSERT INTO __diesel_schema_migrations (version) VALUES ('99990101000000')",
    )
    .unwrap();
    let out = gambrel(&["check", "--database", &service]);
    let says = String::from_utf8_lossy(&out.stderr).into_owned();
    assert!(
        says.contains("newer version") && says.contains("Use that version"),
        "{says}"
    );
    psql(
        &admin,
        "DELETE FROM __diesel_schema_migrations WHERE version = '99990101000000'",
    )
    .unwrap();
}
