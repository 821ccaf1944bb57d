//! What every request shares: the record, the clock, the label templates, and parsed list entries.

use crate::addresses::Addresses;
use crate::cached::cached;
use crate::clock::Clockwork;
use crate::copies::timetable::Copying;
use crate::door::hosts::Hosts;
use crate::error::{Error, Problem, Result};
use crate::lists::kitchen::Kitchen;
use crate::lists::standing::Standing;
use crate::printing::Bell;
use crate::printing::seen::Seen;
use crate::problems::{LabelsSays, ServiceSays, TitleSays};
use crate::read::scope::Lately;
use crate::who::known::Known;
use crate::who::lockout::Lockout;
use crate::wire::lists::ProductEntry;
use crate::world::{Clock, Stopwatch};
use actix_web::http::StatusCode;
use chrono::{DateTime, NaiveDateTime, TimeDelta, Utc};
use domain::law::Laws;
use domain::limits::CLOCK_SLACK_MINUTES;
use domain::product::Product;
use domain::rows::RowId;
use domain::says::Arg;
use labels::{Sheet, Template};
use law::Shipped;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::sync::{Arc, Mutex, PoisonError, RwLock};
use store::clock::Recorded;
use store::entries::Stamp;
use store::family::Products;
use store::{Conn, Store};

/// The running service.
pub struct App {
    /// The record.
    pub store: Store,
    /// The clock.
    pub clock: Clock,
    /// The address that codes hold where the kitchen's list names none.
    pub public_url: String,
    /// Label templates by name.
    pub templates: BTreeMap<String, Template>,
    /// Sheets of many labels, by name.
    pub sheets: BTreeMap<String, Sheet>,
    /// The law of each place and the facts of the trade, as they were read at the start.
    pub law: Shipped,
    /// Wakes those who print.
    pub bell: Bell,
    /// What each printer answered last.
    pub printers: Seen,
    /// The names that the service goes by.
    pub hosts: Hosts,
    /// The addresses that labels hold, and once held.
    pub addresses: Addresses,
    /// What is known of the clock.
    pub clockwork: Clockwork,
    /// Who has tried PINs in vain.
    pub lockout: Lockout,
    /// When the record was last asked for somebody whom nobody knew.
    pub looked_again: tokio::sync::Mutex<Option<Stopwatch>>,
    /// The authority that tablets are told to trust, if the kitchen has its own.
    pub authority: Option<String>,
    /// What is done about copies.
    pub copying: Copying,
    /// The scope that was listed last.
    pub listed: Lately,
    /// Is it the demo, where a tap is enough to sign in?
    pub demo: bool,
    /// Everybody, as they were read last.
    people: RwLock<Arc<Known>>,
    /// Held by whoever reads them anew.
    pub(crate) learning: Mutex<()>,
    /// List entries, parsed. A version never changes, so what is here is never stale.
    products: RwLock<HashMap<i32, Arc<Product>>>,
    kitchens: RwLock<HashMap<i32, Arc<Kitchen>>>,
    /// The kitchen as it was a moment ago, for scans.
    lately: RwLock<Option<(DateTime<Utc>, Arc<Kitchen>)>>,
    /// The lists as they stood when somebody asked last.
    standing: RwLock<Option<Arc<Standing>>>,
    /// The law by the rows that are confirmed.
    confirmed: RwLock<Vec<(BTreeSet<RowId>, &'static Laws)>>,
}

impl App {
    /// A service over an open record.
    pub fn new(
        store: Store,
        clock: Clock,
        public_url: String,
        templates: BTreeMap<String, Template>,
        law: Shipped,
    ) -> App {
        let addresses = Addresses::default();
        addresses.learn(&public_url);
        App {
            store,
            clock,
            public_url,
            addresses,
            templates,
            sheets: crate::label_facts::templates::sheets(),
            law,
            bell: Bell::default(),
            printers: Seen::default(),
            hosts: Hosts::default(),
            clockwork: Clockwork::default(),
            lockout: Lockout::default(),
            looked_again: tokio::sync::Mutex::default(),
            authority: None,
            copying: Copying::default(),
            listed: Lately::default(),
            demo: false,
            people: RwLock::default(),
            learning: Mutex::default(),
            products: RwLock::default(),
            kitchens: RwLock::default(),
            lately: RwLock::default(),
            standing: RwLock::default(),
            confirmed: RwLock::default(),
        }
    }

