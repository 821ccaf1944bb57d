//! Where the animals of a pack lived and died, as its label has it.

use super::{ClaimSays, words};
use crate::country;
use crate::says::{Arg, Texts};
use std::collections::BTreeSet;

/// What is said of where the animals come from. What is not said is empty.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct OriginClaim {
    /// The countries in which they were born.
    pub born: BTreeSet<String>,
    /// Those in which they were raised.
    pub reared: BTreeSet<String>,
    /// Those in which they were killed.
    pub slaughtered: BTreeSet<String>,
    /// The numbers of the abattoirs, of beef, whose label tells them.
    pub abattoirs: BTreeSet<String>,
}

impl OriginClaim {
    /// What of it is not so, each as it is said and as it is. What a label leaves out it does not say wrongly.
    pub(super) fn untrue(&self, now: &OriginClaim) -> Option<(ClaimSays, ClaimSays)> {
        let countries = |of: &BTreeSet<String>| words(of.iter().map(|of| named(of)));
        let numbers = |of: &BTreeSet<String>| words(of.iter().map(|of| Arg::from(of.clone())));
        let differ =
            |said: &BTreeSet<String>, now: &BTreeSet<String>| !said.is_empty() && said != now;
        if differ(&self.born, &now.born) {
            return Some((countries(&self.born), countries(&now.born)));
        }
        if differ(&self.reared, &now.reared) {
            return Some((countries(&self.reared), countries(&now.reared)));
        }
        if differ(&self.slaughtered, &now.slaughtered) {
            return Some((countries(&self.slaughtered), countries(&now.slaughtered)));
        }
        let abattoirs = differ(&self.abattoirs, &now.abattoirs);
        abattoirs.then(|| (numbers(&self.abattoirs), numbers(&now.abattoirs)))
    }

    /// As lines of the text that the record keeps.
    pub(super) fn lines(&self) -> impl Iterator<Item = String> {
        let sets = [
            ("born", &self.born),
            ("reared", &self.reared),
            ("slaughtered", &self.slaughtered),
            ("abattoir", &self.abattoirs),
        ];
        let line = |(word, all): (&str, &BTreeSet<String>)| {
            let lines = all.iter().map(|one| format!("{word} {one}"));
            lines.collect::<Vec<String>>()
        };
        std::iter::once("origin".to_owned()).chain(sets.into_iter().flat_map(line))
    }

    /// Takes in one of those lines.
    pub(super) fn take(&mut self, word: &str, rest: &str) -> Option<()> {
        let all = match word {
            "born" => &mut self.born,
            "reared" => &mut self.reared,
            "slaughtered" => &mut self.slaughtered,
            "abattoir" => &mut self.abattoirs,
            _ => return None,
        };
        all.insert(rest.to_owned());
        Some(())
    }
}

fn named(country: &str) -> Arg {
    let in_language = |tag: &str| (tag.to_owned(), country::name(country, tag).to_owned());
    let names = ["en", "fr"].map(in_language);
    Arg::from(Texts::new(names.into_iter().collect()))
}
