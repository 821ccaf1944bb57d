//! A wrong fact of a receipt is corrected, also after its lots were used.

use super::facts::{Facts, clash};
use super::perform::known_deed;
use super::receive::{farm, known_farm_and_abattoir, known_supplier, settle};
use super::says::CorrectDeedSays;
use super::{DeedHeader, Done, perform};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::wire::Line;
use crate::wire::asked::{AnimalCorrected, BoughtAsked, CorrectionAsked};
use domain::deed::correct::{self, AnimalChange};
use domain::deed::receive::Bought;
use domain::origin::{AnimalId, Origin};
use domain::plan::Plan;
use domain::words::DeedKind;
use store::deeds::DeedRow;
use store::sources::{NewSource, SourceRow};
use store::{animals, lots, origins, sources};

/// Records a correction.
///
/// # Errors
/// 404 where there is no such deed; 409 where it is no receipt, or was voided; 422 where the fact cannot be.
pub fn take(app: &Caller<'_>, asked: &CorrectionAsked) -> Result<Done> {
    if asked.why.0.is_empty() {
        return Err(Error::cannot_be("why", CorrectDeedSays::HowKnown));
    }
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Correct,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: None,
        note: asked.note.as_ref().or(Some(&asked.why)),
    };
    perform(app, header, asked, |facts| {
        let receipt = known_deed(facts.tx, asked.step, Some("step"))?;
        let row = received_lot(facts, &receipt)?;
        lots::lock_keys(facts.tx, &[row])?;
        let known = sources::current(facts.tx.conn, &[row])?.pop();
        let known = known
            .ok_or_else(|| Error::from(store::Error::bad_row("lots", row, "has no source")))?;
        match (&asked.animal, &asked.bought) {
            (Some(change), None) => animal(facts, row, &known, change, &receipt)?,
            (None, Some(change)) => bought(facts, row, &known, change)?,
            _ => {
                return Err(Error::cannot_be("animal", CorrectDeedSays::Which));
            }
        }
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Correct, &Plan::default())?;
        let rows = lots::by_keys(facts.tx.conn, &[row])?;
        done.lots.extend(facts.briefs(&rows)?);
        Ok(done)
    })
}

fn received_lot(facts: &mut Facts<'_, '_>, receipt: &DeedRow) -> Result<i32> {
    let kind = receipt.kind()?;
    if kind != DeedKind::Receive {
        let detail = CorrectDeedSays::OnlyReceipts { kind };
        return Err(clash("step", detail));
    }
    if store::deeds::voided_by(facts.tx.conn, receipt.id)?.is_some() {
        return Err(clash("step", CorrectDeedSays::Voided));
    }
    let made = lots::of_deed(facts.tx.conn, receipt.id)?;
    let lot = made
        .first()
        .ok_or_else(|| store::Error::bad_row("deeds", receipt.id, "made no lot"))?;
    Ok(lot.id)
}

fn animal(
    facts: &mut Facts<'_, '_>,
    lot: i32,
    known: &SourceRow,
    change: &AnimalCorrected,
    receipt: &DeedRow,
) -> Result<()> {
    let Some(before) = known.animal_id else {
        return Err(clash("animal", CorrectDeedSays::WasBought));
    };
    let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
    let change = AnimalChange {
        farm: change.farm.as_ref().map(farm).transpose()?,
        species: change.species.map(|species| species.0),
        killed_on: change.killed_on.map(|day| day.0),
        abattoir: text(&change.abattoir),
        carcass: text(&change.carcass),
        side: change.side.map(|side| side.0),
        tag: text(&change.tag),
        head: change.head,
    };
    let told = animals::by_key(facts.tx.conn, before)?.animal()?;
    let (corrected, side) = change.apply(&told, known.side(), receipt.day)?;
    known_farm_and_abattoir(facts.tx, &corrected)?;
    let row = if corrected == told {
        animals::by_key(facts.tx.conn, before)?
    } else {
        settle(facts, &corrected)?
    };
    let mine = lots::by_keys(facts.tx.conn, &[lot])?;
    for (other, code) in animals::sides(facts.tx.conn, row.id)? {
        let same_lot = mine.iter().any(|lot| lot.code == code.as_str());
        if let Some(side) = side.filter(|side| !same_lot && other == Some(*side)) {
            let detail = CorrectDeedSays::SideTaken { side, lot: code };
            return Err(clash("animal.side", detail));
        }
    }
    sources::insert(facts.tx, lot, facts.deed, &NewSource::Animal(row.id, side))?;
    Ok(origins::set(facts.tx, lot, Origin::One(AnimalId(row.id)))?)
}

fn bought(
    facts: &mut Facts<'_, '_>,
    lot: i32,
    known: &SourceRow,
    change: &BoughtAsked,
) -> Result<()> {
    if known.animal_id.is_some() {
        return Err(clash("bought", CorrectDeedSays::OfAnimal));
    }
    let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
    let change = Bought {
        supplier: text(&change.supplier),
        supplier_lot: text(&change.supplier_lot),
        packed_on: change.packed_on.map(|day| day.0),
        use_by: change.use_by.map(|day| day.0),
        gtin: None,
    };
    let corrected = correct::bought(&change, &known.bought())?;
    known_supplier(facts.tx, &corrected, "bought.supplier")?;
    Ok(sources::insert(
        facts.tx,
        lot,
        facts.deed,
        &NewSource::Bought(&corrected),
    )?)
}
