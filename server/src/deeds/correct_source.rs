//! A wrong fact of a receipt is corrected: the animal, the supplier's lot, what its pack declares, what was
//! read at the door, what was paid.

use super::adopt::only_contents;
use super::again::request;
use super::correct::{Correcting, kept, over, unless_known};
use super::correct_read::read_over;
use super::facts::{Facts, clash};
use super::receive::{farm, known_farm_and_abattoir, known_supplier, settle};
use super::says::{CorrectDeedSays, FactSays, ReceiveDeedSays};
use super::{bag, contents};
use crate::error::{Error, Result};
use crate::wire::Line;
use crate::wire::adopt::AdoptionAsked;
use crate::wire::asked::{AnimalCorrected, BoughtAsked, CorrectionAsked, ReceiptAsked};
use domain::deed::correct::{self, AnimalChange};
use domain::deed::receive::{Animal, Bought};
use domain::deed::says::AdoptSays;
use domain::says::Says;
use domain::series::letter_key;
use serde_json::{Map, Value};
use store::animals::AnimalRow;
use store::deeds::DeedRow;
use store::sources::{NewSource, SourceRow};
use store::{animals, lots, sources};

/// What is right of a receipt; what is known now of the source is written down.
pub fn of_receipt(
    facts: &mut Facts<'_, '_>,
    asked: &CorrectionAsked,
    receipt: &DeedRow,
    before: &Map<String, Value>,
) -> Result<(Correcting, Vec<Says>)> {
    let lot = lots::of_deed(facts.tx.conn, receipt.id)?;
    let lot = lot.first().map(|lot| lot.id);
    let lot = lot.ok_or_else(|| store::Error::bad_row("deeds", receipt.id, "made no lot"))?;
    lots::lock_keys(facts.tx, &[lot])?;
    let known = sources::current(facts.tx.conn, &[lot])?.pop();
    let known = known.ok_or_else(|| store::Error::bad_row("lots", lot, "has no source"))?;
    let (mut correcting, mut said) = (Correcting::default(), Vec::new());
    let mut as_known = None;
    match (&asked.animal, &asked.bought) {
        (Some(change), None) => {
            let told = animal(facts, lot, &known, change, receipt);
            if let Some(told) = unless_known(told, &mut as_known)? {
                said.extend(told);
                let now = over(before.get("animal"), kept(change)?);
                correcting.field(before, "animal", now, FactSays::Animal)?;
                said.push(CorrectDeedSays::CodesStay.into());
            }
        }
        (None, Some(change)) => {
            bag::told_once(asked.bought.as_ref())?;
            let told = bought(facts, lot, &known, change, receipt);
            let now = declared_over(before.get("bought"), kept(change)?);
            let now = without(now, change);
            let told =
                told.and_then(|()| correcting.field(before, "bought", now, FactSays::Bought));
            if unless_known(told, &mut as_known)?.is_some() {
                let told = facts_of(change).into_iter().filter(|(tells, _)| *tells);
                correcting.facts = told.map(|(_, fact)| fact.into()).collect();
            }
        }
        (None, None) => {}
        (Some(_), Some(_)) => return Err(Error::cannot_be("animal", CorrectDeedSays::Which)),
    }
    if let Some(readings) = &asked.readings {
        let now = read_over(before.get("readings"), kept(readings)?);
        let read = correcting.field(before, "readings", now, FactSays::Readings);
        unless_known(read, &mut as_known)?;
    }
    if let Some(price) = &asked.price_minor {
        let paid = correcting.field(before, "price_minor", kept(price)?, FactSays::Price);
        unless_known(paid, &mut as_known)?;
    }
    if let Some(error) = as_known.filter(|_| correcting.now.is_empty()) {
        return Err(error);
    }
    let _: ReceiptAsked = request(&correcting.applied(before))?;
    Ok((correcting, said))
}