    /// The sheet of that name.
    ///
    /// # Errors
    /// 422 where there is none.
    pub fn sheet(&self, name: &str) -> Result<&Sheet> {
        self.sheets.get(name).ok_or_else(|| {
            let names = self.sheets.keys().map(|name| Arg::from(name.as_str()));
            let detail = LabelsSays::NoSheet {
                sheet: name.to_owned(),
                sheets: Arg::All(names.collect()),
            };
            Error::cannot_be("sheet", detail)
        })
    }

    /// Everybody, as they were read last.
    pub fn people(&self) -> Arc<Known> {
        let people = self.people.read().unwrap_or_else(PoisonError::into_inner);
        people.clone()
    }

    /// Keeps everybody as they were read just now.
    pub fn keep_people(&self, known: Known) {
        let mut people = self.people.write().unwrap_or_else(PoisonError::into_inner);
        *people = Arc::new(known);
    }

    /// Learns at the start what is looked up unasked: everybody, the kitchen, every address that labels may hold.
    ///
    /// # Errors
    /// The database is away, or the kitchen's entry is damaged.
    pub fn learn(&self, conn: &mut Conn) -> Result<()> {
        self.learn_people(conn)?;
        self.learn_clock(conn)?;
        self.kitchen(conn)?;
        crate::addresses::learn(self, conn)
    }

    /// May anybody ask what may be sold?
    pub fn scans_are_open(&self) -> bool {
        let kitchen = self.kitchen_seen();
        kitchen.is_some_and(|kitchen| kitchen.entry.open_scan == Some(true))
    }

    /// Now.
    pub fn now(&self) -> DateTime<Utc> {
        self.clock.now()
    }

    /// The product that a version of the list describes.
    ///
    /// # Errors
    /// The database is away, or the entry is damaged.
    pub fn product(&self, conn: &mut Conn, version: i32) -> Result<Arc<Product>> {
        cached(&self.products, version, || {
            parse_product(&store::entries::version(conn, version)?)
        })
    }

    /// The same, where the body was loaded with the row.
    ///
    /// # Errors
    /// The entry is damaged.
    pub fn product_of(&self, version: i32, body: &str) -> Result<Arc<Product>> {
        cached(&self.products, version, || parse_product(body))
    }

    /// The law of every place, with the rows that somebody confirmed for this kitchen. What was once asked
    /// for stays to the end of the process: a kitchen confirms a handful of rows in its life.
    pub fn laws(&self, confirmed: &BTreeSet<RowId>) -> &Laws {
        if confirmed.is_empty() {
            return &self.law.laws;
        }
        let known = |all: &[(BTreeSet<RowId>, &'static Laws)]| {
            let of = all.iter().find(|(rows, _)| rows == confirmed);
            of.map(|(_, laws)| *laws)
        };
        let read = self.confirmed.read();
        if let Some(laws) = known(&read.unwrap_or_else(PoisonError::into_inner)) {
            return laws;
        }
        let mut all = self
            .confirmed
            .write()
            .unwrap_or_else(PoisonError::into_inner);
        if let Some(laws) = known(&all) {
            return laws;
        }
        let mut laws = self.law.laws.clone();
        for law in laws.places.values_mut() {
            confirmed.iter().for_each(|row| law.rows.confirm(row));
        }
        let laws: &'static Laws = Box::leak(Box::new(laws));
        all.push((confirmed.clone(), laws));
        laws
    }

    /// The kitchen as it is set up now; with the defaults until somebody does.
    ///
    /// # Errors
    /// The database is away, or the entry is damaged.
    pub fn kitchen(&self, conn: &mut Conn) -> Result<Arc<Kitchen>> {
        let kitchen = match store::entries::get(conn, "kitchen", "kitchen")? {
            Some(row) => cached(&self.kitchens, row.version_id, || {
                self.kitchen_read(&row.body)
            })?,
            None => Arc::new(Kitchen::unset()),
        };
        *self.lately.write().unwrap_or_else(PoisonError::into_inner) =
            Some((self.now(), kitchen.clone()));
        Ok(kitchen)
    }

    /// The kitchen that a version of its entry describes.
    ///
    /// # Errors
    /// The entry is damaged.
    pub fn kitchen_of(&self, version: i32, body: &str) -> Result<Arc<Kitchen>> {
        cached(&self.kitchens, version, || self.kitchen_read(body))
    }

    /// The lists as they stand: read anew only where somebody has changed them since.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn standing(&self, conn: &mut Conn) -> Result<Arc<Standing>> {
        let seen = store::entries::seen(conn)?;
        self.standing_at(conn, seen.stamp)
    }

