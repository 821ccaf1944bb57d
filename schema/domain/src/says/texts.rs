//! A text of the data, in the languages that it was written in: the name of a cut, what a row says.

use std::collections::{BTreeMap, BTreeSet};

/// A text by language tag.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Texts(BTreeMap<String, String>);

impl Texts {
    /// Of texts by language tag.
    pub fn new(texts: BTreeMap<String, String>) -> Texts {
        Texts(texts)
    }

    /// The text in a language (`fr`), or for its readers of one place (`fr-CA`), else in the language, in English, any.
    pub fn in_language(&self, language: &str) -> &str {
        said(&self.0, language)
    }

    /// Several texts as one, in every language that one of them has.
    pub fn joined(texts: &[Texts], between: &str) -> Texts {
        let tags: BTreeSet<&String> = texts.iter().flat_map(|text| text.0.keys()).collect();
        let joined = |tag: &str| {
            let all: Vec<&str> = texts.iter().map(|text| text.in_language(tag)).collect();
            all.join(between)
        };
        Texts(
            tags.into_iter()
                .map(|tag| (tag.clone(), joined(tag)))
                .collect(),
        )
    }

    /// Each language with its text.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        let texts = self.0.iter();
        texts.map(|(language, text)| (language.as_str(), text.as_str()))
    }
}

impl From<&str> for Texts {
    /// A text in English alone.
    fn from(text: &str) -> Texts {
        Texts([("en".to_owned(), text.to_owned())].into())
    }
}

/// The text in a language, for one place's readers where it has one of their own; else in English, else any.
pub fn said<'a>(texts: &'a BTreeMap<String, String>, language: &str) -> &'a str {
    let of_all = || texts.get(language.split_once('-')?.0);
    let text = texts.get(language).or_else(of_all);
    let text = text.or_else(|| texts.get("en"));
    text.or_else(|| texts.values().next())
        .map_or("", |text| text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_has_its_own_word_or_that_of_the_language() {
        let of = |texts: &[(&str, &str)]| {
            let texts = texts.iter();
            Texts::new(
                texts
                    .map(|(tag, text)| ((*tag).into(), (*text).into()))
                    .collect(),
            )
        };
        let belly = of(&[("en", "belly"), ("fr", "poitrine"), ("fr-CA", "flanc")]);
        assert_eq!(belly.in_language("fr-CA"), "flanc");
        assert_eq!(belly.in_language("fr"), "poitrine");
        assert_eq!(belly.in_language("en-US"), "belly");
        let loin = of(&[("en", "loin"), ("fr", "longe")]);
        assert_eq!(loin.in_language("fr-CA"), "longe");
        assert_eq!(loin.in_language("es-ES"), "loin");
    }
}
