//! A label that is printed again: marked as that, and never with a later date than before.

use super::kept;
use super::says::PrintSays;
use crate::deeds::facts::Facts;
use crate::error::{Error, Result};
use crate::label_facts::Prepared;
use crate::label_facts::phrases::{LabelWords, Phrases};
use crate::problems::TitleSays;
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
) -> Result<Option<PrintSays>> {
    let refused = |detail: PrintSays| Error::label_refused(TitleSays::LabelDoesNotHold, detail);
    let named = label.template.clone();
    let not_made = |cause: String| {
        refused(PrintSays::NoReprint {
            label: named.clone(),
            cause,
        })
    };
    let form = Template::parse(&label.template, &label.form)
        .map_err(|error| not_made(error.to_string()))?;
    if !form.fields().any(|field| field == Field::Reprint) {
        let label = label.template.clone();
        return Err(refused(PrintSays::NoPlaceForMark { label }));
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
        let (shows, pack) = (first.row.use_by, label.pack);
        warning = shows.map(|date| match label.use_by {
            Some(now) => PrintSays::DateStandsThough { pack, date, now },
            None => PrintSays::DateStands { pack, date },
        });
        label.use_by = shows;
    }
    label.placed = lay_out(&label.facts, &form, label.placed.dpi)
        .map_err(|refusal| not_made(refusal.to_string()))?;
    Ok(warning)
}
