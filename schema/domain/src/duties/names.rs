//! Words in a product's name, and what they may stand for.

use super::standards_say::NameSays;
use crate::measure::{Percent, Temperature};
use crate::rows::{Bound, Finding, RowId, Rows};
use crate::says::Arg;
use crate::words::{Species, words};

words! {
    /// The part of the animal that a product is made of.
    Part {
        HindLeg = "hind-leg", Shoulder = "shoulder", Loin = "loin", Belly = "belly",
        Shank = "shank", Trim = "trim", Jowl = "jowl", Feet = "feet", Other = "other",
    }
}

/// Names with a rule.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct NameRules {
    /// Words that have one.
    pub words: Vec<NameRule>,
    /// What is packed in a liquid says so.
    pub packed_in: Option<RowId>,
    /// Names of places.
    pub places: Option<PlaceNames>,
}

/// Names of places in a product's name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlaceNames {
    /// Where it stands.
    pub row: RowId,
    /// The word that has to stand beside.
    pub beside: Vec<String>,
    /// Names that are free.
    pub generic: Vec<String>,
}

/// A word that has a rule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NameRule {
    /// Where it stands.
    pub row: RowId,
    /// The words or phrases, in lower case; any of them calls the rule up.
    pub words: Vec<String>,
    /// Phrases with which the name says so itself, and the rule does not apply.
    pub qualified: Vec<String>,
    /// What the word demands.
    pub demand: Demand,
}

/// What a word demands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Demand {
    /// These parts of these animals only.
    CutOf {
        /// The animals.
        species: Vec<Species>,
        /// The parts.
        parts: Vec<Part>,
    },
    /// No nitrite, no nitrate, not salted to keep.
    NotCured,
    /// A core temperature, in degrees Fahrenheit.
    Heated {
        /// Of the meat of these animals.
        species: Vec<Species>,
        /// Of a cut.
        cut: Bound,
        /// Of a loaf.
        loaf: Bound,
    },
    /// Both bones of the shank are out.
    ShankBonesOut,
    /// Bones that remain are named with one of these words.
    NamesBones(Vec<String>),
    /// Made there, or one of these words stands beside it.
    MadeThere(Vec<String>),
    /// The heat did more than kill trichinae.
    MoreThanTrichinae,
    /// Cooked before it is sold.
    CookedBeforeSale,
    /// Other fat is said, and is no more than so much of the whole, in percent.
    SaysFatAdded {
        /// The most.
        most: Bound,
    },
}

/// What is to be named.
#[derive(Debug, Clone, Copy, Default)]
pub struct FoodToName<'a> {
    /// The name as it will be printed.
    pub name: &'a str,
    /// The animal, if it comes from one.
    pub species: Option<Species>,
    /// The part of it.
    pub part: Option<Part>,
    /// Is there nitrite or nitrate in it, from any source?
    pub nitrite: bool,
    /// Was it salted to keep?
    pub salted_to_keep: bool,
    /// Was it cooked?
    pub cooked: bool,
    /// The highest temperature that the core reached.
    pub core: Option<Temperature>,
    /// Is it a loaf rather than a cut?
    pub loaf: bool,
    /// Was it heated for trichinae and no more?
    pub heated_for_trichinae_only: bool,
    /// Are both bones of the shank fully out?
    pub shank_bones_out: bool,
    /// Do bones remain in it?
    pub bones_remain: bool,
    /// Was it made where the name says (on a farm, in the country, in the place named)?
    pub made_there: bool,
    /// Does it meet the standard of a dry-cured ham or shoulder under its own section?
    pub dry_cured_standard: bool,
    /// Packed in this liquid: `brine`, `vinegar`.
    pub packed_in: Option<&'a str>,
    /// The name of the fat that was added to lard (`beef`), and how much of the whole it is.
    pub fat_added: Option<(&'a str, Percent)>,
}

impl NameRule {
    pub(super) fn bounds_mut(&mut self) -> Vec<&mut Bound> {
        match &mut self.demand {
            Demand::Heated { cut, loaf, .. } => vec![cut, loaf],
            Demand::SaysFatAdded { most } => vec![most],
            _ => Vec::new(),
        }
    }
}

/// The words of a name, lower case, without marks: `Pig's feet` is `pigs feet`.
pub(crate) fn words_of(name: &str) -> Vec<String> {
    words_in(name).map(|word| plain(word).collect()).collect()
}

/// The words as they are written: `Pig's` and `feet`.
fn words_in(name: &str) -> impl Iterator<Item = &str> {
    let pieces = name.split(|c: char| !c.is_alphanumeric() && !is_mark(c));
    pieces.filter(|word| word.contains(char::is_alphanumeric))
}

fn is_mark(c: char) -> bool {
    matches!(c, '\'' | '’')
}

fn plain(word: &str) -> impl Iterator<Item = char> {
    let letters = word.chars().filter(|&c| !is_mark(c));
    letters.flat_map(char::to_lowercase)
}

/// Does the name hold the phrase, word for word?
pub(crate) fn says(name: &[String], phrase: &str) -> bool {
    (0..name.len()).any(|at| begins(&name[at..], phrase).is_some())
}

/// How many words of it the phrase is with which a name begins, word for word. Asked of each phrase with a rule for each
/// label: so it writes nothing down.
pub(crate) fn begins(name: &[String], phrase: &str) -> Option<usize> {
    let mut length = 0;
    for word in words_in(phrase) {
        let of = name.get(length)?;
        if !plain(word).eq(of.chars()) {
            return None;
        }
        length += 1;
    }
    (length > 0).then_some(length)
}

