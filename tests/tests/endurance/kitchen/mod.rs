//! A kitchen that lives at random: the service in process on one side, the book on the other.

mod compare;
mod deeds;
mod proof;

use chrono::{DateTime, TimeDelta, Utc};
use gambrel::app::App;
use gambrel::body::parse;
use gambrel::caller::Caller;
use gambrel::deeds::{self as take, Done};
use gambrel::error::Error;
use gambrel::label_facts::templates;
use gambrel::lists::entry;
use gambrel::lists::kitchen;
use gambrel::world::Clock;
use rand::rngs::SmallRng;
use rand::{RngExt, SeedableRng};
use serde_json::{Value, json};
use stories::Engine;
use stories::furniture::furniture;
use stories::house::fresh_database;
use stories::oracle::Book;

/// One kitchen.
pub struct Kitchen {
    pub app: App,
    pub book: Book,
    pub random: SmallRng,
    now: DateTime<Utc>,
    /// Requests that were taken, to be sent again.
    taken: Vec<(&'static str, Value, String)>,
    /// Carcass numbers given out so far.
    carcasses: u32,
    /// Was the last deed asked about, and then told as it happened?
    told: bool,
    engine: Engine,
    _folder: tempfile::TempDir,
}

impl Kitchen {
    /// An empty, furnished kitchen.
    pub fn open(engine: Engine, seed: u64) -> Kitchen {
        let now: DateTime<Utc> = "2026-06-01T12:00:00Z".parse().unwrap();
        Kitchen::furnished(engine, seed, "us", now, &[])
    }

    /// An empty kitchen in a place at a time, with these products besides the furniture.
    pub fn furnished(
        engine: Engine,
        seed: u64,
        profile: &str,
        now: DateTime<Utc>,
        products: &[Value],
    ) -> Kitchen {
        let folder = tempfile::tempdir().unwrap();
        let address = store::Address::parse(&fresh_database(engine, folder.path())).unwrap();
        let record = store::Store::open(&address, true, 2).unwrap();
        let app = App::new(
            record,
            Clock::Stopped(now),
            "https://trace.test.example".into(),
            templates::load(None).unwrap().known,
            law::shipped().unwrap(),
        );
        let setup = json!({ "code": "CHK", "name": "Random", "time_zone": "America/New_York", "profile": profile, "languages": ["en"], "currency": "USD" });
        kitchen::put(&app, &read(&setup), None).unwrap();
        for (path, body) in furniture() {
            add(&app, path, &body);
        }
        for product in products {
            add(&app, "/api/products", product);
        }
        let random = SmallRng::seed_from_u64(seed);
        Kitchen {
            app,
            book: Book::default(),
            random,
            now,
            taken: Vec::new(),
            carcasses: 0,
            told: false,
            engine,
            _folder: folder,
        }
    }

    /// One deed, good or bad.
    pub fn live(&mut self) {
        self.now += TimeDelta::minutes(self.random.random_range(1..600));
        self.app.clock = Clock::Stopped(self.now);
        match self.random.random_range(0..100) {
            0..14 => self.receive(),
            14..48 => self.step(),
            48..62 => self.depart(),
            62..66 => self.take_back(),
            66..71 => self.weigh(),
            71..76 => self.count(),
            76..82 => self.relocate(),
            82..89 => self.void(),
            89..92 => self.correct(),
            92..96 => self.again(),
            _ => self.nonsense(),
        }
    }

