//! Over which days a recall looks: what is known of a farm's days stands there to be tapped, and days on which nothing
//! is on record never read as if nothing were here.

use super::recall_named::{Choice, name_of};
use super::says::PageSays;
use super::spoken::Words;
use crate::error::Result;
use crate::read::names::Names;
use crate::read::scope::Window;
use chrono::NaiveDate;
use domain::family::SourceAnimal;
use std::collections::BTreeMap;
use store::Conn;
use store::animals::{self, AnimalSearch};

/// The most animals of a farm whose days are looked through, the latest first.
const LOOKED: i64 = 500;
/// The most days that are offered.
const OFFERED: usize = 12;

/// Something whose days are still to be said.
pub struct Over {
    pub field: &'static str,
    pub code: String,
    pub name: String,
    pub first: String,
    pub last: String,
    /// What the days are: those of the slaughter, of a farm.
    pub asks: String,
    /// Nothing was found over the days that were said: that is not to say that nothing is here.
    pub none: Option<String>,
    /// The days that are known of it, those nearest to the days that were said first.
    pub known: Vec<Choice>,
}

impl Over {
    /// What is asked of something, with the days that are offered.
    ///
    /// # Errors
    /// The database is away, or the record is damaged.
    pub fn of(
        words: &Words,
        names: &Names,
        conn: &mut Conn,
        (field, code): (&'static str, &str),
        days: Window,
        drill: bool,
    ) -> Result<Over> {
        let of_farm = field == "farm";
        let known = match of_farm {
            true => known(words, conn, code, days, drill)?,
            false => Vec::new(),
        };
        let asks = match of_farm {
            true => "page-recall-which-kills",
            false => "page-recall-which-days",
        };
        Ok(Over {
            name: name_of(names, field, code),
            field,
            code: code.to_owned(),
            first: days.first.to_string(),
            last: days.last.to_string(),
            asks: words.t(asks),
            none: None,
            known,
        })
    }

    /// What is said where nothing is on record over the days that were said.
    pub fn none(words: &Words, names: &Names, field: &str, code: &str, days: Window) -> String {
        let (what, first, last) = (name_of(names, field, code), days.first, days.last);
        words.say(match field {
            "farm" => PageSays::NoneKilled { what, first, last },
            _ => PageSays::NoneThen { what, first, last },
        })
    }
}

fn of_farm(conn: &mut Conn, farm: &str) -> Result<Vec<SourceAnimal>> {
    let sought = AnimalSearch {
        farm: Some(farm.to_owned()),
        ..AnimalSearch::default()
    };
    let rows = animals::list(conn, &sought, LOOKED)?;
    let animals = rows.iter().map(|(row, uid)| Ok(row.source_animal(uid)?));
    animals.collect()
}

/// The days on which animals of a farm were killed, each a button.
fn known(
    words: &Words,
    conn: &mut Conn,
    farm: &str,
    days: Window,
    drill: bool,
) -> Result<Vec<Choice>> {
    let mut killed: BTreeMap<NaiveDate, Vec<SourceAnimal>> = BTreeMap::new();
    for animal in of_farm(conn, farm)? {
        killed.entry(animal.killed_on).or_default().push(animal);
    }
    let mut nearest: Vec<NaiveDate> = killed.keys().copied().collect();
    let away = |day: &NaiveDate| match *day {
        day if day < days.first => (days.first - day).num_days(),
        day if day > days.last => (day - days.last).num_days(),
        _ => 0,
    };
    nearest.sort_by_key(away);
    nearest.truncate(OFFERED);
    let also = if drill { "&drill=yes" } else { "" };
    let code: String = form_urlencoded::byte_serialize(farm.as_bytes()).collect();
    let choice = |day: NaiveDate| {
        let of = killed.get(&day).map(Vec::as_slice).unwrap_or_default();
        let told = of.iter().map(|animal| {
            let species = words.headed(animal.species.says());
            let number = animal.carcass.as_deref().or(animal.tag.as_deref());
            format!("{species} {}", number.unwrap_or_default())
                .trim()
                .to_owned()
        });
        Choice {
            path: format!("/recall?farm={code}&from={day}&last={day}{also}"),
            name: words.say(PageSays::Killed { day }),
            more: told.collect::<Vec<_>>().join(", "),
        }
    };
    Ok(nearest.into_iter().map(choice).collect())
}
