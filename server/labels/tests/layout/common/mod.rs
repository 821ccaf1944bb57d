//! Invented facts for the tests: a plain tub, a hard tub, a pack in two languages.
#![allow(dead_code, reason = "each test file uses a part of it")]

pub mod tools;

use std::path::{Path, PathBuf};

use labels::{Facts, Field, Template};

/// The file of a template of the folder.
pub fn form(name: &str) -> String {
    read(&folder("../../label-templates").join(format!("{name}.json")))
}

/// A template of the folder.
pub fn template(name: &str) -> Template {
    Template::parse(name, &form(name)).unwrap_or_else(|error| panic!("{error}"))
}

/// Every template of the folder.
pub fn templates() -> Vec<Template> {
    files(&folder("../../label-templates"))
        .iter()
        .filter_map(|path| path.file_name()?.to_str()?.strip_suffix(".json"))
        .filter(|name| !name.ends_with(".schema"))
        .map(template)
        .collect()
}

/// Every example: the template, the case (short, usual, long) and what it says.
pub fn examples() -> Vec<(Template, String, Facts)> {
    let read_one = |path: &PathBuf| {
        let name = path.file_name().unwrap().to_str().unwrap();
        let (of, case) = name.strip_suffix(".json").unwrap().split_once('.').unwrap();
        let facts = serde_json::from_str(&read(path));
        let facts = facts.unwrap_or_else(|error| panic!("{name}: {error}"));
        (template(of), case.to_owned(), facts)
    };
    files(&folder("tests/facts")).iter().map(read_one).collect()
}

fn folder(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).unwrap();
    let mut files: Vec<PathBuf> = entries.map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The shipped tub label.
pub fn tub() -> Template {
    template("tub")
}

/// A shipped pack label.
pub fn pack() -> Template {
    template("pack-eu")
}

/// The long pack label, for long statements.
pub fn pack_tall() -> Template {
    template("pack-long")
}

/// Facts from pairs; the pack number goes into both codes where asked.
pub fn facts(texts: &[(Field, &str)], linear: &str) -> Facts {
    Facts {
        texts: texts
            .iter()
            .map(|(field, text)| (*field, (*text).to_owned()))
            .collect(),
        readiness: None,
        qr: "https://trace.cinderhook.example/L/BRC26159A006/12".into(),
        linear: linear.into(),
        gs1: Vec::new(),
        ean13: None,
        net_least_um: None,
        panel_apart: false,
    }
}

/// What most tubs say.
pub fn plain_tub() -> Facts {
    facts(
        &[
            (Field::Name, "Pork stock"),
            (Field::Kind, "Cooked"),
            (Field::UseByHeading, "USE BY"),
            (Field::UseByShort, "FRI 26 JUN 2026"),
            (Field::Made, "Made Mon 22 Jun 2026 · RB"),
            (Field::Allergens, "CONTAINS: CELERY"),
            (Field::Lot, "BRC-26159-A00-6 · 12"),
        ],
        "BRC26159A006",
    )
}

/// A tub whose every text is long and accented.
pub fn hard_tub() -> Facts {
    facts(
        &[
            (Field::Name, "Smoked pork belly"),
            (Field::SecondName, "Flanc de porc fumé, œuf à côté"),
            (Field::Kind, "Prêt"),
            (Field::UseByHeading, "À CONSOMMER"),
            (Field::UseByShort, "MER 30 SEPT 2026"),
            (Field::Made, "Made 22 Jun · RB"),
            (Field::Allergens, "MUSTARD, MILK"),
            (Field::Lot, "BRC-26159-A00-6 · 12"),
            (Field::Reprint, "REPRINT 2"),
        ],
        "BRC26159A006",
    )
}

/// A pack for sale in two languages.
pub fn full_pack() -> Facts {
    facts(
        &[
            (Field::Name, "Breakfast sausage"),
            (Field::SecondName, "Saucisse à déjeuner"),
            (Field::Kind, "Raw · cru"),
            (Field::UseByHeading, "USE BY / À CONSOMMER"),
            (Field::UseBy, "FRI 26 JUN 2026"),
            (Field::Net, "450 g"),
            (
                Field::Ingredients,
                "Ingredients: pork, water, breadcrumb (WHEAT flour, yeast, salt), salt, spices \
                 (pepper, sage, nutmeg), dextrose.",
            ),
            (
                Field::SecondIngredients,
                "Ingrédients : porc, eau, chapelure (farine de BLÉ, levure, sel), sel, épices \
                 (poivre, sauge, muscade), dextrose.",
            ),
            (Field::Allergens, "Contains: WHEAT"),
            (Field::SecondAllergens, "Contient : BLÉ"),
            (Field::Storage, "Keep at ≤ 4 °C. Garder à ≤ 4 °C."),
            (Field::Caution, "Cook to 71 °C."),
            (
                Field::Business,
                "Cinderhook Kitchen, 12 Mill Lane, Ash Ford",
            ),
            (Field::Lot, "BRC-26159-A00-6 · 12"),
        ],
        "BRC26159A006/12",
    )
}

/// A short pack for sale.
pub fn plain_pack() -> Facts {
    facts(
        &[
            (Field::Name, "Beef brisket, sliced"),
            (Field::Kind, "Ready to eat"),
            (Field::UseByHeading, "USE BY"),
            (Field::UseBy, "SAT 4 JUL 2026"),
            (Field::Net, "300 g (10.6 oz)"),
            (
                Field::Ingredients,
                "Ingredients: beef, salt, black pepper, MUSTARD flour.",
            ),
            (Field::Allergens, "Contains: MUSTARD"),
            (Field::Cure, "Uncured. No nitrite added."),
            (Field::Storage, "Keep refrigerated at 5 °C or below"),
            (Field::Origin, "Origin: born, raised and cut in Canada"),
            (
                Field::Business,
                "Cinderhook Kitchen, 12 Mill Lane, Ash Ford",
            ),
            (Field::Lot, "BRC-26159-A00-6 · 12"),
            (Field::Reprint, "REPRINT 1"),
        ],
        "BRC26159A006/12",
    )
}

/// A pack whose statements run to about 250 characters in each language.
pub fn wordy_pack() -> Facts {
    let mut facts = full_pack();
    let english = "Ingredients: pork, pork liver, water, onion, EGG, breadcrumb (WHEAT flour, \
        yeast, salt), CREAM (MILK), brandy, salt, garlic, parsley, spices (pepper, allspice, bay, \
        thyme, nutmeg), sugar, MUSTARD flour, sodium nitrite, sodium erythorbate, lard.";
    let french = "Ingrédients : porc, foie de porc, eau, oignon, ŒUF, chapelure (farine de BLÉ, \
        levure, sel), CRÈME (LAIT), eau-de-vie, sel, ail, persil, épices (poivre, quatre-épices, \
        laurier, thym), sucre, farine de MOUTARDE, nitrite de sodium, érythorbate de sodium.";
    facts.texts.insert(Field::Ingredients, english.into());
    facts.texts.insert(Field::SecondIngredients, french.into());
    facts
        .texts
        .insert(Field::Name, "Coarse country pork terrine".into());
    facts
        .texts
        .insert(Field::SecondName, "Terrine de campagne grossière".into());
    facts.texts.insert(
        Field::Allergens,
        "Contains: EGG, WHEAT, MILK, MUSTARD".into(),
    );
    facts.texts.insert(
        Field::SecondAllergens,
        "Contient : ŒUF, BLÉ, LAIT, MOUTARDE".into(),
    );
    facts
}
