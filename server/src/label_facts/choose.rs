//! What a label is for, and the template that holds it: the smallest that serves the place.

use super::says::{LabelSays, LabelTitle, SizeOf};
use super::writer::Writer;
use super::{Prepared, Wanted, gate, heights, items};
use crate::error::{Error, Result};
use crate::problems::TitleSays;
use domain::gate::GateSays;
use domain::moment::day_of;
use domain::refusal::{Refusal as StopRefusal, RefusalKind};
use domain::rows::{Finding, Gravity};
use domain::statement::check_languages;
use domain::stop;
use domain::words::{State, StopKind};
use labels::{Dpi, Facts, Purpose, Refusal, Template, lay_out};

/// What the label of a pack is for: what the named template is for, else what the pack is.
///
/// # Errors
/// 422 where no template has that name.
pub fn purpose(writer: &Writer<'_>, number: u32, wanted: &Wanted) -> Result<Purpose> {
    if let Some(name) = &wanted.template {
        return Ok(named(writer, name)?.purpose());
    }
    // What nobody knows gets a label of the kitchen's own, which says so.
    if !writer.lot.knows_allergens_of(Some(number)) {
        return Ok(Purpose::Kitchen);
    }
    if writer.source().is_some() && !writer.product.sale.offered {
        return Ok(Purpose::Receiving);
    }
    if writer.lot.waits_for_release() {
        return Ok(Purpose::Curing);
    }
    let frozen = writer.pack(number).now.state == State::Frozen;
    Ok(match (writer.product.sale.offered, frozen) {
        (true, _) => Purpose::Retail,
        (false, true) => Purpose::Freezer,
        (false, false) => Purpose::Kitchen,
    })
}

fn named<'a>(writer: &Writer<'a>, name: &str) -> Result<&'a Template> {
    let known = writer.app.templates.get(name);
    known.ok_or_else(|| {
        let names: Vec<&str> = writer.app.templates.keys().map(String::as_str).collect();
        let detail = LabelSays::NoSuchLabel {
            label: name.to_owned(),
            labels: names.join(", "),
        };
        Error::cannot_be("template", detail)
    })
}

/// The templates for a purpose under a place's law: those that are cut as short as their words need,
/// then the small first.
fn candidates<'a>(writer: &Writer<'a>, purpose: Purpose) -> Vec<&'a Template> {
    let place = writer.kitchen.entry.profile.0;
    // The short label or the whole one, where the place leaves the choice.
    let direct = purpose == Purpose::Retail && writer.law().statements.short_label_here();
    let mut found: Vec<&Template> = writer
        .app
        .templates
        .values()
        .filter(|template| {
            template.purpose() == purpose || direct && template.purpose() == Purpose::DirectSale
        })
        .filter(|template| template.serves(place.as_str()))
        .collect();
    found.sort_by_key(|template| (template.shortest().is_none(), template.area_mm2()));
    found
}

/// Lays a label out on the first template that holds it.
///
/// # Errors
/// 409 where none does, with the text, the room that it needs and the smallest label that would do;
/// where its letters are lower than the law asks; where the statement is not lawful.
pub fn place(
    writer: &Writer<'_>,
    number: u32,
    facts: Facts,
    purpose: Purpose,
    wanted: &Wanted,
    dpi: Dpi,
) -> Result<Prepared> {
    let retail = matches!(purpose, Purpose::Retail | Purpose::DirectSale);
    if retail {
        refuse_stopped(writer, number)?;
        refuse_missing_languages(writer)?;
    }
    let warnings = match retail {
        true => gate::ask(writer, number, &facts)?,
        false => for_the_kitchen(writer, purpose),
    };
    let templates = match &wanted.template {
        Some(name) => vec![named(writer, name)?],
        None => {
            let all = candidates(writer, purpose);
            let among =
                |template: &&Template| wanted.among.iter().any(|name| name == template.name());
            let some: Vec<&Template> = all.iter().copied().filter(among).collect();
            // Of a printer that has none of them nobody knows whether it cuts a roll to length.
            let fixed = |of: &&Template| {
                !of.on_its_paper() && (wanted.among.is_empty() || of.shortest().is_none())
            };
            match some.is_empty() {
                true => all.into_iter().filter(fixed).collect(),
                false => some,
            }
        }
    };
    let mut first: Option<(Refusal, &Template)> = None;
    for template in templates {
        if retail && let Err(item) = items::covers(template, writer, number, &facts) {
            if wanted.template.is_none() {
                continue;
            }
            let label = template.name().to_owned();
            let lot = writer.lot.code.clone();
            let detail = LabelSays::NoRoomFor { label, lot, item };
            return Err(Error::label_refused(LabelTitle::NotLawful, detail));
        }
        match lay_out(&facts, template, dpi) {
            Ok(placed) => {
                if retail {
                    refuse_low_letters(writer, template)?;
                }
                return Ok(Prepared {
                    pack: number,
                    use_by: writer.pack(number).now.use_by,
                    net: retail.then(|| writer.grams(number)),
                    purpose,
                    warnings,
                    facts,
                    template: template.name().to_owned(),
                    form: template.json().to_owned(),
                    placed,
                });
            }
            // A label for something else is no news; one that is too small is.
            Err(refusal) => match &first {
                Some((Refusal::NoPlace { .. }, _)) | None => first = Some((refusal, template)),
                Some(_) => {}
            },
        }
    }
    Err(refused(writer, &facts, purpose, first, dpi))
}

