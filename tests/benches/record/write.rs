//! The family as rows, by many-row inserts of plain SQL.

use super::Grown;
use super::family::{Event, Family, Lot, Of};
use diesel::connection::SimpleConnection;
use diesel::sql_types::Integer;
use diesel::{QueryableByName, RunQueryDsl, sql_query};
use std::fmt::Write;
use store::Conn;

/// Keys start here, above those of the kitchen's lists.
const FIRST: usize = 1_000_000;
const ROWS: usize = 500;
const DAY: &str = "2025-01-01";

#[derive(QueryableByName)]
struct Key {
    #[diesel(sql_type = Integer)]
    key: i32,
}

fn key(conn: &mut Conn, sql: &str) -> store::Result<i32> {
    let key: Key = match conn {
        Conn::Sqlite(conn) => sql_query(sql).get_result(conn)?,
        Conn::Pg(conn) => sql_query(sql).get_result(conn)?,
    };
    Ok(key.key)
}

fn run(conn: &mut Conn, sql: &str) -> store::Result<()> {
    match conn {
        Conn::Sqlite(conn) => conn.batch_execute(sql)?,
        Conn::Pg(conn) => conn.batch_execute(sql)?,
    }
    Ok(())
}

/// Inserts `items` as rows of `head`, each written by `row`.
fn insert<T>(
    conn: &mut Conn,
    table: &str,
    items: impl Iterator<Item = T>,
    row: impl Fn(usize, &T) -> String,
) -> store::Result<()> {
    let mut sql = String::new();
    let mut count = 0;
    for (nth, item) in items.enumerate() {
        let sep = if count == 0 { "" } else { "," };
        write!(sql, "{sep}({})", row(nth, &item)).expect("a string takes it");
        count += 1;
        if count == ROWS {
            run(conn, &format!("INSERT INTO {table} VALUES {sql}"))?;
            (sql, count) = (String::new(), 0);
        }
    }
    match count {
        0 => Ok(()),
        _ => run(conn, &format!("INSERT INTO {table} VALUES {sql}")),
    }
}

/// Writes the family down.
pub fn write(conn: &mut Conn, family: &Family) -> store::Result<()> {
    let sqlite = matches!(conn, Conn::Sqlite(_));
    let place = key(
        conn,
        "SELECT id AS key FROM entries WHERE list = 'places' AND code = 'case'",
    )?;
    let mut product = |code: &str| {
        let sql = format!(
            "SELECT version_id AS key FROM entries WHERE list = 'products' AND code = '{code}'"
        );
        key(conn, &sql)
    };
    let mut versions = Vec::new();
    for code in ["pig-half", "pork-chop", "sausage", "salt"] {
        versions.push((code, product(code)?));
    }
    let version = |code| {
        versions
            .iter()
            .find(|(known, _)| *known == code)
            .map_or(0, |(_, key)| *key)
    };
    // What is written here refers only to what is written here; nothing is lost if it breaks off.
    run(
        conn,
        if sqlite {
            "PRAGMA foreign_keys = OFF; PRAGMA synchronous = OFF; BEGIN"
        } else {
            "BEGIN; SET LOCAL session_replication_role = replica"
        },
    )?;
    let start = chrono::NaiveDate::from_ymd_opt(2025, 1, 1)
        .and_then(|day| day.and_hms_opt(8, 0, 0))
        .expect("a moment");
    let at = |deed: usize| start + chrono::TimeDelta::seconds(20 * deed as i64);
    insert(conn, "deeds", family.deeds.iter(), |nth, deed| {
        let uid = format!("{:032x}", FIRST + nth);
        let uid = if sqlite {
            format!("X'{uid}'")
        } else {
            format!("'\\x{uid}'")
        };
        let at = at(nth);
        format!(
            "{},{uid},'{}','{at}',NULL,'{at}','{}',FALSE,'Cook',{place},NULL,'{{}}'",
            FIRST + nth,
            deed.kind,
            at.date()
        )
    })?;
    insert(conn, "answers", family.deeds.iter(), |nth, _| {
        format!("{},'{{}}'", FIRST + nth)
    })?;
    let steps = family
        .deeds
        .iter()
        .enumerate()
        .filter_map(|(nth, deed)| Some((nth, deed.step?)));
    insert(conn, "steps", steps, |_, (nth, (loss, of_animals))| {
        format!("{},{loss},{of_animals}", FIRST + nth)
    })?;
    insert(conn, "animals", family.animals.iter(), |nth, lot| {
        let deed = family.lots[**lot].deed;
        let killed = at(deed).date();
        format!(
            "{},{},NULL,'BRC','pig','{killed}','DEMO-17','C{nth}',NULL,1",
            FIRST + nth,
            FIRST + deed
        )
    })?;
    insert(conn, "lots", family.lots.iter(), |nth, lot| {
        lot_row(nth, lot, version(lot.product), place, &at(lot.deed))
    })?;
    insert(conn, "packs", family.lots.iter(), |nth, lot| {
        pack_row(nth, lot, place)
    })?;
    insert(conn, "pack_events", family.events.iter(), |nth, event| {
        event_row(nth, event)
    })?;
    let received = family
        .animals
        .iter()
        .chain(&family.salts)
        .chain(&family.spices);
    insert(conn, "sources", received, |nth, lot| {
        let of = &family.lots[**lot];
        let from = match of.of {
            Of::Animal(animal) => format!("{},NULL,NULL,NULL", FIRST + animal),
            _ => format!("NULL,NULL,'PTS','S-{nth}'"),
        };
        format!(
            "{},{},{},TRUE,{from},NULL,NULL,NULL",
            FIRST + nth,
            FIRST + **lot,
            FIRST + of.deed
        )
    })?;
    insert(conn, "series", family.series.iter(), |nth, (key, next)| {
        format!("{},'{key}',{next}", FIRST + nth)
    })?;
    let next = FIRST
        + family
            .deeds
            .len()
            .max(family.lots.len())
            .max(family.events.len())
        + 1;
    if sqlite {
        run(conn, &format!("UPDATE counters SET next = {next}; COMMIT"))?;
        run(conn, "PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON")?;
        // One commit of a whole record leaves a log that a kitchen's deeds never do.
        run(conn, "PRAGMA wal_checkpoint(TRUNCATE)")?;
    } else {
        run(
            conn,
            &format!("SELECT setval('keys', {next} / 1024 + 1); COMMIT"),
        )?;
        run(conn, "VACUUM ANALYZE")?; // what the server does by itself within minutes
    }
    Ok(())
}

