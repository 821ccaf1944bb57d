//! A lot in full.

use crate::app::App;
use crate::deeds::perform::shown_id;
use crate::error::Result;
use crate::wire::answers::{LotRead, PackRead, ReadingRead, StepBrief, instant};
use crate::wire::{Day, Number, Weight};
use chrono_tz::Tz;
use domain::grams::Grams;
use std::collections::HashMap;
use std::collections::hash_map::Entry;
use store::lots::LotRow;
use store::packs::{self, Wanted};
use store::{Conn, deeds, entries, measurements};

/// Everything that the record tells of a lot.
///
/// # Errors
/// The database is away, or the record is damaged.
pub fn read(app: &App, conn: &mut Conn, row: &LotRow) -> Result<LotRead> {
    let kitchen = app.kitchen(conn)?;
    let product = app.product(conn, row.version_id)?;
    let rows = packs::of_lot(conn, row.id, &Wanted::All)?;
    let mut places: HashMap<i32, String> = HashMap::new();
    let mut packs = Vec::with_capacity(rows.len());
    for pack in &rows {
        let place = match places.entry(pack.place_id) {
            Entry::Occupied(known) => known.get().clone(),
            Entry::Vacant(unknown) => unknown.insert(entries::code(conn, pack.place_id)?).clone(),
        };
        packs.push(PackRead {
            pack: pack.number.unsigned_abs(),
            grams: grams(pack.made_mg),
            left_grams: grams(pack.left_mg),
            is: pack.being.clone(),
            place,
            state: pack.state.clone(),
            use_by: pack.use_by.map(Day),
            days_left: pack.days_left,
        });
    }
    let made_by = deeds::by_keys(conn, &[row.deed_id])?.pop();
    let made_by =
        made_by.ok_or_else(|| store::Error::bad_row("lots", row.id, "was made by no deed"))?;
    let languages: Vec<String> = kitchen
        .entry
        .languages
        .iter()
        .map(|language| language.0.clone())
        .collect();
    let stated = super::statement::of_lot(app, conn, row, &languages)?;
    Ok(LotRead {
        code: row.code.clone(),
        shown: row.code()?.shown(),
        product: product.code.clone(),
        names: (*product.names).clone(),
        grams: grams(row.made_mg),
        on_hand_grams: grams(row.on_hand_mg),
        made_at: instant(row.made_at, kitchen.zone),
        made_by_step: shown_id(&made_by.uid),
        use_by: rows
            .iter()
            .filter(|pack| pack.left_mg > 0)
            .filter_map(|pack| pack.use_by)
            .min()
            .map(Day),
        use_by_because: super::why::of_date(
            conn,
            row,
            &rows,
            app.law.laws.of(kitchen.entry.profile.0),
        )?,
        packs,
        ingredients: stated.ingredients,
        ingredients_title: stated.titles,
        contains: stated.contains,
        species_note: stated.species,
        statement_findings: stated.findings,
        allergens: row
            .allergens()?
            .iter()
            .map(|allergen| allergen.as_str().to_owned())
            .collect(),
        species: row
            .species()?
            .iter()
            .map(|species| species.as_str().to_owned())
            .collect(),
        raw: product.raw,
        cure: super::cure_room::cured(conn, row, &app.law.laws.of(kitchen.entry.profile.0).rows)?,
        holds: Vec::new(),
        steps: history(conn, row, kitchen.zone)?,
        readings: readings(conn, row.id, kitchen.zone)?,
        voided: row.voided,
        note: row.note.clone(),
    })
}

fn grams(mg: i64) -> Weight {
    Weight(Grams::from_milligrams(mg))
}

/// What was done with a lot, the oldest first; voided deeds stay visible.
fn history(conn: &mut Conn, row: &LotRow, zone: Tz) -> Result<Vec<StepBrief>> {
    let mut steps = Vec::new();
    for event in store::record::history(conn, row.id, row.deed_id)? {
        steps.push(StepBrief {
            id: shown_id(&event.uid),
            kind: event.kind,
            at: instant(event.at, zone),
            by: event.person,
            voided: event.voided,
            account: event.account,
            grams: grams(event.mg),
        });
    }
    if let Some(birth) = steps.first_mut() {
        birth.grams = grams(row.made_mg);
    }
    Ok(steps)
}

fn readings(conn: &mut Conn, lot: i32, zone: Tz) -> Result<Vec<ReadingRead>> {
    let rows = measurements::of_lot(conn, lot)?;
    let read = |(at, quantity, millionths)| ReadingRead {
        at: instant(at, zone),
        quantity,
        value: Number(millionths),
    };
    Ok(rows.into_iter().map(read).collect())
}
