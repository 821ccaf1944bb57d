//! What the lists call things, for one reader.

use crate::caller::Caller;
use crate::error::Result;
use crate::lists::standing::Standing;
use crate::read::seek::fold;
use chrono_tz::Tz;
use domain::lot::PlaceId;
use std::collections::BTreeMap;
use std::sync::Arc;
use store::Conn;
use words::Speech;

/// The names in use now, in the reader's language where the lists have it.
#[derive(Clone)]
pub struct Names {
    pub(in crate::read) standing: Arc<Standing>,
    /// How the reader is spoken to.
    pub speech: Speech,
    /// By code, so that a choice of places is in order.
    pub places: BTreeMap<String, String>,
    /// By code.
    pub farms: BTreeMap<String, String>,
}

impl Names {
    /// All of them, for a caller.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn load(app: &Caller<'_>, conn: &mut Conn) -> Result<Names> {
        let standing = app.standing(conn)?;
        let speech = app.speech(&standing.kitchen);
        Ok(Names::of(standing, speech))
    }

    /// Those of the lists as this request has seen them already, for a caller.
    ///
    /// # Errors
    /// The database is away, or an entry is damaged.
    pub fn seen(app: &Caller<'_>) -> Result<Names> {
        let standing = match app.standing_known() {
            Some(standing) => standing,
            None => app.store.look(|conn| app.standing(conn))?,
        };
        let speech = app.speech(&standing.kitchen);
        Ok(Names::of(standing, speech))
    }

    /// Those of lists that were read already, for a reader.
    pub fn of(standing: Arc<Standing>, speech: Speech) -> Names {
        let named = |list: &BTreeMap<String, domain::family::Listed>| {
            let names = list.iter();
            names
                .map(|(code, entry)| (code.clone(), entry.name.clone()))
                .collect()
        };
        Names {
            places: named(&standing.lists.places),
            farms: named(&standing.lists.farms),
            speech,
            standing,
        }
    }

    /// The time zone of the kitchen.
    pub fn zone(&self) -> Tz {
        self.standing.kitchen.zone
    }

    /// The name of a product; its code where the list has it no more.
    pub fn product(&self, code: &str) -> String {
        let language = self.speech.language.tag();
        self.standing.lists.product(code, language).to_owned()
    }

    /// The kitchen's currency.
    pub fn currency(&self) -> String {
        self.standing.kitchen.entry.currency.0.clone()
    }

    /// Every product's code and name.
    pub fn products(&self) -> Vec<(String, String)> {
        let codes = self.standing.lists.products.keys();
        let named = |code: &String| (code.clone(), self.product(code));
        codes.map(named).collect()
    }

    /// The one of a product's names that is shown, if it has any.
    pub fn product_of(&self, names: &BTreeMap<String, String>) -> Option<String> {
        let own = || names.get(self.standing.kitchen.language());
        let told = names.get(self.speech.language.tag()).or_else(own);
        told.or_else(|| names.values().next()).cloned()
    }

    /// Every place's code and name, by name.
    pub fn places_by_name(&self) -> Vec<(&str, &str)> {
        let all = self.places.iter();
        let mut all: Vec<(&str, &str)> = all
            .map(|(code, name)| (code.as_str(), name.as_str()))
            .collect();
        all.sort_by_cached_key(|(_, name)| fold(name));
        all
    }

    /// The name of a place.
    pub fn place(&self, code: &str) -> String {
        self.standing.lists.place(code).to_owned()
    }

    /// The names of some places, one after the other; nothing of none.
    pub fn placed(&self, codes: &[String]) -> Option<String> {
        let names: Vec<String> = codes.iter().map(|code| self.place(code)).collect();
        (!names.is_empty()).then(|| names.join(", "))
    }

    /// The name of a place, by its key.
    pub fn place_of(&self, key: PlaceId) -> String {
        self.standing.lists.place_name(key).to_owned()
    }

    /// The same; a dash where it is not on the list.
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