/// What is in a pot that nobody knew, said by somebody who knows.
pub fn of_pot(
    asked: &CorrectionAsked,
    before: &Map<String, Value>,
) -> Result<(Correcting, Vec<Says>)> {
    let none = || Error::cannot_be("bought", AdoptSays::NotTheContents);
    let change = asked.bought.as_ref().ok_or_else(none)?;
    let [(of_source, _), (declared, _), (strength, _)] = facts_of(change);
    if of_source || strength || !declared || before.contains_key("is") {
        return Err(none());
    }
    only_contents(change.declares.as_ref(), "bought.declares")?;
    let mut correcting = Correcting::default();
    let now = kept(change)?.get("declares").cloned();
    let now = over(before.get("declares"), now.unwrap_or(Value::Null));
    correcting.field(before, "declares", now, FactSays::Declared)?;
    let _: AdoptionAsked = request(&correcting.applied(before))?;
    Ok((correcting, Vec::new()))
}

/// Which facts of a bought-in lot are named.
fn facts_of(change: &BoughtAsked) -> [(bool, FactSays); 3] {
    let declares = change.declares.as_ref();
    let source = change.supplier.is_some()
        || change.supplier_lot.is_some()
        || change.packed_on.is_some()
        || change.use_by.is_some();
    let strength = declares.is_some_and(|of| of.strength.is_some());
    let declared = declares.is_some_and(|of| {
        of.ready.is_some()
            || of.use_by_is.is_some()
            || of.days_once_opened.is_some()
            || of.allergens.is_some()
            || of.ingredients.is_some()
            || of.may_contain.is_some()
    });
    [
        (source, FactSays::Bought),
        (declared, FactSays::Declared),
        (strength || change.curing_salt.is_some(), FactSays::Strength),
    ]
}

/// The same without what is said to be nothing.
fn without(mut bought: Value, change: &BoughtAsked) -> Value {
    let declares = change.declares.as_ref();
    let nothing = [
        (None, "use_by", change.use_by == Some(None)),
        (Some("declares"), "use_by_is", {
            declares.is_some_and(|of| of.use_by_is == Some(None))
        }),
        (Some("declares"), "days_once_opened", {
            declares.is_some_and(|of| of.days_once_opened == Some(None))
        }),
    ];
    for (within, field, _) in nothing.into_iter().filter(|(.., is_nothing)| *is_nothing) {
        let of = match within {
            Some(within) => bought.get_mut(within),
            None => Some(&mut bought),
        };
        if let Some(fields) = of.and_then(Value::as_object_mut) {
            fields.remove(field);
        }
    }
    bought
}

/// What is right of a bought-in lot put over what was asked. A strength is told whole, in one of two fields.
fn declared_over(was: Option<&Value>, now: Value) -> Value {
    let strength = now.get("curing_salt").cloned();
    let strength = strength.or_else(|| now.get("declares")?.get("strength").cloned());
    let ingredients = now.get("declares").and_then(|of| of.get("ingredients"));
    let ingredients = ingredients.cloned();
    let mut both = over(was, now);
    if let (Some(strength), Value::Object(fields)) = (strength, &mut both) {
        if let Some(Value::Object(declares)) = fields.get_mut("declares") {
            declares.remove("strength");
        }
        fields.insert("curing_salt".to_owned(), strength);
    }
    // A list of ingredients is told whole, in all its languages.
    if let (Some(whole), Some(declares)) = (ingredients, both.get_mut("declares")) {
        declares["ingredients"] = whole;
    }
    both
}

fn animal(
    facts: &mut Facts<'_, '_>,
    lot: i32,
    known: &SourceRow,
    change: &AnimalCorrected,
    receipt: &DeedRow,
) -> Result<Option<Says>> {
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
    let row = animals::by_key(facts.tx.conn, before)?;
    let mut others = None;
    let row = if corrected == told {
        row
    } else if is_the_very(&corrected, &told) {
        others = others_of(facts, lot, before, &told, &corrected)?;
        told_otherwise(facts, row, &corrected)?
    } else {
        let known = settle(facts, &corrected)?;
        match known.animal()? == corrected {
            true => known,
            false => told_otherwise(facts, known, &corrected)?,
        }
    };
    let mine = lots::by_keys(facts.tx.conn, &[lot])?;
    for (other, code) in animals::sides(facts.tx.conn, row.id)? {
        let same_lot = mine.iter().any(|lot| lot.code == code.as_str());
        if let Some(side) = side.filter(|side| !same_lot && other == Some(*side)) {
            let detail = CorrectDeedSays::SideTaken { side, lot: code };
            return Err(clash("animal.side", detail));
        }
    }
    let source = NewSource::Animal(row.id, side);
    sources::insert(facts.tx, lot, facts.deed, &source)?;
    Ok(others)
}

