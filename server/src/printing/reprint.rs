//! A label that is printed again: marked as that, and never with a later date than before.

use super::kept;
use crate::deeds::facts::Facts;
use crate::error::{Error, Problem, Result};
use crate::label_facts::Prepared;
use crate::label_facts::phrases::{LabelWords, Phrases};
use actix_web::http::StatusCode;
use labels::{Field, Template, lay_out};
use store::prints::Print;

/// The words of a date on a label.
const DATED: [Field; 4] = [
    Field::UseByHeading,
    Field::UseBy,
    Field::UseByShort,
    Field::SecondUseBy,
];

/// Marks a label as the `nth` reprint. Where a print before it showed an earlier date, that date stands,
/// in the words that it was printed in; a warning says so. A pack that is frozen now shows no date,
/// but what it has once thawed: that is not a later one.
///
/// # Errors
/// 409 where the label has no place for the mark, or does not hold it.
pub fn mark(
    facts: &mut Facts<'_, '_>,
    label: &mut Prepared,
    nth: u32,
    before: &[Print],
    frozen: bool,
) -> Result<Option<String>> {
    let refused = |detail: String| {
        Error::from(Problem::new(
            StatusCode::CONFLICT,
            "label-refused",
            "The label does not hold it",
            detail,
        ))
    };
    let form = Template::parse(&label.template, &label.form)
        .map_err(|error| refused(error.to_string()))?;
    if !form.fields().any(|field| field == Field::Reprint) {
        return Err(refused(format!(
            "The label {:?} has no place for the word that says that it is a reprint. Choose another.",
            label.template
        )));
    }
    let first = Phrases::of(facts.kitchen.language());
    let words = first.say(LabelWords::Reprint { nth });
    label.facts.texts.insert(Field::Reprint, words);
    let earliest = before
        .iter()
        .filter(|print| print.row.use_by.is_some())
        .min_by_key(|print| print.row.use_by);
    let holds = |print: &&Print| match label.use_by {
        Some(now) => print.row.use_by < Some(now),
        None => !frozen,
    };
    let mut warning = None;
    if let Some(first) = earliest.filter(holds) {
        let then = kept::facts(facts.tx.conn, &first.row)?;
        for field in DATED {
            label.facts.texts.remove(&field);
            if let Some(text) = then.texts.get(&field).filter(|_| !form.omits(field)) {
                label.facts.texts.insert(field, text.clone());
            }
        }
        let (shows, now) = (first.row.use_by, label.use_by);
        warning = Some(format!(
            "Pack {} was printed before with {}; the reprint shows that date{}.",
            label.pack,
            shows.map_or_else(String::new, |day| day.to_string()),
            now.map_or_else(String::new, |day| format!(
                ", though the record now says {day}"
            ))
        ));
        label.use_by = shows;
    }
    label.placed = lay_out(&label.facts, &form, label.placed.dpi).map_err(|refusal| {
        refused(format!(
            "The label {:?} cannot be made as a reprint: {refusal}.",
            label.template
        ))
    })?;
    Ok(warning)
}
