//! The files of the catalogue, parsed once.

use crate::Language;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::sync::LazyLock;
use unic_langid::LanguageIdentifier;

const ENGLISH: &str = include_str!("../catalogue/en.ftl");
const FRENCH: &str = include_str!("../catalogue/fr.ftl");

/// The text of a language's file.
pub(crate) const fn text(language: Language) -> &'static str {
    match language {
        Language::English => ENGLISH,
        Language::French => FRENCH,
    }
}

static ENGLISH_BUNDLE: LazyLock<FluentBundle<FluentResource>> =
    LazyLock::new(|| bundle(Language::English));
static FRENCH_BUNDLE: LazyLock<FluentBundle<FluentResource>> =
    LazyLock::new(|| bundle(Language::French));

fn bundle(language: Language) -> FluentBundle<FluentResource> {
    let tag = LanguageIdentifier::from_bytes(language.tag().as_bytes()).unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![tag]);
    // Nothing here is written from right to left, and labels and codes take no invisible marks.
    bundle.set_use_isolating(false);
    // A test reads both files without an error; here whatever reads well is used.
    let resource =
        FluentResource::try_new(text(language).to_owned()).unwrap_or_else(|(some, _)| some);
    bundle.add_resource_overriding(resource);
    // One function of that name only: there is no other to be in its way.
    let _ = bundle.add_function("CAPITAL", |given, _| match given {
        [FluentValue::String(text), ..] => capital(text).into(),
        [other, ..] => other.clone(),
        [] => FluentValue::Error,
    });
    bundle
}

/// The same text with a capital first letter, for a word that begins a sentence or a line.
///
/// ```
/// assert_eq!(words::capital("œuf"), "Œuf");
/// ```
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// The message of a key in a language, its arguments filled in; nothing where there is none.
pub(crate) fn message(language: Language, key: &str, args: &FluentArgs<'_>) -> Option<String> {
    let bundle = match language {
        Language::English => &*ENGLISH_BUNDLE,
        Language::French => &*FRENCH_BUNDLE,
    };
    let pattern = bundle.get_message(key)?.value()?;
    let mut errors = Vec::new();
    Some(
        bundle
            .format_pattern(pattern, Some(args), &mut errors)
            .into_owned(),
    )
}

/// Is there such a key in a language?
pub fn has(language: Language, key: &str) -> bool {
    message(language, key, &FluentArgs::new()).is_some()
}
