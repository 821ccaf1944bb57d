//! The words that tell what a guest asks about, in the name of a food and in the list on its pack. None of it is
//! law.

use crate::product::Product;
use crate::rows::RowId;
use crate::statement::find_words;
use std::collections::BTreeMap;

/// Words by language, with the phrases in which they mean something else.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct NamedBy {
    /// The row.
    pub row: Option<RowId>,
    /// The words.
    pub words: BTreeMap<String, Vec<String>>,
    /// The phrases.
    pub but_not: BTreeMap<String, Vec<String>>,
}

/// The words that tell what a guest asks about.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct AskRules {
    /// Names of foods that are one thing, of which nobody has to say more: butter, black pepper.
    pub single: NamedBy,
    /// What has alcohol in it.
    pub alcohol: NamedBy,
    /// What may have: vinegar of wine.
    pub perhaps_alcohol: NamedBy,
    /// What is nitrite or nitrate, or a salt that cures.
    pub nitrite: NamedBy,
    /// What brings nitrite or nitrate by nature: celery powder.
    pub natural_nitrite: NamedBy,
    /// What may be of any animal: gelatine, shortening.
    pub any_animal: NamedBy,
}

impl AskRules {
    /// Does a text name nitrite or nitrate, or what brings them?
    pub fn brings_nitrite(&self, text: &str, language: &str) -> bool {
        self.nitrite.is_in(text, language) || self.natural_nitrite.is_in(text, language)
    }
}

impl NamedBy {
    /// Does a text have one of the words, in any language of them that it is written in?
    pub fn is_in(&self, text: &str, language: &str) -> bool {
        let Some(words) = self.words.get(language) else {
            return false;
        };
        // Capitals that grow when they are made small would hide what stands after them.
        let small = text.to_lowercase();
        let but_not = self.but_not.get(language).map_or(&[][..], Vec::as_slice);
        !find_words(&small, words, but_not).is_empty()
    }

    /// The first of the words that a text has, as it stands there.
    pub fn first_in(&self, text: &str, language: &str) -> Option<String> {
        let words = self.words.get(language)?;
        let small = text.to_lowercase();
        let but_not = self.but_not.get(language).map_or(&[][..], Vec::as_slice);
        let found = find_words(&small, words, but_not);
        found.into_iter().next().map(|at| small[at].to_owned())
    }

    /// Is the whole of a name one of the words?
    pub fn is_name_of(&self, product: &Product) -> bool {
        let mut names = product.names.iter();
        names.any(|(language, name)| self.is_all_of(name, language))
    }

    /// Is the whole of a text one of the words?
    pub fn is_all_of(&self, text: &str, language: &str) -> bool {
        let text = text.trim().to_lowercase();
        let words = self.words.get(language);
        words.is_some_and(|words| words.iter().any(|word| word.to_lowercase() == text))
    }

    /// Does a name of it have one of the words?
    pub fn names(&self, product: &Product) -> bool {
        let mut names = product.names.iter();
        names.any(|(language, name)| self.is_in(name, language))
    }

    /// Are there words in a language?
    pub fn speaks(&self, language: &str) -> bool {
        self.words.contains_key(language)
    }
}
