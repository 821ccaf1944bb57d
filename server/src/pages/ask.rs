//! A guest asks: three groups, from what truly went in. What is not known is never among what is without.

use super::ask_lines::{Group, group};
use super::says::PageSays;
use super::spoken::Words;
use crate::caller::{Asking, Caller};
use crate::error::Result;
use crate::read::ask::{self, AskQuery, AskedLine};
use crate::read::names::Names;
use crate::read::seek;
use actix_web::{HttpRequest, HttpResponse};
use askama::Template;
use domain::ask::{Told, Topic};
use domain::family::Lists;
use domain::statement::SpeciesRules;
use domain::words::{Allergen, Species};
use std::collections::BTreeSet;
use store::Conn;

#[derive(Template)]
#[template(path = "ask.html")]
struct AskPage {
    words: Words,
    /// What was asked, in words; nothing where nothing was.
    heading: Option<String>,
    at: String,
    /// What nobody has a word for.
    no_word: Option<String>,
    /// What guests ask most, then the rest.
    usual: Vec<Chip>,
    more: Vec<Chip>,
    /// Is more asked than one tap asks?
    several: bool,
    /// Where one tap asks: what it is about is added.
    way: String,
    /// The things that were named, where not all is asked about: their codes, and what is to be said of them.
    of: String,
    named: Vec<String>,
    places: Vec<Place>,
    offered: bool,
    groups: Vec<Group>,
    stopped: Option<String>,
    next: Option<String>,
}

struct Chip {
    word: &'static str,
    says: String,
    chosen: bool,
}

struct Place {
    code: String,
    name: String,
    chosen: bool,
}

/// What guests ask most, in the order of the chips.
const USUAL: [Topic; 17] = [
    Topic::Species(Species::Pig),
    Topic::Alcohol,
    Topic::Allergen(Allergen::Milk),
    Topic::Allergen(Allergen::Egg),
    Topic::Gluten,
    Topic::Allergen(Allergen::Wheat),
    Topic::Allergen(Allergen::Fish),
    Topic::Allergen(Allergen::Soy),
    Topic::Allergen(Allergen::TreeNut),
    Topic::Allergen(Allergen::Peanut),
    Topic::Allergen(Allergen::Sesame),
    Topic::Allergen(Allergen::Mustard),
    Topic::Allergen(Allergen::Celery),
    Topic::Allergen(Allergen::Crustacean),
    Topic::Nitrite,
    Topic::Species(Species::Cattle),
    Topic::Raw,
];

/// What the address asks.
#[derive(Default)]
struct Wanted {
    topics: BTreeSet<Topic>,
    /// Products that were named, by code: nothing else is asked about then.
    products: BTreeSet<String>,
    /// Each word that named some, with them.
    named: Vec<(String, BTreeSet<String>)>,
    said: String,
    place: Option<String>,
    offered: bool,
    after: Option<String>,
}

/// A guest's question, and its answer.
pub async fn page(request: HttpRequest, asking: Asking) -> HttpResponse {
    super::asked(&request, asking, |app, conn, fields: &Vec<_>| {
        read(app, conn, fields)
    })
    .await
}

