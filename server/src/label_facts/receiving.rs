//! What stands on the tag of a carcass or a box that came in.

use super::kitchen::allergens;
use super::writer::{Said, Writer};
use crate::app::damaged;
use crate::error::Result;
use crate::lists::List;
use labels::Field;
use rust_decimal::Decimal;
use serde::Deserialize;
use store::lots::LotRow;
use store::sources::SourceRow;
use store::{Conn, entries};

#[derive(Deserialize)]
struct Named {
    name: String,
}

/// The name of a list entry; its code where the list has it no more.
pub fn name_of(conn: &mut Conn, list: List, code: &str) -> Result<String> {
    let Some(row) = entries::get(conn, list.as_str(), code)? else {
        return Ok(code.to_owned());
    };
    let named: Named = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
    Ok(named.name)
}

/// What all packs of a received lot have in common.
pub fn of_lot(
    writer: &mut Writer<'_>,
    conn: &mut Conn,
    row: &LotRow,
    said: &mut Said,
) -> Result<()> {
    let source = writer.source(conn, row)?.cloned();
    let first = writer.first;
    said.say(Field::Heading, first.received_heading);
    said.0.remove(&Field::SecondName);
    allergens(writer, said);
    said.0.remove(&Field::SecondAllergens);
    said.say(Field::Received, received(writer));
    if let Some(source) = source {
        match source.animal_id {
            Some(animal) => animal_of(writer, conn, animal, &source, said)?,
            None => bought(writer, conn, &source, said)?,
        }
    }
    Ok(())
}

/// When it came in, and how cold it was.
fn received(writer: &Writer<'_>) -> String {
    let (lot, first) = (writer.lot, &writer.first);
    let day = writer.made().map_or(String::new(), |day| first.date(day));
    let time = lot.made_at.get(11..16).unwrap_or("");
    let cold = lot
        .readings
        .iter()
        .find(|reading| reading.quantity == "celsius")
        .map_or(String::new(), |reading| {
            format!(
                " · {} °C",
                first.number(&Decimal::new(reading.value.0, 6).normalize().to_string())
            )
        });
    format!("{} {day} {time}{cold}", first.received)
}

fn animal_of(
    writer: &Writer<'_>,
    conn: &mut Conn,
    animal: i32,
    source: &SourceRow,
    said: &mut Said,
) -> Result<()> {
    let animal = store::animals::by_key(conn, animal)?;
    let first = &writer.first;
    said.say(Field::From, name_of(conn, List::Farms, &animal.farm)?);
    let killed = format!("{} {}", first.killed, first.date(animal.killed_on));
    said.say(Field::Killed, killed);
    if let Some(number) = &animal.abattoir {
        let name = name_of(conn, List::Abattoirs, number)?;
        said.say(Field::Abattoir, format!("{name}, {number}"));
    }
    let side = source.side.as_deref().map(|side| first.side(side));
    let carcass = animal
        .carcass
        .as_ref()
        .map(|number| format!("{} {number}", first.carcass));
    let tag = animal
        .tag
        .as_ref()
        .map(|tag| format!("{} {tag}", first.tag));
    let parts: Vec<String> = [carcass, side.map(str::to_owned), tag]
        .into_iter()
        .flatten()
        .collect();
    said.say(Field::Carcass, parts.join(" · "));
    Ok(())
}

fn bought(writer: &Writer<'_>, conn: &mut Conn, source: &SourceRow, said: &mut Said) -> Result<()> {
    if let Some(supplier) = &source.supplier {
        said.say(Field::From, name_of(conn, List::Suppliers, supplier)?);
    }
    if let Some(lot) = &source.supplier_lot {
        let text = format!("{} {lot}", writer.first.their_lot);
        said.say(Field::SupplierLot, text);
    }
    Ok(())
}

/// What differs from pack to pack.
pub fn of_pack(writer: &Writer<'_>, said: &mut Said, number: u32) {
    said.say(Field::Net, writer.weight(number));
    if let Some(date) = writer.pack(number).use_by {
        said.say(Field::UseByHeading, writer.first.use_by);
        said.say(Field::UseBy, writer.first.date(date.0));
    }
}

#[derive(Deserialize)]
struct Placed {
    country: Option<String>,
}

/// The country of a farm or an abattoir, if the list has it.
pub fn country_of(conn: &mut Conn, list: List, code: &str) -> Result<Option<String>> {
    let Some(row) = entries::get(conn, list.as_str(), code)? else {
        return Ok(None);
    };
    let placed: Placed = serde_json::from_str(&row.body).map_err(|error| damaged(&error))?;
    Ok(placed.country)
}
