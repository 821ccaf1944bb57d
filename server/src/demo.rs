//! The demo kitchen: an invented story, recorded through the same deeds as anybody's.

use crate::app::App;
use crate::body::parse;
use crate::caller::Caller;
use crate::config::DatabaseArgs;
use crate::deeds::{self, Done};
use crate::error::Result;
use crate::lists::entry::{self, Entry};
use crate::lists::kitchen;
use crate::who::{self, people::Told};
use crate::world::Clock;
use chrono::{DateTime, Utc};
use domain::print::{Heard, JobState};
use domain::right::Role;
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::collections::HashMap;
use std::path::Path;
use store::Address;
use uuid::Uuid;

const STORY: &str = include_str!("../demo/cinderhook.json");

/// When the demo's clock starts.
const NOW: &str = "2026-06-26T10:40:00-04:00";

#[derive(Deserialize)]
struct Story {
    kitchen: Value,
    lists: Vec<Call>,
    deeds: Vec<Deed>,
}

#[derive(Deserialize)]
struct Call {
    call: String,
    body: Value,
}

#[derive(Deserialize)]
struct Deed {
    story: String,
    call: String,
    /// Of a void: `{ "id": "@step:NAME" }`.
    #[serde(default)]
    path: Value,
    body: Value,
    #[serde(default)]
    makes: Vec<String>,
}

/// The moment at which the demo's clock starts.
pub fn now() -> DateTime<Utc> {
    NOW.parse::<DateTime<chrono::FixedOffset>>()
        .expect("the moment is written right")
        .to_utc()
}

/// Where the demo's record goes: a fresh file, or a PostgreSQL database that is still empty.
///
/// # Errors
/// In words: a file was named, and the demo is not to write into anybody's record.
pub fn place(
    args: &DatabaseArgs,
    folder: &Path,
) -> std::result::Result<crate::config::Where, String> {
    let address = match &args.database {
        None => Address::Sqlite(folder.join("demo.db")),
        Some(text) => match Address::parse(text).map_err(|error| error.to_string())? {
            Address::Sqlite(path) if path.exists() => {
                return Err(format!(
                    "--demo makes a fresh record; {} is there already. Leave --database out.",
                    path.display()
                ));
            }
            address => address,
        },
    };
    Ok(crate::config::Where {
        address,
        create: true,
    })
}

/// Tells the story to an empty record; five things to try come back.
///
/// # Errors
/// In words: the record is not empty, or a deed of the story was refused.
pub fn build(app: &mut App) -> std::result::Result<Vec<String>, String> {
    let story: Story =
        serde_json::from_str(STORY).map_err(|error| format!("the demo does not parse: {error}"))?;
    let last = app
        .store
        .look(store::deeds::last_recorded_at)
        .map_err(|error| error.to_string())?;
    if last.is_some() {
        return Err("--demo needs an empty database; this one holds a record.".into());
    }
    let end = app.clock;
    let codes = tell(app, &story)
        .map_err(|(what, error)| format!("the demo's {what} was refused: {error}"))?;
    app.clock = end;
    let mut lines = vec![];
    lines.extend(people(app).map_err(|error| format!("the demo's people: {error}"))?);
    let code = |name: &str| codes.get(name).cloned().unwrap_or_default();
    lines.splice(
        0..0,
        [
            format!(
                "1. {{address}}/lots/{} - the half pig of the recall: where it went, lot by lot",
                code("S10")
            ),
            format!(
                "2. {{address}}/counter?code={} - what the counter is told about the bacon",
                code("L13")
            ),
            format!(
                "3. {{address}}/api/lots/{}/labels.pdf - the labels of the rillettes on hand",
                code("L31")
            ),
            format!(
                "4. {{address}}/lots/{}/break-down - a side on the rail, to be cut up cut by cut (sign in first)",
                code("S16")
            ),
            format!(
                "5. {{address}}/make/cure?lot={} - a pork belly on hand, to be put in cure (sign in first)",
                code("BEL-0626")
            ),
        ],
    );
    Ok(lines)
}