/// A label of the kitchen's own on something that is offered for sale: no label that a customer gets.
fn for_the_kitchen(writer: &Writer<'_>, purpose: Purpose) -> Vec<Finding> {
    let own = matches!(purpose, Purpose::Kitchen | Purpose::Freezer);
    let offered = writer.product.sale.offered && writer.lot.knows_allergens();
    match own && offered {
        true => vec![Finding::new(Gravity::Warn, GateSays::ForKitchen, [])],
        false => Vec::new(),
    }
}

/// A customer's label is not made of what is stopped.
fn refuse_stopped(writer: &Writer<'_>, number: u32) -> Result<()> {
    let now = writer.reading.now;
    let today = day_of(now, writer.kitchen.zone);
    let Some(stop) = stop::of_label(writer.lot, writer.pack(number), now, today) else {
        return Ok(());
    };
    Err(match stop.kind {
        StopKind::Held => StopRefusal::new(RefusalKind::Held, "lot", stop.says).into(),
        _ => Error::label_refused(LabelTitle::Stopped, stop.says),
    })
}

/// Both languages where the place wants both, unless the kitchen has an exemption on file: local food
/// may do with one where few speak the other (`canada-eu-uk-2.18`).
fn refuse_missing_languages(writer: &Writer<'_>) -> Result<()> {
    let kitchen = writer.kitchen;
    let law = writer.app.law.laws.of(kitchen.entry.profile.0);
    let given: Vec<&str> = kitchen
        .entry
        .languages
        .iter()
        .map(|language| language.0.as_str())
        .collect();
    let finding = check_languages(&law.statements, &law.rows, &given);
    let today = day_of(writer.app.now(), kitchen.zone);
    match finding.filter(Finding::refuses) {
        Some(finding) if kitchen.approval("languages", today).is_none() => {
            let detail = LabelSays::LanguageMissing {
                lot: writer.lot.code.clone(),
                finding: finding.says.clone(),
            };
            Err(Error::label_against(
                LabelTitle::LanguageMissing,
                detail,
                &finding,
            ))
        }
        _ => Ok(()),
    }
}

fn refuse_low_letters(writer: &Writer<'_>, template: &Template) -> Result<()> {
    let law = writer.law();
    let findings = heights::check(template, law, writer.product.sale.face_cm2);
    let mut findings = findings.into_iter();
    let Some(finding) = findings.find(Finding::refuses) else {
        return Ok(());
    };
    let detail = LabelSays::LettersTooLow {
        label: template.name().to_owned(),
        finding: finding.says.clone(),
    };
    Err(Error::label_against(
        LabelTitle::LettersTooLow,
        detail,
        &finding,
    ))
}

/// Why there is no label, and which one would do.
fn refused(
    writer: &Writer<'_>,
    facts: &Facts,
    purpose: Purpose,
    first: Option<(Refusal, &Template)>,
    dpi: Dpi,
) -> Error {
    let lot = writer.lot.code.clone();
    let Some((refusal, template)) = first else {
        let detail = LabelSays::NoneForIt {
            purpose: purpose.into(),
            place: writer.kitchen.entry.profile.0.to_string(),
            lot,
        };
        return Error::label_refused(LabelTitle::NoneForIt, detail);
    };
    let would_do = candidates(writer, purpose)
        .into_iter()
        .filter(|other| other.name() != template.name())
        .find(|other| lay_out(facts, other, dpi).is_ok());
    let advice = match would_do {
        Some(other) => LabelSays::WouldHold {
            label: other.name().to_owned(),
            size: SizeOf::of(other),
        },
        None => LabelSays::NoneHolds,
    };
    let detail = LabelSays::NotHeld {
        label: template.name().to_owned(),
        size: SizeOf::of(template),
        lot,
        why: (&refusal).into(),
        advice: advice.into(),
    };
    Error::label_refused(TitleSays::LabelDoesNotHold, detail)
}
