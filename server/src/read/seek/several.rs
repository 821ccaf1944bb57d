//! Several words that somebody said, such as `17 of Brindlecombe`: what fits most of them is meant, and words that fit
//! nothing are passed over.

use super::{MOST, Thing, fold, hanging, known_by, of_animals, of_lots, people, plain};
use crate::caller::Caller;
use crate::error::Result;
use crate::read::names::Names;
use crate::read::says::QuerySays;
use chrono::Datelike;
use domain::ask::Topic;
use domain::words::Species;
use std::collections::{BTreeMap, BTreeSet};
use store::Conn;
use store::animals::{self, AnimalSearch};

/// More words than that nobody says of one thing.
const WORDS: usize = 12;
/// The most animals of one farm that are looked at, the latest first.
const OF_A_FARM: i64 = 60;

/// From so many letters on, what is in the middle of a code is no chance.
const HALF_A_CODE: usize = 4;

/// What fits most of the words, and the words that name nothing of the best; nothing where there is but one word.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn things(
    app: &Caller<'_>,
    conn: &mut Conn,
    names: &Names,
    said: &str,
) -> Result<(Vec<Thing>, Vec<String>)> {
    let small = names.speech.say(&QuerySays::SmallWords.into());
    let small: Vec<String> = small.split(' ').map(fold).collect();
    let words = worth_asking(said, &small);
    if said.split_whitespace().count() < 2 {
        return Ok((Vec::new(), Vec::new()));
    }
    let kinds = Kinds::of(app, conn, names)?;
    let mut found = Vec::new();
    for word in &words {
        found.extend(of_animals(conn, word)?.into_iter().map(Thing::Animal));
        found.extend(
            people(app, word)
                .into_iter()
                .map(|(id, name)| Thing::Person(id, name)),
        );
        let (lots, _) = of_lots(app, conn, word)?;
        found.extend(lots.into_iter().map(|lot| Thing::Lot(lot, None)));
    }
    if words.iter().any(|word| hanging::is_meant(names, word)) {
        let lots = hanging::lots(app, conn, names)?.into_iter();
        found.extend(lots.map(|lot| Thing::Lot(lot, None)));
    }
    let speaks_of = |name: &str| words.iter().any(|word| is_in(&fold(name), word));
    for (code, name) in names.farms.iter().filter(|(_, name)| speaks_of(name)) {
        let sought = AnimalSearch {
            farm: Some(code.clone()),
            ..AnimalSearch::default()
        };
        for (row, uid) in animals::list(conn, &sought, OF_A_FARM)? {
            found.push(Thing::Animal(row.source_animal(&uid)?));
        }
        found.push(Thing::Farm(code.clone(), name.clone()));
    }
    let places = names.places.iter().filter(|(_, name)| speaks_of(name));
    found.extend(places.map(|(code, name)| Thing::Place(code.clone(), name.clone())));
    let products = names.products().into_iter();
    let products = products.filter(|(code, _)| {
        known_by(app, names, code)
            .iter()
            .any(|name| speaks_of(name))
    });
    found.extend(products.map(|(code, name)| Thing::Product(code, name)));
    let of = |thing: &Thing| fits((app, names), &kinds, thing, &words);
    let best = best(found, |thing| of(thing).len());
    let known = best.first().map(of).unwrap_or_default();
    let every = said.split(parts_words);
    let every = every.map(|word| fold(word.trim_end_matches('.')));
    let mut left_out: Vec<String> = Vec::new();
    for word in every.filter(|word| !word.is_empty()) {
        let is_known = known.iter().any(|known| **known == word);
        if !is_known && !left_out.contains(&word) {
            left_out.push(word);
        }
    }
    Ok((best, left_out))
}

/// What a kind of animal, and a month, is called besides by whoever phones.
struct Kinds {
    meat: BTreeMap<Species, String>,
    months: Vec<String>,
}

impl Kinds {
    fn of(app: &Caller<'_>, conn: &mut Conn, names: &Names) -> Result<Kinds> {
        let standing = app.standing(conn)?;
        let law = app.laws(&standing.confirmed);
        let rules = &law.of(standing.kitchen.entry.profile.0).statements.species;
        let meat = |species: &Species| {
            let says = Topic::Species(*species).says(rules);
            (*species, fold(&names.speech.say(&says)))
        };
        let months = names.speech.say(&QuerySays::Months.into());
        Ok(Kinds {
            meat: Species::ALL.iter().map(meat).collect(),
            months: months.split(' ').map(fold).collect(),
        })
    }
}

/// What stands between words.
fn parts_words(letter: char) -> bool {
    letter.is_whitespace() || ",;:?!".contains(letter)
}

/// The words that can name something, each once: a figure, or three letters and more that are no small word.
fn worth_asking(said: &str, small: &[String]) -> Vec<String> {
    let folded = fold(said);
    let mut worth: Vec<String> = Vec::new();
    for word in folded.split(parts_words) {
        let word = word.trim_end_matches('.');
        let names = word.chars().count() > 2 || word.chars().any(|of| of.is_ascii_digit());
        let is_small = small.iter().any(|small| small == word);
        if names && !is_small && !worth.iter().any(|known| known == word) {
            worth.push(word.to_owned());
        }
    }
    worth.truncate(WORDS);
    worth
}

