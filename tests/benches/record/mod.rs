//! Records to measure on: the furnished kitchen, and a large invented family of lots within it.

mod family;
mod kept;
mod write;

use family::Family;
use gambrel::app::App;
use gambrel::lists::entry::{self, Entry};
use gambrel::lists::kitchen;
use gambrel::wire::lists::{AbattoirEntry, FarmEntry, PlaceEntry, ProductEntry, SupplierEntry};
use gambrel::world::Clock;
#[allow(unused_imports, reason = "not every bench keeps what it grew")]
pub use kept::grown;
use serde_json::{Value, json};
use std::path::Path;
use store::{Address, Store};
use stories::Engine;
use stories::furniture::furniture;
use stories::house::fresh_database;

/// A service over a fresh record with the small kitchen in it.
pub fn furnished(engine: Engine, folder: &Path) -> App {
    let address = Address::parse(&fresh_database(engine, folder)).expect("an address");
    let app = open(&address, Clock::Machine);
    let kitchen = json!({ "code": "CHK", "name": "Test Kitchen", "time_zone": "America/New_York", "profile": "us",
        "languages": ["en", "fr"], "currency": "USD", "public_url": "https://trace.test.example" });
    kitchen::put(&app, &read(&kitchen), None).expect("the kitchen is taken");
    for (path, body) in furniture() {
        match path {
            "/api/farms" => add::<FarmEntry>(&app, &body),
            "/api/abattoirs" => add::<AbattoirEntry>(&app, &body),
            "/api/suppliers" => add::<SupplierEntry>(&app, &body),
            "/api/places" => add::<PlaceEntry>(&app, &body),
            "/api/products" => add::<ProductEntry>(&app, &body),
            other => panic!("the furniture has {other}"),
        }
    }
    app
}

/// A service over a record.
pub fn open(address: &Address, clock: Clock) -> App {
    let store = Store::open(address, true, 16).expect("the record opens");
    let templates = gambrel::label_facts::templates::load(None).expect("templates parse");
    let templates = templates.known;
    App::new(
        store,
        clock,
        "http://127.0.0.1".into(),
        templates,
        law::shipped().expect("the law reads"),
    )
}

fn add<E: Entry>(app: &App, body: &Value) {
    entry::add(app, &read::<E>(body)).unwrap_or_else(|error| panic!("{body}: {error:?}"));
}

/// Reads JSON as a call would.
pub fn read<T: serde::de::DeserializeOwned>(body: &Value) -> T {
    gambrel::body::parse(body.to_string().as_bytes()).expect("it reads")
}

/// The database engines that are available.
pub fn engines() -> Vec<Engine> {
    let postgres = std::env::var_os("TEST_DATABASE_URL").map(|_| Engine::Postgres);
    std::iter::once(Engine::Sqlite).chain(postgres).collect()
}

/// What to ask about in a grown record: keys and codes.
pub struct Grown {
    /// How many lots there are.
    pub lots: usize,
    /// The received lot of an animal in the middle.
    pub animal: i32,
    /// The received lots of all animals.
    #[allow(dead_code, reason = "not every bench asks for more than one")]
    pub animals: Vec<i32>,
    /// A lot of spice.
    pub spice: i32,
    /// Lots of spice that went into what the first salt did not.
    #[allow(dead_code, reason = "not every bench asks for more than one")]
    pub spices: Vec<i32>,
    /// A lot of salt.
    pub salt: i32,
    /// A pack made of a batch.
    pub pack: i32,
    /// The codes of all packs for sale.
    #[allow(dead_code, reason = "not every bench asks by code")]
    pub codes: Vec<String>,
}

/// Grows a family of about that many lots in a furnished record, by raw SQL.
pub fn grow(app: &App, lots: usize) -> Grown {
    let family = Family::of(lots);
    app.store
        .look(|conn| write::write(conn, &family))
        .expect("the rows are taken");
    Grown::of(&family)
}