fn read(app: &Caller<'_>, conn: &mut Conn, fields: &[(String, String)]) -> Result<AskPage> {
    let names = Names::load(app, conn)?;
    let words = Words::of(&names);
    let mut wanted = Wanted::of(fields);
    let standing = app.standing(conn)?;
    let law = app.laws(&standing.confirmed);
    let species = &law.of(standing.kitchen.entry.profile.0).statements.species;
    let no_word = wanted.read_said(&words, species, &named_by(&standing.lists));
    let asked = match wanted.topics.is_empty() {
        true => None,
        false => Some(ask::ask(app.app(), conn, &wanted.query())?),
    };
    let chip = |topic: Topic| Chip {
        word: topic.as_str(),
        says: words.headed(topic.says(species)),
        chosen: wanted.topics.contains(&topic),
    };
    let more: Vec<Chip> = Topic::all()
        .filter(|topic| !USUAL.contains(topic))
        .map(chip)
        .collect();
    let topics: Vec<String> = wanted
        .topics
        .iter()
        .map(|topic| words.say(topic.says(species)))
        .collect();
    let asked_at = app.now();
    let at = words.minute(asked_at, names.zone());
    let place = |(code, name): (&str, &str)| Place {
        chosen: wanted.place.as_deref() == Some(code),
        code: code.to_owned(),
        name: name.to_owned(),
    };
    let mut page = AskPage {
        heading: asked.as_ref().map(|_| {
            words.say(PageSays::AskAbout {
                topics: topics.join(", "),
            })
        }),
        at: words.say(PageSays::AskAt { at }),
        no_word: no_word.map(|word| words.say(PageSays::AskNoWord { word })),
        usual: USUAL.into_iter().map(chip).collect(),
        several: wanted.topics.len() > 1 || more.iter().any(|chip| chip.chosen),
        way: wanted.way(),
        more,
        places: names.places_by_name().into_iter().map(place).collect(),
        offered: wanted.offered,
        of: wanted
            .products
            .iter()
            .cloned()
            .collect::<Vec<_>>()
            .join(","),
        named: Vec::new(),
        groups: Vec::new(),
        stopped: None,
        next: None,
        words,
    };
    if asked.is_none() && !wanted.products.is_empty() {
        let names: Vec<String> = wanted
            .products
            .iter()
            .map(|code| names.product(code))
            .collect();
        let names = names.join(", ");
        page.named = vec![page.words.say(PageSays::AskWhat { names })];
    }
    if let Some(asked) = asked {
        let offered = |line: &&AskedLine| !wanted.offered || line.sellable > 0;
        let code = |line: &AskedLine| &asked.lot(line).product.code;
        let meant =
            |line: &&AskedLine| wanted.products.is_empty() || wanted.products.contains(code(line));
        let meant: Vec<&AskedLine> = asked.lines.iter().filter(meant).collect();
        let lines: Vec<&AskedLine> = meant.iter().copied().filter(offered).collect();
        let things = meant.len() - lines.len();
        // Of what was named and is not there, that is the answer.
        let is_there =
            |codes: &BTreeSet<String>| lines.iter().any(|line| codes.contains(code(line)));
        let gone = wanted.named.iter().filter(|(_, codes)| !is_there(codes));
        page.named = gone
            .map(|(name, _)| page.words.say(PageSays::AskNone { name: name.clone() }))
            .collect();
        page.stopped = (things > 0).then(|| words.say(PageSays::AskStopped { things }));
        // What can hurt comes first.
        page.groups = [
            (Told::Yes, "page-ask-yes"),
            (Told::NotKnown, "page-ask-not-known"),
            (Told::No, "page-ask-no"),
        ]
        .map(|(told, key)| group(&words, &asked, &lines, wanted.offered, told, key))
        .into();
        // Nothing on hand is no answer: three times none reads as “without”.
        if lines.is_empty() && asked.next.is_none() {
            page.groups = Vec::new();
            let topics = topics.join(", ");
            page.named.push(words.say(PageSays::AskNothing { topics }));
        }
        page.next = asked.next.map(|code| wanted.address(&code.to_string()));
    }
    Ok(page)
}

/// Every name that the house has for a product, in small letters, with its code.
fn named_by(lists: &Lists) -> Vec<(String, String)> {
    let products = lists.products.values();
    let each = products.flat_map(|product| {
        let name = |language| (seek::fold(product.name(language)), product.code.clone());
        ["en", "fr"].map(name)
    });
    each.collect()
}

/// The products that a word names: a word of a name, one or many.
fn products(house: &[(String, String)], word: &str) -> BTreeSet<String> {
    let word = seek::fold(word);
    let one = |text: &str| text.strip_suffix('s').unwrap_or(text).to_owned();
    let is_it = |name: &str| {
        let mut parts = name.split(|letter: char| !letter.is_alphanumeric());
        word.chars().count() > 2 && parts.any(|part| one(part) == one(&word))
    };
    let named = house.iter().filter(|(name, _)| is_it(name));
    named.map(|(_, code)| code.clone()).collect()
}