/// What stands against the name (`us` 4.5, `canada-eu-uk` 4.15). Nothing found is no promise that
/// the name is right: only words with a rule are looked at.
pub fn check_name(rules: &super::DutyRules, rows: &Rows, named: &FoodToName) -> Vec<Finding> {
    let name = words_of(named.name);
    let mut found = Vec::new();
    for rule in &rules.names.words {
        let Some(word) = rule.words.iter().find(|word| says(&name, word)) else {
            continue;
        };
        if let Some(by) = rule.qualified.iter().find(|phrase| says(&name, phrase)) {
            let (by, word) = (by.clone(), word.clone());
            let note = NameSays::MadePlain { by, word };
            found.push(Finding::note(note, [rule.row.clone()]));
            continue;
        }
        if let Some(says) = rule.demand.is_missed(word, &name, named) {
            found.push(Finding::against(rows, &rule.row, says));
        }
    }
    found.extend(packed_in(rules, rows, &name, named));
    found
}

/// What is packed in brine or vinegar says so in its name.
fn packed_in(
    rules: &super::DutyRules,
    rows: &Rows,
    name: &[String],
    named: &FoodToName,
) -> Option<Finding> {
    let row = rules.names.packed_in.as_ref()?;
    let liquid = named.packed_in.filter(|liquid| !says(name, liquid))?;
    let says = NameSays::PackedIn {
        liquid: liquid.to_owned(),
        name: named.name.to_owned(),
    };
    Some(Finding::against(rows, row, says))
}

/// One of these words, each in quotation marks.
fn any_of(words: &[String]) -> Arg {
    let quoted = words
        .iter()
        .map(|word| NameSays::Quoted { text: word.clone() });
    Arg::Any(quoted.map(Arg::from).collect())
}

impl Demand {
    fn is_missed(&self, word: &str, name: &[String], named: &FoodToName) -> Option<NameSays> {
        let word = word.to_owned();
        match self {
            Demand::CutOf { species, parts } => {
                let right = named.species.is_some_and(|of| species.contains(&of))
                    && named.part.is_some_and(|part| parts.contains(&part));
                (!right).then(|| NameSays::CutOf {
                    word,
                    parts: Arg::All(parts.iter().map(|part| Arg::from(*part)).collect()),
                    species: Arg::All(species.iter().map(|of| Arg::from(*of)).collect()),
                })
            }
            Demand::NotCured if named.nitrite => Some(NameSays::Nitrite { word }),
            Demand::NotCured => named.salted_to_keep.then_some(NameSays::Salted { word }),
            Demand::Heated { species, cut, loaf } => {
                named.species.filter(|of| species.contains(of))?;
                let bound = if named.loaf { loaf } else { cut };
                let least = Temperature::fahrenheit(bound.value);
                match named.core {
                    Some(core) if bound.allows(core.in_fahrenheit()) => None,
                    Some(core) => Some(NameSays::CoreCool { word, least, core }),
                    None => Some(NameSays::CoreUnread { word, least }),
                }
            }
            Demand::ShankBonesOut => {
                (!named.shank_bones_out).then_some(NameSays::ShankBones { word })
            }
            Demand::NamesBones(with) => {
                let named_there = with.iter().any(|with| says(name, with));
                let missed = named.cooked && named.bones_remain && !named_there;
                missed.then(|| NameSays::Bones { add: any_of(with) })
            }
            Demand::MadeThere(or) => {
                let excused = named.made_there || named.dry_cured_standard;
                let missed = !excused && !or.iter().any(|or| says(name, or));
                let add = any_of(or);
                missed.then_some(NameSays::MadeThere { word, add })
            }
            Demand::MoreThanTrichinae => named
                .heated_for_trichinae_only
                .then_some(NameSays::OnlyTrichinae { word }),
            Demand::CookedBeforeSale => (!named.cooked).then_some(NameSays::NotCooked { word }),
            Demand::SaysFatAdded { most } => {
                let (fat, part) = named.fat_added?;
                let says_so = says(name, &format!("{fat} fat added"));
                let fat = fat.to_owned();
                if !most.allows(part.number()) {
                    let most = most.value;
                    return Some(NameSays::MuchFat {
                        part,
                        fat,
                        word,
                        most,
                    });
                }
                (!says_so).then_some(NameSays::SayFat { fat })
            }
        }
    }
}

/// A note that the place of a name is free to use, or what has to stand beside it.
pub fn check_place_name(
    rules: &super::DutyRules,
    rows: &Rows,
    name: &str,
    place: &str,
    made_there: bool,
) -> Option<Finding> {
    let rule = rules.names.places.as_ref()?;
    let words = words_of(name);
    let free = rule
        .generic
        .iter()
        .any(|generic| generic.eq_ignore_ascii_case(place));
    if made_there || free || !says(&words, place) {
        return None;
    }
    let has = rule.beside.iter().any(|beside| says(&words, beside));
    match has {
        true => Some(Finding::note(NameSays::SayWhere, [rule.row.clone()])),
        false => {
            let says = NameSays::NotMadeThere {
                place: place.to_owned(),
                add: any_of(&rule.beside),
            };
            Some(Finding::against(rows, &rule.row, says))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_whole_words() {
        let check = |name: &str, phrase: &str, expected: bool| {
            assert_eq!(
                says(&words_of(name), phrase),
                expected,
                "{phrase} in {name}"
            );
        };
        check("Country Ham, sliced", "ham", true);
        check("Hamburger", "ham", false);
        check("Cooked Pig's Feet", "pigs feet", true);
        check("Ham", "country ham", false);
        check("", "ham", false);
    }
}
