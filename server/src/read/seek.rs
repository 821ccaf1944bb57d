//! What somebody may mean: a scan, half a code, a carcass number, a tag, a product, a place, a person.

mod hanging;
mod several;

use crate::caller::Caller;
use crate::error::Result;
use crate::ids::shown_id;
use crate::read::brief::briefs;
use crate::read::names::Names;
use domain::family::SourceAnimal;
use domain::gs1;
use domain::lot::Brief;
use domain::scanned::{self, Scanned};
use serde::Deserialize;
use store::list_lots::{self, LotSearch};
use store::lots::LotRow;
use store::{Conn, animals, lots};
use utoipa::IntoParams;

/// What somebody said. What is said of the field stands in the API's document.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub struct SeekQuery {
    /// A scan, a code or a part of one, a carcass number or tag in any spelling, a product, place, farm or person
    pub q: Option<String>,
}

/// The most of each sort.
const MOST: usize = 12;

/// Something on record that may be meant.
#[derive(Debug, Clone)]
pub enum Thing {
    /// A lot, and perhaps one of its packs.
    Lot(Brief, Option<u32>),
    /// A source animal.
    Animal(SourceAnimal),
    /// A person: their id and name.
    Person(String, String),
    /// A place: its code and name.
    Place(String, String),
    /// A farm: its code and name.
    Farm(String, String),
    /// A product: its code and name.
    Product(String, String),
}

impl Thing {
    /// What it is, as it is spelt.
    pub fn kind(&self) -> &'static str {
        match self {
            Thing::Lot(_, None) => "lot",
            Thing::Lot(_, Some(_)) => "pack",
            Thing::Animal(_) => "animal",
            Thing::Person(..) => "person",
            Thing::Place(..) => "place",
            Thing::Farm(..) => "farm",
            Thing::Product(..) => "product",
        }
    }

    /// Where its page is.
    pub fn path(&self) -> String {
        match self {
            Thing::Lot(lot, None) => format!("/lots/{}", lot.code),
            Thing::Lot(lot, Some(pack)) => format!("/lots/{}?pack={pack}", lot.code),
            Thing::Animal(animal) => format!("/animals/{}", shown_id(&animal.uid)),
            Thing::Person(id, _) => format!("/people#{id}"),
            Thing::Place(code, _) => format!("/places/{code}"),
            Thing::Farm(code, _) => format!("/animals?farm={code}"),
            Thing::Product(code, _) => format!("/lots?product={code}"),
        }
    }
}

/// What was found.
#[derive(Debug, Clone, Default)]
pub struct Sought {
    /// What may be meant, sort by sort.
    pub things: Vec<Thing>,
    /// Is one of them what was said, letter for letter? Then it is the first.
    pub exact: bool,
    /// Are there more lots than these?
    pub more: bool,
    /// Is it the label of another kitchen?
    pub elsewhere: bool,
    /// Words of a sentence that name nothing of what was found first.
    pub left_out: Vec<String>,
}

impl Sought {
    fn one(thing: Thing) -> Sought {
        Sought {
            things: vec![thing],
            exact: true,
            ..Sought::default()
        }
    }

    /// The one thing that is meant, if that is clear.
    pub fn only(&self) -> Option<&Thing> {
        let alone = self.things.len() == 1 && !self.more;
        self.things.first().filter(|_| self.exact || alone)
    }
}

/// Looks for whatever somebody said.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn seek(app: &Caller<'_>, conn: &mut Conn, said: &str) -> Result<Sought> {
    let said = said.trim();
    if said.is_empty() {
        return Ok(Sought::default());
    }
    let names = Names::load(app, conn)?;
    let mut word = said.to_owned();
    match scanned::read(said, &app.ours()) {
        Scanned::Lot { code, pack } => {
            if let Some(row) = lots::by_code(conn, &code)? {
                let brief = briefs(app, conn, &[row])?.pop();
                return Ok(brief
                    .map(|lot| Sought::one(Thing::Lot(lot, pack)))
                    .unwrap_or_default());
            }
        }
        Scanned::Elsewhere(_) => {
            return Ok(Sought {
                elsewhere: true,
                ..Sought::default()
            });
        }
        Scanned::Unreadable(_) => {
            // A supplier's carton: its own lot number is what it is known by here.
            let read = gs1::read(gs1::strip_symbology(said)).ok();
            let lot = read.as_ref().and_then(|elements| elements.lot());
            word = lot.map_or(word, str::to_owned);
        }
    }
    let folded = fold(&word);
    let mut things = Vec::new();
    let mut exact = None;
    let mut add = |thing: Thing, is_it: bool| {
        if is_it && exact.is_none() {
            exact = Some(things.len());
        }
        things.push(thing);
    };
    for animal in of_animals(conn, &word)? {
        let is_it = |number: &Option<String>| {
            number
                .as_deref()
                .is_some_and(|number| plain(number) == plain(&word))
        };
        let whole = is_it(&animal.carcass) || is_it(&animal.tag);
        add(Thing::Animal(animal), whole);
    }
    for (id, name) in people(app, &folded) {
        let whole = fold(&name) == folded;
        add(Thing::Person(id, name), whole);
    }
    for (list, thing) in [
        (&names.places, Thing::Place as fn(String, String) -> Thing),
        (&names.farms, Thing::Farm as fn(String, String) -> Thing),
    ] {
        for (code, name) in listed(
            list.iter()
                .map(|(code, name)| (code.as_str(), name.as_str())),
            &folded,
        ) {
            let whole = fold(&name) == folded || fold(&code) == folded;
            add(thing(code, name), whole);
        }
    }
    let mut hung = Vec::new();
    if hanging::is_meant(&names, &folded) {
        for lot in hanging::lots(app, conn, &names)? {
            hung.push(lot.code.clone());
            add(Thing::Lot(lot, None), false);
        }
    }
    let mut products = names.products();
    products.retain(|(code, _)| {
        fold(code).contains(&folded)
            || known_by(app, &names, code)
                .iter()
                .any(|name| fold(name).contains(&folded))
    });
    products.sort_by_key(|(_, name)| {
        // What is called so comes before what is only known by that name.
        (
            !fold(name).contains(&folded),
            name.chars().count(),
            fold(name),
        )
    });
    for (code, name) in products.into_iter().take(MOST) {
        let whole = fold(&name) == folded || fold(&code) == folded;
        add(Thing::Product(code, name), whole);
    }
    let (of_lots, more) = of_lots(app, conn, &word)?;
    for lot in of_lots.into_iter().filter(|lot| !hung.contains(&lot.code)) {
        let whole = lot.note.as_deref().is_some_and(|note| fold(note) == folded);
        add(Thing::Lot(lot, None), whole);
    }
    let mut left_out = Vec::new();
    if things.is_empty() {
        (things, left_out) = several::things(app, conn, &names, &word)?;
    }
    if let Some(nth) = exact {
        let first = things.remove(nth);
        things.insert(0, first);
    }
    Ok(Sought {
        things,
        exact: exact.is_some(),
        more,
        elsewhere: false,
        left_out,
    })
}

