//! The text of the notice to customers and of that on the shelf, from the facts, in the terms of the place and in
//! each of the kitchen's languages. A person reads it before it goes out.

use super::facts::{IncidentFacts, LotFacts};
use super::says::NoticeSays;
use chrono::NaiveDate;
use domain::grams::Grams;
use domain::says::Says;
use serde::Serialize;
use utoipa::ToSchema;
use words::{Language, Speech};

/// The texts in one language.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Notice {
    /// The language.
    pub language: String,
    /// Over both.
    pub title: String,
    /// To customers, line by line.
    pub customers: Vec<String>,
    /// On the shelf, line by line.
    pub shelf: Vec<String>,
}

/// The texts in each of the kitchen's languages that we speak. Nothing was sold: none to customers.
pub fn notices(facts: &IncidentFacts) -> Vec<Notice> {
    let languages = facts.kitchen.languages.iter();
    let spoken = |tag: &String| {
        let mut all = Language::ALL.into_iter();
        all.find(|language| language.tag() == tag.as_str())
    };
    let mut all: Vec<Language> = languages.filter_map(spoken).collect();
    if all.is_empty() {
        all.push(Language::default());
    }
    all.into_iter()
        .map(|language| notice(facts, language))
        .collect()
}

fn was_sold(lot: &&LotFacts) -> bool {
    lot.went.sold.0 > Grams::ZERO
}

fn notice(facts: &IncidentFacts, language: Language) -> Notice {
    let speech = Speech::in_language(language);
    let say = |says: NoticeSays| speech.say(&Says::from(says));
    let sold: Vec<&LotFacts> = facts.lots.iter().filter(was_sold).collect();
    let mut names: Vec<String> = Vec::new();
    for lot in &sold {
        let name = super::facts::in_language(&lot.names, language.tag(), &lot.product);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let names = names.join(", ");
    let codes: Vec<&str> = sold.iter().map(|lot| lot.shown.as_str()).collect();
    let (kitchen, hazard) = (facts.kitchen.name.clone(), facts.hazard.clone());
    let mut customers = Vec::new();
    let mut shelf = Vec::new();
    if facts.drill {
        customers.push(say(NoticeSays::Drill));
        shelf.push(say(NoticeSays::Drill));
    }
    if !sold.is_empty() {
        let days = facts.sold.iter();
        let days: Vec<NaiveDate> = days.filter_map(|sold| sold.day.parse().ok()).collect();
        let days = days.iter().min().copied().zip(days.iter().max().copied());
        customers.push(say(NoticeSays::What {
            kitchen: kitchen.clone(),
            names: names.clone(),
        }));
        customers.extend(days.map(|(from, until)| match from == until {
            true => say(NoticeSays::SoldOn { day: from }),
            false => say(NoticeSays::SoldBetween { from, until }),
        }));
        customers.push(say(NoticeSays::Codes {
            codes: codes.join(", "),
        }));
        customers.push(say(NoticeSays::Why {
            hazard: hazard.clone(),
        }));
        customers.push(say(NoticeSays::Deed));
        customers.push(say(NoticeSays::AtHome));
        let address = facts.kitchen.address.clone().unwrap_or_default();
        customers.push(say(NoticeSays::Ask { kitchen, address }).trim().to_owned());
        shelf.push(say(NoticeSays::Shelf { names }));
        shelf.push(say(NoticeSays::Why { hazard }));
        shelf.push(say(NoticeSays::ShelfDeed));
    }
    Notice {
        language: language.tag().to_owned(),
        title: say(NoticeSays::Title {
            place: facts.kitchen.profile.clone(),
        }),
        customers,
        shelf,
    }
}
