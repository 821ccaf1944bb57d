//! The gate as it is asked for a pack's label: what is found against the lot and against the texts.

use super::says::{LabelSays, LabelTitle};
use super::tenderised;
use super::writer::Writer;
use super::{codes, items, mark};
use crate::error::{Error, Result};
use domain::duties::tenderised::lines;
use domain::gate::{GateSays, LabelTexts, check_required, of_texts};
use domain::rows::{Finding, Gravity};
use domain::words::{Species, State};
use labels::{Facts, Field};

/// What is to be told to whoever prints a customer's label.
///
/// # Errors
/// 409 where a confirmed row stands against it, with the row.
pub fn ask(writer: &Writer<'_>, number: u32, facts: &Facts) -> Result<Vec<Finding>> {
    let law = writer.law();
    let mut found = writer.view.stated.findings.clone();
    found.extend(writer.view.against_label.iter().cloned());
    found.extend(of_texts(&texts(writer, number, facts), law));
    found.extend(tenderised::against(writer));
    let traits = items::traits(writer, number, facts);
    let second = writer.second.as_ref().map(|second| second.language);
    found.extend(check_required(
        law,
        &traits,
        &items::told(writer, facts),
        second,
    ));
    found.extend(items::no_address(writer, &traits));
    found.extend(items::unnamed(writer));
    found.extend(codes::beyond_the_till(writer, number));
    let pack = writer.pack(number);
    if pack.now.use_by.is_none()
        && pack.now.state != State::Frozen
        && let Some(rows) = mark::lacks(writer)
    {
        let against = rows
            .iter()
            .map(|row| Finding::against(&law.rows, row, GateSays::NoDate));
        let mut against: Vec<Finding> = against.collect();
        against.sort_by_key(|finding| !finding.refuses());
        found.extend(against.into_iter().next());
    }
    if let Some(finding) = found.iter().find(|finding| finding.refuses()) {
        let detail = LabelSays::NotLawful {
            lot: writer.lot.code.clone(),
            finding: finding.with_sources(&law.rows),
        };
        return Err(Error::label_against(LabelTitle::NotLawful, detail, finding));
    }
    found.retain(|finding| finding.gravity == Gravity::Warn);
    Ok(found)
}

fn texts<'a>(writer: &'a Writer<'_>, number: u32, facts: &'a Facts) -> LabelTexts<'a> {
    let text = |field: Field| facts.texts.get(&field).map(String::as_str);
    let mut contains = Vec::new();
    let second = writer.second.as_ref().map(|second| second.language);
    let languages = [
        (Some(writer.first.language), Field::Allergens),
        (second, Field::SecondAllergens),
    ];
    for (language, field) in languages {
        let Some((language, statement)) = language.zip(text(field)) else {
            continue;
        };
        // What it may contain stands behind what it contains, and never for it (`us-A10`).
        let may = writer.view.stated.may_contain.get(language);
        let statement = may
            .and_then(|may| statement.strip_suffix(may.as_str()))
            .unwrap_or(statement);
        contains.extend((!statement.is_empty()).then_some((language, statement)));
    }
    LabelTexts {
        meat: writer.product.species.is_some() || !writer.lot.species.is_empty(),
        all: facts.texts.values().map(String::as_str).collect(),
        allergens: match writer.law().statements.allergens.emphasised.is_some() {
            // There the list itself shows most of them.
            true => Default::default(),
            false => writer.view.stated.allergens.clone(),
        },
        contains,
        // The list is one of the items that the place's data asks for.
        list_due: None,
        list: text(Field::Ingredients),
        net: text(Field::Net).map(|net| (net, writer.grams(number))),
        must_say: must_say(writer)
            .into_iter()
            .map(|(_, words)| words)
            .collect(),
        one_of: tenderised::one_of(writer),
        instructions: tenderised::instructions(writer, &writer.first)
            .into_iter()
            .collect(),
    }
}

/// The words that are due on beef that blades or needles went through, each with its language; none for other
/// food.
pub fn must_say<'a>(writer: &'a Writer<'_>) -> Vec<(&'static str, &'a str)> {
    let product = writer.product;
    let due = is_tenderised_beef(writer);
    let wording = writer.law().duties.tenderised.as_ref().filter(|_| due);
    wording.map_or(Vec::new(), |wording| lines(wording, product.standard.steak))
}

/// Is it raw beef that blades or needles went through, by what is listed or by what was done?
pub fn is_tenderised_beef(writer: &Writer<'_>) -> bool {
    let product = writer.product;
    let listed = product.species == Some(Species::Cattle);
    let beef = listed || writer.lot.species.contains(&Species::Cattle);
    product.raw && beef && domain::family::tenderised(&writer.reading.family, writer.view.of)
}