/// Is it told from others by the same as before, and only known otherwise: its species, its head, or its tag beside a
/// carcass number?
fn is_the_very(corrected: &Animal, told: &Animal) -> bool {
    let by_its_number = Animal {
        farm: told.farm.clone(),
        killed_on: told.killed_on,
        abattoir: told.abattoir.clone(),
        carcass: told.carcass.clone(),
        ..corrected.clone()
    };
    *corrected == by_its_number && (corrected.carcass.is_some() || corrected.tag == told.tag)
}

/// The very animal that was told, known otherwise: its number stays, and its codes begin alike. Where another lot of it
/// was corrected so before, it is that one.
fn told_otherwise(
    facts: &mut Facts<'_, '_>,
    known: AnimalRow,
    corrected: &Animal,
) -> Result<AnimalRow> {
    let key = letter_key(&corrected.farm, corrected.killed_on);
    store::series::lock(facts.tx, &key)?;
    if let Some(newer) = animals::exactly(facts.tx.conn, corrected)? {
        return Ok(newer);
    }
    Ok(animals::insert(
        facts.tx, facts.deed, corrected, known.stem,
    )?)
}

/// The other lots of an animal, which stay of what they were told to be.
fn others_of(
    facts: &mut Facts<'_, '_>,
    lot: i32,
    animal: i32,
    told: &Animal,
    corrected: &Animal,
) -> Result<Option<Says>> {
    let all = animals::received_of(facts.tx.conn, &[animal])?.into_iter();
    let others = all.filter(|(_, of, _)| *of != lot);
    let lots: Vec<String> = others.map(|(.., code)| code.shown()).collect();
    let lots = (!lots.is_empty()).then(|| lots.join(", "));
    let species = told.species;
    Ok(lots.map(|lots| match species == corrected.species {
        true => CorrectDeedSays::OtherLotsAsTold { lots }.into(),
        false => CorrectDeedSays::OtherLots { lots, species }.into(),
    }))
}

fn bought(
    facts: &mut Facts<'_, '_>,
    lot: i32,
    known: &SourceRow,
    change: &BoughtAsked,
    receipt: &DeedRow,
) -> Result<()> {
    if known.animal_id.is_some() {
        return Err(clash("bought", CorrectDeedSays::OfAnimal));
    }
    contents::can_be(change.declares.as_ref())?;
    let [(of_source, _), (declared, _), (strength, _)] = facts_of(change);
    if !of_source {
        return match declared || strength {
            true => Ok(()),
            false => Err(Error::cannot_be("bought", CorrectDeedSays::AsKnown)),
        };
    }
    let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
    let told = Bought {
        supplier: text(&change.supplier),
        supplier_lot: text(&change.supplier_lot),
        packed_on: change.packed_on.map(|day| day.0),
        use_by: change.use_by.flatten().map(|day| day.0),
        gtin: None,
    };
    let corrected = match correct::bought(&told, change.use_by == Some(None), &known.bought()) {
        Err(_) if declared || strength => return Ok(()),
        corrected => corrected?,
    };
    known_supplier(facts.tx, &corrected, "bought.supplier")?;
    if let Some(packed) = corrected.packed_on.filter(|packed| *packed > receipt.day) {
        let received = receipt.day;
        let detail = ReceiveDeedSays::PackedLater { packed, received };
        return Err(Error::cannot_be("bought.packed_on", detail));
    }
    Ok(sources::insert(
        facts.tx,
        lot,
        facts.deed,
        &NewSource::Bought(&corrected),
    )?)
}
