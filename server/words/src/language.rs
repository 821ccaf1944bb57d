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
        wanted(header).into_iter().find_map(Language::of_tag)
    }
}

/// The tags that an `Accept-Language` header wants, by its weights: the most wanted first, and those that weigh the same
/// in their order.
pub fn wanted(header: &str) -> Vec<&str> {
    let mut all: Vec<(f32, &str)> = header
        .split(',')
        .filter_map(|part| {
            let mut fields = part.split(';').map(str::trim);
            let tag = fields.next().filter(|tag| !tag.is_empty())?;
            let weight = fields.find_map(|field| field.strip_prefix("q="));
            let weight = weight.map_or(1.0, |text| text.trim().parse().unwrap_or(0.0));
            (weight > 0.0).then_some((weight, tag))
        })
        .collect();
    // The sort keeps the order of those that weigh the same.
    all.sort_by(|(one, _), (other, _)| other.total_cmp(one));
    all.into_iter().map(|(_, tag)| tag).collect()
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
