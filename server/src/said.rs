//! Everything that the shell can say, and the check of the whole catalogue.

use crate::deeds::says;
use crate::lists::says as lists;
use crate::named::NamedSays;
use crate::printing::says as printing;
use crate::problems;
use crate::who::says::WhoSays;
use crate::wire::says::ValueSays;
use domain::says::Keys;

/// What each area of the shell declares.
pub const AREAS: &[Keys] = &[
    crate::archive::says::SheetSays::KEYS,
    crate::label_facts::phrases::LabelWords::KEYS,
    crate::label_facts::says::LabelSays::KEYS,
    crate::label_facts::says::LabelTitle::KEYS,
    crate::label_facts::says::PurposeSays::KEYS,
    crate::label_facts::says::SizeOf::KEYS,
    crate::logbook::says::LogWords::KEYS,
    crate::copies::says::CopySays::KEYS,
    labels::CodeSays::KEYS,
    labels::LayoutSays::KEYS,
    crate::pages::bench_says::BenchSays::KEYS,
    crate::pages::bench_says::WorkSays::KEYS,
    crate::pages::place_says::PlacePageSays::KEYS,
    crate::pages::place_says::PlaceWorkSays::KEYS,
    crate::pages::says::ActSays::KEYS,
    crate::pages::says::CountSays::KEYS,
    crate::pages::says::CountrySays::KEYS,
    crate::pages::says::PageSays::KEYS,
    crate::pages::says::SetUpSays::KEYS,
    crate::pictures::says::PictureSays::KEYS,
    NamedSays::KEYS,
    ValueSays::KEYS,
    WhoSays::KEYS,
    lists::ImportSays::KEYS,
    lists::KitchenSays::KEYS,
    lists::ListNames::KEYS,
    lists::ListSays::KEYS,
    printing::AddressSays::KEYS,
    printing::PrintSays::KEYS,
    printing::PrinterSays::KEYS,
    printing::PaperSays::KEYS,
    printing::PrinterStateSays::KEYS,
    printing::SizeSays::KEYS,
    crate::photo::PhotoSays::KEYS,
    crate::recall::says::NoticeSays::KEYS,
    crate::recall::says::ReportSays::KEYS,
    problems::KindSays::KEYS,
    problems::LabelsSays::KEYS,
    problems::RequestSays::KEYS,
    problems::ServiceSays::KEYS,
    problems::TitleSays::KEYS,
    crate::read::says::QuerySays::KEYS,
    says::CorrectDeedSays::KEYS,
    says::FactSays::KEYS,
    says::CureDeedSays::KEYS,
    says::DeedSays::KEYS,
    says::HeatDeedSays::KEYS,
    says::MeasureSays::KEYS,
    says::PlaceSays::KEYS,
    says::PrintDeedSays::KEYS,
    says::ReceiveDeedSays::KEYS,
    says::StepKindSays::KEYS,
    says::StableSays::KEYS,
    says::TrichinaeDeedSays::KEYS,
];

#[cfg(test)]
mod tests {
    use super::*;
    use domain::says::VOCABULARIES;
    use std::collections::{BTreeMap, BTreeSet};
    use std::path::Path;
    use words::{Language, entries};

    /// Keys that no area declares because the catalogue itself uses them.
    fn is_its_own(key: &str) -> bool {
        ["list-", "as-written", "inches-", "us-sulfites"]
            .iter()
            .any(|front| key.starts_with(front))
    }

    /// The texts without arguments that pages and labels name where they stand: `"page-lot-family"`.
    fn named_in_place() -> BTreeSet<String> {
        let mut found = BTreeSet::new();
        for folder in ["templates", "src/pages", "src/label_facts"] {
            let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(folder);
            for file in std::fs::read_dir(folder).unwrap() {
                let path = file.unwrap().path();
                if path.is_file() {
                    keys(&std::fs::read_to_string(path).unwrap(), &mut found);
                }
            }
        }
        found
    }

    /// Those of a file; the name of an area (`in "label"`) is none.
    fn keys(text: &str, found: &mut BTreeSet<String>) {
        let mut before = "";
        for (nth, part) in text.split('"').enumerate() {
            let is_key = part.starts_with("page-") || part.starts_with("label-");
            if nth > 0 && is_key && !before.ends_with(" in ") {
                found.insert(part.to_owned());
            }
            before = part;
        }
    }

    fn declared<'a>() -> BTreeMap<&'a str, BTreeSet<&'static str>> {
        let areas = domain::says::AREAS.iter().chain(AREAS).chain(VOCABULARIES);
        let all = areas.flat_map(|keys| keys.iter());
        all.map(|(key, args)| (*key, args.iter().copied().collect()))
            .collect()
    }

    /// The sentences of acts, with the fields of the form that each waits for: `[outputs.0.pack_count]`.
    fn fields_of_sentences(language: Language) -> BTreeMap<String, BTreeSet<String>> {
        let file = format!("words/catalogue/{}.ftl", language.tag());
        let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file));
        let text = text.unwrap();
        let sentences = text
            .lines()
            .filter(|line| line.starts_with("page-sentence-"));
        let named = |(key, text): (&str, &str)| {
            let fields = text.split('[').skip(1);
            let fields = fields.filter_map(|rest| Some(rest.split_once(']')?.0.to_owned()));
            (key.to_owned(), fields.collect())
        };
        sentences
            .filter_map(|line| line.split_once(" = "))
            .map(named)
            .collect()
    }

    #[test]
    fn a_sentence_of_an_act_waits_for_the_same_fields_in_both_languages() {
        let english = fields_of_sentences(Language::English);
        assert!(english.values().any(|fields| !fields.is_empty()));
        assert_eq!(english, fields_of_sentences(Language::French));
    }

    #[test]
    fn both_languages_have_every_message_with_every_argument() {
        let mut declared = declared();
        let in_place = named_in_place();
        for key in &in_place {
            declared.entry(key).or_default();
        }
        let mut faults = Vec::new();
        for language in Language::ALL {
            let tag = language.tag();
            let written = entries(language);
            for (key, args) in &declared {
                match written.get(*key) {
                    None => faults.push(format!("{tag}.ftl lacks {key}")),
                    Some(used) => {
                        let used: BTreeSet<&str> = used.iter().map(String::as_str).collect();
                        if used != *args {
                            faults
                                .push(format!("{tag}.ftl: {key} uses {used:?}, is given {args:?}"));
                        }
                    }
                }
            }
            for key in written.keys() {
                if !declared.contains_key(key.as_str()) && !is_its_own(key) {
                    faults.push(format!("{tag}.ftl: nothing says {key}"));
                }
            }
        }
        let (english, french) = (entries(Language::English), entries(Language::French));
        for (key, args) in &english {
            if french.get(key) != Some(args) {
                faults.push(format!("{key} differs: {args:?} and {:?}", french.get(key)));
            }
        }
        assert!(faults.is_empty(), "{}", faults.join("\n"));
    }
}
