//! What a pack's label says, from the record; and the label itself, on the template that holds it.
//!
//! A label is derived each time and never stored. `choose` settles what the label is for and on which
//! template it fits; one file for each purpose says what stands on it (`retail`, `kitchen`,
//! `receiving`, `curing`); `writer` holds what they share.

mod choose;
mod codes;
mod curing;
pub mod file;
mod gate;
pub mod guest;
pub mod heights;
mod items;
mod kitchen;
mod mark;
mod net;
pub mod phrases;
mod receiving;
mod retail;
pub mod says;
pub mod templates;
mod tenderised;
mod uncured;
mod writer;

use crate::app::App;
use crate::error::{Error, Problem, Result};
use crate::problems::TitleSays;
use crate::read::LoadedFamily;
use actix_web::http::StatusCode;
use chrono::NaiveDate;
use domain::grams::Grams;
use domain::lot::{Lot, LotId};
use domain::rows::Finding;
use domain::says::Says;
use labels::{Dpi, Facts, PlacedLabel, Purpose};
use says::LabelSays;
use writer::Writer;

/// The most labels of one document: a longer row of labels comes in parts. So many pages are held
/// in memory at once, at about a third of a megabyte each.
pub const MOST: usize = 100;

/// Which labels are wanted.
#[derive(Debug, Clone, Default)]
pub struct Wanted {
    /// These packs; those on hand if none are named.
    pub packs: Option<Vec<u32>>,
    /// On this template; on one that suits the product if none is named.
    pub template: Option<String>,
    /// Where none is named: on one of these, if one of them is for such a pack at all.
    pub among: Vec<String>,
    /// For this printer.
    pub dpi: Option<u16>,
    /// Packs that hold nothing any more, too: the labels of a step just done.
    pub all: bool,
    /// One tag for all pieces of a lot that hangs, to be weighed together.
    pub together: bool,
    /// Of those, so many left out at the front, and at most so many taken.
    pub window: Option<(usize, usize)>,
}

/// A pack's label, ready to be drawn, with what it was made from.
#[derive(Debug)]
pub struct Prepared {
    /// The pack.
    pub pack: u32,
    /// The date that it shows, if it has one.
    pub use_by: Option<NaiveDate>,
    /// The net weight that it tells a customer, if it is for one.
    pub net: Option<Grams>,
    /// What it is for.
    pub purpose: Purpose,
    /// What is to be told to whoever prints it.
    pub warnings: Vec<Finding>,
    /// What it says.
    pub facts: Facts,
    /// The template's name.
    pub template: String,
    /// The template's file, word for word.
    pub form: String,
    /// The label.
    pub placed: PlacedLabel,
}

/// Labels, laid out, with what is to be told to whoever prints them.
#[derive(Debug, Default)]
pub struct Drawn {
    /// The labels.
    pub placed: Vec<PlacedLabel>,
    /// What is to be told, each once.
    pub warnings: Vec<Finding>,
}

impl Drawn {
    /// More labels.
    pub fn add(&mut self, more: Drawn) {
        self.placed.extend(more.placed);
        for warning in more.warnings {
            if !self.warnings.contains(&warning) {
                self.warnings.push(warning);
            }
        }
    }
}

/// The labels of a lot's packs, laid out.
///
/// # Errors
/// As [`prepare`].
pub fn of_lot(app: &App, reading: &LoadedFamily<'_>, lot: LotId, wanted: &Wanted) -> Result<Drawn> {
    let mut drawn = Drawn::default();
    for label in prepare(app, reading, lot, wanted)? {
        drawn.add(Drawn {
            placed: vec![label.placed],
            warnings: label.warnings,
        });
    }
    Ok(drawn)
}

/// The labels of a lot's packs, laid out, with what each was made from. The family has to be loaded
/// with its ancestors.
///
/// # Errors
/// 422 for a pack, template or printer that is not there; 409 where a text does not fit, where the
/// statement is not lawful, and for a lot that was voided.
pub fn prepare(
    app: &App,
    reading: &LoadedFamily<'_>,
    lot: LotId,
    wanted: &Wanted,
) -> Result<Vec<Prepared>> {
    let writer = Writer::new(app, reading, lot);
    let mut writer = writer.ok_or_else(|| store::Error::bad_row("lots", lot.0, "is not there"))?;
    if writer.lot.voided {
        let lot = writer.lot.code.clone();
        let (title, detail) = (TitleSays::Voided, LabelSays::Voided { lot });
        return Err(Problem::new(StatusCode::CONFLICT, "voided", title, detail).into());
    }
    let dpi = wanted.dpi.unwrap_or(203);
    let dpi =
        Dpi::from_number(dpi).ok_or_else(|| Error::cannot_be("dpi", LabelSays::Dpi { dpi }))?;
    let numbers = numbers(writer.lot, wanted)?;
    if wanted.together {
        return Ok(vec![tag_together(&mut writer, numbers[0], wanted, dpi)?]);
    }
    let (skip, take) = wanted.window.unwrap_or((0, usize::MAX));
    let mut prepared = Vec::with_capacity(numbers.len());
    for number in numbers.into_iter().skip(skip).take(take) {
        let purpose = choose::purpose(&writer, number, wanted)?;
        let facts = writer.facts(number, purpose)?;
        prepared.push(choose::place(&writer, number, facts, purpose, wanted, dpi)?);
    }
    Ok(prepared)
}

/// The one tag of pieces that are weighed together: it goes on one of them, and names the lot.
fn tag_together(
    writer: &mut Writer<'_>,
    number: u32,
    wanted: &Wanted,
    dpi: Dpi,
) -> Result<Prepared> {
    let purpose = choose::purpose(writer, number, wanted)?;
    if purpose != Purpose::Curing || writer.lot.pack_count < 2 {
        let lot = writer.lot.code.clone();
        return Err(Error::cannot_be("together", LabelSays::NotTogether { lot }));
    }
    let facts = writer.facts_together(number)?;
    choose::place(writer, number, facts, purpose, wanted, dpi)
}

/// How many labels a lot has for what is wanted.
pub fn count(lot: &Lot, wanted: &Wanted) -> usize {
    if wanted.together {
        return 1;
    }
    match &wanted.packs {
        Some(packs) => packs.len(),
        None if wanted.all => lot.packs.len(),
        None => lot
            .packs
            .iter()
            .filter(|pack| !pack.now.left.is_none_left())
            .count(),
    }
}

/// The packs whose labels are wanted.
fn numbers(lot: &Lot, wanted: &Wanted) -> Result<Vec<u32>> {
    let numbers: Vec<u32> = match &wanted.packs {
        Some(packs) => packs.clone(),
        None => lot
            .packs
            .iter()
            .filter(|pack| wanted.all || !pack.now.left.is_none_left())
            .map(|pack| pack.number)
            .collect(),
    };
    if let Some(number) = numbers.iter().find(|number| {
        lot.packs
            .binary_search_by_key(*number, |pack| pack.number)
            .is_err()
    }) {
        return Err(Error::cannot_be(
            "packs",
            LabelSays::NoSuchPack {
                lot: lot.code.clone(),
                packs: lot.pack_count,
                pack: *number,
            },
        ));
    }
    if numbers.is_empty() {
        let lot = lot.code.clone();
        return Err(nothing_to_label(LabelSays::NothingOnHand { lot }));
    }
    Ok(numbers)
}

/// 409: there is nothing to label.
pub fn nothing_to_label(detail: impl Into<Says>) -> Error {
    Problem::new(
        StatusCode::CONFLICT,
        "nothing-to-label",
        TitleSays::NothingToLabel,
        detail,
    )
    .into()
}
