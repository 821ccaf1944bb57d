//! One entry of a list: added once, changed by a new version, never lost.

use super::origins;
use super::says::{ListNames, ListSays};
use crate::app::App;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use crate::wire::asked::canonical;
use actix_web::http::StatusCode;
use domain::rows::Finding;
use domain::says::Says;
use serde::Serialize;
use serde::de::DeserializeOwned;
use store::entries::{self, EntryBody, EntryRow};
use store::{Conn, Tx};

/// A list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum List {
    /// Farms.
    Farms,
    /// Abattoirs.
    Abattoirs,
    /// Suppliers.
    Suppliers,
    /// Places.
    Places,
    /// Products.
    Products,
    /// Recipes.
    Recipes,
    /// Printers.
    Printers,
    /// Probes.
    Probes,
}

impl List {
    /// Every list.
    pub const ALL: [List; 8] = [
        List::Farms,
        List::Abattoirs,
        List::Suppliers,
        List::Places,
        List::Products,
        List::Recipes,
        List::Printers,
        List::Probes,
    ];

    /// The list of that name.
    pub fn parse(name: &str) -> Option<List> {
        List::ALL.into_iter().find(|list| list.as_str() == name)
    }

    /// Its name, in paths and in the record.
    pub const fn as_str(self) -> &'static str {
        match self {
            List::Farms => "farms",
            List::Abattoirs => "abattoirs",
            List::Suppliers => "suppliers",
            List::Places => "places",
            List::Products => "products",
            List::Recipes => "recipes",
            List::Printers => "printers",
            List::Probes => "probes",
        }
    }

    /// Its name for a reader, in their language.
    pub fn says(self) -> Says {
        match self {
            List::Farms => ListNames::Farms,
            List::Abattoirs => ListNames::Abattoirs,
            List::Suppliers => ListNames::Suppliers,
            List::Places => ListNames::Places,
            List::Products => ListNames::Products,
            List::Recipes => ListNames::Recipes,
            List::Printers => ListNames::Printers,
            List::Probes => ListNames::Probes,
        }
        .into()
    }

    /// What is said of a code that is not in it, and need only be added.
    pub fn lacks(self, code: &str) -> ListSays {
        ListSays::AddFirst {
            code: code.to_owned(),
            list: self.says(),
        }
    }

    /// What is said of a code that is not in it, and may be another one's.
    pub fn lacks_or_another(self, code: &str) -> ListSays {
        ListSays::AddOrChoose {
            code: code.to_owned(),
            list: self.says(),
        }
    }
}

/// What the entries of each list must provide.
pub trait Entry: Serialize + DeserializeOwned {
    /// Which list they are in.
    const LIST: List;

    /// The entry's code in its list.
    fn code(&self) -> &str;

    /// What a search finds it by.
    fn search(&self) -> String;

    /// What the field types cannot check: ranges, and that what it names is there. Most entries have nothing of that kind.
    ///
    /// # Errors
    /// 422 naming the field, or 409.
    fn check(&self, _tx: &mut Tx<'_>) -> Result<()> {
        Ok(())
    }

    /// What is warned of when it is listed, by what the lists say; nothing here stops it.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    fn warnings(&self, _app: &App, _conn: &mut Conn) -> Result<Vec<Finding>> {
        Ok(Vec::new())
    }

    /// What else is taken when it is added: a farm's code, for ever.
    ///
    /// # Errors
    /// 409 where it is taken.
    fn settle(&self, _tx: &mut Tx<'_>) -> Result<()> {
        Ok(())
    }
}

/// Whether an entry was added or was there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum EntryOutcome {
    /// It is new, or has a new version.
    Written,
    /// It was there, just so.
    Same,
}

/// Adds an entry. The same again changes nothing.
///
/// # Errors
/// 409 where another entry has that code; 422 where it cannot be.
pub fn add<E: Entry>(app: &App, entry: &E) -> Result<(EntryOutcome, i32)> {
    let text = canonical(entry);
    app.store.write(|tx| {
        lock(tx)?;
        match entries::get(tx.conn, E::LIST.as_str(), entry.code())? {
            Some(known) if known.body == text => Ok((EntryOutcome::Same, known.number)),
            Some(_) => {
                let detail = ListSays::Otherwise {
                    code: entry.code().to_owned(),
                    list: E::LIST.says(),
                };
                Err(Error::clash("code", detail))
            }
            None => Ok((EntryOutcome::Written, put_down(app, tx, entry, None)?)),
        }
    })
}

/// Changes an entry. `version` is the one that the caller has seen.
///
/// # Errors
/// 404, 412 where it was changed meanwhile, 422 where it cannot be.
pub fn change<E: Entry>(app: &App, code: &str, entry: &E, version: i32) -> Result<i32> {
    if entry.code() != code {
        let detail = ListSays::PathSays {
            path: code.to_owned(),
            entry: entry.code().to_owned(),
        };
        return Err(Error::cannot_be("code", detail));
    }
    let text = canonical(entry);
    app.store.write(|tx| {
        lock(tx)?;
        let known = entries::get(tx.conn, E::LIST.as_str(), code)?
            .ok_or_else(|| no_such_entry(E::LIST, code))?;
        if known.body == text {
            return Ok(known.number);
        }
        same_version(&known, version)?;
        put_down(app, tx, entry, Some(&known))
    })
}

/// Writes an entry, over the one that is known or as a new one; its version comes back. The caller holds
/// the lists' lock.
///
/// # Errors
/// 409 where what it takes is taken; 422 where it cannot be.
pub fn put_down<E: Entry>(
    app: &App,
    tx: &mut Tx<'_>,
    entry: &E,
    known: Option<&EntryRow>,
) -> Result<i32> {
    entry.check(tx)?;
    let (text, search) = (canonical(entry), entry.search().to_lowercase());
    let body = EntryBody {
        text: &text,
        search: &search,
        at: app.now().naive_utc(),
    };
    match known {
        Some(known) => {
            entries::replace(tx, known, body)?;
            origins::changed(app, tx, E::LIST, known, &text)?;
            Ok(known.number + 1)
        }
        None => {
            entry.settle(tx)?;
            entries::insert(tx, E::LIST.as_str(), entry.code(), body)?;
            Ok(1)
        }
    }
}

/// Lists change one at a time, so that codes stay unique over all of them.
pub fn lock(tx: &mut Tx<'_>) -> Result<()> {
    store::series::lock(tx, "lists")?;
    Ok(())
}

/// Refuses a change to a version that is no longer the current one.
pub fn same_version(known: &EntryRow, version: i32) -> Result<()> {
    match known.number == version {
        true => Ok(()),
        false => Err(changed_meanwhile(known.number)),
    }
}

/// 412: it is another version now.
pub fn changed_meanwhile(version: i32) -> Error {
    let (title, detail) = (
        TitleSays::ChangedMeanwhile,
        ListSays::ChangedMeanwhile { version },
    );
    let status = StatusCode::PRECONDITION_FAILED;
    Problem::new(status, "changed-meanwhile", title, detail).into()
}

/// 428: nobody says which version they have seen.
pub fn which_version() -> Error {
    let (title, detail) = (TitleSays::WhichVersion, ListSays::WhichVersion);
    let status = StatusCode::PRECONDITION_REQUIRED;
    Problem::new(status, "which-version", title, detail).into()
}

/// 404: no such entry.
pub fn no_such_entry(list: List, code: &str) -> Error {
    Error::not_found(ListSays::NotThere {
        code: code.to_owned(),
        list: list.says(),
    })
}