    /// The lists as they stood at a stamp that was just asked for.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn standing_at(&self, conn: &mut Conn, stamp: Stamp) -> Result<Arc<Standing>> {
        let known = self
            .standing
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone();
        if let Some(known) = known.filter(|known| known.stamp == stamp) {
            return Ok(known);
        }
        let standing = Arc::new(Standing::read(self, conn, stamp)?);
        *self
            .standing
            .write()
            .unwrap_or_else(PoisonError::into_inner) = Some(standing.clone());
        *self.lately.write().unwrap_or_else(PoisonError::into_inner) =
            Some((self.now(), standing.kitchen.clone()));
        Ok(standing)
    }

    /// The lists as somebody saw them last: for what never changes of them, as the code of a place.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn standing_seen(&self, conn: &mut Conn) -> Result<Arc<Standing>> {
        self.standing_known()
            .map_or_else(|| self.standing(conn), Ok)
    }

    /// The same, if anybody has seen them.
    pub fn standing_known(&self) -> Option<Arc<Standing>> {
        let known = self.standing.read();
        known.unwrap_or_else(PoisonError::into_inner).clone()
    }

    /// The kitchen as it is set up, or was at most a second ago: a scan need not ask each time.
    ///
    /// # Errors
    /// The database is away, or the entry is damaged.
    pub fn kitchen_lately(&self, conn: &mut Conn) -> Result<Arc<Kitchen>> {
        let now = self.now();
        let fresh =
            |at: DateTime<Utc>| (TimeDelta::zero()..TimeDelta::seconds(1)).contains(&(now - at));
        if let Some((at, kitchen)) = &*self.lately.read().unwrap_or_else(PoisonError::into_inner)
            && fresh(*at)
        {
            return Ok(kitchen.clone());
        }
        self.kitchen(conn)
    }

    /// The kitchen as a scan or a deed saw it last, without asking the record.
    pub fn kitchen_seen(&self) -> Option<Arc<Kitchen>> {
        let lately = self.lately.read().unwrap_or_else(PoisonError::into_inner);
        lately.as_ref().map(|(_, kitchen)| kitchen.clone())
    }

    /// The address that codes hold: the kitchen's own, else the service's.
    pub fn address(&self, kitchen: &Kitchen) -> String {
        let told = kitchen
            .entry
            .public_url
            .as_ref()
            .map_or(self.public_url.as_str(), |url| url.0.as_str());
        told.trim_end_matches('/').to_owned()
    }

    /// Why the clock cannot be right, if it cannot: earlier than the build, than the last deed, or than a
    /// manager's last word about it.
    pub fn clock_is_wrong(&self, recorded: &Recorded) -> Option<ServiceSays> {
        if let Some(why) = self.clock.impossible() {
            return Some(why);
        }
        let doubt = self.clockwork.doubt();
        if doubt.is_some() {
            return doubt;
        }
        let slack = TimeDelta::minutes(CLOCK_SLACK_MINUTES);
        // What a manager has said was recorded ahead closes no kitchen.
        let last = self.clockwork.sure(recorded)?;
        (self.now() + slack < last.and_utc()).then(|| ServiceSays::ClockBeforeDeed {
            now: self.now().naive_utc(),
            last,
        })
    }

    /// Refuses a deed while the clock cannot be right: as far as the record says now, and as the pulse has felt it.
    ///
    /// # Errors
    /// 503 where the clock is wrong.
    pub fn refuse_while_clock_is_wrong(&self, latest: Option<NaiveDateTime>) -> Result<()> {
        let recorded = Recorded {
            latest,
            newest: None,
        };
        let wrong = self.clock_is_wrong(&recorded);
        match wrong.or_else(crate::pulse::clock_doubt) {
            None => Ok(()),
            Some(why) => {
                let detail = ServiceSays::NothingRecorded { why: why.into() };
                Err(Problem::new(
                    StatusCode::SERVICE_UNAVAILABLE,
                    "clock",
                    TitleSays::Clock,
                    detail,
                )
                .into())
            }
        }
    }
}

impl Products for App {
    fn known(&self, version: i32) -> Option<Arc<Product>> {
        let known = self.products.read().unwrap_or_else(PoisonError::into_inner);
        known.get(&version).cloned()
    }

    fn read(&self, version: i32, body: &str) -> store::Result<Arc<Product>> {
        self.product_of(version, body).map_err(|error| match error {
            Error::Store(error) => error,
            other => store::Error::Broken(other.to_string()),
        })
    }
}

fn parse_product(body: &str) -> Result<Product> {
    let entry: ProductEntry = serde_json::from_str(body).map_err(|error| damaged(&error))?;
    Ok(entry.product())
}

/// A list entry that this program cannot have written.
pub fn damaged(error: &serde_json::Error) -> Error {
    store::Error::Broken(format!("a list entry does not parse: {error}")).into()
}