    /// Sends a deed; the codes of the lots it answers, or none where it is refused. What the book
    /// foretells must come true.
    pub fn send(
        &mut self,
        path: &'static str,
        mut body: Value,
        foretold: bool,
    ) -> Option<(String, Vec<String>)> {
        let id = format!(
            "00000000-0000-4000-8000-{:012x}",
            self.random.random_range(1_u64..1 << 48)
        );
        body["id"] = json!(id);
        body["by"] = json!("Cook");
        let mut done = act(&self.app, path, &body);
        self.told = foretold
            && done
                .as_ref()
                .is_err_and(|error| error.problem().may_be_told);
        if self.told {
            // A limit is asked about once; what was done is then told as it happened.
            body["as_it_happened"] = json!(true);
            body["note"] = json!("It was done.");
            done = act(&self.app, path, &body);
        }
        match (done, foretold) {
            (Ok(done), true) => {
                let answer: Value = serde_json::from_str(&done.body).unwrap();
                let codes = answer["lots"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .map(|lot| lot["code"].as_str().unwrap().to_owned())
                    .collect();
                self.taken.push((path, body, done.body));
                Some((id, codes))
            }
            (Err(error), false) => {
                assert!(
                    (400..500).contains(&error.problem().status.as_u16()),
                    "{error}"
                );
                None
            }
            (Ok(done), false) => panic!("{path} {body} was to be refused: {}", done.body),
            (Err(error), true) => panic!("{path} {body} was to be taken: {error:?}"),
        }
    }

    /// The same again changes nothing; the same id with another body is refused.
    fn again(&mut self) {
        if self.taken.is_empty() {
            return;
        }
        let nth = self.random.random_range(0..self.taken.len());
        let (path, body, answer) = self.taken[nth].clone();
        assert_eq!(act(&self.app, path, &body).unwrap().body, answer);
        let mut other = body.clone();
        other["by"] = json!("Somebody else");
        assert_eq!(
            act(&self.app, path, &other).unwrap_err().problem().status,
            409
        );
    }
}

/// Grams as JSON, from milligrams.
pub fn grams(mg: i64) -> Value {
    serde_json::from_str(&format!("{}.{:03}", mg / 1_000, mg % 1_000)).unwrap()
}

fn read<T: serde::de::DeserializeOwned>(body: &Value) -> T {
    parse(body.to_string().as_bytes()).unwrap()
}

fn add(app: &App, path: &str, body: &Value) {
    use gambrel::wire::lists::*;
    match path {
        "/api/farms" => entry::add::<FarmEntry>(app, &read(body)).map(drop),
        "/api/abattoirs" => entry::add::<AbattoirEntry>(app, &read(body)).map(drop),
        "/api/suppliers" => entry::add::<SupplierEntry>(app, &read(body)).map(drop),
        "/api/places" => entry::add::<PlaceEntry>(app, &read(body)).map(drop),
        _ => entry::add::<ProductEntry>(app, &read(body)).map(drop),
    }
    .unwrap();
}

/// As the routes do: parse, then act.
pub fn act(app: &App, path: &str, body: &Value) -> Result<Done, Error> {
    let bytes = body.to_string().into_bytes();
    match path {
        "/api/receipts" => take::receive::take(&Caller::new(app), &parse(&bytes)?),
        "/api/steps" => take::step::take(&Caller::new(app), &parse(&bytes)?),
        "/api/moves" => take::relocate::take(&Caller::new(app), &parse(&bytes)?),
        "/api/departures" => take::depart::take(&Caller::new(app), &parse(&bytes)?),
        "/api/take-backs" => take::take_back::take(&Caller::new(app), &parse(&bytes)?),
        "/api/readings" => take::measure::take(&Caller::new(app), &parse(&bytes)?),
        "/api/counts" => take::count::take(&Caller::new(app), &parse(&bytes)?),
        "/api/adoptions" => take::adopt::take(&Caller::new(app), &parse(&bytes)?),
        "/api/dispositions" => take::dispose::take(&Caller::new(app), &parse(&bytes)?),
        "/api/place-failures" => take::place::failed(&Caller::new(app), &parse(&bytes)?),
        "/api/label-documents" => take::hand_out::take(&Caller::new(app), &parse(&bytes)?),
        "/api/corrections" => take::correct::take(&Caller::new(app), &parse(&bytes)?),
        "void" => {
            let mut body = body.clone();
            let step: gambrel::wire::asked::Id = read(&body["step"].take());
            body.as_object_mut().unwrap().remove("step");
            take::void::take(
                &Caller::new(app),
                step,
                &parse(body.to_string().as_bytes())?,
            )
        }
        other => panic!("{other} is no call"),
    }
}