/// Does a text have that word, or one that begins with it? In the middle of another it means nothing.
fn is_in(text: &str, word: &str) -> bool {
    let mut parts = text.split(|letter: char| !letter.is_alphanumeric());
    parts.any(|part| part.starts_with(word))
        || (!word.chars().all(char::is_alphanumeric) && text.contains(word))
}

/// Each thing once, and only those that fit as many words as any does; the first that was found comes first.
fn best(found: Vec<Thing>, fits: impl Fn(&Thing) -> usize) -> Vec<Thing> {
    let most = found.iter().map(&fits).max().unwrap_or(0);
    let mut seen = BTreeSet::new();
    let best = found
        .into_iter()
        .filter(|thing| most > 0 && fits(thing) == most && seen.insert(thing.path()));
    best.take(MOST).collect()
}

/// The words that a thing is known by.
fn fits<'a>(
    (app, names): (&Caller<'_>, &Names),
    kinds: &Kinds,
    thing: &Thing,
    words: &'a [String],
) -> Vec<&'a String> {
    // A carcass is known by its kind of animal too: nothing in the name of a half pig says pork.
    let hangs = |code: &str| {
        let product = names.standing.lists.products.get(code);
        let species = product.and_then(|product| product.species);
        let meat = species.and_then(|species| kinds.meat.get(&species));
        match hanging::is_one(names, code) {
            true => format!(
                "{} {}",
                hanging::words(names),
                meat.map_or("", String::as_str)
            ),
            false => String::new(),
        }
    };
    let text = match thing {
        Thing::Lot(lot, _) => {
            let note = lot.note.as_deref().unwrap_or_default();
            let (name, hangs) = (names.product(&lot.product), hangs(&lot.product));
            format!("{} {} {name} {note} {hangs}", lot.code, lot.code.shown())
        }
        Thing::Animal(animal) => {
            let species = names.speech.say(&animal.species.says());
            let farm = names.farm(&animal.farm);
            let meat = kinds.meat.get(&animal.species).map_or("", String::as_str);
            let month = animal.killed_on.month0() as usize;
            let month = kinds.months.get(month).map_or("", String::as_str);
            format!("{species} {meat} {farm} {} {month}", animal.farm)
        }
        Thing::Product(code, _) => {
            format!("{} {}", known_by(app, names, code).join(" "), hangs(code))
        }
        Thing::Person(_, name) | Thing::Place(_, name) | Thing::Farm(_, name) => name.clone(),
    };
    let text = fold(&text);
    let number = |number: &Option<String>, word: &str| {
        let own = number.as_deref().map(plain);
        own.is_some_and(|own| !plain(word).is_empty() && own.ends_with(&plain(word)))
    };
    let has_figure = |word: &str| word.chars().any(|letter| letter.is_ascii_digit());
    let is_known = |word: &&String| match thing {
        Thing::Animal(animal) => {
            is_in(&text, word)
                || (has_figure(word) && number(&animal.carcass, word))
                || (has_figure(word) && number(&animal.tag, word))
                || animal.killed_on.to_string() == **word
        }
        // A short number is what a code, or a part of it, begins or ends with; in the middle it is chance.
        Thing::Lot(lot, _) if has_figure(word) => {
            let code = fold(&lot.code.to_string());
            is_in(&text, word)
                || code.ends_with(word.as_str())
                || (word.chars().count() >= HALF_A_CODE && code.contains(word.as_str()))
        }
        _ => is_in(&text, word),
    };
    words.iter().filter(is_known).collect()
}

#[cfg(test)]
mod tests {
    use super::{Thing, best, is_in, worth_asking};

    #[test]
    fn little_words_name_nothing() {
        let small = ["the", "from"].map(str::to_owned);
        let worth = |said| worth_asking(said, &small);
        assert_eq!(worth("17 of Brindlecombe,"), ["17", "brindlecombe"]);
        assert_eq!(worth("le n° 8"), ["8"]);
        assert_eq!(worth("The pork from the pork man"), ["pork", "man"]);
    }

    #[test]
    fn a_word_is_not_meant_in_the_middle_of_another() {
        assert!(is_in("pork brindlecombe", "brindle"));
        assert!(!is_in("ground beef left in the grinder", "rind"));
        assert!(is_in("brc-26159-a0r", "brc-26159"));
    }

    #[test]
    fn what_fits_most_words_is_meant() {
        let farm = |code: &str| Thing::Farm(code.into(), code.into());
        let kept = best(vec![farm("A"), farm("B"), farm("B")], |thing| {
            usize::from(thing.path().ends_with('B'))
        });
        let paths: Vec<String> = kept.iter().map(Thing::path).collect();
        assert_eq!(paths, ["/animals?farm=B"]);
        assert!(best(vec![farm("A")], |_| 0).is_empty());
    }
}
