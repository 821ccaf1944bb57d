//! What the lists call things, for one reader.

use crate::app::App;
use crate::error::Result;
use crate::lists::standing::Standing;
use domain::lot::PlaceId;
use std::collections::BTreeMap;
use std::sync::Arc;
use store::Conn;

/// The names in use now, in a language.
#[derive(Clone)]
pub struct Names {
    standing: Arc<Standing>,
    language: String,
    /// By code, so that a choice of places is in order.
    pub places: BTreeMap<String, String>,
    /// By code.
    pub farms: BTreeMap<String, String>,
}

impl Names {
    /// All of them, in the kitchen's first language.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn load(app: &App, conn: &mut Conn) -> Result<Names> {
        let standing = app.standing(conn)?;
        let language = standing.kitchen.language().to_owned();
        Ok(Names::of(standing, &language))
    }

    /// Those of the lists as this request has seen them already, in the kitchen's first language.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn seen(app: &App) -> Result<Names> {
        let standing = match app.standing_known() {
            Some(standing) => standing,
            None => app.store.look(|conn| app.standing(conn))?,
        };
        let language = standing.kitchen.language().to_owned();
        Ok(Names::of(standing, &language))
    }

    /// Those of lists that were read already, in a language.
    pub fn of(standing: Arc<Standing>, language: &str) -> Names {
        let named = |list: &BTreeMap<String, domain::family::Listed>| {
            let names = list.iter();
            names
                .map(|(code, entry)| (code.clone(), entry.name.clone()))
                .collect()
        };
        Names {
            places: named(&standing.lists.places),
            farms: named(&standing.lists.farms),
            language: language.to_owned(),
            standing,
        }
    }

    /// The name of a product; its code where the list has it no more.
    pub fn product(&self, code: &str) -> String {
        self.standing.lists.product(code, &self.language).to_owned()
    }

    /// The name of a place.
    pub fn place(&self, code: &str) -> String {
        self.standing.lists.place(code).to_owned()
    }

    /// The name of a place, by its key.
    pub fn place_of_key(&self, key: i32) -> String {
        match self.standing.lists.place_name(PlaceId(key)) {
            "" => "–".to_owned(),
            name => name.to_owned(),
        }
    }

    /// The name of a farm.
    pub fn farm(&self, code: &str) -> String {
        self.standing.lists.farm(code).to_owned()
    }
}
