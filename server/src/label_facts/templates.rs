//! The templates: those that come with the program, and a kitchen's own from a folder.

use crate::given;
use labels::{Sheet, Template, TemplateError};
use std::collections::BTreeMap;
use std::path::Path;

macro_rules! shipped {
    ($($name:literal),* $(,)?) => {
        /// The templates that come with the program.
        pub const SHIPPED: &[(&str, &str)] = &[
            $(($name, include_str!(concat!("../../../label-templates/", $name, ".json")))),*
        ];

        /// What a label on each of them usually says; the tests of the layout use the same.
        pub const SAMPLES: &[(&str, &str)] = &[
            $(($name, include_str!(concat!("../../labels/tests/facts/", $name, ".usual.json")))),*
        ];
    };
}

shipped![
    "cure-tag",
    "direct-sale",
    "freezer",
    "freezer-large",
    "hold",
    "pack-ca",
    "pack-ca-long",
    "pack-eu",
    "pack-long",
    "pack-tall",
    "pack-us",
    "pack-us-raw",
    "pack-wide",
    "pack-wide-short",
    "pack-wide-tall",
    "receiving",
    "receiving-large",
    "roll-ca",
    "roll-eu",
    "roll-us",
    "tub",
    "tub-large",
];

/// The templates by name, and what is to be said of those that cannot be used.
#[derive(Debug, Default)]
pub struct Templates {
    /// Those that can be used.
    pub known: BTreeMap<String, Template>,
    /// Each with line and reason. They stop only themselves.
    pub bad: Vec<String>,
}

impl Templates {
    fn add(&mut self, name: &str, json: &str) {
        match Template::parse(name, json) {
            Ok(template) => {
                self.known.insert(name.to_owned(), template);
            }
            Err(error) => self.bad.push(format!("it is left out: {}", told(&error))),
        }
    }
}

/// The shipped templates, and those of a folder: a file of the same name takes the place of ours.
///
/// # Errors
/// In words: the folder cannot be read, or no template is left.
pub fn load(folder: Option<&Path>) -> Result<Templates, String> {
    let mut templates = Templates::default();
    for (name, json) in SHIPPED {
        templates.add(name, json);
    }
    if let Some(folder) = folder {
        for path in files(folder)? {
            let name = path
                .file_stem()
                .map(|stem| stem.to_string_lossy().into_owned());
            let json = given::text(&path);
            match (name, json) {
                (Some(name), Ok(json)) => templates.add(&name, &json),
                (_, Err(says)) => templates.bad.push(says),
                (None, Ok(_)) => {}
            }
        }
    }
    match templates.known.is_empty() {
        true => Err("no label template can be used".into()),
        false => Ok(templates),
    }
}

/// What is wrong with a template, without the words of programmers.
pub fn told(error: &TemplateError) -> String {
    match error {
        TemplateError::Json { name, cause } => {
            let says = law::Bad::json(cause).says;
            format!("template \"{name}\" cannot be read: {says}")
        }
        TemplateError::Form { .. } => error.to_string(),
    }
}

/// The shipped sheets.
pub fn sheets() -> BTreeMap<String, Sheet> {
    let shipped = [
        (
            "letter",
            include_str!("../../../label-templates/sheets/letter.json"),
        ),
        (
            "a4",
            include_str!("../../../label-templates/sheets/a4.json"),
        ),
    ];
    let read = |(name, json): (&str, &str)| {
        let sheet = Sheet::parse(name, json).ok()?;
        Some((name.to_owned(), sheet))
    };
    shipped.into_iter().filter_map(read).collect()
}

/// The files of a folder whose names end with `.json`, in order.
fn files(folder: &Path) -> Result<Vec<std::path::PathBuf>, String> {
    given::folder(folder)?;
    let cannot = |error: std::io::Error| {
        let why = given::why(&error);
        format!("{} cannot be read: {why}", folder.display())
    };
    let mut files = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(cannot)? {
        let path = entry.map_err(cannot)?.path();
        let name = path
            .file_name()
            .map(|name| name.to_string_lossy().into_owned());
        let fits =
            name.is_some_and(|name| name.ends_with(".json") && !name.ends_with(".schema.json"));
        if fits {
            files.push(path);
        }
    }
    files.sort();
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;
    use domain::words::Profile;

    #[test]
    fn every_file_is_shipped_and_can_be_used() {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../label-templates");
        let mut on_disk: Vec<String> = files(&folder)
            .unwrap()
            .iter()
            .map(|path| path.file_stem().unwrap().to_string_lossy().into_owned())
            .collect();
        on_disk.sort();
        let shipped: Vec<&str> = SHIPPED.iter().map(|(name, _)| *name).collect();
        assert_eq!(on_disk, shipped);
        let loaded = load(None).unwrap();
        assert_eq!(loaded.bad, Vec::<String>::new());
        assert_eq!(loaded.known.len(), SHIPPED.len());
        assert_eq!(sheets().len(), 2);
    }

    /// us-A3, canada-eu-uk-3.3 and 3.5: the word stands right after the list, with nothing between.
    #[test]
    fn contains_stands_right_after_the_list() {
        let mut seen = 0;
        for (name, text) in SHIPPED {
            let file: serde_json::Value = serde_json::from_str(text).unwrap();
            let places = file["places"].to_string();
            if file["purpose"] != "retail" || !(places.contains("us") || places.contains("ca")) {
                continue;
            }
            let items = file["items"].as_array().unwrap().iter();
            let stacks = items.flat_map(|item| {
                let columns = &item["columns"];
                [&item["stack"]["texts"], &columns["left"], &columns["right"]]
            });
            for texts in stacks.filter_map(|texts| texts.as_array()) {
                let fields: Vec<&str> =
                    texts.iter().filter_map(|of| of["field"].as_str()).collect();
                for (list, contains) in [
                    ("ingredients", "allergens"),
                    ("second-ingredients", "second-allergens"),
                ] {
                    let at = |field: &str| fields.iter().position(|of| *of == field);
                    if let Some(list) = at(list) {
                        assert_eq!(at(contains), Some(list + 1), "{name}");
                        seen += 1;
                    }
                }
            }
        }
        assert!(seen >= 16, "{seen}");
    }

    #[test]
    fn letters_are_as_high_as_each_place_asks() {
        use super::super::heights;
        use labels::Purpose;
        let law = law::shipped().unwrap();
        for template in load(None).unwrap().known.values() {
            if !matches!(template.purpose(), Purpose::Retail | Purpose::DirectSale) {
                continue;
            }
            for place in [Profile::Us, Profile::Ca, Profile::Eu, Profile::Uk] {
                if template.serves(place.as_str()) {
                    let findings = heights::check(template, law.laws.of(place), None);
                    let says: Vec<String> = findings
                        .iter()
                        .map(|finding| finding.says.to_string())
                        .collect();
                    assert!(says.is_empty(), "{} {place:?}: {says:?}", template.name());
                }
            }
        }
    }
}
