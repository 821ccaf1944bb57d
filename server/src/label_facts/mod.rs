//! What a pack's label says, from the record; and the label itself, on the template that holds it.
//!
//! A label is derived each time and never stored.

pub mod file;
mod mark;
mod phrases;

use crate::app::App;
use crate::error::{Error, Problem, Result};
use crate::wire::answers::LotRead;
use actix_web::http::StatusCode;
use chrono::NaiveDate;
use domain::product::Product;
use domain::words::{ProductKind, State};
use labels::{Dpi, Facts, Field, PlacedLabel, Refusal, Template, lay_out};
use phrases::Phrases;
use std::collections::BTreeMap;
use store::Conn;
use store::lots::LotRow;

/// The most labels of one document.
pub const MOST: usize = 2_000;

/// Which labels are wanted.
#[derive(Debug, Clone, Default)]
pub struct Wanted {
    /// These packs; those on hand if none are named.
    pub packs: Option<Vec<u32>>,
    /// On this template; on one that suits the product if none is named.
    pub template: Option<String>,
    /// For this printer.
    pub dpi: Option<u16>,
    /// Packs that hold nothing any more, too: the labels of a step just done.
    pub all: bool,
}

/// A pack's label, ready to be drawn, with what it was made from.
#[derive(Debug)]
pub struct Prepared {
    /// The pack.
    pub pack: u32,
    /// The date that it shows, if it has one.
    pub use_by: Option<NaiveDate>,
    /// What it says.
    pub facts: Facts,
    /// The template's name.
    pub template: String,
    /// The template's file, word for word.
    pub form: String,
    /// The label.
    pub placed: PlacedLabel,
}

/// The labels of a lot's packs, laid out.
///
/// # Errors
/// As [`prepare`].
pub fn of_lot(
    app: &App,
    conn: &mut Conn,
    row: &LotRow,
    wanted: &Wanted,
) -> Result<Vec<PlacedLabel>> {
    let prepared = prepare(app, conn, row, wanted)?;
    Ok(prepared.into_iter().map(|label| label.placed).collect())
}

/// The labels of a lot's packs, laid out, with what each was made from.
///
/// # Errors
/// 422 for a pack, template or printer that is not there; 409 where a text does not fit.
pub fn prepare(app: &App, conn: &mut Conn, row: &LotRow, wanted: &Wanted) -> Result<Vec<Prepared>> {
    let lot = crate::read::lot::read(app, conn, row)?;
    let kitchen = app.kitchen(conn)?;
    let product = app.product(conn, row.version_id)?;
    if lot.voided {
        let detail = format!("{} was voided: it has no label any more.", lot.shown);
        return Err(Problem::new(StatusCode::CONFLICT, "voided", "Voided", detail).into());
    }
    let refused = lot
        .statement_findings
        .iter()
        .find(|finding| finding.gravity == "refuse");
    if let Some(finding) = refused.filter(|_| product.for_sale) {
        let detail = format!(
            "{} is not labelled for sale: {} ({})",
            lot.shown, finding.says, finding.source
        );
        return Err(Problem::new(
            StatusCode::CONFLICT,
            "label-refused",
            "The statement is not lawful",
            detail,
        )
        .at("code")
        .into());
    }
    let dpi = wanted.dpi.unwrap_or(203);
    let dpi = Dpi::from_number(dpi)
        .ok_or_else(|| Error::cannot_be("dpi", format!("{dpi} dpi is not known; 203 or 300.")))?;
    let numbers = numbers(&lot, wanted)?;
    let templates = templates(app, &product, wanted.template.as_deref())?;
    let writer = Writer {
        app,
        lot: &lot,
        product: &product,
        kitchen: &kitchen,
    };
    numbers
        .into_iter()
        .map(|number| place(&writer, number, &templates, dpi))
        .collect()
}

fn numbers(lot: &LotRead, wanted: &Wanted) -> Result<Vec<u32>> {
    let numbers: Vec<u32> = match &wanted.packs {
        Some(packs) => packs.clone(),
        None => lot
            .packs
            .iter()
            .filter(|pack| wanted.all || pack.left_grams.0.milligrams() > 0)
            .map(|pack| pack.pack)
            .collect(),
    };
    if let Some(number) = numbers
        .iter()
        .find(|number| !lot.packs.iter().any(|pack| pack.pack == **number))
    {
        return Err(Error::cannot_be(
            "packs",
            format!(
                "{} has {} packs; there is no pack {number}.",
                lot.shown,
                lot.packs.len()
            ),
        ));
    }
    if numbers.is_empty() {
        let detail = format!(
            "Nothing of {} is on hand, so there is nothing to label. Name packs to print theirs.",
            lot.shown
        );
        return Err(Problem::new(
            StatusCode::CONFLICT,
            "nothing-to-label",
            "Nothing to label",
            detail,
        )
        .into());
    }
    if numbers.len() > MOST {
        return Err(Error::cannot_be(
            "packs",
            format!("{} labels at once; ask for at most {MOST}.", numbers.len()),
        ));
    }
    Ok(numbers)
}

