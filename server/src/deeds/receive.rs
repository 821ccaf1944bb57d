//! Something arrives: a carcass with its animal, or a bought-in lot.

use super::bag;
use super::carton::Carton;
use super::contents::{self, ListRecipe};
use super::facts::{Facts, packing};
use super::measure::{self, Readings};
use super::says::{ReceiveDeedSays, StableSays};
use super::step::codes;
use super::{DeedHeader, Done, approval, degrees, happened, perform, stable};
use crate::caller::Caller;
use crate::error::{Error, Result};
use crate::lists::List;
use crate::lists::says::ListSays;
use crate::wire::asked::{AnimalAsked, ReceiptAsked, UseByIs};
use crate::wire::cures::decimal;
use crate::wire::readings::ReadingsAsked;
use crate::wire::{Line, Number};
use chrono::NaiveDate;
use domain::code::HouseCode;
use domain::condition::{Declared, Stable};
use domain::dates::MakersDate;
use domain::deed::receive::{Animal, Bought, Receipt, Source};
use domain::heat::{self, Holding};
use domain::moment::day_of;
use domain::origin::AnimalId;
use domain::plan::Plan;
use domain::product::Product;
use domain::refusal::Refusal;
use domain::rows::Finding;
use domain::says::Says;
use domain::series::{animal_stem, letter_key};
use domain::words::{DeedKind, Quantity, Side, State, Topic};
use store::animals::{self, AnimalRow};
use store::measurements::Measurement;
use store::sources::NewSource;
use store::{Tx, entries};

/// Records a receipt.
///
/// # Errors
/// Whatever the contract refuses of a receipt.
pub fn take(app: &Caller<'_>, asked: &ReceiptAsked) -> Result<Done> {
    let header = DeedHeader {
        id: asked.id,
        kind: DeedKind::Receive,
        at: asked.at,
        began_at: None,
        by: &asked.by,
        place: Some(&asked.place),
        note: asked.note.as_ref(),
    };
    let readings = Readings::of(asked.readings.as_ref(), "readings.")?;
    let happened = happened::as_it_happened(asked.as_it_happened, asked.note.as_ref())?;
    perform(app, header, asked, |facts| {
        let carton = Carton::read(
            asked.barcode.as_ref(),
            day_of(app.now(), facts.kitchen.zone),
        )?;
        let grams = carton.grams(asked.grams.map(|grams| grams.0))?;
        let (product, product_key) = carton.product(facts, asked.product.as_ref())?;
        let (source, told) = source(facts, asked, &carton, &product.code)?;
        let receipt = Receipt {
            moment: facts.moment,
            place: facts.place.expect("a receipt has a place"),
            product: &product,
            product_key,
            grams,
            packing: packing(asked.pack_count, asked.pack_grams.as_deref(), "")?,
            state: asked.state.map(|state| state.0),
            source,
            stable: stable_at_door(facts, asked, &product)?,
            approved_ready: approval::of_product(facts, "ready", &product),
            law: facts.law(),
            // A tag is one word; what happened, told of a broken limit, is a sentence, and no name of the lot.
            note: asked
                .note
                .as_ref()
                .filter(|note| !happened || !note.0.contains(char::is_whitespace))
                .map(|note| note.0.clone()),
        };
        let code = codes(facts, receipt.origin(), 1)?.remove(0);
        let mut plan = receipt.plan(code.clone())?;
        cold_enough(facts, asked, &product, &mut plan, happened)?;
        bag::strong_as_sold(facts, asked, &product, &mut plan, happened)?;
        let mut done = facts.record(asked.id.0.to_string(), DeedKind::Receive, &plan)?;
        let lot = store::lots::by_code(facts.tx.conn, &code)?
            .expect("the lot was just made")
            .id;
        match &told {
            SourceKept::Animal(animal, side) => store::sources::insert(
                facts.tx,
                lot,
                facts.deed,
                &NewSource::Animal(*animal, *side),
            )?,
            SourceKept::Bought(bought) => {
                store::sources::insert(facts.tx, lot, facts.deed, &NewSource::Bought(bought))?
            }
        }
        let probe = asked.readings.as_ref().and_then(|of| of.probe.as_ref());
        let (probe, against) = measure::probe_of(facts, probe, "readings.probe")?;
        done.said.extend(against);
        measure::keep(facts, &readings, Some(lot), probe)?;
        let (numbers, from_list) = numbers(facts, asked, &product, happened)?;
        done.said.extend(from_list);
        store::measurements::insert(facts.tx, facts.deed, Some(lot), None, &numbers)?;
        Ok(done)
    })
}

/// What shows that it keeps without time and temperature control: readings at the door, or an approval.
pub(super) fn stable_at_door(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    product: &Product,
) -> Result<Option<Stable>> {
    let readings = asked.readings.as_ref();
    let measured = |of: fn(&ReadingsAsked) -> Option<Number>| readings.and_then(of).map(decimal);
    let (ph, water_activity) = (measured(|of| of.ph), measured(|of| of.water_activity));
    let shown = stable::by_readings(facts, ph, water_activity, |says| StableSays::AtDoor {
        says,
    })?;
    Ok(shown.or_else(|| approval::stable(facts, product)))
}