impl Grown {
    /// What to ask about a family that was written down.
    pub fn of(family: &Family) -> Grown {
        let some = |lots: &[usize]| (FIRST + lots[lots.len() / 2]) as i32;
        Grown {
            lots: family.lots.len(),
            animal: some(&family.animals),
            animals: family
                .animals
                .iter()
                .map(|of| (FIRST + of) as i32)
                .collect(),
            // Of the middle of the record, where what was made of it is whole.
            spice: some(&family.spices),
            spices: family
                .later_spices()
                .map(|of| (FIRST + of) as i32)
                .collect(),
            salt: (FIRST + family.salts[0]) as i32,
            pack: (FIRST + family.packs[family.packs.len() - 1]) as i32,
            codes: family
                .packs
                .iter()
                .map(|lot| family.lots[*lot].code.to_string())
                .collect(),
        }
    }
}

fn lot_row(nth: usize, lot: &Lot, version: i32, place: i32, at: &chrono::NaiveDateTime) -> String {
    let (id, deed, code) = (FIRST + nth, FIRST + lot.deed, &lot.code);
    let (origin, animal, species) = match lot.of {
        Of::Nothing => ("none", "NULL".to_owned(), ""),
        Of::Animal(animal) => ("one", (FIRST + animal).to_string(), "pig"),
        Of::Animals => ("mixed", "NULL".to_owned(), "pig"),
    };
    let Lot {
        made,
        used,
        sold,
        events,
        ..
    } = lot;
    let (seq, left, sold_packs) = (events + 1, made - used - sold, u8::from(*sold > 0));
    format!(
        "{id},'{code}',{deed},{version},'{at}',{made},1,'{origin}',{animal},'','{species}',NULL,{place},'chilled',NULL,NULL,\
         FALSE,{seq},{left},{used},{sold},{sold_packs},0,0,0,0,0,0,0,NULL,NULL,FALSE"
    )
}

fn pack_row(nth: usize, lot: &Lot, place: i32) -> String {
    let (id, made, left) = (FIRST + nth, lot.made, lot.made - lot.used - lot.sold);
    let being = match (left, lot.sold, lot.used) {
        (0, 0, _) => "used",
        (0, _, _) => "sold",
        (_, _, 0) => "on-hand",
        _ => "open",
    };
    format!("{id},{id},1,{made},{left},'{being}',{place},'chilled',NULL,NULL,FALSE,FALSE")
}

fn event_row(nth: usize, event: &Event) -> String {
    let (lot, deed, whole) = (
        FIRST + event.lot,
        FIRST + event.deed,
        event.account == "sold",
    );
    let (id, seq, account, mg) = (FIRST + nth, event.seq, event.account, event.mg);
    format!("{id},{deed},{lot},{lot},{seq},'{account}',{mg},{whole},NULL,NULL,'{DAY}'")
}
