//! The languages that there is a catalogue for.

/// A language of the catalogue.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// French.
    French,
}

impl Language {
    /// Every language.
    pub const ALL: [Language; 2] = [Language::English, Language::French];

    /// Its tag, as in a page's `lang`: `en`.
    pub const fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::French => "fr",
        }
    }

    /// The language of a tag (`fr`, `fr-CA`), if there is a catalogue for it.
    pub fn of_tag(tag: &str) -> Option<Language> {
        let primary = tag.split(['-', '_']).next().unwrap_or_default();
        Language::ALL
            .into_iter()
            .find(|language| primary.eq_ignore_ascii_case(language.tag()))
    }

    /// The first language of an `Accept-Language` header that there is a catalogue for, by its weights;
    /// none where the reader wants none of them.
    pub fn accepted(header: &str) -> Option<Language> {
        let mut best: Option<(f32, Language)> = None;
        for part in header.split(',') {
            let mut fields = part.split(';').map(str::trim);
            let Some(language) = fields.next().and_then(Language::of_tag) else {
                continue;
            };
            let weight = fields
                .find_map(|field| field.strip_prefix("q="))
                .map_or(1.0, |text| text.trim().parse().unwrap_or(0.0));
            if weight > 0.0 && best.is_none_or(|(known, _)| known < weight) {
                best = Some((weight, language));
            }
        }
        best.map(|(_, language)| language)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_header_names_the_language_by_weight() {
        let accepted = |header| Language::accepted(header).map(Language::tag);
        assert_eq!(accepted("fr-CA,fr;q=0.9,en;q=0.8"), Some("fr"));
        assert_eq!(accepted("de, en;q=0.3, fr;q=0.7"), Some("fr"));
        assert_eq!(accepted("en-GB"), Some("en"));
        assert_eq!(accepted("de"), None);
        assert_eq!(accepted("fr;q=0"), None);
        assert_eq!(accepted(""), None);
    }
}