/// The numbers that are kept with a lot beside its readings: how strong a curing salt is, what was paid.
///
/// # Errors
/// 422 where it is a curing salt and nobody says how strong.
pub(super) fn numbers(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    product: &Product,
    happened: bool,
) -> Result<(Vec<Measurement>, Option<Says>)> {
    let (mut numbers, from_list) = bag::strength(facts, asked, product, happened)?;
    numbers.extend(asked.price_minor.map(|price| Measurement {
        quantity: Quantity::PriceMinor,
        millionths: price.0.saturating_mul(1_000_000),
    }));
    Ok((numbers, from_list))
}

/// Was it cold enough to come in?
///
/// # Errors
/// 422 `limit` where a row that was read forbids it, and it is not recorded as it happened.
pub(super) fn cold_enough(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    product: &Product,
    plan: &mut Plan,
    happened: bool,
) -> Result<()> {
    let Some(readings) = &asked.readings else {
        return Ok(());
    };
    let (celsius, fahrenheit) = (readings.celsius, readings.fahrenheit);
    let read = degrees::temperature(celsius, fahrenheit, degrees::KITCHEN, "readings.")?;
    let state = asked.state.map_or(product.storage, |state| state.0);
    let (Some(read), Some(class)) = (
        read,
        heat::class_at_door(product, state, is_seasoned(facts, asked, product)),
    ) else {
        return Ok(());
    };
    let law = facts.law();
    let field = format!("readings.{}", degrees::field_of(read));
    let found = match class {
        Holding::ReceivingFrozen => {
            let seasoned = is_seasoned(facts, asked, product);
            let chilled = heat::class_at_door(product, State::Chilled, seasoned);
            heat::frozen_at_door(chilled, read, &law.heat, &law.rows)
        }
        class => heat::at_door(class, read, &law.heat, &law.rows),
    };
    let found = found.map_err(|refusal| Refusal {
        field: Some(field.clone()),
        ..refusal
    })?;
    if found.iter().any(Finding::refuses) {
        let findings = found.iter().map(|finding| finding.with_sources(&law.rows));
        let findings = findings.collect();
        let says = match class {
            Holding::ReceivingMince => ReceiveDeedSays::TooWarmMince { findings },
            _ => ReceiveDeedSays::TooWarm { findings },
        };
        let stop = happened::broken(facts, &field, Topic::Cold, says, &found, happened)?;
        for birth in &mut plan.births {
            birth.stops.push(stop.clone());
        }
    }
    plan.warnings.extend(found.into_iter().map(|of| of.says));
    Ok(())
}

/// Is it known to have other things in it than meat: by its recipe, or by the allergens that its pack names?
pub(super) fn is_seasoned(facts: &Facts<'_, '_>, asked: &ReceiptAsked, product: &Product) -> bool {
    let declares = asked.bought.as_ref().and_then(|of| of.declares.as_ref());
    let named = declares.and_then(|of| of.allergens.as_ref());
    named.is_some_and(|all| !all.is_empty()) || has_other_parts(facts, product)
}

/// Does its recipe have parts that are of no animal?
pub(super) fn has_other_parts(facts: &Facts<'_, '_>, product: &Product) -> bool {
    let lists = &facts.standing.lists;
    let of_animal = |code: &str| {
        lists
            .products
            .get(code)
            .is_some_and(|of| of.species.is_some())
    };
    let parts = lists.recipes.get(&product.code).into_iter().flatten();
    parts.into_iter().any(|part| !of_animal(&part.product))
}

/// What the record is to keep of where a lot came from.
enum SourceKept {
    Animal(i32, Option<Side>),
    Bought(Bought),
}

fn source(
    facts: &mut Facts<'_, '_>,
    asked: &ReceiptAsked,
    carton: &Carton,
    product: &str,
) -> Result<(Source, SourceKept)> {
    match (&asked.animal, &asked.bought, &asked.barcode) {
        (Some(_), Some(_), _) | (Some(_), _, Some(_)) => {
            Err(Error::cannot_be("bought", ReceiveDeedSays::OneSource))
        }
        (Some(told), None, None) => {
            let animal = read_animal(facts.tx, told, facts.moment.day)?;
            let side = told.side.map(|side| side.0);
            let row = settle(facts, &animal)?;
            let source = Source::Animal {
                id: AnimalId(row.id),
                species: animal.species,
                side,
                before: animals::sides(facts.tx.conn, row.id)?,
                numbered: animal.number().is_some(),
            };
            Ok((source, SourceKept::Animal(row.id, side)))
        }
        (None, None, None) => Err(Error::cannot_be("animal", ReceiveDeedSays::WhichSource)),
        (None, bought, _) => {
            let bought = carton.bought(bought.as_ref())?;
            known_supplier(facts.tx, &bought, "bought.supplier")?;
            if let Some(packed) = bought.packed_on.filter(|packed| *packed > facts.moment.day) {
                let detail = ReceiveDeedSays::PackedLater {
                    packed,
                    received: facts.moment.day,
                };
                return Err(Error::cannot_be("bought.packed_on", detail));
            }
            let declares = asked.bought.as_ref().and_then(|of| of.declares.as_ref());
            contents::can_be(declares)?;
            bag::told_once(asked.bought.as_ref())?;
            let list = ListRecipe::as_listed(facts, product);
            let source = declared(facts, asked, bought.use_by, list);
            Ok((source, SourceKept::Bought(bought)))
        }
    }
}

