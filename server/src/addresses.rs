//! The addresses that labels of this kitchen have held: today's, and every one before. Labels with an old one
//! are on the shelf, and on hanging hams, for years.

use crate::app::App;
use crate::error::Result;
use crate::lists::entry::lock;
use crate::lists::kitchen::Kitchen;
use std::sync::{Arc, PoisonError, RwLock};
use store::Conn;
use store::entries::{self, EntryBody};

/// The list in which the record keeps the addresses that the service was started with; those of the kitchen's
/// own entry stand in its versions.
pub const LIST: &str = "public-addresses";

/// Every address that is ours.
#[derive(Debug, Default)]
pub struct Addresses {
    known: RwLock<Arc<Vec<String>>>,
}

impl Addresses {
    /// Learns an address.
    pub fn learn(&self, url: &str) {
        let url = url.trim_end_matches('/');
        let is_known = |known: &[String]| known.iter().any(|of| of.eq_ignore_ascii_case(url));
        if url.is_empty() || is_known(&self.all()) {
            return;
        }
        let mut known = self.known.write().unwrap_or_else(PoisonError::into_inner);
        if !is_known(&known) {
            Arc::make_mut(&mut known).push(url.to_owned());
        }
    }

    /// All of them, in the order in which they were learnt.
    pub fn all(&self) -> Arc<Vec<String>> {
        let known = self.known.read().unwrap_or_else(PoisonError::into_inner);
        known.clone()
    }
}

impl App {
    /// Hears of an address that labels hold: whoever asks for it asks for us, and what is scanned of it is ours.
    pub fn hear(&self, url: &str) {
        self.hosts.learn(url);
        self.addresses.learn(url);
    }

    /// The addresses that labels hold, and once held: what is scanned is read by these.
    pub fn ours(&self) -> Arc<Vec<String>> {
        self.addresses.all()
    }

    /// A version of the kitchen's entry, which may have a new address.
    pub(crate) fn kitchen_read(&self, body: &str) -> Result<Kitchen> {
        let kitchen = Kitchen::parse(body)?;
        if let Some(url) = &kitchen.entry.public_url {
            self.hear(&url.0);
        }
        Ok(kitchen)
    }
}

/// Learns every address that the record knows.
///
/// # Errors
/// The database is away, or an entry is damaged.
pub fn learn(app: &App, conn: &mut Conn) -> Result<()> {
    for row in entries::all(conn, LIST)? {
        app.hear(&row.code);
    }
    for body in entries::all_bodies(conn, "kitchen", "kitchen")? {
        let once = Kitchen::parse(&body)?;
        if let Some(url) = &once.entry.public_url {
            app.hear(&url.0);
        }
    }
    Ok(())
}

/// Keeps the address that the service was started with: from now on labels may hold it.
///
/// # Errors
/// The database is away or cannot be written.
pub fn keep(app: &App, url: &str) -> Result<()> {
    let url = url.trim_end_matches('/');
    app.store.write(|tx| {
        lock(tx)?;
        if entries::get(tx.conn, LIST, url)?.is_none() {
            let body = EntryBody {
                text: "{}",
                search: "",
                at: app.now().naive_utc(),
            };
            entries::insert(tx, LIST, url, body)?;
        }
        Ok(())
    })
}

#[cfg(test)]
mod tests {
    use super::Addresses;

    #[test]
    fn each_address_is_known_once() {
        let addresses = Addresses::default();
        for url in [
            "https://one.example/",
            "HTTPS://ONE.EXAMPLE",
            "https://two.example",
            "",
        ] {
            addresses.learn(url);
        }
        let known = addresses.all();
        assert_eq!(*known, ["https://one.example", "https://two.example"]);
    }
}
