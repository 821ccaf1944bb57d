//! What a recall may begin with, as its page offers it, and what is asked besides: over which days.

use super::says::PageSays;
use super::spoken::Words;
use crate::error::Result;
use crate::ids::shown_id;
use crate::read::names::Names;
use crate::read::scope::{Named, Window};
use crate::read::seek::Thing;
use domain::family::SourceAnimal;
use serde::Deserialize;
use store::Conn;
use uuid::Uuid;

/// Something that may be meant.
pub struct Choice {
    /// Where it leads.
    pub path: String,
    /// What it is.
    pub name: String,
    /// What tells it from another.
    pub more: String,
}

/// What stands in the query of the page.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// What was said.
    pub q: Option<String>,
    /// A lot's code.
    pub lot: Option<String>,
    /// An animal's id.
    pub animal: Option<String>,
    /// A farm's code.
    pub farm: Option<String>,
    /// A product's code.
    pub product: Option<String>,
    /// A place's code.
    pub place: Option<String>,
    /// A person's name.
    pub by: Option<String>,
    /// The first day.
    pub from: Option<String>,
    /// The last day.
    pub last: Option<String>,
    /// How far it goes.
    pub spreads: Option<String>,
    /// Any word: a drill is to begin.
    pub drill: Option<String>,
    /// The deed that was just done.
    pub did: Option<String>,
}

/// What a page named.
pub enum Begins {
    /// Nothing yet.
    Nowhere,
    /// With this.
    With(Named),
    /// With this, over days that are still to be said: the field of the query, its value, and the days that are offered.
    Over(&'static str, String, Window),
}

impl Asked {
    /// What the recall begins with. Where days are asked for and none are said, the last week is offered.
    ///
    /// # Errors
    /// 422 for what is no day.
    pub fn begins(&self, today: chrono::NaiveDate) -> Result<Begins> {
        if let Some(lot) = &self.lot {
            return Ok(Begins::With(Named::Lot(lot.clone())));
        }
        if let Some(animal) = &self.animal {
            return Ok(Begins::With(Named::Animal(animal.clone())));
        }
        type Over = fn(String, Window) -> Named;
        let over: [(&'static str, &Option<String>, Over); 4] = [
            ("farm", &self.farm, Named::Farm),
            ("product", &self.product, Named::Product),
            ("place", &self.place, Named::Place),
            ("by", &self.by, Named::By),
        ];
        let given = over
            .into_iter()
            .find_map(|(field, code, named)| Some((field, code.clone()?, named)));
        let Some((field, code, named)) = given else {
            return Ok(Begins::Nowhere);
        };
        Ok(
            match Window::read(self.from.as_deref(), self.last.as_deref())? {
                Some(days) => Begins::With(named(code, days)),
                None => {
                    let first = today.checked_sub_days(chrono::Days::new(7));
                    let days = Window {
                        first: first.unwrap_or(today),
                        last: today,
                    };
                    Begins::Over(field, code, days)
                }
            },
        )
    }
}

/// What it is called, and what tells it from another.
pub fn called(
    words: &Words,
    names: &Names,
    conn: &mut Conn,
    named: &Named,
) -> Result<(String, String)> {
    let over = |name: String, days: &Window| {
        let says = PageSays::RecallDays {
            first: days.first,
            last: days.last,
        };
        (name, words.say(says))
    };
    Ok(match named {
        Named::Lot(code) => (code.clone(), String::new()),
        Named::Animal(id) => {
            let uid = Uuid::parse_str(id).unwrap_or_default();
            match store::animals::by_uid(conn, uid.as_bytes())? {
                Some(row) => animal(words, names, &row.source_animal(uid.as_bytes())?),
                None => (id.clone(), String::new()),
            }
        }
        Named::Farm(code, days) => over(names.farm(code), days),
        Named::Product(code, days) => over(names.product(code), days),
        Named::Place(code, days) => over(names.place(code), days),
        Named::By(name, days) => over(name.clone(), days),
    })
}

/// The name of something whose days are still to be said.
pub fn name_of(names: &Names, field: &str, code: &str) -> String {
    match field {
        "farm" => names.farm(code),
        "product" => names.product(code),
        "place" => names.place(code),
        _ => code.to_owned(),
    }
}

fn animal(words: &Words, names: &Names, animal: &SourceAnimal) -> (String, String) {
    let from = PageSays::From {
        what: words.headed(animal.species.says()),
        farm: names.farm(&animal.farm),
    };
    let number = animal.carcass.as_deref().or(animal.tag.as_deref());
    let name = format!("{} {}", words.say(from), number.unwrap_or_default());
    let day = animal.killed_on;
    (name.trim().to_owned(), words.say(PageSays::Killed { day }))
}

/// What may be meant, animals first: they are what is named on the phone.
pub fn choices(words: &Words, names: &Names, found: &[Thing], drill: bool) -> Vec<Choice> {
    let also = if drill { "&drill=yes" } else { "" };
    let choice = |thing: &Thing| {
        let over = |field: &str, code: &str, name: &str, more: &str| {
            let code: String = form_urlencoded::byte_serialize(code.as_bytes()).collect();
            Choice {
                path: format!("/recall?{field}={code}{also}"),
                name: name.to_owned(),
                more: words.t(more),
            }
        };
        match thing {
            Thing::Lot(lot, _) => {
                let told = [Some(lot.code.shown()), lot.note.clone()];
                Choice {
                    path: format!("/recall?lot={}{also}", lot.code),
                    name: names.product(&lot.product),
                    more: told.into_iter().flatten().collect::<Vec<_>>().join(", "),
                }
            }
            Thing::Animal(of) => {
                let (name, more) = animal(words, names, of);
                let path = format!("/recall?animal={}{also}", shown_id(&of.uid));
                Choice { path, name, more }
            }
            Thing::Farm(code, name) => over("farm", code, name, "page-recall-of-farm"),
            Thing::Product(code, name) => over("product", code, name, "page-recall-of-product"),
            Thing::Place(code, name) => over("place", code, name, "page-recall-of-place"),
            Thing::Person(_, name) => over("by", name, name, "page-recall-of-person"),
        }
    };
    let rank = |thing: &&Thing| match thing {
        Thing::Animal(_) => 0,
        Thing::Lot(..) => 1,
        _ => 2,
    };
    let mut found: Vec<&Thing> = found.iter().collect();
    found.sort_by_key(rank);
    found.into_iter().map(choice).collect()
}