/// What a bought-in lot is by its pack and its paper.
pub(super) fn declared(
    facts: &Facts<'_, '_>,
    asked: &ReceiptAsked,
    use_by: Option<NaiveDate>,
    list: ListRecipe,
) -> Source {
    let declares = asked.bought.as_ref().and_then(|of| of.declares.as_ref());
    Source::Bought {
        use_by: use_by.map(|day| MakersDate {
            day,
            is_frozen: declares.and_then(|of| of.use_by_is.flatten()) == Some(UseByIs::Frozen),
        }),
        declared: Declared {
            ready: declares.and_then(|of| of.ready),
        },
        once_opened: declares.and_then(|of| of.days_once_opened.flatten()),
        contents: Box::new(contents::contents(facts, declares, list)),
    }
}

/// The animal of the request, its farm and abattoir known.
///
/// # Errors
/// 422 naming the field.
pub fn read_animal(tx: &mut Tx<'_>, told: &AnimalAsked, day: NaiveDate) -> Result<Animal> {
    let text = |line: &Option<Line>| line.as_ref().map(|line| line.0.clone());
    let animal = Animal {
        farm: farm(&told.farm)?,
        species: told.species.0,
        killed_on: told.killed_on.0,
        abattoir: text(&told.abattoir),
        carcass: text(&told.carcass),
        tag: text(&told.tag),
        head: told.head.unwrap_or(1),
    };
    animal.can_be(day)?;
    known_farm_and_abattoir(tx, &animal)?;
    Ok(animal)
}

/// A farm's code as it must be.
///
/// # Errors
/// 422.
pub fn farm(told: &Line) -> Result<HouseCode> {
    HouseCode::parse(&told.0).ok_or_else(|| {
        let code = told.0.clone();
        Error::cannot_be("animal.farm", ListSays::NoFarmCode { code })
    })
}

/// Refuses a farm or an abattoir that is not in the lists.
///
/// # Errors
/// 422 naming the field.
pub fn known_farm_and_abattoir(tx: &mut Tx<'_>, animal: &Animal) -> Result<()> {
    if entries::get(tx.conn, List::Farms.as_str(), animal.farm.as_str())?.is_none() {
        let detail = List::Farms.lacks(animal.farm.as_str());
        return Err(Error::cannot_be("animal.farm", detail));
    }
    if let Some(abattoir) = &animal.abattoir
        && entries::get(tx.conn, List::Abattoirs.as_str(), abattoir)?.is_none()
    {
        let detail = List::Abattoirs.lacks(abattoir);
        return Err(Error::cannot_be("animal.abattoir", detail));
    }
    Ok(())
}

/// Refuses a supplier that is not in the list.
///
/// # Errors
/// 422 naming the field.
pub fn known_supplier(tx: &mut Tx<'_>, bought: &Bought, field: &str) -> Result<()> {
    if let Some(supplier) = &bought.supplier
        && entries::get(tx.conn, List::Suppliers.as_str(), supplier)?.is_none()
    {
        return Err(Error::cannot_be(field, List::Suppliers.lacks(supplier)));
    }
    Ok(())
}

/// The animal on record, or a new one with the next letter of its farm's day.
///
/// # Errors
/// 422 where the record knows it as another species.
pub fn settle(facts: &mut Facts<'_, '_>, animal: &Animal) -> Result<AnimalRow> {
    let key = letter_key(&animal.farm, animal.killed_on);
    let letters_used = store::series::lock(facts.tx, &key)?;
    if let Some(known) = animals::matching(facts.tx.conn, animal)? {
        let species = known.animal()?.species;
        if species != animal.species {
            let detail = ReceiveDeedSays::OtherSpecies {
                known: species,
                told: animal.species,
            };
            return Err(Error::cannot_be("animal.species", detail));
        }
        return Ok(known);
    }
    let stem = animal_stem(&animal.farm, animal.killed_on, letters_used);
    store::series::advance(facts.tx, &key, letters_used + 1)?;
    Ok(animals::insert(facts.tx, facts.deed, animal, stem)?)
}