/// Animals of a carcass number or tag: without a figure it is none.
fn of_animals(conn: &mut Conn, word: &str) -> Result<Vec<SourceAnimal>> {
    let number = plain(word);
    let letters = word.chars().filter(|letter| letter.is_alphabetic()).count();
    if number.chars().count() < 2
        || letters > 4
        || !number.chars().any(|letter| letter.is_ascii_digit())
    {
        return Ok(Vec::new());
    }
    let found = animals::numbered(conn, &number, MOST as i64)?;
    let found = found.iter().map(|(row, uid)| Ok(row.source_animal(uid)?));
    found.collect()
}

fn of_lots(app: &Caller<'_>, conn: &mut Conn, word: &str) -> Result<(Vec<Brief>, bool)> {
    let sought = LotSearch {
        word: Some(word.to_lowercase()),
        ..LotSearch::default()
    };
    let found = list_lots::list(conn, &sought, MOST as i64 + 1)?;
    let more = found.len() > MOST;
    let mut rows: Vec<LotRow> = found.into_iter().take(MOST).map(|(row, _)| row).collect();
    // What is there is looked for more often than what is gone.
    rows.sort_by_key(|row| row.on_hand_mg == 0);
    Ok((briefs(app, conn, &rows)?, more))
}

/// What a product is known by in the reader's language: the house's name, the customers', and what the trade calls the
/// piece of a carcass that it is.
fn known_by(app: &Caller<'_>, names: &Names, code: &str) -> Vec<String> {
    let language = names.speech.language.tag();
    let mut known = vec![names.product(code)];
    let Some(product) = names.standing.lists.products.get(code) else {
        return known;
    };
    let own = [product.names.get(language), product.sold_as.get(language)];
    known.extend(own.into_iter().flatten().cloned());
    let styles = app.law.trade.yields.styles.iter();
    let pieces = styles.filter(|style| Some(style.species) == product.species);
    let pieces = pieces.flat_map(|style| &style.pieces);
    let pieces = pieces.filter(|piece| Some(&piece.key) == product.cut.as_ref());
    known.extend(pieces.map(|piece| piece.name.in_language(language).to_owned()));
    if hanging::is_one(names, code) {
        known.push(hanging::words(names));
    }
    known
}

fn people(app: &Caller<'_>, folded: &str) -> Vec<(String, String)> {
    let known = app.people();
    let people = known.people.iter().filter(|person| person.row.active);
    let people = people.filter(|person| fold(&person.row.name).contains(folded));
    people
        .take(MOST)
        .map(|person| (person.uid().to_string(), person.row.name.clone()))
        .collect()
}

fn listed<'a>(
    list: impl Iterator<Item = (&'a str, &'a str)>,
    folded: &str,
) -> Vec<(String, String)> {
    list.filter(|(code, name)| fold(name).contains(folded) || fold(code) == folded)
        .take(MOST)
        .map(|(code, name)| (code.to_owned(), name.to_owned()))
        .collect()
}

/// A number without what stands between its letters and figures.
fn plain(number: &str) -> String {
    let letters = number.chars().filter(char::is_ascii_alphanumeric);
    letters.map(|letter| letter.to_ascii_uppercase()).collect()
}

/// Small letters without accents: who types with wet fingers leaves them out.
pub fn fold(text: &str) -> String {
    let small = text.trim().chars().flat_map(char::to_lowercase);
    small
        .flat_map(|letter| match letter {
            'à' | 'â' | 'ä' | 'á' => vec!['a'],
            'é' | 'è' | 'ê' | 'ë' => vec!['e'],
            'î' | 'ï' | 'í' => vec!['i'],
            'ô' | 'ö' | 'ó' => vec!['o'],
            'ù' | 'û' | 'ü' | 'ú' => vec!['u'],
            'ç' => vec!['c'],
            'ñ' => vec!['n'],
            'œ' => vec!['o', 'e'],
            'æ' => vec!['a', 'e'],
            '’' => vec!['\''],
            '\u{a0}' | '\u{202f}' => vec![' '],
            other => vec![other],
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{fold, plain};

    #[test]
    fn spelling_does_not_matter() {
        assert_eq!(plain("0608-17"), "060817");
        assert_eq!(plain(" br 2217"), "BR2217");
        assert_eq!(fold("Épaule d’agneau "), "epaule d'agneau");
        assert_eq!(fold("Œuf"), "oeuf");
    }
}
