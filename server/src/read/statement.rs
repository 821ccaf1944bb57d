//! What a label says of a lot under the kitchen's law: its ingredients, its allergens, the animals in it.

use super::composition;
use crate::app::App;
use crate::error::Result;
use crate::wire::answers::FindingRead;
use domain::ingredients;
use domain::rows::{Finding, Gravity, Rows};
use domain::statement::{Runs, Style, Written, write};
use std::collections::BTreeMap;
use store::Conn;
use store::lots::LotRow;

/// The statement of a lot, by language.
#[derive(Debug, Default)]
pub struct Stated {
    /// The ingredient list without its title; the name of a thing that is one.
    pub ingredients: BTreeMap<String, String>,
    /// The title of the list, by language.
    pub titles: BTreeMap<String, String>,
    /// The allergen statement with its title; nothing where the list tells, or nothing is to tell.
    pub contains: BTreeMap<String, String>,
    /// Animals that the name does not tell: `contains pork`.
    pub species: BTreeMap<String, String>,
    /// What is to be known or mended.
    pub findings: Vec<FindingRead>,
}

/// The statement of a lot in the kitchen's languages.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn of_lot(app: &App, conn: &mut Conn, row: &LotRow, languages: &[String]) -> Result<Stated> {
    let law = app.law.laws.of(app.kitchen(conn)?.entry.profile.0);
    let food = composition::food(app, conn, row)?;
    let tags: Vec<&str> = languages.iter().map(String::as_str).collect();
    let statement = write(&law.statements, &law.rows, &food, &tags, Style::default());
    let mut stated = Stated::default();
    for (language, written) in statement.languages {
        let Written {
            list,
            contains,
            species,
            ..
        } = written;
        let title = law
            .statements
            .list
            .as_ref()
            .map(|list| list.title.in_language(&language));
        // Capitals stand for what the place wants emphasised; what is only bold stays as it is.
        let plain = |runs: &Runs| match law.statements.allergens.emphasised.is_some() {
            true => runs.in_capitals(),
            false => runs.text(),
        };
        let text = plain(&list);
        let bare = title.and_then(|title| strip(&text, title)).unwrap_or(&text);
        let told = match bare.is_empty() {
            true => ingredients::list(&food.parts, &language),
            false => bare.trim_end_matches('.').to_owned(),
        };
        stated.ingredients.insert(language.clone(), told);
        stated
            .titles
            .extend(title.map(|title| (language.clone(), title.to_owned())));
        if !contains.is_empty() {
            stated.contains.insert(language.clone(), plain(&contains));
        }
        stated
            .species
            .extend(species.map(|species| (language, species)));
    }
    stated.findings = statement
        .findings
        .iter()
        .map(|finding| told(finding, &law.rows))
        .collect();
    Ok(stated)
}

/// The text after a title, which may be emphasised and so stand in capitals.
fn strip<'a>(text: &'a str, title: &str) -> Option<&'a str> {
    let front = text.get(..title.len())?;
    (front.to_lowercase() == title.to_lowercase()).then(|| text[title.len()..].trim())
}

/// A finding, for the wire.
pub fn told(finding: &Finding, rows: &Rows) -> FindingRead {
    FindingRead {
        gravity: match finding.gravity {
            Gravity::Note => "note",
            Gravity::Warn => "warn",
            Gravity::Refuse => "refuse",
        }
        .to_owned(),
        says: words::Speech::default().say(&finding.says),
        rows: finding.rows.iter().map(ToString::to_string).collect(),
        source: words::Speech::default().arg(&rows.sources(&finding.rows)),
    }
}