impl Wanted {
    fn of(fields: &[(String, String)]) -> Wanted {
        let mut wanted = Wanted::default();
        let mut asked = false;
        for (field, value) in fields {
            let value = value.trim().to_owned();
            match field.as_str() {
                _ if value.is_empty() => {}
                "about" => wanted
                    .topics
                    .extend(value.split(',').filter_map(Topic::parse)),
                "q" => wanted.said = value,
                "of" => wanted.products.extend(value.split(',').map(str::to_owned)),
                "place" => wanted.place = Some(value),
                "offered" => wanted.offered = value == "yes",
                "after" => wanted.after = Some(value),
                "asked" => asked = true,
                _ => {}
            }
        }
        // Who has asked nothing yet is asked about what the counter sells.
        wanted.offered |= !asked;
        wanted
    }

    /// What was typed, by the names that things have for the reader; the first word that none has.
    fn read_said(
        &mut self,
        words: &Words,
        species: &SpeciesRules,
        house: &[(String, String)],
    ) -> Option<String> {
        let named: Vec<(String, Topic)> = Topic::all()
            .map(|topic| (words.say(topic.says(species)).to_lowercase(), topic))
            .collect();
        let drinks = words.t("page-ask-wine").to_lowercase();
        let mut unknown = None;
        let said = self.said.to_lowercase();
        // A question is asked in whole sentences: its small words ask for nothing.
        let small = words.t("page-ask-small");
        let is_small = |word: &&str| small.split(' ').any(|one| one == *word);
        let parts = said.split([',', ';', ' ', '?', '!', '.', '\'', '’']);
        for word in parts.filter(|word| !word.is_empty() && !is_small(word)) {
            let alike = |name: &str| {
                let singular = word.strip_suffix('s').unwrap_or(word);
                name == word || name == singular || name.split(' ').any(|part| part == word)
            };
            let found: Vec<Topic> = named
                .iter()
                .filter(|(name, _)| alike(name))
                .map(|(_, topic)| *topic)
                .collect();
            let exact = named.iter().find(|(name, _)| name == word);
            match (exact, found.as_slice()) {
                (Some((_, topic)), _) => drop(self.topics.insert(*topic)),
                (None, []) if drinks.split(", ").any(|drink| drink == word) => {
                    self.topics.insert(Topic::Alcohol);
                }
                (None, []) => match Topic::parse(word) {
                    Some(topic) => drop(self.topics.insert(topic)),
                    None => match products(house, word) {
                        codes if codes.is_empty() => {
                            unknown = unknown.or_else(|| Some(word.to_owned()));
                        }
                        codes => {
                            self.products.extend(codes.iter().cloned());
                            self.named.push((word.to_owned(), codes));
                        }
                    },
                },
                (None, found) => self.topics.extend(found),
            }
        }
        unknown
    }

    fn query(&self) -> AskQuery {
        let topics: Vec<&str> = self.topics.iter().map(|topic| topic.as_str()).collect();
        AskQuery {
            about: Some(topics.join(",")),
            place: self.place.clone(),
            for_sale: Some(self.offered),
            after: self.after.clone(),
            limit: None,
        }
    }

    /// The address of a question of the same things, without what it is about.
    fn way(&self) -> String {
        let offered = if self.offered { "yes" } else { "no" };
        let place = self.place.as_deref().unwrap_or_default();
        let of: Vec<&str> = self.products.iter().map(String::as_str).collect();
        let of = of.join(",");
        format!("/ask?asked=yes&of={of}&place={place}&offered={offered}")
    }

    /// The address of the next part.
    fn address(&self, after: &str) -> String {
        let topics: Vec<&str> = self.topics.iter().map(|topic| topic.as_str()).collect();
        let about = topics.join(",");
        format!("{}&about={about}&after={after}", self.way())
    }
}