/// The templates to try, the best first: what is sold gets the full label, what stays in the
/// kitchen the small one, and a longer one where the words need it.
fn templates<'a>(
    app: &'a App,
    product: &Product,
    asked: Option<&str>,
) -> Result<Vec<&'a Template>> {
    let named: &[&str] = match (asked, product.for_sale) {
        (Some(name), _) => &[name],
        (None, true) => &["pack", "pack-tall"],
        (None, false) => &["tub", "pack", "pack-tall"],
    };
    let known: Vec<&Template> = named
        .iter()
        .filter_map(|name| app.templates.get(*name))
        .collect();
    if known.is_empty() {
        let names: Vec<&str> = app.templates.keys().map(String::as_str).collect();
        let detail = format!(
            "There is no label {:?}. Labels are: {}.",
            asked.unwrap_or(""),
            names.join(", ")
        );
        return Err(Error::cannot_be("template", detail));
    }
    Ok(known)
}

fn place(writer: &Writer<'_>, number: u32, templates: &[&Template], dpi: Dpi) -> Result<Prepared> {
    let mut first: Option<(Refusal, &str)> = None;
    for template in templates {
        let facts = writer.facts(number, template);
        let laid = lay_out(&facts, template, dpi).map(|placed| (facts.clone(), placed));
        match laid.or_else(|refusal| without_second_name(facts, template, dpi).ok_or(refusal)) {
            Ok((facts, placed)) => {
                return Ok(Prepared {
                    pack: number,
                    use_by: writer.lot.packs[number as usize - 1]
                        .use_by
                        .map(|day| day.0),
                    facts,
                    template: template.name().to_owned(),
                    form: template.json().to_owned(),
                    placed,
                });
            }
            Err(refusal) => first = first.or(Some((refusal, template.name()))),
        }
    }
    let (refusal, template) = first.expect("there is at least one template");
    let detail = format!(
        "The label {template:?} of {} cannot be made: {refusal}.",
        writer.lot.shown
    );
    Err(Problem::new(
        StatusCode::CONFLICT,
        "label-refused",
        "The label does not hold it",
        detail,
    )
    .into())
}

/// On the small label the second language's name gives way before the label is refused: nothing
/// that must be on it is lost.
fn without_second_name(
    mut facts: Facts,
    template: &Template,
    dpi: Dpi,
) -> Option<(Facts, PlacedLabel)> {
    facts
        .texts
        .remove(&Field::SecondName)
        .filter(|_| template.name() == "tub")?;
    let placed = lay_out(&facts, template, dpi).ok()?;
    Some((facts, placed))
}

/// Turns a lot into what its labels say.
struct Writer<'a> {
    app: &'a App,
    lot: &'a LotRead,
    product: &'a Product,
    kitchen: &'a crate::lists::kitchen::Kitchen,
}

