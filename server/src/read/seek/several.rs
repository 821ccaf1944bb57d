//! Several words that somebody said, such as `17 of Brindlecombe`: what fits most of them is meant, and words that fit
//! nothing are passed over.

use super::{MOST, Thing, fold, known_by, of_animals, of_lots, people, plain};
use crate::caller::Caller;
use crate::error::Result;
use crate::read::names::Names;
use std::collections::BTreeSet;
use store::Conn;
use store::animals::{self, AnimalSearch};

/// More words than that nobody says of one thing.
const WORDS: usize = 8;

/// What fits most of the words; nothing where there is but one word.
///
/// # Errors
/// The database is away, or the record is damaged.
pub(super) fn things(
    app: &Caller<'_>,
    conn: &mut Conn,
    names: &Names,
    said: &str,
) -> Result<Vec<Thing>> {
    let words = worth_asking(said);
    if said.split_whitespace().count() < 2 {
        return Ok(Vec::new());
    }
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
    let speaks_of = |name: &str| words.iter().any(|word| fold(name).contains(word.as_str()));
    for (code, name) in names.farms.iter().filter(|(_, name)| speaks_of(name)) {
        let sought = AnimalSearch {
            farm: Some(code.clone()),
            ..AnimalSearch::default()
        };
        for (row, uid) in animals::list(conn, &sought, MOST as i64)? {
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
    Ok(best(found, |thing| fits(app, names, thing, &words)))
}

/// The words that can name something: a figure, or three letters and more.
fn worth_asking(said: &str) -> Vec<String> {
    let folded = fold(said);
    let words = folded.split(|letter: char| letter.is_whitespace() || ",;:?!".contains(letter));
    let long = words.filter(|word| {
        word.chars().count() > 2 || word.chars().any(|letter| letter.is_ascii_digit())
    });
    long.take(WORDS).map(str::to_owned).collect()
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

/// How many of the words a thing is known by.
fn fits(app: &Caller<'_>, names: &Names, thing: &Thing, words: &[String]) -> usize {
    let text = match thing {
        Thing::Lot(lot, _) => {
            let note = lot.note.as_deref().unwrap_or_default();
            format!("{} {} {note}", lot.code, names.product(&lot.product))
        }
        Thing::Animal(animal) => {
            let species = names.speech.say(&animal.species.says());
            let farm = names.farm(&animal.farm);
            format!("{species} {farm} {}", animal.farm)
        }
        Thing::Product(code, _) => known_by(app, names, code).join(" "),
        Thing::Person(_, name) | Thing::Place(_, name) | Thing::Farm(_, name) => name.clone(),
    };
    let text = fold(&text);
    let number = |number: &Option<String>, word: &str| {
        let own = number.as_deref().map(plain);
        own.is_some_and(|own| !plain(word).is_empty() && own.ends_with(&plain(word)))
    };
    let is_known = |word: &&String| match thing {
        Thing::Animal(animal) => {
            text.contains(word.as_str())
                || number(&animal.carcass, word)
                || number(&animal.tag, word)
                || animal.killed_on.to_string() == **word
        }
        _ => text.contains(word.as_str()),
    };
    words.iter().filter(is_known).count()
}

#[cfg(test)]
mod tests {
    use super::{Thing, best, worth_asking};

    #[test]
    fn little_words_name_nothing() {
        assert_eq!(worth_asking("17 of Brindlecombe,"), ["17", "brindlecombe"]);
        assert_eq!(worth_asking("le n° 8"), ["n°", "8"].map(str::to_owned)[1..]);
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