/// Who works in the demo kitchen, with the PINs that anybody may know.
const PEOPLE: [(&str, Role, &str); 5] = [
    ("Oda Marsh", Role::Manager, "2580"),
    ("Jory Abend", Role::Cook, "1470"),
    ("Pim Verrall", Role::Cook, "3690"),
    ("Tamsin Roke", Role::Counter, "1593"),
    ("Lise Hartnoll", Role::Cook, "7410"),
];

/// Adds them; what is printed of them, and of a token for scripts.
fn people(app: &App) -> Result<Vec<String>> {
    let mut said = Vec::new();
    for (name, role, pin) in PEOPLE {
        let told = Told {
            name: name.to_owned(),
            roles: vec![role],
            pin: Some(pin.to_owned()),
            active: true,
            ..Told::default()
        };
        who::people::add(app, &told)?;
        said.push(format!("{name} ({role}, PIN {pin})"));
    }
    let asked = who::people::NewToken {
        name: "demo",
        role: Role::Manager,
        until: None,
        speaks: true,
    };
    let (_, token) = who::people::give_token(app, &asked, "demo")?;
    Ok(vec![
        format!("Sign in with a tap as one of {}.", said.join(", ")),
        format!("Scripts say: Authorization: Bearer {token}"),
    ])
}

fn tell(
    app: &mut App,
    story: &Story,
) -> std::result::Result<HashMap<String, String>, (String, Box<crate::error::Error>)> {
    let begin = story
        .deeds
        .first()
        .and_then(|deed| at(&deed.body))
        .unwrap_or_else(now);
    app.clock = Clock::Stopped(begin);
    let named = |what: &str| {
        let what = what.to_owned();
        move |error| (what, Box::new(error))
    };
    put_kitchen(app, &story.kitchen).map_err(named("kitchen"))?;
    for call in &story.lists {
        list(app, &call.call, &call.body).map_err(named(&call.body.to_string()))?;
    }
    let mut codes = HashMap::new();
    for deed in &story.deeds {
        let mut body = deed.body.clone();
        resolve(&mut body, &codes);
        let mut path = deed.path.clone();
        resolve(&mut path, &codes);
        body["id"] = Value::String(id(&deed.story).to_string());
        // Each deed is entered when it happens.
        app.clock = Clock::Stopped(at(&deed.body).unwrap_or(begin));
        let done = act(app, &deed.call, &path, &body).map_err(named(&deed.story))?;
        let answer: Value = serde_json::from_str(&done.body).unwrap_or_default();
        for (name, lot) in deed
            .makes
            .iter()
            .zip(answer["lots"].as_array().into_iter().flatten())
        {
            codes.insert(
                name.clone(),
                lot["code"].as_str().unwrap_or_default().to_owned(),
            );
        }
    }
    Ok(codes)
}

fn at(body: &Value) -> Option<DateTime<Utc>> {
    Some(
        DateTime::parse_from_rfc3339(body["at"].as_str()?)
            .ok()?
            .to_utc(),
    )
}

/// A deed's id follows from its name in the story, so that every run of the demo has the same.
fn id(story: &str) -> Uuid {
    Uuid::new_v5(&Uuid::NAMESPACE_OID, story.as_bytes())
}

/// Puts codes for the story's names: `@S10`, `@L13/2`.
fn resolve(value: &mut Value, codes: &HashMap<String, String>) {
    match value {
        Value::String(text) => {
            if let Some(name) = text.strip_prefix("@step:") {
                *text = id(name).to_string();
            } else if let Some(name) = text.strip_prefix('@') {
                let (name, pack) = name
                    .split_once('/')
                    .map_or((name, None), |(name, pack)| (name, Some(pack)));
                let code = codes.get(name).cloned().unwrap_or_default();
                *text = pack.map_or(code.clone(), |pack| format!("{code}/{pack}"));
            }
        }
        Value::Array(values) => values.iter_mut().for_each(|value| resolve(value, codes)),
        Value::Object(fields) => fields.values_mut().for_each(|value| resolve(value, codes)),
        _ => {}
    }
}