impl Writer<'_> {
    fn facts(&self, number: u32, template: &Template) -> Facts {
        let languages: Vec<&str> = self
            .kitchen
            .entry
            .languages
            .iter()
            .map(|language| language.0.as_str())
            .collect();
        let first = Phrases::of(languages.first().copied().unwrap_or("en"));
        let second = languages.get(1).map(|language| Phrases::of(language));
        let pack = &self.lot.packs[number as usize - 1];
        let mut texts: BTreeMap<Field, String> = BTreeMap::new();
        let mut say = |field: Field, text: String| {
            if !text.is_empty() && !template.omits(field) {
                texts.insert(field, text);
            }
        };
        let name = self.product.name(first.language).to_owned();
        let second_name = second.map(|second| self.product.name(second.language).to_owned());
        say(
            Field::SecondName,
            second_name
                .filter(|second| *second != name)
                .unwrap_or_default(),
        );
        say(Field::Name, name);
        say(Field::Kind, self.kind(&first).to_owned());
        let frozen = pack.state == State::Frozen.as_str();
        let use_by = pack.use_by.map(|day| day.0);
        let mark = use_by.and_then(|date| mark::of(self, date, first.language));
        say(
            Field::UseByHeading,
            mark.as_ref()
                .map_or_else(|| first.use_by.to_owned(), |mark| mark.words.to_uppercase()),
        );
        let made: Option<NaiveDate> = self.lot.made_at.get(..10).and_then(|day| day.parse().ok());
        // On the small label a date of this season goes without its year, so that it can be large.
        let soon = use_by
            .zip(made)
            .is_some_and(|(date, made)| (date - made).num_days() < 180);
        say(
            Field::UseBy,
            match use_by {
                Some(_) if mark.is_some() => mark.map_or(String::new(), |mark| mark.date),
                Some(date) if soon && template.omits(Field::SecondUseBy) => first.day_label(date),
                _ => dated(&first, use_by, frozen, pack.days_left),
            },
        );
        if let (Some(second), Some(date)) = (second, use_by) {
            let mark = mark::of(self, date, second.language);
            say(
                Field::SecondUseBy,
                mark.map_or_else(
                    || format!("{} {}", second.use_by, second.short_date(date)),
                    |mark| mark.text,
                ),
            );
        }
        say(
            Field::Made,
            made.map(|made| format!("{} {}", first.made, first.date(made)))
                .unwrap_or_default(),
        );
        let left = if pack.left_grams.0.milligrams() > 0 {
            pack.left_grams.0
        } else {
            pack.grams.0
        };
        say(Field::Net, left.to_string());
        for (phrases, ingredients, allergens) in [
            (Some(first), Field::Ingredients, Field::Allergens),
            (second, Field::SecondIngredients, Field::SecondAllergens),
        ] {
            let Some(phrases) = phrases else { continue };
            let list = self
                .lot
                .ingredients
                .get(phrases.language)
                .cloned()
                .unwrap_or_default();
            let species = self.lot.species_note.get(phrases.language);
            let species = species.map_or(String::new(), |note| format!(" {}.", capital(note)));
            let title = self.lot.ingredients_title.get(phrases.language);
            let title = title.map_or_else(|| format!("{}:", phrases.ingredients), String::clone);
            say(ingredients, format!("{title} {list}.{species}"));
            say(allergens, self.contains(&phrases));
        }
        say(Field::Storage, first.storage(&pack.state).to_owned());
        say(
            Field::Caution,
            if self.product.raw {
                first.caution_raw.to_owned()
            } else {
                String::new()
            },
        );
        let shown = &self.lot.shown;
        say(
            Field::Lot,
            if self.lot.packs.len() > 1 {
                format!("{shown} / {number}")
            } else {
                shown.clone()
            },
        );
        let address = self
            .kitchen
            .entry
            .address
            .as_ref()
            .map_or(String::new(), |address| {
                format!(", {}", address.0.replace('\n', ", "))
            });
        say(
            Field::Business,
            format!("{}{address}", self.kitchen.entry.name.0),
        );
        let linear = if template.name() == "tub" {
            self.lot.code.clone()
        } else {
            format!("{}/{number}", self.lot.code)
        };
        Facts {
            texts,
            qr: format!(
                "{}/L/{}/{number}",
                self.app.address(self.kitchen),
                self.lot.code
            ),
            linear,
            gs1: Vec::new(),
            ean13: None,
        }
    }

    /// Raw or ready to eat, in words: on the label it is never told by colour alone.
    fn kind(&self, phrases: &Phrases) -> &'static str {
        use ProductKind::*;
        match (self.product.raw, self.product.kind) {
            (true, _) => phrases.raw,
            (false, Cooked | Rendered | Stock | Cured | Mixed) => phrases.ready_to_eat,
            (false, _) => "",
        }
    }

    /// The allergens as the place wants them named; nothing where its list emphasises them.
    fn contains(&self, phrases: &Phrases) -> String {
        self.lot
            .contains
            .get(phrases.language)
            .cloned()
            .unwrap_or_default()
    }
}

/// The same, its first letter large.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or(String::new(), |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

fn dated(
    phrases: &Phrases,
    use_by: Option<NaiveDate>,
    frozen: bool,
    days_left: Option<i32>,
) -> String {
    match (use_by, days_left) {
        (Some(date), _) => phrases.date(date),
        (None, Some(days)) if frozen => phrases.once_thawed(days),
        (None, _) if frozen => phrases.frozen.to_owned(),
        (None, _) => phrases.no_date.to_owned(),
    }
}
