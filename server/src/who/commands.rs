//! The same on the terminal: whoever can open the record can say who its people are.

use super::known::Person;
use super::people::{self, NewToken, Told};
use crate::app::App;
use crate::config::{PeopleArgs, PeopleCommand, TokenArgs};
use crate::world::Clock;
use chrono::{DateTime, NaiveDateTime};
use domain::right::Role;
use law::Shipped;
use std::collections::BTreeMap;
use store::Store;

/// What is said on standard output.
type Says = Result<String, String>;

/// Lists the people, adds one, or gives one a word that signs them in once.
///
/// # Errors
/// In words: the record cannot be opened, or nobody has that name.
pub fn people(args: &PeopleArgs, law: Shipped) -> Says {
    let app = open(&args.database, law)?;
    let known = app.people();
    let written = match &args.command {
        None => return Ok(known.people.iter().map(line).collect::<Vec<_>>().join("\n")),
        Some(PeopleCommand::Add { name, role }) => {
            let told = Told {
                name: people::name(name).map_err(|error| error.to_string())?,
                roles: vec![self::role(role)?],
                active: true,
                ..Told::default()
            };
            people::add(&app, &told)
        }
        Some(PeopleCommand::Word { name }) => {
            let person = known.named(name);
            let person = person.ok_or_else(|| format!("nobody is called {name:?}"))?;
            let told = Told {
                active: true,
                word: true,
                ..Told::of(person)
            };
            people::change(&app, person.uid(), &told, person.row.number)
        }
    };
    let written = written.map_err(|error| error.to_string())?;
    Ok(written.word.unwrap_or_default())
}

fn line(person: &Person) -> String {
    let roles: Vec<&str> = person.roles.iter().map(|role| role.as_str()).collect();
    let stands = match (person.row.active, person.row.pin.is_some()) {
        (false, _) => ", may not sign in",
        (true, true) => "",
        (true, false) => ", has no PIN yet",
    };
    format!("{}: {}{stands}", person.row.name, roles.join(", "))
}

/// Makes a token; it is said once.
///
/// # Errors
/// In words: the record cannot be opened, or the end is no time.
pub fn token(args: &TokenArgs, law: Shipped) -> Says {
    let app = open(&args.database, law)?;
    let until = args.until.as_deref().map(moment).transpose()?;
    let name = people::name(&args.name).map_err(|error| error.to_string())?;
    let asked = NewToken {
        name: &name,
        role: role(&args.role)?,
        until,
        speaks: args.speaks_for_others,
    };
    let given = people::give_token(&app, &asked, "terminal");
    let (_, token) = given.map_err(|error| error.to_string())?;
    Ok(token)
}

fn role(text: &str) -> Result<Role, String> {
    let known = Role::SPELT.join(", ");
    Role::parse(text).ok_or_else(|| format!("{text:?} is no role; there are {known}"))
}

fn moment(text: &str) -> Result<NaiveDateTime, String> {
    let read = DateTime::parse_from_rfc3339(text);
    let why = |_| format!("{text:?} is not a time; write it like 2027-01-31T18:00:00-05:00");
    Ok(read.map_err(why)?.naive_utc())
}

fn open(database: &crate::config::DatabaseArgs, law: Shipped) -> Result<App, String> {
    let place = database.resolve(false)?;
    let store = Store::open(&place.address, false, 2).map_err(|error| error.to_string())?;
    let app = App::new(store, Clock::Machine, String::new(), BTreeMap::new(), law);
    let learnt = app.store.look(|conn| app.learn_people(conn));
    learnt.map_err(|error| error.to_string())?;
    Ok(app)
}