fn read<T: DeserializeOwned>(body: &Value) -> Result<T> {
    parse(body.to_string().as_bytes())
}

fn put_kitchen(app: &App, body: &Value) -> Result<()> {
    kitchen::put(app, &read(body)?, None)?;
    Ok(())
}

fn list(app: &App, call: &str, body: &Value) -> Result<()> {
    use crate::wire::lists::*;
    fn add<E: Entry>(app: &App, body: &Value) -> Result<()> {
        entry::add(app, &read::<E>(body)?)?;
        Ok(())
    }
    match call {
        "POST /api/farms" => add::<FarmEntry>(app, body),
        "POST /api/abattoirs" => add::<AbattoirEntry>(app, body),
        "POST /api/suppliers" => add::<SupplierEntry>(app, body),
        "POST /api/places" => add::<PlaceEntry>(app, body),
        "POST /api/products" => add::<ProductEntry>(app, body),
        "POST /api/recipes" => add::<RecipeEntry>(app, body),
        "POST /api/printers" => add::<PrinterEntry>(app, body),
        other => {
            Err(store::Error::Broken(format!("the demo calls {other}, which is no list")).into())
        }
    }
}

fn act(app: &App, call: &str, path: &Value, body: &Value) -> Result<Done> {
    match call {
        "POST /api/receipts" => deeds::receive::take(&Caller::new(app), &read(body)?),
        "POST /api/steps" => deeds::step::take(&Caller::new(app), &read(body)?),
        "POST /api/moves" => deeds::relocate::take(&Caller::new(app), &read(body)?),
        "POST /api/departures" => deeds::depart::take(&Caller::new(app), &read(body)?),
        "POST /api/take-backs" => deeds::take_back::take(&Caller::new(app), &read(body)?),
        "POST /api/adoptions" => deeds::adopt::take(&Caller::new(app), &read(body)?),
        "POST /api/steps/{id}/void" => {
            deeds::void::take(&Caller::new(app), read(&path["id"])?, &read(body)?)
        }
        "POST /api/readings" => deeds::measure::take(&Caller::new(app), &read(body)?),
        "POST /api/releases" => deeds::release::take(&Caller::new(app), &read(body)?),
        "POST /api/counts" => deeds::count::take(&Caller::new(app), &read(body)?),
        "POST /api/clean-downs" => deeds::clean_down::take(&Caller::new(app), &read(body)?),
        "POST /api/holds" => deeds::hold::place(&Caller::new(app), &read(body)?),
        "POST /api/prints" => {
            let done = deeds::print::take(&Caller::new(app), &read(body)?)?;
            came_out(app, &done)?;
            Ok(done)
        }
        "POST /api/corrections" => deeds::correct::take(&Caller::new(app), &read(body)?),
        other => {
            Err(store::Error::Broken(format!("the demo calls {other}, which is no deed")).into())
        }
    }
}

/// The demo has no printer that anybody could hear: in the story its labels came out.
fn came_out(app: &App, done: &Done) -> Result<()> {
    let answer: Value = serde_json::from_str(&done.body).unwrap_or_default();
    let numbers = answer["prints"].as_array().into_iter().flatten();
    let numbers = numbers.filter_map(|print| print["print"].as_i64());
    let numbers: Vec<i32> = numbers.filter_map(|of| i32::try_from(of).ok()).collect();
    let heard = [Heard::Turn, Heard::GoesOut, Heard::Job(JobState::Completed)];
    app.store.write(|tx| {
        for number in &numbers {
            let Some(print) = store::prints::by_key(tx.conn, *number)? else {
                continue;
            };
            let mut run = print.run;
            for one in heard {
                let next = run.with(run.known()?.after(one));
                let at = app.now().naive_utc();
                let changed = store::print_runs::change(tx, &run, &next, None, at)?;
                run = changed.ok_or_else(|| store::Error::Broken("a print of the demo".into()))?;
            }
        }
        Ok(())
    })
}
